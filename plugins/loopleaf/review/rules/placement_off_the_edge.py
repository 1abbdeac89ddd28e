"""Something is placed on a stitch that isn't there.

What: Sewing and threading name a round of a piece and stitches of it by number. The round must have that many
stitches. (A round that isn't there at all is *no such place*.)

Why it matters: The maker counts to a stitch that doesn't come.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
    finishing:
      - sew: {piece: moon, to: piece, round: 1, stitches: 7-10}
    pieces:
      moon:
        title: Moon
        yarn: A
        worked: joined rounds
        start: magic ring
        rounds: [{round: 1, work: "ch 1, 7 sc in ring, join, fasten off", count: 7}]

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
    finishing:
      - sew: {piece: moon, to: piece, round: 1, stitches: 5-8}
    pieces:
      moon:
        title: Moon
        yarn: A
        worked: joined rounds
        start: magic ring
        rounds: [{round: 1, work: "ch 1, 7 sc in ring, join, fasten off", count: 7}]

When to ignore: Never.
"""

from collections.abc import Iterator

from ...pattern import Finding
from ..placing import placings, posts
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    for placing in placings(subject):
        round = placing.round_of(subject)
        if round is None or not subject.known(placing.onto, round):
            continue
        there = min(posts(round, size) for size, worked in enumerate(round.sizes) if worked)
        beyond = [number for number in placing.stitches if not 1 <= number <= there]
        if beyond and round.line is not None:
            at = subject.source.locate((*placing.path, placing.stitches_field))
            word = f"{round.plan.word} {round.plan.label}"
            words = Words(
                message=f"Stitch {beyond[0]} of {word} of “{placing.onto}” is named, and it has {there}.",
                working=f"The stitches of {word} are numbered from 1 to {there}.",
            )
            yield told(__name__, "error", subject, at, words, placing.belongs)


RULE = rule(__name__, __doc__, "error", find)
