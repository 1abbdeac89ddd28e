"""The demo in real Chromium: a site built once, served from this machine, a fresh reader for each test."""

import functools
import os
import shutil
import threading
import time
from collections.abc import Callable, Iterator
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, sync_playwright

from loopleaf.publish import booklet_shelf
from loopleaf.publish.booklet import Assets, print_booklet
from tests.demo.leaflets import SETTINGS, SLUGS, worked
from tests.publish.small_site import ROOT, SmallSite
from tests.shelf import shelf

QUIET = (
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
)  # fmt: skip


WAIT_S = 600.0
"""Seconds to wait for another worker that builds the site."""
LOOKING = ("steps/", "uk/steps/", "signs/", "drawings/")


class _Silent(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: Any) -> None:
        pass


def _built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of the site: of workers side by side the first builds it, and the others wait for it."""
    base = tmp_path_factory.getbasetemp()
    folder = (base.parent if "PYTEST_XDIST_WORKER" in os.environ else base) / "browser-site"
    done = folder.with_suffix(".done")
    try:
        folder.mkdir()
    except FileExistsError:
        waited = time.monotonic()
        while not done.exists() and time.monotonic() - waited < WAIT_S:
            time.sleep(0.5)
        return folder / "site"
    try:
        names = [
            path.name for path in sorted((ROOT / "patterns").iterdir()) if path.suffix in (".yml", ".md")
        ]
        small = SmallSite(
            folder, dict.fromkeys(names), booklets=True, papers=["a4"], contact=SETTINGS.contact
        )
        small.settings["markdown_extensions"] += ["attr_list", "pymdownx.superfences", "pymdownx.highlight"]
        # What other workers have worked is taken as from the build before; from the last pattern on, so that
        # a worker that begins with the first and this one meet in the middle.
        for slug in reversed(SLUGS):
            worked(slug)
        shutil.copytree(shelf(), folder / ".loopleaf" / "patterns", ignore=shutil.ignore_patterns("*.lock"))
        # Booklets are tried in tests/pdf: here one sheet stands in for each, as printing takes minutes.
        sheet = print_booklet("<html lang='en'><title>A sheet</title><p>One sheet.", Assets(folder))
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(booklet_shelf, "print_all", lambda orders, executor: [sheet] * len(orders))
            assert small.build().workshop.worked == []
    finally:
        done.touch()
    return small.html


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The address of a site with every demo pattern and the demo's own pages."""
    handler = functools.partial(_Silent, directory=str(_built(tmp_path_factory)))
    server = ThreadingHTTPServer(("127.0.0.1", 0), handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()


@pytest.fixture(scope="session")
def browser(chromium: str) -> Iterator[Browser]:
    with sync_playwright() as playwright:
        launched = playwright.chromium.launch(executable_path=chromium, args=list(QUIET))
        yield launched
        launched.close()


@pytest.fixture
def reader(browser: Browser) -> Iterator[Callable[..., BrowserContext]]:
    """Makes readers: `reader(width=390, color_scheme="dark", java_script_enabled=False)`."""
    made: list[BrowserContext] = []

    def make(width: int = 1280, height: int = 900, **options: Any) -> BrowserContext:
        context = browser.new_context(viewport={"width": width, "height": height}, **options)
        made.append(context)
        return context

    yield make
    for context in made:
        context.close()


@pytest.fixture(scope="session")
def addresses(site: str) -> list[str]:
    """One page of each kind, and every pattern's page in one of the terms."""
    slugs = sorted(path.stem for path in Path(ROOT / "patterns").glob("*.yml"))
    patterns = [f"{('us', 'uk')[i % 2]}/{slug}/" for i, slug in enumerate(slugs)]
    return [
        site + page
        for page in ("", "uk/", "glossary/", "uk/glossary/", "reading/", "format/", *LOOKING, *patterns)
    ]
