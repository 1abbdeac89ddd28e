"""Reads a round told as a whole, `work 1 round of dc in reverse (crab stitch)`, `work 4 rows straight`, and a
stitch's other name in brackets.
"""

from dataclasses import replace

from .cursor import Cursor, UnreadableError
from .names import read_stitch, starts_stitch
from .straight import read_even
from .tree import Each, Step, Stitch, Until, Work


def starts_whole_round(cursor: Cursor, at: int) -> bool:
    """Whether `1 round of dc`, `4 rows in dc`, `a row of crab stitch` stands at a word."""
    return bool(_stitch_at(cursor, at))


def _stitch_at(cursor: Cursor, at: int) -> int:
    """Where the stitch of a whole round is named; 0 where there is none."""
    words = cursor.words
    behind = _behind_the_rows(cursor, at)
    if not behind:
        return 0
    stitch = behind + (words[behind].means in ("of", "in"))
    return stitch if stitch < len(words) and starts_stitch(cursor, stitch) else 0


def _behind_the_rows(cursor: Cursor, at: int) -> int:
    """Where `1 round`, `a row`, `4 more rows` ends at a word (how many the entry itself says); else 0."""
    words = cursor.words
    if words[at].means != "a" and (words[at].means != "num" or words[at].value.varies):
        return 0
    at += 1 + (words[at + 1].means == "more")
    return at + 1 if words[at].means in ("round", "row") else 0


def starts_rows_even(cursor: Cursor, at: int) -> bool:
    """Whether `4 rows straight`, `6 more rounds even` stands at a word."""
    behind = _behind_the_rows(cursor, at)
    return behind > 0 and cursor.words[behind].means == "evenly-on"


def read_rows_even(cursor: Cursor, steps: list[Step]) -> None:
    """Each of them is worked even."""
    cursor.at = _behind_the_rows(cursor, cursor.at)
    read_even(cursor, steps)


def read_whole_round(cursor: Cursor, steps: list[Step], first: int) -> None:
    """A stitch in each stitch around, or across; the finger is on the `1`."""
    row = cursor.words[_behind_the_rows(cursor, cursor.at) - 1].means == "row"
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
