"""Where other pieces begin on stitches of a piece: a thumb at its opening, rows on some of its stitches."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ..fabric import Made, Space
from ..fabric.worked import Place
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


class Begun(NamedTuple):
    """name: a piece in rows. at: the index of the row or round that it begins on; along: where on its way
    its middle lies; wide: how much of the way it takes.
    """

    name: str
    at: int
    along: float
    wide: float


def openings_of(subject: Subject, rounds: Sequence[Sequence[Item]]) -> Iterator[Opening]:
    """The openings of a piece that others in the round begin at, each once. rounds: its items."""
    pieces = subject.work.pattern.pieces
    for other in subject.work.pieces:
        start = pieces[other.name].start
        if (
            start is None
            or start.edge != subject.piece.name
            or not start.stitches
            or _in_rows(subject, other.name)
        ):
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


def begun_in_rows(
    subject: Subject, rounds: Sequence[Sequence[Item]], around: bool = False
) -> Iterator[Begun]:
    """The pieces in rows that begin on stitches of one row or round of a piece, in their order.

    rounds: its items. around: they lie around it, so that a run may go over a round's beginning.
    """
    for other in subject.work.pieces:
        start = subject.work.pattern.pieces[other.name].start
        if start is None or not start.edge or start.row_ends or not _in_rows(subject, other.name):
            continue
        first = next((one.sizes[0] for one in other.rounds if one.sizes[0] is not None), None)
        wanted = places_of(first.made) if first is not None and other.name != subject.piece.name else {}
        for at, items in enumerate(rounds):
            under = [item for item in items if id(item.thing) in wanted]
            if under:
                yield Begun(other.name, at, *_run(under, around))
                break


def places_of(stitches: Sequence[Made | Space]) -> dict[int, Place]:
    """What counted stitches go into, by id; chains of a space as their space."""
    found: dict[int, Place] = {}
    for made in stitches:
        for place in made.into if isinstance(made, Made) and made.number else ():
            whole = place.into[0] if isinstance(place, Made) and place.role == "loop" else place
            found[id(whole)] = whole
    return found


def _in_rows(subject: Subject, name: str) -> bool:
    return subject.work.pattern.pieces[name].worked.startswith("rows")


def _run(under: Sequence[Item], around: bool) -> tuple[float, float]:
    """The middle of a run of items, and how wide it is, as shares of their way."""
    ends: list[tuple[float, float]] = []
    at = under[0].middle
    for item in under:
        at += (item.middle - at + 0.5) % 1.0 - 0.5 if around else item.middle - at
        half = (item.end - item.start) / 2
        ends.append((at - half, at + half))
    start, end = min(low for low, _ in ends), max(high for _, high in ends)
    return (start + end) / 2, end - start
