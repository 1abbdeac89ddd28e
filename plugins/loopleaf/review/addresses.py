"""Page addresses: which page a file makes, and files that would make the same one."""

import re
from collections.abc import Iterable
from pathlib import PurePath
from unicodedata import normalize

from ..pattern import Finding, Source, Suggestion


def slug(file: str) -> str:
    """The part of a page's address that a file gives it: `Tide Cloth.yml` is `tide-cloth`."""
    letters = normalize("NFKD", PurePath(file).stem).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", letters).strip("-") or "pattern"


def taken(sources: Iterable[Source]) -> dict[str, list[Finding]]:
    """By file: the finding that its address is taken by a file before it."""
    first: dict[str, str] = {}
    found: dict[str, list[Finding]] = {}
    for source in sources:
        address = slug(source.file)
        if address not in first:
            first[address] = source.file
            continue
        found[source.file] = [
            Finding(
                rule="address-taken",
                severity="error",
                file=source.file,
                location=source.locate(("title",)),
                message=f"This file would make the same page as {first[address]}.",
                working=f"Both names give the address “{address}”.",
                suggestion=Suggestion("Give one of the two files another name.", None, "fill-in"),
            )
        ]
    return found
