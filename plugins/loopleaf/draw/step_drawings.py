"""How a technique is done: a short sequence of drawings of yarn and hook, each with a sentence.

All of them are made from the way that the yarn takes, written once for each technique in `steps.yml`; a
left-hander's are their mirror images.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import accumulate
from typing import Any

from .. import trade
from ..trade import Terms
from ..trade.data_files import data_file
from .measuring import arrow
from .sketch import Figure, Sketch
from .step_grounds import setting
from .step_moves import carried_out
from .step_needle import cord_scene, seam_scene
from .step_scene import LEFT, RIGHT, reach, scene
from .strands import Solid, Strand, draw_strands


@dataclass(frozen=True, slots=True)
class Step:
    """One drawing, for a right hand and a left one, and the sentence beside it."""

    right: Figure
    left: Figure
    words: str


@dataclass(frozen=True, slots=True)
class Technique:
    """A technique in steps. entries: the glossary's entries that it explains."""

    key: str
    title: str
    entries: tuple[str, ...]
    steps: tuple[Step, ...]


def techniques(terms: Terms) -> tuple[Technique, ...]:
    """All that are drawn, in the order in which one learns them."""
    return tuple(_technique(row["key"], terms) for row in _rows().values())


@cache
def _technique(key: str, terms: Terms) -> Technique:
    row = _rows()[key]
    title = _sentence(row["title"], terms)
    words = [_sentence(step["say"], terms) for step in row["steps"]]
    pairs = _drawn(key)
    steps = tuple(
        Step(_figure(right, title, said), _figure(left, title, said), said)
        for (right, left), said in zip(pairs, words, strict=True)
    )
    return Technique(key, title, tuple(_entries(row["entries"])), steps)


def _entries(listed: Sequence[str]) -> Iterator[str]:
    """The glossary's entries; one that ends in `-*` is that of every stitch."""
    for one in listed:
        if one.endswith("-*"):
            yield from (one[:-1] + stitch.key for stitch in trade.stitches())
        else:
            yield one


def _sentence(text: str, terms: Terms) -> str:
    return ". ".join(part[:1].upper() + part[1:] for part in trade.say(text, terms).split(". "))


def _figure(sketch: tuple[Sketch, float, float], title: str, said: str) -> Figure:
    drawing, top, foot = sketch
    alt = f"{title}. {said}"
    return drawing.figure(title, alt, 0.0, (LEFT, top, RIGHT, foot))


@cache
def _drawn(key: str) -> Sequence[tuple[tuple[Sketch, float, float], tuple[Sketch, float, float]]]:
    """The drawings of a technique for both hands, each with the top and the foot of its frame."""
    row = _rows()[key]
    ways = [step.get("arrow") for step in row["steps"]]
    moments, top, foot = _moments(row)
    found = []
    for moment, way in zip(moments, ways, strict=True):
        pair = (Sketch(False), Sketch(True))
        for sketch in pair:
            draw_strands(sketch, moment)
            if way is not None:
                start, end = ((x, y) for x, y in way)
                arrow(sketch, start, end, both=False)
        found.append(((pair[0], top, foot), (pair[1], top, foot)))
    return found


def _moments(row: Mapping[str, Any]) -> tuple[list[list[Strand | Solid]], float, float]:
    """What there is to draw after each step, and how far up and down the drawings go, the same for all."""
    needle = _WITH_A_NEEDLE.get(row["ground"])
    if needle is not None:
        passes = list(accumulate((step["do"] for step in row["steps"]), lambda done, more: [*done, *more]))
        return [needle(done) for done in passes], -23.5, 13.0
    place = setting(row["ground"], row["stitch"])
    moments = []
    state = place.start
    for step in row["steps"]:
        state = carried_out(state, step["do"], place.ground)
        moments.append(scene(state, list(place.fabric(state))))
    return moments, min(reach(moment)[0] for moment in moments) - 3.0, place.foot


_WITH_A_NEEDLE: Mapping[str, Callable[[Sequence[str]], list[Strand | Solid]]] = {
    "posts": cord_scene,
    "seam": seam_scene,
}


@cache
def _rows() -> Mapping[str, Mapping[str, Any]]:
    table = data_file(__package__, "steps.yml")
    return {row["key"]: row for row in table["techniques"]}
