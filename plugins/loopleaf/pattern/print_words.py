"""Print's own words for rows that follow a rule, as the fields that say the same."""

import re
from typing import Any

from .reading import plain_text

_AGAIN = re.compile(
    r"(?:rep(?:eat)?|work as(?: for)?) (?:rows?|rounds?|rnds?) (\d+)(?:\s*(?:and|to|-|–)\s*(\d+))?"
    r"(?:,? until (?:piece |work |it )?measures (.+?)(?: from [a-z ]+)?)?\.?",
    re.IGNORECASE,
)
_EVERY_OTHER = re.compile(
    r"(\d+) and (?:every|each) (?:other|alt(?:ernate)?|foll(?:owing)? alt(?:ernate)?) (?:row|round|rnd)",
    re.IGNORECASE,
)


def said_in_print(entry: dict[Any, Any]) -> dict[Any, Any]:
    """An entry with `rep rows 3 and 4` as `repeat`, and `2 and every other row` as `every: 2`.

    Only rows that follow each other are read so; anything else is left as it stands.
    """
    made = dict(entry)
    again = _AGAIN.fullmatch(plain_text(entry.get("work")) or "")
    if again is not None and not {"repeat", "as", "from"} & set(entry):
        first, last = int(again[1][:6]), int((again[2] or again[1])[:6])
        if last in (first, first + 1) or "-" in again[0] or " to " in again[0]:
            del made["work"]
            made["repeat"] = again[1] if first == last else f"{first}-{last}"
            if again[3] and "until" not in entry:
                made["until"] = again[3]
    for one, several in (("row", "rows"), ("round", "rounds")):
        other = _EVERY_OTHER.fullmatch(plain_text(entry.get(one)) or "")
        if other is not None and "every" not in entry and several not in entry:
            del made[one]
            made |= {several: f"{other[1]} on", "every": 2}
    return made
