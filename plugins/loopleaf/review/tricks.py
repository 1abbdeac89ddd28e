"""What the texts of a pattern give away about the making: filling, yarn held double, hooks that change."""

import re
from collections.abc import Iterator

from ..pattern import Pattern
from .subject import Subject
from .texts import free_texts

_FILLING = re.compile(
    r"\b(?:stuff(?:ed|ing)?|filling|fib(?:re|er)fill|fill (?:it|the|again|firmly|lightly|loosely))\b", re.I
)
_TOGETHER = re.compile(r"\b(?:strands?|held (?:double|together)|(?:yarn|thread) (?:double|doubled))\b", re.I)
_SENTENCE = re.compile(r"[^.!?]+(?:\.(?=\S)[^.!?]*)*[.!?]?")


def is_stuffed(pattern: Pattern) -> bool:
    """Whether something is stuffed: then it is worked tight on purpose, so that the filling doesn't show."""
    steps = any(step.stuff for step in pattern.finishing)
    entries = any(entry.stuff for piece in pattern.pieces.values() for entry in piece.entries)
    return steps or entries or any(_FILLING.search(text) for _, text, _ in free_texts(pattern))


def is_held_together(pattern: Pattern) -> bool:
    """Whether several strands make one, so that no yarn's weight says how thick the working yarn is."""
    return any(_TOGETHER.search(text) for _, text, _ in free_texts(pattern))


def sentences(text: str) -> Iterator[tuple[int, str]]:
    """The sentences of a text, each with where it begins."""
    for found in _SENTENCE.finditer(text):
        yield found.start(), found[0]


def weights_used(subject: Subject) -> dict[str, int]:
    """The yarns whose weight is stated, by letter."""
    yarns = subject.pattern.materials.yarns
    return {letter: yarn.weight for letter, yarn in yarns.items() if yarn.weight is not None}
