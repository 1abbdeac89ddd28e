"""A part of a picture in squares, or all of it: squares, lines to count by, counts of runs, row numbers."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby
from math import ceil, hypot
from typing import NamedTuple

from .canvas import Point
from .colour import luminance
from .letters import room_for
from .sketch import Fill, Ink, Sketch

RUN = 3
"""So many squares alike, one after the other, are counted in the last of them."""

DARK, LIGHT, HALFWAY = "#22282b", "#ffffff", 0.18
"""Inks for what stands on a yarn's colour, and the luminance from which on the dark one shows better."""

TEN = 10
"""So many squares are set off by a stronger line, to count by."""

FINE: Ink = "fine"
STRONG: Ink = "edge"

NUMBERED = 20
"""The tens of a wider picture have their number."""

BESIDE = 1.2
"""A row's number stands so far beside its squares, in units."""

OVERLAP = 3
"""Neighbouring parts show so many squares of each other: room for the number of a run of hundreds."""

PAST = 2.0
"""The line where a neighbouring part begins reaches so far past the squares, in units."""

LOW = 0.72
"""Height of a digit, of its size."""

BAR, NEAR, FAR = 0.07, 0.27, 0.73
"""Of a square's side: half a mark's breadth, and where its bars begin and end."""


def _bar(x0: float, y0: float, x1: float, y1: float) -> tuple[Point, ...]:
    long = hypot(x1 - x0, y1 - y0)
    x, y = BAR * (y1 - y0) / long, BAR * (x1 - x0) / long
    return ((x0 - x, y0 + y), (x1 - x, y1 + y), (x1 + x, y1 - y), (x0 + x, y0 - y))


_RISING, _FALLING = _bar(NEAR, FAR, FAR, NEAR), _bar(NEAR, NEAR, FAR, FAR)
_LYING, _UPRIGHT = _bar(NEAR, 0.5, FAR, 0.5), _bar(0.5, NEAR, 0.5, FAR)
MARKS = ((_RISING,), (_FALLING,), (_LYING,), (_UPRIGHT,), (_RISING, _FALLING), (_LYING, _UPRIGHT))
"""What tells yarns apart that are as light as others: bars across their squares, of a side of 1."""


@dataclass(frozen=True, slots=True)
class Sign:
    """How a sign of the grid is drawn, and what is said of it in the key. mark: a letter in its square, for
    what has no colour of its own, and for yarns alike past the last of the bars. bars: across its square,
    where another yarn is as light.
    """

    fill: Fill
    mark: str
    said: str
    bars: Sequence[Sequence[Point]] = ()

    @property
    def on(self) -> Fill:
        """An ink that shows on its square."""
        if self.fill.startswith("#"):
            return DARK if luminance(self.fill) > HALFWAY else LIGHT
        return "paper" if self.fill == "second" else "ink"


@dataclass(frozen=True, slots=True)
class Picture:
    """rows: the top one first, one sign a square. labels: of the rows, in working order; word: what they are,
    `row` or `round`. at_right: whether the first begins at the right; upwards: whether it is the lowest;
    turns: whether every other one goes back.
    """

    rows: Sequence[str]
    signs: Mapping[str, Sign]
    labels: Sequence[str]
    word: str
    at_right: bool
    upwards: bool
    turns: bool

    @property
    def wide(self) -> int:
        """Squares across."""
        return len(self.rows[0])

    @property
    def high(self) -> int:
        """Squares from top to bottom."""
        return len(self.rows)

    @property
    def tens(self) -> tuple[list[int], list[int]]:
        """After which squares, from the left and from the top, a stronger line stands: counted from where the
        first row begins.
        """
        across, down = range(TEN, self.wide, TEN), range(TEN, self.high, TEN)
        return (
            [self.wide - at if self.at_right else at for at in across],
            [self.high - at if self.upwards else at for at in down],
        )

    def turn(self, down: int) -> int:
        """How many rows are worked before the one so far from the top."""
        return self.high - 1 - down if self.upwards else down

    def begins_right(self, down: int) -> bool:
        """Whether a row begins at the right."""
        return self.at_right != (self.turns and self.turn(down) % 2 == 1)

    def runs(self, down: int) -> Iterator[tuple[str, Sequence[int]]]:
        """Squares of one sign side by side, in the order in which they are worked."""
        row = self.rows[down]
        ways = range(self.wide)[:: -1 if self.begins_right(down) else 1]
        for sign, same in groupby(ways, key=row.__getitem__):
            yield sign, list(same)

    @property
    def counts(self) -> bool:
        """Whether any run is long enough to be counted."""
        return any(len(run) >= RUN for down in range(self.high) for _, run in self.runs(down))


class Part(NamedTuple):
    """Which squares: the first and, behind the last, the next, across and down."""

    left: int
    top: int
    right: int
    bottom: int


def draw_part(sketch: Sketch, picture: Picture, part: Part, side: float, size: float) -> None:
    """The squares of a part where they lie in the whole. side: of a square; size: of numbers, in units."""
    rows = [(down, _label(picture, down)) for down in range(part.top, part.bottom)]
    for down, label in rows:
        with sketch.group(f'data-round="{label}"'):
            _fills(sketch, picture, part, down, side)
    _lines(sketch, picture, part, side)
    for down, label in rows:
        with sketch.group(f'data-round="{label}"'):
            _in_squares(sketch, picture, part, down, side, size)
            _number(sketch, picture, part, down, side, size)
    _count_across(sketch, picture, part, side, size)
    _next_parts(sketch, picture, part, side)


def one_square(sketch: Sketch, at: Point, side: float, sign: Sign) -> None:
    """A square of the key."""
    x, y = at
    sketch.area([(x, y), (x + side, y), (x + side, y + side), (x, y + side)], sign.fill, "thin")
    _barred(sketch, [at], side, sign)
    if sign.mark:
        _letter(sketch, at, side, sign)


def _label(picture: Picture, down: int) -> str:
    turn = picture.turn(down)
    return picture.labels[turn] if turn < len(picture.labels) else ""


def _fills(sketch: Sketch, picture: Picture, part: Part, down: int, side: float) -> None:
    """The squares of a row by their sign, each run in one piece."""
    top, low = down * side, (down + 1) * side
    ways: dict[str, list[list[Point]]] = {}
    for sign, run in picture.runs(down):
        start, end = max(min(run), part.left) * side, min(max(run) + 1, part.right) * side
        if start < end:
            ways.setdefault(sign, []).append([(start, top), (end, top), (end, low), (start, low)])
    for sign, shapes in ways.items():
        way = "".join(sketch.way(shape, closed=True) for shape in shapes)
        sketch.areas(way, [point for shape in shapes for point in shape], picture.signs[sign].fill)


def _lines(sketch: Sketch, picture: Picture, part: Part, side: float) -> None:
    """Thin lines between all squares, in an ink that shows on both; stronger ones at every tenth square and
    around what ends here.
    """
    left, top, right, bottom = part
    xs, ys = picture.tens
    for ink, columns, rows in (
        (FINE, range(left, right + 1), range(top, bottom + 1)),
        (
            STRONG,
            [x for x in (0, *xs, picture.wide) if left <= x <= right],
            [y for y in (0, *ys, picture.high) if top <= y <= bottom],
        ),
    ):
        lines = [[(x * side, top * side), (x * side, bottom * side)] for x in columns]
        lines += [[(left * side, y * side), (right * side, y * side)] for y in rows]
        sketch.strokes(lines, ink)
        for own in ("paper", LIGHT, DARK):
            sketch.strokes(list(_within(picture, part, side, own, columns, rows)), ink, own)


def _within(
    picture: Picture, part: Part, side: float, ink: Fill, columns: Iterable[int], rows: Iterable[int]
) -> Iterator[Sequence[Point]]:
    """Lines between squares on which this ink shows, as long as they go on. columns, rows: before which."""
    left, top, right, bottom = part
    shows = [[picture.signs[sign].on == ink for sign in row] for row in picture.rows]
    for x in columns:
        both = [left < x < right and row[x - 1] and row[x] for row in shows[top:bottom]]
        for start, end in _together(top, both):
            yield [(x * side, start * side), (x * side, end * side)]
    for y in rows:
        both = [top < y < bottom and shows[y - 1][x] and shows[y][x] for x in range(left, right)]
        for start, end in _together(left, both):
            yield [(start * side, y * side), (end * side, y * side)]


def _together(first: int, there: Sequence[bool]) -> Iterator[tuple[int, int]]:
    """Stretches of what is there: where each begins and where it ends, counted on from `first`."""
    at = first
    for is_there, same in groupby(there):
        start, at = at, at + len(list(same))
        if is_there:
            yield start, at


def _in_squares(sketch: Sketch, picture: Picture, part: Part, down: int, side: float, size: float) -> None:
    """What stands in a row's squares: in a run's last how many there are; letters and bars in others."""
    for sign_of, run in picture.runs(down):
        sign = picture.signs[sign_of]
        taken = run[len(run) - ceil(room_for(str(len(run)), size) / side) :] if len(run) >= RUN else []
        counted = bool(taken) and all(part.left <= at < part.right for at in taken)
        corners = [
            (at * side, down * side)
            for at in run
            if part.left <= at < part.right and not (counted and at in taken)
        ]
        if counted:
            _count(sketch, (min(taken) * side, down * side), side, len(taken), len(run), sign, size)
        _barred(sketch, corners, side, sign)
        for corner in corners if sign.mark else ():
            _letter(sketch, corner, side, sign)


def _count(sketch: Sketch, at: Point, side: float, many: int, alike: int, sign: Sign, size: float) -> None:
    """How many there are, over the last squares of a run; the lines between those make room."""
    x, y = at
    if many > 1:
        free = side * 0.1
        left, right, top, low = x + free, x + many * side - free, y + free, y + side - free
        way = sketch.way([(left, top), (right, top), (right, low), (left, low)], closed=True)
        sketch.areas(way, [], sign.fill)
    sketch.words((x + many * side / 2, _foot(y, side, size)), str(alike), size=size, fill=sign.on)


def _foot(top: float, side: float, size: float) -> float:
    return top + (side + size * LOW) / 2


def _letter(sketch: Sketch, at: Point, side: float, sign: Sign) -> None:
    sketch.words((at[0] + side / 2, at[1] + side * 0.8), sign.mark, size=side * 0.8, fill=sign.on)


def _barred(sketch: Sketch, corners: Sequence[Point], side: float, sign: Sign) -> None:
    shapes = [[(x + px * side, y + py * side) for px, py in bar] for x, y in corners for bar in sign.bars]
    if shapes:
        way = "".join(sketch.way(shape, closed=True) for shape in shapes)
        sketch.areas(way, [point for shape in shapes for point in shape], sign.on)


def _number(sketch: Sketch, picture: Picture, part: Part, down: int, side: float, size: float) -> None:
    """A row's number where the row begins."""
    at_right = picture.begins_right(down)
    x = part.right * side + BESIDE if at_right else part.left * side - BESIDE
    foot = _foot(down * side, side, size)
    sketch.words((x, foot), _label(picture, down), "start" if at_right else "end", size)


def _count_across(sketch: Sketch, picture: Picture, part: Part, side: float, size: float) -> None:
    """The numbers of every tenth square, at the side where the first row lies."""
    if picture.wide <= NUMBERED:
        return
    y = part.bottom * side + BESIDE + size * LOW if picture.upwards else part.top * side - BESIDE
    for many in range(TEN, picture.wide + 1, TEN):
        at = picture.wide - many if picture.at_right else many - 1
        if part.left <= at < part.right:
            sketch.words(((at + 0.5) * side, y), str(many), size=size)


def _next_parts(sketch: Sketch, picture: Picture, part: Part, side: float) -> None:
    """Dashed lines where neighbouring parts begin."""
    left, top, right, bottom = part
    xs = [left + OVERLAP] * (left > 0) + [right - OVERLAP] * (right < picture.wide)
    ys = [top + OVERLAP] * (top > 0) + [bottom - OVERLAP] * (bottom < picture.high)
    above, below = (PAST, 0.0) if picture.upwards else (0.0, PAST)  # clear of the numbers across
    lines = [[(x * side, top * side - above), (x * side, bottom * side + below)] for x in xs]
    lines += [[(left * side - PAST, y * side), (right * side + PAST, y * side)] for y in ys]
    sketch.strokes(lines, "cut", "paper")
    for line in lines:
        sketch.line(line, "dashed")
