"""Stitches that name no place, where there is nothing but a ring to work into."""

from dataclasses import replace

from ..notation.tree import ONE, Next, Repeat, Target, Work
from ..notation.tree import Ring as IntoRing
from .hand import Hand
from .worked import Ring


def into_the_ring(hand: Hand, step: Work) -> Work | None:
    """`6 sc` over a ring: all six go into it, and the published line says so. None for anything else."""
    stitch = step.stitch
    if hand.leaf is not None or stitch.form or stitch.kind in ("inc", "dec", "special", "slip"):
        return None
    match hand.edge.places, step.places:
        case [Ring()], (Next(count=count, target=Target(kind="stitch", stitch=None), below=0, piece=""),):
            if ONE in (count, step.each):
                each = step.each if count == ONE else count
                return replace(step, each=each, places=(IntoRing(),))
    return None


def repeated_in_the_ring(hand: Hand, step: Repeat) -> Repeat:
    """`(3 dc, ch 2) x 3` over a ring: each pass goes into it; the same step over anything else."""
    if len(hand.edge.places) != 1 or not isinstance(hand.edge.places[0], Ring):
        return step
    steps = []
    for one in step.steps:
        inside = into_the_ring(hand, one) if isinstance(one, Work) else None
        if inside is not None:
            hand.settled[id(one)] = inside
        steps.append(inside or one)
    return replace(step, steps=tuple(steps))
