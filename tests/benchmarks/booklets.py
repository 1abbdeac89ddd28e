"""Booklets: from YAML to PDF against raw WeasyPrint on the resulting HTML; a second build; processes."""

import tempfile
from collections.abc import Iterator
from concurrent.futures import Executor, Future
from pathlib import Path
from typing import Any

from loopleaf.publish.booklet import Assets, print_booklet
from loopleaf.publish.booklet_html import PAPERS, booklet_html
from loopleaf.publish.booklet_shelf import BookletJob, make_booklets
from loopleaf.publish.leaflet import leaflet
from loopleaf.publish.leaflet_parts import Terms
from loopleaf.publish.settings import Settings
from loopleaf.review import check
from tests.benchmarks.timing import Result, in_turn, seconds

RUNS = 3
BOTH: tuple[Terms, Terms] = ("US", "UK")


class Here(Executor):
    """Does everything at once, in this process: what several processes are compared with."""

    def submit(self, work: Any, /, *args: Any, **kwargs: Any) -> Future[Any]:
        future: Future[Any] = Future()
        future.set_result(work(*args, **kwargs))
        return future


def html_of(pattern: Path, terms: Terms, paper: str) -> str:
    """From the file to the booklet's HTML, as a build does it."""
    checked = check(pattern.read_bytes(), pattern.name)
    return booklet_html(leaflet(checked, terms, Settings()), paper)


def booklet_against_raw(project: Path) -> Iterator[Result]:
    import weasyprint

    docs = project / "patterns"
    patterns = sorted(docs.glob("*.yml"))
    pages = {pattern: html_of(pattern, "US", "a4") for pattern in patterns}
    base = (project / "theme_overrides").as_uri() + "/"

    def ours() -> None:
        for pattern in patterns:
            print_booklet(html_of(pattern, "US", "a4"), Assets(docs))

    def raw() -> None:
        for html in pages.values():
            weasyprint.HTML(string=html, base_url=base).write_pdf(pdf_variant="pdf/ua-1")

    raw()
    ours()
    mine, theirs = in_turn([ours, raw], RUNS)
    because = f"{mine:.1f} s and {theirs:.1f} s for {len(patterns)} booklets"
    yield Result(
        "Booklet: YAML to PDF ÷ raw WeasyPrint on its HTML", mine / theirs, most=1.2, because=because
    )


def second_build_and_processes(project: Path) -> Iterator[Result]:
    docs = project / "patterns"
    jobs = [
        BookletJob(pattern.stem, terms, paper, html_of(pattern, terms, paper), Assets(docs))
        for pattern in sorted(docs.glob("*.yml"))
        for terms in BOTH
        for paper in PAPERS
    ]
    with tempfile.TemporaryDirectory() as name:
        shelves = [Path(name) / "alone", Path(name) / "together"]
        alone = seconds(lambda: make_booklets(jobs, shelves[0], Here()))
        together = seconds(lambda: make_booklets(jobs, shelves[1]))
        again = make_booklets(jobs, shelves[1])
        warm = seconds(lambda: make_booklets(jobs, shelves[1]))
    because = f"{together:.1f} s and {alone:.1f} s for {len(jobs)} booklets"
    yield Result("Booklets: processes ÷ one process", together / alone, because=because)
    yield Result(
        "Booklets printed by a second build", len(again.rendered), most=0, because=f"in {warm:.2f} s"
    )
