"""Reads a round told as a whole, `work 1 round of dc in reverse (crab stitch)`, and a stitch's other name in
brackets.
"""

from dataclasses import replace

from .cursor import Cursor, UnreadableError
from .names import read_stitch, starts_stitch
from .tree import ONE, Each, Step, Stitch, Until, Work


def starts_whole_round(cursor: Cursor, at: int) -> bool:
    """Whether `1 round of dc`, `a row of crab stitch` stands at a word."""
    return bool(_stitch_at(cursor, at))


def _stitch_at(cursor: Cursor, at: int) -> int:
    """Where the stitch of a whole round is named; 0 where there is none."""
    words = cursor.words
    one = words[at].means == "a" or (words[at].means == "num" and words[at].value == ONE)
    if not one or words[at + 1].means not in ("round", "row"):
        return 0
    stitch = at + 2 + (words[at + 2].means in ("of", "in"))
    return stitch if stitch < len(words) and starts_stitch(cursor, stitch) else 0


def read_whole_round(cursor: Cursor, steps: list[Step], first: int) -> None:
    """A stitch in each stitch around, or across; the finger is on the `1`."""
    row = cursor.ahead() == "row"
    cursor.at = _stitch_at(cursor, cursor.at)
    stitch = read_stitch(cursor)
    if stitch.form or stitch.kind in ("inc", "dec", "special"):
        raise UnreadableError(first, "step")
    pass_other_name(cursor, stitch)
    place = Each(until=Until(word="across" if row else "around"))
    steps.append(Work(stitch, places=(place,), span=cursor.span(first)))


def pass_other_name(cursor: Cursor, stitch: Stitch) -> None:
    """`reverse dc (crab stitch)`: the bracket says again which stitch it is."""
    if cursor.means != "(" or not starts_stitch(cursor, cursor.at + 1):
        return
    first, close = cursor.at, cursor.words[cursor.at].value
    if cursor.said(first - 1, first).lower() == cursor.said(first + 1, close).lower():
        return  # `sc (sc) x 6`
    cursor.at += 1
    try:
        again = read_stitch(cursor)
    except UnreadableError:
        again = replace(stitch, kind="")
    cursor.at = close + 1 if again == stitch and cursor.at == close else first
