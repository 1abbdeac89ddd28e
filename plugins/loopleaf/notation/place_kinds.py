"""Reads one place: `next 3 sts`, `2nd ch from hook`, `top of ch-3`, `centre st of next sh`, `between next 2
sts` …
"""

from collections.abc import Callable
from dataclasses import replace
from typing import Literal

from .along_words import read_round_the_opening
from .between import pass_before_the_chain, read_between
from .chain_places import (
    pass_the_arch,
    read_base,
    read_end_of_row,
    read_joining,
    read_own_chain,
    starts_own_chain,
)
from .chains import pass_of_these, read_begun_with, read_chain_name, starts_chain_name
from .cursor import Cursor, UnreadableError
from .each import read_each
from .edges import (
    names_piece,
    read_after_target,
    read_corresponding,
    read_every_row_end,
    read_piece,
    read_row_ends,
    starts_row_ends,
    to_the_end_of_its_edge,
)
from .gap_ends import read_gap_beside
from .made_here import read_among_made
from .names import read_stitch, starts_stitch
from .place_parts import (
    WHICH_GROUP,
    bare_group,
    ends_in_s,
    pass_at_base,
    read_marked,
    read_ring,
    read_same,
    read_skipped,
    read_so_many_skipped,
    read_within,
    skips_none,
)
from .targets import (
    BARE_SPACE,
    CHAIN,
    GAP,
    of_round,
    read_counted_target,
    read_target,
    starts_named_number,
    starts_target,
)
from .tree import (
    ONE,
    STITCH,
    Amount,
    Between,
    ChainOf,
    Each,
    First,
    FromHook,
    JustMade,
    Last,
    Marked,
    Next,
    Over,
    Place,
    RowEnds,
    Same,
    Skipped,
    Target,
    Until,
    Within,
)
from .untils import names_a_space, read_until


def read_place(cursor: Cursor) -> Place:
    """One place, after its `in`. Raises UnreadableError where none is named."""
    first = cursor.at
    while cursor.take("a"):
        pass
    reader = _READERS.get(cursor.means)
    place: Place
    if cursor.means in ("first", "ord", "?") and names_piece(cursor, cursor.at):
        cursor.at -= 1
        place = Next(piece=read_piece(cursor))  # `sc in first leg`: the next stitch of it
    elif reader is not None:
        place = reader(cursor)
    elif starts_own_chain(cursor):
        place = read_own_chain(cursor)
    elif cursor.means == "beg" and starts_stitch(cursor, cursor.at + 1):  # `join to beg sc`
        cursor.at += 1
        place = First(ONE, read_target(cursor))
    elif cursor.means == "num" or cursor.means == "-" or starts_target(cursor, cursor.at):
        place = _unsaid_next(cursor)
    else:
        raise cursor.fail("place")
    return replace(place, span=cursor.span(first))


def _unsaid_next(cursor: Cursor) -> Place:
    """`in ch-6 sp` (the next one), `in 3 sts`, `in ch-1 sp of next sh`, `in sp between next 2 groups`, `in
    st 2 rounds below`.
    """
    if cursor.means == "sp" and cursor.ahead() == "between":
        cursor.at += 1
        between = read_between(cursor)
        one = isinstance(between, Each) and between.until == Until(word="")
        if not one:
            return between
        return read_after_target(cursor, Next(ONE, of_round(cursor, GAP)))  # `sp between groups`: the next
    if pass_before_the_chain(cursor):
        return Last(ONE, BARE_SPACE)
    if (beside := read_gap_beside(cursor)) is not None:
        return beside
    if cursor.means == "st" and cursor.ahead() == "with" and cursor.ahead(2) == "marker":
        cursor.at += 3
        return Marked()
    if pass_at_base(cursor):
        return Same()
    if cursor.means == "num" and cursor.ahead() == "skipped":
        return read_so_many_skipped(cursor)
    amount, target = read_counted_target(cursor)
    if target.kind == "row-end":
        several = amount is None and ends_in_s(cursor, cursor.at - 1)
        return RowEnds(until=to_the_end_of_its_edge(cursor)) if several else RowEnds(count=amount or ONE)
    if amount is None and cursor.means == "of" and (cursor.ahead() in WHICH_GROUP or _of_first(cursor)):
        return read_within(cursor, "centre", target)
    if amount is None and target.kind == "space" and cursor.means == "of" and cursor.ahead() == "each":
        return _of_each(cursor, target)
    if amount is None and cursor.take("just-made"):
        return JustMade(target)
    return read_after_target(cursor, Next(amount or ONE, target, unsaid=_is_space(amount, target)))


def _of_first(cursor: Cursor) -> bool:
    """`ch-2 sp of first sh`, where the line has gone into none of them yet: the next one is the first."""
    if cursor.ahead() != "first" or names_piece(cursor, cursor.at + 1):
        return False
    return all(word.means not in ("next", "each", "last", "same") for word in cursor.words[: cursor.at])


def _is_space(amount: Amount | None, target: Target) -> bool:
    return amount is None and target.kind in ("space", "corner", "loop")


def _next(cursor: Cursor) -> Place:
    cursor.at += 1
    if cursor.means == "row" and cursor.ahead() == "ending":
        cursor.at += 2
        return RowEnds(count=ONE)
    if cursor.means == "skipped":
        cursor.at += 1
        return _further_down(cursor) or Skipped("next")
    if cursor.means == "num" and cursor.ahead() == "skipped":
        return read_so_many_skipped(cursor)
    if cursor.means in _NOTHING_MORE - {"end"}:  # `*1 sc, 2 sc in next, rep from * around`
        return Next()
    amount, target = read_counted_target(cursor, bare=True)
    if target.kind == "row-end":
        return RowEnds(count=amount or ONE)
    if target.kind == "space" and cursor.means == "between" and cursor.ahead() in ("st", "stitch"):
        cursor.at += 1
        return Between(read_target(cursor))  # `next sp between dc`: from one to the next
    if target.kind == "space" and cursor.means == "between" and cursor.ahead() == "group":
        cursor.at += 2  # `next ch-1 sp between groups`: its length says which
    chain = read_end_of_row(cursor, amount, target)
    if chain is not None:
        return chain
    pass_the_arch(cursor, target)
    return read_after_target(cursor, Next(amount or ONE, target))


_NOTHING_MORE = frozenset({",", "end", ")", "rep"})


def _first(cursor: Cursor) -> Place:
    if cursor.ahead() == "ch":
        after = cursor.ahead(2)
        if after == "from-hook":
            cursor.at += 3
            return FromHook(1)
        if after == "of" and starts_chain_name(cursor, cursor.at + 3):
            cursor.at += 3
            return read_chain_name(cursor, 1)
    if cursor.ahead() == "skipped":
        cursor.at += 1
        return _skipped(cursor)
    cursor.at += 1
    if cursor.means in _NOTHING_MORE:  # `2 sc in first, sc in next 4`
        return First()
    if cursor.means == "of" and pass_of_these(cursor):
        return read_chain_name(cursor, 1)
    amount, target = read_counted_target(cursor, bare=True)
    if cursor.means == "of" and names_piece(cursor, cursor.at + 1):  # `first 3 sts of leg 1`
        return Next(amount or ONE, target, piece=read_piece(cursor))
    if amount is None and cursor.means == "of":
        return read_within(cursor, "first", target)
    if pass_the_arch(cursor, target):  # `first 3 chs of next ch-5 sp`
        return Next(amount or ONE, target)
    cursor.take("just-made")  # `place marker in first sc made`
    return First(amount or ONE, target)


def _last(cursor: Cursor) -> Place:
    cursor.at += 1
    if cursor.means in _NOTHING_MORE:  # `inc in last`
        return Last()
    amount, target = read_counted_target(cursor, bare=True)
    if amount is None and cursor.means == "of" and cursor.ahead() in WHICH_GROUP:
        return read_within(cursor, "last", target)
    if amount is None and cursor.take("just-made"):
        return JustMade(target)
    return Last(amount or ONE, target)


def _ord(cursor: Cursor) -> Place:
    """`2nd ch from hook`, `3rd ch of ch-5`, `3rd ch of tch`, `3rd of 3ch`, `2nd dc of next sh`."""
    number: int = cursor.words[cursor.at].value
    cursor.at += 1
    if cursor.means == "ch" and cursor.ahead() == "from-hook":
        cursor.at += 2
        return FromHook(number)
    if cursor.means == "skipped" and cursor.ahead() == "ch" and skips_none(cursor):
        return read_chain_name(cursor, number)
    if cursor.means == "skipped":
        read_skipped(cursor)
        return Skipped("nth", number)
    if cursor.means == "of" and (among := read_among_made(cursor, number)) is not None:
        return among
    if cursor.means == "of" and (group := bare_group(cursor)) is not None:
        return Within("nth", STITCH, group, number)
    if cursor.means == "of":
        cursor.at += 1
        return read_begun_with(cursor, number) or read_chain_name(cursor, number)
    target = read_target(cursor)
    if target == CHAIN and cursor.means == "to-join":
        return ChainOf(number, "beg")  # `sl st in 3rd ch to join`
    if cursor.take("just-made"):
        return JustMade(target, number)
    if cursor.means != "of":
        raise cursor.fail("of-what")
    if target in (CHAIN, STITCH) and starts_chain_name(cursor, cursor.at + 1):
        cursor.at += 1  # `3rd ch of ch-5`, in older print `3rd st of ch-5`
        return read_chain_name(cursor, number)
    return read_within(cursor, "nth", target, number)


def _remaining(cursor: Cursor) -> Place:
    cursor.at += 1
    amount, target = read_counted_target(cursor)
    if amount is not None:
        return Next(amount, target)
    return Each((target,), read_until(cursor) or Until(word=""), remaining=True)


def _top(cursor: Cursor) -> Place:
    """`top of ch-3`; `top of next dc` is just the next dc."""
    cursor.at += 1
    cursor.need("of", "of-what")
    bare = cursor.means == "ch" and cursor.ahead() in (",", "end", ")", "with")
    if begun := read_begun_with(cursor, 0):
        return begun
    if starts_chain_name(cursor, cursor.at) or bare:
        return read_chain_name(cursor, 0)  # of a bare `ch` only one that stands for a stitch has a top
    return read_place(cursor)


def _of_each(cursor: Cursor, target: Target | None) -> Place:
    """`in ch-1 sp of each V-st across`, `in centre of each sh`: each of them, in the place that is named."""
    cursor.at += 2
    group = read_counted_target(cursor)[1]
    return Each((target or group,), read_until(cursor) or Until(word=""))


def _centre(cursor: Cursor) -> Place:
    cursor.at += 1
    if cursor.means == "of" and cursor.ahead() == "each":
        return _of_each(cursor, None)
    if cursor.means == "of" and cursor.ahead() in ("next", "last", "first"):  # `centre of next sh`: its place
        cursor.at += 1
        return _READERS[cursor.means](cursor)
    if cursor.means == "of" and (
        names_a_space(cursor, cursor.at + 1)  # `sl st to center of ch-5 sp`
        or cursor.ahead() in ("form", "special", "group")  # `dc in center of V-st`
    ):
        cursor.at += 1
        return _unsaid_next(cursor)
    first = cursor.at
    target = read_target(cursor)
    if target.kind in ("space", "corner") and cursor.means != "of":  # `in center ch-2 sp`: there is only one
        cursor.at = first
        return _unsaid_next(cursor)
    if cursor.means == "of" and cursor.ahead(1 + (cursor.ahead() in ("next", "a"))) == "corner":
        cursor.at += 1 + (cursor.ahead() in ("next", "a"))
        return Next(ONE, read_target(cursor))  # `center st of corner`
    if target.kind == "stitch" and cursor.means != "of":
        return Next(ONE, target, centre=True)  # `3 sc in center sc`: the line has come so far
    return read_within(cursor, "centre", target)


def _further_down(cursor: Cursor) -> Place | None:
    """The `sc 2 rows below` or `st of round 1` behind `skipped`; None where no round further down is said."""
    target = of_round(cursor, read_target(cursor))
    if not target.round and (cursor.means != "num" or cursor.ahead(2) != "below"):
        return None
    return read_after_target(cursor, Next(ONE, target, skipped=True))


def _skipped(cursor: Cursor) -> Place:
    """`skipped st`; `skipped sc 2 rows below` is the next one there."""
    at = cursor.at
    place = read_skipped(cursor)
    cursor.at = at + 1
    return _further_down(cursor) or place


def _any(cursor: Cursor) -> Place:
    cursor.at += 1
    if cursor.means == "sp" and cursor.ahead() == "between" and cursor.ahead(2) in ("st", "stitch"):
        cursor.at += 2  # `any sp between dc`: from one to the next
        return Between(read_target(cursor), any=True)
    return read_after_target(cursor, Next(ONE, read_counted_target(cursor)[1], any=True))


def _far(cursor: Cursor) -> Place:
    """`other side of next 3 chs`: a chain made in this round, worked from below."""
    if cursor.ahead() != "of":
        raise cursor.fail("place")
    first = cursor.at
    cursor.at += 2
    place = read_place(cursor)
    if isinstance(place, Each) and place.targets == (CHAIN,):
        return place
    if not isinstance(place, Next) or place.target != CHAIN:
        raise UnreadableError(first, "place")
    return replace(place, far=True)


def read_over(cursor: Cursor) -> Place:
    """`over next 5 sts`, after its `over`."""
    first = cursor.at
    which: Literal["next", "first", "last"] = "next"
    if cursor.means in ("next", "first", "last"):
        which = cursor.means  # type: ignore[assignment]
        cursor.at += 1
    if cursor.means not in ("num", "-") and not starts_target(cursor, cursor.at):
        raise cursor.fail("over")
    amount, target = read_counted_target(cursor)
    return Over(amount or ONE, target, which, cursor.span(first))


def _each(cursor: Cursor) -> Place:
    cursor.at += 1
    means = cursor.means
    if means == "of":
        cursor.at += 1
        means = cursor.means
        if means not in ("next", "first", "last", "num", "-", "remaining", "skipped"):
            raise cursor.fail("each-of")
        if means not in ("num", "-"):
            return _READERS[means](cursor)
        place = _unsaid_next(cursor)
        read_until(cursor)  # `each of 8 sts around`: the number says it
        return place
    if means == "next":
        return _next(cursor)
    if means == "ending" and starts_stitch(cursor, cursor.at + 1):
        cursor.at += 1  # `each end dc`: the row ends are those stitches' sides
        return RowEnds(read_stitch(cursor), until=to_the_end_of_its_edge(cursor))
    if starts_row_ends(cursor, cursor.at):
        return read_every_row_end(cursor)
    if means == "skipped":
        read_skipped(cursor)
        read_round_the_opening(cursor)
        return Skipped("all")
    if means == "num" and not starts_named_number(cursor, cursor.at):
        return _unsaid_next(cursor)
    found = read_each(cursor)
    return read_within(cursor, "each", found) if isinstance(found, Target) else found


_READERS: dict[str, Callable[[Cursor], Place]] = {
    "other-side": _far,
    "next": _next, "first": _first, "last": _last, "same": read_same, "each": _each, "remaining": _remaining,
    "ring": read_ring, "ord": _ord, "top": _top, "centre": _centre, "marked": read_marked,
    "skipped": _skipped, "any": _any, "join": read_joining, "at-base": read_base,
    "corresponding": read_corresponding, "between": read_between, "ending": read_row_ends,
    "side": read_row_ends, "base": read_base,
}  # fmt: skip
