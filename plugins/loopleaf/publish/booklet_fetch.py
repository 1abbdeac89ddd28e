"""What a booklet may read: files below its own shelves, and data in the HTML itself. Never the network.

In the HTML a file's address is a shelf's name and a path: `fonts/serif.woff2`, `pictures/pouch.jpg`. The
document's own address is ROOT, so these become `file:///fonts/…`: no path of this machine gets into the
HTML, the PDF or the cache's keys. (Imported by `booklet.print_booklet` only, for it needs WeasyPrint.)
"""

import io
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from urllib.parse import unquote, urlsplit

from fontTools.ttLib import woff2  # type: ignore[import-untyped]
from weasyprint.urls import URLFetcher, URLFetcherResponse

ROOT = "file:///"


class Refused(ValueError):
    """An address that a booklet may not read."""


class _Content(URLFetcherResponse):  # type: ignore[misc]  # no types there
    """A file's content without a path, for WeasyPrint would open a picture's address once more as a path."""

    path = None


class Shelves(URLFetcher):  # type: ignore[misc]  # WeasyPrint has no types
    """Reads `file:///SHELF/PATH` below the folder of that shelf, and `data:`; refuses everything else."""

    def __init__(self, shelves: Mapping[str, Path]) -> None:
        super().__init__(allowed_protocols={"file", "data"}, allow_redirects=False, fail_on_errors=True)
        self._shelves = {name: folder.resolve() for name, folder in shelves.items()}

    def fetch(self, url: str, headers: Mapping[str, str] | None = None) -> URLFetcherResponse:
        """The file's content. Raises Refused outside the shelves, and where there is no such file."""
        kind = url.partition(":")[0].lower()
        if kind == "data":
            return super().fetch(url, headers)
        if kind != "file":
            raise Refused(f"“{url}” is not in the collection, and nothing is fetched from elsewhere.")
        path = self.locate(url)
        try:
            content = _opened(path, path.stat().st_mtime_ns) if path.suffix == ".woff2" else path.read_bytes()
        except OSError:
            raise Refused(f"“{_said(url)}” can't be read.") from None
        return _Content(url, content, {"Content-Type": _content_type(path)})

    def locate(self, url: str) -> Path:
        """The file that an address means, links followed; raises Refused where it lies outside its shelf."""
        parts = urlsplit(url)
        shelf, _, rest = unquote(parts.path).lstrip("/").partition("/")
        folder = self._shelves.get(shelf)
        if folder is None or parts.netloc or not rest or "\0" in rest:
            raise Refused(f"“{_said(url)}” is outside the collection.")
        path = (folder / rest).resolve()
        if not path.is_relative_to(folder):
            raise Refused(f"“{_said(url)}” is outside the collection.")
        return path


def _said(url: str) -> str:
    """A file's address as the HTML has it."""
    return unquote(url.removeprefix(ROOT))


KINDS = {
    ".css": "text/css", ".gif": "image/gif", ".jpeg": "image/jpeg", ".jpg": "image/jpeg", ".png": "image/png",
    ".svg": "image/svg+xml", ".webp": "image/webp", ".woff2": "font/woff2",
}  # fmt: skip


def _content_type(path: Path) -> str:
    """Not left to the machine's own table: the same file is read alike everywhere."""
    return KINDS.get(path.suffix.lower(), "application/octet-stream")


@lru_cache(maxsize=32)
def _opened(font: Path, changed_ns: int) -> bytes:
    """A font unpacked. WeasyPrint would do it anew for every booklet, half of a short one's time."""
    unpacked = io.BytesIO()
    woff2.decompress(io.BytesIO(font.read_bytes()), unpacked)
    return unpacked.getvalue()
