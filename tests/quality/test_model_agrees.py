"""The engine and the little model say the same of every round: places used, kinds made, the count.

The model is written from the format alone and knows nothing of the engine. A sample of generated patterns
runs with every test run; `make long` sets LOOPLEAF_GENERATED to twenty thousand.
"""

import os
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from loopleaf import fabric, pattern

from .collected import DEMO, by_hand, constructs, of_the_guide, published
from .generated import patterns
from .generated_edges import edges
from .generated_motifs import motifs
from .generated_moving_on import moving_on
from .generated_rows import rows
from .generated_turning_chains import turning_chains
from .model import Verdict, judge

GENERATED = int(os.environ.get("LOOPLEAF_GENERATED", "150"))
PUBLISHED = list(published())
BY_HAND = list(by_hand())
IN_WORDS = [*constructs(), *of_the_guide()]
SORTS = {
    "count-differs": ("count",),
    "inc-unclear": ("unclear",),
    "join-misses": ("join",),
    "no-such-place": ("place", "join", "fit"),
    "repeat-does-not-fit": ("fit",),
    "repeat-unclear": ("unclear", "fit"),
    "side-differs": ("turn",),
    "stitches-left-over": ("fit",),
    "turning-chain-contradicted": ("count",),
    "works-past-the-end": ("fit", "place"),
    "yarn-not-joined": ("yarn",),
}
"""The model's own names for what a rule finds; none of a place, and no more of it, are near each other."""


def differences(data: bytes, verdict: Verdict) -> list[str]:
    """Round by round, where engine and model don't say the same."""
    work = fabric.work_pattern(pattern.load(data, "pattern.yml"))
    found = []
    for piece in verdict.pieces:
        theirs = work.piece(piece.name)
        rounds = theirs.rounds if theirs else []
        for size, ours in enumerate(piece.sizes):
            engine = {one.plan.label: made for one in rounds if (made := one.sizes[size]) is not None}
            for one in ours:
                made = engine.get(one.label)
                they = made and (made.uses, dict(made.makes), made.count)
                we = (one.uses, dict(one.makes), one.count)
                if they != we:
                    found.append(f"{piece.name} {one.label}, size {size}: engine {they}, model {we}")
    return found


def engine_errors(data: bytes) -> list[str]:
    work = fabric.work_pattern(pattern.load(data, "pattern.yml"))
    return [f"{one[3]}: {one[1].message}" for one in work.problems if one[1].severity == "error"]


@pytest.mark.parametrize("path", DEMO, ids=lambda path: path.stem)
def test_on_the_demo_patterns(path: Path) -> None:
    data = path.read_bytes()
    verdict = judge(data)
    assert verdict.cannot_say == ""
    assert verdict.wrong == []
    assert differences(data, verdict) == []


@pytest.mark.parametrize(("name", "data", "example"), PUBLISHED, ids=[one[0] for one in PUBLISHED])
def test_on_the_published_passages(name: str, data: bytes, example: dict[str, Any]) -> None:
    """Where the print contradicts itself, the model finds it in the same round."""
    verdict = judge(data)
    assert verdict.cannot_say == ""
    if example["agrees"]:
        assert verdict.wrong == []
    else:
        assert verdict.wrong[0].round == str(example["finds"]["round"])
    assert differences(data, verdict) == []


@pytest.mark.parametrize(("name", "data"), IN_WORDS, ids=[one[0] for one in IN_WORDS])
def test_on_every_construct_of_the_guide(name: str, data: bytes) -> None:
    """The guide's own examples, and patterns in its rarer words whose counts were worked out by hand."""
    verdict = judge(data)
    assert verdict.cannot_say == ""
    assert verdict.wrong == []
    assert engine_errors(data) == []
    assert differences(data, verdict) == []


@settings(
    max_examples=GENERATED,
    deadline=None,
    derandomize=True,
    database=None,
    suppress_health_check=list(HealthCheck),
)
@given(st.one_of(patterns(), motifs, rows, edges, moving_on, turning_chains))
def test_on_patterns_made_by_chance(data: bytes) -> None:
    verdict = judge(data)
    assert verdict.cannot_say == ""
    assert verdict.wrong == [], data.decode()
    assert engine_errors(data) == [], data.decode()
    assert differences(data, verdict) == [], data.decode()


@pytest.mark.parametrize(("name", "data", "lines"), BY_HAND, ids=[one[0] for one in BY_HAND])
def test_on_rounds_worked_by_hand(name: str, data: bytes, lines: list[list[Any]]) -> None:
    """A person's figures are a third voice; where a line must be found wrong, the model finds it there."""
    verdict = judge(data)
    assert verdict.cannot_say == ""
    wrong = [(str(number), line[4]) for number, line in enumerate(lines, 1) if len(line) > 4]
    assert [one.round for one in verdict.wrong][:1] == [number for number, _ in wrong[:1]]
    for one, (_, rule) in zip(verdict.wrong, wrong[:1], strict=False):
        assert one.what in SORTS[rule]
    for line, done in zip(lines, verdict.pieces[-1].sizes[0], strict=False):
        if len(line) == 4:
            assert (done.uses, dict(done.makes)) == tuple(line[1:3]), line[0]
            assert isinstance(line[3], str) or done.count == line[3], line[0]
