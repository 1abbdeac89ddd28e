"""The MkDocs plugin: patterns in, pages and booklets out.

MkDocs' events stand here and nothing else; what they call works on plain values. What the events
really do, and when, is noted where it isn't obvious.
"""

import os
from pathlib import Path
from typing import Any, Literal

from jinja2 import Environment, FileSystemBytecodeCache
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, event_priority, get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.structure.toc import get_toc

from . import kept, published
from .booklet import BookletsUnavailable
from .booklet_serve import booklets_on_request
from .booklet_shelf import make_booklets
from .how_to import step_files
from .overrides import overrides
from .settings import Settings
from .site_body import Body, Site
from .site_booklets import booklet_jobs
from .site_charts import chart_files
from .site_links import broken
from .site_log import told
from .site_pages import templates
from .site_settings import LoopleafOptions, settings
from .site_sources import Generated, generated
from .workshop import Workshop

log = get_plugin_logger("loopleaf")

ASSETS = "assets/loopleaf"


RULES_SOURCE = "rules.md"
"""The page that findings link to."""


def _rules_text() -> str:
    # Imported where the text must be made: it brings the whole engine with it.
    from ..review import RULES
    from .site_rules import rules_page

    return rules_page(RULES)


def _keep(config: MkDocsConfig) -> Path:
    """The folder of what is kept between builds, beside the settings."""
    return Path(config.config_file_path or config.docs_dir).parent / ".loopleaf"


def _remembering(env: Environment, folder: Path) -> Environment:
    """The same templates; those that an earlier build compiled aren't compiled again."""
    folder.mkdir(parents=True, exist_ok=True)
    env.bytecode_cache = FileSystemBytecodeCache(str(folder))
    return env


class LoopleafPlugin(BasePlugin[LoopleafOptions]):  # type: ignore[no-untyped-call]
    """Works a collection's patterns and publishes those that add up."""

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """MkDocs keeps a plugin's object over rebuilds only where it has this event: the workshop lives
        here.
        """
        self.serving = command == "serve"
        self.workshop = Workshop()

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Puts our templates behind the author's own, and our style before it; nothing comes from
        elsewhere.
        """
        if config.theme.name != "material":
            raise PluginError(
                "Loopleaf's pages are made for the theme `material`: write `theme: {name: material}`."
            )
        ours = str(overrides("site"))
        if ours not in config.theme.dirs:
            config.theme.dirs.insert(1 if config.theme.custom_dir else 0, ours)
        config.theme["font"] = False
        config.extra_css[:0] = [f"{ASSETS}/fonts/fonts.css", f"{ASSETS}/leaflet.css"]
        config.extra_javascript[:0] = [
            f"{ASSETS}/{name}.js" for name in ("place", "chart", "hand", "heights")
        ]
        self.settings: Settings = settings(self.config, config)
        return config

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Takes the pattern files out of the site and puts their pages in."""
        found = [
            file
            for file in files
            if file.src_uri.endswith((".yml", ".yaml")) and file.abs_src_path and file.generated_by is None
        ]
        docs = Path(config.docs_dir)
        keep = _keep(config)
        contents = {file.src_uri: file.content_bytes for file in found}
        worked = self.workshop.work(contents.items(), self.settings, docs, keep / "patterns")
        self.published = keep / "published.json"
        self.patterns = published.compared(worked, published.last(self.published), contents)
        told(log, self.patterns, os.path.relpath(docs))
        for source, defect in self.workshop.defects.items():
            log.error(
                "%s could not be worked (%s). That is a defect of Loopleaf; please report it.", source, defect
            )
        by_source = {file.src_uri: file for file in found}
        for source in (*(worked.source for worked in self.patterns), *self.workshop.defects):
            files.remove(by_source[source])
        self._add_fonts(files, config)
        self._add_charts(files, config)
        self.jobs = booklet_jobs(
            self.patterns, self.settings, docs, config.use_directory_urls, keep / "texts"
        )
        self.cache = keep / "booklets"
        self.unprinted: list[str] = []
        booklets = set(self.jobs) if self.serving else self._add_booklets(files, config)
        pages = generated(self.patterns, self.settings.terms, self.settings.collection, self.serving)
        env = _remembering(templates(config.theme.dirs), keep / "templates")
        self.site = Site(pages, self.patterns, self.settings, booklets, env, files, keep / "texts")
        for path, svg in step_files(self.site.techniques[self.settings.terms]).items():
            files.append(File.generated(config, path, content=svg))
        self.bodies: dict[str, Body] = {}
        for page in pages:
            self._add_page(page, by_source, files, config)
        # Links in these lead from page to page: the pages' addresses must be known.
        for path, text in self.site.heights():
            files.append(File.generated(config, path, content=text))
        if not files.get_file_from_path(RULES_SOURCE):
            text = kept.text(keep / "texts", "rules", _rules_text)
            files.append(
                File.generated(config, RULES_SOURCE, content=text, inclusion=InclusionLevel.NOT_IN_NAV)
            )
        return files

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> Environment:
        """Has the theme's templates compiled once for all builds."""
        return _remembering(env, _keep(config) / "templates")

    def on_page_content(self, html: str, *, page: Page, config: MkDocsConfig, files: Files) -> str:
        """A generated page's body is made here: it never passes through Markdown."""
        source = page.file.src_uri
        if source not in self.site.pages:
            # Without a class the theme puts tables into boxes that scroll sideways and that no key reaches.
            return html.replace("<table>", '<table class="leaf-table">')
        body = self.site.body(source, html)
        self.bodies[source] = body
        if body.contents is not None:
            page.toc = get_toc(body.contents)
        page.meta.setdefault("template", "loopleaf.html")
        page.meta.setdefault("lang", body.lang)
        return body.html

    def on_page_context(self, context: Any, *, page: Page, config: MkDocsConfig, nav: Navigation) -> Any:
        """What the page's frame needs to know: its terms, its twin, its second ink."""
        context["loopleaf"] = self.site.frame(page.file.src_uri)
        return context

    def on_post_page(self, output: str, *, page: Page, config: MkDocsConfig) -> str:
        """Puts the drawings in, past everything that would read them line by line."""
        body = self.bodies.get(page.file.src_uri)
        return body.later.fill(output) if body else output

    @event_priority(-100)
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Checks the links of our pages, and says at the very end what could not be published.

        After all other plugins, so that the search is written first.
        """
        pages = {
            self.site.url(source): body.later.with_parts(body.html) for source, body in self.bodies.items()
        }
        known = {self.site.url(file.src_uri) for file in self.site.files} | set(self.site.booklets)
        for address, link in broken(pages, known):
            log.warning("The page “%s” links to “%s”, which isn't there.", address or "/", link)
        if not self.serving:
            published.keep(self.published, self.patterns, published.last(self.published))
        failed = [worked.source for worked in self.patterns if worked.has_errors]
        failed += self.workshop.defects
        if failed and not self.serving:
            names = ", ".join(failed)
            count = "1 pattern was" if len(failed) == 1 else f"{len(failed)} patterns were"
            raise PluginError(
                f"{count} not published: {names}. The findings stand above; the others are built."
            )
        if self.unprinted:
            raise PluginError(
                f"Not every booklet could be printed: {', '.join(self.unprinted)}. The reasons stand above."
            )

    def on_serve(
        self, server: LiveReloadServer, /, *, config: MkDocsConfig, builder: Any
    ) -> LiveReloadServer:
        """While serving, a booklet is printed when it is asked for."""
        served = server.get_app()
        if served is not None:
            server.set_app(booklets_on_request(served, lambda key: self.jobs.get(key), self.cache))
        return server

    def _add_booklets(self, files: Files, config: MkDocsConfig) -> set[str]:
        """Prints the booklets that aren't on the shelf yet; returns those that there are."""
        if not self.jobs:
            return set()
        try:
            made = make_booklets(list(self.jobs.values()), self.cache)
        except BookletsUnavailable as unavailable:
            log.warning("%s", unavailable)
            return set()
        for remark in made.remarks:
            log.warning("%s: %s", remark.key, remark.text)
        for failure in made.failures:
            log.error("%s: %s", failure.key, failure.text)
            self.unprinted.append(failure.key)
        log.info("%d booklets, %d of them printed now.", len(made.paths), len(made.rendered))
        for key, path in made.paths.items():
            files.append(File.generated(config, key, abs_src_path=str(path)))
        return set(made.paths)

    def _add_charts(self, files: Files, config: MkDocsConfig) -> None:
        for path, svg in chart_files(self.patterns).items():
            files.append(File.generated(config, path, content=svg))

    def _add_fonts(self, files: Files, config: MkDocsConfig) -> None:
        for path in sorted(overrides("fonts").iterdir()):
            if path.suffix in (".woff2", ".css", ".txt"):
                files.append(File.generated(config, f"{ASSETS}/fonts/{path.name}", abs_src_path=str(path)))

    def _add_page(
        self, page: Generated, sources: dict[str, File], files: Files, config: MkDocsConfig
    ) -> None:
        """Adds a page unless the author wrote it. Pattern pages stay off the side navigation, which is what
        makes large sites slow; the collection's own pages stand in it where the author has set out none."""
        if files.get_file_from_path(page.source):
            return
        listed = page.kind in ("shelf", "glossary") and page.default and config.nav is None
        level = InclusionLevel.INCLUDED if listed else InclusionLevel.NOT_IN_NAV
        file = File.generated(config, page.source, content=page.text(), inclusion=level)
        if page.worked:
            file.edit_uri = sources[page.worked.source].edit_uri
        files.append(file)
