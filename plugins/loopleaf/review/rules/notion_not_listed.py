"""Something is needed that the materials don't list.

What: Markers that are placed, pieces that are sewn, cords that are threaded, pieces that are stuffed,
buttons and eyes that a text names: what they need should stand under `notions`.

Why it matters: The maker sits down with everything on the list, and has to get up again.

Wrong:

    worked: spiral rounds
    rounds:
      - {round: 1, work: "6 sc in ring, place marker", count: 6}
      - {round: 2, work: "2 sc in each st around", count: 12}

Right:

    materials:
      yarns: {A: {weight: 4, name: lichen}}
      hook: 5.5 mm
      notions: [stitch marker]
    worked: spiral rounds
    rounds:
      - {round: 1, work: "6 sc in ring, place marker", count: 6}
      - {round: 2, work: "2 sc in each st around", count: 12}

When to ignore: When your readers are sure to have it at hand.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from ...notation.tree import Marker
from ...pattern import Finding, Location, Suggestion
from ..lines import within
from ..rule import Words, rule, told
from ..subject import Subject
from ..texts import free_texts


@dataclass(frozen=True, slots=True)
class _Need:
    """why: what is done with it. words: any one among the notions will do. name: as it would be listed."""

    why: str
    words: tuple[str, ...]
    name: str
    location: Location
    piece: str = ""
    round: str = ""


_NEEDLE = ("needle", "bodkin")
_IN_TEXTS = (
    (re.compile(r"\bbuttons?\b(?! ?(?:loop|hole|band))", re.I), ("button",), "buttons", "Buttons are named"),
    (re.compile(r"\b(?:safety|toy) eyes?\b", re.I), ("eye",), "safety eyes", "Eyes are put in"),
)


def find(subject: Subject) -> Iterator[Finding]:
    notions = " ".join(subject.pattern.materials.notions).lower()
    told_names: set[str] = set()
    for need in (*_by_lines(subject), *_by_finishing(subject), *_by_texts(subject)):
        if need.name in told_names or any(word in notions for word in need.words):
            continue
        told_names.add(need.name)
        words = Words(
            message=f"{need.why}, and the notions list no {need.words[0]}.",
            suggestion=Suggestion(f"Add “{need.name}” under “notions”.", None, "fill-in"),
        )
        yield told(__name__, "warning", subject, need.location, words, need.piece, need.round)


def _by_lines(subject: Subject) -> Iterator[_Need]:
    for piece, round in subject.rounds():
        for marker in within(round.line, Marker):
            at = subject.stretch(round, marker.span)
            yield _Need("A marker is placed", ("marker",), "stitch marker", at, piece.name, round.plan.label)


def _by_finishing(subject: Subject) -> Iterator[_Need]:
    for number, step in enumerate(subject.pattern.finishing):
        at = subject.source.locate(("finishing", number))
        if step.sew:
            yield _Need("A piece is sewn on", _NEEDLE, "tapestry needle", at)
        if step.thread:
            yield _Need("A cord is threaded", (*_NEEDLE, "pin"), "tapestry needle", at)
        if step.stuff:
            yield _stuffing(at)
    for name, piece in subject.pattern.pieces.items():
        for number, entry in enumerate(piece.entries):
            if entry.stuff:
                yield _stuffing(subject.source.locate(("pieces", name, piece.entries_field, number)), name)


def _stuffing(at: Location, piece: str = "") -> _Need:
    return _Need(
        "A piece is stuffed", ("stuffing", "filling", "fibrefill", "fiberfill"), "stuffing", at, piece
    )


def _by_texts(subject: Subject) -> Iterator[_Need]:
    for path, text, piece in free_texts(subject.pattern):
        for words, names, name, why in _IN_TEXTS:
            found = words.search(text)
            if found:
                yield _Need(why, names, name, subject.source.locate(path, found.start(), found.end()), piece)


RULE = rule(__name__, __doc__, "warning", find)
