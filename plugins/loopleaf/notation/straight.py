"""Reads what older print says of a whole row: `work even`, `dec 1 st at each end`."""

from dataclasses import replace

from .cursor import Cursor, UnreadableError
from .names import read_stitch, starts_stitch
from .tree import ONE, Amount, Chain, Each, Next, Over, Place, Step, Stitch, Turn, Until, Work
from .untils import read_until

AS_BELOW = Stitch("")
"""Such a stitch as the row is made of; the fabric says which."""


def read_even(cursor: Cursor, steps: list[Step]) -> None:
    """`work even`, `work straight in sc`, `work even to last 2 sts`: a stitch in each stitch."""
    first = cursor.at
    cursor.at += 1
    stitch = AS_BELOW
    if cursor.means == "in" and starts_stitch(cursor, cursor.at + 1):
        cursor.at += 1
        stitch = read_stitch(cursor)
    until = read_until(cursor) or Until(word="across")
    steps.append(Work(stitch, places=(Each(until=until),), span=cursor.span(first)))


def starts_at_ends(cursor: Cursor) -> bool:
    """Whether `dec 1 st at each end`, `dec 1 sc at beg of row` stands here."""
    one = cursor.ahead() == "num" and cursor.ahead(2) in ("st", "stitch") and cursor.ahead(3) == "at-end"
    return one or cursor.ahead() == "at-end"


def read_at_ends(cursor: Cursor, steps: list[Step]) -> None:
    """`dec 1 st at each end`, `inc 1 st at beg of row`: there, and between them a stitch in each stitch."""
    first = cursor.at
    how = cursor.means
    bare = cursor.ahead() == "at-end"
    if not bare and cursor.words[first + 1].value != ONE:
        raise UnreadableError(first + 1, "at-ends", first + 1)
    named = None if bare or cursor.ahead(2) == "st" else cursor.words[first + 2].value
    cursor.at += 1 if bare else 3
    where: str = cursor.words[cursor.at].value
    cursor.at += 1
    span = cursor.span(first)
    place: Place = Over(Amount((2,))) if how == "dec" else Next()
    shaped = Work(Stitch(how), places=(place,), span=span)
    until = Until(word="across")
    if where == "beg" and cursor.means == "," and cursor.ahead() == "even":
        cursor.at += 2  # `inc 1 st at beg of row, work to end`
        read_until(cursor)
    if where == "beg" and cursor.means == "," and starts_stitch(cursor, cursor.at + 1):
        steps.append(shaped)  # `dec 1 st at beg of row, sc in each st to end`: the rest is told
        return
    if where != "beg":
        until = Until("to-last", count=Amount((2,)) if how == "dec" else ONE)
    at = _plain_row(steps)
    plain = Work(AS_BELOW, span=span) if at < 0 else steps[at]
    assert isinstance(plain, Work)
    if named is not None and plain.stitch not in (named, AS_BELOW):
        raise UnreadableError(first + 2, "at-ends", first + 2)
    row: list[Step] = [replace(plain, places=(Each(until=until),))]
    row = ([shaped] if where != "end" else []) + row + ([shaped] if where != "beg" else [])
    if at < 0:
        steps += row
    else:
        steps[at : at + 1] = row


def _plain_row(steps: list[Step]) -> int:
    """Which of the steps is the row that is shaped, in `dc in each dc across, inc 1 st at each end`; -1 for
    none: then the row is told by its shaping alone."""
    works = [at for at, step in enumerate(steps) if not isinstance(step, Chain | Turn)]
    if len(works) != 1:
        return -1
    match steps[works[0]]:
        case Work(counts=None, places=(Each(every=1, until=Until(kind="end")),), each=each) if each == ONE:
            return works[0]
    return -1
