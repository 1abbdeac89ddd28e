"""A collection on disk: where it begins, which files it has, and its address."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from ..pattern.limits import LARGEST_FILE, PICTURE_BEGINNING

CONFIG = "mkdocs.yml"
_SUFFIXES = (".yml", ".yaml")


@dataclass(frozen=True, slots=True)
class Collection:
    """config: its `mkdocs.yml`. docs: the folder of its patterns.

    site_url: its address with a closing slash, "" for none.
    """

    config: Path
    docs: Path
    site_url: str


class NotReadable(Exception):
    """A file or folder that can't be read; the text says which and why, in plain words."""


def collection_of(folder: Path) -> Collection | None:
    """The collection that a folder belongs to: the nearest `mkdocs.yml` upward; None where there is none.

    Raises NotReadable where that file can't be read.
    """
    for place in (folder, *folder.resolve().parents):
        config = place / CONFIG
        if config.is_file():
            settings = _settings(config)
            docs = settings.get("docs_dir")
            url = settings.get("site_url")
            return Collection(
                config,
                place / (docs if isinstance(docs, str) else "docs"),
                f"{url.rstrip('/')}/" if isinstance(url, str) and url else "",
            )
    return None


def pattern_files(folder: Path) -> Iterator[Path]:
    """All YAML files below a folder, sorted; hidden files and folders are passed over."""
    found = (path for suffix in _SUFFIXES for path in folder.rglob(f"*{suffix}"))
    for path in sorted(found, key=lambda path: path.as_posix()):
        inside = path.relative_to(folder).parts
        if path.is_file() and not any(part.startswith(".") for part in inside):
            yield path


def read(path: Path) -> bytes:
    """A file's bytes, no more than one past the limit for a pattern file.

    Raises NotReadable.
    """
    try:
        with path.open("rb") as file:
            return file.read(LARGEST_FILE + 1)
    except OSError as error:
        raise NotReadable(f"{path} can't be read: {(error.strerror or 'unknown reason').lower()}.") from None


def beginning(folder: Path, file: str) -> bytes | None:
    """The first bytes of a picture beside a pattern or below; None where there is none that can be read."""
    try:
        path = (folder / file).resolve()
        if not path.is_relative_to(folder.resolve()):
            return None
        with path.open("rb") as opened:
            return opened.read(PICTURE_BEGINNING)
    except (OSError, ValueError):
        return None


class _PassingOver(getattr(yaml, "CSafeLoader", yaml.SafeLoader)):  # type: ignore[misc]
    """Reads plain values and passes over tags that belong to MkDocs and its extensions."""


def _nothing(loader: Any, suffix: str, node: Any) -> None:
    return None


_PassingOver.add_multi_constructor("!", _nothing)
_PassingOver.add_multi_constructor("tag:", _nothing)


def _settings(config: Path) -> dict[str, Any]:
    try:
        settings = yaml.load(config.read_bytes(), Loader=_PassingOver)
    except (OSError, yaml.YAMLError, RecursionError) as error:
        raise NotReadable(f"{config} can't be read: {' '.join(str(error).split())}") from None
    return settings if isinstance(settings, dict) else {}
