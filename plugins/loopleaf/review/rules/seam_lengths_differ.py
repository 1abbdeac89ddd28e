"""Two edges are sewn together stitch for stitch, and have different numbers of stitches.

What: A sewing step that says “stitch for stitch” or “matching stitches” compares the last rounds of its two
pieces.

Why it matters: One of the edges comes to its end first, and the seam puckers.

Wrong:

    pieces:
      front:
        title: Front
        yarn: A
        worked: joined rounds
        start: magic ring
        rounds: [{round: 1, work: "ch 1, 8 sc in ring, join, fasten off", count: 8}]
      back:
        title: Back
        yarn: A
        worked: joined rounds
        start: magic ring
        rounds: [{round: 1, work: "ch 1, 9 sc in ring, join, fasten off", count: 9}]
    finishing:
      - sew: {piece: front, to: back, text: Sew the edges together stitch for stitch.}

Right:

    pieces:
      front:
        title: Front
        yarn: A
        worked: joined rounds
        start: magic ring
        rounds: [{round: 1, work: "ch 1, 8 sc in ring, join, fasten off", count: 8}]
      back:
        title: Back
        yarn: A
        worked: joined rounds
        start: magic ring
        rounds: [{round: 1, work: "ch 1, 8 sc in ring, join, fasten off", count: 8}]
    finishing:
      - sew: {piece: front, to: back, text: Sew the edges together stitch for stitch.}

When to ignore: When one edge is to be eased in; then say so instead of “stitch for stitch”.
"""

import re
from collections.abc import Iterator

from ...fabric import RoundWork
from ...pattern import Finding
from ..names import number_of
from ..rule import Words, rule, told
from ..subject import Subject

_STITCH_FOR_STITCH = re.compile(
    r"\b(?:stitch|st) (?:for|by|to) (?:stitch|st)\b|\bmatching (?:the )?(?:stitches|sts)\b", re.I
)


def find(subject: Subject) -> Iterator[Finding]:
    last = {piece.name: piece.rounds[-1] for piece in subject.work.pieces if piece.rounds}
    for number, step in enumerate(subject.pattern.finishing):
        sew = step.sew
        if sew is None or sew.piece not in last or sew.to not in last:
            continue
        if sew.round or sew.row or sew.stitches or not _STITCH_FOR_STITCH.search(f"{sew.text} {step.note}"):
            continue
        one, other = _counts(last[sew.piece]), _counts(last[sew.to])
        differing = [(a, b) for a, b in zip(one, other, strict=False) if a != b]
        if differing:
            a, b = differing[0]
            words = Words(
                message=f"“{sew.piece}” and “{sew.to}” are sewn stitch for stitch, and their edges differ.",
                working=f"The last edge of “{sew.piece}” has {number_of(a, 'stitch')}, that of “{sew.to}” "
                f"{b}.",
            )
            at = subject.source.locate(("finishing", number, "sew"))
            yield told(__name__, "warning", subject, at, words, sew.piece)


def _counts(round: RoundWork) -> list[int]:
    return [size.count for size in round.sizes if size]


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
