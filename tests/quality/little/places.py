"""Where stitches go: each place that print can name, taken from the edge one after the other."""

from collections.abc import Iterator

from loopleaf.notation.tree import (
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

from .cells import Misfit
from .hand import FREE, NOWHERE, PASSED, SKIPPED, USED, Hand, Leaf
from .places_rare import (
    between,
    chain_of,
    evenly,
    just_made,
    marked,
    row_ends,
    skipped,
    within,
)

CHAIN = Target("chain")


def spots(hand: Hand, place: Place) -> Iterator[tuple[int, ...]]:
    """Each spot in order, as the cells that it leans on; a spot is used up when it is given out."""
    match place:
        case Next():
            yield from _next(hand, place)
        case Each():
            yield from _each(hand, place)
        case Over():
            yield _over(hand, place)
        case First():
            yield from _first(hand, place)
        case Last():
            yield from _last(hand, place)
        case Same():
            yield (same(hand, place.target),)
        case Here():
            yield (NOWHERE if hand.here is None else hand.here,)
        case Ring():
            yield (_ring(hand),)
        case FromHook():
            yield (_from_hook(hand, place.number),)
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


def on_leaf(hand: Hand, target: Target) -> bool:
    """Whether `in next ch` stays on the chain made inside the round."""
    if hand.leaf is None:
        return False
    if target.kind == "chain" and hand.leaf.left:
        return True
    hand.leaf = None
    return False


def _next(hand: Hand, place: Next) -> Iterator[tuple[int, ...]]:
    number = hand.setting.number(place.count)
    for _ in range(number or 0):
        if place.target.unworked and place.target.kind != "free-loop":
            yield (_left_before(hand, place.target),)
        elif place.piece:
            yield (_of_piece(hand, place),)
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
        elif place.below:
            yield (_stands_before(hand, place.target),)
        elif hand.edge.ring and not hand.cells and place.target == STITCH:
            yield (_ring(hand),)  # nothing else is there: `6 sc` goes into the ring
        else:
            yield (hand.take(place.target),)


def _stands_before(hand: Hand, target: Target) -> int:
    """A spike goes in lower down and uses up the place that it stands in front of or behind."""
    if hand.passed_by:
        hand.passed_by = False
        return NOWHERE
    if target.stitch is not None or target.kind != "stitch":
        return hand.take(target)
    for at in range(hand.pos, hand.limit):
        if hand.cells[at].kind != "picot":
            hand.mark(at, USED)
            hand.pos = at + 1
            hand.last = at
            return NOWHERE
    raise Misfit("fit", "nothing left to stand before")


def _left_before(hand: Hand, target: Target) -> int:
    """A stitch that an earlier row left unworked."""
    for cell in hand.unworked:
        if hand.fits(target, cell):
            hand.unworked.remove(cell)
            hand.uses += 1
            return NOWHERE
    raise Misfit("fit", "no more unworked stitches")


def _of_piece(hand: Hand, place: Next) -> int:
    cells = hand.setting.pieces.get(place.piece)
    if cells is None:
        raise Misfit("place", f"no piece {place.piece} yet")
    at = hand.elsewhere.get(place.piece, 0)
    while at < len(cells) and not hand.fits(place.target, cells[at]):
        at += 1
    if at >= len(cells):
        raise Misfit("fit", f"{place.piece} has no more")
    hand.elsewhere[place.piece] = at + 1
    hand.uses += 1
    return NOWHERE


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
            yield (_left_before(hand, place.targets[0]),)
        return
    if hand.uneven:
        raise Misfit("fit", "the repeat doesn't come out even")
    bound = hand.bound(place.until)
    found = 0
    at = hand.pos
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
        at = whole[-1] + 1
        if worked:
            hand.last = whole[0]
            yield (whole[0],)
    hand.pos = max(hand.pos, bound)
    if not found:
        anywhere = any(hand.fits(one, cell) for one in place.targets for cell in hand.cells)
        raise Misfit("fit" if anywhere else "place", "each of none")


def _over(hand: Hand, place: Over) -> tuple[int, ...]:
    number = hand.setting.number(place.count) or 0
    if place.which == "first" and hand.pos:
        raise Misfit("place", "the first stitches lie behind")
    if place.which == "last":
        return tuple(spot[0] for spot in _last(hand, Last(place.count, place.target)))
    legs = []
    for _ in range(number):
        if on_leaf(hand, place.target):
            assert hand.leaf is not None
            hand.leaf.at += 1
            legs.append(NOWHERE)
        else:
            legs.append(hand.take(place.target))
    return tuple(legs) or (NOWHERE,)


def _first(hand: Hand, place: First) -> Iterator[tuple[int, ...]]:
    number = hand.setting.number(place.count) or 0
    there = [at for at in range(len(hand.cells)) if hand.counts_for(place.target, at)]
    if number > len(there):
        raise Misfit("place", f"no first {place.target}")
    for at in there[:number]:
        if hand.status[at] == FREE:
            stood = hand.beginning is not None and hand.pos == 1 and hand.cells[at].kind == "space"
            if hand.free(0, at) and not stood:
                raise Misfit("place", "not the first any more")
            for passed in range(at):
                hand.mark(passed, PASSED)
            hand.mark(at, USED)
        elif at + 1 < hand.pos or hand.status[at] == SKIPPED:
            raise Misfit("fit", "the first stitch lies behind")
        hand.pos = max(hand.pos, at + 1)
        hand.last = at
        yield (at,)


def _last(hand: Hand, place: Last) -> Iterator[tuple[int, ...]]:
    number = hand.setting.number(place.count) or 0
    if on_leaf(hand, place.target):
        assert hand.leaf is not None
        if hand.leaf.left < number:
            raise Misfit("fit", "past the end of the chain")
        hand.leaf.at = hand.leaf.length
        for _ in range(number):
            yield (NOWHERE,)
        return
    there = [at for at in range(len(hand.cells)) if hand.counts_for(place.target, at)]
    if number > len(there):
        raise Misfit("place", f"no last {place.target}")
    for at in there[len(there) - number :]:
        if at < hand.pos:
            raise Misfit("fit", "the last stitch is used already")
        if place.target.kind == "space":  # what lies before a place that is named is passed over
            for passed in range(hand.pos, at):
                hand.mark(passed, PASSED)
        hand.mark(at, USED)
        hand.pos = at + 1
        hand.last = at
        yield (at,)


def same(hand: Hand, target: Target) -> int:
    """The place last worked into; at the start of a round the stitch that it was joined to."""
    if hand.leaf is not None:
        hand.leaf = None
    if hand.last is None:
        if not hand.cells:
            return NOWHERE
        hand.mark(0, USED)
        hand.pos = max(hand.pos, 1)
        hand.last = 0
    cell = hand.cells[hand.last] if hand.last >= 0 else None
    if cell is not None and target.kind in ("space", "corner") and not hand.fits(target, cell):
        raise Misfit("place", "the same place is no such space")
    if hand.last >= 0 and hand.status[hand.last] == FREE:
        hand.mark(hand.last, USED)
        hand.pos = max(hand.pos, hand.last + 1)
    return hand.last


def _ring(hand: Hand) -> int:
    if not hand.edge.ring:
        raise Misfit("place", "there is no ring")
    if not hand.ring_used:
        if SKIPPED in hand.status:
            raise Misfit("fit", "chains of the ring are skipped and then the ring is worked")
        hand.ring_used = True
        for at in range(len(hand.cells)):
            hand.status[at] = PASSED
        hand.uses = 1
        hand.pos = len(hand.cells)
    hand.last = NOWHERE
    return NOWHERE


def _from_hook(hand: Hand, number: int) -> int:
    if hand.leaf is not None and hand.leaf.at == 0:
        if number > hand.leaf.length:
            raise Misfit("place", f"a chain of {hand.leaf.length} has no {number}th")
        hand.leaf.at = number
        hand.uses += hand.leaf.grows
        return NOWHERE
    if not hand.edge.foundation or hand.pos:
        raise Misfit("place", "no chain at the hook")
    if number > len(hand.cells):
        raise Misfit("place", f"the foundation chain has no {number}th")
    for at in range(number - 1):
        hand.mark(at, PASSED)
    at = number - 1
    hand.mark(at, USED)
    hand.pos = number
    hand.last = at
    return at
