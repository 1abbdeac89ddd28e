"""How a round ends: what it joins to, and that nothing is left over that nobody spoke of."""

from collections.abc import Sequence

from loopleaf.notation.tree import ChainOf, First, Marked, Next, Place, Target

from .below import FREE, SKIPPED, USED
from .cells import Misfit
from .hand import Hand


def check_join(hand: Hand, place: Place | None) -> None:
    """The join goes into something that is there and counts."""
    match place:
        case ChainOf():
            if hand.beginning is None:
                raise Misfit("join", "the round doesn't begin with a chain")
            length, stands, counted = hand.beginning
            if not counted:
                raise Misfit("join", "the chain doesn't count")
            if place.length not in (0, length):
                raise Misfit("join", f"the round begins with a chain of {length}")
            if place.number and place.number != stands:
                raise Misfit("join", f"{stands} of its chains stand for the stitch")
        case First(target=Target(kind="chain")):
            if hand.beginning is None:
                raise Misfit("join", "the round doesn't begin with a chain")
        case Next() if not any(hand.fits(place.target, cell) for cell in hand.made):
            raise Misfit("join", "the round has no such place")
        case Marked() if not any(cell in hand.made for cell in hand.marks):
            raise Misfit("place", "nothing is marked")
        case First():
            first = next((at for at, cell in enumerate(hand.made) if hand.fits(place.target, cell)), None)
            if first is None:
                raise Misfit("join", "the round has no such stitch")
            if any(cell.top for cell in hand.made[:first]):
                hand.joined_at = first


def finish(hand: Hand, names_spaces: bool) -> None:
    """After the last step: the whole edge must be used, passed, left, or bridged."""
    if hand.edge.ring and not hand.cells and not hand.ring_used:
        raise Misfit("fit", "nothing is worked into the ring")
    if hand.edge.shape == "sides" and not hand.far_side:
        raise Misfit("fit", "the other side of the chain is left over")
    if hand.edge.loops:
        if hand.uneven:
            raise Misfit("fit", "the repeat doesn't come out even")
        return
    left = hand.free(0, len(hand.cells))
    if names_spaces:
        last = max((at for at, how in enumerate(hand.status) if how != FREE), default=-1)
        left += [
            at
            for at in range(last + 1, len(hand.cells))
            if hand.status[at] == FREE and hand.cells[at].kind == "space"
        ]
    if not left:
        return
    if hand.setting.rows and _as_at_its_beginning(hand, left):
        return
    if hand.setting.rows and hand.counted and _named_by_its_place(hand, left):
        return
    if hand.setting.rows or not _as_between_the_others(hand):
        raise Misfit("fit", f"{len(left)} left over")


def _as_at_its_beginning(hand: Hand, left: list[int]) -> bool:
    """A row that goes by slip stitches to a shell's space may end in the last one's, with as much behind."""
    last = max((at for at, how in enumerate(hand.status) if how == USED), default=0)
    behind = all(at > last and hand.cells[at].top for at in left)
    return hand.slipped_over == len(left) and behind and hand.cells[last].kind == "space"


def _named_by_its_place(hand: Hand, left: list[int]) -> bool:
    return (
        _tape(hand, left)
        or _behind_arches(hand, left)
        or _kept(hand, left)
        or _beside_the_last_gap(hand, left)
    )


def _tape(hand: Hand, left: list[int]) -> bool:
    """`ch 5, (2 dc, ch 2, 2 dc) in ch-2 sp, turn`: all of the row goes into the one space in the middle, so
    as much is left behind it as lies before it, and the chain that the row below began with.
    """
    used = [at for at, how in enumerate(hand.status) if how == USED]
    if len(used) != 1 or hand.cells[used[0]].kind != "space":
        return False
    before = sum(cell.top for cell in hand.cells[: used[0]])
    behind = [at for at in range(used[0] + 1, len(hand.cells)) if hand.status[at] == FREE]
    spaces = [at for at in behind if hand.cells[at].kind == "space"]
    return before == len(behind) - len(spaces) and spaces in ([], [len(hand.cells) - 1])


def _beside_the_last_gap(hand: Hand, left: list[int]) -> bool:
    """`2 dc in sp between last group and tch`: the turning chain stands behind the gap that it names."""
    return hand.end_gap and left == [hand.gap] == [len(hand.cells) - 1] and bool(hand.cells[-1].chain)


def _kept(hand: Hand, left: Sequence[int]) -> bool:
    """`sc in each st to last 4 sts, turn`: a row may leave at its end what it has kept."""
    return list(left) == hand.kept


def _behind_arches(hand: Hand, left: Sequence[int]) -> bool:
    """Whether a row went into spaces alone, and leaves the one stitch behind the last of them."""
    used = [at for at, how in enumerate(hand.status) if how == USED]
    arches = bool(used) and all((hand.cells[at].arch or hand.cells[at]).kind == "space" for at in used)
    return arches and list(left) == [used[-1] + 1] == [len(hand.cells) - 1]


def _as_between_the_others(hand: Hand) -> bool:
    """Whether what is left lies between the last place and the first as much lies between all others.

    In a circle the last gap meets the first: shells into shells leave half a shell at either end. What slip
    stitches passed at the round's start may lie there besides: a first cluster made of a chain and a stitch
    is two of them where the others are one. A chain before the join bridges the last gap by itself; what was
    skipped by a word elsewhere needs that word, or a chain, here as well.
    """
    gaps: list[tuple[int, ...]] = [()]
    in_words: set[int] = set()
    for cell, how in zip(hand.cells, hand.status, strict=True):
        if how == USED:
            gaps.append(())
        elif cell.top or cell.kind == "space":
            gaps[-1] += (cell.length,)
            if how == SKIPPED and cell.top:
                in_words.add(len(gaps) - 1)
    first, *between, last = gaps if len(gaps) > 1 else [(), *gaps]
    passed = [gap for at, gap in enumerate(between, 1) if at not in in_words]
    bridged = bool(hand.made) and hand.made[-1].kind == "space" and hand.joined
    own = last[: -hand.travelled] if hand.travelled else last
    return any(gap + first in passed for gap in (last, own)) or (
        bridged and (last in (*between, first) or own in between)
    )
