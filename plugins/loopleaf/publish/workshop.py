"""The workshop: a collection's files checked and set out as leaflets, each worked again only when it has
changed.
"""

import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from ..pattern import Finding, Suggestion
from ..review import Checked, among_files, check, slug
from . import leaflet
from .leaflet_parts import Leaflet, Terms
from .settings import Settings

RESERVED = ("glossary", "index", "readme")
"""Addresses of the collection's own pages (MkDocs takes a readme for an index)."""

BOTH: tuple[Terms, Terms] = ("US", "UK")


@dataclass(frozen=True, slots=True)
class Worked:
    """One pattern file. leaflets: by terms; empty where an error keeps the pattern from being published."""

    source: str
    checked: Checked
    leaflets: Mapping[Terms, Leaflet]

    @property
    def slug(self) -> str:
        return slug(self.source)

    @property
    def title(self) -> str:
        """The pattern's title, or the file's name where it can't be read."""
        pattern = self.checked.source.pattern
        return pattern.title if pattern else self.source


@dataclass(slots=True)
class Workshop:
    """Keeps what was worked, by the content it was worked from.

    worked: the files worked in the last call. defects: those that Loopleaf itself failed on, and how.
    """

    worked: list[str] = field(default_factory=list)
    defects: dict[str, str] = field(default_factory=dict)
    _kept: dict[str, Worked] = field(default_factory=dict)

    def work(self, files: Iterable[tuple[str, bytes]], settings: Settings) -> list[Worked]:
        """All patterns among the files (path in the collection, content), in
        their order.

        YAML files that hold no pattern are passed over.
        """
        self.worked, self.defects = [], {}
        kept: dict[str, Worked] = {}
        for source, data in files:
            key = hashlib.sha256(repr((source, settings)).encode() + data).hexdigest()
            if key not in self._kept:
                self.worked.append(source)
                try:
                    self._kept[key] = _worked(source, data, settings)
                except Exception as error:  # noqa: BLE001
                    # A defect of ours in one file mustn't end the build, nor reach its author as a traceback.
                    self.defects[source] = f"{type(error).__name__}: {error}"
                    continue
            kept[key] = self._kept[key]
        self._kept = kept
        found = [
            one for one in kept.values() if one.checked.source.pattern is not None or one.checked.findings
        ]
        together = among_files([one.checked for one in found])
        return [
            one if checked is one.checked else replace(one, checked=checked, leaflets={})
            for one, checked in zip(found, together, strict=True)
        ]


def _worked(source: str, data: bytes, settings: Settings) -> Worked:
    checked = _kept_free(check(data, source))
    if checked.work is None or checked.has_errors:
        return Worked(source, checked, {})
    return Worked(source, checked, leaflet.leaflets(checked, settings))


def _kept_free(checked: Checked) -> Checked:
    """A pattern may not take the address of one of the collection's own pages."""
    source = checked.source
    if source.pattern is None or slug(source.file) not in RESERVED:
        return checked
    finding = Finding(
        rule="address-taken",
        severity="error",
        file=source.file,
        location=source.locate(("title",)),
        message=f"This file would take the place of the collection's own page “{slug(source.file)}”.",
        suggestion=Suggestion("Give the file another name.", None, "fill-in"),
    )
    return replace(checked, findings=[finding, *checked.findings])
