"""The demo's leaflets, set out once for all tests that read them: with every height it takes seconds each."""

from functools import cache
from pathlib import Path

from loopleaf.publish.leaflet import leaflets
from loopleaf.publish.leaflet_parts import Leaflet, Terms
from loopleaf.publish.settings import Settings
from loopleaf.review import check

DOCS = Path(__file__).resolve().parents[2] / "patterns"
SLUGS = sorted(path.stem for path in DOCS.glob("*.yml"))
SETTINGS = Settings(contact="ask@example.org")


@cache
def _both(slug: str) -> dict[Terms, Leaflet]:
    file = DOCS / f"{slug}.yml"
    return leaflets(check(file.read_bytes(), file.name), SETTINGS)


def leaf_of(slug: str, terms: Terms = "US") -> Leaflet:
    return _both(slug)[terms]
