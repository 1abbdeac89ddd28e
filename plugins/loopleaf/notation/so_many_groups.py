"""Reads a repeat told by what it comes to: `rep from * until you have 6 groups`."""

from .cursor import Cursor
from .tree import Amount

_LEAD_IN = frozenset({"you have", "there are", "you have made", "you have worked"})
_GROUPS = frozenset({"group", "group-name", "form", "special"})


def read_so_many_groups(cursor: Cursor) -> tuple[Amount, bool] | None:
    """How often that is, and whether it is unclear: where stitches stand before the repeat, they may be one
    of the groups. None (and nothing passed) where nothing like it is said.
    """
    if cursor.means != "until":
        return None
    words = cursor.words
    at = first = cursor.at + 1
    while words[at].means not in ("num", ",", "end"):
        at += 1
    if words[at].means != "num" or cursor.said(first, at).lower() not in _LEAD_IN:
        return None
    number = words[at].value.sizes[0] or 0
    if words[at + 1].means not in _GROUPS or words[at].value.varies or number < 2:
        return None
    star = next((i for i, word in enumerate(words) if word.means in ("*", "(")), 0)
    begun = any(word.means == "stitch" and word.value.kind != "slip" for word in words[:star])
    cursor.at = at + 2
    return (Amount((number - 1,)), True) if begun else (Amount((number,)), False)
