"""Lines that break where a reader would: a number stays with its stitch, a short repeat stays whole."""

import re

from markupsafe import Markup, escape

LONGEST_WHOLE = 44
"""Characters of a bracketed repeat that is kept on one line; a longer one would leave half a line empty."""

_PARTED = re.compile(
    r"(?<=\d) (?=\S)|(?<=\d(?:st|nd|rd|th)) (?=\S)|(?<=\w) (?=\d)|(?<=[×x*]) (?=\d)"
    r"|(?<=\b(?:next|last|each|same)) (?=\S)|(?<=\bfirst) (?=\S)"
)
_WHOLE = re.compile(
    r"[(\[{][^()\[\]{}]*[)\]}](?: (?:[×x] \d+|\d+(?: more)? times|twice)|(?= in ))?[,;.]?"
    r"|from \*(?: to \*| around| across)?[,;.]?"
    r"|\*?\w+-[\w-]+[,;.]?"
)


def kept_together(text: str) -> Markup:
    """A round's text as HTML: `2 hdc` and `ch 3` never part, nor do a short repeat and its number of times,
    nor a word with a hyphen (`ch-1 sp`). The words and their order stay as they are; only spaces become firm.
    """
    pieces: list[Markup] = []
    end = 0
    for whole in _WHOLE.finditer(text):
        if len(whole[0]) > LONGEST_WHOLE:
            continue
        pieces += [
            _firm(text[end : whole.start()]),
            Markup('<span class="keep">{}</span>').format(_firm(whole[0])),
        ]
        end = whole.end()
    return Markup("").join([*pieces, _firm(text[end:])])


def _firm(text: str) -> Markup:
    return escape(_PARTED.sub("\u00a0", text))
