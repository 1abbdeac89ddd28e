"""The tail left for sewing is too short.

What: A sewing tail is usually two to three times the edge that it sews (common practice, no source). The edge
may be as short as the gauge's own tolerance lets it be. A tail that the round's line or a note tells is
judged like the field.

Why it matters: The maker has to join new yarn in the middle of a seam.

Wrong:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
    finished size: {across: 3 cm}
    worked: spiral rounds
    rounds:
      - {round: 1, work: "7 hdc in ring", count: 7}
      - {round: 2, work: "2 hdc in each st around, sl st in next st, fasten off", count: 14}
    tail: 12 cm

Right:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
    finished size: {across: 3 cm}
    worked: spiral rounds
    rounds:
      - {round: 1, work: "7 hdc in ring", count: 7}
      - {round: 2, work: "2 hdc in each st around, sl st in next st, fasten off", count: 14}
    tail: 25 cm

When to ignore: When the piece is sewn on at a few points only.
"""

from collections.abc import Iterator

from ...measure.amounts import length
from ...pattern import Finding, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject

ROUNDING_MM = 5.0
"""Tails are printed to half a centimetre (chosen here)."""


def find(subject: Subject) -> Iterator[Finding]:
    told_pieces: set[str] = set()
    for tails in subject.measured.tails:
        for tail in tails:
            usual, enough = tail.usual, tail.enough_mm
            if usual is None or enough is None or tail.edge_mm is None or tail.piece in told_pieces:
                continue
            if tail.length_mm >= enough - ROUNDING_MM:
                continue
            told_pieces.add(tail.piece)
            words = Words(
                message=f"The tail of “{tail.piece}” is {length(tail.length_mm)}, for an edge of "
                f"{length(tail.edge_mm)}.",
                working=f"Two to three times the edge is {length(usual.low)} to {length(usual.high)}.",
                suggestion=Suggestion(f"Leave {length(usual.low)} or more.", None, "fill-in"),
            )
            at = subject.source.locate(("pieces", tail.piece, "tail"))
            if tail.told is not None:
                stretch = (tail.told.span.start, tail.told.span.end) if tail.told.span else ()
                at = subject.source.locate(tail.told.path, *stretch)
            yield told(__name__, "warning", subject, at, words, tail.piece)


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
