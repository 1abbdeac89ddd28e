"""Reads how the work is held or lies: `with wrong sides together`, `holding front and back together with RS
facing out`, `place back behind front`, `keeping ch behind petals`.

Nothing is done to a stitch, but the maker needs the words: they are kept as they are.
"""

import re

from .cursor import Cursor
from .names import starts_stitch
from .tree import Lying, Step

_SIDES = r"(?:wrong sides?|right sides?|ws|rs)"
_FACING = r"facing(?: each other| one another| out(?:wards?)?| in(?:wards?)?)"
_OPENS = r"(?:hold|holding|place|placing|put|putting|lay|laying|pin|pinning|match|matching|align|aligning)"
_LIES = re.compile(
    rf"(?:with |having )?{_SIDES}(?: of [\w' ]+)?(?: held| placed)? (?:together|{_FACING})"
    rf"|(?:with |having )?(?:wrong|right) sides facing"
    rf"|{_OPENS} (?:[\w'() ]+ )?(?:together|behind|on top of|facing|matching|aligned)\b[\w'() ]*"
    rf"|with (?:the )?(?:first|last|both|short|long|side|top|bottom)[\w' ]* "
    rf"(?P<held>edges|rows|ends|sides)(?: together)?"
    rf"|(?:matching|aligning) (?:up )?(?:(?:short|long|side|top|bottom) )?"
    rf"(?:edges|corners|ends|sides|rows|sts|stitches)[\w' ]*"
    rf"|fold(?:ed|ing)? (?:(?:piece|work|it|rectangle|square|strip|band) )?in half[\w' ]*"
    rf"|keeping (?:chs?|chains?|loops?|it|them) (?:behind|in back of|at back)\b[\w' ]*"
    rf"|keeping (?:all )?(?:picots?|petals|ruffles?|loops|bobbles|popcorns) (?:to|at|in|on) (?:the )?"
    rf"(?:front|back|rs|ws)"
    rf"|work(?:ing)? over (?:the )?(?:cord|rope|cording|clothesline|wire|core|yarn ends|ends|tails?)"
)
_ENDS = frozenset({",", "end", ")", "*", "rep"})
_DOING = frozenset({"working", "work", "ch", "through", "join", "insert-hook", "turn", "skip", "change"})
MOST_WORDS = 16


def pass_lying(cursor: Cursor, steps: list[Step]) -> bool:
    """Whether such words stand here; then they are read."""
    first, words = cursor.at, cursor.words
    opens = words[first].means
    if opens not in ("?", "with", "place", "facing", "held", "flatten", "working"):
        return False
    end = _end(cursor)
    if end - first < 2 or end - first > MOST_WORDS:
        return False
    if any(starts_stitch(cursor, at) and words[at].means != "picot" for at in range(first, end)):
        return False
    said = " ".join(cursor.said(first, end).split())
    read = _LIES.fullmatch(said.lower())
    if read is None:
        return False
    if read["held"] and not said.endswith("together"):  # `held together` is read past everywhere
        said += " together"
    cursor.at = end
    steps.append(Lying(_plain(said), cursor.span(first)))
    return True


def _end(cursor: Cursor) -> int:
    """Up to the comma, or an `and` with something to do behind it."""
    words, at = cursor.words, cursor.at
    while words[at].means not in _ENDS:
        if words[at].means in ("and", "then") and _does(cursor, at + 1):
            break
        at = words[at].value + 1 if words[at].means == "(" else at + 1
    return at


def _does(cursor: Cursor, at: int) -> bool:
    means = cursor.words[at].means
    number = means == "num" and cursor.words[at + 1].means in ("ch", "stitch")
    inserts = cursor.said(at, at + 1).lower() == "inserting" if means != "end" else False
    return means in _DOING or number or inserts or starts_stitch(cursor, at)


def _plain(said: str) -> str:
    """Small letters at its beginning, and the sides in short: `with WS together`."""
    said = re.sub(r"\bwrong sides?\b|\bws\b", "WS", said, flags=re.IGNORECASE)
    said = re.sub(r"\bright sides?\b|\brs\b", "RS", said, flags=re.IGNORECASE)
    return said if said.startswith(("WS", "RS")) else said[0].lower() + said[1:]


def write_lying(step: Lying, full: bool) -> str:
    """The words, with the sides in full where words are spelled out."""
    if not full:
        return step.what
    return re.sub(r"\bRS\b", "right sides", re.sub(r"\bWS\b", "wrong sides", step.what))
