"""Page addresses: which page a file makes, and files that would make the same one."""

import re
from dataclasses import dataclass, field
from pathlib import PurePath
from unicodedata import normalize

from ..pattern import Finding, Source, Suggestion


def slug(file: str) -> str:
    """The part of a page's address that a file gives it: `Tide Cloth.yml` is `tide-cloth`."""
    letters = normalize("NFKD", PurePath(file).stem).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", letters).strip("-") or "pattern"


@dataclass(slots=True)
class Shelf:
    """The files of one site, as they come: which addresses they have taken."""

    _first: dict[str, str] = field(default_factory=dict)

    def place(self, source: Source) -> list[Finding]:
        """Put a pattern in its place; the finding that a file before it has taken its address, or none."""
        address = slug(source.file)
        first = self._first.setdefault(address, source.file)
        if first == source.file:
            return []
        return [
            Finding(
                rule="address-taken",
                severity="error",
                file=source.file,
                location=source.locate(("title",)),
                message=f"This file would make the same page as {first}.",
                working=f"Both names give the address “{address}”.",
                suggestion=Suggestion("Give one of the two files another name.", None, "fill-in"),
            )
        ]
