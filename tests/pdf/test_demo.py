"""The demo's booklets, all of them: clean prints that say, round by round, what the pages say."""

import re
from typing import Any

import pytest
from lxml import html  # type: ignore[import-untyped]

from loopleaf.publish.booklet import Assets
from loopleaf.publish.booklet_html import LARGE_MM, PAPERS, booklet_html, charts_at_the_back, is_large
from loopleaf.publish.booklet_shelf import BookletJob, Booklets, make_booklets
from loopleaf.publish.drawing import Drawing
from loopleaf.publish.leaflet_parts import Leaflet, Terms
from loopleaf.publish.overrides import overrides
from loopleaf.publish.print_chart import parts
from loopleaf.publish.site_pages import Later, Switch, pattern_html, templates
from tests.demo.counts import PATTERNS as COUNTED
from tests.demo.leaflets import DOCS, leaf_of
from tests.demo.leaflets import SLUGS as PATTERNS
from tests.pdf.hairlines import THINNEST, strokes
from tests.pdf.reading import elements, heights, opened, pages, squeezed
from tests.pdf.test_words import assert_rounds_in_order

ON_LETTER = ["ebb-scarf", "harbour-square", "sandbank-seal", "sea-lavender-doily"]
"""Printing takes long: the US booklets of these (long, with large charts) show what another paper changes."""
BOTH: tuple[Terms, Terms] = ("US", "UK")
EVERY = [
    (slug, terms, paper)
    for slug in PATTERNS
    for terms in BOTH
    for paper in PAPERS
    if paper == "a4" or (terms == "US" and slug in ON_LETTER)
]


def job(slug: str, terms: Terms, paper: str) -> BookletJob:
    address = f"https://patterns.example.org/{terms.lower()}/{slug}/"
    return BookletJob(slug, terms, paper, booklet_html(leaf_of(slug, terms), paper, address), Assets(DOCS))


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Booklets:
    return make_booklets([job(*one) for one in EVERY], tmp_path_factory.mktemp("shelf"))


def page_rounds(slug: str, terms: Terms) -> list[tuple[str, str, str]]:
    """(number, words, count) of each round as the pattern's page has them, in order."""
    env = templates([str(overrides("site"))])
    switch = Switch(terms, "../other/")
    later = Later(lambda path: path)
    body = later.fill(pattern_html(env, leaf_of(slug, terms), switch, [], lambda anchor: "", [], later))
    found = []
    for one in html.fromstring(body).xpath("//*[@data-leaf-round]"):
        for heard in one.xpath(".//*[@class='leaf-heard']"):
            heard.drop_tree()
        found.append((_text(one, "number"), _text(one, "text"), _text(one, "count")))
    return found


def _text(one: Any, name: str) -> str:
    return squeezed("".join(one.xpath(f".//*[@class='leaf-round__{name}']//text()")))


def test_every_pattern_of_the_demo_has_all_its_booklets_printed_without_a_remark(made):
    assert set(PATTERNS) == set(COUNTED)
    assert (made.failures, made.remarks) == ((), ())
    assert list(made.paths) == [job(*one).key for one in EVERY] == list(made.rendered)


@pytest.mark.parametrize(("slug", "terms", "paper"), EVERY)
def test_the_booklet_has_every_round_of_the_page_in_its_words_and_with_its_count(made, slug, terms, paper):
    pdf = made.paths[f"booklets/{slug}-{terms.lower()}-{paper}.pdf"].read_bytes()
    assert_rounds_in_order(leaf_of(slug, terms), pdf)
    book = " ".join(pages(pdf))
    rounds = page_rounds(slug, terms)
    assert len(rounds) == sum(len(piece.rounds) for piece in leaf_of(slug, terms).pieces) > 0
    for number, words, count in rounds:
        assert squeezed(f"{number} {words} {count}") in book


@pytest.mark.parametrize("slug", ON_LETTER)
def test_both_papers_hold_the_same_words(made, slug):
    books = [made.paths[f"booklets/{slug}-us-{paper}.pdf"].read_bytes() for paper in PAPERS]
    on_a4, on_letter = (set(re.sub("- ?", "", " ".join(pages(book))).split()) for book in books)
    assert {word for word in on_a4 ^ on_letter if word.isalpha()} <= {"Letter"}


@pytest.mark.parametrize(("slug", "terms", "paper"), EVERY)
def test_the_cover_shows_the_piece_and_says_what_it_is(made, slug, terms, paper):
    pdf = made.paths[f"booklets/{slug}-{terms.lower()}-{paper}.pdf"].read_bytes()
    figure = next(element for element in elements(pdf) if element.kind == "Figure")
    assert figure.raw.Pg.objgen == opened(pdf).pages[0].obj.objgen
    first = pages(pdf)[0]
    leaf = leaf_of(slug, terms)
    for said in (leaf.title, f"{terms} terms", leaf.version, f"/{slug}/", leaf.contact):
        assert said in first


@pytest.mark.parametrize("slug", PATTERNS)
def test_no_word_is_smaller_than_six_points_and_a_half(made, slug):
    """Those in figures, too. Poppler gives a word its font's height: of Leaflet Sans 1.33 of its size."""
    found = heights(made.paths[job(slug, "US", "a4").key].read_bytes())
    assert len(found) > 300
    assert {word for word, top, bottom in found if bottom - top < 6.5 * 1.33 - 0.01} == set()


@pytest.mark.parametrize(("slug", "paper"), [(slug, paper) for slug, terms, paper in EVERY if terms == "US"])
def test_large_charts_stand_at_the_back_where_the_rounds_say(made, slug, paper):
    """With their rounds they would often wait for the next page, and leave a hole in this one."""
    one = leaf_of(slug, "US")
    at_the_back = charts_at_the_back(one)
    book = pages(made.paths[job(slug, "US", paper).key].read_bytes())
    named = [int(page) for text in book for page in re.findall(r"Chart on page (\d+)", text)]
    assert len(named) == len(at_the_back)
    for page, charted in zip(named, at_the_back, strict=True):
        assert f"Chart: {charted.title}" in book[page - 1]
        assert f"Chart on page {page}" not in book[page - 1]
    inside, _, back = booklet_html(one, paper).partition('class="charts"')
    sizes = [part.high_mm for d in drawn(one) if not is_large(d) for part in parts(d.svg)]
    assert inside.count('class="chart"') == len(sizes)
    assert all(high <= LARGE_MM for high in sizes)
    assert back.count('class="chart"') == sum(len(parts(charted.drawing.svg)) for charted in at_the_back)


def drawn(one: Leaflet) -> list[Drawing]:
    return [d for piece in one.pieces for d in piece.drawings if d.kind == "chart"]


@pytest.mark.parametrize("slug", PATTERNS)
def test_no_stroke_is_thinner_than_a_hairline(made, slug):
    with opened(made.paths[job(slug, "US", "a4").key].read_bytes()) as book:
        found = [width for page in book.pages for width in strokes(page, page.get("/Resources"))]
    assert len(found) > 30
    assert min(found) >= THINNEST
