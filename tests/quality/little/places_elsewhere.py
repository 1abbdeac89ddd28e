"""Places that are none of the edge's next ones: lower down, left by an earlier row, on another piece."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import takewhile

from loopleaf.notation.tree import (
    Each,
    Facing,
    First,
    JoinYarn,
    Last,
    Next,
    Place,
    Repeat,
    Skip,
    Step,
    Target,
    Work,
)

from .below import NOWHERE, USED
from .cells import Misfit
from .hand import Hand
from .looking_ahead import targets
from .setting import ALONG


def left_before(hand: Hand, target: Target) -> int:
    """A stitch that an earlier row left unworked."""
    for cell in hand.unworked:
        if hand.fits(target, cell):
            hand.unworked.remove(cell)
            hand.uses += 1
            return NOWHERE
    raise Misfit("fit", "no more unworked stitches")


def along_what_was_left(hand: Hand, steps: Sequence[Step]) -> Sequence[Step]:
    """`sk next 10 unworked sts, join yarn in next unworked st, …, sc in each rem st across`: the line goes
    along what earlier rows left, and not along the last row at all. Gives the steps from the joining on.
    """
    line = [step for step in steps if not isinstance(step, Facing)]
    skips = list(takewhile(lambda step: isinstance(step, Skip) and step.target.unworked, line))
    own = line[len(skips) :]
    match own:
        case (
            JoinYarn(
                place=Next(target=Target(kind="stitch", unworked=True))
                | First(target=Target(kind="stitch", unworked=True))
            ),
            *others,
        ):
            if len({target.unworked for target in targets(others)}) > 1:
                return steps  # it goes on along the last row
        case _:
            return steps
    number = sum(hand.setting.number(step.count) or 0 for step in skips if isinstance(step, Skip))
    if number >= len(hand.unworked):
        raise Misfit("fit", f"only {len(hand.unworked)} stitches were left unworked")
    hand.lay(hand.unworked[number:])
    hand.unworked = hand.unworked[:number]
    hand.uses = number
    return [_plain(step) for step in own]


def _plain(step: Step) -> Step:
    """The same step where its stitches are those of the edge: all of them are what was left."""
    match step:
        case JoinYarn(place=Next() | First() as place):
            return replace(step, place=_of_the_edge(place))
        case Work():
            return replace(step, places=tuple(_of_the_edge(place) for place in step.places))
        case Repeat():
            return replace(step, steps=tuple(_plain(one) for one in step.steps))
    return step


def _of_the_edge(place: Place) -> Place:
    match place:
        case Next() | First() | Last():
            return replace(place, target=replace(place.target, unworked=False))
        case Each():
            return replace(place, targets=tuple(replace(one, unworked=False) for one in place.targets))
    return place


def in_own_round(hand: Hand, place: Place) -> Place:
    """`next sc of round 1`: the hook goes along that round's own stitches; any other place as it is."""
    match place:
        case Next(target=target) | Each(targets=(target,)) if target.kind == "free-loop":
            _lay_loops(hand, target)
        case Next(target=Target(round=number) as target) if number:
            _lay(hand, str(number))
            return replace(place, target=replace(target, round=0))
        case Each(targets=(Target(round=number) as target,)) if number:
            _lay(hand, str(number))
            return replace(place, targets=(replace(target, round=0),))
        case Next(below=below) if below and below == hand.all_below and below <= len(hand.setting.earlier):
            if hand.setting.choose(ALONG, (0, 1)):
                _lay(hand, list(hand.setting.earlier)[-below])
                return replace(place, below=0)
    return place


def lay_first(hand: Hand, steps: Sequence[Step]) -> None:
    """Lays the earlier round that the first stitch of these steps goes along, where it goes along one."""
    first = next((step for step in steps if isinstance(step, Repeat | Work)), None)
    if isinstance(first, Repeat):
        lay_first(hand, first.steps)
    elif first is not None and first.places:
        in_own_round(hand, first.places[0])


def _lay(hand: Hand, label: str) -> None:
    if hand.laid == label:
        return
    if label not in hand.setting.earlier:
        raise Misfit("place", f"no round {label} yet")
    hand.lay(list(hand.setting.earlier[label]))
    hand.laid = label


def _lay_loops(hand: Hand, target: Target) -> None:
    """From the last round, when that is done, on to loops that an earlier one left free."""
    if hand.edge.loops or hand.setting.loops is None:
        return
    if hand.free(0, len(hand.cells)):
        raise Misfit("fit", "stitches are left when the line goes on to free loops")
    hand.edge = hand.setting.loops(target.loop, target.round)
    hand.lay(list(hand.edge.cells))


def of_piece(hand: Hand, place: Next) -> int:
    cells = hand.setting.pieces.get(place.piece, hand.setting.pieces.get(place.piece.rsplit(" ", 1)[0]))
    if cells is None:
        raise Misfit("place", f"no piece {place.piece} yet")
    at = hand.elsewhere.get(place.piece, 0)
    while at < len(cells) and not hand.fits(place.target, cells[at]):
        at += 1
    if at >= len(cells):
        raise Misfit("fit", f"{place.piece} has no more")
    hand.elsewhere[place.piece] = at + 1
    return NOWHERE


def _one_skipped(hand: Hand, target: Target, label: str) -> None:
    """`dc in next skipped sc 3 rows below`: one more of those that the row above it passed over; what stands
    over it by now, chains most often, is not asked for its kind.
    """
    there = sum(hand.fits(target, cell) for cell in hand.setting.skipped.get(label, ()))
    name = f"skipped in {label}"
    if hand.elsewhere.get(name, 0) >= there:
        raise Misfit("fit" if there else "place", f"no more than {there} were skipped there")
    hand.elsewhere[name] = hand.elsewhere.get(name, 0) + 1


def stands_before(hand: Hand, place: Next) -> int:
    """A spike goes in lower down and uses up the place that it stands in front of or behind."""
    target, below = place.target, place.below
    if below > len(hand.setting.earlier):
        raise Misfit("place", f"there is no round {below} below")
    label = list(hand.setting.earlier)[-below]
    if place.skipped:
        _one_skipped(hand, target, label)
    if hand.passed_by:
        hand.passed_by = False
        return NOWHERE
    hand.stood += 1
    further_down = hand.setting.earlier[label]
    named_here = any(hand.fits(target, cell) for cell in hand.cells) and not place.skipped
    if target.kind != "stitch" or named_here or not any(hand.fits(target, cell) for cell in further_down):
        return hand.take(target)
    for at in range(hand.pos, hand.limit):
        if hand.cells[at].kind != "picot":
            hand.mark(at, USED)
            hand.pos = at + 1
            hand.last = at
            return NOWHERE
    raise Misfit("fit", "nothing left to stand before")
