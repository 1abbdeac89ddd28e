"""A booklet printed: HTML in, the bytes of a tagged PDF out.

`render` is a plain function of its arguments, so that a worker process can import and call it. WeasyPrint
is imported inside it only: everything else here costs nothing and needs no system library. What the
printing has to say (a glyph that no font holds, a picture that can't be read) comes back as remarks.
"""

import contextlib
import io
import logging
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from .booklet_library import missing_library
from .booklet_remarks import remark
from .overrides import overrides


class BookletsUnavailable(Exception):
    """WeasyPrint or a library below it can't be loaded; the text is a sentence naming it and the command."""


class BookletFailed(Exception):
    """One booklet can't be printed; the text says why, in a sentence."""


@dataclass(frozen=True, slots=True)
class Assets:
    """Where a booklet may read from, besides the package's own fonts.

    pictures: the collection's folder, which `pictures/…` in the HTML stands for; None where it shows none.
    """

    pictures: Path | None = None

    def shelves(self) -> dict[str, Path]:
        """First part of an address in the HTML -> the folder that it stands for."""
        ours = {"fonts": overrides("fonts")}
        return ours if self.pictures is None else {**ours, "pictures": self.pictures}


@dataclass(frozen=True, slots=True)
class Printed:
    """A booklet's PDF, and what there is to say about its printing (one plain sentence each)."""

    pdf: bytes
    remarks: tuple[str, ...] = ()


def render(html: str, assets: Assets) -> bytes:
    """The booklet's PDF alone; see `print_booklet`."""
    return print_booklet(html, assets).pdf


def print_booklet(html: str, assets: Assets) -> Printed:
    """Print one booklet as PDF/UA-1; the same input gives the same bytes.

    Raises BookletsUnavailable where WeasyPrint can't be loaded, and BookletFailed where this document
    can't be printed: it asks for something outside its folders, or WeasyPrint gives up on it.
    """
    weasyprint = load_weasyprint()
    from weasyprint.urls import FatalURLFetchingError

    from .booklet_fetch import ROOT, Shelves
    from .booklet_tags import finish_tags

    with _remarks() as remarks:
        try:
            document = weasyprint.HTML(string=html, base_url=ROOT, url_fetcher=Shelves(assets.shelves()))
            pdf: bytes = document.write_pdf(pdf_variant="pdf/ua-1", finisher=finish_tags)
        except FatalURLFetchingError as refused:
            reason = refused.__cause__ or refused
            raise BookletFailed(f"The booklet was not printed: {reason}") from refused
        except Exception as trouble:
            # WeasyPrint meets what it didn't expect with exceptions of many kinds; none may end the build.
            raise BookletFailed(
                f"The booklet could not be printed: {trouble or type(trouble).__name__}."
            ) from trouble
    return Printed(pdf, tuple(dict.fromkeys(remarks)))


def load_weasyprint() -> Any:
    """The module WeasyPrint, imported (1 s the first time); raises BookletsUnavailable where that fails."""
    try:
        # On failure WeasyPrint prints a paragraph of its own before it raises.
        with contextlib.redirect_stdout(io.StringIO()):
            import weasyprint
    except (ImportError, OSError) as trouble:
        raise BookletsUnavailable(missing_library(trouble)) from trouble
    return weasyprint


class _Collector(logging.Handler):
    """Keeps what warnings and errors say, a sentence each."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.texts: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.texts.append(remark(record.getMessage()))


@contextlib.contextmanager
def _remarks() -> Iterator[list[str]]:
    """What WeasyPrint warns of meanwhile; kept here and not passed on, for it would be said twice."""
    logger = logging.getLogger("weasyprint")
    collector = _Collector()
    before = logger.propagate
    logger.addHandler(collector)
    logger.propagate = False
    try:
        yield collector.texts
    finally:
        logger.removeHandler(collector)
        logger.propagate = before
