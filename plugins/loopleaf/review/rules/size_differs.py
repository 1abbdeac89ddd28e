"""The finished size isn't the size that gauge and counts make.

What: Stitches and rows times the gauge's own width and height of one, with the gauge's tolerance and half a
centimetre for rounding, are set beside the stated size.

Why it matters: The maker chooses size, hook and yarn by the number that is printed.

Wrong:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
    finished size: {across: 14 cm}
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}
      - {round: 3, work: "ch 1, (hdc in next st, 2 hdc in next st) x 8, join, fasten off", count: 24}

Right:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
    finished size: {across: 6 cm}
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}
      - {round: 3, work: "ch 1, (hdc in next st, 2 hdc in next st) x 8, join, fasten off", count: 24}

When to ignore: When the piece is blocked, stretched or lined to another size on purpose; say so in a note,
or measure the finished piece again.
"""

from collections.abc import Iterator, Mapping

from ...measure import Band, StatedSize
from ...measure.amounts import length
from ...measure.finished import What, meant_by
from ...pattern import Finding
from ..rule import Words, rule, told
from ..subject import Subject

ROUNDING_MM = 5.0
"""Sizes are printed to half a centimetre, and both ends of a piece are soft (chosen here)."""


def find(subject: Subject) -> Iterator[Finding]:
    for stated in subject.measured.stated:
        for size in range(subject.pattern.size_count):
            mm, bands = stated.mm(size), _worked_out(subject, stated, size)
            if mm is None or not bands or any(_fits(mm, band) for band in bands):
                continue
            low, high = min(one.low for one in bands), max(one.high for one in bands)
            of_size = f" of size {subject.sizes[size]}" if len(subject.sizes) > 1 else ""
            words = Words(
                message=f"The finished size{of_size} says {length(mm)} {_WORDS[stated.what]}, and gauge and "
                "counts make "
                f"about {length(bands[0].middle)}.",
                working=f"By the gauge it lies between {length(low)} and {length(high)}.",
            )
            path = (
                ("pieces", stated.piece, "finished size", stated.what)
                if stated.piece
                else ("finished size", stated.what)
            )
            yield told(__name__, "warning", subject, subject.source.locate(path), words, stated.piece)
            break


_WORDS: Mapping[What, str] = {
    "around": "around",
    "across": "across",
    "width": "wide",
    "length": "long",
    "height": "high",
}


def _fits(mm: float, band: Band) -> bool:
    return band.low - ROUNDING_MM <= mm <= band.high + ROUNDING_MM


def _worked_out(subject: Subject, stated: StatedSize, size: int) -> tuple[Band, ...]:
    """The size by the gauge, in each way that it may be meant; () where it isn't known."""
    measured = subject.measured
    if not stated.piece and measured.laid_out is not None:
        found = [measured.laid_out.get(stated.what)]
    else:
        piece = measured.piece(stated.piece) if stated.piece else next(iter(measured.pieces), None)
        found = []
        if piece and piece.size:
            rows = () if piece.in_rounds else piece.known_rounds(size)
            found = list(meant_by(stated.what, piece.size[size], rows))
    return tuple(band for band in found if band is not None)


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
