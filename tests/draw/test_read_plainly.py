"""A program that reads a chart sign by sign, and knows nothing of groups and uses, finds what was counted."""

import json
from collections import Counter
from functools import cache
from textwrap import indent
from typing import Any
from xml.etree import ElementTree

import pytest

from loopleaf.draw import diagram
from loopleaf.fabric import work_pattern
from loopleaf.pattern import load
from loopleaf.publish.json_report import report
from loopleaf.review import check
from tests.measure.worked_patterns import HEAD

from .pieces import COLLECTION, DEMO, charted, rounds, rows

EDGED = rows("sc in 2nd ch from hook and in each ch across, turn", "sl st in each st across")
SAID = ("data-kind", "data-round", "data-stitch", "data-counts-as")
PETALS = rounds(
    "ch 1, 6 sc in ring, join",
    "ch 1, *(sc, ch 2, dc, ch-3 picot, ch 2, sl st) in next st; rep from * around, join",
)


@cache
def told(data: bytes) -> Any:
    """What `check --format json` says of a file."""
    (found,) = json.loads(report([check(data, "case.yml")]))
    return found


def first(value: Any) -> Any:
    """The number of the first size, which is drawn."""
    return value[0] if isinstance(value, list) else value


def holds(svg: str, rounds_told: list[Any], chains_counted: bool) -> int:
    """Every counted stitch has one sign, which says its kind, its round and its number there. How many."""
    signs = [one.attrib for one in ElementTree.fromstring(svg).iter() if one.get("data-kind")]
    assert all("data-round" in sign for sign in signs)
    assert {sign["data-round"] for sign in signs} - {"0"} <= {one["label"] for one in rounds_told}
    for one in rounds_told:
        counted = [sign for sign in signs if sign["data-round"] == one["label"] and "data-stitch" in sign]
        kinds = Counter(sign.get("data-counts-as", sign["data-kind"]) for sign in counted)
        makes: Counter[str] = Counter()
        for kind, numbers in one["makes"].items():
            if kind.endswith(" sp"):
                makes["ch"] += first(numbers) * int(kind[3:-3]) * chains_counted
            elif kind != "picot":
                makes[kind] += first(numbers)
        assert kinds == makes
        count = first(one["count"]) or 0
        assert [sign["data-stitch"] for sign in counted] == [str(at + 1) for at in range(count)]
    return sum(first(one["count"]) or 0 for one in rounds_told)


@pytest.mark.parametrize("name", DEMO)
def test_every_counted_stitch_of_the_demo(name: str) -> None:
    data = (COLLECTION / f"{name}.yml").read_bytes()
    pattern = load(data, name).pattern
    assert pattern is not None
    counted = 0
    for piece in told(data)["pieces"]:
        if not piece["rounds"]:
            continue
        chart = charted(name, piece["name"])
        for left in (False, True):
            counted += holds(chart.svg("UK", left), piece["rounds"], pattern.chain_spaces == "counted")
    assert counted > 500


@pytest.mark.parametrize("name", DEMO)
def test_a_chart_of_all_pieces_has_each_as_it_is_alone(name: str) -> None:
    root = ElementTree.fromstring(charted(name).svg())
    for group in root.iter():
        if piece := group.get("data-piece"):
            alone = ElementTree.fromstring(charted(name, piece).svg())
            said, alike = (
                [{name: one.get(name) for name in SAID} for one in part.iter() if one.get("data-kind")]
                for part in (group, alone)
            )
            assert said == alike


def small(text: str, chains: str = "not counted") -> tuple[str, list[Any]]:
    """The chart of a small piece, and what is told of its rounds. chains: the pattern's `chain spaces`."""
    head = HEAD.replace("chain spaces: not counted", f"chain spaces: {chains}")
    data = f"{head}pieces:\n{indent(text, '  ')}".encode()
    return diagram(work_pattern(load(data, "case.yml"))), told(data)["pieces"][0]["rounds"]


def test_slip_stitches_that_are_counted_have_their_numbers() -> None:
    drawn, said = small(EDGED)
    assert said[1]["makes"] == {"sl st": 10}
    assert holds(drawn, said, chains_counted=False) == 20


@pytest.mark.parametrize("chains", ["not counted", "counted"])
def test_single_chains_have_numbers_where_they_are_counted(chains: str) -> None:
    drawn, said = small(PETALS, chains)
    counted = chains == "counted"
    assert holds(drawn, said, counted) == 6 + 6 * (3 + 4 * counted)


def test_rows_worked_alike_have_signs_of_their_own() -> None:
    drawn, said = small(rows(*["ch 1, sc in each st across, turn"] * 30))
    assert holds(drawn, said, chains_counted=False) == 30 * 11
