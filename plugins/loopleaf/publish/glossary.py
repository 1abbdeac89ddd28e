"""The glossary of a collection: just the abbreviations, stitches and levels that its patterns use, and
which do.
"""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from .. import trade
from .leaflet_parts import Leaflet
from .leaflet_short import MORE
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
    common = _common(leaflets)
    short = _gathered(
        (
            one.anchor,
            common[one.anchor][0],
            _meaning(common[one.anchor][1], one.about),
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


def _common(leaflets: Sequence[Leaflet]) -> Mapping[str, tuple[str, str]]:
    """By anchor: short and full forms for the whole collection, not those of the first pattern."""
    forms: dict[str, dict[str, str]] = {}
    for one in (one for leaflet in leaflets for one in leaflet.abbreviations if one.anchor):
        shorts, names = (text.removesuffix(MORE).split(", ") for text in (one.short, one.name))
        known = forms.setdefault(one.anchor, {})
        known.update({MORE: MORE} if one.short.endswith(MORE) else {})
        known.update(
            zip(shorts, names if len(names) == len(shorts) else [one.name] * len(shorts), strict=True)
        )
    return {anchor: _listed(known) for anchor, known in forms.items()}


def _listed(forms: Mapping[str, str]) -> tuple[str, str]:
    """`ch, chs`; `dc2tog, dc3tog`; from four numbers on the first two for all: `ch-1 sp, ch-2 sp …`."""
    ordered = sorted((form for form in forms if form != MORE), key=_by_number)
    numbered = any(map(str.isdigit, ordered[0]))
    shown = ordered[:2] if numbered and (len(ordered) > 3 or MORE in forms) else ordered
    more = MORE if len(shown) < len(ordered) or (numbered and MORE in forms) else ""
    names = list(dict.fromkeys(forms[form] for form in shown))
    return ", ".join(shown) + more, ", ".join(names) + more


def _by_number(form: str) -> tuple[int, int, str]:
    number = re.search(r"\d+", form)
    return int(number[0]) if number else 0, len(form), form


def _meaning(name: str, about: str) -> str:
    return f"{name.removesuffix(MORE)}. {about}" if about else name


def _by_term(entry: Entry) -> str:
    return entry.term.lower()


def _by_level(entry: Entry) -> int:
    """The lowest first."""
    return [f"level-{level.key}" for level in trade.levels()].index(entry.anchor)
