"""Reads a popcorn told hook by hook: `5 dc in next st, drop loop from hook, insert hook in first of these dc,
draw dropped loop through`.
"""

from dataclasses import replace

from .cursor import Cursor, UnreadableError
from .tree import ONE, Chain, CountsAs, Step, Work

_SMALL = frozenset({",", "and", "then"})
_WHERE = frozenset(
    {"a", "in", "through", "to", "top", "of", "first", "num", "ord", "stitch", "special", "st", "group", "ch",
     "beg", "tch", "turning", "just-made", "same", "behind", "from", "form", "loop-of"}
)  # fmt: skip
"""Words that tell which of the stitches the hook goes into: for a popcorn it is always the first."""
_CHAINS = frozenset({"ch", "beg", "tch", "turning"})


def read_dropped(cursor: Cursor, steps: list[Step]) -> None:
    """From `drop loop from hook` to `draw dropped loop through`: the stitches just made become one popcorn.

    A beginning chain that the hook is inserted in is its first stitch. Raises UnreadableError where no
    stitches in one place stand before it, or the loop isn't drawn through.
    """
    first = cursor.at
    work = steps[-1] if steps else None
    if not isinstance(work, Work) or len(work.places) != 1 or work.each.varies or work.each == ONE:
        raise UnreadableError(first, "popcorn-of", first)
    if work.stitch.form or not work.stitch.kind or work.counts is not None:
        raise UnreadableError(first, "popcorn-of", first)
    cursor.at += 1
    _pass_small(cursor)
    inserted = cursor.at
    cursor.need("insert-hook", "popcorn-insert")
    while cursor.means in _WHERE:
        cursor.at += 1
    chain = any(word.means in _CHAINS for word in cursor.words[inserted : cursor.at])
    _pass_small(cursor)
    if cursor.take("take-up"):
        _pass_small(cursor)
    cursor.need("draw", "popcorn-draw")
    while cursor.means in _WHERE and cursor.means != "ch":
        cursor.at += 1
    number = work.each.sizes[0] or 0
    made = replace(work, stitch=replace(work.stitch, form="popcorn", number=number), each=ONE)
    if chain and len(steps) > 1 and isinstance(steps[-2], Chain):
        made = replace(made, counts=CountsAs(replace(made.stitch, number=number + 1)))
    steps[-1] = made


def _pass_small(cursor: Cursor) -> None:
    while cursor.means in _SMALL:
        cursor.at += 1
