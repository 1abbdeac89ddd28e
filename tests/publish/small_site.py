"""A small collection in a folder of its own, built as MkDocs builds it."""

import shutil
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Literal

from mkdocs.commands.build import build
from mkdocs.config import load_config

from loopleaf.publish.site import LoopleafPlugin
from tests.yaml_text import written_yaml

ROOT = Path(__file__).resolve().parents[2]

COASTER = """\
title: Coaster
designer: A. Maker
summary: A small round to set a cup on.
terms: US
level: basic
version: 1.0.0
published: 2026-01-02
licence: CC0-1.0
materials:
  yarns:
    A: {weight: 4, name: slate, colour: "#44525c", fibre: cotton, weighed: 5 g, ball: {grams: 50, metres: 85}}
  hook: 5 mm
  notions: [tapestry needle]
gauge: {stitch: sc, stitches: 14, rows: 15, over: 10 cm, blocked: no}
finished size: {across: 4 cm}
turning chains: {sc: does not count}
care: Machine wash.
pieces:
  coaster:
    title: Coaster
    yarn: A
    worked: joined rounds
    start: magic ring
    rounds:
      - {round: 1, work: "ch 1, 6 sc in ring, join", count: 6}
      - {round: 2, work: "ch 1, 2 sc in each st around, join", count: 12}
      - {round: 3, work: "ch 1, (sc in next st, 2 sc in next st) x 6, join, fasten off", count: 18}
finishing:
  - text: Weave in the ends.
"""
WRONG = COASTER.replace("count: 12", "count: 13").replace("title: Coaster", "title: Wrong coaster", 1)


class SmallSite:
    """files: path below the collection -> text, or a demo pattern's path where the text is None."""

    def __init__(self, folder: Path, files: Mapping[str, str | None], **options: Any) -> None:
        self.folder = folder
        self.docs = folder / "patterns"
        self.html = folder / "site"
        for name, text in files.items():
            path = self.docs / name
            path.parent.mkdir(parents=True, exist_ok=True)
            if text is None:
                shutil.copy(ROOT / "patterns" / name, path)
            else:
                path.write_text(text, encoding="utf-8")
        self.settings: dict[str, Any] = {
            "site_name": "A small collection",
            "site_url": "https://patterns.example.org/",
            "docs_dir": "patterns",
            "theme": {"name": "material"},
            "plugins": ["search", {"loopleaf": {"booklets": False, **options}}],
            "markdown_extensions": ["toc", "tables"],
        }

    def build(
        self, command: Literal["build", "serve"] = "build", plugin: LoopleafPlugin | None = None, **more: Any
    ) -> LoopleafPlugin:
        """Build it, as `mkdocs build` or one rebuild of `mkdocs serve` does.

        plugin: the one of the build before, to go on with, as serving does. more: settings of mkdocs.yml.
        """
        config_file = self.folder / "mkdocs.yml"
        config_file.write_text(written_yaml({**self.settings, **more}), encoding="utf-8")
        with config_file.open("rb") as opened:
            config = load_config(opened, site_dir=str(self.html), strict=bool(more.get("strict")))
        if plugin is None:
            config.plugins.on_startup(command=command, dirty=False)
        else:
            fresh = config.plugins["loopleaf"]
            assert isinstance(fresh, LoopleafPlugin)
            fresh.serving, fresh.workshop = plugin.serving, plugin.workshop
        build(config)
        made = config.plugins["loopleaf"]
        assert isinstance(made, LoopleafPlugin)
        return made

    def page(self, address: str) -> str:
        """The HTML at an address that ends with a slash (or is empty)."""
        return (self.html / address / "index.html").read_text(encoding="utf-8")
