"""A beginning chain that is part of the stitch behind it, though no aside says so."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from loopleaf.notation.tree import (
    Chain,
    CountsAs,
    Facing,
    Group,
    JoinYarn,
    Passage,
    Repeat,
    Step,
    Stitch,
    Turn,
    Work,
    Yarn,
)

from .hand import Hand
from .setting import LEG, TALLER


def with_first_leg(hand: Hand, steps: Sequence[Step]) -> Sequence[Step]:
    """`ch 3, dc2tog in ring, (ch 3, dc3tog in ring) 5 times`: with the chain the first is like the others.

    Only a stated count can bear that out.
    """
    at = next((i for i, step in enumerate(steps) if not isinstance(step, JoinYarn | Facing | Yarn)), 0)
    match steps[at : at + 2]:
        case (Chain(counts=None) as chain, Work(stitch=Stitch(form="tog" | "cluster"), counts=None) as first):
            stitch = first.stitch
            whole = replace(stitch, number=stitch.number + 1)
        case (Chain(counts=None) as chain, Work(stitch=Stitch(form=""), counts=None) as first):
            stitch = first.stitch  # `ch 2, dc in next st, (ch 3, dc2tog) 5 times`
            whole = replace(stitch, form="tog", number=2)
        case _:
            return steps
    if (hand.setting.number(chain.length) or 0) < 2:
        return steps  # a lone chain is no leg
    others = any(other == whole for other in _worked(steps[at + 2 :]))
    if not hand.counted or not others or not hand.setting.counts.get(stitch.kind, True):
        return steps
    if not hand.setting.choose(LEG, (0, 1)):
        return steps
    return (*steps[: at + 1], replace(first, counts=CountsAs(whole)), *steps[at + 2 :])


def _worked(steps: Sequence[Step]) -> Iterator[Stitch]:
    for step in steps:
        match step:
            case Work():
                yield step.stitch
            case Group() | Repeat() | Passage():
                yield from _worked(step.steps)


def like_the_last(hand: Hand, kind: str, length: int, rest: Sequence[Step]) -> str:
    """`ch 3, sc in first sp, …, dc in last sc` in a pattern whose chains of a dc count: the chain is such a
    dc at the row's other end. Gives the kind; "" where it can't be, or isn't so in this reading.
    """
    last = next((step for step in reversed(rest) if not isinstance(step, Turn)), None)
    if not hand.setting.rows or not hand.counted or not isinstance(last, Work):
        return ""
    taller, own = last.stitch.kind, hand.setting.own_chains
    if last.stitch.form or own.get(taller, 0) != length or own.get(kind, 0) >= length:
        return ""
    says = hand.setting.counts.get(taller, hand.setting.counts.get("", False))
    return taller if says and hand.setting.choose(TALLER, (0, 1)) else ""
