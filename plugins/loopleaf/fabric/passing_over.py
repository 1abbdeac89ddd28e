"""Passing places over: skipped, left unworked, or worked around."""

from dataclasses import replace

from ..notation.tree import STITCH, Last, Leave, Next, Skip, Target, WorkingOver
from . import beginning
from .along import last_places
from .earlier import along_round
from .edge import Found
from .hand import Hand
from .of_piece import of_piece
from .seek import bound, find_next, missing, number
from .taken_up import take_up_unworked, worked_now
from .worked import Made, Place, Space


def skip(hand: Hand, step: Skip) -> None:
    """`sk 2 sts`: what is passed over; a chain made before or after it spans it."""
    step = along_round(hand, step, step.span)
    count = number(hand, step.count)
    if step.piece not in ("", hand.setting.begun_on):  # of the finished piece that this is joined to
        last = hand.last
        of_piece(hand, Next(step.count, step.target, piece=step.piece), count, step.span)
        hand.last = last
        return
    edge = hand.edge
    if step.target.unworked and hand.earlier and not hand.begun and take_up_unworked(hand):
        step = replace(step, target=worked_now(step.target))
    if beginning.behind_the_chain(hand, step):
        hand.skips_first = True
        if hand.setting.reading.under:
            hand.settled[id(step)] = step = replace(step, which="first")
    if _may_be_behind(hand, step):
        hand.skips_behind = True
        if hand.setting.reading.behind:
            hand.settled[id(step)] = replace(step, which="behind")
            return
    if step.which == "first" and edge.pos and _names_a_top(hand, step.target):
        count -= 1  # the chain that counts stands on the first
    if step.which == "all" and step.target.kind == "space" and edge.find(step.target, 0) is None:
        raise missing(hand, step.target, 1, 0, step.span)
    if not count or step.which in ("behind", "all"):  # used up by the stitch in front; passed by in any case
        return
    if step.which == "last":
        last_places(hand, Last(step.count, step.target), step.span)
        return
    if hand.leaf is not None and step.target.kind == "chain" and hand.leaf.pos < len(hand.leaf.loops):
        hand.next_leaf(count, step.span)
        return
    hand.leaf = None
    if step.target.kind == "stitch" and step.which == "next" and step.until is None:
        count -= _passed_at_the_start(hand, step.target, count)
    worked_last, spaces, since = hand.last, hand.into_spaces, hand.since
    lengths = set(hand.lengths_used)
    skipped: list[Place] = []
    found = find_next(hand, step.target, count, step.span) if step.until is None else _up_to(hand, step)
    for one in found:
        hand.use(one.at, one.after, one.place)
        skipped.append(one.place)
    hand.last, hand.into_spaces = worked_last, spaces
    hand.lengths_used = lengths
    hand.lengths_passed.update(one.chains for one in skipped if isinstance(one, Space))
    hand.skipped = skipped
    tops = sum(1 for p in skipped if isinstance(p, Made))
    hand.skips.add(tops)
    hand.bridge(skipped)
    hand.since = since + tops


def _names_a_top(hand: Hand, target: Target) -> bool:
    """Whether a stitch is named, or, in the first round, a chain of the foundation."""
    below = hand.edge.places[0]
    founded = isinstance(below, Made) and below.role == "foundation"
    return target.kind == "stitch" or (target.kind == "chain" and founded)


def _up_to(hand: Hand, step: Skip) -> list[Found]:
    """All that stands before where `sk all dc to next ch-2 sp` ends."""
    assert step.until is not None
    edge = hand.edge
    end = bound(hand, step.until, step.span)
    if end == edge.pos and step.until.kind == "marker":  # the hook stands at one: the next is meant
        edge.pos += 1
        end = bound(hand, step.until, step.span)
        edge.pos -= 1
    return [Found(edge.places[at], at, at + 1) for at in range(edge.pos, end)]


def _passed_at_the_start(hand: Hand, target: Target, count: int) -> int:
    """How many of the stitches to be skipped at a round's end were passed at its start, on the way to its
    first place: `sk 6 sts` counts them all the same."""
    edge = hand.edge
    if not edge.circle or not hand.passed_first:
        return 0
    left = sum(edge.matches(one, target) for one in edge.places[edge.pos : edge.limit])
    return count - left if left and 0 < count - left <= hand.passed_first else 0


def _may_be_behind(hand: Hand, step: Skip) -> bool:
    """Whether `sk next st` comes behind a stitch worked further down: print may mean the one behind that."""
    last = hand.made[-1] if hand.made else None
    if step.which != "next" or step.target.kind != "stitch" or not isinstance(last, Made) or not last.into:
        return False
    if hand.laid or hand.on_round is not None:  # the stitches further down are the edge
        return False
    return -1 < last.into[0].round < hand.setting.index - 1


def leave(hand: Hand, step: Leave) -> None:
    """`leave last 4 sts unworked`; `working over next 16 sts only`, of which none has been yet."""
    edge = hand.edge
    if step.but is not None:
        wanted = find_next(hand, step.target, number(hand, step.but), step.span)
        hand.left += edge.count(wanted[-1].after, edge.limit)
        hand.left_places += edge.places[wanted[-1].after : edge.limit]
        edge.keep(wanted[-1].after)
        return
    if step.count is None:
        if step.target == STITCH and edge.pos == len(edge.places) and not _may_leave_none(hand, step):
            hand.trouble("no-such-place", step.span, what="left", there=[], worked=edge.count(0, edge.pos))
        hand.left += edge.rest()
        hand.left_places += edge.places[edge.pos : edge.limit]
        edge.pos = edge.limit
        return
    count = number(hand, step.count)
    slips = _slips_left(hand, step)
    if slips is not None:
        hand.left += len(slips)
        hand.left_places += slips
        edge.pos = edge.limit
        return
    found = find_next(hand, step.target, count, step.span)
    hand.left += count
    if found:
        hand.left_places += edge.places[edge.pos : found[-1].after]
        edge.pos = found[-1].after


def _may_leave_none(hand: Hand, step: Leave) -> bool:
    """Whether a larger size, or an earlier row, shares the words and has some left to leave."""
    same = (one for row in hand.earlier if row.line is not None for one in row.line.steps if one == step)
    return hand.setting.several or any(one.span == step.span for one in same)


def _slips_left(hand: Hand, step: Leave) -> list[Place] | None:
    """The places that `leaving sl sts unworked` leaves at a row's end: none where those only moved on, which
    is all that it says again; None where anything else is there, or is meant."""
    stitch = step.target.stitch
    if stitch is None or stitch.kind != "slip" or step.count is None or not hand.earlier:
        return None
    left = hand.edge.places[hand.edge.pos : hand.edge.limit]
    if not all(isinstance(one, Made) and one.kind == "slip" for one in left):
        return None
    below = hand.earlier[-1].sizes[hand.setting.size]
    moved = 0
    for one in below.made if below is not None and not left else ():
        if not isinstance(one, Made) or one.kind != "slip" or one.role != "travel":
            break
        moved += 1
    there = len(left) or moved
    return left if there and number(hand, step.count) in (1, there) else None


def work_over(hand: Hand, step: WorkingOver) -> None:
    """`working behind next ch-1 sp`: what the next stitches, worked further down, go around."""
    if step.what or step.made or step.count is None:
        return
    last, spaces = hand.last, hand.into_spaces
    hand.over = [one.place for one in find_next(hand, step.target, number(hand, step.count), step.span)]
    for place in hand.over:
        found = find_next(hand, step.target, 1, step.span)[0]
        hand.use(found.at, found.after, place)
    hand.last, hand.into_spaces = last, spaces
