"""Finds a group that a pattern's lines tell once and then only name: `5 dc in next ch (shell made), …, shell
in next sc`, `5-dc popcorn in next sc, …, popcorn in next sc`.
"""

import re
from collections.abc import Iterable

from ..trade import stitches
from .vocabulary import Terms, ToldGroup

_SHELL = re.compile(
    r"(?P<number>\d{1,2})[ -]?(?P<stitch>[a-z]{2,4}) (?:all )?in(?:to)?"
    r" (?:next|same|first|last|each) [\w -]{1,20}?"
    r" ?\((?:first |1st )?(?:shell|sh|fan) (?:made|formed)\)",
    re.IGNORECASE,
)
_V_STITCH = re.compile(
    r"[(\[](?:1 ?)?(?P<stitch>[a-z]{2,4}), ?(?:ch ?(?P<number>\d)|(?P<uk>\d) ?ch), ?(?:1 ?)?(?P=stitch)[)\]]"
    r" in(?:to)? [\w -]{1,20}? ?\((?:first |1st )?v-?st(?:itch)? (?:made|formed)\)",
    re.IGNORECASE,
)
_NUMBERED = re.compile(
    r"(?<![\w-])(?P<number>\d{1,2})[ -]?(?P<stitch>[a-z]{2,4})[ -]"
    r"(?P<form>popcorn|bobble|puff|cluster|shell)s?(?![\w-])",
    re.IGNORECASE,
)


def groups_of(lines: Iterable[str], terms: Terms) -> tuple[ToldGroup, ...]:
    """The shell and the V-stitch that a pattern's lines call so where they tell them, and the forms that they
    give a number: form, kind, number of stitches (of a V-stitch: of chains). One told in two ways is none.
    """
    kinds = {row.names(terms).short.lower(): row.key for row in stitches()}
    told: dict[str, set[ToldGroup]] = {}
    for line in lines:
        for form, pattern in (("shell", _SHELL), ("v-stitch", _V_STITCH)):
            for said in pattern.finditer(line):
                kind = kinds.get(said["stitch"].lower(), "")
                number = said["number"] or said.groupdict().get("uk") or "1"
                told.setdefault(form, set()).add((form, kind, int(number)))
        for said in _NUMBERED.finditer(line):
            kind, form = kinds.get(said["stitch"].lower(), ""), said["form"].lower()
            told.setdefault(form, set()).add((form, kind, int(said["number"])))
    return tuple(
        sorted(ways.pop() for ways in told.values() if len(ways) == 1 and all(k for _, k, _ in ways))
    )
