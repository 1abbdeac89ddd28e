"""The diagram of a piece: one sign a stitch, round by round from the centre or row above row.

Rounds run counter-clockwise and row 1 from right to left, as a right-hander works them; for a left-hander
all is mirrored, only the words are not. What a sign says of itself: `data-kind`, the plain kind in the file's
own terms, whatever its post, loop or form; `data-round`; `data-stitch`, its number in the round, 0 for what
isn't counted. A chain that counts as a stitch is drawn as chains, the last of them with `data-counts-as`.
"""

from collections.abc import Iterator
from html import escape

from ..fabric import PatternWork
from ..measure import Measured, measure
from ..notation import stitch_name
from ..notation.tree import Stitch
from ..trade import Terms
from .canvas import Box, Point, number
from .chart_key import key_of, word
from .chart_places import Places, Rounds, places_of
from .chart_start import draw_start
from .colour import outline_of
from .pen import Pen, Shapes
from .signing import Round, legs_of
from .subject import Subject, main_colour, subject_of

SMALLEST, LARGEST = 5.0, 11.0
"""Height of the rounds' numbers, in units: more in a large diagram, as far as there is room."""

STYLE = (
    "<style>.chart-words{font-family:sans-serif;fill:#22282b;stroke:none}"
    "@media(prefers-color-scheme:dark){.chart-words{fill:#e9e4d9}}</style>"
)


def diagram(
    work: PatternWork, piece: str = "", terms: Terms = "US", left_handed: bool = False,
    measured: Measured | None = None,
) -> str:  # fmt: skip
    """One piece as an SVG, in its first size; all that have rounds, one below the other, where none is named.

    terms: of the words in the key; the marks keep the file's own. "" where there is nothing to draw.
    """
    measured = measured or measure(work)
    shapes = Shapes()
    parts: list[str] = []
    width, height = 0.0, 0.0
    for one in work.pieces:
        subject = subject_of(work, one, measured) if piece in ("", one.name) else None
        if subject is None:
            continue
        body, box = _piece(subject, terms, left_handed, shapes)
        name = escape(one.name, quote=True)
        place = f"translate({number(-box[0])} {number(height - box[1])})"
        parts.append(f'<g data-piece="{name}" transform="{place}">{body}</g>')
        width, height = max(width, box[2] - box[0]), height + box[3] - box[1]
    if not parts:
        return ""
    title = work.pattern.title if not piece else work.pattern.pieces[piece].title or piece
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {number(width)} {number(height)}" role="img" '
        f'fill="none" stroke-width="0.9" stroke-linecap="round" stroke-linejoin="round">'
        f"<title>{escape(title)}, stitch by stitch</title>{STYLE}{shapes.definitions()}"
        f"{''.join(parts)}</svg>"
    )


def _piece(subject: Subject, terms: Terms, left_handed: bool, shapes: Shapes) -> tuple[str, Box]:
    """The signs of a piece, the numbers of its rounds, and the key below; and the box that they fill."""
    pen = Pen(shapes)
    pen.colour(outline_of(main_colour(subject)))
    places = places_of(subject)
    _draw_signs(pen, subject, places)
    left, top, right, bottom = pen.box
    longest = max(right - left, bottom - top)
    size = min(max(SMALLEST, longest / 65), LARGEST)
    numbers: list[str] = []
    for (x, y), text in _numbers(subject, places):
        left, right = min(left, x - size), max(right, x + size)
        top, bottom = min(top, y - size), max(bottom, y + size)
        numbers.append(word(-x if left_handed else x, y + size * 0.36, text, size, "middle"))
    if left_handed:
        left, right = -right, -left
    signs = f'<g transform="scale(-1 1)">{pen.body()}</g>' if left_handed else pen.body()
    key, wide, high = key_of(subject, terms, left_handed, left, bottom, max(SMALLEST, longest / 45), shapes)
    return f"{signs}{''.join(numbers)}{key}", (
        left - 4,
        top - 4,
        max(right, left + wide) + 4,
        bottom + high + 4,
    )


def _draw_signs(pen: Pen, subject: Subject, places: Places) -> None:
    pattern = subject.work.pattern

    def kind_of(kind: str) -> str:
        special = pattern.special_stitches.get(kind)
        return (special.short or kind) if special else stitch_name(Stitch(kind), pattern.terms)

    draw_start(pen, subject, places, kind_of("chain"))
    for at, (work, worked) in enumerate(zip(subject.piece.rounds, subject.worked, strict=True)):
        items = {id(item.thing): item for item in places.lines[at].items}
        legs = legs_of(places, at)
        one = Round(pen, places, at, work.plan.label, kind_of, work.side == "WS", items, legs)
        one.draw(worked, subject)


def _numbers(subject: Subject, places: Places) -> Iterator[tuple[Point, str]]:
    """The number of each round or row, at its start."""
    for at, work in enumerate(subject.piece.rounds):
        tall = places.lines[at].tall
        share = 0.45 if isinstance(places, Rounds) else 0.2
        yield places.before(at, share, tall * (0.5 if at else 0.8)), work.plan.label
