"""A border around a piece in rows, or around pieces laid out and joined: the rectangle that it goes around,
and its places on it.
"""

from collections.abc import Iterator

from ..fabric import PatternWork
from ..fabric.laid_out import Whole, laid_out_steps, whole_of
from ..measure import Measured
from .canvas import Point
from .items import Spot
from .once import once
from .section import Rectangle
from .subject import Subject, subject_of


@once
def bordered(subject: Subject) -> Whole | None:
    """The way that a border goes; None for any other piece."""
    if subject.whole is not None:
        return subject.whole
    return whole_of(subject.work.pattern, subject.work.pieces, subject.piece.name)


def rectangle_of(whole: Whole, wide: float) -> Rectangle:
    """What it goes around where each of its places is so wide."""
    across, down, *_ = whole.sides
    return Rectangle(wide=across * wide, high=down * wide)


def outline_of(whole: Whole, subject: Subject, wide: float) -> list[tuple[Point, Point]]:
    """The edge of what it goes around, and the seams between pieces laid out, as lines about the middle."""
    rectangle = rectangle_of(whole, wide)
    x, y = rectangle.wide / 2, rectangle.high / 2
    start = subject.work.pattern.pieces[subject.piece.name].start
    lay = laid_out_steps(subject.work.pattern).get(start.edge or "") if start and start.laid_out else None
    across, down = (lay.across, lay.down) if lay is not None else (1, 1)
    upright = [(2 * at / across - 1) * x for at in range(across + 1)]
    level = [(2 * at / down - 1) * y for at in range(down + 1)]
    return [((at, -y), (at, y)) for at in upright] + [((-x, at), (x, at)) for at in level]


def spots_of(whole: Whole, subject: Subject) -> dict[int, Spot]:
    """Where the places of the border's start lie: side by side from one corner to the next."""
    spots: dict[int, Spot] = {}
    places = iter(subject.piece.starts[0])
    for side, many in enumerate(whole.sides):
        for at in range(many):
            begin = (side + (at - 0.5) / many) / len(whole.sides)
            spots[id(next(places))] = Spot(begin, begin + 1 / many / len(whole.sides))
    return spots


def borders_of(work: PatternWork, name: str, measured: Measured) -> Iterator[Subject]:
    """The borders in rounds around a piece, alone or laid out, as far as they are worked."""
    for piece in work.pieces:
        start = work.pattern.pieces[piece.name].start
        if start is not None and (start.laid_out or start.around) and start.edge == name:
            border = subject_of(work, piece, measured)
            if border is not None and not border.in_rows and bordered(border) is not None:
                yield border
