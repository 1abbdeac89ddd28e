"""What may stand behind a round's count without being counted: `(12), join`, `x 6 [12]. Fasten off.`"""

from collections.abc import Sequence

from .lexer import Word
from .tree import Stitch

BEHIND_COUNTS = frozenset({"end", "turn", "no-turn", "fasten-off", "weave-in"})
"""What may stand right behind a row's count."""

_ENDS = BEHIND_COUNTS | {
    "join", "no-join", "change", "changing", "place-marker", "move-marker", "remove-marker", "invisibly",
}  # fmt: skip
_STEP_ENDS = frozenset({",", "and", "then"})
_TAILS = frozenset({"leave", "with", "for-sewing", "tail"})


def is_bare_count(words: Sequence[Word], at: int) -> bool:
    """Whether `(12)` at a word ends the line: it can only be the count."""
    alone = words[at].means == "(" and words[at].value == at + 2 and words[at + 1].means == "num"
    return alone and only_ends(words, at + 3)


def only_ends(words: Sequence[Word], at: int) -> bool:
    """Whether a word begins nothing but a round's end: every step from there on joins, turns, changes yarn,
    levels with a slip stitch, or fastens off.
    """
    begins = True
    for index in range(at, len(words)):
        word = words[index]
        if word.means == "end":
            return True
        if word.means in (")", "(", "*", "rep"):
            return False
        if word.means in _STEP_ENDS:
            begins = True
            continue
        tail = word.means in _TAILS and index > at
        if begins and word.means not in _ENDS and not tail and word.value != Stitch("slip"):
            return False
        begins = False
    return True
