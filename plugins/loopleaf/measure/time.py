"""How long it takes: a band for a practised maker, and one for a new one.

Single crochet a minute: learning 5 to 10, usual 15 to 25. Other stitches go slower by the table's pace
(half 0.85, double 0.7, treble 0.55 of that; a chain 2.5 times as fast), clusters by their stitches; 10 to
15 % more for turning, counting and joins; 2 to 5 minutes to join a yarn and weave its end in; 3 to 4 sewn
stitches a minute. All from memory. A yarn that waited at the edge or on the way is only taken up again
(`threads`): 10 to 30 seconds to drop the one, untwist the balls and draw the other up (common practice, no
source).
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from .. import trade
from .made import Contents, Sort
from .units import Band

PRACTISED = Band(15, 25)
LEARNING = Band(5, 10)
"""Single crochet a minute."""
TURNING = Band(1.10, 1.15)
AN_END_MINUTES = Band(2, 5)
TAKING_UP_MINUTES = Band(1 / 6, 1 / 2)
SEWN_A_MINUTE = Band(3, 4)


@dataclass(frozen=True, slots=True)
class Hours:
    """Hours for the whole pattern, all copies. practised: at usual speed. learning: while learning."""

    practised: Band
    learning: Band


def single_equivalents(rounds: Iterable[Contents], specials: Mapping[str, int]) -> float:
    """The work in some rounds, in single crochets that take as long."""
    total = 0.0
    for made in rounds:
        for sort, number in made.stitches.items():
            total += number * _stitch_time(sort, specials)
        for space, number in made.spaces.items():
            total += number * space.chains * pace_time("chain", specials)
    return total


def _stitch_time(sort: Sort, specials: Mapping[str, int]) -> float:
    if sort.chains and sort.role != "back":
        return sort.chains * pace_time("chain", specials)
    return pace_time(sort.kind, specials) * max(sort.legs if sort.form else 1, 1)


def pace_time(kind: str, specials: Mapping[str, int]) -> float:
    """How long a stitch takes, in single crochets.

    One that the table lacks takes as long as its yarn overs' like.

    specials: yarn overs by the names of the author's own stitches; one of which nothing is known takes as a
    double.
    """
    rows = trade.stitches()
    row = next((row for row in rows if row.key == kind), None)
    if row is None or row.pace is None:
        overs = specials.get(kind, 1)
        row = min(
            (row for row in rows if row.pace is not None and row.yarn_overs is not None),
            key=lambda row: abs((row.yarn_overs or 0) - overs),
        )
    return 1 / (row.pace or 1.0)


def hours(single_stitches: float, ends: int, sewn_stitches: float, taken_up: int = 0) -> Hours:
    """Hours from the work in single crochets, ends to weave in, stitches to sew, and yarns taken up again."""
    beside = AN_END_MINUTES * ends + TAKING_UP_MINUTES * taken_up
    return Hours(
        _hours(single_stitches, beside, sewn_stitches, PRACTISED),
        _hours(single_stitches, beside, sewn_stitches, LEARNING),
    )


def _hours(single_stitches: float, beside: Band, sewn_stitches: float, speed: Band) -> Band:
    low = single_stitches / speed.high * TURNING.low + beside.low
    high = single_stitches / speed.low * TURNING.high + beside.high
    low += sewn_stitches / SEWN_A_MINUTE.high
    high += sewn_stitches / SEWN_A_MINUTE.low
    return Band(low / 60, high / 60)
