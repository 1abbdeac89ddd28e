"""Reads what is done with the yarn's end: `leaving a long tail for sewing to head`, `after last round`, `and
close hole`, `weave end through sts and pull tight to close`.
"""

import re

from .cursor import Cursor
from .tree import FastenOff, Step

_CLOSING = frozenset({",", "end", ")", "(", "rep", "*"})
_SMALL = frozenset({",", "and", "then"})
_INCHES = frozenset({"in", "ins", "inch", "inches", '"', "”"})
_LONGEST_TAIL = 4
_MOST_WORDS = 6
_MOST_SAID = 16
"""Words behind `leaving` in which its tail is told."""
_UNIT = r"(?:cm|mm|m|inch(?:es)?|ins?|[\"”])(?![a-z])"
_SOME = r"(?:(?:about|around|approx(?:imately)?\.?|roughly|at least|an?)\s+)*"
_LONG = rf"{_SOME}(?P<number>\d+(?:\.\d+)?)[\s-]*(?P<unit>{_UNIT})"
_OTHER = rf"\s*[/(]\s*(?P<other>\d+(?:\.\d+)?[½¼¾]?[\s-]*{_UNIT})\s*\)?"
_GLUED = re.compile(r"(?<=[\d½¼¾])[\s-]*(?=[a-z\"”])", re.IGNORECASE)
"""Between a number and its unit: `8in`, `8-inch`."""
_MEASURED = tuple(
    re.compile(way, re.IGNORECASE)
    for way in (
        rf"{_LONG}{_OTHER}(?:[\s-]+long)?\s+tail\b",
        rf"(?:tail|end)\s+(?:of|that is|measuring)?\s*{_LONG}(?:{_OTHER})?(?:\s+(?:long|in length))?",
        rf"{_LONG}(?:{_OTHER})?(?:\s+of\s+yarn)?(?=\s*(?:$|[,;.]|and\b|(?:for|to)\s+(?:sew|seam|join|attach)))",
        r"(?:tail|end)\s+long\s+enough(?=\s+(?:for|to)\s+(?:sew|seam|join|attach))",
    )
)
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
    measured = _measured(cursor, at)
    if measured:
        tail, cursor.at = measured
        first = cursor.at
        _pass_what_for(cursor, cursor.take("for-sewing"))
        return tail, " ".join(cursor.said(first, cursor.at).split())
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


def _measured(cursor: Cursor, at: int) -> tuple[str, int] | None:
    """`tail of about 20 cm`, `20 cm for sewing`, `tail long enough to sew`: the tail, and the word behind it;
    None for the plainer ways to say it.
    """
    words = cursor.words
    said = cursor.said(at, min(at + _MOST_SAID, len(words)))
    found = next((one for way in _MEASURED if (one := way.match(said))), None)
    if found is None:
        return None
    behind = words[at].start + found.end()
    after = next((i for i in range(at, len(words)) if words[i].start >= behind), len(words) - 1)
    parts = found.groupdict()
    if not parts.get("number"):
        return "long", after
    other = f" ({_GLUED.sub(' ', parts['other'])})" if parts["other"] else ""
    return f"{parts['number']} {'in' if parts['unit'] in _INCHES else parts['unit']}{other}", after


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
