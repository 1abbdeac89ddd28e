"""There are more buttons than holes, or fewer.

What: The buttons that the materials list are counted against the chain spaces of the rounds or rows whose
note, heading or piece speaks of buttonholes or button loops, and against the buttons that the finishing sews
on.

Why it matters: A button too few is bought again, if the shop still has it; a hole too few is found out when
the band is done.

Wrong:

    materials:
      yarns: {A: {weight: 4, name: lichen}}
      hook: 5.5 mm
      notions: ["4 buttons, 15 mm across"]
    worked: rows
    start: chain 16
    rows:
      - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: 15}
      - {row: 2, work: "ch 1, (sc in next 3 sts, ch 2, sk 2 sts) x 3, turn", note: These are the buttonholes.}

Right:

    materials:
      yarns: {A: {weight: 4, name: lichen}}
      hook: 5.5 mm
      notions: ["3 buttons, 15 mm across"]
    worked: rows
    start: chain 16
    rows:
      - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: 15}
      - {row: 2, work: "ch 1, (sc in next 3 sts, ch 2, sk 2 sts) x 3, turn", note: These are the buttonholes.}

When to ignore: When some buttons are only for show, or a spare one is listed.
"""

import re
from collections.abc import Iterator

from ...fabric import RoundWork
from ...pattern import Entry, Finding, Location, Related
from ..names import number_of
from ..rule import Words, rule, told
from ..subject import Subject
from ..tricks import sentences

_NUMBERS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_BUTTONS = re.compile(
    rf"\b(\d+|{'|'.join(_NUMBERS)})\s+(?!(?:mm|cm|in|inch)\b)(?:[\w-]+ ){{0,3}}?buttons?\b"
    r"(?! ?(?:hole|loop))",
    re.I,
)
_HOLES = re.compile(
    r"\bbutton ?holes?\b|\bbutton loops?\b"
    r"|\bbuttons? (?:in|into|through) [^.]*\b(?:holes?|loops?|spaces?)\b",
    re.I,
)

_SEWN = re.compile(r"\b(?:sew|stitch|attach|fasten)\b", re.I)
_SHARED = re.compile(r"\b(?:to|on|at) (?:each|both|either|every)\b|\bper\b|\ba side\b", re.I)
_SPARE = re.compile(r"\b(?:spare|extra|more)\b", re.I)


def find(subject: Subject) -> Iterator[Finding]:
    listed = [_BUTTONS.search(text) for text in subject.pattern.materials.notions]
    buttons = sum(_number(found[1]) for found in listed if found)
    if not buttons:
        return
    at = next(number for number, found in enumerate(listed) if found)
    yield from _sewn(subject, buttons, at)
    for size in range(subject.pattern.size_count):
        holes, places = _holes(subject, size)
        if not holes or holes == buttons:
            continue
        of_size = f" in size {subject.sizes[size]}" if len(subject.sizes) > 1 else ""
        words = Words(
            message=f"The notions list {number_of(buttons, 'button')}, and there "
            f"{'is' if holes == 1 else 'are'} {number_of(holes, 'hole')} for them{of_size}.",
            related=tuple(Related(place, "holes are made here") for place in places),
        )
        yield told(__name__, "warning", subject, subject.source.locate(("materials", "notions", at)), words)
        return


def _sewn(subject: Subject, buttons: int, at: int) -> Iterator[Finding]:
    """Buttons that the finishing sews on, where it says how many in all."""
    found = [
        (number, said)
        for number, step in enumerate(subject.pattern.finishing)
        if step.text and not _SHARED.search(step.text)
        for _, sentence in sentences(step.text)
        if _SEWN.search(sentence) and (said := _BUTTONS.search(sentence))
    ]
    sewn = sum(_number(said[1]) for _, said in found)
    if not found or sewn == buttons or any(_SPARE.search(one) for one in subject.pattern.materials.notions):
        return
    words = Words(
        message=f"The notions list {number_of(buttons, 'button')}, and {sewn} "
        f"{'is' if sewn == 1 else 'are'} sewn on.",
        related=tuple(
            Related(subject.source.locate(("finishing", number)), "sewn on here") for number, _ in found
        ),
    )
    yield told(__name__, "warning", subject, subject.source.locate(("materials", "notions", at)), words)


def _number(said: str) -> int:
    return int(said) if said.isdigit() else _NUMBERS.index(said.lower()) + 1


def _holes(subject: Subject, size: int) -> tuple[int, list[Location]]:
    """How many holes all copies have in one size, and the lines that make them."""
    holes, places = 0, []
    for work in subject.work.pieces:
        piece = subject.pattern.pieces[work.name]
        for round in work.rounds:
            made = _spaces(round, size)
            if made and _is_for_buttons(piece.entries, round.plan.entry, f"{work.name}. {piece.title}"):
                holes += made * piece.make
                places.append(subject.stretch(round))
    return holes, places


def _spaces(round: RoundWork, size: int) -> int:
    """The chain spaces of a round, where they are all of one length."""
    worked = round.sizes[size]
    found = [number for kind, number in worked.makes.items() if not isinstance(kind, str)] if worked else []
    return found[0] if len(found) == 1 else 0


def _is_for_buttons(entries: tuple[Entry, ...], at: int, piece: str) -> bool:
    """Whether the round's note, the heading above it, or its piece's name speaks of holes for buttons."""
    headings = [entry.heading for entry in entries[:at] if entry.heading]
    return any(_HOLES.search(text) for text in (entries[at].note, *headings[-1:], piece))


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
