"""The demo's patterns, worked and set out once for all tests: with every height it takes seconds each.

What was worked is kept for the other workers of the same run, as a build keeps it for the next build.
"""

import fcntl
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path

from loopleaf.publish.kept import Worked, key_of, put, take
from loopleaf.publish.leaflet_parts import Leaflet, Terms
from loopleaf.publish.settings import Settings
from loopleaf.publish.workshop import work
from tests.shelf import shelf

DOCS = Path(__file__).resolve().parents[2] / "patterns"
SLUGS = sorted(path.stem for path in DOCS.glob("*.yml"))
SETTINGS = Settings(
    collection="A small collection",
    contact="ask@example.org",
    papers=("a4",),
    site_url="https://patterns.example.org/",
)


def leaf_of(slug: str, terms: Terms = "US") -> Leaflet:
    return worked(slug).leaflets[terms]


@cache
def worked(slug: str) -> Worked:
    """The pattern as a build works it, by this worker or another one; it comes back as it was."""
    file = DOCS / f"{slug}.yml"
    key = key_of(file.name, file.read_bytes(), SETTINGS)
    folder = shelf()
    with _alone(folder / f"{slug}.lock"):
        found = take(folder, key)
        if found is None:
            found = work(file.name, file.read_bytes(), SETTINGS)
            put(folder, key, found)
            assert take(folder, key) == found, f"{slug} doesn't come back as it was kept"
    return found


@contextmanager
def _alone(lock: Path) -> Iterator[None]:
    """Meanwhile no other worker is here; what a worker held is free again when it ends, however it ends."""
    with lock.open("w") as file:
        fcntl.flock(file, fcntl.LOCK_EX)
        yield
