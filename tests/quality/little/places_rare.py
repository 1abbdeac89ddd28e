"""The rarer places: turning chains, stitches inside a group or an arch, marked stitches, row ends."""

from collections.abc import Iterator

from loopleaf.notation.tree import ChainOf, Evenly, JustMade, RowEnds, Skipped, Within

from .below import FREE, NOWHERE, PASSED, USED
from .cells import CannotSay, Cell, Misfit
from .hand import Hand


def chain_of(hand: Hand, place: ChainOf) -> int:
    there = [at for at, cell in enumerate(hand.cells) if cell.chain]
    for at in there:
        cell = hand.cells[at]
        one_more = place.length == cell.usual == cell.chain - 1 and not place.number
        if place.length not in (0, cell.chain) and not one_more:
            continue  # `top of ch-3` where four chains were skipped: one of them lies below the dc
        if place.number not in (0, cell.stands, cell.under + cell.stands):  # from its foot, or from the first
            raise Misfit(
                "join", f"the {place.number}th of a chain of which {cell.stands} stand for the stitch"
            )
        if at < hand.pos and hand.status[at] != FREE:
            raise Misfit("fit", "the turning chain is used already")
        for passed in range(hand.pos, at):
            if hand.in_a_space or hand.bridging or not hand.cells[passed].top:
                hand.mark(passed, PASSED)
        hand.mark(at, USED)
        hand.pos = max(hand.pos, at + 1)
        hand.last = at
        return at
    raise Misfit("join", "no such turning chain that counts")


def within(hand: Hand, place: Within) -> Iterator[tuple[int, ...]]:
    again = place.same and hand.last is not None and hand.last >= 0
    if place.same and not again:
        raise Misfit("place", "none was worked into before")
    start = hand.last if again and hand.last is not None else _last_of(hand, place) or hand.seek(place.of)
    whole = hand.whole(place.of, start)
    if not again:
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
    hand.behind.update(whole)  # another stitch of the same group may follow
    if place.same and chosen:
        hand.pos = chosen[-1] + 1
    for at in chosen:
        yield (at,)


def _last_of(hand: Hand, place: Within) -> int:
    """Where `of last sh` begins; 0 where print says the next one."""
    there = [at for at in range(hand.pos, len(hand.cells)) if hand.counts_for(place.of, at)]
    return there[-1] if place.last and there else 0


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


def marked(hand: Hand) -> int:
    for at, cell in enumerate(hand.cells):
        if cell in hand.marks:
            if hand.status[at] == FREE:
                hand.mark(at, USED)
                hand.pos = max(hand.pos, at + 1)
            hand.last = at
            return at
    raise Misfit("place", "nothing is marked")


def just_made(hand: Hand, place: JustMade) -> int:
    """The top of the stitch made last, which is no place of the edge below."""
    last = next((cell for cell in reversed(hand.made) if cell.top), None)
    if last is None or not hand.fits(place.target, last):
        raise Misfit("place", "no such stitch was made last")
    return NOWHERE


def skipped(hand: Hand, place: Skipped) -> Iterator[tuple[int, ...]]:
    """Back to what was passed over: the last, several, or one by its number."""
    number = (place.number or hand.skipped_at_once) if place.which == "all" else 1
    wanted = number if place.which == "all" else max(place.number, 1)
    if not hand.skipped or (place.which == "all" and wanted > len(hand.skipped)):
        raise Misfit("place", "so many were not skipped")
    if place.which == "nth" and wanted > hand.skipped_at_once:
        raise Misfit("place", f"no {wanted} were skipped at once")
    for at in hand.skipped[-number:]:
        hand.skipped.remove(at)
        hand.gone_back_to.add(at)
        yield (at,)


def row_ends(hand: Hand, place: RowEnds) -> Iterator[tuple[int, ...]]:
    number = None if place.count is None else hand.setting.number(place.count)
    if not any(cell.kind == "row-end" for cell in hand.cells):
        raise Misfit("place", "no row ends")
    done = 0
    end = hand.bound(place.until) if number is None else hand.limit
    while number is None or done < number:
        at = next((i for i in range(hand.pos, end) if _is_end(hand.cells[i], place)), None)
        if at is None:
            if number is not None:
                raise Misfit("fit", "no more row ends")
            if hand.edge.sided:
                hand.pos = max(hand.pos, end)
            return
        for passed in range(hand.pos, at):
            hand.mark(passed, PASSED)
        hand.mark(at, USED)
        hand.pos = at + 1
        done += 1
        yield (at,)


def _is_end(cell: Cell, place: RowEnds) -> bool:
    return cell.kind == "row-end" and (place.stitch is None or cell.form == place.stitch.kind)


def evenly(hand: Hand, place: Evenly) -> int:
    end = hand.bound(place.until)
    if not any(hand.open(at) for at in range(hand.pos, end)):
        raise Misfit("fit", "nothing left to spread over")
    for at in range(hand.pos, end):
        hand.mark(at, USED)
    hand.pos = end
    hand.last = NOWHERE
    return NOWHERE
