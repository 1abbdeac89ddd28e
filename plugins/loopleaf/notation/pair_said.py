"""Reads what a beginning chain and the stitch behind it are together: `ch 2, dc in next st (dc2tog made)`."""

from dataclasses import replace

from .cursor import Cursor, UnreadableError
from .names import read_stitch, starts_stitch
from .tree import Chain, CountsAs, Step, Work

_FORMS = ("tog", "cluster")


def named_a_pair(cursor: Cursor, steps: list[Step]) -> None:
    """Says that the two count as the stitch that the bracket at the finger names; the finger stays."""
    first = cursor.at
    close: int = cursor.words[first].value
    match steps:
        case [Chain(counts=None), Work(counts=None) as work] if not work.stitch.form:
            pass
        case _:
            return
    cursor.at = first + 1
    while cursor.means in ("beg", "first", "a"):
        cursor.at += 1
    try:
        named = read_stitch(cursor) if starts_stitch(cursor, cursor.at) else None
    except UnreadableError:
        named = None
    ends, cursor.at = cursor.means == "just-made" and cursor.at + 1 == close, first
    if named is not None and ends and named.form in _FORMS and named.kind == work.stitch.kind:
        steps[-1] = replace(work, counts=CountsAs(stitch=named, span=cursor.span(first)))
