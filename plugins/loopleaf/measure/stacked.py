"""Increases that stand above one another, round after round: they make corners, though each is only a pair.

Six of them make a hexagon, eight an octagon; moved along from round to round they make a circle (common
practice; geometry). An increase stands above another where it goes into one of that pair, or into what
stands on it.
"""

from collections.abc import Iterator, Sequence

from ..fabric import Made, WorkedRound
from .made import Contents
from .polygon import POLYGONS

_PAIR = 2
_LINKS = 2
"""So many times on end they stand above one another before corners show (chosen here)."""

_Pairs = Sequence[Sequence[Made]]


def stacked_corners(rounds: Sequence[WorkedRound | None], made: Sequence[Contents | None]) -> Iterator[int]:
    """Of each round of one size, how many corners its increases stack up to; 0 for a circle.

    made: the same rounds counted. Plain rounds keep the corners below them, rounds with spaces have none of
    this kind. A shift is outgrown once two thirds of the growing rounds lie behind it
    (chosen here).
    """
    lower: _Pairs = ()
    stitches = lower_at = links = run = corners = 0
    for at, (one, counted) in enumerate(zip(rounds, made, strict=True)):
        if one is None or counted is None:
            yield corners
            continue
        grows, stitches = counted.counted > stitches, counted.counted
        if counted.gaps:
            lower, run, corners = (), 0, 0
        elif grows:
            upper = _pairs(one.edge)
            if lower:
                links += 1
                run = run + 1 if _stands_on(upper, lower, lower_at) else 0
            lower, lower_at = upper, at
            shows = run >= _LINKS and 3 * run >= 2 * links and len(upper) in POLYGONS
            corners = len(upper) if shows else 0
        yield corners


def _pairs(places: Sequence[object]) -> _Pairs:
    """Two stitches each that stand in one place, side by side."""
    found: list[list[Made]] = []
    run: list[Made] = []
    for place in [*places, None]:
        if type(place) is Made and run and place.into and place.into == run[0].into:
            run.append(place)
            continue
        if len(run) == _PAIR:
            found.append(run)
        run = [place] if type(place) is Made else []
    return found


def _stands_on(upper: _Pairs, lower: _Pairs, lower_at: int) -> bool:
    """Whether each of these pairs stands on another one of those, as many as they are.

    lower_at: index of the lower pairs' round.
    """
    if len(upper) != len(lower):
        return False
    pair_of = {id(made): at for at, pair in enumerate(lower) for made in pair}
    bearing = {pair_of.get(id(_foot(pair[0], lower_at)), -1) for pair in upper}
    return bearing == set(range(len(lower)))


def _foot(made: Made, down_to: int) -> object:
    """What a stitch stands on in the round of that index."""
    place: object = made
    while isinstance(place, Made) and place.into and place.round > down_to:
        place = place.into[0]
    return place
