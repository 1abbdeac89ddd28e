"""The chart of a piece: one sign a stitch, round by round from the centre or row above row.

Rounds run counter-clockwise and row 1 from right to left, as a right-hander works them; for a left-hander
all is mirrored, only the words are not. What a sign says of itself: `data-kind`, the plain kind in the file's
own terms, whatever its post, loop or form; `data-round`, which its group says too; and `data-stitch`, its
number in the round, where it is counted: chains between stitches only where the pattern counts them. A chain
that counts as a stitch is drawn as chains, the last of them with `data-counts-as`.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from html import escape

from ..fabric import PatternWork, PieceWork
from ..measure import Measured, measure
from ..notation import stitch_name
from ..notation.tree import Stitch
from ..trade import Terms
from .canvas import Box, number
from .chart_again import drawn_again
from .chart_key import KeyEntry, KeyLine, by_itself, chain_line, drawn_key, key_lines, said, word
from .chart_labels import ARROW_LONG, AS_LONG, Label, box_of, placed
from .chart_larger import Larger, Place, framed, place_of
from .chart_layout import lay_out
from .chart_lines import Layout
from .chart_print import WORDS_MM, printed_scale
from .chart_start import draw_start
from .chart_ways import Passage, ways
from .chart_words import labels, remarks, strokes_of
from .colour import FAINT_ON_DARK, WORDS, WORDS_ON_DARK, ink_on_dark, ink_on_light
from .cord import cord_of, draw_links
from .letters import room_for
from .pen import Pen, ink_name
from .shapes import Shapes
from .signing import Round, down
from .signs import ARROW
from .spike_stems import Passed
from .strokes import STROKE
from .subject import Subject, main_colour, subject_of

SMALLEST, LARGEST = 5.0, 20.0
"""Height of words and numbers, in units: more in a large chart, which is printed small."""

TRIES = 8
"""Larger words make a chart larger, which is then printed smaller: so often, at most, they are set anew."""

COLUMNS = 3
"""The key has so many columns at most: as many as let the chart be printed largest."""

TITLE, TITLE_ABOVE = 1.3, 0.8
"""Of several pieces drawn together each has its title so large, of the height of words, and so far above."""

NARROWEST = 200.0
"""A small piece is drawn in so much room, in units, so that it isn't blown up beside a large one."""


@dataclass(frozen=True, slots=True)
class Drawn:
    """A piece's chart without its words, and its title. inks: each of its colours, and what it is on dark
    paper. body, box: its signs and how far they reach. labels: its numbers and arrows. key: what its signs
    mean; said: what must be said beside, for right and for left. ways: which of its rounds lie where. colour:
    of the key's signs, its only yarn's, or the words' where there are several.
    """

    name: str
    title: str
    colour: str
    inks: Mapping[str, str]
    body: str
    box: Box
    labels: Sequence[Label]
    key: Sequence[KeyLine]
    said: tuple[Sequence[KeyLine], Sequence[KeyLine]]
    ways: Sequence[Passage]


@dataclass(frozen=True, slots=True)
class Chart:
    """Laid out and drawn once, written in either terminology and for either hand."""

    title: str
    pieces: Sequence[Drawn]
    shapes: Shapes

    def svg(self, terms: Terms = "US", left_handed: bool = False) -> str:
        """The chart as SVG text. terms: of the words in the key; the marks keep the file's own.

        Its `data-key-from` says how far down the last key begins: a page can show the chart without it.
        """
        shapes = self.shapes.copy()
        parts: list[str] = []
        width, height, signs = 0.0, 0.0, 0.0
        for one in self.pieces:
            body, box, key = _with_words(one, terms, left_handed, shapes, len(self.pieces) > 1)
            signs = height + key - box[1]
            place = f"translate({number(-box[0])} {number(height - box[1])})"
            parts.append(f'<g data-piece="{escape(one.name, quote=True)}" transform="{place}">{body}</g>')
            width, height = max(width, box[2] - box[0]), height + box[3] - box[1]
        dashed = any("stroke-dasharray" in one.body for one in self.pieces)
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {number(width)} {number(height)}" '
            f'data-key-from="{number(signs)}" role="img" fill="none" stroke-width="{number(STROKE)}" '
            f'stroke-linecap="round" stroke-linejoin="round"><title>{escape(self.title)}, stitch by stitch'
            f"</title>{self._style()}{shapes.definitions(dashed)}{''.join(parts)}</svg>"
        )

    def key(self, terms: Terms = "US") -> tuple[KeyEntry, ...]:
        """The key for a page, where it is read at the size of the words around it."""
        return tuple(
            KeyEntry(by_itself(right, one.inks.get(right.colour, "")), right.words[terms], left.words[terms])
            for one in self.pieces
            for right, left in zip([*one.key, *one.said[0]], [*one.key, *one.said[1]], strict=True)
        )

    def _style(self) -> str:
        """The inks on dark paper; numbers and words take the page's own."""
        inks = dict(ink for one in self.pieces for ink in one.inks.items())
        dark = "".join(f".{ink_name(ink)}{{stroke:{lit};fill:{lit}}}" for ink, lit in inks.items())
        if any("stroke-opacity" in one.body for one in self.pieces):
            dark += f"[stroke-opacity]{{stroke-opacity:{FAINT_ON_DARK};fill-opacity:{FAINT_ON_DARK}}}"
        return (
            "<style>.chart-words{font-family:sans-serif;fill:var(--ink,#22282b);stroke:none}"
            f"@media(prefers-color-scheme:dark){{.chart-words{{fill:var(--ink,#e9e4d9)}}{dark}}}</style>"
        )


def chart_of(
    work: PatternWork, piece: str = "", measured: Measured | None = None, cords: bool = False
) -> Chart | None:
    """The chart of one piece in its first size, of all that have rounds where none is named; None where there
    is nothing to draw. cords: those that are only a chain are drawn too.
    """
    measured = measured or measure(work)
    shapes = Shapes()
    drawn = [
        found
        for one in work.pieces
        if piece in ("", one.name)
        for found in (
            _drawn(work, one, measured, shapes) or (_chain(work, one, measured, shapes) if cords else None),
        )
        if found is not None
    ]
    if not drawn:
        return None
    return Chart(title_of(work, piece) if piece else work.pattern.title, drawn, shapes)


def diagram(
    work: PatternWork, piece: str = "", terms: Terms = "US", left_handed: bool = False,
    measured: Measured | None = None,
) -> str:  # fmt: skip
    """The chart of one piece, or of all one below the other, as SVG; "" where there is nothing to draw."""
    chart = chart_of(work, piece, measured, cords=True)
    return chart.svg(terms, left_handed) if chart is not None else ""


def _drawn(work: PatternWork, piece: PieceWork, measured: Measured, shapes: Shapes) -> Drawn | None:
    subject = subject_of(work, piece, measured)
    if subject is None:
        return None
    layout = lay_out(subject)
    again = drawn_again(subject, layout.lines)
    pen = Pen(shapes, strokes_of(subject))
    _draw_signs(pen, subject, layout, again)
    larger = place_of(layout, pen.box)
    of_several = len(strokes_of(subject)) > 1
    inks = {ink_on_light(colour): ink_on_dark(colour) for colour in subject.colours.values()}
    sides = tuple(list(remarks(subject, layout, bool(again), left)) for left in (False, True))
    if larger is not None:
        for side in sides:
            side.append(said("The framed corner is shown larger in the middle."))
    return Drawn(
        piece.name,
        title_of(work, piece.name),
        WORDS if of_several else ink_on_light(main_colour(subject)),
        inks | {WORDS: WORDS_ON_DARK} if of_several else inks,
        pen.body() + (_shown_larger(larger, shapes, subject, layout) if larger is not None else ""),
        pen.box,
        list(labels(subject, layout)),
        key_lines(subject),
        (sides[0], sides[1]),
        ways(subject, layout),
    )


def _chain(work: PatternWork, piece: PieceWork, measured: Measured, shapes: Shapes) -> Drawn | None:
    """A cord that is only a chain."""
    cord = cord_of(work, piece.name, measured)
    if cord is None:
        return None
    ink, words = ink_on_light(cord.colour), [said(cord.told)]
    pen = Pen(shapes)
    pen.yarn("", ink)
    draw_links(pen, cord, work)
    key = [chain_line(work)]
    inks = {ink: ink_on_dark(cord.colour)}
    title = title_of(work, piece.name)
    return Drawn(piece.name, title, ink, inks, pen.body(), pen.box, [], key, (words, words), [])


def _draw_signs(pen: Pen, subject: Subject, layout: Layout, again: set[int]) -> None:
    pattern = subject.work.pattern

    @cache
    def kind_of(kind: str) -> str:
        special = pattern.special_stitches.get(kind)
        return (special.short or kind) if special else stitch_name(Stitch(kind), pattern.terms)

    first = subject.worked[0].made[0].yarn
    pen.yarn(first, ink_on_light(subject.colours[first]))
    draw_start(pen, subject, layout, kind_of("chain"))
    passed = Passed(layout)
    for at, (work, worked) in enumerate(zip(subject.piece.rounds, subject.worked, strict=True)):
        reverse = work.side == "WS"
        Round(pen, layout, at, work.plan.label, kind_of, reverse, again, passed).draw(worked, subject)
    pen.round, pen.faint = "", False
    for middle, radius, _ in layout.rims:
        pen.ring(down(middle), radius)
    for start, end, _ in layout.sills:
        pen.line(down(start), down(end))


def _shown_larger(place: Place, shapes: Shapes, subject: Subject, layout: Layout) -> str:
    """A part of the chart once more, framed here and there."""
    pen = Larger(shapes, strokes_of(subject), within=place.part)
    _draw_signs(pen, subject, layout, set())
    frames = Pen(shapes)
    frames.yarn("", ink_on_light(main_colour(subject)))
    frames.faint = True
    framed(frames, place.part)
    framed(frames, place.frame)
    return f'{frames.body()}<g transform="{place.transform}">{pen.body()}</g>'


def title_of(work: PatternWork, name: str) -> str:
    """The title of a piece, else its name."""
    return work.pattern.pieces[name].title or name


def _with_words(
    one: Drawn, terms: Terms, left_handed: bool, shapes: Shapes, titled: bool
) -> tuple[str, Box, float]:
    """The signs of a piece, the numbers of its rounds, and the key below; the box that they fill, and where
    in it the key begins. Words are as large as print needs them. titled: its title stands above it.
    """
    size = SMALLEST
    for _ in range(TRIES):
        tried = shapes.copy()
        body, box, key = _in_letters(one, size, terms, left_handed, tried, titled)
        needed = min(WORDS_MM / printed_scale(box[2] - box[0], box[3] - box[1]), LARGEST)
        if size >= needed:
            break
        size = 1.002 * needed
    shapes.take_up(tried)
    return body, box, key


def _in_letters(
    one: Drawn, size: float, terms: Terms, left_handed: bool, shapes: Shapes, titled: bool
) -> tuple[str, Box, float]:
    """The same with letters so high."""
    left, top, right, bottom = one.box
    beside = placed(one.labels, size)
    for reach in (box_of(label, size) for label in beside):
        left, right = min(left, reach[0] - 2), max(right, reach[2] + 2)
        top, bottom = min(top, reach[1] - 2), max(bottom, reach[3] + 2)
    if left_handed:
        left, right = -right, -left
    wider = max(NARROWEST - (right - left), 0.0) / 2
    left, right = left - wider, right + wider
    words: list[str] = []
    ways: list[str] = []
    scale = f" scale({number(size * AS_LONG / ARROW_LONG)})"
    for label in beside:
        x, y = label.middle
        if label.text:
            x = -x if left_handed else x
            words.append(f'<text x="{number(x)}" y="{number(y + size * 0.36)}">{escape(label.text)}</text>')
        else:
            arrow = shapes.name(ARROW, filled=True, turned=label.turned, scale=scale)
            ways.append(f'<use href="#{arrow}" x="{number(x)}" y="{number(y)}"/>')
    drawn = one.body + _words(ways, 'fill="#22282b"')
    signs = f'<g transform="scale(-1 1)">{drawn}</g>' if left_handed else drawn
    title = ""
    if titled:
        title = word(left, top - TITLE_ABOVE * size, one.title, TITLE * size, "start")
        right = max(right, left + room_for(one.title, TITLE * size))
        top -= (TITLE_ABOVE + TITLE) * size
    lines = [*one.key, *one.said[left_handed]]
    key, box = _largest(
        (drawn_key(lines, terms, one.colour, left, bottom, size, shapes, columns), (left, top, right, bottom))
        for columns in range(1, COLUMNS + 1)
    )
    numbers = _words(words, f'font-size="{number(size)}" text-anchor="middle"')
    return f"{signs}{title}{numbers}{key}", box, bottom


def _words(parts: Sequence[str], look: str) -> str:
    """Numbers or arrows in the ink of the words, in a group that says once how they look."""
    return f'<g class="chart-words" {look}>{"".join(parts)}</g>' if parts else ""


def _largest(keys: Iterable[tuple[tuple[str, float, float], Box]]) -> tuple[str, Box]:
    """The first of those keys with which the chart is printed largest, and what all fills. Each has its width
    and height, and the box of what stands above it.
    """
    found: list[tuple[float, str, Box]] = []
    for (key, wide, high), (left, top, right, bottom) in keys:
        box = (left - 4, top - 4, max(right, left + wide) + 4, bottom + high + 4)
        scale = printed_scale(box[2] - box[0], box[3] - box[1])
        if not found or scale > found[0][0]:
            found = [(scale, key, box)]
    return found[0][1:]
