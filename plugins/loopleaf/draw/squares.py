"""A piece's picture in squares, as its author drew it: for a screen whole, for print in parts where a page
has no room for it.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil

from .. import notation
from ..fabric import PatternWork
from ..notation.tree import Chain
from ..pattern import Grid
from .chart_key import KeyEntry
from .chart_print import TALLEST_MM, WIDEST_MM
from .colour import contrast
from .letters import room_for
from .sketch import WORDS, Figure, Sketch
from .squares_part import BESIDE, MARKS, OVERLAP, Part, Picture, Sign, draw_part, one_square

SQUARE, NUMBER = 4.0, 3.6
"""The side of a square on a page, and the size of the numbers in it, in units."""

LEAST_MM, AT_EASE_MM, NUMBER_MM, WORDS_MM = 2.5, 3.0, 2.3, 2.6
"""In print: the side of a square at least, and in a picture that is parted anyway; the size of its numbers
(6.5 pt) and of words at least.
"""

MARGIN_MM = 46.0
"""A picture that has room in the margin, beside its rows, is no wider."""

MARGIN = 1.5
"""Around it all, in units."""

LINE, BELOW, BEFORE_WORDS = 1.5, 3.0, 1.6
"""The key's lines, of the size of its words; so far below the picture, and its words behind its squares, in
units.
"""

APART = 3.0
"""Yarns of this contrast keep apart in black print, too: as parts of pictures must (WCAG 2.2, 1.4.11)."""

KEY_SQUARE = 20
"""A square beside words of a page's size, in pixels."""


@dataclass(frozen=True, slots=True)
class Squares:
    """The picture for right hands and for left; the key for a page, where it is read at the size of the words
    around it; and for print, in parts, each with its size in millimetres. labels: of its rows.
    """

    right: Figure
    left: Figure
    key: tuple[KeyEntry, ...]
    printed: tuple[Figure, ...]
    labels: Sequence[str]


def squares(work: PatternWork, name: str, said: Mapping[str, str]) -> Squares | None:
    """The grid of a piece; None where no row of it is worked from one.

    said: what each sign of the grid means, in the reader's words.
    """
    picture = _picture(work, name, said)
    if picture is None:
        return None
    title = f"{work.pattern.pieces[name].title or name}: picture in squares"
    way = "bottom up" if picture.upwards else "top down"
    alt = (
        f"The picture in squares, {picture.wide} wide and {picture.high} high; {picture.word}s "
        f"{picture.labels[0]} to {picture.labels[-1]} run from the {way}."
    )
    lines = _said(picture)
    return Squares(
        _on_a_page(picture, title, alt, False),
        _on_a_page(picture, title, alt, True),
        (
            *(KeyEntry(_alone(sign), sign.said, sign.said) for sign in picture.signs.values()),
            *(KeyEntry("", line, line) for line in lines),
        ),
        tuple(_printed(picture, title, alt)),
        picture.labels,
    )


def _picture(work: PatternWork, name: str, said: Mapping[str, str]) -> Picture | None:
    piece = work.piece(name)
    grid = work.pattern.pieces[name].grid
    worked = [one.plan for one in piece.rounds if one.plan.by_rule == "grid"] if piece is not None else []
    if grid is None or not worked:
        return None
    return Picture(
        grid.rows,
        _signs(work, grid, said),
        [plan.label for plan in worked if plan.entry == worked[0].entry],
        worked[0].word,
        grid.from_.endswith("right"),
        grid.from_.startswith("bottom"),
        work.pattern.pieces[name].worked == "rows",
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


def _said(picture: Picture) -> list[str]:
    """What else a reader must know."""
    lines = [f"A {picture.word}'s number stands where the {picture.word} begins."]
    return [*lines, "A number in a square: so many alike, up to here."] if picture.counts else lines


def _alone(sign: Sign) -> str:
    """A square of the key by itself."""
    sketch = Sketch()
    one_square(sketch, (0.0, 0.0), SQUARE, sign)
    return sketch.bare(KEY_SQUARE)


def _on_a_page(picture: Picture, title: str, alt: str, left_handed: bool) -> Figure:
    sketch = Sketch(left_handed)
    draw_part(sketch, picture, Part(0, 0, picture.wide, picture.high), SQUARE, NUMBER)
    low = sketch.box[3]
    with sketch.group('class="chart-key"'):
        _key(sketch, picture, 0.0, WORDS, WIDEST_MM)
    return sketch.figure(title, alt, MARGIN, key_from=low)


def _key(sketch: Sketch, picture: Picture, left: float, words: float, wide: float) -> None:
    """What its squares and numbers mean, below it. words: their size; wide: room for them."""
    top = sketch.box[3] + BELOW
    for sign, rows in _key_lines(picture, words, wide):
        if sign is not None:
            one_square(sketch, (left, top), words, sign)
        indent = words + BEFORE_WORDS if sign is not None else 0.0
        for row in rows:
            sketch.words((left + indent, top + words * 0.85), row, "start", words)
            top += words * LINE


def _key_lines(picture: Picture, words: float, wide: float) -> Iterator[tuple[Sign | None, list[str]]]:
    """Each sign with the rows of its words, then what else must be said."""
    for sign in picture.signs.values():
        yield sign, _rows(sign.said, words, wide - words - BEFORE_WORDS)
    for line in _said(picture):
        yield None, _rows(line, words, wide)


def _rows(text: str, size: float, wide: float) -> list[str]:
    """Words in rows that have room."""
    rows: list[str] = []
    for word in text.split():
        longer = f"{rows[-1]} {word}" if rows else word
        if rows and room_for(longer, size) <= wide:
            rows[-1] = longer
        else:
            rows.append(word)
    return rows


# ---- in print --------------------------------------------------------------------------------------


def _printed(picture: Picture, title: str, alt: str) -> Iterator[Figure]:
    """As large as a page has room for, up to the size on a screen: whole, or in parts of about one size whose
    overlap is marked. The first part is where the first row begins.
    """
    narrow = picture.wide * AT_EASE_MM <= _room_across(picture, NUMBER_MM, MARGIN_MM)
    paper = MARGIN_MM if narrow else WIDEST_MM
    told = paper - 2 * MARGIN - BESIDE - room_for("000", NUMBER_MM)
    rows = sum(len(rows) for _, rows in _key_lines(picture, WORDS_MM, told))
    wide = _room_across(picture, NUMBER_MM, paper)
    high = TALLEST_MM - 2 * MARGIN - BESIDE - NUMBER - BELOW - rows * WORDS_MM * LINE
    side = min(wide / picture.wide, high / picture.high, SQUARE)
    if side < LEAST_MM:
        side = max(min(wide / picture.wide, AT_EASE_MM), LEAST_MM)
    across, down = _cut(picture.wide, wide / side), _cut(picture.high, high / side)
    widest, highest = (max(end - start for start, end in found) for found in (across, down))
    side = min(wide / widest, high / highest, SQUARE)
    size = max(min(side * 0.9, NUMBER), NUMBER_MM)
    side = min(side, _room_across(picture, size, paper) / widest)
    for top, bottom in down[::-1] if picture.upwards else down:
        for left, right in across[::-1] if picture.at_right else across:
            sketch = Sketch()
            draw_part(sketch, picture, Part(left, top, right, bottom), side, size)
            _key(sketch, picture, left * side, WORDS_MM, told)
            yield sketch.figure(title, alt, MARGIN)


def _room_across(picture: Picture, size: float, paper: float) -> float:
    """What numbers of this size leave for squares on so many millimetres of paper."""
    return paper - 2 * (max(room_for(label, size) for label in picture.labels) + BESIDE + MARGIN)


def _cut(many: int, most: float) -> Sequence[tuple[int, int]]:
    """So many squares in stretches of no more than `most`, about as long as each other, which overlap."""
    most = int(most + 1e-6)
    if many <= most:
        return [(0, many)]
    parts = ceil((many - OVERLAP) / (most - OVERLAP))
    begins = [round(at * (many - OVERLAP) / parts) for at in range(parts + 1)]
    return [(start, end + OVERLAP) for start, end in pairwise(begins)]
