"""The yardstick for the site: the same pages as ready-made Markdown, built by plain MkDocs, same theme.

Each page that Loopleaf built is turned back into Markdown (headings, paragraphs, lists, tables, pictures), so
both builds have the same number of pages, the same words, the same navigation and the same search.
"""

import re
import shutil
from pathlib import Path
from typing import Any

import yaml
from lxml import etree, html  # type: ignore[import-untyped]

FEATURES = ("theme", "markdown_extensions", "site_name", "site_url", "site_description", "copyright", "nav")
"""Settings that both builds share."""


def make_plain(project: Path, built: Path, into: Path) -> Path:
    """Writes a project of Markdown pages from a built site; returns its mkdocs.yml.

    project: the folder of the collection's mkdocs.yml. built: its site. Pages that no navigation lists are
    left out of it here too.
    """
    settings = yaml.safe_load((project / "mkdocs.yml").read_text(encoding="utf-8"))
    docs = into / "docs"
    listed = {str(path) for entry in settings.get("nav", []) for path in entry.values()}
    unlisted = []
    for page in sorted(built.rglob("index.html")):
        place = page.parent.relative_to(built)
        name = f"{place}.md" if f"{place}.md" in listed else f"{place}/index.md" if place.name else "index.md"
        if name not in listed:
            unlisted.append(name)
        target = docs / name
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(markdown(page.read_text(encoding="utf-8"), target), encoding="utf-8")
    plain = {key: settings[key] for key in FEATURES if key in settings}
    plain |= {
        "docs_dir": "docs",
        "plugins": ["search"],
        "not_in_nav": "\n".join(f"/{name}" for name in unlisted),
    }
    plain["theme"] = {**plain["theme"], "font": False}
    target = into / "mkdocs.yml"
    target.write_text(yaml.safe_dump(plain, sort_keys=False), encoding="utf-8")
    return target


def markdown(page: str, target: Path) -> str:
    """A built page's article as Markdown; its drawings are written as files beside it."""
    document = html.fromstring(page)
    (article,) = document.xpath("//article")
    lines: list[str] = []
    drawings = 0
    for element in article.iter():
        tag = element.tag if isinstance(element.tag, str) else ""
        if tag == "svg" and not element.xpath("ancestor::svg"):
            drawings += 1
            file = target.with_name(f"{target.stem}-{drawings}.svg")
            file.write_bytes(etree.tostring(element, with_tail=False))
            lines.append(f"![A drawing]({file.name})")
        elif re.fullmatch("h[1-6]", tag):
            lines.append(f"{'#' * int(tag[1])} {words(element)}")
        elif tag == "pre":
            lines.append(f"```yaml\n{''.join(element.itertext()).strip()}\n```")
        elif tag == "table":
            lines.append(table(element))
        elif tag in {"li", "dt", "dd"} and not element.xpath("ancestor::table"):
            lines.append(f"- {words(element)}")
        elif tag == "p" and not element.xpath(
            "ancestor::li | ancestor::dd | ancestor::table | ancestor::pre"
        ):
            lines.append(words(element))
    return "\n\n".join(line for line in lines if line.strip()) + "\n"


def words(element: Any) -> str:
    """The element's text on one line, signs of Markdown made plain."""
    text = " ".join("".join(element.xpath(".//text()[not(ancestor::*[local-name()='svg'])]")).split())
    return re.sub(r"([\\`*_\[\]<>|])", r"\\\1", text)


def table(element: Any) -> str:
    rows = [[words(cell) for cell in row.xpath("./th | ./td")] for row in element.iter("tr")]
    wide = max(len(row) for row in rows)
    rows = [row + [""] * (wide - len(row)) for row in rows]
    written = ["| " + " | ".join(row) + " |" for row in rows]
    return "\n".join([written[0], "|" + " --- |" * wide, *written[1:]])


def copies(project: Path, into: Path, times: int) -> None:
    """The collection with each of its patterns so many times, under numbered titles, booklets off."""
    shutil.copytree(project / "patterns", into / "patterns")
    settings = (project / "mkdocs.yml").read_text(encoding="utf-8")
    settings = re.sub(r"booklets: \w+", "booklets: false", settings)
    (into / "mkdocs.yml").write_text(settings, encoding="utf-8")
    for pattern in sorted((into / "patterns").glob("*.yml")):
        text = pattern.read_text(encoding="utf-8")
        for number in range(2, times + 1):
            copy = re.sub(r"(?m)^(title: .*)$", rf"\1 {number}", text, count=1)
            pattern.with_name(f"{pattern.stem}-{number}.yml").write_text(copy, encoding="utf-8")
