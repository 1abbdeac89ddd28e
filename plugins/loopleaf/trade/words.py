"""The tables' own sentences in the reader's terms: one text serves both terminologies."""

import re
from functools import cache

from .rows import Terms
from .tables import phrases, stitches

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
