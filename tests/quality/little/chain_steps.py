"""Chains: one that begins a round, one that is worked back on, a space between stitches."""

from collections.abc import Iterator, Sequence

from loopleaf.notation.tree import (
    Chain,
    FastenOff,
    FromHook,
    Group,
    Join,
    Marker,
    Repeat,
    Step,
    Turn,
    Work,
    Yarn,
)

from .beginning import begin_chain
from .cells import Cell, chains, kind_of
from .hand import Hand, Leaf
from .slip_stitches import is_first_chain


def make_chain(hand: Hand, step: Chain, rest: Sequence[Step], then: Sequence[Step]) -> None:
    """One chain of a line. then: what comes after the bracket that it stands in."""
    length = hand.setting.number(step.length)
    if not length:
        return
    if _turns_back(rest, then):
        begins = hand.leading and not hand.pos
        if begins and hand.edge.foundation and hand.edge.shape != "circle":
            hand.lay([*chains(length), *hand.cells])  # the foundation is so much longer
        else:
            hand.leaf = Leaf(length, grows=begins and hand.setting.rows)
        return
    hand.leaf = None
    if hand.joined:
        hand.carried = None if any(isinstance(one, FastenOff) for one in rest) else step
        return  # it locks the yarn, or it belongs to the next round
    if any(isinstance(one, Turn) for one in rest) and not any(_makes(rest)):
        hand.carried = step  # it belongs to the next row
        return
    if hand.leading and step.counts is None and rest and isinstance(rest[0], Chain):
        hand.begun_with = 0 if rest[0].counts is not None else hand.begun_with + length
        return
    length, hand.begun_with = length + hand.begun_with, 0
    if hand.leading and begin_chain(hand, step, length, rest):
        return
    if step.counts is not None and step.counts.nothing:
        return
    if step.counts is not None and step.counts.stitch is not None:
        hand.add(Cell(kind_of(step.counts.stitch), chain=length, stands=length - step.counts.chains))
        length = step.counts.chains
        if not length:
            return
    if len(hand.made) > hand.group_start and hand.made[-1].kind == "space" and not hand.made[-1].bunches:
        length += hand.made.pop().length
        if hand.fastened_to and length not in hand.fastened_to and length + 1 in hand.fastened_to:
            length += 1  # the slip stitch stands in the middle chain's stead
    hand.fastened_to = frozenset()
    hand.add(Cell("space", length=length))


def _turns_back(rest: Sequence[Step], then: Sequence[Step]) -> bool:
    for step in rest:
        if isinstance(step, Turn | Yarn | Marker):
            continue
        if not isinstance(step, Work) or not step.places:
            return False
        goes_on = len(rest) > 1 or bool(then)
        closes = step.stitch.kind == "slip" and goes_on and is_first_chain(step.places[0])
        return closes or isinstance(step.places[0], FromHook)
    return False


def _makes(steps: Sequence[Step]) -> Iterator[Step]:
    yield from (step for step in steps if isinstance(step, Work | Group | Repeat | Chain | Join))
