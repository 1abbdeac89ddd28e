"""Full stops that belong to an abbreviation, as older print has them: `1 tr. in each ch. to end`, `d.c.`."""

import re

DOTTED = r"(?:[dhst]|sl|tr)\.(?:[dt]\.)?(?:c|s|tr|st)\."
"""`d.c.`, `h.tr.`, `s.s.`: letters with a full stop behind each."""

_SHORT = frozenset(
    {"ch", "chs", "tr", "dc", "htr", "dtr", "trtr", "sc", "hdc", "ss", "sl", "st", "sts", "sp", "sps", "rep",
     "tog"}
)  # fmt: skip
_HALF = frozenset({"beg", "prev", "foll", "rem", "alt"})
"""Abbreviations that never end a step."""
_RUNS_ON = re.compile(r"\s+(?:in|into|from|to|of|st|sts|tog|sp|sps)\b")
"""What goes on with the same step; a step of its own would begin with a capital behind a full stop."""
_SMALL = re.compile(r"\s+[a-z]")


def ends_nothing(text: str, word: str, end: int) -> bool:
    """Whether the full stop before `end`, right behind a word, is the abbreviation's own."""
    if word in _HALF:
        return _SMALL.match(text, end) is not None
    return word in _SHORT and _RUNS_ON.match(text, end) is not None
