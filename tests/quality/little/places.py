"""Where stitches go: each place that print can name, taken from the edge one after the other."""

from collections.abc import Iterator

from loopleaf.notation.tree import (
    Between,
    ChainOf,
    Corresponding,
    Each,
    Evenly,
    First,
    FromHook,
    Here,
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

from .cells import CannotSay, Cell, Misfit
from .hand import FREE, PASSED, USED, Hand

NOWHERE = -1
"""The spot of a stitch on a leaf's own chain, in a ring, on another piece: none of the edge below."""

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
            yield (_chain_of(hand, place),)
        case Within():
            yield from _within(hand, place)
        case Between():
            yield (_between(hand, place),)
        case Marked():
            yield (_marked(hand),)
        case Skipped():
            yield (_skipped(hand),)
        case RowEnds():
            yield from _row_ends(hand, place)
        case Evenly():
            yield (_evenly(hand),)
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
        if place.piece:
            yield (_of_piece(hand, place),)
        elif on_leaf(hand, place.target):
            assert hand.leaf is not None
            hand.leaf.at += 1
            yield (NOWHERE,)
        elif hand.setting.spiral and hand.exhausted and hand.moves_marker:
            hand.overrun += 1
            if hand.overrun > len(hand.made):
                raise Misfit("fit", "past the end")
            yield (NOWHERE,)
        elif place.below:
            yield (_stands_before(hand, place.target),)
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
            yield (NOWHERE,)
        return
    hand.leaf = None
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
        for cell in whole:
            hand.mark(cell, USED)
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
            if hand.free(0, at):
                raise Misfit("place", "not the first any more")
            hand.mark(at, USED)
        elif at + 1 < hand.pos:
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
        if hand.uneven:
            raise Misfit("fit", "the repeat doesn't come out even")
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


def _chain_of(hand: Hand, place: ChainOf) -> int:
    there = [at for at, cell in enumerate(hand.cells) if cell.chain]
    for at in there:
        cell = hand.cells[at]
        if place.length not in (0, cell.chain):
            continue
        if place.number > cell.chain or (place.number and place.number != cell.stands):
            raise Misfit("join", f"the {place.number}th of a chain of which {cell.stands} stand for the stitch")
        if at < hand.pos and hand.status[at] != FREE and hand.last != at:
            raise Misfit("fit", "the turning chain is used already")
        if hand.uneven:
            raise Misfit("fit", "the repeat doesn't come out even")
        for passed in range(hand.pos, at):
            if not hand.cells[passed].top:
                hand.mark(passed, PASSED)
        hand.mark(at, USED)
        hand.pos = max(hand.pos, at + 1)
        hand.last = at
        return at
    raise Misfit("join", "no such turning chain that counts")


def _within(hand: Hand, place: Within) -> Iterator[tuple[int, ...]]:
    if place.same and hand.last is not None and hand.last >= 0:
        start = hand.last
    else:
        start = hand.seek(place.of)
    whole = hand.whole(place.of, start)
    if not place.same:
        hand.pos = whole[-1] + 1
        hand.last = start
    cell = hand.cells[start]
    if place.of.kind in ("space", "loop") or cell.kind == "space":
        for at in whole:
            hand.mark(at, USED)
        yield from _in_arch(place, (cell.arch or cell).length, start)
        return
    inside = [at for at in whole if hand.fits(place.inner, hand.cells[at])]
    chosen = inside if place.part == "each" else [inside[_which(place, len(inside))]]
    for at in chosen:
        hand.mark(at, USED)
    for at in whole:
        hand.mark(at, PASSED)
    for at in chosen:
        yield (at,)


def _in_arch(place: Within, length: int, at: int) -> Iterator[tuple[int, ...]]:
    if place.part == "each":
        for _ in range(length):
            yield (at,)
        return
    _which(place, length)
    yield (at,)


def _which(place: Within, there: int) -> int:
    if not there:
        raise Misfit("place", "nothing of that kind in the group")
    match place.part:
        case "first":
            return 0
        case "last":
            return there - 1
        case "centre":
            if there % 2 == 0:
                raise Misfit("place", f"{there} have no one in the centre")
            return there // 2
        case "nth":
            if place.number > there:
                raise Misfit("place", f"{there} have no {place.number}th")
            return place.number - 1
    raise CannotSay(place.part)


def _between(hand: Hand, place: Between) -> int:
    first = hand.seek(place.target)
    whole = hand.whole(place.target, first)
    after = next(
        (at for at in range(whole[-1] + 1, hand.limit) if hand.counts_for(place.target, at)), None
    )
    if after is None:
        raise Misfit("fit", "nothing to go between")
    for at in range(hand.pos, after):
        hand.mark(at, PASSED)
    last = hand.whole(place.target, after)
    if not any(hand.counts_for(place.target, at) for at in range(last[-1] + 1, hand.limit)):
        for at in last:
            hand.mark(at, PASSED)
    hand.uses += 1
    hand.pos = after
    hand.last = NOWHERE
    return NOWHERE


def _marked(hand: Hand) -> int:
    for at, cell in enumerate(hand.cells):
        if cell in hand.marks:
            if hand.status[at] == FREE:
                hand.mark(at, USED)
                hand.pos = max(hand.pos, at + 1)
            hand.last = at
            return at
    raise Misfit("place", "nothing is marked")


def _skipped(hand: Hand) -> int:
    if not hand.skipped:
        raise Misfit("place", "nothing was skipped")
    return hand.skipped.pop()


def _row_ends(hand: Hand, place: RowEnds) -> Iterator[tuple[int, ...]]:
    number = None if place.count is None else hand.setting.number(place.count)
    if not any(cell.kind == "row-end" for cell in hand.cells):
        raise Misfit("place", "no row ends")
    done = 0
    while number is None or done < number:
        at = next((i for i in range(hand.pos, hand.limit) if _is_end(hand.cells[i], place)), None)
        if at is None:
            if number is not None:
                raise Misfit("fit", "no more row ends")
            return
        for passed in range(hand.pos, at):
            hand.mark(passed, PASSED)
        hand.mark(at, USED)
        hand.pos = at + 1
        done += 1
        yield (at,)


def _is_end(cell: Cell, place: RowEnds) -> bool:
    return cell.kind == "row-end" and (place.stitch is None or cell.form == place.stitch.kind)


def _evenly(hand: Hand) -> int:
    for at in range(hand.pos, hand.limit):
        hand.mark(at, USED)
    hand.pos = hand.limit
    hand.last = NOWHERE
    return NOWHERE
