"""The shelf of finished booklets: one that is there already is not printed again.

A booklet is kept under a key of everything that goes into it: the HTML (with its styles and drawings), the
fonts, the pictures, the code that prints, and the versions of the libraries below. What its printing had to
say is kept beside it, so that a second build says it too.
"""

import hashlib
import os
import re
import tempfile
import time
from collections.abc import Iterable, Sequence
from concurrent.futures import Executor
from dataclasses import dataclass
from functools import cache as remembered
from html import unescape
from importlib.metadata import version
from pathlib import Path
from urllib.parse import unquote

from .. import __version__
from .addresses import booklet_file
from .booklet import Assets, BookletFailed, Printed
from .booklet_press import Order, print_all
from .leaflet_parts import Terms
from .overrides import overrides

LIBRARIES = ("weasyprint", "pydyf", "fonttools", "pyphen", "pillow", "tinycss2", "tinyhtml5")
"""What has a say in a PDF's bytes."""
KEPT_DAYS = 60
"""A booklet that no build has asked for in so many days is taken off the shelf."""


@dataclass(frozen=True, slots=True)
class BookletJob:
    """One booklet to be made. paper: `a4` or `letter`. html: from `booklet_html`."""

    slug: str
    terms: Terms
    paper: str
    html: str
    assets: Assets

    @property
    def key(self) -> str:
        """Its path in the site, by which the results name it."""
        return booklet_file(self.slug, self.terms, self.paper)


@dataclass(frozen=True, slots=True)
class Remark:
    """Something to say about one booklet, in a sentence."""

    key: str
    text: str


@dataclass(frozen=True, slots=True)
class Booklets:
    """What `make_booklets` gives. paths: key -> finished PDF on the shelf. remarks: warnings. failures:
    booklets that could not be made. rendered: the keys printed in this call, the others lay there already.
    """

    paths: dict[str, Path]
    remarks: tuple[Remark, ...] = ()
    failures: tuple[Remark, ...] = ()
    rendered: tuple[str, ...] = ()


def make_booklets(jobs: Sequence[BookletJob], cache: Path, executor: Executor | None = None) -> Booklets:
    """All booklets of a collection, from the shelf in the folder `cache` or printed and put there.

    executor: any `concurrent.futures.Executor` to print with; without one, processes are started where
    several booklets are missing. Raises BookletsUnavailable where one is missing and WeasyPrint can't be
    loaded.
    """
    cache.mkdir(parents=True, exist_ok=True)
    places = [cache / f"{content_key(job)}.pdf" for job in jobs]
    missing = [(job, place) for job, place in zip(jobs, places, strict=True) if not place.is_file()]
    outcomes = print_all([Order(job.html, job.assets) for job, _ in missing], executor) if missing else []
    failures = []
    for (job, place), outcome in zip(missing, outcomes, strict=True):
        if isinstance(outcome, BookletFailed):
            failures.append(Remark(job.key, str(outcome)))
        else:
            _put(place, outcome)
    made = [(job.key, place) for job, place in zip(jobs, places, strict=True) if place.is_file()]
    remarks = tuple(Remark(key, text) for key, place in made for text in _remarks(place))
    _tidy(cache, [place for _, place in made])
    rendered = tuple(job.key for job, place in missing if place.is_file())
    return Booklets(dict(made), remarks, tuple(failures), rendered)


def content_key(job: BookletJob) -> str:
    """A name for all that the booklet's bytes depend on."""
    digest = hashlib.sha256()
    for part in (_edition(), job.html.encode(), *_pictures(job)):
        digest.update(b"%d:" % len(part))
        digest.update(part)
    return digest.hexdigest()


def _pictures(job: BookletJob) -> Iterable[bytes]:
    """The content of each picture that the HTML shows; nothing for one that isn't there: printing says so."""
    folder = job.assets.pictures
    for address in sorted(set(re.findall(r'src="pictures/([^"]+)"', job.html))):
        file = None if folder is None else folder / unquote(unescape(address))
        yield file.read_bytes() if file is not None and file.is_file() else b""


@remembered
def _edition() -> bytes:
    """What all booklets of one run share: versions, the code that prints, the fonts."""
    versions = [f"{library} {version(library)}" for library in LIBRARIES] + [f"loopleaf {__version__}"]
    here = Path(__file__).parent
    files = sorted(here.glob("booklet*.py")) + sorted(overrides("fonts").iterdir())
    digest = hashlib.sha256("\n".join(versions).encode())
    for file in files:
        digest.update(file.name.encode() + b"\0" + hashlib.sha256(file.read_bytes()).digest())
    return digest.digest()


def _put(place: Path, printed: Printed) -> None:
    """Remarks first, then the PDF: where the PDF is, both are whole."""
    if printed.remarks:
        _write_aside(place.with_suffix(".txt"), "\n".join(printed.remarks).encode())
    _write_aside(place, printed.pdf)


def _write_aside(place: Path, content: bytes) -> None:
    """Written beside its place and moved into it: nobody ever sees half a file."""
    handle, name = tempfile.mkstemp(dir=place.parent, suffix=".part")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
        Path(name).replace(place)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def _remarks(place: Path) -> list[str]:
    beside = place.with_suffix(".txt")
    return beside.read_text(encoding="utf-8").splitlines() if beside.is_file() else []


def _tidy(cache: Path, asked_for: Sequence[Path]) -> None:
    """Marks what was asked for as used today, and takes away what long wasn't."""
    for place in asked_for:
        os.utime(place)
    too_old = time.time() - KEPT_DAYS * 24 * 3600
    for place in cache.glob("*.pdf"):
        if place.stat().st_mtime < too_old:
            place.unlink()
            place.with_suffix(".txt").unlink(missing_ok=True)
