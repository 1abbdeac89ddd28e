"""Reads a repeat that no asterisk begins: `sc in next st, inc in next st, repeat around`."""

from .cursor import Cursor
from .repeats import read_tail
from .tree import ONE, Chain, Facing, First, Group, Next, Over, Same, Skip, Step, Together, Turn, Work
from .untils import starts_until


def read_repeat_of_all(cursor: Cursor, steps: list[Step]) -> bool:
    """Takes all that the round has told so far, behind its beginning chain, into the repeat. False (and
    nothing passed) where it isn't plain what is worked again.
    """
    first = cursor.at
    words = cursor.words
    bracketed = any(word.means == "(" and word.value > first for word in words[:first])
    again = starts_until(cursor, first + 1) or (
        words[first + 1].means in ("num", "times-word") and words[first + 2].means in ("more", "times")
    )
    if cursor.stars or bracketed or not again:
        return False
    begun = 0
    while begun < len(steps) and _leads_in(steps[begun]):
        begun += 1
    inside = tuple(steps[begun:])
    if not any(isinstance(one, Work | Group) for one in inside) or not all(map(_again, inside)):
        return False
    start = inside[0].span
    if start is None or (begun == 0 and isinstance(inside[0], Chain)):
        return False
    cursor.at += 1
    began = next(at for at, word in enumerate(words) if word.start >= start.start)
    steps[begun:] = [read_tail(cursor, inside, began, True)]
    return True


def _leads_in(step: Step) -> bool:
    """What only begins a round: its turn, and a chain that can be no part of a mesh."""
    if isinstance(step, Chain):
        return step.length == ONE or step.counts is not None
    return isinstance(step, Turn | Facing)


def _again(step: Step) -> bool:
    """Whether a step can be worked again and again: it goes into the places that come next."""
    if isinstance(step, Work | Group):
        return all(isinstance(place, Next | First | Over | Same) for place in step.places)
    return isinstance(step, Chain | Skip | Together)
