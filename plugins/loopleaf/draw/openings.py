"""Where other pieces begin at openings of a piece in the round: a thumb on the stitches left for it."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ..fabric import Made
from .chart_things import place_key
from .items import Item
from .subject import Subject


class Opening(NamedTuple):
    """name: the piece that begins there. at: the index of the round whose stitches were left; along: the
    middle of the opening, as a share of that round's way.
    """

    name: str
    at: int
    along: float


def openings_of(subject: Subject, rounds: Sequence[Sequence[Item]]) -> Iterator[Opening]:
    """The openings of a piece, each once. rounds: its items."""
    pieces = subject.work.pattern.pieces
    for other in subject.work.pieces:
        start = pieces[other.name].start
        if start is None or start.edge != subject.piece.name or not start.stitches:
            continue
        first = other.rounds[0].sizes[0] if other.rounds else None
        made = [one for one in first.made if isinstance(one, Made)] if first is not None else []
        places = {place_key(place) for one in made for place in one.into}
        for at, items in enumerate(rounds):
            left = [
                item.middle for item in items if isinstance(item.thing, Made) and id(item.thing) in places
            ]
            if left and len(left) < len(items):
                yield Opening(other.name, at, sum(left) / len(left))
                break
