"""`first st` at the beginning of a repeat's pass: the first of those that the pass takes."""

from dataclasses import replace

from ..notation.tree import STITCH, First, Next, Over, Repeat, Step, Work
from .hand import Hand


def each_pass_anew(hand: Hand, step: Repeat) -> Repeat:
    """`*hdc in first st, 2 hdc in next st; rep from * around` with `next` for `first`; else the same repeat.

    Not behind a chain that stands on the row's first stitch, which is the one so called there.
    """
    if hand.stood and hand.edge.pos == 1:
        return step
    match step.steps:
        case (Work(places=(First(count=count, target=target, span=span),)) as work, _, *_):
            if target != STITCH or not _goes_on(step.steps[1:]):
                return step
            anew = replace(work, places=(Next(count, target, span=span),))
            hand.settled[id(work)] = anew
            return replace(step, steps=(anew, *step.steps[1:]))
    return step


def _goes_on(steps: tuple[Step, ...]) -> bool:
    """Whether a pass goes on to the next stitches."""
    places = [place for one in steps if isinstance(one, Work) for place in one.places]
    return any(
        isinstance(place, Next) or (isinstance(place, Over) and place.which == "next") for place in places
    )
