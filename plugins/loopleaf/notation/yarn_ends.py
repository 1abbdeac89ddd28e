"""Reads what is done with the yarn's end: `leaving a long tail for sewing to head`, `after last round`, `and
close hole`, `weave end through sts and pull tight to close`.
"""

from .cursor import Cursor
from .tree import FastenOff, Step

_CLOSING = frozenset({",", "end", ")", "(", "rep", "*"})
_SMALL = frozenset({",", "and", "then"})
_INCHES = frozenset({"in", "ins", "inch", "inches", '"', "”"})
_LONGEST_TAIL = 4
_MOST_WORDS = 6
_CLOSES = frozenset({"close", "closing"})
_SHUT = frozenset({"up", "closed", "shut", "hole", "opening", "gap"})
_THREADS = frozenset({"weave", "thread", "run", "draw", "gather"})


def read_tail(cursor: Cursor) -> tuple[str, str]:
    """`leaving a 20 cm tail`, `leaving a long tail for sewing`: the tail and what for; "" (and nothing
    passed) where no tail is spoken of.
    """
    words = cursor.words
    at = cursor.at
    while words[at].means in (",", "and"):
        at += 1
    if words[at].means not in ("leave", "with"):
        return "", ""
    at += 1
    if words[at].means == "a":
        at += 1
    spoken = range(at, min(at + _LONGEST_TAIL + 1, len(words)))
    end = next((i for i in spoken if words[i].means == "tail" or (words[i].means == "ending" and i > at)), 0)
    if not end:
        return "", ""
    cursor.at = end + 1
    closing = cursor.means == "to-join" and cursor.said(cursor.at, cursor.at + 1).lower() == "to close"
    sewing = cursor.take("to-join" if closing else "for-sewing")
    in_one = "for" in cursor.said(end, end + 1).lower().split()  # `end for sewing` is one word here
    _pass_what_for(cursor, sewing or in_one)
    what_for = " ".join(cursor.said(end + (not in_one), cursor.at).split()).removeprefix("end ")
    if end == at:
        return "any", what_for
    if words[at].means != "num":
        return " ".join(cursor.said(at, end).lower().split()), what_for
    unit = cursor.said(at + 1, end).lower().strip() if end > at + 1 else ""
    return f"{words[at].value.sizes[0]} {'in' if unit in _INCHES else unit}".rstrip(), what_for


def _pass_what_for(cursor: Cursor, sewing: bool) -> None:
    """`shoulder`, `to head`, `pieces tog` behind `for sewing`."""
    at = cursor.at
    if not sewing or cursor.words[at].means in (*_CLOSING, *_SMALL, "turn"):
        return
    while not _ends_here(cursor, at) and at - cursor.at <= _MOST_WORDS:
        at += 1
    if _ends_here(cursor, at):
        cursor.at = at


def _ends_here(cursor: Cursor, at: int) -> bool:
    words = cursor.words
    means = words[at].means
    return means in (*_CLOSING, "then") or (means == "and" and words[at + 1].means == "weave-in")


def pass_after_last(cursor: Cursor) -> None:
    """`fasten off after last round`, `at end of last row`: that is where it stands in any case."""
    at = cursor.at
    if cursor.said(at, at + 1).lower() not in ("after", "at") or cursor.words[at].means == "end":
        return
    at += 1
    if cursor.words[at].means == "ending" and cursor.words[at + 1].means == "of":
        at += 2
    if cursor.words[at].means == "last" and cursor.words[at + 1].means in ("row", "round"):
        cursor.at = at + 2


def pass_pulled_through(cursor: Cursor) -> None:
    """`and pull through`, `and draw end through last loop on hook`: how the yarn is fastened off."""
    at = cursor.at
    while cursor.means in _SMALL:
        cursor.at += 1
    if cursor.take("draw"):
        while cursor.means in ("last", "remaining", "a"):
            cursor.at += 1
        last = cursor.words[cursor.at - 1].means != "draw"
        if cursor.means == "loop" or (last and cursor.means in ("st", "stitch")):
            cursor.at += 1
        if cursor.means == "in" and cursor.ahead() == "hook":
            cursor.at += 2
        if cursor.means in _CLOSING or cursor.means in _SMALL:
            return
    cursor.at = at


def read_closing(cursor: Cursor) -> str:
    """`and close hole`, `weave end through sts and pull tight` behind `fasten off`, in the author's words; ""
    (and nothing passed) where nothing of the kind is said.
    """
    at = cursor.at
    while cursor.words[at].means in _SMALL:
        at += 1
    if not _begins_closing(cursor, at):
        return ""
    first = at
    while not _ends_here(cursor, at):
        at += 1
    cursor.at = at
    return " ".join(cursor.said(first, at).split())


def _begins_closing(cursor: Cursor, at: int) -> bool:
    """Whether `close hole` or `weave tail through …` stands at a word."""
    said = cursor.said(at, at + 1).lower()
    if cursor.words[at].means == "end":
        return False
    ahead = (
        cursor.said(at + 1, min(at + 6, len(cursor.words))).lower().split()
    )  # `through front loops` is one
    sewn = said == "sew" and cursor.said(at + 1, at + 2).lower() in _SHUT
    return (
        said in _CLOSES or sewn or (said in _THREADS and "through" in ahead and cursor.words[at].means == "?")
    )


def read_closed(cursor: Cursor, steps: list[Step]) -> bool:
    """`weave end through sts and pull tight to close`: the yarn is cut for it, said or not."""
    first = cursor.at
    closing = read_closing(cursor)
    if closing:
        steps.append(FastenOff(span=cursor.span(first), closing=closing))
    return bool(closing)
