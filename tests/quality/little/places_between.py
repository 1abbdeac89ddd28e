"""Places that are no stitch's: gaps between groups, or between stitches where there are no groups."""

from collections.abc import Iterator

from loopleaf.notation.tree import Between

from .below import NOWHERE, PASSED, SKIPPED, USED
from .cells import Misfit
from .gaps import together
from .hand import Hand
from .setting import BESIDE, HALVES


def between(hand: Hand, place: Between) -> int:
    if stands_in_gap(hand):
        return NOWHERE
    if _by_a_half_group(hand, place) and hand.setting.choose(HALVES, (0, 1)):
        return next_gap(hand)
    if place.first:
        first = next((at for at in range(len(hand.cells)) if hand.counts_for(place.target, at)), hand.limit)
        if first + 1 < hand.pos or hand.last == NOWHERE:
            raise Misfit("fit", "the first gap lies behind")
    elif _beside_the_first(hand) and hand.setting.choose(BESIDE, (0, 1)):
        first = 0
    else:
        first = hand.seek(place.target)
    whole = hand.whole(place.target, first) if first < hand.limit else [first]
    end = min(hand.limit + 1, len(hand.cells))  # `to last group`: the gap before that one is none behind it
    after = next((at for at in range(whole[-1] + 1, end) if hand.counts_for(place.target, at)), None)
    around = hand.edge.shape == "circle" and not hand.in_gap
    if after is None and around:
        after = len(hand.cells)  # the last and the first
    if after is None:
        raise Misfit("fit", "nothing to go between")
    for at in range(hand.pos, after):
        hand.mark(at, PASSED)
    last = [] if around else hand.whole(place.target, after)
    if last and not any(hand.counts_for(place.target, at) for at in range(last[-1] + 1, end)):
        for at in last:
            hand.mark(at, PASSED)
        hand.behind.update(last)  # it may be named yet: `dc in top of tch`
    hand.uses += 1
    hand.pos = after
    hand.last = NOWHERE
    return NOWHERE


def _beside_the_first(hand: Hand) -> bool:
    """`ch 3, dc in each sp between dc across`, `sc in first st, sc in each sp between sts across`: nothing is
    made yet but what stands on the first stitch.
    """
    alone = sum(cell.top for cell in hand.made) == 1
    return hand.repeating and alone and hand.last == 0 and hand.pos == 1


def _by_a_half_group(hand: Hand, place: Between) -> bool:
    """Whether a row's first or last group is a turning chain with stitches beside it in the same place, or
    one that this row's turning chain stands on. Only a stated count can bear out that they are groups.
    """
    if not (hand.setting.rows and hand.counted and place.target.kind == "group") or len(hand.cells) < 2:
        return False
    ends = (hand.cells[:2], hand.cells[-2:])
    if SKIPPED in hand.status[max(hand.pos - 1, 0) : hand.pos]:
        return False
    chain = any(cell.chain for end in ends for cell in end)
    return chain and all(together(*end) for end in ends)


def stands_in_gap(hand: Hand) -> bool:
    """The first thing made in a round whose slip stitches went into a gap: it stands there. False where the
    round begins elsewhere, or something stands there already.
    """
    if not hand.in_gap or hand.gap == 0 or hand.pos:
        return False
    hand.uses += 1
    hand.gap, hand.last = 0, NOWHERE
    return True


def next_gap(hand: Hand) -> int:
    """The next gap from the hook on; what lies before it is passed over."""
    ahead = [at for at in hand.gaps() if at < hand.limit or at == len(hand.cells)]
    return _take(hand, ahead)


def each_gap(hand: Hand, bound: int) -> Iterator[tuple[int, ...]]:
    ahead = [at for at in hand.gaps() if _is_ahead(hand, at) and at < bound]
    if not ahead:
        raise Misfit("place", "no gap to go into")
    for at in ahead:
        yield (_take(hand, [at]),)


def end_gap(hand: Hand, which: int) -> int:
    """The first gap of all, or the last: those beside a lone stitch at the edge too."""
    there = list(hand.gaps(lone=True))
    if not there:
        raise Misfit("place", "no gap to go into")
    hand.end_gap = which == -1
    return _take(hand, [there[which]])


def _take(hand: Hand, there: list[int]) -> int:
    at = next((one for one in there if _is_ahead(hand, one)), None)
    if at is None:
        raise Misfit("fit", "no more gaps")
    _stand_in_it(hand, at)
    for passed in range(hand.pos, at):
        hand.mark(passed, PASSED)
    if at < len(hand.cells) and hand.cells[at].kind == "space":
        hand.mark(at, USED)
    else:
        hand.uses += 1
    if not any(one > at for one in hand.gaps()):
        _past_the_last(hand, at)
    hand.pos, hand.gap, hand.last = at, at, NOWHERE
    return NOWHERE


def _is_ahead(hand: Hand, at: int) -> bool:
    return at >= hand.pos and at != hand.gap


def _stand_in_it(hand: Hand, at: int) -> None:
    """A round's first stitch in the gap beside its turning chain: the chain stands in the gap too."""
    alone = [cell for cell in hand.made if cell.top] == [hand.begun_in]
    if alone and hand.last == at - 1 and hand.status[at - 1] == USED:
        hand.status[at - 1] = PASSED
        hand.uses -= 1


def _past_the_last(hand: Hand, at: int) -> None:
    """The group behind the last gap is gone past, though its last stitch may be named yet."""
    tops = [one for one in range(at, len(hand.cells)) if hand.cells[one].top]
    group = [one for one in tops if one == tops[0] or together(hand.cells[tops[0]], hand.cells[one])]
    if len(group) > 1 or hand.in_gap:
        for one in group:
            hand.mark(one, PASSED)
        hand.behind.update(group)
