"""Reads how the work lies for what follows: behind or in front of something, in which loops, through which
layers, which side facing, turned or not.
"""

from dataclasses import replace
from typing import Literal

from .cursor import Cursor, UnreadableError
from .free_loops import read_working_in, starts_free_loops
from .piece_names import read_layers
from .place_first import read_place_first
from .place_parts import read_ring
from .stitching import read_work
from .targets import read_counted_target
from .tree import ONE, Facing, Skipped, Step, Turn, Work, WorkingOver
from .untils import names_a_space

Side = Literal["behind", "front", "over"]
_LIES: dict[str, Side] = {"behind": "behind", "in-front": "front", "over": "over"}


def _just_made(cursor: Cursor, side: Side, first: int) -> WorkingOver | None:
    """`working in front of sts just made`: how a crossing lies. None where a place is named."""
    start = cursor.at
    cursor.at += 1
    while cursor.means in ("a", "next"):
        cursor.at += 1
    several = cursor.said(cursor.at, cursor.at + 1).lower() in ("sts", "stitches")
    try:
        number, target = read_counted_target(cursor)
    except UnreadableError:
        target = None
    if target is None or not cursor.take("just-made"):
        cursor.at = start
        return None
    count = None if several and number is None else number or ONE
    return WorkingOver(side, count, target, cursor.span(first), made=True)


def starts_over(cursor: Cursor) -> bool:
    """Whether `over next ch-2 sp` or `over dc just made` stands here: the next stitch goes around that."""
    at = cursor.at + 1 + (cursor.ahead() == "next")
    words = cursor.words
    made = any(word.means == "just-made" for word in words[at : at + 3] if word.means not in (",", "end"))
    return names_a_space(cursor, at) or made


def read_behind(cursor: Cursor, steps: list[Step], first: int = -1) -> None:
    """`behind next ch-sp`; `first` is the word that the step begins with, where that isn't this one."""
    first = cursor.at if first < 0 else first
    side = _LIES[cursor.means]
    made = _just_made(cursor, side, first)
    if made is not None:
        _put(cursor, made, steps, first)
        return
    cursor.at += 1
    what = _own_name(cursor) or _last_ones(cursor)
    if what:
        steps.append(WorkingOver(side, span=cursor.span(first), what=what))
        return
    cursor.take("next")
    amount, target = read_counted_target(cursor)
    _put(cursor, WorkingOver(side, amount or ONE, target, cursor.span(first)), steps, first)


def _put(cursor: Cursor, over: WorkingOver, steps: list[Step], first: int) -> None:
    """Before the stitch that no comma parts it from: `dc in skipped st behind next ch-3 sp`."""
    last = steps[-1] if steps and cursor.words[first - 1].means != "," else None
    behind = isinstance(last, Work) and last.places and isinstance(last.places[0], Skipped)
    steps.insert(len(steps) - bool(behind), over)


MOST_WORDS = 5


def _own_name(cursor: Cursor) -> str:
    """`petals of round 2`, `these sts`: the author's own words for a part; "" where a place is named."""
    at = cursor.at
    while cursor.words[at].means in ("a", "next", "first", "last", "each"):
        at += 1
    if cursor.words[at].means not in ("?", "group-name"):
        return ""
    first = cursor.at
    these = cursor.said(at, at + 1).lower() in ("these", "those")
    more = ("st", "stitch", "just-made") if these else ()
    while cursor.words[at].means in ("?", "group-name", "of", "round", "row", "num", "last", "a", *more):
        at += 1
    if cursor.words[at].means not in (",", "end", ")", "(", "*") or at - first > MOST_WORDS:
        return ""
    cursor.at = at
    return cursor.said(first, at)


def _last_ones(cursor: Cursor) -> str:
    """`last 3 sts`, that the crossing stitches lie before or behind; "" where others are named."""
    at = cursor.at + 1
    if cursor.means != "last":
        return ""
    number = cursor.words[at].value.sizes[0] if cursor.words[at].means == "num" else 1
    at += cursor.words[at].means == "num"
    if cursor.words[at].means not in ("st", "stitch") or cursor.words[at + 1].means not in (",", "just-made"):
        return ""
    cursor.at = at + 1
    cursor.take("just-made")
    return "last st" if number == 1 else f"last {number} sts"


def read_loops(cursor: Cursor, steps: list[Step]) -> None:
    """`in BLO, sc in each st around`, `in ring, 3 dc, ch 2`: said once for the steps that follow."""
    if starts_free_loops(cursor, cursor.at + 1):
        first = cursor.at
        cursor.at += 1
        read_working_in(cursor, steps, first)
        return
    if cursor.ahead() == "ring":
        cursor.at += 1
        cursor.ring = read_ring(cursor)
        return
    if cursor.ahead() != "loop-of":
        read_place_first(cursor, steps)
        return
    cursor.loop = cursor.words[cursor.at + 1].value
    cursor.at += 2
    cursor.take("throughout")
    if cursor.means not in (",", "end", "("):
        raise cursor.fail("comma")


_BEHIND_RING = frozenset({",", "and", "then", "num", "with"})


def starts_in_ring(cursor: Cursor) -> bool:
    """`MR, 6 sc`, `make a magic ring, ch 1, 6 sc`: the line begins with the ring that the piece starts with,
    and what has no place of its own goes into it.
    """
    before = cursor.words[: cursor.at]
    if any(word.means not in ("working", "a", ",") for word in before) or cursor.ahead() not in _BEHIND_RING:
        return False
    cursor.ring = read_ring(cursor)
    return True


def pass_side(cursor: Cursor, steps: list[Step]) -> bool:
    """`(RS) sc in each st across`, `WS: …`: a line may begin with the side that faces the maker."""
    first = cursor.at
    words = cursor.words
    bracket = words[first].means == "("
    at = first + bracket
    side = cursor.said(at, at + 1).upper() if words[at].means != "end" else ""
    if any(word.means != "," for word in words[:first]) or side not in ("RS", "WS"):
        return False
    if words[at + 1].means != (")" if bracket else ","):
        return False
    cursor.at = at + 2
    steps.append(Facing("RS" if side == "RS" else "WS", cursor.span(first)))
    return True


def read_loop_first(cursor: Cursor, steps: list[Step]) -> None:
    """`BLO sc in next st` (one step), or `BLO, …`, `BLO (…) x 6` for those that follow."""
    if cursor.ahead() in (",", "end", "("):
        cursor.loop = cursor.words[cursor.at].value
        cursor.at += 1
    else:
        read_work(cursor, steps)


def read_through(cursor: Cursor, steps: list[Step]) -> None:
    """`through both layers`: holds for the steps that follow."""
    layers = read_layers(cursor)
    if not layers:
        cursor.at += 1
        raise cursor.fail("layers")
    cursor.through = layers


def read_through_both(cursor: Cursor, steps: list[Step]) -> bool:
    """`inserting hook through both layers`: of the stitches just told, or of those that follow."""
    words, at = cursor.words, cursor.at
    inserts = words[at].means == "insert-hook" or (
        cursor.said(at, at + 1).lower() == "inserting" and words[at + 1].means == "hook"
    )
    behind = at + 1 + (words[at].means != "insert-hook")
    if not inserts or words[behind].means != "through" or words[behind + 1].means != "layers":
        return False
    cursor.at = behind
    if steps and isinstance(steps[-1], Work) and steps[-1].places and not steps[-1].through:
        cursor.at += 2
        steps[-1] = replace(steps[-1], through=words[behind + 1].value)
    else:
        read_through(cursor, steps)
    return True


_SIDES = {"rs": "RS", "right side": "RS", "ws": "WS", "wrong side": "WS"}
_OF_A_SIDE = ("facing", "row", "round", "rnd")
_TOLD_OF = ("row", "round")


def read_side_aside(cursor: Cursor, steps: list[Step]) -> bool:
    """`(RS) sc in each st across` says which side faces; `(dec row) …`, `(buttonhole row) …` what the row is
    for.
    """
    first, close = cursor.at, cursor.words[cursor.at].value
    if steps or first or close < first + 2:
        return False
    said = cursor.said(first + 1, close).lower().split()
    side = _SIDES.get(" ".join(said[:-1] if said[-1] in _OF_A_SIDE else said))
    inside = cursor.words[first + 1 : close]
    named = inside[-1].means in _TOLD_OF and all(word.means in _OF_A_ROW for word in inside[:-1])
    if side is None and not (named and len(inside) > 1):
        return False
    cursor.at = close + 1
    if side is not None:
        steps.append(Facing(side, cursor.span(first)))  # type: ignore[arg-type]
    return True


_OF_A_ROW = frozenset(
    {"?", "inc", "dec", "edge", "even", "picot", "centre", "ring", "turning", "beg", "form"}
)


def read_turn(cursor: Cursor, steps: list[Step]) -> None:
    """`turn`, `do not turn`."""
    first = cursor.at
    turns = cursor.means == "turn"
    cursor.at += 1
    steps.append(Turn(turns, cursor.span(first)))


def read_facing(cursor: Cursor, steps: list[Step]) -> None:
    """`with RS facing`."""
    first = cursor.at
    cursor.at += 1
    steps.append(Facing(cursor.words[first].value, cursor.span(first)))
