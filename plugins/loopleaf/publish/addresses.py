"""Where pages and booklets stand in the site: one place, so that links and files agree."""

from .leaflet_parts import Terms


def page_source(slug: str, terms: Terms) -> str:
    """The generated page's path among the sources: `us/lantern-pouch.md`."""
    return f"{terms.lower()}/{slug}.md"


def chart_file(slug: str, piece: str, terms: Terms, left_handed: bool = False, more: int = 0) -> str:
    """A chart's path: `drawings/lantern-pouch-pouch-us.svg`; `…-us-left.svg` of a left-hander's.

    more: rounds more than written: `heights/lantern-pouch/plus-3-pouch-us.svg`.
    """
    name = f"{piece}-{terms.lower()}{'-left' if left_handed else ''}.svg"
    return f"{_at_height(slug, more)}-{name}" if more else f"drawings/{slug}-{name}"


def picture_file(slug: str, more: int) -> str:
    """The first picture with so many rounds more (below 0, fewer): `heights/lantern-pouch/minus-2.svg`."""
    return f"{_at_height(slug, more)}.svg"


def _at_height(slug: str, more: int) -> str:
    return f"heights/{slug}/{'plus' if more > 0 else 'minus'}-{abs(more)}"


def step_file(key: str, number: int, left_handed: bool = False) -> str:
    """A step drawing's path in the site: `drawings/steps/half-2.svg`, `…-left.svg` for the other hand."""
    return f"drawings/steps/{key}-{number}{'-left' if left_handed else ''}.svg"


def booklet_file(slug: str, terms: Terms, paper: str) -> str:
    """A booklet's path in the site; paper is `a4` or `letter`: `booklets/lantern-pouch-us-a4.pdf`."""
    return f"booklets/{slug}-{terms.lower()}-{paper}.pdf"


def heights_file(slug: str, terms: Terms) -> str:
    """What a page says at other heights: `heights/lantern-pouch-us.json`."""
    return f"heights/{slug}-{terms.lower()}.json"
