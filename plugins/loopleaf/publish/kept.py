"""What was worked, kept between builds: a pattern's findings and leaflets, by all that they were made from.

They lie as JSON in a folder of the collection's own, and are read back only under the key of the same file,
settings and edition of this package: a build works and draws just what has changed.
"""

import hashlib
import json
import os
import tempfile
import time
from collections.abc import Callable, Iterable, Mapping
from dataclasses import asdict, dataclass, replace
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from pydantic import TypeAdapter, ValidationError

from .leaflet_parts import Leaflet, Terms
from .settings import Settings
from .words import words

if TYPE_CHECKING:
    from ..pattern.finding import Finding

_MARK = "<svg "

KEPT_DAYS = 60
"""What no build has asked for in so many days is thrown away."""


@dataclass(frozen=True, slots=True)
class Worked:
    """One YAML file, worked. source: its path in the collection. slug: its page's name.

    title: the pattern's, or the file's path where it can't be read. leaflets: by terms; empty where an error
    keeps the pattern from being published, or where the file holds no pattern. pictures: the author's, by
    their paths from the pattern's own folder. alone: of a pattern in several sizes, each of them by itself.
    """

    source: str
    slug: str
    title: str
    is_pattern: bool
    findings: "tuple[Finding, ...]"
    leaflets: Mapping[Terms, Leaflet]
    pictures: tuple[str, ...] = ()
    alone: "tuple[Worked, ...]" = ()

    @property
    def pages(self) -> "tuple[Worked, ...]":
        """All that pages and booklets are made of: the pattern, then its sizes alone."""
        return (self, *self.alone) if self.leaflets else (self,)

    @property
    def has_errors(self) -> bool:
        """Whether it can't be published as it stands."""
        return any(finding.severity == "error" for finding in self.findings)


def key_of(source: str, data: bytes, settings: Settings) -> str:
    """A name for all that a file's leaflets depend on."""
    digest = hashlib.sha256()
    for part in (_edition(), repr((source, settings)).encode(), data):
        digest.update(b"%d:" % len(part))
        digest.update(part)
    return digest.hexdigest()


@cache
def _edition() -> bytes:
    """This package's code and tables."""
    package = Path(__file__).resolve().parent.parent
    digest = hashlib.sha256()
    for path in sorted(package.rglob("*")):
        if path.suffix in (".py", ".yml"):
            digest.update(str(path.relative_to(package)).encode() + b"\0")
            digest.update(hashlib.sha256(path.read_bytes()).digest())
    return digest.digest()


def take(folder: Path, key: str) -> Worked | None:
    """What is kept under a key; None where nothing is, or nothing that can be read."""
    try:
        return unpacked((folder / f"{key}.json").read_bytes())
    except (OSError, ValueError, KeyError, TypeError, ValidationError):
        return None


def put(folder: Path, key: str, worked: Worked) -> None:
    """Keep something; written beside its place and moved into it, so that nobody sees half of it."""
    _write(folder / f"{key}.json", packed(worked))


def _write(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(dir=path.parent, suffix=".part")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
        Path(name).replace(path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def text(folder: Path, name: str, make: Callable[[], str]) -> str:
    """A text that depends on this package alone, made once an edition."""
    path = folder / f"{name}-{_edition().hex()[:16]}.txt"
    if not path.is_file():
        _write(path, make().encode())
    return path.read_text(encoding="utf-8")


def tidy(folder: Path, used: Iterable[str]) -> None:
    """Marks what was used as used today, and throws away what long wasn't."""
    for key in used:
        path = folder / f"{key}.json"
        if path.is_file():
            os.utime(path)
    too_old = time.time() - KEPT_DAYS * 24 * 3600
    for path in folder.glob("*"):
        if path.stat().st_mtime < too_old:
            path.unlink()


@cache
def _leaflets() -> TypeAdapter[dict[Terms, Leaflet]]:
    return TypeAdapter(dict[Terms, Leaflet])


def packed(worked: Worked) -> bytes:
    """As bytes: the template's words are left out, and a drawing that is shown twice stands once."""
    drawings: dict[str, str] = {}
    pages = [[one.slug, one.title, _bare(one.leaflets, drawings)] for one in (worked, *worked.alone)]
    kept = {
        "source": worked.source,
        "is_pattern": worked.is_pattern,
        "findings": [asdict(finding) for finding in worked.findings],
        "pages": pages,
        "drawings": list(drawings),
        "pictures": worked.pictures,
    }
    return json.dumps(kept, ensure_ascii=False).encode()


def _bare(leaflets: Mapping[Terms, Leaflet], drawings: dict[str, str]) -> Any:
    bare = {terms: replace(one, words={}) for terms, one in leaflets.items()}
    return _without(_leaflets().dump_python(bare, mode="json"), drawings)


def unpacked(content: bytes) -> Worked:
    """From its bytes; raises ValueError, KeyError, TypeError or ValidationError for others."""
    kept = json.loads(content)
    findings = _findings(kept["findings"]) if kept["findings"] else ()
    first, *alone = (
        Worked(kept["source"], slug, title, kept["is_pattern"], (), _dressed(leaflets, kept["drawings"]))
        for slug, title, leaflets in kept["pages"]
    )
    return replace(first, findings=findings, pictures=tuple(kept["pictures"]), alone=tuple(alone))


def _dressed(leaflets: Any, drawings: list[str]) -> dict[Terms, Leaflet]:
    bare = _leaflets().validate_python(_with(leaflets, drawings))
    return {terms: replace(one, words=words(terms)) for terms, one in bare.items()}


def _without(value: Any, drawings: dict[str, str]) -> Any:
    """The same with a mark in each drawing's place; the drawings are gathered in the order met."""
    if isinstance(value, dict):
        return {key: _without(part, drawings) for key, part in value.items()}
    if isinstance(value, list):
        return [_without(part, drawings) for part in value]
    if isinstance(value, str) and value.startswith("<svg"):
        return drawings.setdefault(value, f"{_MARK}{len(drawings)}")
    return value


def _with(value: Any, drawings: list[str]) -> Any:
    """The same with the drawings where their marks are."""
    if isinstance(value, dict):
        return {key: _with(part, drawings) for key, part in value.items()}
    if isinstance(value, list):
        return [_with(part, drawings) for part in value]
    if isinstance(value, str) and value.startswith(_MARK):
        return drawings[int(value.removeprefix(_MARK))]
    return value


def _findings(kept: Any) -> "tuple[Finding, ...]":
    # Imported where there are any: it brings the whole reading of patterns with it.
    from ..pattern.finding import Finding

    return TypeAdapter(tuple[Finding, ...]).validate_python(kept)
