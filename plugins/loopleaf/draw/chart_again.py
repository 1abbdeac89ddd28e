"""What a large chart shows once and then again: the same part of all rounds, the same rows."""

from collections.abc import Hashable, Sequence
from math import gcd

from ..fabric import Made
from .chart_lines import Line
from .chart_things import Thing
from .subject import Subject

UNREADABLE = 450
"""A chart of more stitches than this shows its repeats lighter."""

FEWEST = 3
"""A part that comes so often, at least, is a repeat."""


def drawn_again(subject: Subject, lines: Sequence[Line]) -> set[int]:
    """The stitches and spaces, by their ids, that only repeat what is drawn beside or below them.

    In rows: the rows that the author gives as repeats of others. In rounds: all but one of the parts that all
    rounds come in.
    """
    if sum(len(line.things) for line in lines) <= UNREADABLE:
        return set()
    if subject.in_rows:
        return {
            id(made)
            for work, worked in zip(subject.piece.rounds, subject.worked, strict=True)
            if work.plan.by_rule in ("repeat", "as", "every")
            for made in worked.made
        }
    parts = 0
    for line in lines:
        parts = gcd(parts, _parts(line.things))
    if parts < FEWEST:
        return set()
    found: set[int] = set()
    for line, worked in zip(lines, subject.worked, strict=True):
        first = _in_order(line)[: len(line.things) // parts]
        kept, own = {id(thing) for thing in first}, {id(thing) for thing in line.things}
        again = False
        for made in worked.made:
            again = id(made) not in kept if id(made) in own else again
            if again and not (isinstance(made, Made) and made.role in ("join", "travel", "chain")):
                found.add(id(made))
    return found


def _in_order(line: Line) -> list[Thing]:
    return list(line.things)[::-1] if line.backward else list(line.things)


def _parts(things: Sequence[Thing]) -> int:
    """Into how many equal parts a round can be cut; 0 where it is empty, which goes with any number.

    How it begins is its own: often with chains that only stand for what begins the other parts.
    """
    looks = [_look(thing) for thing in things]
    many = len(looks)
    return next(
        (
            many // long
            for long in range(1, many + 1)
            if not many % long and all(looks[at] == looks[at - long] for at in range(long + 1, many))
        ),
        0,
    )


def _look(thing: Thing) -> Hashable:
    """What a thing looks like in the chart; a chain that stands for a stitch like the stitch."""
    if isinstance(thing, Made):
        return (thing.kind, thing.form, thing.loop, thing.post, len(thing.into))
    return thing.chains
