"""Rounds as printed, against figures worked by hand (the files named below)."""

import json
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from loopleaf import trade
from loopleaf.fabric import Made, PatternWork, RoundWork, work_pattern
from loopleaf.pattern import load
from tests.yaml_text import read_yaml, written_yaml

CASES: list[dict[str, Any]] = [
    case
    for name in (
        "cases.yml",
        "printed.yml",
        "loops.yml",
        "edge_cases.yml",
        "print_places.yml",
        "print_gaps.yml",
        "print_chains.yml",
        "print_cases.yml",
        "print_words.yml",
        "rare_cases.yml",
        "repeats_print_2.yml",
        "places_print_2.yml",
        "print_moving_on.yml",
        "print_openings.yml",
        "print_closings.yml",
        "print_more_words.yml",
        "print_posts_and_rows.yml",
        "print_motifs.yml",
        "print_toys.yml",
        "print_everyday_words.yml",
        "print_garments.yml",
        "laid_out.yml",
        "print_silent.yml",
        "print_fourth.yml",
        "print_fifth.yml",
    )
    for case in read_yaml((Path(__file__).parent / name).read_text(encoding="utf-8"))
]


def pattern_of(case: dict[str, Any]) -> PatternWork:
    """The case as a pattern file, worked; once for all that is asked of it."""
    return _worked(json.dumps(case))


@cache
def _worked(told: str) -> PatternWork:
    case: dict[str, Any] = json.loads(told)
    worked = case.get("worked", "joined rounds")
    rows = worked.startswith("rows")
    entries = [{"row" if rows else "round": i + 1, "work": line[0]} for i, line in enumerate(case["lines"])]
    for entry, line in zip(entries, case["lines"], strict=True):
        if case.get("stated", True) and len(line) > 3 and not (len(line) > 4 and line[4].startswith("!")):
            entry["count"] = line[3]
    document: dict[str, Any] = {
        "title": case["name"],
        "terms": case.get("terms", "US"),
        "materials": {"yarns": {"A": {"name": "lichen"}, "B": {"name": "oat"}}},
        "pieces": {
            **case.get("before", {}),
            "piece": {"title": "Piece", "yarn": "A", "worked": worked, "rows" if rows else "rounds": entries},
        },
    }
    if "lay out" in case:
        document["finishing"] = [{"lay out": case["lay out"]}]
    if "start" in case:
        document["pieces"]["piece"]["start"] = case["start"]
    if "turning" in case:
        document["turning chains"] = case["turning"]
    if "chains" in case:
        document["chain spaces"] = case["chains"]
    if "specials" in case:
        document["special stitches"] = case["specials"]
    source = load(written_yaml(document).encode(), "case.yml")
    assert source.pattern is not None, source.findings
    return work_pattern(source)


def makes_of(round_: RoundWork, terms: str) -> dict[str, int]:
    """What the round makes, in the case's own terms."""
    worked = round_.sizes[0]
    assert worked is not None
    found: dict[str, int] = {}
    for kind, number in worked.makes.items():
        if isinstance(kind, tuple):
            found[f"ch-{kind[1]} sp"] = number
        elif kind == "picot":
            found[kind] = number
        else:
            named = {row.key: getattr(row, terms.lower()).short for row in trade.stitches()}
            found[named.get(kind, kind)] = number
    return found


@pytest.mark.parametrize("case", CASES, ids=[case["name"] for case in CASES])
def test_rounds(case: dict[str, Any]) -> None:
    work = pattern_of(case)
    assert [p for p in work.problems if p.problem.severity == "error"] == []
    rounds = work.pieces[-1].rounds
    assert len(rounds) == len(case["lines"])
    for round_, line in zip(rounds, case["lines"], strict=True):
        wanted = [line[4]] if len(line) > 4 else []
        troubles = [t.rule for t in round_.troubles]
        assert troubles == wanted, (line[0], round_.troubles)
        if not wanted:
            worked = round_.sizes[0]
            assert worked is not None
            made = (worked.uses, makes_of(round_, case.get("terms", "US")))
            assert made == (line[1], line[2]), line[0]
            assert isinstance(line[3], str) or worked.count == line[3], line[0]  # a text is stated by kind


@pytest.mark.parametrize("case", CASES, ids=[case["name"] for case in CASES])
def test_every_stitch_knows_what_it_was_worked_into(case: dict[str, Any]) -> None:
    work = pattern_of(case)
    for round_ in work.pieces[-1].rounds:
        worked = round_.sizes[0]
        assert worked is not None
        numbers = [m.number for m in worked.made if getattr(m, "number", 0) and hasattr(m, "kind")]
        assert numbers == list(range(1, len(numbers) + 1)) or round_.troubles
        for made in worked.made:
            if isinstance(made, Made) and made.role == "stitch" and not made.kind.startswith("foundation-"):
                assert made.into, round_.plan.work
