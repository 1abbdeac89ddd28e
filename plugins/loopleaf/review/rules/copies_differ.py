"""More copies of a piece are made than used, or fewer.

What: `make: 2` is set against the finishing: how often the piece is sewn on, how many cords are threaded,
how many squares are laid out, and whether its words speak of both ears where three are made, or of one
where it is two.

Why it matters: The maker has a piece too many, or stands before a place that lacks one.

Wrong:

    pieces:
      square:
        title: Square
        make: 6
        yarn: A
        worked: joined rounds
        start: magic ring
        rounds: [{round: 1, work: "ch 1, 8 sc in ring, join, fasten off", count: 8}]
    finishing:
      - lay out: {piece: square, across: 3, down: 3}

Right:

    pieces:
      square:
        title: Square
        make: 9
        yarn: A
        worked: joined rounds
        start: magic ring
        rounds: [{round: 1, work: "ch 1, 8 sc in ring, join, fasten off", count: 8}]
    finishing:
      - lay out: {piece: square, across: 3, down: 3}

When to ignore: When one more is made to try the gauge; say so in a note.
"""

import re
from collections.abc import Iterator

from ...pattern import Finding, Path, Piece, Related, Suggestion
from ..names import number_of
from ..rule import Words, rule, told
from ..subject import Subject, quote
from ..tricks import sentences

_NUMBERS = ("two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_JOINED = re.compile(r"\b(?:sew|stitch|attach|join|fasten|pin|tie)\b", re.I)
_SEVERAL = re.compile(r"\b(?:all|both|each|every|others?|second)\b", re.I)
"""Words that speak of more copies than the one whose place is given."""
_MORE = re.compile(
    rf"{_SEVERAL.pattern}|\b(?:again|any|either|in turn|one|opposite|pair|repeat|same|sides|twice)\b", re.I
)
"""Words of a sentence by which one that names a single copy may mean the others too."""


def find(subject: Subject) -> Iterator[Finding]:
    for name, piece in subject.pattern.pieces.items():
        used, open_ended, last = _uses(subject, name)
        if last is None:
            both = [*_both(subject, name, piece)]
            yield from both
            if both:
                continue
            used, last = _told(subject, name)
            open_ended = True
        if last is None or used == piece.make or (open_ended and used < piece.make):
            continue
        words = Words(
            message=f"“{name}” is made {_times(piece.make)}, and the finishing uses {used}.",
            working=f"Counted over all finishing steps: {number_of(used, 'copy', 'copies')}.",
            related=(Related(subject.source.locate(last), "used here"),),
        )
        at = subject.source.locate(("pieces", name, "make"))
        yield told(__name__, "warning", subject, at, words, name)


def _both(subject: Subject, name: str, piece: Piece) -> Iterator[Finding]:
    """`sew both ears to the head` where another number is made, or `the ear` of two; spoken of once."""
    noun = piece.title.split()[-1].lower() if piece.title.split() else name
    others = [one for one in subject.pattern.pieces.values() if one is not piece]
    if noun in _PARTS or any(noun in one.title.lower().split() for one in others):
        return
    plurals = "|".join(map(re.escape, _plurals(noun)))
    spoken = re.compile(rf"\b(?:{re.escape(noun)}|{plurals})\b", re.I)
    texts: list[tuple[Path, str]] = [
        (("finishing", number, "text"), step.text)
        for number, step in enumerate(subject.pattern.finishing)
        if step.text and spoken.search(step.text)
    ]
    if len(texts) != 1 or len(spoken.findall(texts[0][1])) != 1:
        return
    path, text = texts[0]
    said, tells = _so_many(text, noun, plurals)
    if said is None or tells == piece.make:
        return
    words = Words(
        message=f"“{name}” is made {_times(piece.make)}, and the finishing speaks of {quote(said[0])}.",
        suggestion=Suggestion(f"Make {_named(tells)}, or say where each of them goes.", None, "fill-in"),
        related=(Related(subject.source.locate(path, said.start(), said.end()), "said here"),),
    )
    yield told(__name__, "warning", subject, subject.source.locate(("pieces", name, "make")), words, name)


def _so_many(text: str, noun: str, plurals: str) -> tuple[re.Match[str] | None, int]:
    """Where a text says how many it speaks of, and how many these are."""
    both = re.search(rf"\bboth (?:of )?(?:the )?(?:{plurals})\b(?! of\b)", text, re.I)
    if both:
        return both, 2
    number = re.search(rf"\bthe (\d+|{'|'.join(_NUMBERS)}) (?:{plurals})\b(?! of\b)", text, re.I)
    if number:
        return number, _number(number[1])
    alone = re.search(rf"\bthe {re.escape(noun)}\b(?! (?:pieces|parts)\b)", text, re.I)
    joined = alone and _JOINED.search(text[: alone.start()]) and not _MORE.search(text)
    return (alone, 1) if joined else (None, 0)


_PARTS = frozenset({"side", "edge", "end"})
"""Any piece has two of these."""


def _plurals(noun: str) -> tuple[str, ...]:
    """`ears`; `leaves` of a leaf, `patches` of a patch, `feet` of a foot."""
    ends = {"f": "ves", "fe": "ves", "y": "ies", "foot": "feet"}
    changed = [noun.removesuffix(end) + other for end, other in ends.items() if noun.endswith(end)]
    return (f"{noun}s", f"{noun}es", *changed)


def _uses(subject: Subject, name: str) -> tuple[int, bool, tuple[str | int, ...] | None]:
    """How many copies the steps use, whether one leaves the number open, and where the last stands."""
    used, open_ended = 0, False
    last: tuple[str | int, ...] | None = None
    for number, step in enumerate(subject.pattern.finishing):
        if step.sew and step.sew.piece == name:
            used += len(step.sew.stitches) or 1
            open_ended = open_ended or not step.sew.stitches or bool(_SEVERAL.search(step.sew.text))
            last = ("finishing", number, "sew")
        elif step.thread and step.thread.piece == name:
            used += len(step.thread.from_) or 1
            open_ended = open_ended or not step.thread.from_
            last = ("finishing", number, "thread")
        elif step.lay_out and step.lay_out.piece == name:
            used += step.lay_out.across * step.lay_out.down
            last = ("finishing", number, "lay out")
    return used, open_ended, last


def _told(subject: Subject, name: str) -> tuple[int, tuple[str | int, ...] | None]:
    """The most copies that a sentence of the finishing joins (`Sew the three flaps on`), and where."""
    words = {name.lower(), subject.pattern.pieces[name].title.lower()} - {""}
    many = "|".join(re.escape(one) for word in words for one in (word + "s", word + "es", _leaves(word)))
    said = re.compile(rf"\b(\d+|{'|'.join(_NUMBERS)}) (?:[\w-]+ )?(?:{many})\b", re.I)
    found = [
        (_number(one[1]), ("finishing", number, "text"))
        for number, step in enumerate(subject.pattern.finishing)
        for _, sentence in sentences(step.text or "")
        if _JOINED.search(sentence)
        for one in said.finditer(sentence)
    ]
    return max(found, key=lambda one: one[0], default=(0, None))


def _leaves(word: str) -> str:
    return re.sub(r"fe?$", "ves", word) if word.endswith(("f", "fe")) else word + "s"


def _number(said: str) -> int:
    return int(said) if said.isdigit() else _NUMBERS.index(said.lower()) + 2


def _named(number: int) -> str:
    """`two`; in figures from thirteen on."""
    return {1: "one"}.get(number) or (_NUMBERS[number - 2] if number - 2 < len(_NUMBERS) else str(number))


def _times(number: int) -> str:
    return {1: "once", 2: "twice"}.get(number, f"{number} times")


RULE = rule(__name__, __doc__, "warning", find)
