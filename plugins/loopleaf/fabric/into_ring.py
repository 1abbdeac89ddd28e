"""Stitches that name no place, where there is nothing but a ring to work into."""

from dataclasses import replace

from ..notation.tree import ONE, Next, Target, Work
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
