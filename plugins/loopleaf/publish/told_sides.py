"""Sides that an author's sentence names, marked so that a page can name the other for a left-hander."""

import re
from collections.abc import Callable

from markupsafe import Markup

_AFTER = (
    r"(?=[,.;:)!?]|$| (?:of|when|as|while|edge|end|hand|corner|and (?:work|go|join|end)|to (?:the|your))\b)"
)
_SIDE = re.compile(
    rf"\b(?:on|at|to|from|towards|along) (?:the|your|its) (left|right){_AFTER}"
    r"|\b(?:bottom|top|upper|lower)[ -](left|right)\b(?! (?:front|back|side))"
    r"|\b(left|right)-hand (?:edge|end|corner|side)\b",
    re.IGNORECASE,
)
"""Where something lies for the maker: `on your right`, `the lower left corner`, `the right-hand edge`. The
right side of a cloth, what is left, and a garment's left front are none.
"""

_OTHER = {"left": "right", "right": "left", "Left": "Right", "Right": "Left"}


def set_told(text: str, set_words: Callable[[str], Markup]) -> Markup:
    """A sentence as HTML, the sides in it marked with the other one. set_words: sets the words between."""
    parts: list[Markup] = []
    end = 0
    for found in _SIDE.finditer(text):
        side = next(one for one in found.groups() if one)
        other = found[0].replace(side, _OTHER.get(side, side))
        parts.append(set_words(text[end : found.start()]))
        parts.append(Markup('<span data-other-hand="{}">{}</span>').format(other, found[0]))
        end = found.end()
    return Markup("").join([*parts, set_words(text[end:])])
