"""Places by where they stand in the row: the first, the last, the same as before."""

from collections.abc import Iterator

from loopleaf.notation.tree import First, Last, Target

from .below import FREE, NOWHERE, PASSED, SKIPPED, USED
from .cells import Misfit
from .hand import Hand
from .places_between import stands_in_gap
from .places_start import on_leaf


def first(hand: Hand, place: First) -> Iterator[tuple[int, ...]]:
    if hand.onward:
        yield from last(hand, Last(place.count, place.target))
        return
    number = hand.setting.number(place.count) or 0
    there = [at for at in range(len(hand.cells)) if hand.counts_for(place.target, at)]
    if number > len(there):
        raise Misfit("place", f"no first {place.target}")
    for at in there[:number]:
        end = at
        if hand.status[at] == FREE:
            begins = not hand.pos or (hand.beginning is not None and hand.pos == 1)
            if hand.free(0, at) and not (begins and (hand.cells[at].arch or hand.cells[at]).kind == "space"):
                raise Misfit("place", "not the first any more")
            for passed in range(at):
                hand.mark(passed, PASSED)
            end = hand.use_up(place.target, at)[-1]
        elif _comes_round(hand, place.target, at):
            for passed in range(hand.pos, len(hand.cells)):
                hand.mark(passed, PASSED)
            yield (at,)
            return
        elif at + 1 < hand.pos or hand.status[at] == SKIPPED:
            raise Misfit("fit", "the first stitch lies behind")
        hand.pos = max(hand.pos, end + 1)
        hand.last = at
        yield (at,)


def _comes_round(hand: Hand, target: Target, at: int) -> bool:
    """At a round's end the space that it began in lies before the hook again."""
    if at or not hand.made or target.kind not in ("space", "corner") or hand.edge.shape != "circle":
        return False
    begun = hand.cells[0]
    ahead = [hand.cells[i] for i in range(hand.pos, len(hand.cells)) if hand.open(i)]
    return not any(hand.fits(target, cell) and cell.length == begun.length for cell in ahead)


def last(hand: Hand, place: Last) -> Iterator[tuple[int, ...]]:
    number = hand.setting.number(place.count) or 0
    if on_leaf(hand, place.target):
        assert hand.leaf is not None
        if hand.leaf.left < number:
            raise Misfit("fit", "past the end of the chain")
        hand.leaf.at = hand.leaf.length
        for _ in range(number):
            yield (NOWHERE,)
        return
    there = [at for at in range(hand.limit) if hand.counts_for(place.target, at)]
    if number > len(there):
        raise Misfit("place", f"no last {place.target}")
    behind_a_space = hand.in_a_space and not hand.repeating
    for at in there[len(there) - number :]:
        if at == hand.shared == len(hand.cells) - 1 and hand.setting.rows and hand.counted:
            yield (at,)  # `dc in first dc, *dc3tog over same dc and next 2 dc; rep from *, dc in last dc`
            return
        if at < hand.pos:
            raise Misfit("fit", "the last stitch is used already")
        if place.target.kind == "space" or behind_a_space:  # as before a next place that is named
            for passed in range(hand.pos, at):
                hand.mark(passed, PASSED)
        hand.pos = hand.use_up(place.target, at)[-1] + 1
        hand.last = at
        yield (at,)


def same(hand: Hand, target: Target) -> int:
    """The place last worked into; at the start of a round the stitch that it was joined to."""
    if hand.leaf is not None:
        hand.leaf = None
    if stands_in_gap(hand):
        return NOWHERE
    if hand.last is None:
        if not hand.cells:
            return NOWHERE
        hand.mark(0, USED)
        hand.pos = max(hand.pos, 1)
        hand.last = 0
    cell = hand.cells[hand.last] if hand.last >= 0 else None
    if cell is not None and target.kind in ("space", "corner") and not hand.fits(target, cell):
        raise Misfit("place", "the same place is no such space")
    if hand.last >= 0 and hand.open(hand.last):
        hand.mark(hand.last, USED)
        if target.kind in ("space", "loop"):
            hand.spend_arch(hand.last)
        hand.pos = max(hand.pos, hand.last + 1)
    return hand.last
