"""Booklets in a whole build: published with the site, kept for the next, and never a reason for no site."""

import logging
from pathlib import Path

import pytest
from mkdocs.exceptions import Abort

from loopleaf.publish import booklet_shelf, site
from loopleaf.publish.booklet import BookletFailed, BookletsUnavailable
from tests.pdf.reading import opened
from tests.publish.small_site import COASTER, SmallSite

NAMES = {f"coaster-{terms}-{paper}.pdf" for terms in ("us", "uk") for paper in ("a4", "letter")}


def small(folder: Path) -> SmallSite:
    return SmallSite(folder, {"coaster.yml": COASTER}, booklets=True)


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> SmallSite:
    made = small(tmp_path_factory.mktemp("built"))
    made.build()
    return made


def test_both_terms_and_papers_are_published_and_a_second_build_prints_none(built, monkeypatch):
    first = {path.name: path.read_bytes() for path in (built.html / "booklets").iterdir()}
    assert set(first) == NAMES
    assert all(len(opened(pdf).pages) >= 2 for pdf in first.values())

    def nothing_to_print(*args: object) -> None:
        raise AssertionError("a second build has nothing to print")

    monkeypatch.setattr(booklet_shelf, "print_all", nothing_to_print)
    built.build()
    assert {path.name: path.read_bytes() for path in (built.html / "booklets").iterdir()} == first


def test_each_page_links_to_the_booklets_of_its_own_terms(built):
    for terms, other in (("us", "uk"), ("uk", "us")):
        page = built.page(f"{terms}/coaster/")
        for paper in ("a4", "letter"):
            assert f"booklets/coaster-{terms}-{paper}.pdf" in page
            assert f"booklets/coaster-{other}-{paper}.pdf" not in page


def test_without_the_library_the_site_is_built_and_links_to_no_booklet(tmp_path, monkeypatch, caplog):
    sentence = "No booklets were made, because the library Pango is missing: `x` brings it."

    def unavailable(*args: object) -> None:
        raise BookletsUnavailable(sentence)

    monkeypatch.setattr(site, "make_booklets", unavailable)
    built = small(tmp_path)
    with caplog.at_level(logging.WARNING, logger="mkdocs"):
        built.build()
    said = [record.getMessage() for record in caplog.records if "Pango" in record.getMessage()]
    assert said == [f"loopleaf: {sentence}"]
    assert "booklets/" not in built.page("us/coaster/")


def test_a_booklet_that_can_not_be_printed_is_named_and_fails_the_build_at_its_end(
    tmp_path, monkeypatch, caplog
):
    def all_fail(orders: list[object], executor: object) -> list[BookletFailed]:
        return [BookletFailed("The booklet was not printed: out of ink.") for _ in orders]

    monkeypatch.setattr(booklet_shelf, "print_all", all_fail)
    built = small(tmp_path)
    with pytest.raises(Abort), caplog.at_level(logging.WARNING, logger="mkdocs"):
        built.build()
    said = "\n".join(record.getMessage() for record in caplog.records)
    assert "booklets/coaster-us-a4.pdf: The booklet was not printed: out of ink." in said
    assert "<h1" in built.page("us/coaster/")
    assert "booklets/" not in built.page("us/coaster/")
