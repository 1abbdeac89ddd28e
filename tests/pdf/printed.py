"""Booklets printed once for all tests of this folder."""

from functools import cache

from loopleaf.publish.booklet import Assets, print_booklet
from loopleaf.publish.booklet_html import booklet_html
from loopleaf.publish.leaflet_parts import Leaflet, Terms
from tests.pdf.long_pattern import long_pattern
from tests.publish.lantern import lantern

ADDRESS = "https://patterns.example.org/lantern-pouch/"


def lantern_html(terms: Terms = "US", paper: str = "a4") -> str:
    return booklet_html(lantern(terms), paper, ADDRESS)


@cache
def lantern_pdf(terms: Terms = "US", paper: str = "a4") -> bytes:
    return clean(lantern(terms), paper)


@cache
def long_pdf() -> bytes:
    return clean(long_pattern(), "a4")


def clean(leaflet: Leaflet, paper: str) -> bytes:
    """The booklet's PDF, printed without a single remark."""
    printed = print_booklet(booklet_html(leaflet, paper, ADDRESS), Assets())
    assert printed.remarks == ()
    return printed.pdf
