"""Reads `in 2nd ch-2 sp`: those before it are passed, and it is the next."""

from .cursor import Cursor, UnreadableError
from .targets import read_target
from .tree import Amount, Skip, Step, Target


def pass_to_the_nth(cursor: Cursor, steps: list[Step]) -> None:
    """Adds what is skipped on the way to the space that the finger's `in 2nd ch-2 sp` names, if it names one.

    Where the line has named one by its number before (`in first ch-2 sp, …`), they are counted from there.
    """
    words, at = cursor.words, cursor.at
    if words[at].means != "in" or words[at + 1].means != "ord":
        return
    target = _space(cursor, at + 2)
    if target is None:
        return
    number: int = words[at + 1].value
    before = max((_numbered(cursor, one, target) for one in range(at)), default=0)
    passed = number - 1 - (before if before < number else 0)
    if passed:
        steps.append(Skip(Amount((passed,)), target, span=cursor.span(at + 1)))
    words[at + 1].means = "next"


def _space(cursor: Cursor, at: int) -> Target | None:
    """The space named at a word, with no `of` behind it; the finger stays."""
    keep = cursor.at
    if cursor.words[at].means not in ("sp", "loop", "num", "ch", "chsp"):
        return None
    cursor.at = at
    try:
        target = read_target(cursor)
        return target if target.kind in ("space", "loop") and cursor.means != "of" else None
    except UnreadableError:
        return None
    finally:
        cursor.at = keep


def _numbered(cursor: Cursor, at: int, target: Target) -> int:
    """Which of these spaces a word has named before, `first` or `2nd`; 0 for any other word."""
    word = cursor.words[at]
    if word.means == "first":
        number = 1
    elif isinstance(word.value, int) and word.means in ("ord", "next"):
        number = word.value
    else:
        return 0
    return number if _space(cursor, at + 1) == target else 0
