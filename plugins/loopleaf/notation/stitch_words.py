"""Every name of every stitch in one terminology, from trade/stitches.yml: plain kinds, then those with
posts.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache

from ..trade import StitchNames, stitch_forms, stitches
from .tree import Stitch
from .vocabulary import SpecialStitch, Terms

_POSTED = (
    "single", "half", "double", "treble", "double-treble", "triple-treble",
    "extended-single", "extended-double", "slip",
)  # fmt: skip
"""The kinds that print works around posts."""


@dataclass(frozen=True, slots=True)
class StitchWord:
    """One name. plural: it names several; full: in full words, not abbreviated."""

    stitch: Stitch
    name: str
    plural: bool
    full: bool


@cache
def stitch_words(terms: Terms) -> tuple[StitchWord, ...]:
    """All names of one terminology, the usual ones of a stitch before its others."""
    return (*_plain(terms), *_posted(terms))


def _plain(terms: Terms) -> Iterator[StitchWord]:
    for row in stitches():
        names, stitch = row.names(terms), Stitch(row.key)
        yield StitchWord(stitch, names.short, False, False)
        yield StitchWord(stitch, names.name, False, True)
        yield StitchWord(stitch, names.short_plural, True, False)
        yield StitchWord(stitch, names.plural, True, True)
        for other in names.alternatives:
            yield StitchWord(stitch, other, _is_plural(other), False)
        for other in names.other_names:
            yield StitchWord(stitch, other, _is_plural(other), True)


def _is_plural(name: str) -> bool:
    return name.endswith("s") and not name.endswith("ss")


def _posted(terms: Terms) -> Iterator[StitchWord]:
    for row in stitches():
        if row.key in _POSTED:
            yield from posted(Stitch(row.key), row.names(terms), terms)


def posted(stitch: Stitch, names: StitchNames, terms: Terms) -> Iterator[StitchWord]:
    """What a stitch is called around posts: `FPdc`, `front post double crochet`."""
    for form in stitch_forms():
        post = form.key.removesuffix("-post")
        if post in ("front", "back"):
            yield from _with_post(replace(stitch, post=post), names, form.names(terms))


def own_names(special: SpecialStitch) -> StitchNames:
    """What the author's own stitch is called, in short and in full, in either terminology."""
    short = special.short or special.name
    plural = special.name + ("es" if special.name.endswith(("s", "x", "z", "sh", "ch")) else "s")
    return StitchNames(short, short, special.name, plural)


def plurals(name: str) -> tuple[str, ...]:
    """How a special stitch's name may stand in the plural."""
    if not name:
        return ()
    return (name + "s", name + "es") if name[-1] in "shxz" else (name + "s",)


def _with_post(stitch: Stitch, names: StitchNames, form: StitchNames) -> Iterator[StitchWord]:
    def filled(pattern: str) -> str:
        return pattern.format(short=names.short, name=names.name, plural=names.plural)

    for pattern in (form.short, *form.alternatives):
        yield StitchWord(stitch, filled(pattern), False, False)
    for pattern in (form.name, form.plural, *form.other_names):
        yield StitchWord(stitch, filled(pattern), "{plural}" in pattern, True)
