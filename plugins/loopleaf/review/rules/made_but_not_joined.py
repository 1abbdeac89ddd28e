"""A piece is made, and nothing says what to do with it.

What: In a pattern of several pieces each one is sewn, threaded, laid out, worked onto another, or named in
a finishing step.

Why it matters: The maker is left with a piece in hand.

Wrong:

    pieces:
      pouch:
        title: Pouch
        yarn: A
        worked: joined rounds
        start: magic ring
        rounds: [{round: 1, work: "ch 1, 8 sc in ring, join, fasten off", count: 8}]
      moon:
        title: Moon
        yarn: A
        worked: joined rounds
        start: magic ring
        rounds: [{round: 1, work: "ch 1, 7 sc in ring, join, fasten off", count: 7}]
    finishing:
      - text: Weave in the ends.

Right:

    pieces:
      pouch:
        title: Pouch
        yarn: A
        worked: joined rounds
        start: magic ring
        rounds: [{round: 1, work: "ch 1, 8 sc in ring, join, fasten off", count: 8}]
      moon:
        title: Moon
        yarn: A
        worked: joined rounds
        start: magic ring
        rounds: [{round: 1, work: "ch 1, 7 sc in ring, join, fasten off", count: 7}]
    finishing:
      - sew: {piece: moon, to: pouch}
      - text: Weave in the ends.

When to ignore: When the pieces stay apart, as in a set; say so in a finishing step that names them.
"""

import re
from collections.abc import Iterator

from ...notation.tree import Corresponding, Next, Work
from ...pattern import Finding, Suggestion
from ..joined_in_words import joined_in_words
from ..lines import within
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    pieces = subject.pattern.pieces
    if len(pieces) < 2:
        return
    prose = " ".join(_finishing_texts(subject))
    joined = _joined(subject) | joined_in_words(pieces, prose)
    alone = [
        name
        for name, piece in pieces.items()
        if name not in joined
        and not any(re.search(rf"\b{re.escape(call)}", prose, re.I) for call in {name, piece.title} - {""})
    ]
    # Of pieces that nothing joins the first is what the others go to: it isn't told with them.
    for name in alone[1:] or alone:
        words = Words(
            message=f"The piece “{name}” is made, and no step joins it to another.",
            suggestion=Suggestion(
                "Add the step under “finishing”: sew, thread, lay out, or in words.", None, "fill-in"
            ),
        )
        yield told(__name__, "warning", subject, subject.source.locate_key(("pieces", name)), words, name)


def _joined(subject: Subject) -> set[str]:
    """The pieces that a finishing step, a start or a line names."""
    names: set[str] = set()
    for step in subject.pattern.finishing:
        if step.sew:
            names |= {step.sew.piece, step.sew.to}
        if step.thread:
            names |= {step.thread.piece, step.thread.through}
        if step.lay_out:
            names.add(step.lay_out.piece)
    pieces = subject.pattern.pieces
    for name, piece in pieces.items():
        if piece.start and piece.start.edge:
            names |= {name, piece.start.edge}
    for work, round in subject.rounds():
        places: list[Next | Corresponding] = [*within(round.line, Next), *within(round.line, Corresponding)]
        for place in places:
            if place.piece:
                other = place.piece.removeprefix("next ")
                names |= {work.name, other, other.split(" ")[0]}
        for one in within(round.line, Work):  # `through both layers of arm and body`
            if " of " in one.through:
                names |= {work.name, *(name for name in pieces if name.lower() in one.through)}
    return names


def _finishing_texts(subject: Subject) -> Iterator[str]:
    for step in subject.pattern.finishing:
        yield step.text or ""
        yield step.note
        for part in (step.knot, step.sew, step.lay_out):
            if part:
                yield part.text


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
