"""A collection's settings: what stands under the plugin in `mkdocs.yml`, as plain values."""

from dataclasses import dataclass

from .leaflet_parts import CountStyle, Terms


@dataclass(frozen=True, slots=True)
class Settings:
    """collection: its name. terms: those that links without terms lead to. contact: where to ask, if a
    pattern says nothing.

    counts: how a count is printed behind its round: `40`, `(40)` or `40 sts`.

    papers: `a4`, `letter`. site_url: the site's address with a closing slash, "" if it has none.
    """

    collection: str = "Patterns"
    terms: Terms = "US"
    contact: str = ""
    counts: CountStyle = "plain"
    booklets: bool = True
    papers: tuple[str, ...] = ("a4", "letter")
    site_url: str = ""
