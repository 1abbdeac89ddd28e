"""Whatever can be worked can be drawn, right or wrong: the engine's cases and the review's."""

from collections import Counter
from pathlib import Path
from typing import Any

import pytest

from loopleaf.draw import diagram, first_picture, piece_picture
from loopleaf.fabric import Made, PatternWork
from loopleaf.measure import measure
from loopleaf.notation import stitch_name
from loopleaf.notation.tree import Stitch
from loopleaf.review import check
from tests.fabric.test_cases import CASES, pattern_of
from tests.review.frame import framed
from tests.yaml_text import read_yaml

from .pieces import marked, stitches_by_kind, tree

RULES = sorted((Path(__file__).resolve().parents[1] / "review" / "cases").glob("*.yml"))


def is_drawn(work: PatternWork) -> None:
    """Both drawings are whole, and the diagram has every counted stitch."""
    measured = measure(work)
    whole = first_picture(work, measured)
    assert not whole or tree(whole) is not None
    for piece in work.pieces:
        drawn = diagram(work, piece.name, measured=measured)
        assert bool(drawn) == bool(piece_picture(work, piece.name, measured))
        counted = Counter(
            name_of(made.kind, work)
            for one in piece.rounds
            for size in one.sizes[:1]
            if size is not None
            for made in size.made
            if isinstance(made, Made) and made.number
        )
        counted["ch"] += sum(
            size.count - sum(isinstance(made, Made) and made.number > 0 for made in size.made)
            for one in piece.rounds
            for size in one.sizes[:1]
            if size is not None
        )
        signs = marked(drawn) if drawn else []
        labels = {one.plan.label for one in piece.rounds}
        assert sum((stitches_by_kind(signs, label) for label in labels), Counter()) == counted


def name_of(kind: str, work: PatternWork) -> str:
    special = work.pattern.special_stitches.get(kind)
    return (special.short or kind) if special else stitch_name(Stitch(kind), work.pattern.terms)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_the_engines_cases(case: dict[str, Any]) -> None:
    is_drawn(pattern_of(case))


@pytest.mark.parametrize("file", RULES, ids=lambda file: file.stem)
def test_the_reviews_cases(file: Path) -> None:
    cases = read_yaml(file.read_text("utf-8"))
    for fragment in (one for part in cases.values() for one in part if isinstance(one, str)):
        if (
            len(fragment) > 5000 or file.stem == "number-too-large"
        ):  # what is too large isn't published either
            continue
        work = check(framed(fragment).encode(), "case.yml").work
        if work is not None:
            is_drawn(work)
