"""Several of a piece: `squares`, `large leaves`, `rows of shells`."""

import re
from functools import cache

from ..trade.data_files import data_file

_BEHIND = re.compile(r" (?:with|without|of|for|in|on|to|from|at|and) ")
"""What stands behind such a word tells more of the thing, and stays as it is."""


def plural(text: str) -> str:
    """Several of a thing: its last word, before any `with` or `of`, in the plural; one that is a plural
    already stays.
    """
    behind = _BEHIND.search(text)
    thing, rest = (text[: behind.start()], text[behind.start() :]) if behind else (text, "")
    before, word = re.fullmatch(r"(.*?)([^\s-]*)", thing, re.DOTALL).groups()  # type: ignore[union-attr]
    return f"{before}{_plural(word)}{rest}"


def _plural(word: str) -> str:
    known = _irregular().get(word.lower())
    if known is not None:
        return known.capitalize() if word[:1].isupper() else known
    if not word[-1:].isalpha() or _is_plural(word.lower()):
        return word
    if word.endswith(("s", "x", "z", "ch", "sh")):
        return f"{word}es"
    if word.endswith("y") and word[-2:-1] not in "aeiou":
        return f"{word[:-1]}ies"
    return f"{word}s"


def _is_plural(word: str) -> bool:
    """`squares`, `feet`; not `dress` or `trellis`."""
    return (word.endswith("s") and not word.endswith(("ss", "is", "us"))) or word in _irregular().values()


@cache
def _irregular() -> dict[str, str]:
    return data_file(__package__, "plurals.yml")
