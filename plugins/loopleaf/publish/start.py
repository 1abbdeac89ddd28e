"""Starting a pattern or a collection: the commented files that `loopleaf new` and `loopleaf init` write."""

import json
import os
import re
from importlib.resources import files
from pathlib import Path

from ..pattern import schema
from .collection import CONFIG

EXAMPLE = "first-coaster"
SCHEMA = "pattern.schema.json"
"""The schema's file, beside a collection's settings: pattern files point their editor to it."""

_NOT_TEXT = ("yes", "no", "on", "off", "true", "false", "null")
"""Words that YAML takes for something other than text unless they are in quotes."""


class AlreadyThere(Exception):
    """A file would have been written over; the text names it."""


def new_pattern(name: str) -> Path:
    """Write a commented pattern file that checks, titled after its name; returns its path.

    Raises AlreadyThere, OSError.
    """
    path = Path(name)
    if path.suffix not in (".yml", ".yaml"):
        path = path.with_name(f"{path.name}.yml")
    _write(path, _pointing(_titled(_starter("pattern.yml"), title_of(path)), path, _schema_above(path)))
    return path


def new_collection(folder: Path) -> list[Path]:
    """Write a collection's settings, its first page, an example pattern and the schema; returns their paths.

    Raises AlreadyThere, before anything is written, and OSError.
    """
    example = folder / "patterns" / f"{EXAMPLE}.yml"
    texts = {
        folder / CONFIG: _starter("mkdocs.yml"),
        folder / "patterns" / "index.md": _starter("index.md"),
        example: _pointing(_starter("pattern.yml"), example, folder / SCHEMA),
        folder / SCHEMA: schema_text(),
    }
    for path in texts:
        _refuse(path)
    for path, text in texts.items():
        _write(path, text)
    return list(texts)


def title_of(path: Path) -> str:
    """`lantern-pouch.yml` is `Lantern pouch`."""
    words = " ".join(re.split(r"[-_\s]+", path.stem)).strip() or "New pattern"
    return words[0].upper() + words[1:]


def schema_text() -> str:
    """The JSON Schema of pattern files, as a file holds it."""
    return json.dumps(schema(), ensure_ascii=False, indent=2) + "\n"


def _schema_above(path: Path) -> Path | None:
    """The schema of the collection that a file would belong to; None where there is none."""
    for folder in path.resolve().parents:
        if (folder / CONFIG).is_file():
            found = folder / SCHEMA
            return found if found.is_file() else None
    return None


def _pointing(text: str, path: Path, schema_file: Path | None) -> str:
    """The pattern with the line by which editors find the schema, as seen from the pattern's own folder."""
    if schema_file is None:
        return text
    way = Path(os.path.relpath(schema_file.resolve(), path.resolve().parent)).as_posix()
    return f"# yaml-language-server: $schema={way}\n{text}"


def _starter(name: str) -> str:
    return files("loopleaf").joinpath("starter", name).read_text(encoding="utf-8")


def _titled(text: str, title: str) -> str:
    plain = re.fullmatch(r"[A-Za-z][A-Za-z' ]*", title) and title.lower() not in _NOT_TEXT
    line = f"title: {title if plain else json.dumps(title, ensure_ascii=False)}"
    return re.sub(r"^title:.*$", lambda _: line, text, count=1, flags=re.MULTILINE)


def _refuse(path: Path) -> None:
    if path.exists():
        raise AlreadyThere(f"{path} is there already; nothing was written.")


def _write(path: Path, text: str) -> None:
    _refuse(path)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
