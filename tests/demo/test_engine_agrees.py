"""The engine and the counting by hand meet here, round by round and kind by kind."""

from collections import Counter

import pytest

from loopleaf import notation
from loopleaf.fabric import WorkedRound
from loopleaf.notation.tree import Stitch
from loopleaf.review import Checked, check

from . import stated
from .by_hand import Edge
from .counts import PATTERNS


def _checked(name: str) -> Checked:
    path = stated.COLLECTION / f"{name}.yml"
    return check(path.read_bytes(), path.name)


def _opened(edge: Edge) -> Counter[str]:
    """By plain kinds: shells opened into their stitches, post stitches as the stitches that they are."""
    tally: Counter[str] = Counter()
    for thing in edge:
        if thing == "sh":
            tally["dc"] += 5
        elif thing.endswith(" sp"):
            tally[f"{''.join(figure for figure in thing if figure.isdigit())} chains"] += 1
        else:
            tally[thing.removeprefix("FP").removeprefix("BP")] += 1
    return tally


def _as_worked(worked: WorkedRound, terms: notation.Terms) -> Counter[str]:
    tally: Counter[str] = Counter()
    for kind, number in worked.makes.items():
        name = f"{kind[1]} chains" if isinstance(kind, tuple) else _short(kind, terms)
        tally[name] += number
    return tally


def _short(kind: str, terms: notation.Terms) -> str:
    return notation.stitch_name(Stitch(kind), terms)


@pytest.mark.parametrize("name", list(PATTERNS))
def test_nothing_is_found_in_the_demo_patterns(name: str) -> None:
    assert _checked(name).findings == []


@pytest.mark.parametrize("name", list(PATTERNS))
def test_engine_and_hand_make_the_same(name: str) -> None:
    work = _checked(name).work
    assert work is not None
    for piece, rounds in PATTERNS[name]().items():
        worked = work.piece(piece)
        assert worked is not None
        assert [one.plan.number for one in worked.rounds] == sorted(rounds)
        for one in worked.rounds:
            edges = rounds[one.plan.number]
            edges = edges * len(one.sizes) if len(edges) == 1 else edges
            for size, edge in zip(one.sizes, edges, strict=True):
                assert size is not None
                assert _as_worked(size, work.pattern.terms) == _opened(edge), f"{piece} {one.plan.label}"
