"""The tables' own sentences in the reader's terms: one text serves both terminologies."""

import re
from functools import cache

from .rows import StitchRow, Terms, YarnWeightRow
from .tables import hooks, phrases, steel_hooks, stitch, stitch_forms, stitches, yarn_weights

STEEL_BELOW_MM = 2.0
"""Thinner hooks are of steel and have numbers of their own (common practice, no source)."""

_SLOT = re.compile(r"\{([a-z -]+)\}")


@cache
def _slots(terms: Terms) -> dict[str, str]:
    side = 0 if terms == "US" else 1
    slots = {row.key: row.pairs[0][side] for row in phrases()}
    for row in stitches():
        names = row.names(terms)
        slots |= {row.key: names.name, f"{row.key} plural": names.plural, f"{row.key} short": names.short}
    return slots


def say(text: str, terms: Terms) -> str:
    """A text of the tables in one terminology.

    `{double}`, `{double plural}`, `{double short}`, `{skip}` become its words. Sentences keep their
    capital where a slot begins them. Raises KeyError for a slot that no table has.
    """
    said = _SLOT.sub(lambda slot: _slots(terms)[slot.group(1)], text)
    return said[0].upper() + said[1:] if text.startswith("{") and text.endswith(".") else said


@cache
def _named(terms: Terms) -> dict[str, tuple[str, str]]:
    named: dict[str, tuple[str, str]] = {}
    posts = [(row.names(terms), row.key.removesuffix("-post")) for row in stitch_forms() if "post" in row.key]
    for row in stitches():
        names = row.names(terms)
        for name in (
            names.short,
            names.short_plural,
            names.name,
            names.plural,
            *names.alternatives,
            *names.other_names,
        ):
            named[name.lower()] = (row.key, "")
        for form, post in posts:
            for pattern in (form.short, form.name, form.plural, *form.alternatives, *form.other_names):
                filled = pattern.format(short=names.short, name=names.name, plural=names.plural)
                named[filled.lower()] = (row.key, post)
    return named


def stitch_named(name: str, terms: Terms) -> tuple[StitchRow, str] | None:
    """The stitch of a name in one terminology and its post (`front`, `back`, "" for none); None: no stitch.

    `dc` is the double in US terms and the single in UK ones; `FPdc` is the double with a front post.
    """
    found = _named(terms).get(" ".join(name.lower().split()))
    return found and (stitch(found[0]), found[1])


def us_hook(mm: float) -> str | None:
    """The US letter and number of a hook so thick, of steel below 2 mm; None where it has none."""
    rows = steel_hooks() if mm < STEEL_BELOW_MM else hooks()
    return next((row.us for row in rows if abs(row.mm - mm) < 0.01 and row.us), None)


def weights_named(name: str) -> list[YarnWeightRow]:
    """The yarn weights that go by a name in either country: `DK` is one, `baby` two, nonsense none."""
    asked = " ".join(name.lower().replace("-", " ").split())
    return [
        row
        for row in yarn_weights()
        if asked in {known.lower().replace("-", " ") for known in (row.name, *row.us, *row.uk)}
    ]
