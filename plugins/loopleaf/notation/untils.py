"""Reads where a repeat or an `each` ends: `around`, `to end`, `to last 2 sts`, `to 1 st before marker`."""

from dataclasses import replace

from .counting import plus
from .cursor import Cursor, read_amount
from .targets import CLOSES, SP, SPACES, STRETCHES, read_counted_target, read_target, starts_named_number
from .tree import ONE, STITCH, Until


def starts_until(cursor: Cursor, at: int) -> bool:
    """Whether `around`, `across`, `to end`, `to last 2 sts` … begins at a word (and not `around post`,
    `around next st`).
    """
    words = cursor.words
    at = _so_many_before(cursor, at) or at
    means = words[at].means
    if means == "across" or (means == "along" and words[at + 1].means == "side"):
        return True
    if means == "around":
        chains = _a_chain(cursor, at + 1) or stacked_at(cursor, at + 1)[0]
        return words[at + 1].means not in _AROUND_A_PLACE and not chains
    if means in ("to", "in-front"):
        return (
            words[at + 1].means in ("ending", "last", "marker", "marked", "corner", "tch")
            or (
                words[at + 1].means in ("next", "first", "ord")
                and words[at + 2].means in ("corner", "marker")
            )
            or _a_space(cursor, at + 1)
            or _to_the_middle(cursor, at)
            or (words[at + 1].means == "beg" and words[at + 2].means in ("ch", "num", "corner"))
        )
    return means == "until" and words[at + 1].means in ("ending", "last", "marker", "corner", "num")


def stacked_at(cursor: Cursor, at: int) -> tuple[int, int]:
    """How many chains above each other are named at a word, `both ch-5 sps`, `all 3 ch-5 sps`, and where
    their name begins; 0 for none.
    """
    words = cursor.words
    number = 0
    if cursor.said(at, at + 1).lower() == "both":
        number, at = 2, at + 1
    elif words[at].means == "all" and words[at + 1].means == "num" and not words[at + 1].value.varies:
        number, at = words[at + 1].value.sizes[0] or 0, at + 2
    arch = words[at].means == "ch" and words[at + 1].means == "num"
    return (number, at) if arch or words[at].means == "chsp" or names_a_space(cursor, at) else (0, at)


def _a_chain(cursor: Cursor, at: int) -> bool:
    """Whether a chain is named at a word, `ch-9` or `ch-9 sp`, that stitches go around."""
    words = cursor.words
    arch = words[at].means == "ch" and words[at + 1].means == "num" and words[at + 1].glued
    return arch or words[at].means == "chsp" or (words[at].means == "ch" and names_a_space(cursor, at))


def _so_many_before(cursor: Cursor, at: int) -> int:
    """Where `before` stands in `to 1 st before marker`; 0 where nothing like it is said."""
    words = cursor.words
    so = words[at].means == "to" and words[at + 1].means == "num" and words[at + 2].means in ("st", "stitch")
    return at + 3 if so and words[at + 3].means == "in-front" else 0


def _to_the_middle(cursor: Cursor, at: int) -> bool:
    """Whether `to center sc` or `to center sp` stands at a word: the one in the middle of the row."""
    words = cursor.words
    return words[at + 1].means == "centre" and words[at + 2].means in ("st", "stitch", "sp")


def to_a_space(cursor: Cursor, at: int) -> bool:
    """Whether `to next ch-1 sp`, `to ch-2 sp` or `to 2ch-sp` stands at a word."""
    return cursor.words[at].means == "to" and _a_space(cursor, at + 1)


def _a_space(cursor: Cursor, at: int) -> bool:
    """Whether a space is named at a word, with `next` or `first` before it or not."""
    if cursor.words[at].means == "sp":
        return True
    return names_a_space(cursor, at + (cursor.words[at].means in _WHICH_ONE))


_SIGNS = ("marker", "corner")
_WHICH_ONE = frozenset({"next", "first", "centre"})
"""`to center ch-2 sp`: there is one, the next."""


def names_a_space(cursor: Cursor, at: int) -> bool:
    """Whether `ch-2 sp`, `2ch-sp` or `ch-sp` stands at a word."""
    words = cursor.words
    if words[at].means == "num":
        return starts_named_number(cursor, at) and words[at + 2].means in SPACES
    if words[at].means == "sp":
        return words[at - 1].means in _WHICH_ONE
    if words[at].means == "ch":
        return words[at + 1].means in SP or (words[at + 1].means == "num" and words[at + 2].means in SPACES)
    return words[at].means == "chsp"


_AROUND_A_PLACE = frozenset(
    {"post", "next", "first", "last", "same", "each", "st", "stitch", "num", "fp", "special", "marked",
     "ord", "skipped",
     "remaining", "corresponding", "form", "centre", "top", "ring", "any", "ending", "beg", "tch", "turning"}
)  # fmt: skip


def read_until(cursor: Cursor) -> Until | None:
    """Where it ends; None where that isn't said."""
    if not starts_until(cursor, cursor.at):
        return None
    if _so_many_before(cursor, cursor.at):
        cursor.at += 1
        before = read_amount(cursor)
        cursor.at += 1
        cursor.words[cursor.at].means = "to"
        until = read_until(cursor)
        return replace(until, before=before) if until is not None else None
    word = "end"
    if cursor.means in ("around", "across", "along"):
        word = cursor.means
        cursor.at += 1
        if _pass_side(cursor):
            if cursor.means != "of" or not _part(cursor, cursor.at + 1):
                return Until("corner")
            cursor.at += 1  # `along side of heel flap`: a flap has no corner there
            _pass_parts(cursor)
            return Until(word="across")
        _pass_whole(cursor)
        _pass_parts(cursor)
        if cursor.means not in ("to", "until") or not starts_until(cursor, cursor.at):
            return Until(word=word)
    middle = _to_the_middle(cursor, cursor.at)
    cursor.at += 1
    means = cursor.means
    if middle:
        cursor.at += 1
        target = read_counted_target(cursor)[1]
        if cursor.means == "of":  # `to center sc of next 3-sc group`
            cursor.at += 1 + (cursor.ahead() in ("next", "first", "a"))
            target = read_counted_target(cursor)[1]
        return Until("centre", target=target)
    if means == "beg" and cursor.ahead() == "corner":
        cursor.at += 1  # the one that the round began in
        means = cursor.means
    if means == "beg":  # `to beg ch-3`: the chain at the row's end
        cursor.at += 2
        if cursor.means in ("num", "ch"):
            cursor.at += 1
        return Until("tch")
    if means == "ending":
        cursor.at += 1
        _pass_whole(cursor)
        return Until(word=word)
    if means == "last":
        cursor.at += 1
        amount, target = read_counted_target(cursor)
        if target == STITCH and cursor.means == "and" and cursor.ahead() == "tch":
            cursor.at += 2  # `to last 2 sts and tch`: that is a stitch too
            amount = plus(amount or ONE, ONE)
        return Until("to-last", count=amount or ONE, target=target)
    if means == "num" and not starts_named_number(cursor, cursor.at):
        amount, target = read_counted_target(cursor)
        cursor.need("remain", "remain")
        return Until("to-last", count=amount or ONE, target=target)
    if cursor.take("tch"):
        return Until("tch")
    if cursor.means in _WHICH_ONE or (cursor.means == "ord" and cursor.ahead() in _SIGNS):
        cursor.at += 1
    if cursor.means in ("ch", "num", "chsp", "sp"):
        target = read_counted_target(cursor)[1]
        return Until("corner") if target.kind == "corner" else Until("next", target=target)
    if cursor.take("corner"):
        if cursor.means in ("st", "sp") or (cursor.means == "stitch" and cursor.ahead() in CLOSES):
            cursor.at += 1
        elif cursor.means == "ch" or names_a_space(cursor, cursor.at):
            read_target(cursor)
        return Until("corner")
    if cursor.take("marked"):  # `to marked st`
        read_target(cursor)
        return Until("marker")
    cursor.need("marker", "until")
    return Until("marker")


def _pass_side(cursor: Cursor) -> bool:
    """`across side`, `across last side`, `across each side`: to the corner that the side ends at."""
    at = cursor.at + (cursor.means in ("first", "last", "next", "each", "ord", "a"))
    if cursor.words[at].means != "side":
        return False
    cursor.at = at + 1
    cursor.take("edge")  # `along side edge`
    return True


def _part(cursor: Cursor, at: int) -> bool:
    return cursor.words[at].means == "?" and cursor.said(at, at + 1).lower() in STRETCHES


def _pass_parts(cursor: Cursor) -> None:
    """`across heel flap`, `across instep sts`, `around leg`: the part adds nothing."""
    at = cursor.at
    while _part(cursor, cursor.at) and cursor.ahead() != "of":
        cursor.at += 1
    cursor.at += cursor.at > at and cursor.means == "st"


def _pass_whole(cursor: Cursor) -> None:
    """`to end of round`, `around the row`: the word adds nothing."""
    if cursor.means == "of" and cursor.ahead() in ("row", "round"):
        cursor.at += 2
    elif cursor.means in ("row", "round"):
        cursor.at += 1
