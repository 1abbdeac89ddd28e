"""Reads and writes how a plain row changes its count: `sc around, increasing 6 sts evenly`, `dec evenly to 24
sts`."""

from dataclasses import replace
from typing import Literal

from .cursor import Cursor, UnreadableError, read_amount
from .purposes import part_at
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
    if words[at].means not in _NOUNS:
        return False
    return words[at + 1].means == "evenly" or bool(part_at(cursor, at + 1)) or _said_before(cursor)


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
    """Whether `6 dec evenly`, `1 sc dec at center back` stands here."""
    words, at = cursor.words, cursor.at
    named = at + 1 + (words[at + 1].means == "stitch")
    if words[at].means != "num" or words[named].means not in ("inc", "dec"):
        return False
    return words[named + 1].means == "evenly" or bool(part_at(cursor, named + 1))


def read_shaping(cursor: Cursor, steps: list[Step]) -> None:
    """Said of the plain row just read; where there is none, of a row in the stitches below."""
    first = cursor.at
    at = first + (cursor.means == "num")
    named = cursor.words[at + (cursor.words[at].means == "stitch")].means
    how: Literal["inc", "dec"] = "inc" if named == "inc" else "dec"
    cursor.at += cursor.means != "num"
    kind = None
    total = cursor.take("evenly")
    if total:
        cursor.need("to", "step")
    count: Amount = read_amount(cursor) or ONE
    while cursor.means in _NOUNS:
        kind = cursor.words[cursor.at].value if cursor.means == "stitch" else kind
        cursor.at += 1
    spot = ""
    after = part_at(cursor, cursor.at)
    if after:
        spot = " ".join(cursor.said(cursor.at + 1, after).lower().split())
        cursor.at = after
    else:
        cursor.take("evenly")
    until = read_until(cursor)
    shaping = Shaping(how, count, total, spot)
    row = steps[-1] if steps else None
    if spot and cursor.means == "," and cursor.ahead() == "even":
        cursor.at += 2  # `inc 1 st at neck edge, work to end`
        read_until(cursor)
        shaping = replace(shaping, first=True)
    if isinstance(row, Work) and row.shaping is None and _is_plain(row):
        if kind is not None and row.stitch not in (kind, AS_BELOW):
            raise UnreadableError(first, "step", cursor.at - 1)
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
    if shaping.spot:
        return f"{how} {number} at {shaping.spot}{', work to end' if shaping.first else ''}"
    return f"{how} evenly to {number}" if shaping.total else f"{how} {number} evenly"
