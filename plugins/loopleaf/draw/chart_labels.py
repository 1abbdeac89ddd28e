"""The numbers and arrows beside a chart's rounds: as large as print needs them, as many as have room."""

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass

from .canvas import Box, Point

DIGIT_WIDE, DIGIT_HIGH = 0.6, 0.75
"""A digit's size, of its letters' height."""

ASIDE = 0.4
"""Numbers side by side are so far from each other, of a digit's width: else they read as one."""

ABOVE = 0.1
"""And those one above another, of a digit's height."""

ARROW_LONG = 4.8
"""The arrow's sign, in units."""

AS_LONG = 0.72
"""An arrow is so long, of the height of the letters beside it."""

CLEAR = 2.5
"""Between a row, its arrow and its number, in units."""

FEW = 0.15
"""Numbers that would touch others are left out one by one where they are no more of all than this."""

NEIGHBOURS = 2
"""A number may touch the one before it, and that of the row before, which begins at the same end."""

STEPS = (1, 2, 5, 10, 20, 50, 100)
"""Every round is numbered, or every second, or every fifth: as there is room."""


@dataclass(frozen=True, slots=True)
class Label:
    """What stands at a round's start, y down. at: where it begins; away: the direction that leads on from the
    chart, (0, 0) for what stays in its place. text: its number, "" for an arrow alone. turned: of its
    arrow, in degrees; None without one. part: of the chart, as the far side of a ball; each has as many
    numbers as it has room for. lined_up: without an arrow its number stands as if there were one.
    """

    at: Point
    away: Point
    text: str = ""
    turned: int | None = None
    part: int = 0
    lined_up: bool = False


@dataclass(frozen=True, slots=True)
class Placed:
    """A number or an arrow ("") about its own middle."""

    middle: Point
    text: str
    turned: int = 0


def placed(labels: Sequence[Label], size: float) -> list[Placed]:
    """All arrows, and the numbers that there is room for, in letters so high."""
    shown: set[Hashable] = set()
    for part in {label.part for label in labels}:
        shown |= _shown([label for label in labels if label.text and label.part == part], size)
    return [one for label in labels for one in _parts(label, size) if not one.text or id(label) in shown]


def box_of(one: Placed, size: float) -> Box:
    """How far a number or an arrow reaches."""
    half = size * (DIGIT_WIDE * len(one.text) / 2 if one.text else AS_LONG / 2)
    high = size * (DIGIT_HIGH if one.text else AS_LONG) / 2
    x, y = one.middle
    return (x - half, y - high, x + half, y + high)


def _parts(label: Label, size: float) -> Iterator[Placed]:
    (x, y), (across, down) = label.at, label.away
    reached = 0.0
    if label.turned is not None:
        half = size * AS_LONG / 2
        yield Placed((x + across * half, y + down * half), "", label.turned)
    if label.turned is not None or label.lined_up:
        reached = size * AS_LONG + CLEAR
    if label.text:
        half = abs(across) * size * DIGIT_WIDE * len(label.text) / 2 + abs(down) * size * DIGIT_HIGH / 2
        by = reached + half if across or down else 0.0
        yield Placed((x + across * by, y + down * by), label.text)


def _shown(labels: Sequence[Label], size: float) -> set[Hashable]:
    """The labels, by their ids, whose numbers stand clear of each other: every so many, and the first. Where
    only a few would touch, as in the middle of rounds, these alone are left out.
    """
    if not labels:
        return set()
    boxes = [_with_room(box_of(one, size), size) for one in _numbers(labels, size)]
    for step in STEPS:
        every = range(step - 1, len(labels), step)
        kept: list[int] = []
        for at in every:
            if not any(_touch(boxes[at], boxes[one]) for one in kept[-NEIGHBOURS:]):
                kept.append(at)
        if len(every) - len(kept) <= FEW * len(every):
            break
    first = [0] if not any(_touch(boxes[0], boxes[at]) for at in kept) else []
    return {id(labels[at]) for at in (*first, *kept)}


def _numbers(labels: Sequence[Label], size: float) -> Iterator[Placed]:
    return (one for label in labels for one in _parts(label, size) if one.text)


def _with_room(box: Box, size: float) -> Box:
    """A number's box with the room that parts it from one beside it."""
    aside, above = size * DIGIT_WIDE * ASIDE / 2, size * DIGIT_HIGH * ABOVE / 2
    return (box[0] - aside, box[1] - above, box[2] + aside, box[3] + above)


def _touch(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
