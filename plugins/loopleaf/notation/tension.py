"""How hard the yarn is to be pulled: `sl st loosely in each st`, `ch 12 loosely`. It changes no stitch, and
is kept to be printed."""

import re
from dataclasses import replace

from .tree import Chain, Group, Passage, Repeat, Step, Work

_WORD = re.compile(r"\b(?:loosely|tightly|firmly|snugly)\b", re.IGNORECASE)
_GAP = re.compile(r"[\s,]*(?:working\s+)?", re.IGNORECASE)


def with_tension(steps: tuple[Step, ...], text: str) -> tuple[Step, ...]:
    """The steps of a line, each stitch or chain with the word that stands in it or beside it."""
    for word in _WORD.finditer(text):
        steps = _told(steps, word.start(), word.end(), text)
    return steps


def _told(steps: tuple[Step, ...], start: int, end: int, text: str) -> tuple[Step, ...]:
    for at, step in enumerate(steps):
        span = step.span
        if span is None or not _meets(span.start, span.end, start, end, text):
            continue
        if isinstance(step, Work | Chain):
            pulled: Step = replace(step, tension=text[start:end].lower())
        elif isinstance(step, Repeat | Group | Passage):
            pulled = _inside(step, start, end, text)
        else:
            continue
        if pulled != step:
            return (*steps[:at], pulled, *steps[at + 1 :])
    return steps


def _inside(step: Repeat | Group | Passage, start: int, end: int, text: str) -> Step:
    inner = _told(step.steps, start, end, text)
    if isinstance(step, Repeat) and inner == step.steps:
        return replace(step, ending=_told(step.ending, start, end, text))
    return replace(step, steps=inner)


def _meets(first: int, last: int, start: int, end: int, text: str) -> bool:
    """Whether the word stands in the stretch, or right behind or before it: `ch 12, working loosely`."""
    if first <= start and end <= last:
        return True
    return bool(_GAP.fullmatch(text, last, start) if last < start else text[end:first].isspace())
