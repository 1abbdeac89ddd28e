"""The booklet says what the leaflet says: every round's words and count, every other text, in order."""

import re
from dataclasses import replace

import pytest

from loopleaf.publish.leaflet_parts import Leaflet, Round
from tests.pdf.long_pattern import long_pattern
from tests.pdf.printed import ADDRESS, clean, lantern_pdf, long_pdf
from tests.pdf.reading import pages, squeezed
from tests.publish.lantern import lantern


def round_line(one: Round) -> str:
    """A round as the booklet's text has it: number, side, words, count."""
    degree = "°" if one.worked_out else ""
    return squeezed(f"{one.number} {one.side} {one.text} {one.count}{degree}")


def assert_rounds_in_order(leaflet: Leaflet, pdf: bytes) -> None:
    """Each round's whole line stands unbroken on one page, and they follow each other as in the leaflet."""
    book = pages(pdf)
    page, after = 0, 0
    for piece in leaflet.pieces:
        for one in piece.rounds:
            line = round_line(one)
            while page < len(book) and (found := book[page].find(line, after)) < 0:
                page, after = page + 1, 0
            assert page < len(book), f"{piece.name}, {one.label}: {line!r} doesn't follow the one before it"
            after = found + len(line)


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_every_round_stands_whole_on_one_page_with_its_count(terms, paper):
    assert_rounds_in_order(lantern(terms), lantern_pdf(terms, paper))


def test_rounds_do_not_break_over_the_pages_of_a_long_booklet():
    assert len(pages(long_pdf())) > 8
    assert_rounds_in_order(long_pattern(), long_pdf())


@pytest.mark.parametrize("terms", ["US", "UK"])
def test_everything_else_that_the_leaflet_holds_is_printed(terms):
    leaflet = lantern(terms)
    book = " ".join(pages(lantern_pdf(terms)))
    said = [
        leaflet.title,
        leaflet.designer,
        leaflet.summary,
        leaflet.made,
        *(line for size in leaflet.sizes for line in size.lines),
        *(text for fact in leaflet.facts for text in (fact.label, fact.value)),
        leaflet.level.meaning,
        *leaflet.level.reasons,
        *(text for caution in leaflet.cautions for text in (caution.title, caution.text)),
        *(hook.size for hook in leaflet.hooks),
        *leaflet.notions,
        *leaflet.gauge,
        *(
            text
            for special in leaflet.specials
            for text in (special.name, special.short, special.work, special.text)
        ),
        *leaflet.notes,
        *(text for piece in leaflet.pieces for text in (piece.title, *piece.about, piece.start)),
        *(one.note for piece in leaflet.pieces for one in piece.rounds),
        *(step.text for step in leaflet.finishing),
        *(text for variation in leaflet.variations for text in (variation.title, *variation.lines)),
        leaflet.care,
        leaflet.licence.name if leaflet.licence else "",
        leaflet.licence.meaning if leaflet.licence else "",
        *(text for change in leaflet.changes for text in (change.date, change.version, change.note)),
        *leaflet.foot,
    ]
    without_hyphens = book.replace("- ", "")
    for text in said:
        assert squeezed(text) in book or squeezed(text).replace("- ", "") in without_hyphens


@pytest.mark.parametrize("terms", ["US", "UK"])
def test_yarns_and_abbreviations_stand_in_their_rows(terms):
    leaflet = lantern(terms)
    book = " ".join(pages(lantern_pdf(terms)))
    for yarn in leaflet.yarns:
        assert squeezed(f"{yarn.label} {yarn.weight}, {yarn.fibre} {yarn.amount} {yarn.balls}") in book
    for entry in leaflet.abbreviations:
        assert squeezed(f"{entry.short} {entry.name}") in book


def test_the_first_page_has_address_version_paper_and_where_to_ask():
    first = pages(lantern_pdf("UK", "letter"))[0]
    for text in (
        "Lantern pouch",
        "UK terms",
        "Letter",
        ADDRESS,
        "Version 1.1.0, 5 November 2026",
        "https://example.org/help",
    ):
        assert text in first


def test_the_last_page_has_what_a_maker_looks_up():
    last = pages(lantern_pdf())[-1]
    for text in (
        "Abbreviations",
        "half double crochet",
        "CC BY-NC 4.0",
        "Changes",
        "https://example.org/help",
    ):
        assert text in last


def test_texts_of_the_file_are_text_not_markup():
    leaflet = replace(lantern(), title="Pouch <script>alert(1)</script> & more", notes=("Chain < 5 & turn.",))
    book = " ".join(pages(clean(leaflet, "a4")))
    assert "Pouch <script>alert(1)</script> & more" in book
    assert "Chain < 5 & turn." in book


def test_parted_words_leave_the_hyphens_of_stitches_as_they_are():
    """Searching for `ch-3` must find it, in a booklet that parts words too."""
    leaflet = replace(lantern(), notes=long_pattern().notes)
    book = " ".join(pages(clean(leaflet, "a4")))
    assert re.search(r"\w- \w", book)
    assert "3rd ch of ch-4" in book
    assert "\u2010" not in book
    assert "\u00ad" not in book
