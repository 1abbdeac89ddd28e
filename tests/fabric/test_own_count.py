"""A count at the line's end is the author's own, and is held against the stitches like one beside it."""

from typing import Any

from loopleaf.fabric.own_count import own_count
from loopleaf.review import check

HEAD = """title: Coaster
terms: US
gauge: not critical
pieces:
  coaster:
    worked: joined rounds
    start: magic ring
    rounds:
      - {round: 1, work: "ch 1, 12 sc in ring, join (12)"}
"""


def _checked(*rounds: str) -> tuple[list[Any], list[tuple[str, int, int]]]:
    text = HEAD + "".join(f"      - {{{one}}}\n" for one in rounds)
    checked = check(text.encode(), "coaster.yml")
    assert checked.work is not None
    stated = [round.plan.stated for round in checked.work.pieces[0].rounds]
    wrong = [one for one in checked.findings if one.severity == "error"]
    return stated, [(one.rule, one.location.line, one.location.column) for one in wrong]


def test_a_count_in_brackets_or_behind_a_dash_is_stated() -> None:
    stated, wrong = _checked(
        'round: 2, work: "ch 1, sc in each st around, join (12 sc)"',
        'round: 3, work: "ch 1, sc in each st around, join — 12 sts"',
        'round: 4, work: "ch 1, sc in each st around, join (12 sc), fasten off"',
    )
    assert stated == ["12", "12 sc", "12 sts", "12 sc"]
    assert wrong == []


def test_it_is_held_against_the_stitches_where_it_stands() -> None:
    assert _checked('round: 2, work: "ch 1, sc in each st around, join (13 sc)"')[1] == [
        ("count-differs", 10, 61)
    ]


def test_beside_a_count_of_the_entry_both_must_hold() -> None:
    both = 'round: 2, work: "ch 1, sc in each st around, join (13 sc)", count: 12'
    assert _checked(both)[1] == [("count-differs", 10, 61)]


def test_the_published_line_says_it_once() -> None:
    checked = check(HEAD.encode(), "coaster.yml")
    assert checked.work is not None
    round = checked.work.pieces[0].rounds[0]
    assert own_count(round.settled) == (round.settled, None)
    assert round.stated is not None
