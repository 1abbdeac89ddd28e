"""Repeats: with a number, or up to somewhere, tried pass by pass."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any

from loopleaf.notation.tree import Chain, ChainOf, Each, First, Group, Repeat, Skip, Step, Target, Until, Work

from .below import FREE, PASSED
from .cells import Misfit
from .hand import Hand
from .looking_ahead import bridges, targets
from .onward import once_more

Run = Callable[[Hand, Sequence[Step], Sequence[Step]], None]


def repeat(hand: Hand, step: Repeat, run: Run, rest: Sequence[Step]) -> None:
    """Works a repeat; raises Misfit where it doesn't come out. rest: what the line goes on with."""
    leading, repeating = hand.leading, hand.repeating
    hand.leading, hand.repeating = False, True
    if step.times is not None:
        _so_many(hand, step, run)
    else:
        _up_to_the_end(hand, step, run, rest)
    hand.leading, hand.repeating = leading and not hand.made, repeating


def _so_many(hand: Hand, step: Repeat, run: Run) -> None:
    assert step.times is not None
    times = hand.setting.number(step.times)
    if times is None:
        return
    if step.unclear:
        key = f"times of {step.span}"
        times = hand.setting.choose(key, (times, times + 1))
    after = hand.follow
    for turn in range(times):
        if turn == times - 1:
            hand.follow = after
            _last_pass(hand, step, run)
        else:
            run(hand, step.steps, step.steps)


def _last_pass(hand: Hand, step: Repeat, run: Run) -> int:
    """Gives where the ending begins."""
    steps: Sequence[Step] = step.steps
    if step.stop_at is not None:
        steps = steps[: step.stop_at]
    for omitted in step.omitting:
        if not steps or steps[-1] != omitted:
            position = next((i for i in range(len(steps) - 1, -1, -1) if steps[i] == omitted), None)
            if position is None:
                raise Misfit("unclear", "what is omitted isn't there")
            steps = (*steps[:position], *steps[position + 1 :])
        else:
            steps = steps[:-1]
    after = () if hand.follow is None else (hand.follow,)
    run(hand, steps, step.ending or after)
    begins = hand.pos
    run(hand, step.ending, after)
    return begins


def _left_by_the_ending(hand: Hand, step: Repeat, begins: int) -> bool:
    """Whether the ending went past places that the repeat works into by name: a pass more was due there."""
    for at in range(begins, hand.pos):
        for target in targets(step.steps):
            whole = hand.whole(target, at) if hand.counts_for(target, at) else ()
            if whole and all(hand.status[one] in (FREE, PASSED) for one in whole):
                return True
    return False


def _up_to_the_end(hand: Hand, step: Repeat, run: Run, rest: Sequence[Step]) -> None:
    """`*ch 1, dc in next dc; rep from * across, ending with last dc in top of tch`: the dc that the last pass
    ends with goes there, if it can.
    """
    before = hand.save()
    match step.steps, step.ending:
        case (*_, Work() as own), (Work(places=(ChainOf() | First() as place,)) as last,) if (
            own.stitch == last.stitch and (isinstance(place, ChainOf) or hand.onward)
        ):
            try:
                _until(hand, replace(step, stop_at=len(step.steps) - 1), run, rest)
            except Misfit:
                hand.restore(before)
            else:
                return
    bridged = _bridging(step)
    if bridged is None:
        _until(hand, step, run, rest)
        return
    for way in (step, bridged):
        hand.restore(before)
        _until(hand, way, run, rest)
        done = hand.save()
        try:
            run(hand, rest, ())
        except Misfit:
            left = True
        else:
            left = bool(hand.free(0, len(hand.cells)))
        hand.restore(done)
        if not left:
            return


def _bridging(step: Repeat) -> Repeat | None:
    """`*ch 3, sk 2 sts, sc in next st; rep from * across, ending last rep with ch 1, dc in last st`: the
    ending's chain passes what the others pass. None where the ending is nothing of the kind.
    """
    skips = [skip for _, skip in bridges((step,))]
    match step.ending:
        case (Chain() as chain, *others) if skips and not (others and isinstance(others[0], Skip)):
            return replace(step, ending=(chain, skips[-1], *others))
    return None


def _until(hand: Hand, step: Repeat, run: Run, rest: Sequence[Step]) -> None:
    """As many passes as go: the number after which nothing is left, else the most that fit."""
    assert step.until is not None
    whole = hand.limit
    bound = hand.bound(step.until)
    special = bool(step.ending or step.omitting or step.stop_at is not None)
    best = part = None
    so_far: list[dict[str, Any]] = []
    left = False
    failed: Misfit | None = None
    start, after = hand.pos, hand.follow
    while True:
        hand.limit, hand.follow = bound, after  # for the pass before had the next pass behind it
        before = hand.save()
        try:
            if special:
                hand.limit = whole
            begins = _last_pass(hand, step, run)
            if not special and all(
                getattr(hand, name) == before[name] for name in ("status", "pos", "uses", "overrun")
            ):
                raise Misfit("fit", "the repeat uses nothing and would never end")
            end = whole if special else bound
            best, left = hand.save(), _left_by_the_ending(hand, step, begins)
            so_far.append(best)
            if not left and not hand.free(start, end):
                hand.follow = after
                if once_more(hand, step):
                    _last_pass(hand, step, run)
                    best = hand.save()
                break
        except Misfit as misfit:
            failed = failed or misfit
            if not special:
                break
        hand.restore(before)
        hand.limit = bound
        if step.ending and not step.omitting and step.stop_at is None:
            part = _part_of_a_pass(hand, step, run, whole) or part
            hand.restore(before)
            hand.limit = bound
        try:
            run(hand, step.steps, step.steps)
            if (hand.pos, hand.uses) == (before["pos"], before["uses"]):
                break
        except Misfit as misfit:
            failed = failed or misfit
            break
    hand.restore(best or before)
    if part is not None and (best is None or left or hand.free(start, bound)):
        best = part
    if best is None:
        raise failed or Misfit("fit", "not one repeat fits")
    hand.restore(best)
    hand.limit = whole
    goes_on = bool(step.ending) and any(isinstance(one, Work | Group | Skip) for one in rest)
    if goes_on and _with_what_follows(hand, (*so_far, best), run, rest, uneven=False):
        return
    if bound < whole and step.until.target.kind == "space":
        _pass_by(hand, step.until.target, bound)
    if hand.free(hand.pos, bound):
        if bound < whole:
            raise Misfit("fit", "the repeat doesn't come out even")
        # what comes after `**` may need the last places
        hand.uneven = step.stop_at is None and not _rest_of_a_side(hand, step, rest)
        if hand.uneven and not goes_on:
            _with_what_follows(hand, so_far, run, rest, uneven=True)
    elif bound < whole:
        hand.pos = max(hand.pos, bound)


def _rest_of_a_side(hand: Hand, step: Repeat, rest: Sequence[Step]) -> bool:
    """`*sc in each sc to next ch-2 sp, 3 sc in ch-2 sp; rep from * around, sc in each st to end`: a repeat
    from corner to corner is done when there is no more corner, and the rest of that side is told.
    """
    match step.steps, rest:
        case (
            (Work(places=(Each(until=Until(kind="next" | "corner") as side),)), *_),
            (Work(places=(Each(until=Until(kind="end", word=word), remaining=remaining),)), *_),
        ) if word or remaining:
            corner = side.target if side.kind == "next" else Target("corner")
            return not any(hand.counts_for(corner, at) for at in range(hand.pos, hand.limit))
    return False


def _with_what_follows(
    hand: Hand, so_far: Sequence[dict[str, Any]], run: Run, rest: Sequence[Step], uneven: bool
) -> bool:
    """As many passes as leave room for what follows, `ch 2, sk 2 sts, dc in last 2 sts`, if that then fills
    the row. so_far: the hand after each pass. uneven: what is left must be passed by a word first, as an
    ending that goes on behind its comma needn't.
    """
    as_it_is, whole = hand.save(), hand.limit
    for state in reversed(so_far):
        hand.restore(state)
        hand.limit, hand.uneven = whole, uneven
        ready = hand.save()
        try:
            run(hand, rest, ())
        except Misfit:
            continue
        if not hand.free(0, whole):
            hand.restore(ready)
            return True
    hand.restore(as_it_is)
    return False


def _part_of_a_pass(hand: Hand, step: Repeat, run: Run, whole: int) -> dict[str, Any] | None:
    """The last pass as far as there is room, the ending in place of the rest; None if it isn't even then."""
    before = hand.save()
    for length in range(len(step.steps) - 1, 0, -1):
        hand.restore(before)
        hand.limit = whole
        try:
            run(hand, step.steps[:length], step.ending)
            begins = hand.pos
            run(hand, step.ending, ())
        except Misfit:
            continue
        if not hand.free(0, whole) and not _left_by_the_ending(hand, step, begins):
            return hand.save()
    return None


def _pass_by(hand: Hand, target: Target, bound: int) -> None:
    """What lies before a space that is named next is passed over, but no other such space."""
    left = range(hand.pos, bound)
    if not any(hand.status[at] == FREE and hand.counts_for(target, at) for at in left):
        for at in left:
            hand.mark(at, PASSED)
