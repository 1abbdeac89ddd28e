"""Pages as printed: paper, fonts, bookmarks, running lines, tables over pages, hyphenation."""

import re
from base64 import b64decode
from dataclasses import replace

import pytest

from loopleaf.publish.booklet_html import figure
from loopleaf.publish.leaflet_parts import Picture
from tests.pdf.long_pattern import long_pattern
from tests.pdf.printed import clean, lantern_html, lantern_pdf, long_pdf
from tests.pdf.reading import bookmarks, heights, opened, pages
from tests.publish.lantern import lantern

MM = 72 / 25.4


@pytest.mark.parametrize(
    ("paper", "width", "height"),
    [("a4", 210 * MM, 297 * MM), ("letter", 8.5 * 72, 11 * 72)],
)
def test_every_page_has_the_size_of_the_paper(paper, width, height):
    """A4: ISO 216; Letter: ANSI/ASME Y14.1, size A."""
    for page in opened(lantern_pdf("US", paper)).pages:
        left, bottom, right, top = (float(edge) for edge in page.mediabox)
        assert right - left == pytest.approx(width, abs=0.1)
        assert top - bottom == pytest.approx(height, abs=0.1)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_cover_fills_its_page_and_stays_clear_of_the_foot(paper):
    words = heights(lantern_pdf("US", paper), 1)
    lowest = max(bottom for word, _, bottom in words if "example.org" in word)
    foot = max(top for word, top, _ in words if word == "terms")
    assert lowest < foot < lowest + 40


def test_all_fonts_are_inside_and_ours():
    found = {}
    for page in opened(lantern_pdf()).pages:
        for font in page.resources.Font.values():
            inner = font.DescendantFonts[0] if "/DescendantFonts" in font else font
            descriptor = inner.FontDescriptor
            found[str(font.BaseFont)] = any(f"/FontFile{kind}" in descriptor for kind in ("", "2", "3"))
            assert "/ToUnicode" in font
    assert len(found) >= 4
    assert all(found.values())
    assert all(re.match(r"/[A-Z]{6}\+Leaflet", name) for name in found), "no font of the machine was used"


def test_bookmarks_lead_to_parts_pieces_and_headings_of_rounds():
    leaflet = lantern()
    marks = bookmarks(lantern_pdf())
    assert marks[0] == (1, "Lantern pouch")
    for piece in leaflet.pieces:
        assert (2, piece.title) in marks
    for heading in ("Base", "Sides", "Casing", "Edge"):
        assert (3, heading) in marks
    assert (2, "Abbreviations") in marks


def test_the_contents_name_the_page_where_each_part_begins():
    book = pages(lantern_pdf())
    contents = book[1]
    for title in ("Pouch", "Moon", "Finishing", "Abbreviations"):
        named = re.search(rf"\b{title} (\d+)", contents)
        assert named, title
        assert title in book[int(named[1]) - 1]


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_terms_and_page_number_stand_in_every_foot(terms, paper):
    book = pages(lantern_pdf(terms, paper))
    assert len(book) >= 4
    for number, text in enumerate(book, start=1):
        assert f"{terms} terms" in text
        assert f"{number} of {len(book)}" in text


def test_the_piece_stands_in_the_head_of_its_pages():
    book = pages(long_pdf())
    inside = [text for text in book if "Row" not in text and "FPdc" in text]
    assert len(inside) > 4
    titles = [piece.title for piece in long_pattern().pieces]
    assert all(any(title in text for title in titles) for text in inside)


def test_a_short_list_of_abbreviations_stands_beside_the_licence():
    words = heights(lantern_pdf(), len(pages(lantern_pdf())))
    top = {word: top for word, top, _ in words if word in ("Abbreviations", "License")}
    assert top["Abbreviations"] == pytest.approx(top["License"], abs=1)


def test_a_table_over_two_pages_repeats_its_heads():
    book = pages(long_pdf())
    held = [text for text in book if re.search(r"st\d+ stitch number", text)]
    assert len(held) == 2
    assert all("Short In full (US terms)" in text for text in held)


def test_long_words_are_parted_by_the_language():
    """`lang` decides: the notes of the long booklet can't be set without parting words."""
    parted = re.findall(r"\w+- \w+", " ".join(pages(long_pdf())))
    assert parted
    assert "circum- stances" in parted or "inter- changeable" in parted or "unpre- dictable" in parted


def test_a_drawing_costs_no_picture_file_and_the_html_names_no_place_of_this_machine():
    html = lantern_html()
    assert "data:image/svg+xml" in html
    assert not re.search(r"""(?:src|href)=["']/|file:|[A-Z]:\\""", html)


def test_second_ink_colours_only_what_black_print_shows_as_well():
    """The second ink is used for the rule under the title and for round numbers: there in black too."""
    html = lantern_html()
    style = html[html.index("<style>") : html.index("</style>")]
    using = [
        rule.split("{")[0].strip().splitlines()[-1] for rule in style.split("}") if "var(--second)" in rule
    ]
    assert sorted(using) == [".cover .rule", ".number"]


def test_a_piece_may_be_called_like_a_part_of_the_booklet():
    """Addresses inside the PDF stay apart: `clean` would see one that stands twice."""
    leaflet = lantern()
    pieces = tuple(
        replace(piece, title=name.title(), anchor=name)
        for piece, name in zip(leaflet.pieces, ("notes", "materials", "contents"), strict=True)
    )
    assert (2, "Contents") in bookmarks(clean(replace(leaflet, pieces=pieces), "a4"))


def test_a_drawing_s_second_ink_is_the_booklet_s():
    svg = (
        '<svg><path class="fill-second draw-ink" fill="#3d5c74" stroke="#22282b"/>'
        '<path class="draw-second" stroke="#3d5c74"/><path fill="#3d5c74"/></svg>'
    )
    source = str(figure(Picture("Squares.", svg=svg), "#8a2c4a"))
    printed = b64decode(source.split("base64,")[1].split('"')[0]).decode()
    assert printed == (
        '<svg><path class="fill-second draw-ink" fill="#8a2c4a" stroke="#22282b"/>'
        '<path class="draw-second" stroke="#8a2c4a"/><path fill="#3d5c74"/></svg>'
    )
