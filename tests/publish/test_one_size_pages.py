"""A page and a booklet for each size alone, beside those with all of them."""

import dataclasses
from pathlib import Path

import pytest

from loopleaf.publish import kept
from loopleaf.publish.settings import Settings
from loopleaf.publish.site_booklets import booklet_jobs
from loopleaf.publish.site_sources import generated
from tests.alter.patterns import DEMO
from tests.demo.leaflets import worked


@pytest.fixture(scope="module")
def collar() -> kept.Worked:
    return worked("gull-collar")


def test_pages_in_both_terms_for_each_size(collar: kept.Worked) -> None:
    pages = {one.source: one for one in generated([collar], "US", "Shelf", serving=False)}
    assert "us/gull-collar.md" in pages
    small = [source for source in pages if source.startswith("us/gull-collar-")]
    assert len(small) == 3
    for source in small:
        assert pages[source].twin == source.replace("us/", "uk/")
        assert "exclude" in pages[source].text()
        assert "exclude" not in pages["us/gull-collar.md"].text()


def test_a_size_never_takes_another_patterns_place(collar: kept.Worked) -> None:
    other = dataclasses.replace(collar, slug=collar.alone[0].slug, alone=())
    pages = generated([collar, other], "US", "Shelf", serving=False)
    (there,) = [one for one in pages if one.source == f"us/{other.slug}.md"]
    assert there.worked is other


def test_a_booklet_a_size(collar: kept.Worked, tmp_path: Path) -> None:
    jobs = booklet_jobs([collar], Settings(papers=("a4",)), DEMO, True, tmp_path)
    assert len(jobs) == 2 * 4
    assert {f"booklets/{one.slug}-us-a4.pdf" for one in collar.pages} <= set(jobs)


def test_they_are_kept_with_the_rest(collar: kept.Worked, tmp_path: Path) -> None:
    kept.put(tmp_path, "k", collar)
    assert kept.take(tmp_path, "k") == collar
