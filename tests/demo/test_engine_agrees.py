"""The engine and the counting by hand meet here, round by round and kind by kind."""

from collections import Counter
from itertools import groupby

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


PLAIN = {
    "FPdc": "dc",
    "BPdc": "dc",
    "RtrF": "tr",
    "RtrB": "tr",
    "dc3tog": "dc",
    "cl": "dc",
    "tall cl": "tr",
}


def _opened(edge: Edge) -> Counter[str]:
    """By plain kinds: shells opened, post stitches and several drawn together as the stitches they are."""
    tally: Counter[str] = Counter()
    for thing, run in groupby(edge):
        number = len(list(run))
        if thing == "sh":
            tally["dc"] += 5 * number
        elif thing == "ch":
            tally[f"{number} chains"] += 1
        elif thing.endswith(" sp"):
            tally[f"{''.join(figure for figure in thing if figure.isdigit())} chains"] += number
        else:
            tally[PLAIN.get(thing, thing)] += number
    return tally


def _as_worked(worked: WorkedRound, terms: notation.Terms) -> Counter[str]:
    tally: Counter[str] = Counter()
    for kind, number in worked.makes.items():
        name = f"{kind[1]} chains" if isinstance(kind, tuple) else _short(kind, terms)
        tally[name] += number
    return tally


def _short(kind: str, terms: notation.Terms) -> str:
    if kind == "picot":
        return kind
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
                if not edge:
                    assert size is None, f"{piece} {one.plan.label}"
                    continue
                assert size is not None
                assert _as_worked(size, work.pattern.terms) == _opened(edge), f"{piece} {one.plan.label}"
