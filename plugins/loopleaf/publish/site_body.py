"""The site as a whole: which pages there are, where they stand, and the body and frame of each."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from jinja2 import Environment
from mkdocs.structure.files import Files
from mkdocs.utils import get_relative_url

from .addresses import heights_file, page_source
from .glossary import Part, glossary
from .glossary_tables import lookup_tables
from .how_to import HowTo, how_to, used
from .kept import Worked
from .leaflet_parts import Terms
from .settings import Settings
from .site_booklets import booklet_links
from .site_looking import drawings_html, signs_html, steps_html
from .site_pages import (
    LANGUAGES,
    Href,
    Later,
    Link,
    Shelved,
    Switch,
    findings_html,
    glossary_html,
    headings,
    heights_text,
    pattern_html,
    second,
    shelf_html,
)
from .site_shelf import shelved
from .site_sources import Generated, glossary_source, own_source, shelf_source
from .words import words
from .workshop import BOTH

LOOKING = ("steps", "signs", "drawings")

SHELF_MARK = "<!-- patterns -->"
"""Where the shelf goes in an author's own first page; without it, at the page's end."""


@dataclass(frozen=True, slots=True)
class Body:
    """A page's HTML with marks for what comes later, its language, and its contents.

    contents: as MkDocs takes them; None leaves them as they are.
    """

    html: str
    lang: str
    later: Later
    contents: list[Any] | None


class Site:
    """The pages of one build."""

    def __init__(
        self,
        pages: Sequence[Generated],
        patterns: Sequence[Worked],
        settings: Settings,
        booklets: set[str],
        env: Environment,
        files: Files,
        keep: Path,
    ) -> None:
        self.pages = {page.source: page for page in pages}
        self.published = [worked for worked in patterns if worked.leaflets]
        self.settings = settings
        self.booklets = booklets
        self.env = env
        self.files = files
        self.keep = keep
        self.techniques = {terms: self._techniques(terms) for terms in BOTH}
        self.glossaries: dict[Terms, tuple[Part, ...]] = {
            terms: glossary([worked.leaflets[terms] for worked in self.published]) for terms in BOTH
        }
        self.entries = {
            terms: {entry.anchor for part in parts for entry in part.entries}
            for terms, parts in self.glossaries.items()
        }

    def url(self, source: str) -> str:
        """A source's address from the site's root, "" for the first page; a path without a source is its
        own.
        """
        file = self.files.get_file_from_path(source)
        if file is None:
            return source
        return "" if file.url in (".", "./") else file.url

    def body(self, source: str, written: str) -> Body:
        """A generated page's body. written: what the author wrote on it, for the first page."""
        page = self.pages[source]
        href = self._href(source)
        later = Later(href)
        switch = Switch(page.terms, href(page.twin))
        html = {
            "pattern": self._pattern,
            "findings": self._findings,
            "shelf": self._shelf,
            "glossary": self._glossary,
            "steps": self._steps,
            "signs": self._signs,
            "drawings": self._drawings,
        }[page.kind](page, switch, href, later)
        contents = None
        if page.kind == "shelf":
            html = _with_shelf(written, html, page.title)
        else:
            inner = [{"level": 2, "id": at, "name": name, "children": []} for at, name in headings(html)]
            anchor = "title" if page.kind == "pattern" else page.kind
            contents = [{"level": 1, "id": anchor, "name": page.title, "children": inner}]
        return Body(html, LANGUAGES[page.terms], later, contents)

    def frame(self, source: str) -> dict[str, Any]:
        """What the templates around a page's body use, for pages of the author's too."""
        page = self.pages.get(source)
        default = self.settings.terms
        if page is None:
            return {"terms": default, "other": "", "twins": {}, "languages": [], "second": None}
        twins = {}
        if page.terms != default:
            for own in (shelf_source, glossary_source):
                twins[self.url(own(default, default))] = self.url(own(page.terms, default))
            for kind in LOOKING:
                here, there = (own_source(kind, terms, default) for terms in (default, page.terms))
                twins[self.url(here)] = self.url(there)
        leaflet = page.worked.leaflets.get(page.terms) if page.worked else None
        href = self._href(source)
        at = {page.terms: source, "UK" if page.terms == "US" else "US": page.twin}
        addresses = [(LANGUAGES[terms], at[terms]) for terms in BOTH] + [("x-default", at[default])]
        root = self.settings.site_url
        languages = [
            {"lang": lang, "href": root + self.url(place) if root else href(place)}
            for lang, place in addresses
        ]
        return {
            "terms": page.terms,
            "other": href(page.twin) if page.kind != "findings" else "",
            "twins": twins,
            "languages": languages,
            "second": second(leaflet.ink) if leaflet else None,
        }

    def _href(self, source: str) -> Href:
        here = self.url(source)
        return lambda path: get_relative_url(self.url(path), here)

    def _pattern(self, page: Generated, switch: Switch, href: Href, later: Later) -> str:
        assert page.worked is not None
        links = booklet_links(page.worked.slug, page.terms, self.settings, self.booklets)
        words_at = href(glossary_source(page.terms, self.settings.terms))
        return pattern_html(
            self.env,
            page.worked.leaflets[page.terms],
            switch,
            [Link(href(link.href), link.name) for link in links],
            lambda anchor: f"{words_at}#{anchor}" if anchor in self.entries[page.terms] else "",
            [
                Link(f"{href(own_source('steps', page.terms, self.settings.terms))}#{one.anchor}", one.title)
                for one in used(self.techniques[page.terms], page.worked.leaflets[page.terms].techniques)
            ],
            later,
            [
                Link(href(source), one.name or words(page.terms)["all_sizes"])
                for one in page.worked.leaflets[page.terms].size_pages
                if (source := page_source(one.slug, page.terms)) in self.pages
            ],
        )

    def heights(self) -> Iterator[tuple[str, str]]:
        """What pattern pages say at other heights: path and text of a file for each page that has any."""
        for source, page in self.pages.items():
            leaflet = page.worked.leaflets.get(page.terms) if page.worked else None
            if leaflet is not None and leaflet.heights is not None:
                href = self._href(source)
                text = heights_text(self.env, leaflet, href(page.twin), Later(href))
                yield heights_file(leaflet.slug, page.terms), text

    def _findings(self, page: Generated, switch: Switch, href: Href, later: Later) -> str:
        assert page.worked is not None
        return findings_html(self.env, page.title, page.worked.findings)

    def _shelf(self, page: Generated, switch: Switch, href: Href, later: Later) -> str:
        items: list[Shelved] = shelved(
            [worked.leaflets[page.terms] for worked in self.published],
            lambda slug: href(page_source(slug, page.terms)),
        )
        return shelf_html(self.env, items, switch, later)

    def _glossary(self, page: Generated, switch: Switch, href: Href, later: Later) -> str:
        steps_at = href(own_source("steps", page.terms, self.settings.terms))
        shown = {
            entry: f"{steps_at}#{one.anchor}" for one in self.techniques[page.terms] for entry in one.entries
        }
        also = [(kind, href(own_source(kind, page.terms, self.settings.terms))) for kind in LOOKING]
        return glossary_html(
            self.env,
            self.glossaries[page.terms],
            switch,
            lambda slug: href(page_source(slug, page.terms)),
            shown,
            also if self.published else [],
            lookup_tables(page.terms) if self.published else (),
        )

    def _techniques(self, terms: Terms) -> tuple[HowTo, ...]:
        """Those that the published patterns use."""
        keys = {key for worked in self.published for key in worked.leaflets[terms].techniques}
        return used(how_to(terms, self.keep), keys) if keys else ()

    def _steps(self, page: Generated, switch: Switch, href: Href, later: Later) -> str:
        leaflets = [worked.leaflets[page.terms] for worked in self.published]
        return steps_html(
            self.env,
            self.techniques[page.terms],
            lambda key: [one for one in leaflets if key in one.techniques],
            switch,
            lambda slug: href(page_source(slug, page.terms)),
            later,
        )

    def _signs(self, page: Generated, switch: Switch, href: Href, later: Later) -> str:
        return signs_html(self.env, switch, self.keep)

    def _drawings(self, page: Generated, switch: Switch, href: Href, later: Later) -> str:
        leaflets = [worked.leaflets[page.terms] for worked in self.published]
        return drawings_html(
            self.env, leaflets, switch, lambda slug: href(page_source(slug, page.terms)), later
        )


def _with_shelf(written: str, shelf: str, title: str) -> str:
    """The shelf in its place on the author's page, or below a title where there is no such page."""
    if SHELF_MARK in written:
        return written.replace(SHELF_MARK, shelf, 1)
    return (written or f"<h1>{title}</h1>\n") + shelf
