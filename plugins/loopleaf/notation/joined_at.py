"""Reads where a new yarn is joined, in the author's own words for a spot of the edge: `join yarn with sl st
at lower corner`, `in bottom corner`, `at top edge`.
"""

from .cursor import Cursor
from .targets import of_round
from .tree import STITCH, Amount, Group, Skip, Step, Target, Work

MOST_WORDS = 6
_WORDS = frozenset(
    {"?", "corner", "edge", "centre", "side", "of", "ending", "beg", "first", "last", "row", "round", "num",
     "a", "top", "base", "other", "same", "foundation", "marker", "ch", "st", "ord"}
)  # fmt: skip
_SPOTS = frozenset({"corner", "edge", "ending", "side"})
_CLOSES = frozenset({",", "end", ")", "(", "with", "and", "then"})


def read_spot(cursor: Cursor) -> str:
    """The words behind `at`, or behind an `in` where a word of the author's own names a corner or an edge;
    "" (and nothing passed) where none are.
    """
    if cursor.means not in ("at", "in"):
        return ""
    first = at = cursor.at + 1 + (cursor.ahead() == "a")
    while cursor.words[at].means in _WORDS:
        at += 1
    if not 0 < at - first <= MOST_WORDS or cursor.words[at].means not in _CLOSES:
        return ""
    own = cursor.words[first].means in ("?", "top", "base")
    if cursor.means == "in" and not (own and cursor.words[at - 1].means in _SPOTS):
        return ""
    cursor.at = at
    return " ".join(cursor.said(first, at).split())


_SEAM = frozenset(
    {
        "seam",
        "side",
        "back",
        "center",
        "centre",
        "left",
        "right",
        "edge",
        "beg",
        "beginning",
        "start",
        "join",
        "joining",
    }
)


def pass_from_the_seam(cursor: Cursor, steps: list[Step]) -> None:
    """`join yarn in 5th st from seam`, `from joining`: four are skipped from where the edge begins, and it is
    the next."""
    words, at = cursor.words, cursor.at
    while words[at].means not in (",", "end", ")", "ord"):
        at += 1
    if words[at].means != "ord" or words[at - 1].means not in ("in", "to"):
        return
    if words[at + 1].means == "st" and not any(isinstance(step, Work | Group) for step in steps):
        own = _of_its_round(cursor, at + 2)
        if own is not None and words[at].value > 1:  # `join B in 3rd st of Rnd 2`
            steps.append(Skip(Amount((words[at].value - 1,)), own, span=cursor.span(at)))
            words[at].means = "next"
            return
    end = at + 3
    if words[at + 1].means not in ("st", "stitch") or words[at + 2].means != "from":
        return
    while words[end].means not in _CLOSES and cursor.said(end, end + 1).lower() in _SEAM:
        end += 1
    number: int = words[at].value
    if end == at + 3 or words[end].means not in _CLOSES or number < 2:
        return
    steps.append(Skip(Amount((number - 1,)), span=cursor.span(at)))
    words[at].means = "next"
    for word in words[at + 2 : end]:
        word.means = ","


def _of_its_round(cursor: Cursor, at: int) -> Target | None:
    """The stitches of the round that is named at a word, or of the last one where the words end; None where
    more is said of them."""
    here, cursor.at = cursor.at, at
    target = of_round(cursor, STITCH)
    ends = cursor.means in (",", "end", ")")
    cursor.at = here
    return target if ends else None
