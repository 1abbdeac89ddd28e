"""A cord is too short for the round that it goes through.

What: A drawstring needs at least one and a half times the way around, and on a small bag the way around and
about 20 cm for ends and knot (common practice, no source). The way around may be as short as the gauge's own
tolerance lets it be. A cord worked in rows or rounds is as long as its stitches make it by the gauge.

Why it matters: Drawn open, the bag swallows the ends of its cord.

Wrong:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
    finished size: {across: 4 cm}
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join, fasten off", count: 16}
    finishing:
      - thread: {piece: cord, through: piece, round: 2, under: 1, over: 1}
    pieces:
      cord: {title: Cord, yarn: A, worked: chain, length: 15 cm}

Right:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
    finished size: {across: 4 cm}
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join, fasten off", count: 16}
    finishing:
      - thread: {piece: cord, through: piece, round: 2, under: 1, over: 1}
    pieces:
      cord: {title: Cord, yarn: A, worked: chain, length: 34 cm}

When to ignore: When the cord isn't to be drawn, or has a stopper instead of a knot.
"""

from collections.abc import Iterator

from ...measure.amounts import length
from ...pattern import Finding, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject

ROUNDING_MM = 5.0
"""Cords are printed to half a centimetre (chosen here)."""


def find(subject: Subject) -> Iterator[Finding]:
    told_pieces: set[str] = set()
    for cords in subject.measured.cords:
        for cord in cords:
            least, around, enough = cord.least_mm, cord.around_mm, cord.enough_mm
            if least is None or around is None or enough is None or cord.piece in told_pieces:
                continue
            if cord.longest_mm >= enough - ROUNDING_MM:
                continue
            told_pieces.add(cord.piece)
            about = "about " if cord.worked else ""
            words = Words(
                message=f"“{cord.piece}” is {about}{length(cord.length_mm)} long, and goes around "
                f"{length(around)}.",
                working=f"Usual is 1.5 × {length(around)}, or 20 cm more than it for ends and knot, "
                f"whichever is more: {length(least)}.",
                suggestion=Suggestion(f"Make it {length(least)} or longer.", None, "fill-in"),
            )
            field = "worked" if cord.worked else "length"
            at = subject.source.locate(("pieces", cord.piece, field))
            yield told(__name__, "warning", subject, at, words, cord.piece)


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
