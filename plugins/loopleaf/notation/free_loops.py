"""Reads loops that an earlier round left free: `in front loops of round 5`, `in each unused loop`."""

from .cursor import Cursor
from .tree import ONE, Each, FreeLoops, Next, Place, Step, Target, Until

_FREE = frozenset({"free", "unworked", "remaining"})
_AFTER = frozenset({",", "end", "(", ")", "*", "rep", "and", "then"})
_BEHIND_A_LOOP = frozenset({",", "end", ")", "around", "across", "rep", "*", "and", "to"})
_ON = frozenset({"of", "in", "from"})


def starts_free_loops(cursor: Cursor, at: int) -> bool:
    """Whether such loops are named at a word; `front loop of next st` is another thing."""
    words = cursor.words
    if words[at].means in _FREE:
        bare = words[at + 1].means == "loop" and words[at].means != "remaining"  # those are of chains
        return bare or _a_loop(cursor, at + 1)
    if not (_a_loop(cursor, at) or words[at].means == "loop"):
        return False
    return words[at + 1].means == "left-free" or _round_at(cursor, at + 1) or _named_again(cursor, at)


def _named_again(cursor: Cursor, at: int) -> bool:
    """`each front loop`, `next loop`, where the line has come to free loops before: `join B in any free front
    loop of round 2, 2 hdc in each front loop around`.
    """
    which = cursor.words[at - 1 - (cursor.words[at - 1].means == "num")].means
    if which not in ("next", "each") or cursor.words[at + 1].means not in _BEHIND_A_LOOP:
        return False
    return any(
        cursor.words[one].means in ("free", "unworked") and starts_free_loops(cursor, one)
        for one in range(at)
    )


def _a_loop(cursor: Cursor, at: int) -> bool:
    return cursor.words[at].means == "loop-of" and cursor.words[at].value in ("front", "back")


def _round_at(cursor: Cursor, at: int) -> bool:
    words = cursor.words
    if at + 2 >= len(words) or words[at].means not in _ON or words[at + 1].means not in ("round", "row"):
        return False
    return words[at + 2].means == "num" and not words[at + 2].value.variable


def read_free_loops(cursor: Cursor) -> Target:
    """`free loops of round 2`, `front loops left free in row 3`; the word of the target is `row` for rows."""
    if cursor.means in _FREE:
        cursor.at += 1
    loop: str = cursor.words[cursor.at].value if cursor.means == "loop-of" else ""
    cursor.at += 1
    if cursor.means == "of" and cursor.ahead() == "each" and cursor.ahead(2) in ("st", "stitch"):
        cursor.at += 3  # `unused back loop of each st of round 1`
    cursor.take("left-free")
    number, word = 0, ""
    if _round_at(cursor, cursor.at):
        word = "row" if cursor.ahead() == "row" else ""
        number = cursor.words[cursor.at + 2].value.sizes[0]
        cursor.at += 3
    return Target("free-loop", unworked=True, loop=loop, round=number, word=word)


def read_free_place(cursor: Cursor) -> Place:
    """`in free loops of round 2` is each of them, `in free loop of round 2` the next one."""
    from .untils import read_until

    first = cursor.at
    target = read_free_loops(cursor)
    said = cursor.said(first, cursor.at).lower()
    if "loops" in said or "lps" in said or " each " in said:
        return Each((target,), read_until(cursor) or Until(word=""), span=cursor.span(first))
    return Next(ONE, target, span=cursor.span(first))


def read_working_in(cursor: Cursor, steps: list[Step], first: int) -> None:
    """`working in free loops of round 2, …`: said once for the steps that follow."""
    target = read_free_loops(cursor)
    if cursor.means not in _AFTER:
        raise cursor.fail("comma")
    steps.append(FreeLoops(target.loop, target.round, target.word == "row", cursor.span(first)))
