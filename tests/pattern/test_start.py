from typing import Any

import pytest
from pydantic import ValidationError

from loopleaf.pattern import Numbers, Start


@pytest.mark.parametrize(
    ("written", "kind", "chain"),
    [
        ("magic ring", "magic ring", None),
        ("Adjustable ring", "magic ring", None),
        ("magic circle", "magic ring", None),
        ("ring", "ring", None),
        ("chain 4, joined", "chain ring", (4,)),
        ("chain 4, join", "chain ring", (4,)),
        ("ch 4, join to form a ring", "chain ring", (4,)),
        ("chain 21", "chain", (21,)),
        ("4ch, joined", "chain ring", (4,)),
        ("6 ch, join with ss to form a ring", "chain ring", (6,)),
        ("30 chains", "chain", (30,)),
        ("80 (90, 100) ch", "chain", (80, 90, 100)),
        ("8ch, both sides", "both sides", (8,)),
        ("chain  80 (90, 100)", "chain", (80, 90, 100)),
        ("chain 8, both sides", "both sides", (8,)),
        ({"chain": "30", "multiple": "14", "plus": "2"}, "chain", (30,)),
        ({"chain": "30", "joined": "yes"}, "chain ring", (30,)),
        ({"chain": "8", "both sides": "yes"}, "both sides", (8,)),
        ({"edge": "yoke", "round": "14", "stitches": "unworked"}, "edge", None),
        ({"edge": "square", "around": "true"}, "edge", None),
        ({"edge": "square", "laid out": "yes"}, "edge", None),
        ({"edge": "front", "row ends": "true"}, "edge", None),
    ],
)
def test_ways_to_begin(written: Any, kind: str, chain: tuple[int, ...] | None) -> None:
    start = Start.model_validate(written)
    assert start.kind == kind
    assert start.chain == (Numbers(chain) if chain else None)
    assert start.text == (" ".join(written.split()) if isinstance(written, str) else "")


def test_the_fields_of_a_multiple_and_an_edge() -> None:
    multiple = Start.model_validate({"chain": "30", "multiple": "14", "plus": "2"})
    edge = Start.model_validate({"edge": "yoke", "round": "14", "stitches": "unworked"})
    ends = Start.model_validate({"edge": "front", "row ends": "true"})
    assert (multiple.multiple, multiple.plus) == (14, 2)
    assert (edge.edge, edge.round, edge.stitches, edge.around, edge.row_ends) == (
        "yoke",
        14,
        "unworked",
        False,
        False,
    )
    assert (ends.around, ends.row_ends) == (False, True)


@pytest.mark.parametrize(
    "written",
    [
        {"edge": "square", "laid out": "yes", "row ends": "yes"},
        {"edge": "square", "laid out": "yes", "round": "3"},
        "slip knot",
        "chain",
        "chain four",
        "chain 4, joined, both sides",
        {},
        {"plus": "2"},
        None,
        [],
    ],
)
def test_no_way_to_begin(written: Any) -> None:
    with pytest.raises(ValidationError):
        Start.model_validate(written)
