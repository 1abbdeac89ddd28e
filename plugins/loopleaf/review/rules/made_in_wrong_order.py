"""Something is put in after the piece has been closed, or is listed and never put in.

What: Stuffing and safety eyes come before the step that closes the hole. Stuffing among the notions is told
somewhere.

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

from ...pattern import Finding, Path, Related
from ..rule import Words, rule, told
from ..subject import Subject
from ..tricks import is_stuffed

_CLOSED = re.compile(
    r"\b(?:draw|pull|gather|sew|stitch)\b[^.;]*\b(?:hole|opening|gap)\b[^.;]*\b(?:closed|shut|tight|up)\b"
    r"|\bclose (?:up )?(?:the|this) (?:hole|opening|gap)\b",
    re.I,
)
_EYES = re.compile(r"\b(?:safety|toy) eyes?\b", re.I)
_FILLING = ("stuffing", "filling", "fibrefill", "fiberfill")
_FILLED = re.compile(r"\b(?:stuff|fill)", re.I)

Step = tuple[Path, str]
"""Where it stands, and what it does: `stuff`, `eyes`, `close`, `work` (more rounds), ""."""


def find(subject: Subject) -> Iterator[Finding]:
    for piece, steps in _orders(subject):
        closed: Path | None = None
        for path, does in steps:
            if does == "close":
                closed = path
            elif does == "work":
                closed = None
            elif does and closed:
                what = "Stuffing is put in" if does == "stuff" else "Eyes are put in"
                words = Words(
                    message=f"{what} after the step that closes the hole.",
                    related=(Related(subject.source.locate(closed), "the hole is closed here"),),
                )
                yield told(__name__, "warning", subject, subject.source.locate(path), words, piece)
                break
    for number, notion in enumerate(subject.pattern.materials.notions):
        if any(word in notion.lower() for word in _FILLING) and not is_stuffed(subject.pattern):
            words = Words(message=f"“{notion}” is listed, and no step says where it goes.")
            place = subject.source.locate(("materials", "notions", number))
            yield told(__name__, "warning", subject, place, words)


def _orders(subject: Subject) -> Iterator[tuple[str, list[Step]]]:
    """The steps of each piece as they are done; of the only piece, those of the finishing behind them."""
    pattern = subject.pattern
    finishing: list[Step] = [
        (("finishing", number), _does(step.stuff is not None, step.text or ""))
        for number, step in enumerate(pattern.finishing)
    ]
    for name, piece in pattern.pieces.items():
        steps: list[Step] = [
            (
                ("pieces", name, piece.entries_field, number),
                "work" if entry.run else _does(entry.stuff is not None, entry.text or ""),
            )
            for number, entry in enumerate(piece.entries)
        ]
        yield name, [*steps, *(finishing if len(pattern.pieces) == 1 else ())]


def _does(stuffs: bool, text: str) -> str:
    if stuffs:
        return "stuff"
    if _CLOSED.search(text):
        return "" if _FILLED.search(text) else "close"
    return "eyes" if _EYES.search(text) else ""


RULE = rule(__name__, __doc__, "warning", find)
