"""Rounds that are meant to lie flat, against the growth that flat work has."""

from collections.abc import Iterator
from dataclasses import dataclass

from ..measure import Flatness, RoundSize, edge_a_height, flatness, way_out
from ..measure.gauge import start_mm
from ..pattern import Finding
from .rule import Words, told
from .subject import Subject

_WINDOW = 3
_FAR = (0.5, 1.6)
"""Three rounds on end may stray farther than the whole: not every round has increases (chosen here)."""


@dataclass(frozen=True, slots=True)
class Unflat:
    """Rounds meant to lie flat that won't. first, last: their labels. stitches: of the last, as worked.

    lying: how many it would have if they lay flat.
    """

    piece: str
    first: str
    last: str
    growth: Flatness
    stitches: int
    lying: int


def unflat(subject: Subject) -> Iterator[Unflat]:
    """One a run of `lies flat`: the whole run, else the first three rounds in it that stray far."""
    for name, model in subject.pattern.pieces.items():
        measure, work = subject.measured.piece(name), subject.work.piece(name)
        if measure is None or work is None or measure.scale is None or not measure.in_rounds:
            continue
        known = measure.known_rounds(0)
        rounds = way_out(known)
        width = measure.scale.width_mm
        start = start_mm(work, 0, measure.scale)
        for run in model.lies_flat:
            chosen = [at for at, one in enumerate(rounds) if _in_run(one, run.first, run.last)]
            if not chosen:
                continue
            first, last = chosen[0], chosen[-1]
            top = next(one for one in reversed(known) if _in_run(one, run.first, run.last))
            if top.petals or top.on:  # petals and arches hang free
                continue
            windows: list[tuple[int, int, tuple[float, float] | None]] = [(first, last, None)]
            windows += [
                (at, at + _WINDOW - 1, _FAR)
                for at in range(first, last - _WINDOW + 2)
                if not any(one.on for one in rounds[at : at + _WINDOW])
            ]
            for low, high, limits in windows:
                below = rounds[low - 1].length_mm if low else start
                growth = flatness(rounds[low : high + 1], below, width)
                if growth is None:
                    continue
                far = growth.form != "flat" if limits is None else not limits[0] <= growth.ratio <= limits[1]
                if far:
                    counted = high - low + (0 if below is None else 1)
                    over_mm = (growth.grows - growth.flat) * counted * width
                    top = rounds[high]
                    lying = round(top.stitches * (1 - over_mm / top.length_mm))
                    yield Unflat(name, rounds[low].label, top.label, growth, top.stitches, lying)
                    break


def strays(subject: Subject, form: str, what: str, module: str) -> Iterator[Finding]:
    """A warning for each run that takes this form instead of lying flat. what: what its rounds do."""
    for one in unflat(subject):
        if one.growth.form != form:
            continue
        rounds = f"Round {one.first}" if one.first == one.last else f"Rounds {one.first} to {one.last}"
        words = Words(
            message=f"{rounds} of “{one.piece}” {what}.",
            working=f"They grow by {one.growth.grows:.1f} stitches a round; flat work at this gauge grows by "
            f"{one.growth.flat:.1f} ({_rule(one.growth)} × height ÷ width of a stitch). Round {one.last} has "
            f"{one.stitches} stitches, and would lie flat with about {one.lying}.",
        )
        at = subject.source.locate(("pieces", one.piece, "lies flat"))
        yield told(module, "warning", subject, at, words, one.piece, one.first)


def _rule(growth: Flatness) -> str:
    """`2π`, of a circle; of a polygon its own."""
    return f"{edge_a_height(growth.corners):.3g} (for {growth.corners} corners)" if growth.corners else "2π"


def _in_run(one: RoundSize, first: int, last: int | None) -> bool:
    return one.label.isdigit() and first <= int(one.label) <= (first if last is None else last)
