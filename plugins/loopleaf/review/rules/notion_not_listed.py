"""Something is needed that the materials don't list.

What: Markers that are placed, pieces that are sewn, cords that are threaded, pieces that are stuffed,
buttons, eyes, a zip or a ribbon that a text puts in: what they need should stand under `notions`.

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
from ..tricks import sentences


@dataclass(frozen=True, slots=True)
class _Need:
    """why: what is done with it. words: any one among the notions will do. name: as it would be listed."""

    why: str
    words: tuple[str, ...]
    name: str
    location: Location
    piece: str = ""
    round: str = ""


def _put(thing: str) -> re.Pattern[str]:
    """A sentence that puts the thing in, on or through: `Sew in the zip`. The thing is its first group."""
    does = "add|attach|draw|fasten|fix|glue|insert|lace|pass|put|run|sew|slide|slip|string|thread|weave"
    return re.compile(rf"\b(?:{does})\b[^.;:!?]{{0,40}}?\b({thing})\b", re.I)


_NEEDLE = ("needle", "bodkin")
_STUFFING = ("stuffing", "fill", "wadding", "batting")
_FILLING = r"stuffing|fib(?:re|er) ?fill(?:ing)?|wadding|batting"
_OF_YARN = r"(?![^.;!?]*\b(?:yarn|thread|floss|cotton)\b)"
_IN_TEXTS = (
    (re.compile(r"\bbuttons?\b(?! ?(?:loop|hole|band))", re.I), ("button",), "buttons", "Buttons are named"),
    (re.compile(r"\b(?:safety|toy) eyes?\b", re.I), ("eye",), "safety eyes", "Eyes are put in"),
    (_put(r"eyes?" + _OF_YARN), ("eye",), "eyes", "Eyes are put in"),
    (
        re.compile(
            r"(?<!not )(?<!n't )\bstuff\b(?! stitch)(?![^.;!?]*\b(?:ends|scraps|left-?overs?)\b)", re.I
        ),
        _STUFFING,
        "stuffing",
        "A piece is stuffed",
    ),
    (
        re.compile(rf"(?<!not )(?<!n't )\bfill\b[^.;!?]*\bwith\b[^.;!?]*\b({_FILLING})\b", re.I),
        _STUFFING,
        "stuffing",
        "A piece is filled",
    ),
    (_put("zip(?:per)?s?"), ("zip",), "zip", "A zip is put in"),
    (_put("ribbons?"), ("ribbon",), "ribbon", "A ribbon is put in"),
    (_put("elastic"), ("elastic",), "elastic", "Elastic is put in"),
    (_put("beads?"), ("bead",), "beads", "Beads are put on"),
    (
        _put("press studs?|snaps?|snap fasteners?|poppers?"),
        ("press stud", "snap", "popper"),
        "press stud",
        "A press stud is put on",
    ),
    (_put("(?:magnetic )?clasps?"), ("clasp", "magnet"), "clasp", "A clasp is put on"),
    (_put("(?:D|key|split)[- ]?rings?"), ("ring",), "ring", "A ring is put on"),
    (_put("brooch (?:pin|back)s?"), ("brooch pin", "brooch", "pin"), "brooch pin", "A brooch pin is put on"),
    (_put("wires?"), ("wire", "pipe cleaner"), "wire", "Wire is put in"),
)
"""What a text may name; any one of these among the notions will do; its name there; what is said of it."""
_NOT_ASKED_FOR = re.compile(
    r"\b(?:if you (?:like|wish|want|prefer)|optional(?:ly)?|not? needed|no need (?:for|of))\b", re.I
)
"""Left to the maker, or said to be needless."""


def find(subject: Subject) -> Iterator[Finding]:
    notions = " ".join(subject.pattern.materials.notions).lower()
    told_names: set[str] = set()
    for need in (*_by_lines(subject), *_by_finishing(subject), *_by_texts(subject)):
        if need.words[0] in told_names or any(word in notions for word in need.words):
            continue
        told_names.add(need.words[0])
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
        if step.embroider:
            yield _Need("Something is embroidered", _NEEDLE, "tapestry needle", at)
        if step.thread:
            yield _Need("A cord is threaded", (*_NEEDLE, "pin"), "tapestry needle", at)
        if step.stuff:
            yield _stuffing(at)
    for name, piece in subject.pattern.pieces.items():
        for number, entry in enumerate(piece.entries):
            if entry.stuff:
                yield _stuffing(subject.source.locate(("pieces", name, piece.entries_field, number)), name)


def _stuffing(at: Location, piece: str = "") -> _Need:
    return _Need("A piece is stuffed", _STUFFING, "stuffing", at, piece)


def _by_texts(subject: Subject) -> Iterator[_Need]:
    made = " ".join(f"{name} {one.title}" for name, one in subject.pattern.pieces.items()).lower()
    for path, text, piece in free_texts(subject.pattern):
        for begin, sentence in sentences(text):
            if _NOT_ASKED_FOR.search(sentence):
                continue
            for words, names, name, why in _IN_TEXTS:
                found = words.search(sentence)
                if found and not any(name in made for name in names):
                    at = found.span(1) if words.groups else found.span()
                    yield _Need(
                        why, names, name, subject.source.locate(path, begin + at[0], begin + at[1]), piece
                    )


RULE = rule(__name__, __doc__, "warning", find)
