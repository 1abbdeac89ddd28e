"""Which booklets the site has: one a pattern, terminology and paper."""

from collections.abc import Sequence
from pathlib import Path

from .addresses import booklet_file
from .booklet import Assets
from .booklet_html import booklet_html
from .booklet_shelf import BookletJob
from .how_to import how_to
from .kept import Worked
from .leaflet_parts import Terms
from .settings import Settings
from .site_pages import Link
from .words import words
from .workshop import BOTH


def booklet_jobs(
    patterns: Sequence[Worked], settings: Settings, docs: Path, directory_urls: bool, keep: Path
) -> dict[str, BookletJob]:
    """By path in the site: what each booklet of the published patterns is printed from.

    keep: a folder of the collection's own, where the step drawings stay between builds.
    """
    if not settings.booklets:
        return {}
    ending = "/" if directory_urls else ".html"
    techniques = {terms: how_to(terms, keep) for terms in BOTH} if patterns else {}
    jobs = {}
    for worked in (page for pattern in patterns for page in pattern.pages):
        for terms, leaflet in worked.leaflets.items():
            page = f"{terms.lower()}/{worked.slug}{ending}"
            address = f"{settings.site_url}{page}" if settings.site_url else ""
            for paper in settings.papers:
                html = booklet_html(leaflet, paper, address, techniques[terms])
                job = BookletJob(worked.slug, terms, paper, html, Assets(docs))
                jobs[job.key] = job
    return jobs


def booklet_links(slug: str, terms: Terms, settings: Settings, made: set[str]) -> list[Link]:
    """Path and paper of each booklet that a page can offer."""
    files = [(booklet_file(slug, terms, paper), words(terms)[paper]) for paper in settings.papers]
    return [Link(file, name) for file, name in files if file in made]
