"""Something is put in after the piece has been closed, or is listed and never put in.

What: Stuffing and safety eyes come before the step that closes the hole, and before the rounds that draw a
piece in to so few stitches that nothing goes through any more (eight at most, and a third of its widest
round). Stuffing among the notions is told somewhere.

Why it matters: A closed piece has to be opened again, and a fastened end picked out.

Wrong:

    materials:
      yarns: {A: {weight: 4, name: lichen}}
      hook: 5.5 mm
      notions: [stuffing]
    worked: spiral rounds
    rounds:
      - {round: 1, work: "6 sc in ring", count: 6}
      - {round: 2, work: "2 sc in each st around", count: 12}
      - {round: 3, work: "sc2tog around, fasten off", count: 6}
      - text: Thread the tail through the last six stitches and draw the hole closed.
      - stuff: Fill it firmly.

Right:

    materials:
      yarns: {A: {weight: 4, name: lichen}}
      hook: 5.5 mm
      notions: [stuffing]
    worked: spiral rounds
    rounds:
      - {round: 1, work: "6 sc in ring", count: 6}
      - {round: 2, work: "2 sc in each st around", count: 12}
      - stuff: Fill it firmly.
      - {round: 3, work: "sc2tog around, fasten off", count: 6}
      - text: Thread the tail through the last six stitches and draw the hole closed.

When to ignore: When another opening stays for it.
"""

import re
from collections.abc import Iterator

from ...notation.tree import FastenOff
from ...pattern import Finding, FinishingStep, Path, Pattern, Related, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject
from ..texts import free_texts

_LAST = r"\b(?:last|final|remaining)\b[^.;]*\b(?:rounds?|sts?|stitches|loops)\b"
_SO_MANY = r"(?:\d+|four|five|six|seven|eight)"
_THE_STITCHES = rf"\b(?:all(?: of)?|the|these|those) (?:the )?(?:{_SO_MANY} )?(?:sts|stitches|loops)\b"
_CLOSED = re.compile(
    r"\b(?:draw|pull|gather|sew|stitch)\b[^.;]*\b(?:hole|opening|gap)\b[^.;]*\b(?:closed|shut|tight|up)\b"
    r"|\bclose (?:up )?(?:the|this) (?:hole|opening|gap)\b"
    r"|\bsew up the (?:hole|opening|gap)\b"
    r"|\bcinch\b[^.;]*\b(?:hole|opening|gap|top)\b[^.;]*\b(?:closed|shut|tight|up)\b"
    r"|\b(?:draw|pull|gather|sew|stitch) the top (?:closed|shut|together)\b|\bclose (?:up )?the top\b"
    rf"|\b(?:draw|gather|pull) (?:up|in|together) the {_LAST}"
    rf"|\b(?:draw|gather|pull) the {_LAST}[^.;]*\b(?:tight|tightly|closed|shut|together)\b"
    rf"|\b(?:tail|yarn|end)\b[^.;]*\bthrough\b[^.;]*{_THE_STITCHES}[^.;]*\b(?:tight|tightly|closed|shut|together)\b"
    rf"|\b(?:tail|yarn|end)\b[^.;]*\bthrough\b[^.;]*{_LAST}[^.;]*\b(?:tight|tightly|closed|shut|together)\b",
    re.I,
)
_EYES = re.compile(r"\b(?:safety|toy) eyes?\b", re.I)
_FILLING = r"\b(?:stuffing|filling|fib(?:re|er) ?fill(?:ing)?|polyfill|toy fill|wadding)\b"
_FILLING_LISTED = re.compile(_FILLING, re.I)
_PUT_IN = "add|insert|lay|line|pack|place|poke|press|push|put|tuck"
_TOLD_TO_FILL = re.compile(
    r"(?<!not )(?<!n't )(?<!never )(?<!\bwithout )"
    r"\b(?:stuff(?:ed|s)?|fill(?:ed|s)?|pad(?:ded|s)?)\b(?! stitch)"
    rf"|\b(?:{_PUT_IN})(?:\s+\w+){{0,4}}\s+{_FILLING}"
    rf"|{_FILLING}[^.;]*\b(?:goes|go|is put|is pushed|is added)\b",
    re.I,
)
_INSTRUCTIONS = ("notes", "pieces", "finishing", "variations")
"""Fields whose texts tell what to do; the others say what it is, and how it is kept."""

_EARLIER = re.compile(r"\b(?:before|as you|while|during)\b", re.I)
_NOTHING_THROUGH = 8
_FILLED = re.compile(r"\b(?:stuff|fill)", re.I)
_STUFF = re.compile(r"(?<!not )(?<!n't )\bstuff\b(?! stitch)", re.I)

Step = tuple[Path, str]
"""Where it stands, and what it does: `stuff`, `eyes`, `close`, `work` (more rounds), `drawn` (the
last of them leaves next to no opening), ""."""


def find(subject: Subject) -> Iterator[Finding]:
    for piece, steps in _orders(subject):
        closed: Path | None = None
        how = ""
        for path, does in steps:
            if does in ("close", "drawn"):
                closed, how = path, does
            elif does == "work":
                closed = None
            elif does and closed:
                what = "Stuffing is put in" if does == "stuff" else "Eyes are put in"
                when = (
                    "the step that closes the hole"
                    if how == "close"
                    else "the piece is drawn in and fastened"
                )
                words = Words(
                    message=f"{what} after {when}.",
                    related=(Related(subject.source.locate(closed), "the hole is closed here"),),
                )
                yield told(__name__, "warning", subject, subject.source.locate(path), words, piece)
                break
    told_to_fill = _is_told_to_fill(subject.pattern)
    for number, notion in enumerate(subject.pattern.materials.notions):
        if _FILLING_LISTED.search(notion) and not told_to_fill:
            words = Words(
                message=f"“{notion}” is listed, and no step says where it goes.",
                suggestion=Suggestion("Add a `stuff` step where the work is filled.", None, "fill-in"),
            )
            place = subject.source.locate(("materials", "notions", number))
            yield told(__name__, "warning", subject, place, words)


def _is_told_to_fill(pattern: Pattern) -> bool:
    """Whether a step stuffs, or a text of the instructions says to; a heading needs only the word."""
    entries = (entry for piece in pattern.pieces.values() for entry in piece.entries)
    if any(entry.stuff for entry in entries) or any(step.stuff for step in pattern.finishing):
        return True
    return any(
        (_FILLING_LISTED if path[-1] == "heading" else _TOLD_TO_FILL).search(text)
        for path, text, _ in free_texts(pattern)
        if path[0] in _INSTRUCTIONS
    )


def _orders(subject: Subject) -> Iterator[tuple[str, list[Step]]]:
    """The steps of each piece as they are done; of the only piece, those of the finishing behind them."""
    pattern = subject.pattern
    for name, piece in pattern.pieces.items():
        finishing: list[Step] = [
            (("finishing", number), _does(step.stuff is not None, _said(step), _told_before(step)))
            for number, step in enumerate(pattern.finishing)
            if len(pattern.pieces) == 1
            or name in (getattr(step.stuff, "piece", ""), getattr(step.place, "to", ""))
            or _fills(step, name, piece.title)
        ]
        steps: list[Step] = [
            (
                ("pieces", name, piece.entries_field, number),
                "work" if entry.run else _does(entry.stuff is not None, entry.text or ""),
            )
            for number, entry in enumerate(piece.entries)
        ]
        last = max((at for at, (_, does) in enumerate(steps) if does == "work"), default=None)
        if last is not None and _is_drawn_in(subject, name):
            steps[last] = (steps[last][0], "drawn")
        yield name, [*steps, *finishing]


def _fills(step: FinishingStep, name: str, title: str) -> bool:
    """Whether a step in words fills just that one of several pieces: `Stuff the head firmly`."""
    called = "|".join(re.escape(one) for one in (name, title) if one)
    said = step.stuff.text if step.stuff is not None and not step.stuff.piece else step.text or ""
    return bool(re.search(rf"\b(?:stuff|fill) (?:the |each |both )?(?:{called})\b", said, re.I))


def _said(step: FinishingStep) -> str:
    """What a step says to do, or to put on."""
    return step.place.what if step.place is not None else step.text or ""


def _told_before(step: FinishingStep) -> bool:
    """Whether a step of the finishing says itself that it comes earlier: `Stuff before the last round`."""
    return step.stuff is not None and bool(_EARLIER.search(step.stuff.text))


def _is_drawn_in(subject: Subject, name: str) -> bool:
    """Whether a piece in rounds, drawn in by its last ones and fastened off, leaves next to no opening."""
    work = subject.work.piece(name)
    if work is None or "rounds" not in subject.pattern.pieces[name].worked or not work.rounds:
        return False
    line = work.rounds[-1].line
    if line is None or not any(isinstance(step, FastenOff) for step in line.steps):
        return False
    counts = [one.sizes[0].count for one in work.rounds if one.sizes and one.sizes[0] is not None]
    return bool(counts) and counts[-1] <= min(_NOTHING_THROUGH, max(counts) / 3)


def _does(stuffs: bool, text: str, earlier: bool = False) -> str:
    if stuffs:
        return "" if earlier else "stuff"
    if _CLOSED.search(text):
        return "" if _FILLED.search(text) else "close"
    if _STUFF.search(text) and not _EARLIER.search(text):
        return "stuff"
    return "eyes" if _EYES.search(text) else ""


RULE = rule(__name__, __doc__, "warning", find)
