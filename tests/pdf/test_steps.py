"""Step by step at the back: drawings side by side stand on one line, and their sentences begin on one."""

from pathlib import Path

import pytest

from loopleaf.publish.booklet import Assets, print_booklet
from loopleaf.publish.booklet_html import booklet_html
from loopleaf.publish.how_to import how_to
from tests.demo.leaflets import leaf_of
from tests.pdf.reading import heights, pages

DOCS = Path(__file__).resolve().parents[2] / "patterns"


@pytest.mark.parametrize(
    ("slug", "first", "words"),
    [
        ("harbour-square", "Chains joined to a ring", ("Make", "Draw", "For", "Go")),
        ("lantern-pouch", "Threading a cord", ("Fasten", "Go", "Go")),
    ],
)
def test_sentences_of_a_technique_begin_on_one_line(
    slug: str, first: str, words: tuple[str, ...], tmp_path: Path
) -> None:
    pdf = print_booklet(booklet_html(leaf_of(slug), "a4", "", how_to("US", tmp_path)), Assets(DOCS)).pdf
    page = next(at for at, text in enumerate(pages(pdf), 1) if first in text and words[0] in text)
    found = heights(pdf, page)
    title = next(top for word, top, _ in found if word == first.split()[0])
    below = [(word, top) for word, top, _ in found if top > title + 20]
    line = next(top for word, top in below if word == words[0])
    begun = [word for word, top in below if abs(top - line) < 1.0 and word in words]
    assert sorted(begun) == sorted(words), "in whatever order a reader takes the columns"
