"""Numbers that change from row to row and from size to size, worked by hand."""

from typing import Any

from loopleaf.review import check

HEAD = """title: Swatch
terms: US
gauge: not critical
{sizes}pieces:
  swatch:
    worked: rows
    start: chain {chain}
    rows:
"""


def _checked(*rows: str, chain: str = "12", sizes: str = "") -> tuple[list[Any], list[tuple[Any, ...]]]:
    """What each row makes, by size, and the errors: rule, line, column, message."""
    text = HEAD.format(chain=chain, sizes=sizes) + "".join(f"      - {{{row}}}\n" for row in rows)
    checked = check(text.encode(), "swatch.yml")
    assert checked.work is not None
    makes = [[size and size.count for size in one.sizes] for one in checked.work.pieces[0].rounds]
    wrong = [one for one in checked.findings if one.severity == "error"]
    return makes, [(one.rule, one.location.line, one.location.column, one.message) for one in wrong]


FIRST = 'row: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: 11'


def test_n_may_be_one_a_size() -> None:
    makes, wrong = _checked(
        'row: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: "11 (13, 15)"',
        'rows: 2-3, work: "ch 1, sc2tog, sc in next n sts, turn", n: {from: "9 (11, 13)", step: -1}, '
        'count: {from: "10 (12, 14)", step: -1}',
        'row: 4, sizes: [M, L], work: "ch 1, sc in next n sts, dec, sc in next 2 sts, turn", n: "- (7, 9)"',
        'row: 5, work: "ch 1, (sc in next n sts, ch 2 (2, 3), sk 1 st) x 3 (2, 3), turn", n: "2 (4, 3)"',
        chain="12 (14, 16)",
        sizes="sizes: [S, M, L]\n",
    )
    assert wrong == []
    assert makes == [[11, 13, 15], [10, 12, 14], [9, 11, 13], [None, 10, 12], [6, 8, 9]]


def test_n_of_too_few_sizes_is_told() -> None:
    _, wrong = _checked(
        FIRST,
        'row: 2, work: "ch 1, sc in next n sts, turn", n: "11 (11)", count: 11',
        sizes="sizes: [S, M, L]\n",
    )
    assert [rule for rule, *_ in wrong] == ["size-count-differs"]


def test_n_without_a_number() -> None:
    _, wrong = _checked(
        FIRST,
        'rows: 2-4, work: "ch 1, sc2tog, sc in next n sts, turn", count: {from: 10, step: -1}',
        'row: 5, work: "ch 1, sc in each st across, turn", count: 8',
    )
    assert wrong == [("field-missing", 10, 53, "“n” stands for a number that isn't given.")]


def test_one_count_behind_rows_that_grow_is_the_last_ones() -> None:
    rows = (
        FIRST,
        'row: 2, work: "ch 1, 2 sc in first st, sc in each st across, turn", count: 12',
        'row: 3, work: "ch 1, sc in each st across, turn", count: 12',
    )
    makes, wrong = _checked(*rows, "rows: 4-9, repeat: 2-3, count: 15")
    assert (makes[3:], wrong) == ([[13], [13], [14], [14], [15], [15]], [])
    _, wrong = _checked(*rows, "rows: 4-9, repeat: 2-3, count: 16")
    assert [rule for rule, *_ in wrong] == ["count-differs"]


def test_one_count_behind_rows_that_stay_holds_for_each() -> None:
    rows = (
        FIRST,
        'row: 2, work: "ch 1, 2 sc in first st, sc in each st across, turn", count: 12',
        'row: 3, work: "ch 1, sc2tog, sc in each st across, turn", count: 11',
    )
    _, wrong = _checked(*rows, "rows: 4-9, repeat: 2-3, count: 11")
    assert wrong == []  # what the last of them makes
    _, wrong = _checked(*rows, "rows: 4-9, repeat: 2-3, count: 12")
    assert [rule for rule, *_ in wrong] == ["count-differs"]
