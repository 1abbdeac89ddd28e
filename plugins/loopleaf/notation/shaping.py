"""Reads and writes how a plain row changes its count: `sc around, increasing 6 sts evenly`, `dec evenly to 24
sts`."""

from dataclasses import replace
from typing import Literal

from .cursor import Cursor, read_amount
from .straight import AS_BELOW
from .style import Style, is_one, written
from .tree import ONE, STITCH, Amount, Each, Shaping, Step, Until, Work
from .untils import read_until

_NOUNS = ("st", "stitch", "times", "inc", "dec")


def starts_shaping(cursor: Cursor) -> bool:
    """Whether `inc 6 sts evenly`, `dec 6 times evenly` or `increasing evenly to 24 sts` stands here."""
    words, at = cursor.words, cursor.at + 1
    if words[at].means == "evenly":
        return words[at + 1].means == "to" and words[at + 2].means == "num"
    if words[at].means != "num":
        return False
    here, cursor.at = cursor.at, at
    read_amount(cursor)
    at, cursor.at = cursor.at, here
    return words[at].means in _NOUNS and (words[at + 1].means == "evenly" or _said_before(cursor))


def _said_before(cursor: Cursor) -> bool:
    """Whether the row just read is `sc evenly around`."""
    before = cursor.at - 2 if cursor.words[cursor.at - 1].means == "," else -1
    while before >= 0 and cursor.words[before].means in ("around", "across", "evenly"):
        if cursor.words[before].means == "evenly":
            return True
        before -= 1
    return False


def pass_evenly(cursor: Cursor) -> None:
    """`sc evenly around, increasing 6 sts`: it is the shaping behind it that is spread."""
    means = [word.means for word in cursor.words[cursor.at : cursor.at + 4]]
    if means[:1] == ["evenly"] and means[1:3] in (["around", ","], ["across", ","]):
        cursor.at += means[3:] in (["inc"], ["dec"])


def starts_number_of_shapings(cursor: Cursor) -> bool:
    """Whether `6 dec evenly` stands here."""
    words, at = cursor.words, cursor.at
    return (
        words[at].means == "num" and words[at + 1].means in ("inc", "dec") and words[at + 2].means == "evenly"
    )


def read_shaping(cursor: Cursor, steps: list[Step]) -> None:
    """Said of the plain row just read; where there is none, of a row in the stitches below."""
    first = cursor.at
    named = cursor.words[first + (cursor.means == "num")].means
    how: Literal["inc", "dec"] = "inc" if named == "inc" else "dec"
    cursor.at += cursor.means != "num"
    total = cursor.take("evenly")
    if total:
        cursor.need("to", "step")
    count: Amount = read_amount(cursor) or ONE
    if cursor.means in _NOUNS:
        cursor.at += 1
    cursor.take("evenly")
    until = read_until(cursor)
    shaping = Shaping(how, count, total)
    row = steps[-1] if steps else None
    if isinstance(row, Work) and row.shaping is None and _is_plain(row):
        steps[-1] = replace(row, shaping=shaping)
    else:
        place = Each(until=until or Until(word="across"))
        steps.append(Work(AS_BELOW, places=(place,), span=cursor.span(first), shaping=shaping))


def _is_plain(row: Work) -> bool:
    """Whether it is one stitch in each, to the end."""
    last = row.places[-1] if row.places else None
    walk = isinstance(last, Each) and last.every == 1 and last.until.kind == "end"
    return walk and row.each == ONE and row.counts is None and not row.stitch.form


def write_shaping(shaping: Shaping, style: Style, alone: bool = False) -> str:
    """`increasing 6 sts evenly`, `decreasing evenly to 24 sts`; alone: `increase 6 sts evenly`."""
    count = shaping.count
    how = {"inc": "increas", "dec": "decreas"}[shaping.how] + ("e" if alone else "ing")
    number = f"{written(count)} {style.target(STITCH, not is_one(count))}"
    return f"{how} evenly to {number}" if shaping.total else f"{how} {number} evenly"
