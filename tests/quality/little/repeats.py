"""Repeats: with a number, or up to somewhere, tried pass by pass."""

from collections.abc import Callable, Sequence

from loopleaf.notation.tree import Repeat, Step

from .cells import Misfit
from .hand import Hand

Run = Callable[[Hand, Sequence[Step]], None]


def repeat(hand: Hand, step: Repeat, run: Run) -> None:
    """Works a repeat; raises Misfit where it doesn't come out."""
    leading = hand.leading
    hand.leading = False
    if step.times is not None:
        _so_many(hand, step, run)
    else:
        _until(hand, step, run)
    hand.leading = leading and not hand.made


def _so_many(hand: Hand, step: Repeat, run: Run) -> None:
    assert step.times is not None
    times = hand.setting.number(step.times)
    if times is None:
        return
    if step.unclear:
        key = f"times of {step.span}"
        times = hand.setting.choose(key, (times, times + 1))
    for turn in range(times):
        if turn == times - 1:
            _last_pass(hand, step, run)
        else:
            run(hand, step.steps)


def _last_pass(hand: Hand, step: Repeat, run: Run) -> None:
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
    run(hand, steps)
    run(hand, step.ending)


def _until(hand: Hand, step: Repeat, run: Run) -> None:
    """As many passes as go: the number after which nothing is left, else the most that fit."""
    assert step.until is not None
    whole = hand.limit
    bound = hand.bound(step.until)
    special = bool(step.ending or step.omitting or step.stop_at is not None)
    best = None
    failed: Misfit | None = None
    start = hand.pos
    while True:
        hand.limit = bound
        before = hand.save()
        try:
            if special:
                hand.limit = whole
            _last_pass(hand, step, run)
            if hand.save()[1:3] == before[1:3] and hand.overrun == before[14]:
                raise Misfit("fit", "the repeat uses nothing and would never end")
            best = hand.save()
            end = whole if special else bound
            if not hand.free(start, end):
                break
        except Misfit as misfit:
            failed = failed or misfit
            if not special:
                break
        hand.restore(before)
        hand.limit = bound
        try:
            run(hand, step.steps)
            if hand.pos == before[2]:
                break
        except Misfit as misfit:
            failed = failed or misfit
            break
    if best is None:
        raise failed or Misfit("fit", "not one repeat fits")
    hand.restore(best)
    hand.limit = whole
    if hand.free(hand.pos, bound):
        if bound < whole:
            raise Misfit("fit", "the repeat doesn't come out even")
        hand.uneven = step.stop_at is None  # what comes after `**` may need the last places
    elif bound < whole:
        hand.pos = max(hand.pos, bound)
