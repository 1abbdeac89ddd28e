"""A booklet's HTML: the leaflet set in the templates of `theme_overrides/booklet/`, for one paper.

The document is whole: styles and drawings are inside it. Fonts and the author's pictures are addressed by
shelf (`fonts/…`, `pictures/…`), which `booklet.Assets` turns into folders.
"""

import re
from base64 import b64encode
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache, partial
from urllib.parse import quote

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from ..draw.squares import MARGIN_MM
from .drawing import Drawing, drawn_size
from .how_to import HowStep, HowTo, used
from .ink import INK, PAPER, second_ink
from .leaflet_parts import Heading, Leaflet, Picture, Round, Telling
from .overrides import overrides
from .print_chart import Part, parts
from .typesetting import set_count, set_line


@dataclass(frozen=True, slots=True)
class Paper:
    """A paper: its name in CSS, its height in millimetres."""

    size: str
    height_mm: float


LARGE_MM = 90.0
"""A chart taller than this stands at the back, where it leaves no hole before it: with the rounds it would
often have to wait for the next page.
"""

PAPERS = {"a4": Paper("A4", 297), "letter": Paper("letter", 279.4)}
"""A4 is 210 × 297 mm (ISO 216), Letter 8.5 × 11 in (ANSI/ASME Y14.1, size A)."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of the contents."""

    text: str
    anchor: str


@dataclass(frozen=True, slots=True)
class Run:
    """Rounds and tellings under one heading of a piece (None: those before its first)."""

    heading: Heading | None
    steps: tuple[Round | Telling, ...]


@dataclass(frozen=True, slots=True)
class Charted:
    """A chart at the back. title: its piece's; anchor: where it stands."""

    title: str
    anchor: str
    drawing: Drawing


def booklet_html(leaflet: Leaflet, paper: str, address: str = "", techniques: Sequence[HowTo] = ()) -> str:
    """The whole document. paper: `a4` or `letter`. address: of the pattern's page on the web, "" without.

    techniques: those that are drawn; the ones that the pattern uses stand at the back, step by step.
    """
    steps = used(techniques, leaflet.techniques)
    ink = second_ink(leaflet.ink, PAPER) if leaflet.ink else INK
    return (
        _templates()
        .get_template("booklet.html")
        .render(
            leaflet=leaflet,
            words=leaflet.words,
            in_terms=leaflet.words["in_terms"].format(terms=leaflet.terms),
            paper=paper,
            sheet=PAPERS[paper],
            address=address,
            second_ink=ink,
            figure=partial(figure, ink=ink),
            chart=partial(chart, ink=ink),
            contents=contents(leaflet, address, bool(steps)),
            steps=steps,
            charts=charts_at_the_back(leaflet),
            credited=[picture for picture in pictures(leaflet) if picture.credit],
        )
    )


def contents(leaflet: Leaflet, address: str, steps: bool = False) -> list[Entry]:
    """What the booklet holds, in its own order: abbreviations stand on the last page, quick to find."""
    words = leaflet.words
    parts = [
        (words["make"], "part-make", bool(leaflet.made or leaflet.sizes)),
        (words["cautions"], "part-cautions", bool(leaflet.cautions)),
        (words["materials"], "part-materials", True),
        (words["gauge"], "part-gauge", bool(leaflet.gauge)),
        (words["special"], "part-special-stitches", bool(leaflet.specials)),
        (words["notes"], "part-notes", bool(leaflet.notes)),
        (words["heights"], "part-heights", leaflet.heights is not None),
        *((piece.title, piece.anchor, True) for piece in leaflet.pieces),
        (words["finishing"], "part-finishing", bool(leaflet.finishing)),
        (words["variations"], "part-variations", bool(leaflet.variations)),
        (words["steps"], "part-steps", steps),
        (words["charts"], "part-charts", bool(charts_at_the_back(leaflet))),
        (words["care"], "part-care", bool(leaflet.care)),
        (words["abbreviations"], "part-abbreviations", bool(leaflet.abbreviations)),
        (words["licence"], "part-licence", bool(leaflet.licence or leaflet.designer)),
        (words["changes"], "part-changes", bool(leaflet.changes)),
        (words["contact"], "part-contact", bool(leaflet.contact or address or leaflet.video)),
    ]
    return [Entry(text, anchor) for text, anchor, present in parts if present]


def pictures(leaflet: Leaflet) -> Iterable[Picture]:
    """Every picture that the booklet shows, in order."""
    items = [item for piece in leaflet.pieces for item in piece.items]
    found = [
        leaflet.picture,
        *(piece.picture for piece in leaflet.pieces),
        *(item.picture for item in (*items, *leaflet.finishing) if not isinstance(item, Heading)),
    ]
    return [picture for picture in found if picture is not None]


def runs(items: Sequence[Heading | Telling | Round]) -> list[Run]:
    """A piece's items, parted at its headings: a list in the PDF ends where a heading stands."""
    parted: list[tuple[Heading | None, list[Round | Telling]]] = [(None, [])]
    for item in items:
        if isinstance(item, Heading):
            parted.append((item, []))
        else:
            parted[-1][1].append(item)
    return [Run(heading, tuple(steps)) for heading, steps in parted if heading or steps]


def figure(picture: Picture | Drawing | HowStep, ink: str = INK) -> Markup:
    """A picture's element. A drawing goes in as data: WeasyPrint sets that twice as fast as one inline.

    ink: the booklet's second, which a drawing's own is replaced by.
    """
    if isinstance(picture, Picture) and picture.file:
        address = f"pictures/{quote(picture.file)}"
    else:
        svg = _SECOND.sub(rf"\g<1>{ink}", picture.svg)
        address = f"data:image/svg+xml;base64,{b64encode(svg.encode()).decode()}"
    return Markup('<img src="{}" alt="{}">').format(address, picture.alt)


_SECOND = re.compile(r'(class="fill-second\b[^>]*? fill="|class="draw-second\b[^>]*? stroke=")#[0-9a-f]{6}')
"""Where a line drawing has its second ink."""


def chart(drawing: Drawing, ink: str = INK) -> list[Markup]:
    """The parts of a chart or a picture in squares, each an element as wide as it is printed."""
    return [
        Markup('<img style="width: {}mm" src="data:image/svg+xml;base64,{}" alt="{}">').format(
            f"{part.wide_mm:.1f}",
            b64encode(_SECOND.sub(rf"\g<1>{ink}", part.svg).encode()).decode(),
            f"{drawing.alt} {part.place}".strip(),
        )
        for part in printed(drawing)
    ]


def printed(drawing: Drawing) -> Sequence[Part]:
    """What is printed of a chart or a picture in squares: all of it, or parts."""
    many = len(drawing.printed)
    return [
        Part(svg, *drawn_size(svg), f"{at} of {many}" if many > 1 else "")
        for at, svg in enumerate(drawing.printed, start=1)
    ] or parts(drawing.svg)


def is_narrow(drawing: Drawing) -> bool:
    """Whether a picture in squares has room in the margin beside its rows."""
    return all(part.wide_mm <= MARGIN_MM + 0.1 for part in printed(drawing))


def is_large(drawing: Drawing) -> bool:
    """Whether a chart takes so much of a page that it stands at the back."""
    return any(part.high_mm > LARGE_MM for part in printed(drawing))


def charts_at_the_back(leaflet: Leaflet) -> list[Charted]:
    """The large charts of all pieces, in order."""
    return [
        Charted(piece.title, f"{drawing.kind}-{piece.anchor}", drawing)
        for piece in leaflet.pieces
        for drawing in piece.drawings
        if is_large(drawing)
        and (drawing.kind == "chart" or (drawing.kind == "squares" and not is_narrow(drawing)))
    ]


def linked(address: str) -> Markup:
    """An address that can be followed on a screen and read on paper; left as text where it is no address."""
    target = f"mailto:{address}" if "@" in address and "/" not in address else address
    if not target.startswith(("https://", "http://", "mailto:")):
        return Markup('<span class="address">{}</span>').format(address)
    return Markup('<a class="address" href="{}">{}</a>').format(target, address.removeprefix("mailto:"))


def listed(things: Sequence[str]) -> str:
    """`shells`, `shells and cords`, `shells, cords and a casing`."""
    return " and ".join(filter(None, [", ".join(things[:-1]), things[-1]]))


def in_a_row(things: Sequence[str]) -> str:
    """`stitch marker, tapestry needle`; with semicolons where one of them holds a comma itself."""
    return ("; " if any("," in thing for thing in things) else ", ").join(things)


@cache
def _templates() -> Environment:
    templates = Environment(
        loader=FileSystemLoader(overrides("booklet")),
        autoescape=True,
        undefined=StrictUndefined,
        auto_reload=False,
    )
    templates.globals.update(
        is_narrow=is_narrow,
        is_large=is_large,
        linked=linked,
        listed=listed,
        kept=set_line,
        count_set=set_count,
        in_a_row=in_a_row,
        runs=runs,
    )
    return templates
