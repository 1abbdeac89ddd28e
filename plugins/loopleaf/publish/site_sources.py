"""The pages that the plugin adds to the site's sources, before MkDocs builds them."""

from dataclasses import dataclass
from typing import Literal

import yaml
from markupsafe import escape

from .addresses import page_source
from .kept import Worked
from .leaflet_parts import Terms
from .site_pages import LANGUAGES
from .words import words
from .workshop import BOTH


@dataclass(frozen=True, slots=True)
class Generated:
    """A page to be added. source: its path among the sources; twin: of the same page in the other terms.

    worked: of a pattern's page, None else. default: in the terms that the collection leads to.
    """

    kind: Literal["pattern", "findings", "shelf", "glossary", "steps", "signs", "drawings"]
    source: str
    twin: str
    terms: Terms
    title: str
    default: bool
    worked: Worked | None = None
    summary: str = ""

    def text(self) -> str:
        """The page's source: front matter and a title. The body never passes through Markdown."""
        about: dict[str, object] = {
            "title": str(escape(self.title)),
            "template": "loopleaf.html",
            "lang": LANGUAGES[self.terms],
        }
        if self.summary:
            about["description"] = str(escape(self.summary))
        if not self.default or self.kind == "findings":
            about["search"] = {"exclude": True}
        front = yaml.safe_dump(about, allow_unicode=True, sort_keys=True)
        return f"---\n{front}---\n"


def shelf_source(terms: Terms, default: Terms) -> str:
    """The collection's page: the site's first page in the default terms, a page of its own in the others."""
    return "index.md" if terms == default else f"{terms.lower()}/index.md"


def glossary_source(terms: Terms, default: Terms) -> str:
    """The glossary's page in these terms."""
    return "glossary.md" if terms == default else f"{terms.lower()}/glossary.md"


def own_source(kind: str, terms: Terms, default: Terms) -> str:
    """Where another of the collection's own pages stands in these terms: `steps.md`, `uk/steps.md`."""
    return f"{kind}.md" if terms == default else f"{terms.lower()}/{kind}.md"


def generated(patterns: list[Worked], default: Terms, collection: str, serving: bool) -> list[Generated]:
    """All pages to be added. A pattern with an error has none, except while serving, where its findings are
    shown.
    """
    other: Terms = "UK" if default == "US" else "US"
    pages: list[Generated] = []
    slugs = {worked.slug for worked in patterns}
    for worked in patterns:
        if not worked.leaflets and not serving:
            continue
        for terms in BOTH:
            away: Terms = "UK" if terms == "US" else "US"
            pages += [
                Generated(
                    "pattern" if one.leaflets else "findings",
                    page_source(one.slug, terms),
                    page_source(one.slug, away),
                    terms,
                    one.leaflets[terms].title if one.leaflets else one.title,
                    terms == default and one is worked,  # a size alone isn't found beside all of them
                    one,
                    one.leaflets[terms].summary if one.leaflets else "",
                )
                for one in worked.pages
                if one is worked or one.slug not in slugs
            ]
    for terms, away in ((default, other), (other, default)):
        shelf, glossary = shelf_source(terms, default), glossary_source(terms, default)
        title = words(terms)["glossary"]
        is_default = terms == default
        pages += [
            Generated("shelf", shelf, shelf_source(away, default), terms, collection, is_default),
            Generated("glossary", glossary, glossary_source(away, default), terms, title, is_default),
        ]
        looking: tuple[Literal["steps", "signs", "drawings"], ...] = ("steps", "signs", "drawings")
        for kind in looking if any(worked.leaflets for worked in patterns) else ():
            source, twin = own_source(kind, terms, default), own_source(kind, away, default)
            pages.append(Generated(kind, source, twin, terms, words(terms)[kind], is_default))
    return pages
