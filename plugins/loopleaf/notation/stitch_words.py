"""Every name of every stitch in one terminology, from trade/stitches.yml: plain kinds, then those with
posts.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from ..trade import StitchNames, stitch_forms, stitches
from .tree import Stitch
from .vocabulary import Terms

_POSTED = (
    "single", "half", "double", "treble", "double-treble", "triple-treble",
    "extended-single", "extended-double",
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
    posts = [(f.key.split("-")[0], f.names(terms)) for f in stitch_forms() if f.key.endswith("-post")]
    for row in stitches():
        if row.key in _POSTED:
            for post, form in posts:
                yield from _with_post(Stitch(row.key, post=post), row.names(terms), form)


def _with_post(stitch: Stitch, names: StitchNames, form: StitchNames) -> Iterator[StitchWord]:
    def filled(pattern: str) -> str:
        return pattern.format(short=names.short, name=names.name, plural=names.plural)

    for pattern in (form.short, *form.alternatives):
        yield StitchWord(stitch, filled(pattern), False, False)
    for pattern in (form.name, form.plural, *form.other_names):
        yield StitchWord(stitch, filled(pattern), "{plural}" in pattern, True)
