"""The JSON of every demo pattern against what the format promises to other programs, field by field."""

import json
from numbers import Real
from pathlib import Path
from typing import Any

import pytest

from loopleaf.pattern import load
from loopleaf.publish.json_report import report
from loopleaf.review import check
from loopleaf.trade import stitches
from tests.review.frame import framed

ROOT = Path(__file__).resolve().parents[1]
FILES = sorted((ROOT / "patterns").glob("*.yml"))
ROUND = ["label", "uses", "makes", "count", "stated"]
PROMISED = {"pattern", "pieces", "size", "yarn", "cords", "hours", "level", "findings"}
"""By the format: the least that is there."""
BESIDES = {"learn_first", "learning_hours", "cautions", "other_yarns", "heights"}
FINDING = {
    *("rule", "severity", "file", "line", "column", "end_line", "end_column", "piece", "round"),
    *("message", "working", "suggestion", "related", "url"),
}


def of(data: bytes, file: str = "case.yml") -> Any:
    (found,) = json.loads(report([check(data, file)]))
    return found


def one_a_size(value: Any, sizes: int) -> list[Any]:
    """The values of a number: itself, or a list with one a size."""
    if sizes == 1:
        assert not isinstance(value, list)
        return [value]
    assert isinstance(value, list)
    assert len(value) == sizes
    return value


def is_range(value: Any) -> bool:
    return isinstance(value, list) and len(value) == 2 and value[0] <= value[1]


@pytest.fixture(params=FILES, ids=lambda file: file.name)
def told(request: pytest.FixtureRequest) -> tuple[Any, Any]:
    """A demo pattern as its file says it, and as the report does."""
    data = request.param.read_bytes()
    pattern = load(data, request.param.name).pattern
    assert pattern is not None
    return pattern, of(data, request.param.name)


def test_the_file(told: tuple[Any, Any]) -> None:
    _, found = told
    assert list(found)[:2] == ["pattern", "pieces"]
    assert set(found) == PROMISED | BESIDES
    assert found["pattern"].endswith(".yml")
    for finding in found["findings"]:
        assert set(finding) == FINDING


def test_every_round_worked_has_an_entry(told: tuple[Any, Any]) -> None:
    pattern, found = told
    assert [piece["name"] for piece in found["pieces"]] == list(pattern.pieces)
    for piece in found["pieces"]:
        numbers = [int(one["label"]) for one in piece["rounds"] if one["label"].isdigit()]
        assert numbers == sorted(numbers)
        entries = [entry for entry in pattern.pieces[piece["name"]].entries if entry.run]
        stated = [entry.run for entry in entries if entry.run.last is not None and not entry.every]
        for run in stated:
            assert {str(number) for number in run} <= {one["label"] for one in piece["rounds"]}
        assert isinstance(piece.get("shape", []), list)


def test_the_numbers_of_a_round(told: tuple[Any, Any]) -> None:
    pattern, found = told
    sizes = pattern.size_count
    uk = pattern.terms == "UK"
    rows = {row.key: (row.uk if uk else row.us) for row in stitches()}
    plain = {name.short for name in rows.values() if name} | {
        special.short or name for name, special in pattern.special_stitches.items() if special.yarn_overs
    }
    for one in (one for piece in found["pieces"] for one in piece["rounds"]):
        assert list(one)[:5] == ROUND
        assert isinstance(one["label"], str)
        assert one["stated"] is None or isinstance(one["stated"], str)
        counts, uses = one_a_size(one["count"], sizes), one_a_size(one["uses"], sizes)
        for kind, numbers in one["makes"].items():
            assert kind in plain or kind == "picot" or kind.removeprefix("ch-").removesuffix(" sp").isdigit()
            one_a_size(numbers, sizes)
        for size, (count, used) in enumerate(zip(counts, uses, strict=True)):
            assert (count is None) == (used is None)
            if count is None:
                continue
            made = {kind: one_a_size(numbers, sizes)[size] for kind, numbers in one["makes"].items()}
            spaces = {kind: number for kind, number in made.items() if kind.startswith("ch-")}
            stitched = sum(made.values()) - sum(spaces.values()) - made.get("picot", 0)
            chains = sum(int(kind[3:-3]) * number for kind, number in spaces.items())
            assert count <= stitched + chains
            if one["stated"] and one["stated"].isdigit():
                assert count == int(one["stated"])
        across = {"around_mm", "width_mm"} & set(one)
        assert len(across) == ("height_mm" in one)
        for name in (*across, *({"height_mm"} & set(one))):
            assert all(value is None or isinstance(value, Real) for value in one_a_size(one[name], sizes))


def test_the_measures(told: tuple[Any, Any]) -> None:
    pattern, found = told
    sizes = pattern.size_count
    for name, value in found["size"].items():
        assert name.endswith("_mm")
        assert all(is_range(one) for one in ([value] if sizes == 1 else value))
    assert [yarn["yarn"] for yarn in found["yarn"]] == list(pattern.materials.yarns)
    for yarn in found["yarn"]:
        assert set(yarn) == {"yarn", "metres", "grams", "balls"}
        for name in ("metres", "grams", "balls"):
            values = [yarn[name]] if sizes == 1 or yarn[name] is None else yarn[name]
            assert all(value is None or is_range(value) for value in values)
    for cord in found["cords"]:
        assert set(cord) == {"piece", "length_mm", "chains"}
    hours = [found["hours"]] if sizes == 1 else found["hours"]
    assert all(is_range(value) for value in hours)
    learning = [found["learning_hours"]] if sizes == 1 else found["learning_hours"]
    assert all(slow[1] > quick[1] for slow, quick in zip(learning, hours, strict=True))
    for caution in found["cautions"]:
        assert set(caution) == {"title", "because", "standards"}
        assert caution["because"]
    for other in found["other_yarns"]:
        assert set(other) == {"weight", "hook_mm", "size"}
        assert abs(other["weight"] - next(iter(pattern.materials.yarns.values())).weight) == 1
    adjustable = [piece["name"] for piece in found["pieces"] if "adjustable" in piece]
    assert bool(found["heights"]) == bool(adjustable)
    for height in found["heights"]:
        assert set(height) == {"more", "by_mm", "adjustable", "size", "yarn", "cords", "hours"}
        assert set(height["size"]) == set(found["size"])
        assert height["more"] * height["by_mm"] > 0
        assert {part["piece"] for part in height["adjustable"]} == set(adjustable)
    for piece in found["pieces"]:
        assert ("size" in piece) == any("height_mm" in one for one in piece["rounds"])
    assert set(found["level"]) == {"stated", "worked_out", "because"}
    assert found["level"]["stated"] == pattern.level
    assert (found["level"]["worked_out"] == "basic") == (found["learn_first"] == [])


def test_a_tall_stitch_without_a_name_goes_by_its_short_one() -> None:
    """`yarn overs: 6` has no plain kind to be opened into."""
    text = "special stitches:\n  giant: {short: gt, yarn overs: 6}\n"
    text += 'rounds:\n  - {round: 1, work: "ch 1, (gt, sc) x 4 in ring, join, fasten off"}\n'
    (piece,) = of(framed(text).encode())["pieces"]
    assert piece["rounds"][0]["makes"] == {"gt": 4, "sc": 4}


def test_a_picot_goes_by_that_name_whatever_the_author_calls_it() -> None:
    text = 'special stitches: {picot: {short: p, work: "ch 3, sl st in 3rd ch from hook"}}\n'
    text += 'rounds:\n  - {round: 1, work: "ch 1, (sc in ring, p) x 6, join", count: "6 sc, 6 p"}\n'
    (piece,) = of(framed(text).encode())["pieces"]
    assert piece["rounds"][0]["makes"] == {"sc": 6, "picot": 6}


def test_a_line_that_cannot_be_read_has_no_numbers() -> None:
    text = 'rounds:\n  - {round: 1, work: "ch 1, 8 sc in ring, join", count: 8}\n'
    text += '  - {round: 2, work: "ch 1, blorb in each st around, join", count: 8}\n'
    (piece,) = of(framed(text).encode())["pieces"]
    assert piece["rounds"][1] == {"label": "2", "uses": None, "makes": {}, "count": None, "stated": "8"}


@pytest.mark.parametrize("data", [b"pieces: [", b"\xff\xfepieces:", b"pieces: {a: 1", b"pieces:\n\tx: 1\n"])
def test_a_file_that_cannot_be_read_has_no_pieces(data: bytes) -> None:
    found = of(data)
    assert found["pieces"] == []
    assert found["findings"]
    assert set(found) == {"pattern", "pieces", "findings"}
