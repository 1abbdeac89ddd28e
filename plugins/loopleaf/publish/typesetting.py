"""Instruction lines set for reading: what belongs together stays together when a line breaks.

The marks are spans around plain text, so that copying or searching the page finds the line as written. Lines
come again and again (in either paper, at every height), so what they are set as is remembered.
"""

import re
from functools import lru_cache

from markupsafe import Markup, escape

_TOGETHER = re.compile(
    r"(?:\b[A-Za-z]+ )?\d+(?:\.\d+)?–\d+(?:\.\d+)?(?: (?:cm|mm|m|in|ft|yd|g|oz)\b)?"
    r"|[\d.]*[\d¼-¾⅐-⅞] (?:cm|mm|m|in|ft|yd|g|oz)\b|\d+ more times|\d+ times|(?:rep|repeat) from \*|[×x] \d+"
    r"|\b(?:next|first|last) (?:\d+ )?[\w-]+(?: sts?| sps?)?"
    r"|\b\d+ (?:sl st|[A-Za-z][\w-]*(?: sps?)?)|\b[A-Za-z]+ \d+\b(?! [A-Za-z])"
    r"|\bsl st\b|\b[\w-]+ sps?\b|\b\w+(?:-\w+)+"
)
_AMOUNT = re.compile(r"\d+–\d+(?!\.?\d)|\(?[\d.]*[\d¼-¾⅐-⅞] (?:cm|mm|m|in|ft|yd|g|oz)\b\)?")
_TWO_NUMBERS = re.compile(r"(\d+(?: \([^()]*\))?) (\d[\w-]*)")
_REPEAT = re.compile(r"(?:\([^()]*\)|\[[^][]*\]) (?:[×x] \d+|\d+ times|twice)[,.;]?")
SHORT = 34
"""Characters of a repeat that a phone's line still holds."""
LONG = 62
"""Characters of a repeat that a desk's line still holds."""


@lru_cache(8192)
def set_line(text: str) -> Markup:
    """The line as HTML: `k` keeps a number with its stitch, `r` (and on wide screens `rr`) keeps a repeat
    whole.
    """
    parts: list[Markup] = []
    end = 0
    for found in _REPEAT.finditer(text):
        parts.append(_kept(text[end : found.start()]))
        inside = _kept(found[0])
        length = len(found[0])
        kind = "r" if length <= SHORT else "rr" if length <= LONG else ""
        parts.append(Markup('<span class="{}">{}</span>').format(kind, inside) if kind else inside)
        end = found.end()
    parts.append(_kept(text[end:]))
    return Markup("").join(parts)


@lru_cache(8192)
def set_count(text: str) -> Markup:
    """A count as HTML. `n` marks a number before a name that begins with a number itself (`4 2ch-sps`), so
    that the two are told apart.
    """
    parts: list[Markup] = []
    end = 0
    for found in _TWO_NUMBERS.finditer(text):
        parts.append(_kept(text[end : found.start()]))
        parts.append(Markup('<span class="k"><span class="n">{}</span> {}</span>').format(*found.groups()))
        end = found.end()
    return Markup("").join([*parts, _kept(text[end:])])


def set_amounts(text: str) -> Markup:
    """A sentence or a table's cell as HTML: amounts keep their units (`53.5 cm`, `(21 in)`), and what runs
    from one number to another its end (`11–14`); the rest may break.
    """
    return Markup(_AMOUNT.sub(r'<span class="k">\g<0></span>', str(escape(text))))


def _kept(text: str) -> Markup:
    parts: list[Markup] = []
    end = 0
    for found in _TOGETHER.finditer(text):
        parts += [escape(text[end : found.start()]), Markup('<span class="k">{}</span>').format(found[0])]
        end = found.end()
    return Markup("").join([*parts, escape(text[end:])])
