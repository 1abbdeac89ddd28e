"""Where pages and booklets stand in the site: one place, so that links and files agree."""

from .leaflet_parts import Terms


def page_source(slug: str, terms: Terms) -> str:
    """The generated page's path among the sources: `us/lantern-pouch.md`."""
    return f"{terms.lower()}/{slug}.md"


def booklet_file(slug: str, terms: Terms, paper: str) -> str:
    """A booklet's path in the site; paper is `a4` or `letter`: `booklets/lantern-pouch-us-a4.pdf`."""
    return f"booklets/{slug}-{terms.lower()}-{paper}.pdf"
