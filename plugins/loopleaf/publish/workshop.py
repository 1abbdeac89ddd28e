"""The workshop: a collection's files checked and set out as leaflets, each worked again only when it has
changed. The engine is loaded only when something has.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path

from .kept import Worked, key_of, put, take, tidy
from .leaflet_parts import Terms
from .settings import Settings
from .workbench import work_beside

RESERVED = ("drawings", "glossary", "index", "readme", "signs", "steps")
"""Addresses of the collection's own pages (MkDocs takes a readme for an index)."""

BOTH: tuple[Terms, Terms] = ("US", "UK")


@dataclass(slots=True)
class Workshop:
    """Keeps what was worked, in memory and in a folder, by the content it was worked from.

    worked: the files worked in the last call. defects: those that Loopleaf itself failed on, and how.
    """

    worked: list[str] = field(default_factory=list)
    defects: dict[str, str] = field(default_factory=dict)
    _kept: dict[str, Worked] = field(default_factory=dict)

    def work(
        self, files: Iterable[tuple[str, bytes]], settings: Settings, docs: Path, folder: Path
    ) -> list[Worked]:
        """All patterns among the files (path in the collection, content), in their order.

        docs: the collection's folder, for the patterns' pictures. folder: where they are kept between builds.
        YAML files that hold no pattern are passed over.
        """
        self.worked, self.defects = [], {}
        contents = dict(files)
        keys = {source: key_of(source, data, settings) for source, data in contents.items()}
        found = {source: self._kept.get(key) or take(folder, key) for source, key in keys.items()}
        found |= self._work([(one, contents[one]) for one in keys if found[one] is None], settings)
        kept = {keys[source]: one for source, one in found.items() if one is not None}
        for source in self.worked:
            if keys[source] in kept:
                put(folder, keys[source], kept[keys[source]])
        self._kept = kept
        tidy(folder, kept)
        patterns = _told_apart([one for one in kept.values() if one.is_pattern], contents)
        return [_seen(one, contents[one.source], docs) for one in patterns]

    def _work(self, files: Sequence[tuple[str, bytes]], settings: Settings) -> dict[str, Worked | None]:
        """What came of each file; where there are many, side by side."""
        beside = work_beside(work, files, settings)
        self.worked = [source for source, _ in files]
        return {
            source: one or self._worked_here(source, data, settings)
            for (source, data), one in zip(files, beside, strict=True)
        }

    def _worked_here(self, source: str, data: bytes, settings: Settings) -> Worked | None:
        try:
            return work(source, data, settings)
        except Exception as error:  # noqa: BLE001
            # A defect of ours in one file mustn't end the build, nor reach its author as a traceback.
            self.defects[source] = f"{type(error).__name__}: {error}"
            return None


def work(source: str, data: bytes, settings: Settings) -> Worked:
    """Check one file and set it out in both terminologies."""
    from ..pattern.finding import Finding, Suggestion
    from ..review import check, slug
    from ..review.pictures import pictures
    from . import leaflet
    from .leaflet_heights import heights_worked

    checked = check(data, source)
    pattern = checked.source.pattern
    findings = tuple(checked.findings)
    name = slug(source)
    if pattern is not None and name in RESERVED:
        taken = Finding(
            rule="address-taken",
            severity="error",
            file=source,
            location=checked.source.locate(("title",)),
            message=f"This file would take the place of the collection's own page “{name}”.",
            suggestion=Suggestion("Give the file another name.", None, "fill-in"),
        )
        findings = (taken, *findings)
    worked = Worked(source, name, source, pattern is not None or bool(findings), findings, {})
    if pattern is None:
        return worked
    shown = tuple(dict.fromkeys(picture.file for _, picture, _ in pictures(pattern)))
    worked = replace(worked, title=pattern.title, pictures=shown)
    if worked.has_errors:
        return worked
    heights = heights_worked(checked)
    alone = tuple(
        Worked(source, one["US"].slug, f"{pattern.title}, {size}", True, (), one)
        for size, one in leaflet.leaflets_by_size(checked, settings, heights).items()
    )
    return replace(worked, leaflets=leaflet.leaflets(checked, settings, heights), alone=alone)


def _seen(worked: Worked, data: bytes, docs: Path) -> Worked:
    """The same, with an error where a picture isn't there, and a warning where one is too coarse for print.

    What is kept can't know: pictures come and go.
    """
    if not worked.pictures:
        return worked
    from ..pattern import is_picture, load
    from ..review.pictures import unshowable
    from ..review.rules.picture_too_coarse_for_print import too_coarse
    from .collection import beginning

    read = partial(beginning, (docs / worked.source).parent)
    source = load(data, worked.source)
    if all(is_picture(read(file) or b"") for file in worked.pictures):
        return replace(worked, findings=(*worked.findings, *too_coarse(source, read)))
    found = unshowable(source, read)
    return replace(worked, findings=(*worked.findings, *found), leaflets={})


def _told_apart(patterns: list[Worked], contents: dict[str, bytes]) -> list[Worked]:
    """Two files that would make the same page: the second one has an error."""
    times = Counter(one.slug for one in patterns)
    if max(times.values(), default=0) < 2:
        return patterns
    from ..review import check_collection

    alike = [one.source for one in patterns if times[one.slug] > 1]
    checked = check_collection((source, contents[source]) for source in alike)
    findings = {one.source.file: tuple(one.findings) for one in checked}
    return [
        replace(one, findings=findings[one.source], leaflets={})
        if one.source in findings and findings[one.source] != one.findings
        else one
        for one in patterns
    ]
