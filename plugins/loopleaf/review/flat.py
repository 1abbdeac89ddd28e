"""Rounds that are meant to lie flat, against the growth that flat work has.

Every size is judged. Arches give: they hang in loops where they are long, and are drawn straight where they
are short, so a round of them strays only where none of that makes it lie flat.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from ..measure import Flatness, RoundSize, edge_a_height, flatness, way_out
from ..measure.gauge import start_mm
from ..measure.shape import CUPS_BELOW, RUFFLES_ABOVE
from ..pattern import Finding, Run
from .names import listed
from .rule import Words, told
from .subject import Subject

_WINDOW = 3
_FAR = (0.5, 1.6)
"""Three rounds on end may stray farther than the whole: not every round has increases (chosen here)."""


@dataclass(frozen=True, slots=True)
class Unflat:
    """Rounds meant to lie flat that won't, in one size. first, last: their labels. stitches: of the last, as
    worked. lying: how many it would have if they lay flat. run: which of the piece's `lies flat`.
    """

    piece: str
    run: int
    size: int
    first: str
    last: str
    growth: Flatness
    stitches: int
    lying: int


def unflat(subject: Subject) -> Iterator[Unflat]:
    """One a run of `lies flat` and size: the whole run, else the first three rounds in it that stray far."""
    for name, model in subject.pattern.pieces.items():
        measure, work = subject.measured.piece(name), subject.work.piece(name)
        if measure is None or work is None or measure.scale is None or not measure.in_rounds:
            continue
        for at, run in enumerate(model.lies_flat):
            for size in range(subject.pattern.size_count):
                start = start_mm(work, size, measure.scale)
                found = _strays(measure.known_rounds(size), run, start, measure.scale.width_mm)
                if found is not None:
                    (first, last), growth, lying = found
                    yield Unflat(name, at, size, first.label, last.label, growth, last.stitches, lying)


def _strays(
    known: Sequence[RoundSize], run: Run, start: float | None, width: float
) -> tuple[tuple[RoundSize, RoundSize], Flatness, int] | None:
    """The first and last of the rounds that stray, how they grow, and what the last would have lying flat."""
    rounds = way_out(known)
    chosen = [at for at, one in enumerate(rounds) if _in_run(one, run.first, run.last)]
    if not chosen:
        return None
    first, last = chosen[0], chosen[-1]
    top = next(one for one in reversed(known) if _in_run(one, run.first, run.last))
    if top.petals or top.on:  # petals and arches hang free
        return None
    windows = [(first, last, (CUPS_BELOW, RUFFLES_ABOVE))]
    windows += [
        (at, at + _WINDOW - 1, _FAR)
        for at in range(first, last - _WINDOW + 2)
        if not any(one.on for one in rounds[at : at + _WINDOW])
    ]
    for low, high, limits in windows:
        below = rounds[low - 1].length_mm if low else start
        growth = _far(rounds[low : high + 1], below, width, limits)
        if growth is not None:
            counted = high - low + (0 if below is None else 1)
            top, edge_mm = (
                rounds[high],
                growth.grows * counted * width + (rounds[low].length_mm if below is None else below),
            )
            flat_mm = edge_mm - (growth.grows - growth.flat) * counted * width
            return (rounds[low], top), growth, round(top.stitches * flat_mm / edge_mm)
    return None


def _far(
    rounds: Sequence[RoundSize], below: float | None, width: float, limits: tuple[float, float]
) -> Flatness | None:
    """How rounds grow, where that is beyond the limits; None where it isn't.

    The last one's arches are taken as narrow as they hang in loops, or as wide as they are drawn straight.
    """
    growth = flatness(rounds, below, width)
    if growth is None or not rounds[-1].arched:
        return None if growth is None or limits[0] <= growth.ratio <= limits[1] else growth
    top = rounds[-1]
    hung, drawn = (
        flatness([*rounds[:-1], replace(top, length_mm=length)], below, width)
        for length in (top.length.low - top.hangs_mm, top.length.high)
    )
    if hung is not None and hung.ratio > limits[1]:
        return hung
    return drawn if drawn is not None and drawn.ratio < limits[0] else None


def strays(subject: Subject, form: str, how: str, module: str) -> Iterator[Finding]:
    """A warning for each run that takes this form instead of lying flat. how: how its rounds grow."""
    runs: dict[tuple[str, int], list[Unflat]] = {}
    for one in unflat(subject):
        if one.growth.form == form:
            runs.setdefault((one.piece, one.run), []).append(one)
    for found in runs.values():
        one = found[0]
        single = one.first == one.last
        rounds = f"round {one.first}" if single else f"rounds {one.first} to {one.last}"
        message = f"{rounds} of “{one.piece}” {'grows' if single else 'grow'} {how}."
        sizes = [subject.sizes[each.size] for each in found] if len(subject.sizes) > 1 else []
        some = f"in size{'' if len(sizes) == 1 else 's'} {listed(sizes)} " if sizes else ""
        words = Words(
            message=_as_sentence(some + message),
            working=_as_sentence(
                f"{f'in size {sizes[0]} ' if sizes else ''}{'it grows' if single else 'they grow'} by "
                f"{one.growth.grows:.1f} stitches a round; flat work at this gauge grows by "
                f"{one.growth.flat:.1f} ({_rule(one.growth)} × height ÷ width of a stitch). Round {one.last} "
                f"has {one.stitches} stitches, and would lie flat with about {one.lying}."
            ),
        )
        at = subject.source.locate(("pieces", one.piece, "lies flat"))
        yield told(module, "warning", subject, at, words, one.piece, one.first)


def _as_sentence(words: str) -> str:
    return words[0].upper() + words[1:]


def _rule(growth: Flatness) -> str:
    """`2π`, of a circle; of a polygon its own."""
    return f"{edge_a_height(growth.corners):.3g} (for {growth.corners} corners)" if growth.corners else "2π"


def _in_run(one: RoundSize, first: int, last: int | None) -> bool:
    return one.label.isdigit() and first <= int(one.label) <= (first if last is None else last)
