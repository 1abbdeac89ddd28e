"""`rep from * across, ending last rep with 2 sc in last ch`: how much of the last pass is still worked."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import takewhile
from typing import Any

from ..notation.tree import ONE, Chain, ChainOf, First, Group, Next, Repeat, Skip, Step, Stitch, Work
from .closing import joins_here
from .edge import Stuck
from .hand import Hand
from .kept import ends_in_a_chain
from .passed import only_passed

Perform = Callable[[Hand, tuple[Step, ...]], None]


def before_the_ending(
    hand: Hand, step: Repeat, perform: Perform, following: tuple[Step, ...]
) -> tuple[Step, ...]:
    """The steps of a last pass that the ending cuts short; () where it follows whole passes, or fits none.

    following: the steps behind the repeat; up to the turn or join they belong to its ending.
    """
    ways = _ways(hand, step, perform, following)
    return ways[0] if ways else ()


def _ways(hand: Hand, step: Repeat, perform: Perform, following: tuple[Step, ...]) -> list[tuple[Step, ...]]:
    """How much of a pass fits before the ending, the likeliest first."""
    more = tuple(takewhile(lambda one: isinstance(one, Work | Group | Chain | Skip), following))
    ending = without_join(hand, step.ending + more, following[len(more) :])
    ways = [
        (passed, not _stands_there(step, len(begun)), at, begun)
        for at, begun in enumerate(_beginnings(step))
        if (passed := _passed(hand, begun + ending, perform)) is not None
    ]
    return [begun for *_, begun in sorted(ways, key=lambda way: way[:3])]


def in_the_last_pass(
    hand: Hand, step: Repeat, perform: Perform, following: tuple[Step, ...], before: tuple[Any, ...]
) -> tuple[Step, ...]:
    """`*sc in next 3 sts, 3 sc in next st; …, ending last rep with 2 sc in next st`: the last whole pass,
    ravelled, as far as its ending leaves it. before: the hand's mark where that pass began. Where the ending
    doesn't fit there, the pass is worked again.
    """
    hand.back_to(before)
    ways = _ways(hand, step, perform, following)
    if not ways:
        perform(hand, step.steps)
        return ()
    return ways[0]


def without_what_is_told(hand: Hand, step: Repeat) -> Repeat:
    """`*…, 2 dc in each of next 2 dc; rep from * to end, working last dc in top of ch-3`: the repeat without
    its ending, where that only says which place the last two go into, and this is the reading."""
    match step.steps[-1], step.ending:
        case Work(stitch=stitch, each=each, places=(Next(),)), (Work(places=(ChainOf(),)) as told,):
            if told.stitch != stitch or told.each != ONE or each == ONE or not ends_in_a_chain(hand.edge):
                return step
            hand.told_open = True
            return replace(step, ending=()) if hand.setting.reading.told else step
    return step


def _stands_there(step: Repeat, at: int) -> bool:
    """Whether the ending begins with what stands there in a pass: `*ch 1, 3 dc in next sp, …; …, ending last
    rep with 3 dc in last sp`."""
    match step.steps[at], step.ending[0]:
        case Work(stitch=stitch, each=each), Work(stitch=last, each=other):
            return at > 0 and (stitch, each) == (last, other)
        case Group(steps=steps), Group(steps=last):
            return at > 0 and steps == last
    return False


def without_join(hand: Hand, steps: tuple[Step, ...], behind: tuple[Step, ...]) -> tuple[Step, ...]:
    """Without the slip stitch to the round's own beginning that they end in: it takes none of the edge.

    behind: what follows them; a slip stitch that more stitches follow is none that joins.
    """
    if hand.setting.worked != "joined rounds" or any(isinstance(one, _MORE) for one in behind):
        return steps
    match steps:
        case (*before, Work(stitch=Stitch(kind="slip"), places=((ChainOf() | First()) as place,))):
            return tuple(before) if joins_here(hand, place) else steps
    return steps


_MORE = (Work, Group, Chain, Skip, Repeat)


def _beginnings(step: Repeat) -> Iterator[tuple[Step, ...]]:
    """Nothing, then as much of a pass as may be: a chain in the ending stands for the one in the pass, and
    one with a picot on it for such a one."""
    yield ()
    arched = any(map(_is_picot, step.ending))
    for length in range(len(step.steps) - 1, 0, -1):
        begun = step.steps[:length]
        if isinstance(step.ending[0], Chain) or _is_picot(step.ending[0]):
            same = takewhile(
                lambda one: isinstance(one, Chain | Skip) or (arched and _is_picot(one)), begun[::-1]
            )
            gap = tuple(same)[::-1]
            begun = begun[: length - len(gap)] + tuple(one for one in gap if isinstance(one, Skip))
        yield begun


def _is_picot(step: Step) -> bool:
    return isinstance(step, Work) and step.stitch.form == "picot"


def _passed(hand: Hand, steps: tuple[Step, ...], perform: Perform) -> int | None:
    """How many places these pass unsaid up to the end of the edge, and with no chain over them; None where
    they don't come out."""
    before, uses, spaces = hand.mark(), hand.uses, hand.spaced
    there = hand.edge.rest(True)
    try:
        perform(hand, steps)
        left = hand.edge.rest(hand.into_spaces) and not only_passed(hand)
        return None if left else max(there - (hand.uses - uses) - (hand.spaced - spaces), 0)
    except Stuck:
        return None
    finally:
        hand.back_to(before)
