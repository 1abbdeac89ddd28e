"""Slip stitches that are no stitches of the round: joins, fastenings, the closing of a picot."""

from collections.abc import Sequence

from loopleaf.notation.tree import (
    Chain,
    ChainOf,
    Corresponding,
    FastenOff,
    First,
    Here,
    Join,
    JustMade,
    Last,
    Marker,
    Next,
    Place,
    Step,
    Stitch,
    Tally,
    Turn,
    Work,
)

from .cells import Cell
from .closing import check_join
from .counts import PETAL
from .hand import Hand, Leaf
from .places import spots


def joins(hand: Hand, step: Work, rest: Sequence[Step]) -> bool:
    """The last slip stitch of a joined round, into the round's own beginning, is its join."""
    if step.stitch.kind != "slip" or hand.setting.spiral or hand.setting.rows or not hand.made:
        return False
    if not _ends(hand, rest) or hand.onward:
        return False
    return len(step.places) == 1 and isinstance(step.places[0], ChainOf | First)


def _ends(hand: Hand, rest: Sequence[Step]) -> bool:
    """Whether nothing more is worked, here or behind the bracket."""
    after = rest or (() if hand.follow is None else (hand.follow,))
    return all(isinstance(one, Turn | FastenOff | Marker | Tally) for one in after)


def only_fastens(hand: Hand, step: Work, place: object) -> bool:
    """Slip stitches that aren't counted: to another piece, to the next block, down to a chain's foot."""
    if isinstance(place, Corresponding):
        for _ in spots(hand, place):
            there = {cell.length for cell in hand.setting.pieces[place.piece] if cell.kind == "space"}
            hand.fastened_to = frozenset({place.target.length} if place.target.length else there)
        return True
    if hand.made and hand.made[-1].kind == "space" and _closes_picot(hand, place):
        hand.made[-1] = Cell("picot", length=hand.made[-1].length)
        return True
    if hand.setting.blocks and isinstance(place, Next | Last) and place.target.kind == "space":
        for spot in spots(hand, place):
            hand.last = spot[0]
        return True
    return hand.setting.blocks and isinstance(place, Here)


def _closes_picot(hand: Hand, place: object) -> bool:
    """Whether a slip stitch goes back to the foot of the chains just made: `ch 3, sl st in first of 3 chs`,
    `in last sc`. The last of the row is another one where it is the next at the hook.
    """
    match place:
        case JustMade():
            next(spots(hand, place))  # such a stitch must be there
            return True
        case ChainOf(number=1, length=length):
            return length == hand.made[-1].length
        case Last(target=target) if len(hand.made) > 1 and hand.fits(target, hand.made[-2]):
            ahead = [at for at in range(hand.pos, len(hand.cells)) if hand.counts_for(target, at)]
            return hand.here is not None or len(ahead) != 1
    return False


def close_ring(hand: Hand, leaf: Leaf) -> None:
    """A slip stitch into a chain's first makes a picot of it."""
    hand.leaf = None
    hand.made.append(Cell("picot", length=leaf.length))


def is_first_chain(place: object) -> bool:
    return isinstance(place, First) and place.target.kind == "chain"


def closes_arch(hand: Hand, stitch: Stitch, place: Place, rest: Sequence[Step]) -> bool:
    """A stitch in place of the last arch's chains, or of their second half: it joins the round.

    With the chains before it, it is as long as one of the others; where it has chains before it and the
    others differ, the line says itself which one it is like.
    """
    height = hand.setting.own_chains.get(stitch.kind, 0)
    if hand.setting.rows or hand.setting.spiral or not hand.made or not height:
        return False
    if not isinstance(place, ChainOf | First) or not _ends(hand, rest):
        return False
    *others, last = hand.made
    before = last.length if last.kind == "space" and not last.bunches else 0
    lengths = {cell.length for cell in (others if before else hand.made) if cell.kind == "space"}
    if before + height not in lengths or (before and len(lengths) > 1):
        return False
    mid_arch(hand, before + height, (place,))
    return True


def closes_no_arch(hand: Hand, step: Work, rest: Sequence[Step]) -> bool:
    """Whether a stitch at a round's end goes into the round's own first stitch, for the edge has none such;
    as no arch is as long, it is a stitch like any other.
    """
    match step.places:
        case (First(target=target),) if _ends(hand, rest) and not (hand.setting.rows or hand.setting.spiral):
            there = any(hand.fits(target, cell) for cell in hand.cells)
            return not there and any(hand.fits(target, cell) for cell in hand.made)
    return False


def goes_into_the_first(hand: Hand, step: Work, rest: Sequence[Step]) -> bool:
    """`*ch 3, dc in same st, …, sl st in next st; rep from * around`: the last slip stitch fastens the last
    petal where the first one stands, for in a circle the first stitch comes after the last.
    """
    match step:
        case Work(stitch=Stitch(kind="slip"), places=(Next(target=target, piece=""),)) if _ends(hand, rest):
            closed = hand.edge.shape == "circle" and not hand.setting.spiral and not hand.setting.rows
            petal = bool(hand.made) and hand.made[-1].form == PETAL
            done = not hand.free(0, len(hand.cells)) and hand.limit == len(hand.cells)
            return closed and petal and done and hand.fits(target, hand.cells[0])
    return False


def mid_arch(hand: Hand, length: int, places: Sequence[Place]) -> None:
    """A join that leaves the hook in the middle of the last arch."""
    for place in places:
        check_join(hand, place)
    if hand.made and hand.made[-1].kind == "space":
        hand.made.pop()
    hand.made.append(Cell("space", length=length))
    hand.mid_arch = True
    hand.joined = True


def behind_the_join(steps: tuple[Step, ...]) -> tuple[tuple[Step, ...], tuple[Step, ...]]:
    """A line's own steps, and the slip stitches (and a chain) behind its join, with which the next begins."""
    joins_at = [at for at, step in enumerate(steps) if isinstance(step, Join) and step.how != "not"]
    for at, step in enumerate(steps[joins_at[-1] + 1 :] if joins_at else ()):
        moves = isinstance(step, Work) and step.stitch.kind == "slip"
        last = joins_at[-1] + 2 + at == len(steps)
        if not moves and not (last and isinstance(step, Chain)):
            return steps, ()
    own = joins_at[-1] + 1 if joins_at else len(steps)
    return steps[:own], steps[own:]
