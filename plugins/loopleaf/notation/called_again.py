"""Reads a stretch between two asterisks that is repeated as far as a place and called on again later:
`*3 dc in next sp, ch 1*; rep from * to * to center ch-2 sp, …, rep from * to * across`.

Each call is a repeat of its own, so the steps are read from the same words again.
"""

from .cursor import Cursor
from .tree import Repeat, Step
from .untils import read_until, starts_until


def read_called(cursor: Cursor) -> Repeat | None:
    """`rep from * to * across`, where the line has such a stretch; None (and nothing passed) else."""
    words, at = cursor.words, cursor.at
    if [word.means for word in words[at : at + 5]] != ["rep", "from", "*", "to", "*"]:
        return None
    begun = cursor.passages.get(words[at + 2].value)
    if begun is None or words[at + 4].value != words[at + 2].value or not starts_until(cursor, at + 5):
        return None
    inside = _read_again(cursor, begun)
    cursor.at = at + 5
    return Repeat(inside, until=read_until(cursor), star=True, span=cursor.span(at))


def _read_again(cursor: Cursor, begun: int) -> tuple[Step, ...]:
    """The same words, read once more."""
    mark: str = cursor.words[begun].value
    keep, unread = cursor.stop_at, len(cursor.unread)
    cursor.at, cursor.stop_at = begun + 1, None
    cursor.stars.append(mark)
    inside = tuple(cursor.read_block(cursor, mark))
    cursor.stars.pop()
    cursor.stop_at = keep
    del cursor.unread[unread:]  # told where it stands
    return inside


def pass_between_stars(cursor: Cursor) -> bool:
    """`repeat between *s`, `rep between * and *`: what `rep from * to *` says."""
    words, at = cursor.words, cursor.at
    if words[at + 1].means != "between" or words[at + 2].means != "*":
        return False
    at += 3
    if words[at].means == "and" and words[at + 1].means == "*":
        at += 2
    elif words[at].value == "s" and words[at].glued:
        at += 1
    else:
        return False
    cursor.at = at
    return True


def read_sides(cursor: Cursor) -> tuple[int, tuple[int, ...]] | None:
    """`on 2nd and 3rd sides`, `along next 3 sides`: how many more sides, and their numbers where print gives
    them; None (and nothing passed) where no sides are named.
    """
    at = cursor.at
    if cursor.means not in ("in", "along", "across"):
        return None
    cursor.at += 1
    if cursor.take("other-side"):
        return 1, (2,)
    if (
        cursor.means in ("next", "other", "remaining")
        and cursor.ahead(1 + (cursor.ahead() == "num")) == "side"
    ):
        number = cursor.words[cursor.at + 1].value.sizes[0] if cursor.ahead() == "num" else 1
        cursor.at += 2 + (cursor.ahead() == "num")
        return number, ()
    sides: list[int] = []
    while cursor.means == "ord":
        sides.append(cursor.words[cursor.at].value)
        cursor.at += 1
        while cursor.means in (",", "and") and cursor.ahead() in ("ord", "and"):
            cursor.at += 1
    if sides and cursor.take("side"):
        return len(sides), tuple(sides)
    cursor.at = at
    return None
