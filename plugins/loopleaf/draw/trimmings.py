"""What the finishing tells in words to be put on: a fringe, a pompon."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from ..measure.told_tails import lengths_mm
from ..pattern import Pattern
from ..trade.data_files import data_file

End = Literal["first", "last"]
"""An edge of a piece in rows: where it begins, or its last row."""

TRIMMED = 0.5
"""A fringe whose strands are told as they are cut is folded: so much of their length."""


@dataclass(frozen=True, slots=True)
class Fringe:
    """ends: where it goes, none where the words don't say. long_mm: as it hangs, 0 unsaid. every: how many
    stitches one tassel is from the next. yarn: the letter of a yarn that the words name, "" for the cloth's.
    """

    ends: Sequence[End]
    long_mm: float
    every: int
    yarn: str


@dataclass(frozen=True, slots=True)
class Pompon:
    """across_mm: as told, 0 unsaid. yarn: as of `Fringe`."""

    across_mm: float
    yarn: str


def fringe_of(pattern: Pattern) -> Fringe | None:
    """The fringe that a step in words tells; None without one."""
    text = _told(pattern, "fringe")
    if not text:
        return None
    found = {key: _longest(text, _words()[key]) for key in ("both", "first", "last")}
    said = max(found, key=lambda key: found[key]) if any(found.values()) else ""
    ends: Mapping[str, Sequence[End]] = {"both": ("first", "last"), "first": ("first",), "last": ("last",)}
    lengths = lengths_mm(text)
    cut = TRIMMED if _longest(text, _words()["cut"]) else 1.0
    long_mm = min(max(lengths) * cut, *lengths) if lengths else 0.0
    every: Mapping[str, int] = _words()["every"]
    apart = next((many for phrase, many in every.items() if _longest(text, [phrase])), 1)
    return Fringe(ends.get(said, ()), long_mm, apart, _yarn(pattern, text))


def pompon_of(pattern: Pattern) -> Pompon | None:
    """The pompon that a step in words tells; None without one."""
    text = _told(pattern, "pompon")
    return Pompon(max(lengths_mm(text), default=0.0), _yarn(pattern, text)) if text else None


def trimmings_yarns(pattern: Pattern) -> set[str]:
    """The letters of the yarns that the words name for what they put on."""
    found = (fringe_of(pattern), pompon_of(pattern))
    return {one.yarn for one in found if one is not None and one.yarn}


def _told(pattern: Pattern, what: str) -> str:
    """The first step in words that has one of its words, and none that take it back; "" without one."""
    for step in pattern.finishing:
        text = step.text or ""
        if _longest(text, _words()[what]) and not _longest(text, _words()["not_so"]):
            return text
    return ""


def _longest(text: str, phrases: Sequence[str]) -> int:
    """How long the longest of these phrases is that a text holds; 0 for none."""
    found = [len(one) for one in phrases if re.search(rf"(?<!\w){re.escape(one)}(?!\w)", text, re.IGNORECASE)]
    return max(found, default=0)


def _yarn(pattern: Pattern, text: str) -> str:
    """The letter of the yarn that a text names, by it or by the yarn's name."""
    yarns = pattern.materials.yarns if pattern.materials is not None else {}
    for letter, yarn in yarns.items():
        by_name = yarn.name and _longest(text, [yarn.name])
        if by_name or re.search(rf"\b(?:of|in|with|yarn|colou?r) {re.escape(letter)}\b", text):
            return letter
    return ""


@cache
def _words() -> Mapping[str, Any]:
    return data_file(__package__, "trimmings.yml")
