"""Reads what is passed over: `sk next 2 sts`, `leave last 4 sts unworked`."""

from dataclasses import replace

from .along_words import pass_part
from .chain_places import pass_the_arch
from .cursor import Cursor, UnreadableError, read_amount
from .edges import read_of_piece
from .place_parts import ends_in_s, pass_at_base
from .purposes import part_at, read_purpose
from .targets import read_counted_target, starts_named_number, starts_target
from .tree import ONE, STITCH, Amount, Each, Leave, Repeat, Skip, Step, Target, Turn, Work
from .untils import read_until, starts_until

_ENDS = frozenset({",", "end", ")", "and", "then"})


def read_skip(cursor: Cursor, steps: list[Step]) -> None:
    """`sk 2`, `sk next ch-sp`, `sk first st`, `sk last st`, `sk st`."""
    first = cursor.at
    cursor.at += 1
    cursor.take("over")
    cursor.take("a")
    which = "next"
    if pass_at_base(cursor):
        steps.append(Skip(ONE, STITCH, "first", cursor.span(first)))
        return
    if cursor.means == "(" or (cursor.means == "next" and cursor.ahead() == "("):
        _read_several(cursor, steps)
        return
    if cursor.means in ("next", "first", "last"):
        which = cursor.means
        cursor.at += 1
    elif cursor.means == "centre" and cursor.ahead() == "num":
        cursor.at += 1  # `sk center 4 sts, join yarn in next st`: the line has come so far
    every = cursor.take("all") or cursor.take("each")
    if starts_until(cursor, cursor.at):
        _skip_to(cursor, steps, first, STITCH)
        return
    amount = None
    target = STITCH
    if cursor.means in ("num", "-") and not starts_named_number(cursor, cursor.at):
        amount = read_amount(cursor)
    if amount is None and which == "next" and cursor.words[cursor.at - 1].means == "next":
        amount = ONE if cursor.means in _ENDS else None  # `sk next, sc in next`
    if amount is None or starts_target(cursor, cursor.at) or starts_named_number(cursor, cursor.at):
        target = read_counted_target(cursor)[1]
    if amount is None and (every or ends_in_s(cursor, cursor.at - 1)) and starts_until(cursor, cursor.at):
        _skip_to(cursor, steps, first, target)
        return
    several = every or ends_in_s(cursor, cursor.at - 1)
    if target.kind in ("picot", "space") and amount is None and which == "next" and several:
        which = "all"
    if every and amount is None and which == "next":
        raise cursor.fail("skip-until")
    if _pass_behind(cursor):
        which = "behind"
    pass_the_arch(cursor, target)  # `sk 2 ch of turning ch`
    if cursor.means == "of":
        pass_part(cursor)  # `sk 6 sts of sleeve`
    if which == "next":
        cursor.at = part_at(cursor, cursor.at) or cursor.at  # `sk 8 sts at center`
    piece = read_of_piece(cursor)
    bare = cursor.words[first + 1].means == "num"
    purpose = read_purpose(cursor)
    skip = Skip(amount or ONE, target, which, cursor.span(first), purpose, bare, piece=piece)  # type: ignore[arg-type]
    steps.append(skip)
    steps.extend(_listed(cursor))
    while (more := _more(cursor)) is not None:
        steps.append(more)


def _skip_to(cursor: Cursor, steps: list[Step], first: int, target: Target) -> None:
    """`sk all dc to next ch-2 sp`, `sk to marker`."""
    until = read_until(cursor)
    purpose = read_purpose(cursor)
    steps.append(Skip(ONE, target, "next", cursor.span(first), purpose, until=until))


def _read_several(cursor: Cursor, steps: list[Step]) -> None:
    """`sk next (ch-4 sp, sc, ch-4 sp)`: one after the other."""
    cursor.take("next")
    close: int = cursor.words[cursor.at].value
    cursor.at += 1
    while cursor.at < close:
        if cursor.means in (",", "and", "next", "a"):
            cursor.at += 1
            continue
        first = cursor.at
        amount, target = read_counted_target(cursor, bare=True)
        steps.append(Skip(amount or ONE, target, span=cursor.span(first)))
    cursor.at = close + 1


def _listed(cursor: Cursor) -> list[Skip]:
    """`, next 2 sc and next ch-2 sp` behind `sk next ch-2 sp`: a list that ends in a space; else nothing is
    passed.
    """
    before, found = cursor.at, list[Skip]()
    while cursor.means in (",", "and"):
        ends = cursor.means == "and"
        cursor.at += 1
        first = cursor.at
        cursor.take("next")
        try:
            amount, target = read_counted_target(cursor)
        except UnreadableError:
            break
        found.append(Skip(amount or ONE, target, span=cursor.span(first)))
        if ends and len(found) > 1 and target.kind in ("space", "loop") and cursor.means in _ENDS:
            return found
    cursor.at = before
    return []


def _more(cursor: Cursor) -> Skip | None:
    """`and ch-3 sp`, `and next dc` behind `sk first sc`; None where the next step begins."""
    before = cursor.at
    if not cursor.take("and"):
        return None
    first = cursor.at
    following = cursor.take("next")
    try:
        amount, target = read_counted_target(cursor)
    except UnreadableError:
        cursor.at = before
        return None
    numbered = amount is not None and target.kind in ("stitch", "chain")  # `miss 2ch and 1dc`
    names = following or numbered or target.kind in ("space", "loop", "picot") or target == STITCH
    if not names or cursor.means not in _ENDS:
        cursor.at = before
        return None
    return Skip(amount or ONE, target, span=cursor.span(first))


def _pass_behind(cursor: Cursor) -> bool:
    """`sk st behind it`, `behind dc`, `behind long dc just made`: what a stitch worked further down hides."""
    if cursor.means != "behind":
        return False
    cursor.at += 1
    if cursor.said(cursor.at, cursor.at + 1).lower() in ("it", "them"):
        cursor.at += 1
    elif cursor.means not in (",", "end", ")"):
        cursor.take("next")
        if not cursor.take("spike") or starts_target(cursor, cursor.at):
            read_counted_target(cursor)
        cursor.take("just-made")
    return True


def starts_only_over(cursor: Cursor, at: int) -> bool:
    """Whether `over next 16 sts only`, `on these 16 sts only` stands at a word."""
    if cursor.words[at].means not in ("over", "in", "across"):
        return False
    here, cursor.at = cursor.at, at
    try:
        _read_those(cursor)
        return _says_only(cursor)
    except UnreadableError:
        return False
    finally:
        cursor.at = here


def _read_those(cursor: Cursor) -> tuple[Amount | None, Target]:
    """`over next 16 sts`: how many, and what."""
    at = cursor.at + 1
    which = cursor.words[at].means in ("next", "first") or cursor.said(at, at + 1).lower() == "these"
    cursor.at = at + which
    return read_counted_target(cursor)


def _says_only(cursor: Cursor) -> bool:
    return cursor.said(cursor.at, cursor.at + 1).lower() == "only"


def read_only_over(cursor: Cursor, steps: list[Step], first: int) -> None:
    """`over next 16 sts only`: all behind those is left unworked; `these 5 sts only` are those just made."""
    these = cursor.said(cursor.at + 1, cursor.at + 2).lower() == "these"
    amount, target = _read_those(cursor)
    cursor.at += 1
    if these and isinstance(steps[-1] if steps else None, Turn):
        steps.append(Leave(None, STITCH, cursor.span(first)))
        return
    steps.append(Leave(None, target, cursor.span(first), but=amount or ONE))


def read_leave(cursor: Cursor, steps: list[Step]) -> None:
    """`leave last 4 sts unworked`, `leave remaining sts unworked`; `leave first 3 sts unworked` skips."""
    first = cursor.at
    cursor.at += 1
    if cursor.take("first"):
        amount, target = read_counted_target(cursor)
        if not cursor.take("free"):
            cursor.need("unworked", "unworked")
        steps.append(Skip(amount or ONE, target, "first", cursor.span(first)))
        return
    left = _those_left(cursor, steps)
    if left is not None:
        steps.append(replace(left, span=cursor.span(first)))
        return
    steps.append(_left(cursor, first))


def _left(cursor: Cursor, first: int) -> Leave:
    """`last 4 sts unworked`, `remaining 2 sts free`, `last 4 sts unworked for thumb`."""
    remaining = cursor.means == "remaining"
    if remaining or cursor.means in ("last", "next"):
        cursor.at += 1
    bare = remaining and cursor.means in ("unworked", "free") and cursor.ahead() in (",", "end", ")")
    amount, target = (None, STITCH) if bare else read_counted_target(cursor)  # `leave rem unworked`
    if not cursor.take("free"):
        cursor.need("unworked", "unworked")
    count = amount if remaining else (amount or ONE)
    purpose = read_purpose(cursor)
    return Leave(count, target, cursor.span(first), purpose)


_THESE = frozenset({"them", "these", "those"})


def _those_left(cursor: Cursor, steps: list[Step]) -> Leave | None:
    """`sc in each st to last 3 sts, leaving them unworked`: the stitches that the step before went up to;
    None where no such word stands, or nothing before says how many they are.
    """
    at = cursor.at + 1
    at += cursor.words[at].means == "st"
    left = cursor.words[at].means in ("unworked", "free")
    if cursor.said(cursor.at, cursor.at + 1).lower() not in _THESE or not left:
        return None
    for step in reversed(steps):
        until = step.until if isinstance(step, Repeat) else None
        if isinstance(step, Work) and step.places and isinstance(step.places[-1], Each):
            until = step.places[-1].until
        if until is not None and until.kind == "to-last":
            cursor.at = at + 1
            return Leave(until.count, until.target)
        if not isinstance(step, Turn):
            return None
    return None


def read_left_aside(cursor: Cursor, steps: list[Step]) -> bool:
    """`turn (last 2 sts unworked)`, `(leave last 2 sts unworked)`: the bracket says what the row leaves."""
    first, close = cursor.at, cursor.words[cursor.at].value
    closed = cursor.words[close + 1].means in _ENDS or cursor.words[close + 1].means == "turn"
    if cursor.words[close - 1].means not in ("unworked", "free") or not closed:
        return False
    cursor.at += 1
    cursor.take("leave")
    try:
        left = _left(cursor, first)
    except UnreadableError:
        cursor.at = first
        return False
    if cursor.at != close:
        cursor.at = first
        return False
    cursor.at += 1
    steps.append(left)
    return True
