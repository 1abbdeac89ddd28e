"""Reads a picot that is told once and then only named: `ch 3, sl st in 3rd ch from hook (picot made), …,
picot`, `picot (ch 3, sl st in 3rd ch from hook)`.
"""

import re
from collections.abc import Iterable
from dataclasses import replace

from .cursor import Cursor
from .tree import ONE, Chain, ChainOf, First, FromHook, JustMade, Last, Same, Step, Stitch, Target, Work


def picot_said(cursor: Cursor, first: int) -> int:
    """How many chains the picot named at a word has, as the line tells behind it in brackets (which are
    passed) or before it, or as another line of the pattern does; 0 where none tells.
    """
    words = cursor.words
    after = cursor.at
    if words[after].means == "(":
        told = _told_at(cursor, after + 1)
        if told and _end_of(cursor, after + 1) == words[after].value:
            cursor.at = words[after].value + 1
            return told
    before = (told for at in range(first - 1, 0, -1) if (told := _told_at(cursor, at)))
    return next(before, cursor.vocabulary.picot)


_RING = r"(?:ch[ -]?(?P<{0}>\d{{1,2}})|(?P<{1}>\d{{1,2}}) ?ch),? (?:and |then )?(?:sl ?st|ss|slip stitch) in"
_TOLD = re.compile(
    rf"{_RING.format('a', 'b')}[\w ]{{1,40}}? \((?:[\w ]{{0,20}}\b)?picot\b[\w ]{{0,20}}\)"
    rf"|\bpicot:? \({_RING.format('c', 'd')}",
    re.IGNORECASE,
)


def picot_of(lines: Iterable[str]) -> int:
    """The chains of the picot that a pattern's lines call so where they tell it; 0 where none does, or they
    tell several.
    """
    told = {int(next(filter(None, found.groups()))) for line in lines for found in _TOLD.finditer(line)}
    return told.pop() if len(told) == 1 else 0


def _told_at(cursor: Cursor, at: int) -> int:
    """The chains of the picot that is told hook by hook at a word; 0 where none is."""
    words = cursor.words
    length = words[at + 1] if words[at].means == "ch" else words[at]
    if length.means != "num" or length.value.variable or length.value.varies:
        return 0
    if words[at].means != "ch" and words[at + 1].means != "ch":
        return 0
    number: int = length.value.sizes[0]
    return number if _end_of(cursor, at) else 0


def _end_of(cursor: Cursor, at: int) -> int:
    """Behind the last word of `ch 3, sl st in 3rd ch from hook`, `… in first ch`, `… in last st made`; 0 for
    anything else.
    """
    words = cursor.words
    number = words[at + 1] if words[at].means == "ch" else words[at]
    at += 2
    while at < len(words) and words[at].means in (",", "and", "then"):
        at += 1
    means = [word.means for word in words[at : at + 6]]
    if len(means) < 6 or words[at].value != Stitch("slip") or means[1] != "in":
        return 0
    if means[2:5] == ["ord", "ch", "from-hook"] and words[at + 2].value == number.value.sizes[0]:
        return at + 5
    if means[2:4] == ["first", "ch"] or (means[2] == "last" and means[4] == "just-made"):
        behind = at + 4 + (means[2] == "last")
        return behind + (words[behind].means == "from-hook")
    return 0


def read_to_picot(cursor: Cursor, steps: list[Step]) -> None:
    """`ch 3, sl st in 3rd ch from hook to form picot`: the same without brackets."""
    before = steps[-1:]
    named_a_picot(steps)
    if steps[-1:] == before:
        raise cursor.fail("step")
    cursor.at += 1


def named_a_picot(steps: list[Step]) -> None:
    """`ch 3, sl st in 3rd ch from hook (picot made)`: the words in brackets, just passed, leave no doubt that
    these two steps are one, even where chains are worked into behind them.
    """
    match steps[-2:]:
        case [Chain(length=length, counts=None, purpose=""), Work(stitch=slip, places=(place,)) as work]:
            chains = length.sizes[0] or 0
            closes = place in (FromHook(chains), ChainOf(1, "ch", chains), First(ONE, Target("chain")))
            if slip.kind != "slip" or work.each != ONE or length.varies or length.variable or chains < 2:
                return
            on = (JustMade(place.target, span=place.span),) if isinstance(place, JustMade | Last) else ()
            if closes or on or isinstance(place, Same):
                begun = steps[-2].span
                span = work.span
                both = replace(span, start=begun.start) if span is not None and begun is not None else span
                steps[-2:] = [Work(Stitch("chain", "picot", chains), places=on, span=both)]
