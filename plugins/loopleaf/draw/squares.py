"""A piece's picture in squares, as its author drew it: a row's number stands where the row begins."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby
from math import hypot

from .. import notation
from ..fabric import PatternWork
from ..notation.tree import Chain
from ..pattern import Grid
from .canvas import Point
from .colour import contrast, luminance
from .letters import room_for
from .sketch import WORDS, Figure, Fill, Sketch

SQUARE = 4.0
"""The side of a square, in units, where there is room."""

WIDEST = 90.0
"""The picture's width at most, in units: words beside it stay legible on a phone."""

LEGIBLE = 3.2
"""Squares of this side, in units, have room for a number."""

RUN = 3
"""So many squares alike, one after the other, are counted in the last of them."""

DARK, LIGHT, HALFWAY = "#22282b", "#ffffff", 0.18
"""Inks for numbers on a yarn's colour, and the luminance from which on the dark one shows better."""

TEN = 10
"""So many squares are set off by a stronger line, to count by."""

APART = 3.0
"""Yarns of this contrast keep apart in black print, too: as parts of pictures must (WCAG 2.2, 1.4.11)."""

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


def squares(
    work: PatternWork, name: str, said: Mapping[str, str], left_handed: bool = False
) -> Figure | None:
    """The grid of a piece; None where no row of it is worked from one.

    said: what each sign of the grid means, in the reader's words. left_handed: as a left-hander's comes out.
    """
    piece = work.piece(name)
    grid = work.pattern.pieces[name].grid
    if piece is None or grid is None:
        return None
    worked = [one.plan for one in piece.rounds if one.plan.by_rule == "grid"]
    labels = [plan.label for plan in worked if plan.entry == worked[0].entry]
    if not labels:
        return None
    signs = _signs(work, grid, said)
    side = min(SQUARE, WIDEST / len(grid.rows[0]))
    sketch = Sketch(left_handed)
    turns = work.pattern.pieces[name].worked == "rows"
    runs = _runs(grid, signs, turns) if side >= LEGIBLE else {}
    for down, row in enumerate(grid.rows):
        for across, sign in enumerate(row):
            _square(sketch, (across * side, down * side), side, signs[sign], runs.get((down, across), 0))
    _bars(sketch, grid, side, signs, runs)
    _tens(sketch, grid, side)
    _numbers(sketch, grid, side, labels, turns)
    _key(sketch, list(signs.values()), bool(runs))
    title = work.pattern.pieces[name].title or name
    word = worked[0].word
    way = "bottom up" if grid.from_.startswith("bottom") else "top down"
    return sketch.figure(
        f"{title}: picture in squares",
        f"The picture in squares, {len(grid.rows[0])} wide and {len(grid.rows)} high; {word}s {labels[0]} to "
        f"{labels[-1]} run from the {way}. The same {word}s stand below in words.",
    )


def _signs(work: PatternWork, grid: Grid, said: Mapping[str, str]) -> dict[str, Sign]:
    """A yarn's square has its colour, and bars where another yarn is as light; a square of chains is open,
    the others are filled.
    """
    signs: dict[str, Sign] = {}
    inks, marks = iter(("second", "tint")), iter(MARKS)
    bare: list[str] = []
    for sign, meaning in grid.key.items():
        yarn = work.pattern.materials.yarns.get(meaning)
        parsed = None if yarn is not None else notation.parse(meaning, work.vocabulary).line
        if yarn is not None:
            if yarn.colour and all(contrast(yarn.colour, other) >= APART for other in bare):
                bare.append(yarn.colour)
                signs[sign] = Sign(yarn.colour, "", said[sign])
                continue
            bars = next(marks, ()) if yarn.colour else ()
            signs[sign] = Sign(yarn.colour or "paper", "" if bars else sign, said[sign], bars)
        elif parsed is not None and any(isinstance(step, Chain) for step in parsed.steps):
            signs[sign] = Sign("paper", "", said[sign])
        else:
            fill = next(inks, "paper")
            signs[sign] = Sign(fill, sign if fill == "paper" else "", said[sign])
    return signs


def _square(sketch: Sketch, at: Point, side: float, sign: Sign, alike: int = 0) -> None:
    """A square with its letter, or with the number of those alike that end in it."""
    x, y = at
    sketch.area([(x, y), (x + side, y), (x + side, y + side), (x, y + side)], sign.fill, "thin")
    if sign.mark:
        sketch.words((x + side / 2, y + side * 0.8), sign.mark, size=side * 0.8, fill=_on(sign.fill))
    elif alike:
        size = side * min(0.9, 0.92 / room_for(str(alike), 1.0))
        foot = y + (side + size * 0.72) / 2
        sketch.words((x + side / 2, foot), str(alike), size=size, fill=_on(sign.fill))


def _bars(
    sketch: Sketch, grid: Grid, side: float, signs: Mapping[str, Sign], runs: Mapping[tuple[int, int], int]
) -> None:
    """The bars of each sign in all of its squares that have no number, as one shape."""
    for sign, drawn in signs.items():
        corners = [
            (across * side, down * side)
            for down, row in enumerate(grid.rows)
            for across, found in enumerate(row)
            if found == sign and (down, across) not in runs
        ]
        _barred(sketch, corners, side, drawn)


def _barred(sketch: Sketch, corners: Sequence[Point], side: float, sign: Sign) -> None:
    shapes = [[(x + px * side, y + py * side) for px, py in bar] for x, y in corners for bar in sign.bars]
    if shapes:
        way = "".join(sketch.way(shape, closed=True) for shape in shapes)
        sketch.areas(way, [point for shape in shapes for point in shape], _on(sign.fill))


def _runs(grid: Grid, signs: Mapping[str, Sign], turns: bool) -> dict[tuple[int, int], int]:
    """By the last square of a run as it is worked (how far down, how far across): how many there are."""
    high = len(grid.rows)
    found: dict[tuple[int, int], int] = {}
    for turn in range(high):
        down = high - 1 - turn if grid.from_.startswith("bottom") else turn
        row = grid.rows[down]
        order = range(len(row))
        ways = order[::-1] if _at_right(grid, turn, turns) else order
        for sign, same in groupby(ways, key=row.__getitem__):
            alike = list(same)
            if len(alike) >= RUN and not signs[sign].mark:
                found[down, alike[-1]] = len(alike)
    return found


def _on(fill: Fill) -> Fill:
    """An ink that shows on a square."""
    if fill.startswith("#"):
        return DARK if luminance(fill) > HALFWAY else LIGHT
    return "paper" if fill == "second" else "ink"


def _at_right(grid: Grid, turn: int, turns: bool) -> bool:
    """Whether a row begins at the right."""
    return grid.from_.endswith("right") != (turns and turn % 2 == 1)


def _tens(sketch: Sketch, grid: Grid, side: float) -> None:
    """Stronger lines around it all and at every tenth square, counted from where the first row begins."""
    wide, high = len(grid.rows[0]), len(grid.rows)
    right, bottom = grid.from_.endswith("right"), grid.from_.startswith("bottom")
    xs = {0, wide, *((wide - x if right else x) for x in range(TEN, wide, TEN))}
    ys = {0, high, *((high - y if bottom else y) for y in range(TEN, high, TEN))}
    for x in sorted(xs):
        sketch.line([(x * side, 0.0), (x * side, high * side)])
    for y in sorted(ys):
        sketch.line([(0.0, y * side), (wide * side, y * side)])


def _numbers(sketch: Sketch, grid: Grid, side: float, labels: Sequence[str], turns: bool) -> None:
    high, wide = len(grid.rows), len(grid.rows[0])
    bottom = grid.from_.startswith("bottom")
    size = min(WORDS, max(side * 0.9, WORDS * 0.6))
    each = 1 if side >= size else 5
    for turn, label in enumerate(labels[:high]):
        if turn % each:
            continue
        foot = (high - turn if bottom else turn + 1) * side - (side - size * 0.7) / 2
        at_right = _at_right(grid, turn, turns)
        x = wide * side + 1.2 if at_right else -1.2
        sketch.words((x, foot), label, "start" if at_right else "end", size)


def _key(sketch: Sketch, signs: Sequence[Sign], counted: bool) -> None:
    _, _, _, low = sketch.box
    for at, sign in enumerate(signs):
        top = low + 3.0 + at * (SQUARE + 1.6)
        _square(sketch, (0.0, top), SQUARE, sign)
        _barred(sketch, [(0.0, top)], SQUARE, sign)
        sketch.words((SQUARE + 1.6, top + SQUARE * 0.8), sign.said, "start")
    if counted:
        top = low + 3.0 + len(signs) * (SQUARE + 1.6) + SQUARE * 0.8
        for line, words in enumerate(("A number: so many alike,", "up to here.")):
            sketch.words((0.0, top + line * WORDS * 1.2), words, "start", WORDS * 0.95)
