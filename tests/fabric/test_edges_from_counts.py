"""The edge that a stated count describes, on which work goes on after a mistake; the ends of rows."""

from typing import Any

import pytest

from loopleaf.fabric import Made
from loopleaf.fabric.around import row_ends
from loopleaf.fabric.thread import Trust, edge_of, trust_in
from loopleaf.fabric.worked import Space
from loopleaf.notation import parse_count

from .test_going_on import worked
from .test_pieces import FRONT


def told(count: str) -> Any:
    document = {"special stitches": {"shell": {"short": "sh", "work": "5 dc in same st", "text": "A fan."}}}
    tally, problems = parse_count(count, worked({**document, "pieces": {"front": FRONT}}).vocabulary)
    assert tally is not None, problems
    return tally


def edge(count: str, size: int = 0) -> list[str] | None:
    """As letters: the number of a stitch behind its kind, the length of a space in brackets."""
    places = edge_of(told(count), "half", size, 7, "B")
    if places is None:
        return None
    assert all((one.round, one.yarn) == (7, "B") for one in places if isinstance(one, Made | Space))
    return [
        f"({one.chains})#{one.number}" if isinstance(one, Space) else f"{one.kind[0]}{one.number}"
        for one in places
        if isinstance(one, Made | Space)
    ]


@pytest.mark.parametrize(
    ("count", "places"),
    [
        ("4", ["h1", "h2", "h3", "h4"]),
        ("3 sts", ["h1", "h2", "h3"]),
        ("2 sc, 3 dc", ["s1", "s2", "d3", "d4", "d5"]),
        ("4 dc, 2 ch-3 sps", ["d1", "d2", "(3)#1", "d3", "d4", "(3)#2"]),
        ("2 dc, 4 ch-1 sps", ["d1", "(1)#1", "(1)#2", "d2", "(1)#3", "(1)#4"]),
        ("3 dc, 3 ch-sps", ["d1", "(1)#1", "d2", "(1)#2", "d3", "(1)#3"]),
        ("3 dc, 2 picots", ["d1", "d2", "d3"]),
    ],
)
def test_its_stitches_with_its_spaces_spread_between_them(count: str, places: list[str]) -> None:
    assert edge(count) == places


def test_each_size_has_its_own() -> None:
    assert edge("2 (3, -)", 1) == ["h1", "h2", "h3"]
    assert edge("2 (3, -)", 2) is None
    assert edge("2 (3, -) dc, 1 (1, 1) ch-2 sp", 0) == ["d1", "d2", "(2)#1"]


def test_the_author_s_own_stitches_keep_their_name() -> None:
    places = edge_of(told("2 sh"), "half", 0, 0, "A")
    assert places is not None
    assert [getattr(one, "special", "") for one in places] == ["shell", "shell"]


@pytest.mark.parametrize(
    ("count", "counted", "trust"),
    [
        ("24", False, Trust.NUMBER),
        ("24", True, Trust.NUMBER),
        ("24 dc", False, Trust.NUMBER),
        ("24 dc, 4 ch-2 sps", False, Trust.NUMBER),
        ("24 dc, 4 ch-2 sps", True, Trust.NOTHING),
        ("6 dc2tog", False, Trust.NUMBER),
        ("6 3-dc cl", False, Trust.NOTHING),
        ("6 sh", False, Trust.NOTHING),
        ("4 ch-2 sps", False, Trust.NOTHING),
        ("24 dc, 8 ch", False, Trust.NOTHING),
    ],
)
def test_groups_and_counted_chains_hide_a_number(count: str, counted: bool, trust: Trust) -> None:
    assert trust_in(told(count), counted) is trust
    assert trust_in(None, counted) is Trust.NOTHING


def test_a_row_end_for_each_row_from_the_first_up() -> None:
    """Row 1 ends on the side where the odd rows end and the even ones begin."""
    front = worked({"pieces": {"front": FRONT}}).pieces[0]
    ends = row_ends(front, 0)
    assert [getattr(one, "number", 0) for one in ends] == list(range(1, 9))
    assert {getattr(one, "role", "") for one in ends} == {"row-end"}
    leaned_on = [one.into[0] for one in ends if isinstance(one, Made)]
    assert [getattr(one, "number", 0) for one in leaned_on] == [10, 1] * 4
    assert [getattr(one, "round", -1) for one in leaned_on] == list(range(8))
