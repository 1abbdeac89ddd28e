"""Reads words that say where the hook is by now: `working down side, …`, `(same ch as first 2 sc)`, `sc along
other side of foundation ch in each ch`.
"""

from .along_words import side_of_a_part
from .cursor import Cursor
from .places import starts_place
from .tree import Chain, Each, FromHook, Last, Next, OtherSide, Step, Work
from .yarns import other_side

_SIDES = frozenset({"side", "edge", "first", "ord", "other", "next", "of", "row", "?"})


def pass_direction(cursor: Cursor, steps: list[Step]) -> bool:
    """`working down side, sc in end of each row`, `working along foundation ch, sc in each ch across`: what
    follows names the places. Where the line has gone along that chain already, its other side is meant.
    """
    words, at = cursor.words, cursor.at + 1
    if words[at].means == "foundation" and words[at + 1].means == "ch":
        if words[at + 2].means != ",":
            return False
        cursor.at = at + 2
        if any(map(_along_the_chain, steps)):
            steps.append(OtherSide(span=cursor.span(at - 2)))
        return True
    while words[at].means in _SIDES:
        at += 1
    if at == cursor.at + 1 or words[at].means != ",":
        return False
    cursor.at = at
    return True


def _along_the_chain(step: Step) -> bool:
    """Whether a step goes into chains: as a rule those of the foundation."""
    if not isinstance(step, Work):
        return False
    return any(
        isinstance(place, FromHook)
        or (isinstance(place, Next | Last) and place.target.kind == "chain")
        or (isinstance(place, Each) and place.targets[0].kind == "chain")
        for place in step.places
    )


def pass_where_aside(cursor: Cursor, steps: list[Step]) -> bool:
    """`2 sc in last ch (same ch as first 2 sc)`: which one that is was said before the bracket."""
    first, close = cursor.at + 1, cursor.words[cursor.at].value
    while cursor.words[first].means in ("in", "a"):
        first += 1
    inside = cursor.words[first:close]
    if not steps or isinstance(steps[-1], Chain) or not inside or inside[0].means != "same":
        return False
    if not any(word.means == "as" for word in inside) or any(word.means in (",", "(") for word in inside):
        return False
    cursor.at = close + 1
    return True


def read_side_first(cursor: Cursor, steps: list[Step]) -> None:
    """The chain's side in `sc along other side of foundation ch in each ch`, `sc in unused loop of each ch`.

    Where the line has come to it already, that is said once."""
    at = cursor.at
    if cursor.means != "along" or cursor.ahead() != "other-side" or cursor.ahead(3) in ("num", "next"):
        return
    if side_of_a_part(cursor, cursor.at):
        return
    side = other_side(cursor)
    if side is None or not starts_place(cursor, cursor.at):
        cursor.at = at
    elif not _has_come_to_it(steps):
        steps.append(OtherSide(side, cursor.span(at)))


def _has_come_to_it(steps: list[Step]) -> bool:
    since = next((at for at in range(len(steps), 0, -1) if isinstance(steps[at - 1], Chain)), 0)
    return any(isinstance(step, OtherSide) for step in steps[since:])
