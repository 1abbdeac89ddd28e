"""The first round about a chain: its stitches stand on their own chains on both sides, and about each end
evenly from one side to the other, with the gap at the round's start among them.
"""

from collections.abc import Sequence
from typing import NamedTuple

from ..fabric import Space
from .chart_lines import Line, Top
from .section import Oval
from .signs import UNIT

SHARED = 0.8
"""Stitches that share a chain on a side stand so far apart, of their width."""

MOST_GAP = 0.5
"""The gap takes so much, at most, of the way about its end."""

NEAR = 1e-6


class End(NamedTuple):
    """The stitches about one end of a chain, by their numbers in order along the way; those on the sides
    beside them; and after how many of them the round's start lies, None where it lies elsewhere.
    """

    before: int
    around: Sequence[int]
    after: int
    start: int | None


def ends_of(line: Line, below: Sequence[Sequence[Top]]) -> list[End]:
    """Both ends of a chain that a round is the first to go about; none where its stitches stand otherwise."""
    ground, many = line.ground, len(line.things)
    if not isinstance(ground, Oval) or not ground.spine or any(isinstance(one, Space) for one in line.things):
        return []
    if any(len(tops) > 1 for tops in below):
        return []
    sides = [at for at, tops in enumerate(below) if tops and not _at_end(ground, tops[0])]
    found: list[End] = []
    for number, at in enumerate(sides):
        after = sides[(number + 1) % len(sides)]
        around = [(at + step) % many for step in range(1, (after - at - 1) % many + 1)]
        if around and any(below[one] for one in around):
            start = around.index(0) if 0 in around else len(around) if after == 0 else None
            found.append(End(at, around, after, start))
    whole = len(sides) + sum(len(end.around) for end in found) == many
    return found if len(found) == 2 and whole else []


def room_about(line: Line, ends: Sequence[End]) -> float:
    """How long the round's way must be to hold the stitches about its ends; 0 without any."""
    if not ends or not isinstance(line.ground, Oval):
        return 0.0
    longest = max((len(end.around) - 1) * UNIT + line.gap * (end.start is not None) for end in ends)
    return 2 * line.ground.spine + 2 * longest


class Standing(NamedTuple):
    """Where along the way each stitch stands, and the middle of its feet as far as it leans; and the share of
    the way that it is drawn at, with the gap at the round's start.
    """

    xs: list[float]
    feet: list[float | None]
    drawn: list[float]


def about(line: Line, ends: Sequence[End], below: Sequence[Sequence[Top]]) -> Standing:
    """All stitches of the round."""
    way, many = line.ground.way(line.level), len(line.things)
    xs: list[float] = [0.0] * many
    feet: list[float | None] = [None] * many
    aside = [0.0] * many
    sharing: dict[float, list[int]] = {}
    around = {at for end in ends for at in end.around}
    for at, tops in enumerate(below):
        if at not in around:
            sharing.setdefault(tops[0].carried(line.level), []).append(at)
    for share, sharers in sharing.items():
        for number, at in enumerate(sharers):
            feet[at] = share * way
            xs[at] = share * way + (number - (len(sharers) - 1) / 2) * SHARED * UNIT
    for end in ends:
        start, whole = xs[end.before], (xs[end.after] - xs[end.before]) % way
        gap = min(line.gap, MOST_GAP * whole) if end.start is not None else 0.0
        many_steps = len(end.around) + 1
        for number, at in enumerate(end.around):
            past = gap if end.start is not None and number >= end.start else 0.0
            xs[at] = feet[at] = start + whole / many_steps * (number + 1)
            aside[at] = past - gap / many_steps * (number + 1)
    turns = 0.0
    for at in range(1, many):  # one after the other along the way
        turns += way if xs[at] + turns < xs[at - 1] - NEAR else 0.0
        foot = feet[at]
        xs[at], feet[at] = xs[at] + turns, None if foot is None else foot + turns
    return Standing(xs, feet, [(x + more) / way for x, more in zip(xs, aside, strict=True)])


def _at_end(ground: Oval, top: Top) -> bool:
    return abs(top.ground.at(top.level, top.along)[0]) > ground.spine / 2 - NEAR
