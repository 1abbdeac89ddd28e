"""Something is placed on a round or a stitch that isn't there.

What: Sewing, threading and tails name a piece, one of its rounds, and stitches of it by number. The round
must exist and have that many stitches.

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
from ..placing import Placing, placings, posts
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    for placing in placings(subject):
        round = placing.round_of(subject)
        if placing.onto not in subject.pattern.pieces or not subject.known(placing.onto, round):
            continue
        at = subject.source.locate((*placing.path, placing.field))
        if round is None:
            if placing.number is not None:
                yield told(__name__, "error", subject, at, _no_round(placing, subject), placing.piece)
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
            yield told(__name__, "error", subject, at, words, placing.piece)


def _no_round(placing: Placing, subject: Subject) -> Words:
    work = subject.work.piece(placing.onto)
    rounds = [round.plan.label for round in work.rounds] if work else []
    word = placing.field
    has = f"It has {word}s {rounds[0]} to {rounds[-1]}." if rounds else f"It has no {word}s."
    return Words(
        message=f"“{placing.onto}” has no {word} {placing.number} to place “{placing.piece}” on.", working=has
    )


RULE = rule(__name__, __doc__, "error", find)
