"""An opening is too small for the body that it is to fit.

What: The widest end of a piece worked in rounds, or of one in rows that is said to be so far `around`, is
measured by the gauge, and set beside the head, neck, hand, wrist or ankle that the pattern is `to fit`. A
fifth less is let pass, since crochet stretches (chosen here).

Why it matters: A hat that doesn't go over the head is found out when it is done.

Wrong:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
    to fit: {head: 54 cm}
    finished size: {around: 34 cm}
    start: chain 48, joined
    rounds:
      - {round: 1, work: "ch 1, hdc in each ch around, join", count: 48}
      - {round: 2, work: "ch 1, hdc in each st around, join, fasten off", count: 48}

Right:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
    to fit: {head: 54 cm}
    finished size: {around: 50 cm}
    start: chain 70, joined
    rounds:
      - {round: 1, work: "ch 1, hdc in each ch around, join", count: 70}
      - {round: 2, work: "ch 1, hdc in each st around, join, fasten off", count: 70}

When to ignore: When a ribbed edge stretches further, or buttons open it.
"""

from collections.abc import Iterator, Mapping

from ...measure import PieceMeasure
from ...measure.amounts import as_typed, length
from ...measure.gauge import start_mm
from ...pattern import Finding, Lengths, Path
from ..rule import Words, rule, told
from ..subject import Subject

_THROUGH = ("around", "head", "neck", "hand", "wrist", "ankle", "arm", "thigh", "waist")
"""Parts of a body that go through an opening."""
_STRETCHES_TO = 0.8


def find(subject: Subject) -> Iterator[Finding]:
    pattern = subject.pattern
    first = next(iter(pattern.pieces), "")
    yield from _openings(subject, first, ("to fit",), pattern.to_fit)
    for name, piece in pattern.pieces.items():
        yield from _openings(subject, name, ("pieces", name, "to fit"), piece.to_fit)


def _openings(
    subject: Subject, name: str, path: Path, bodies: Mapping[str, Lengths | str]
) -> Iterator[Finding]:
    measure = subject.measured.piece(name)
    if measure is None or measure.scale is None:
        return
    if not measure.in_rounds and not _closed(subject, name):
        return
    for body, lengths in bodies.items():
        if body not in _THROUGH or not isinstance(lengths, Lengths):
            continue
        for size in range(subject.pattern.size_count):
            wanted, opening = lengths.of(size), _opening_mm(subject, measure, size)
            if wanted is None or opening is None or opening >= wanted.mm * _STRETCHES_TO:
                continue
            of_size = f"In size {subject.sizes[size]} the" if len(subject.sizes) > 1 else "The"
            words = Words(
                message=f"{of_size} opening of “{name}” is at most {length(opening)} around, for "
                + (f"{as_typed(wanted)}." if body == "around" else f"a {body} of {as_typed(wanted)}."),
                working=f"With a fifth for its stretch it needs {length(wanted.mm * _STRETCHES_TO)}.",
            )
            yield told(__name__, "warning", subject, subject.source.locate((*path, body)), words, name)
            break


def _closed(subject: Subject, name: str) -> bool:
    """Whether a piece in rows is said to be so far around."""
    pattern = subject.pattern
    sizes = [pattern.pieces[name].finished_size]
    if name == next(iter(pattern.pieces)):
        sizes.append(pattern.finished_size)
    return any(size is not None and size.around is not None for size in sizes)


def _opening_mm(subject: Subject, measure: PieceMeasure, size: int) -> float | None:
    """The wider end of a piece in one size, as wide as its gauge allows; None where it isn't known."""
    work = subject.work.piece(measure.name)
    rounds = measure.known_rounds(size)
    if work is None or not rounds or measure.scale is None:
        return None
    if not measure.in_rounds:
        band = measure.size[size].get("around")
        return band.high if band is not None else None
    ends = [rounds[-1].length_mm, start_mm(work, size, measure.scale) or 0.0]
    return max(ends) * (1 + measure.scale.width_off)


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
