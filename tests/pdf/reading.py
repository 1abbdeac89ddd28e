"""Reading a PDF as a reader's tools do: its text page by page, its structure, its page furniture."""

import io
import re
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any

import pikepdf


def squeezed(text: str) -> str:
    """The text with every run of white space as one space: lines may break anywhere."""
    return " ".join(text.split())


def pages(pdf: bytes) -> list[str]:
    """Each page's text in the order it is drawn, running lines included, by Poppler's pdftotext."""
    made = subprocess.run(
        ["pdftotext", "-raw", "-", "-"], input=pdf, capture_output=True, check=True, timeout=60
    )
    return [squeezed(page) for page in made.stdout.decode().split("\f")[:-1]]


def heights(pdf: bytes, page: int = 0) -> list[tuple[str, float, float]]:
    """(word, its top, its bottom) for the words of one page (from 1), or of all, in points from the page's
    top.
    """
    only = ["-f", str(page), "-l", str(page)] if page else []
    made = subprocess.run(
        ["pdftotext", "-bbox", *only, "-", "-"],
        input=pdf, capture_output=True, check=True, timeout=60,
    )  # fmt: skip
    words = re.findall(r'yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">([^<]*)<', made.stdout.decode())
    return [(word, float(top), float(bottom)) for top, bottom, word in words]


@dataclass(frozen=True)
class Element:
    """A structure element: its kind (`H2`), its dictionary, the kinds of those above it, outermost first."""

    kind: str
    raw: Any
    above: tuple[str, ...]


@cache
def opened(pdf: bytes) -> pikepdf.Pdf:
    """The document; kept, for its parts die with it."""
    return pikepdf.open(io.BytesIO(pdf))


def elements(pdf: bytes) -> list[Element]:
    """All structure elements in reading order."""
    return list(_walk(opened(pdf).Root.StructTreeRoot.K, ()))


def _walk(kids: Any, above: tuple[str, ...]) -> Iterator[Element]:
    for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
        if isinstance(kid, pikepdf.Dictionary) and "/S" in kid:
            kind = str(kid.S).removeprefix("/")
            yield Element(kind, kid, above)
            yield from _walk(kid.get("/K", pikepdf.Array()), (*above, kind))


def mark_numbers(element: Element) -> list[int]:
    """The marked stretches of page content that belong to this element itself."""
    kids = element.raw.get("/K", pikepdf.Array())
    return [int(kid) for kid in (kids if isinstance(kids, pikepdf.Array) else [kids]) if isinstance(kid, int)]


def bookmarks(pdf: bytes) -> list[tuple[int, str]]:
    """(depth from 1, title) of each bookmark, in order."""
    with opened(pdf).open_outline() as outline:
        return list(_bookmarks(outline.root, 1))


def _bookmarks(items: list[pikepdf.OutlineItem], depth: int) -> Iterator[tuple[int, str]]:
    for item in items:
        yield depth, str(item.title)
        yield from _bookmarks(item.children, depth + 1)
