"""The glossary of a collection: just the abbreviations, stitches and levels that its patterns use, and
which do.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from .. import trade
from .leaflet_parts import Leaflet
from .words import words


@dataclass(frozen=True, slots=True)
class Use:
    """A pattern that uses an entry, and where on its page."""

    slug: str
    title: str
    anchor: str


@dataclass(frozen=True, slots=True)
class Entry:
    """One word. anchor: unlike any other's on the page, the same in both terms where it means the same."""

    anchor: str
    term: str
    meaning: str
    uses: tuple[Use, ...]


@dataclass(frozen=True, slots=True)
class Part:
    """The entries of one kind."""

    anchor: str
    title: str
    entries: tuple[Entry, ...]


def glossary(leaflets: Sequence[Leaflet]) -> tuple[Part, ...]:
    """The glossary of some leaflets in one terminology; parts that would be empty are left out."""
    if not leaflets:
        return ()
    w = words(leaflets[0].terms)
    short = _gathered(
        (
            one.anchor,
            one.short,
            _meaning(one.name, one.about),
            Use(leaflet.slug, leaflet.title, "abbreviations"),
        )
        for leaflet in leaflets
        for one in leaflet.abbreviations
        if one.anchor
    )
    levels = _gathered(
        (one.anchor, one.name.capitalize(), one.meaning, Use(leaflet.slug, leaflet.title, "level"))
        for leaflet in leaflets
        for one in (leaflet.level,)
        if one.anchor
    )
    stitches = [entry for entry in short if entry.anchor.startswith("stitch-")]
    others = [entry for entry in short if not entry.anchor.startswith("stitch-")]
    parts = (
        Part("stitches", w["glossary_stitches"], tuple(sorted(stitches, key=_by_term))),
        Part("abbreviations", w["abbreviations"], tuple(sorted(others, key=_by_term))),
        Part("levels", w["levels"], tuple(sorted(levels, key=_by_level))),
    )
    return tuple(part for part in parts if part.entries)


def _gathered(found: Iterable[tuple[str, str, str, Use]]) -> list[Entry]:
    """One entry an anchor, with all its uses in the order they were met."""
    entries: dict[str, Entry] = {}
    for anchor, term, meaning, use in found:
        known = entries.get(anchor) or Entry(anchor, term, meaning, ())
        entries[anchor] = known if use in known.uses else replace(known, uses=(*known.uses, use))
    return list(entries.values())


def _meaning(name: str, about: str) -> str:
    return f"{name}. {about}" if about else name


def _by_term(entry: Entry) -> str:
    return entry.term.lower()


def _by_level(entry: Entry) -> int:
    """The lowest first."""
    return [f"level-{level.key}" for level in trade.levels()].index(entry.anchor)
