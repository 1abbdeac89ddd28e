"""Where stitches go: each place that print can name, taken from the edge one after the other."""

from collections.abc import Iterator

from loopleaf.notation.tree import (
    ONE,
    STITCH,
    Between,
    ChainOf,
    Corresponding,
    Each,
    Evenly,
    First,
    FromHook,
    Here,
    JustMade,
    Last,
    Marked,
    Next,
    Over,
    Place,
    Ring,
    RowEnds,
    Same,
    Skipped,
    Target,
    Within,
)

from .below import FREE, NOWHERE, PASSED
from .cells import Misfit
from .hand import Hand, Leaf
from .looking_ahead import in_the_last
from .places_between import between, each_gap, end_gap, next_gap
from .places_elsewhere import in_own_round, left_before, of_piece, stands_before
from .places_ends import first, last, same
from .places_rare import (
    chain_of,
    evenly,
    just_made,
    marked,
    row_ends,
    skipped,
    within,
)
from .places_start import from_hook, on_leaf, ring
from .setting import KEPT

CHAIN = Target("chain")


def spots(hand: Hand, place: Place) -> Iterator[tuple[int, ...]]:
    """Each spot in order, as the cells that it leans on; a spot is used up when it is given out."""
    place = in_own_round(hand, place)
    match place:
        case Next():
            yield from _next(hand, place)
        case Each():
            yield from _each(hand, place)
        case Over():
            yield _over(hand, place)
        case First() if hand.is_gap(place.target):
            yield (end_gap(hand, 0),)
        case Last() if hand.is_gap(place.target):
            yield (end_gap(hand, -1),)
        case First():
            yield from first(hand, place)
        case Last():
            yield from last(hand, place)
        case Same(begun="first" | "chain", target=Target(kind="chain")) if (
            0 < hand.pos == len(hand.cells) - 1
        ):  # an oval comes round to its first chain
            yield from last(hand, Last(ONE, place.target))
        case Same():
            yield (same(hand, place.target),)
        case Here():
            yield (NOWHERE if hand.here is None else hand.here,)
        case Ring():
            yield (ring(hand),)
        case FromHook():
            yield (from_hook(hand, place.number),)
        case ChainOf():
            yield (chain_of(hand, place),)
        case Within():
            yield from within(hand, place)
        case Between():
            yield (between(hand, place),)
        case Marked():
            yield (marked(hand),)
        case JustMade():
            yield (just_made(hand, place),)
        case Skipped():
            yield from skipped(hand, place)
        case RowEnds():
            yield from row_ends(hand, place)
        case Evenly():
            yield (evenly(hand, place),)
        case Corresponding():
            if place.piece not in hand.setting.pieces:
                raise Misfit("place", f"no piece {place.piece} yet")
            yield (NOWHERE,)


def _next(hand: Hand, place: Next) -> Iterator[tuple[int, ...]]:
    number = hand.setting.number(place.count)
    for _ in range(number or 0):
        if place.target.unworked and place.target.kind != "free-loop":
            yield (left_before(hand, place.target),)
        elif place.unsaid and _begins_in(hand, place.target):
            yield (same(hand, place.target),)
        elif place.piece and place.piece != hand.setting.begun_on:
            yield (of_piece(hand, place),)
        elif place.far and hand.leaf is not None and not hand.leaf.far:
            hand.leaf = Leaf(hand.leaf.length, 1, hand.leaf.grows, far=True)
            yield (NOWHERE,)
        elif on_leaf(hand, place.target):
            assert hand.leaf is not None
            hand.leaf.at += 1
            hand.uses += hand.leaf.grows
            yield (NOWHERE,)
        elif hand.setting.spiral and hand.exhausted and hand.moves_marker:
            hand.overrun += 1
            if hand.overrun > len(hand.made):
                raise Misfit("fit", "past the end")
            yield (NOWHERE,)
        elif hand.is_gap(place.target):
            yield (next_gap(hand),)
        elif place.below:
            yield (stands_before(hand, place),)
        elif hand.edge.ring and not hand.cells and place.target == STITCH:
            yield (ring(hand),)  # nothing else is there: `6 sc` goes into the ring
        else:
            yield (hand.take(place.target),)


def _begins_in(hand: Hand, target: Target) -> bool:
    """`sl st in next sp, ch 3, 2 dc in sp`: the space that the round begins in, not yet another one."""
    begun = not any(cell is not hand.begun_in and cell.top for cell in hand.made)
    return begun and hand.last is not None and hand.in_a_space and hand.fits(target, hand.cells[hand.last])


def _each(hand: Hand, place: Each) -> Iterator[tuple[int, ...]]:
    if any(target.kind == "chain" for target in place.targets) and on_leaf(hand, CHAIN):
        assert hand.leaf is not None
        while hand.leaf.left:
            hand.leaf.at += 1
            hand.uses += hand.leaf.grows
            yield (NOWHERE,)
        return
    hand.leaf = None
    if any(target.unworked and target.kind != "free-loop" for target in place.targets):
        while hand.unworked:
            yield (left_before(hand, place.targets[0]),)
        return
    if hand.uneven:
        raise Misfit("fit", "the repeat doesn't come out even")
    bound = hand.bound(place.until)
    if place.until.kind == "end":
        bound = _before_the_last(hand, bound)
    if all(hand.is_gap(target) for target in place.targets):
        yield from each_gap(hand, bound)
        return
    found = 0
    at = behind = hand.pos
    while at < bound:
        target = next((one for one in place.targets if hand.counts_for(one, at)), None)
        if hand.status[at] != FREE or target is None:
            hand.mark(at, PASSED)
            at += 1
            continue
        whole = hand.whole(target, at)
        worked = found % place.every == 0
        hand.use_up(target, at)
        found += 1
        at = behind = whole[-1] + 1
        if worked:
            hand.last = whole[0]
            yield (whole[0],)
    hand.pos = max(hand.pos, behind)
    hand.pass_to(bound)
    if not found:
        anywhere = any(hand.fits(one, cell) for one in place.targets for cell in hand.cells)
        raise Misfit("fit" if anywhere else "place", "each of none")


def _before_the_last(hand: Hand, end: int) -> int:
    """`sc in each st across, 2 sc in last st`: the last one was kept, if the count says so."""
    named = None if hand.follow is None else in_the_last(hand.follow)
    if named is None or not hand.counted:
        return end
    number, target = hand.setting.number(named[0]) or 0, named[1]
    there = [at for at in range(end) if hand.counts_for(target, at)]
    if not 0 < number <= len(there) or there[-number] < hand.pos or not hand.setting.choose(KEPT, (0, 1)):
        return end
    return there[-number]


def _over(hand: Hand, place: Over) -> tuple[int, ...]:
    number = hand.setting.number(place.count) or 0
    if place.which == "first" and hand.pos:
        raise Misfit("place", "the first stitches lie behind")
    if place.which == "last":
        return tuple(spot[0] for spot in last(hand, Last(place.count, place.target)))
    legs = []
    for _ in range(number):
        if on_leaf(hand, place.target):
            assert hand.leaf is not None
            hand.leaf.at += 1
            legs.append(NOWHERE)
        else:
            legs.append(hand.take(place.target))
    return tuple(legs) or (NOWHERE,)
