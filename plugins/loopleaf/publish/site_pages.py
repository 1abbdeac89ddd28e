"""The site's pages as HTML: leaflets set in the templates of `theme_overrides/site/loopleaf/`.

Plain values in, text out; MkDocs isn't needed. Large drawings are left as marks in the HTML and put in at
the very end (`Later.fill`), for whatever reads the page in between would read every line of them.
"""

import json
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from html import unescape
from itertools import groupby
from typing import Any
from urllib.parse import quote

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup, escape

from .addresses import heights_file
from .drawing import Drawing
from .glossary import Part
from .ink import DARK_PAPER, PAPER, second_ink
from .leaflet_parts import Heading, Leaflet, Picture, Round, Table, Telling, Terms
from .leaflet_tables import tables_by_part
from .told_sides import set_told
from .typesetting import set_amounts, set_count, set_line
from .words import words

Item = Heading | Telling | Round
Href = Callable[[str], str]
"""A path among the site's sources (`us/glossary.md`, `pouch.jpg`, `booklets/x.pdf`) -> its address as seen
from a page.
"""

LANGUAGES: dict[Terms, str] = {"US": "en-US", "UK": "en-GB"}


@dataclass(frozen=True, slots=True)
class Link:
    """A link: where to, and what it is called."""

    href: str
    name: str


@dataclass(frozen=True, slots=True)
class Second:
    """The second ink on either paper."""

    paper: str
    dark: str


@dataclass(frozen=True, slots=True)
class Shelved:
    """One piece on the shelf. scale: its width on the shelf, as a share of the place it has (0 to 1)."""

    leaflet: Leaflet
    href: str
    facts: tuple[str, ...]
    second: Second
    scale: float


@dataclass(frozen=True, slots=True)
class Switch:
    """The terms of a page, and the address of the same page in the other terms."""

    terms: Terms
    other: str


@dataclass(slots=True)
class Later:
    """What is put into a page at the very end, past everything that reads the page tag by tag (the search).

    href: for the author's picture files. Until then a drawing is a mark, and rounds are their bare words.
    """

    href: Href
    drawings: list[str] = field(default_factory=list)
    parts: list[str] = field(default_factory=list)

    def path(self, file: str) -> str:
        """The address of a file of ours."""
        return quote(self.href(file), safe="/.-_~")

    def show(self, picture: Picture | Drawing) -> Markup:
        """An author's picture as `<img>`, a drawing as a mark."""
        if picture.file:
            return Markup('<img src="{}" alt="{}" loading="lazy">').format(
                self.path(picture.file), picture.alt
            )
        self.drawings.append(drawing_for_both(picture))
        return Markup('<span data-drawing="{}"></span>').format(len(self.drawings) - 1)

    def later(self, caller: Callable[[], str]) -> Markup:
        """Keeps what stands between `{% call … %}` and `{% endcall %}`, and leaves its words for now."""
        part = caller()
        self.parts.append(part)
        return Markup('<p data-later="{}">{}</p>').format(len(self.parts) - 1, Markup(part).striptags())

    def with_parts(self, html: str) -> str:
        """The page with its parts, drawings still marks."""
        return re.sub(r'<p data-later="(\d+)">[^<]*</p>', lambda mark: self.parts[int(mark[1])], html)

    def fill(self, html: str) -> str:
        """The whole page."""
        return re.sub(
            r'<span data-drawing="(\d+)"></span>',
            lambda mark: self.drawings[int(mark[1])],
            self.with_parts(html),
        )


def drawing_for_both(picture: Picture | Drawing) -> str:
    """A drawing that stands in the page; a left-hander's, which has no file of its own, is kept beside it."""
    if not picture.left or (isinstance(picture, Drawing) and picture.left_file):
        return picture.svg
    return f"{picture.svg}<template data-leaf-left>{picture.left}</template>"


def second(colour: str) -> Second | None:
    """A yarn's colour as ink on either paper; None where there is no colour."""
    return Second(second_ink(colour, PAPER), second_ink(colour, DARK_PAPER)) if colour else None


def templates(folders: Sequence[str]) -> Environment:
    """The templates, looked for in these folders in order, so that an author's own file can take one's
    place.
    """
    made = Environment(
        loader=FileSystemLoader(folders),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.filters.update(
        line=set_line,
        amounts=set_amounts,
        told_line=partial(set_told, set_words=set_line),
        told_amounts=partial(set_told, set_words=set_amounts),
        count_set=set_count,
        runs=_runs,
        parted=_parted,
        linked=_linked,
        sentence=_sentence,
        breakable=_breakable,
    )
    return made


def pattern_html(
    env: Environment,
    leaflet: Leaflet,
    switch: Switch,
    booklets: Sequence[Link],
    glossary: Callable[[str], str],
    steps: Sequence[Link],
    later: Later,
    sizes: Sequence[Link] = (),
) -> str:
    """A pattern's page. steps: its techniques, drawn step by step.

    glossary: a glossary entry's anchor -> its address, "" where it has no entry."""
    return env.get_template("loopleaf/pattern.html").render(
        leaflet=leaflet,
        loopleaf=switch,
        other=switch.other,
        booklets=booklets,
        glossary=glossary,
        steps=steps,
        sizes=sizes,
        show=later.show,
        later=later.later,
        heights=later.path(heights_file(leaflet.slug, leaflet.terms)) if leaflet.heights else "",
        path=later.path,
    )


def heights_text(env: Environment, leaflet: Leaflet, other: str, later: Later) -> str:
    """What the page says at each height on offer, as JSON: by rounds more, by part of the page, in HTML.

    A file of its own beside the page, read when a reader asks for another height.
    """
    parts: Any = env.get_template("loopleaf/facts.html").module
    rounds: Any = env.get_template("loopleaf/rounds.html").module

    def at_once(caller: Callable[[], str]) -> Markup:
        return Markup(caller())

    said: dict[str, dict[str, str]] = {}
    written = tables_by_part(leaflet.tables)
    for one in leaflet.heights.settings if leaflet.heights else ():
        if (then := one.changed) is None:
            continue
        found = {"facts": parts.fact_entries(then.facts), "sizes": parts.size_lines(leaflet.made, then.sizes)}
        found |= {f"yarn-{yarn.letter}": parts.yarn_entry(yarn) for yarn in then.yarns}
        found["amounts"] = escape(then.yarn_note)
        found |= {
            part: parts.table_text(table)
            for part, table in tables_by_part(then.tables).items()
            if table != written.get(part)
        }
        found["notes"] = parts.note_lines(then.notes)
        for piece in then.pieces:
            found[f"about-{piece.name}"] = escape(" ".join(piece.about))
            found[f"piece-{piece.name}"] = rounds.piece_items(piece, leaflet, later.show, other, at_once)
            found |= {
                f"drawn-{piece.name}-{one.kind}": Markup(drawing_for_both(one))
                for one in piece.drawings
                if not one.file
            }
            found |= {
                f"{one.kind}-{piece.name}": rounds.chart_figure(one, piece, leaflet.words, later.path)
                for one in piece.drawings
                if one.file
            }
        for at, step in enumerate(then.finishing, start=1):
            found[f"finishing-{at}"] = set_told(step.text, set_amounts)
            if step.picture is not None and step.picture.svg:
                found[f"drawn-finishing-{at}"] = Markup(drawing_for_both(step.picture))
        if then.picture is not None:
            found["picture"] = rounds.sized_picture(then.picture, later.path)
        said[str(one.more)] = {part: str(html).strip() for part, html in found.items()}
    return json.dumps(said, ensure_ascii=False, indent=0)


def shelf_html(env: Environment, items: Sequence[Shelved], switch: Switch, later: Later) -> str:
    """The collection as a shelf."""
    return env.get_template("loopleaf/shelf.html").render(
        items=items, loopleaf=switch, lang=LANGUAGES[switch.terms], show=later.show
    )


def glossary_html(
    env: Environment,
    parts: Sequence[Part],
    switch: Switch,
    pattern: Href,
    steps: Mapping[str, str],
    also: Sequence[tuple[str, str]],
    tables: Sequence[Table] = (),
) -> str:
    """The glossary. pattern: a pattern's slug -> the address of its page in these terms. steps: an entry's
    anchor -> where it is drawn step by step. also: other pages to look things up, by word and address.
    """
    return env.get_template("loopleaf/glossary.html").render(
        steps=steps,
        also=also,
        parts=parts,
        tables=tables,
        loopleaf=switch,
        lang=LANGUAGES[switch.terms],
        w=words(switch.terms),
        pattern=pattern,
    )


def findings_html(env: Environment, title: str, findings: Sequence[object]) -> str:
    """While serving: what keeps a pattern from being published."""
    return env.get_template("loopleaf/findings.html").render(title=title, findings=findings, w=words("US"))


def headings(html: str) -> list[tuple[str, str]]:
    """Anchor and text of each section of a page, for its contents and for the search."""
    found = re.findall(r'<h2 id="([^"]+)">(.*?)</h2>', html, re.DOTALL)
    return [(anchor, unescape(re.sub(r"<[^>]+>", " ", text)).strip()) for anchor, text in found]


def _runs(piece: object) -> Iterator[tuple[str, list[Item]]]:
    """A piece's items by kind; neighbouring rounds stand in one list."""
    kinds = {Heading: "heading", Telling: "telling", Round: "rounds"}
    items: tuple[Item, ...] = piece.items  # type: ignore[attr-defined]
    for kind, run in groupby(items, key=lambda item: kinds[type(item)]):
        if kind == "rounds":
            yield kind, list(run)
        else:
            yield from ((kind, [item]) for item in run)


def _parted(items: Sequence[Heading | Telling]) -> list[tuple[Heading | None, list[Telling]]]:
    """Steps under their headings, None for those before the first."""
    parts: list[tuple[Heading | None, list[Telling]]] = [(None, [])]
    for item in items:
        if isinstance(item, Heading):
            parts.append((item, []))
        else:
            parts[-1][1].append(item)
    return [part for part in parts if any(part)]


def _linked(text: str) -> Markup:
    """An address as a link; anything else as it is."""
    if re.fullmatch(r"https?://\S+", text):
        return Markup('<a href="{}">{}</a>').format(text, re.sub(r"^https?://", "", text).rstrip("/"))
    if re.fullmatch(r"[^\s@]+@[^\s@]+\.[^\s@]+", text):
        return Markup('<a href="mailto:{0}">{0}</a>').format(text)
    return escape(text)


def _sentence(text: str) -> str:
    return text[:1].upper() + text[1:]


def _breakable(number: str) -> Markup:
    """`120–128` may part behind its dash where the margin is narrow."""
    return Markup("–<wbr>").join(number.split("–"))
