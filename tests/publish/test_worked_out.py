"""Counts that the file doesn't state, as `check` tells them to the author."""

from loopleaf.publish.terminal import SHOWN_PER_FILE, coloured
from loopleaf.publish.worked_out import worked_out
from loopleaf.review import check
from tests.review.frame import framed


def _told(fragment: str) -> list[str]:
    return worked_out(check(framed(fragment).encode(), "case.yml")).splitlines()


def test_round_by_round_and_alike_ones_once() -> None:
    assert _told(
        "rounds:\n"
        '  - {round: 1, work: "ch 1, 6 sc in ring, join", count: 6}\n'
        '  - {round: 2, work: "ch 1, 2 sc in each st around, join"}\n'
        '  - {rounds: 3-5, work: "ch 1, sc in each st around, join"}\n'
        '  - {round: 6, work: "ch 1, (sc in next st, inc) x 6, join, fasten off"}'
    ) == [
        "case.yml: these counts are worked out from the stitches; the file states none there.",
        "  piece, rounds 2-5: 12",
        "  piece, round 6: 18",
        "",
    ]


def test_one_a_size() -> None:
    assert _told(
        "sizes: [S, M]\nworked: rows\nstart: chain 11 (15)\n"
        'rows:\n  - {row: 1, work: "sc in 2nd ch from hook and in each ch across, fasten off"}'
    )[1:] == ["  piece, row 1: 10 (14)", ""]


def test_a_row_repeated_has_the_count_of_the_one_that_it_repeats() -> None:
    rows = (
        "worked: rows\nstart: chain 11\nrows:\n"
        '  - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: 10}\n'
        '  - {row: 2, work: "ch 1, sc in each st across, turn"COUNT}\n'
        "  - {rows: 3-6, repeat: 2}"
    )
    assert _told(rows.replace("COUNT", ", count: 10")) == []
    assert _told(rows.replace("COUNT", ""))[1:] == ["  piece, rows 2-6: 10", ""]


def test_a_count_that_can_t_be_read_is_not_called_unstated() -> None:
    assert _told('rounds:\n  - {round: 1, work: "ch 1, 6 sc in ring, join", count: many}') == []


def test_what_can_t_be_worked_and_what_counts_nothing_has_no_line() -> None:
    assert worked_out(check(b"pieces: [", "case.yml")) == ""
    assert _told('rounds:\n  - {round: 1, work: "nonsense"}') == []


def test_a_long_list_is_cut_and_counted() -> None:
    grown = "".join(f'  - {{round: {n}, work: "ch 1, 2 sc in first st, sc around"}}\n' for n in range(2, 32))
    fragment = f'rounds:\n  - {{round: 1, work: "ch 1, 6 sc in ring, join"}}\n{grown}'
    assert _told(fragment)[SHOWN_PER_FILE + 1 :] == ["  and 11 more.", ""]


def test_it_is_quiet_in_colour() -> None:
    text = framed('rounds:\n  - {round: 1, work: "ch 1, 6 sc in ring, join, fasten off"}')
    bright = worked_out(check(text.encode(), "case.yml"), coloured)
    assert bright.count("\x1b[2m") == 2
