"""Reads where stitches go: `in next st`, `in each st around`, `around post of next dc`, `over next 5 sts` and the rest."""

from dataclasses import dataclass, replace

from .chains import read_chain_name, starts_chain_name
from .cursor import Cursor, UnreadableError, read_amount
from .names import read_stitch
from .targets import (
    CHAIN,
    read_counted_target,
    read_target,
    read_until,
    starts_named_number,
    starts_target,
    starts_until,
)
from .tree import (
    ONE,
    STITCH,
    Amount,
    Between,
    ChainOf,
    Corresponding,
    Each,
    Evenly,
    First,
    FromHook,
    Last,
    Marked,
    Next,
    Over,
    Place,
    Ring,
    RowEnds,
    Same,
    Skipped,
    Stitch,
    Target,
    Until,
    Within,
)


@dataclass(slots=True)
class Where:
    """Places as read, and what their wording says about the stitch: its loop, its post, the layers it goes through.

    each: `each of` was said, so that a number before the stitch means so many in each.
    """

    places: tuple[Place, ...] = ()
    loop: str = ""
    post: str = ""
    through: str = ""
    each: bool = False


_BEGIN = frozenset({"in", "over", "between", "evenly", "along"})


def starts_place(cursor: Cursor, at: int) -> bool:
    """Whether a place begins at a word."""
    means = cursor.words[at].means
    if means == "in":
        return True
    if means in _BEGIN:
        return means != "along" or cursor.words[at + 1].means == "edge"
    return means == "around" and not starts_until(cursor, at)


def read_places(cursor: Cursor) -> Where:
    """All the places of a stitch, as far as they are joined by `and`."""
    where = Where()
    places: list[Place] = []
    _read_one(cursor, where, places)
    while cursor.means == "and" and (
        cursor.ahead() in ("in", "next", "first", "last", "same", "each", "over")
        and not (cursor.ahead() == "in" and cursor.words[cursor.at + 2].means == "loop-of")
    ):
        cursor.at += 1
        _read_one(cursor, where, places)
    if cursor.means == "through" and cursor.ahead() == "layers":
        where.through = cursor.words[cursor.at + 1].value
        cursor.at += 2
    if cursor.means == "in" and cursor.ahead() == "loop-of" and cursor.ahead(2) != "of" and not where.loop:
        where.loop = cursor.words[cursor.at + 1].value
        cursor.at += 2
    where.places = tuple(places)
    return where


def _read_one(cursor: Cursor, where: Where, places: list[Place]) -> None:
    means = cursor.means
    if means == "in":
        cursor.at += 1
    elif means == "around":
        cursor.at += 1
        where.post = where.post or "around"
        if cursor.means == "fp":
            where.post = cursor.words[cursor.at].value
            cursor.at += 1
            cursor.take("post")
            cursor.need("of", "post")
        elif cursor.take("post") and not cursor.take("of"):
            return
    elif means == "over":
        cursor.at += 1
        places.append(_over(cursor))
        return
    elif means in ("evenly", "along"):
        places.append(_evenly(cursor))
        return
    if cursor.means == "loop-of":
        where.loop = cursor.words[cursor.at].value
        cursor.at += 1
        if not cursor.take("of") and not starts_place(cursor, cursor.at):
            return
        cursor.take("in")
        if cursor.means in ("over", "evenly", "around"):
            _read_one(cursor, where, places)
            return
    places.append(read_place(cursor, where))


def read_place(cursor: Cursor, where: Where | None = None) -> Place:
    """One place, after its `in`. Raises UnreadableError where none is named."""
    first = cursor.at
    while cursor.take("a"):
        pass
    reader = _READERS.get(cursor.means)
    if reader is not None:
        place = reader(cursor)
    elif cursor.means in ("tch", "beg") and starts_chain_name(cursor, cursor.at):
        place = read_chain_name(cursor, 0)
    elif cursor.means == "num" or cursor.means == "-" or starts_target(cursor, cursor.at):
        place = _unsaid_next(cursor)
    else:
        raise cursor.fail("place")
    if where is not None and cursor.words[first].means == "each":
        where.each = True
    return replace(place, span=cursor.span(first))


def _unsaid_next(cursor: Cursor) -> Place:
    """`in ch-6 sp` (the next one), `in 3 sts`, `in ch-1 sp of next sh`, `in sp between next 2 groups`, `in st 2 rounds below`."""
    if cursor.means == "sp" and cursor.ahead() == "between":
        cursor.at += 1
        return _between(cursor)
    if cursor.means == "end" or (cursor.means == "side" and cursor.ahead() == "of"):
        return _row_ends(cursor)
    if cursor.means == "base" and cursor.ahead() == "of":
        cursor.at += 2
        read_chain_name(cursor, 0)
        return Same()
    if cursor.means == "st" and cursor.ahead() == "with" and cursor.ahead(2) == "marker":
        cursor.at += 3
        return Marked()
    amount, target = read_counted_target(cursor)
    if amount is None and cursor.means == "of" and cursor.ahead() in ("next", "same"):
        return _within(cursor, "centre", target)
    return _after_target(cursor, Next(amount or ONE, target))


def _after_target(cursor: Cursor, place: Next) -> Place:
    """What may follow `next 3 sts`: `2 rounds below`, `of edge`, `of leg 2`."""
    means = cursor.means
    if means == "num" and cursor.ahead() in ("row", "round") and cursor.ahead(2) == "below":
        below = cursor.words[cursor.at].value.sizes[0]
        rows = cursor.ahead() == "row"
        cursor.at += 3
        return replace(place, below=below, rows=rows)
    if means == "row" and cursor.ahead() == "below":
        cursor.at += 2
        return replace(place, below=1, rows=True)
    if means == "round" and cursor.ahead() == "below":
        cursor.at += 2
        return replace(place, below=1)
    if means == "of":
        if cursor.ahead() == "edge" and not _piece_at(cursor, cursor.at + 1):
            cursor.at += 2
            return replace(place, target=Target("edge"))
        piece = read_piece(cursor)
        if piece:
            return replace(place, piece=piece)
    return place


def _piece_at(cursor: Cursor, at: int) -> str:
    """The pattern's piece whose name begins at a word, as the file spells it; "" where there is none."""
    start = cursor.words[at].start
    rest = cursor.text[start:].lower()
    found = ""
    for piece in cursor.vocabulary.pieces:
        name = piece.lower()
        if len(name) > len(found) and rest.startswith(name) and not rest[len(name) : len(name) + 1].isalnum():
            found = piece
    return found


def read_piece(cursor: Cursor) -> str:
    """`of leg 2`: a piece of the pattern with the number of its copy, or words that can only be such a name; "" else."""
    words = cursor.words
    at = cursor.at + 1
    piece = _piece_at(cursor, at)
    if piece:
        end = words[at].start + len(piece)
        while words[at].means != "end" and words[at].start < end:
            at += 1
    else:
        first = at
        while words[at].means == "?" and at - first < 3:
            at += 1
        if at == first:
            return ""
        piece = cursor.said(first, at).lower()
    if words[at].means == "num" and words[at + 1].means not in ("row", "round", "times"):
        piece = f"{piece} {words[at].value.sizes[0]}"
        at += 1
    cursor.at = at
    return piece


def _next(cursor: Cursor) -> Place:
    cursor.at += 1
    if cursor.means == "row" and cursor.ahead() == "end":
        cursor.at += 2
        return RowEnds(count=ONE)
    amount, target = read_counted_target(cursor)
    return _after_target(cursor, Next(amount or ONE, target))


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
    amount, target = read_counted_target(cursor)
    if amount is None and cursor.means == "of":
        return _within(cursor, "first", target)
    return First(amount or ONE, target)


def _last(cursor: Cursor) -> Place:
    cursor.at += 1
    amount, target = read_counted_target(cursor)
    if amount is None and cursor.means == "of" and cursor.ahead() in ("next", "same"):
        return _within(cursor, "last", target)
    return Last(amount or ONE, target)


def _ord(cursor: Cursor) -> Place:
    """`2nd ch from hook`, `3rd ch of ch-5`, `3rd ch of tch`, `3rd of 3ch`, `2nd dc of next sh`."""
    number: int = cursor.words[cursor.at].value
    cursor.at += 1
    if cursor.means == "ch" and cursor.ahead() == "from-hook":
        cursor.at += 2
        return FromHook(number)
    if cursor.means == "of":
        cursor.at += 1
        return read_chain_name(cursor, number)
    target = read_target(cursor)
    if cursor.means != "of":
        raise cursor.fail("of-what")
    if target == CHAIN and starts_chain_name(cursor, cursor.at + 1):
        cursor.at += 1
        return read_chain_name(cursor, number)
    return _within(cursor, "nth", target, number)


def _within(cursor: Cursor, part: str, inner: Target, number: int = 0) -> Place:
    cursor.need("of", "of-what")
    same = cursor.means == "same"
    if not same and cursor.means != "next":
        raise cursor.fail("of-what")
    cursor.at += 1
    if cursor.means == "num" and cursor.ahead() == "ch" and cursor.ahead(2) not in ("sp", "sps", "picot"):
        of = Target("space", length=cursor.words[cursor.at].value.sizes[0])
        cursor.at += 2
    else:
        of = read_counted_target(cursor)[1]
    return Within(part, inner, of, number, same)  # type: ignore[arg-type]


def _same(cursor: Cursor) -> Place:
    cursor.at += 1
    target = read_target(cursor) if cursor.means != "num" else read_counted_target(cursor)[1]
    if cursor.means == "base" or (cursor.means == "a" and cursor.ahead() == "base"):
        raise cursor.fail("place")
    if cursor.means == "as":
        cursor.at += 1
        _pass_as(cursor)
    return Same(target)


def _pass_as(cursor: Cursor) -> None:
    """`same st as join`, `as last sc`, `as joining sl st`: only says again which stitch that is."""
    first = cursor.at
    while cursor.means in ("last", "first", "join", "beg", "tch", "turn"):
        cursor.at += 1
    if starts_target(cursor, cursor.at):
        read_target(cursor)
    if cursor.at == first:
        raise cursor.fail("place")


def _each(cursor: Cursor) -> Place:
    cursor.at += 1
    means = cursor.means
    if means == "of":
        cursor.at += 1
        means = cursor.means
        if means not in ("next", "first", "last", "num", "-", "remaining"):
            raise cursor.fail("each-of")
        return _unsaid_next(cursor) if means in ("num", "-") else _READERS[means](cursor)
    if means == "next":
        return _next(cursor)
    if means == "num" and not starts_named_number(cursor, cursor.at):
        return _unsaid_next(cursor)
    every = 1
    if means == "other":
        every = 2
        cursor.at += 1
    elif means == "ord":
        every = cursor.words[cursor.at].value
        cursor.at += 1
    if cursor.means == "row" and cursor.ahead() == "end":
        cursor.at += 2
        return RowEnds(until=read_until(cursor) or Until(word="across"))
    remaining = cursor.take("remaining")
    targets = [read_counted_target(cursor)[1]]
    while cursor.means == "and" and _joins_target(cursor):
        cursor.at += 1
        if cursor.means == "in":
            cursor.at += 1
        cursor.take("each")
        targets.append(read_counted_target(cursor)[1])
    if cursor.means == "of" and cursor.ahead() in ("next", "same") and len(targets) == 1:
        return _within(cursor, "each", targets[0])
    until = read_until(cursor) or Until(word="")
    return Each(tuple(targets), until, remaining, every)


def _joins_target(cursor: Cursor) -> bool:
    """Whether `and` goes on with what `each` counts (`each st and ch-sp`), not with another step."""
    at = cursor.at + 1
    words = cursor.words
    if words[at].means == "in":
        if words[at + 1].means != "each":
            return False
        at += 1
    if words[at].means == "each":
        at += 1
        if words[at].means in ("of", "next", "num"):
            return False
        return _ends_with_it(cursor, at)
    if words[at].means in ("st", "sp", "sps", "chsp", "picot", "corner"):
        return True
    if words[at].means == "ch":
        return words[at + 1].means in ("sp", "sps", "loop") or (
            words[at + 1].means == "num" and words[at + 2].means in ("sp", "sps", "loop")
        ) or _closes(cursor, at + 1)
    if words[at].means == "num":
        return starts_named_number(cursor, at) and words[at + 1].means == "ch"
    return words[at].means == "stitch" and _closes(cursor, at + 1)


def _ends_with_it(cursor: Cursor, at: int) -> bool:
    return starts_target(cursor, at) or starts_named_number(cursor, at)


def _closes(cursor: Cursor, at: int) -> bool:
    return cursor.words[at].means in (",", "end", ")", "and") or starts_until(cursor, at)


def _remaining(cursor: Cursor) -> Place:
    cursor.at += 1
    amount, target = read_counted_target(cursor)
    if amount is not None:
        return Next(amount, target)
    return Each((target,), read_until(cursor) or Until(word=""), remaining=True)


def _ring(cursor: Cursor) -> Place:
    cursor.at += 1
    return Ring()


def _top(cursor: Cursor) -> Place:
    """`top of ch-3`; `top of next dc` is just the next dc."""
    cursor.at += 1
    cursor.need("of", "of-what")
    if starts_chain_name(cursor, cursor.at):
        return read_chain_name(cursor, 0)
    return read_place(cursor)


def _centre(cursor: Cursor) -> Place:
    cursor.at += 1
    return _within(cursor, "centre", read_target(cursor))


def _marked(cursor: Cursor) -> Place:
    cursor.at += 1
    return Marked(read_target(cursor))


def _skipped(cursor: Cursor) -> Place:
    cursor.at += 1
    read_target(cursor)
    return Skipped()


def _any(cursor: Cursor) -> Place:
    cursor.at += 1
    return Next(ONE, read_counted_target(cursor)[1], any=True)


def _corresponding(cursor: Cursor) -> Place:
    cursor.at += 1
    target = read_counted_target(cursor)[1]
    below = _after_target(cursor, Next(ONE, target))
    if isinstance(below, Next) and below.below:
        return below
    piece = below.piece if isinstance(below, Next) else ""
    if not piece:
        raise cursor.fail("of-piece")
    return Corresponding(target, piece)


def _between(cursor: Cursor) -> Place:
    cursor.need("between", "place")
    cursor.need("next", "between")
    amount, target = read_counted_target(cursor)
    if amount != Amount((2,)):
        raise UnreadableError(cursor.at - 1, "between")
    return Between(target)


def _over(cursor: Cursor) -> Place:
    first = cursor.at
    cursor.take("next")
    amount, target = read_counted_target(cursor)
    return Over(amount or ONE, target, cursor.span(first))


def _row_ends(cursor: Cursor) -> Place:
    """`end of each row`, `end of each dc row`, `end of next 4 rows`, `side of each row`."""
    cursor.at += 1
    cursor.need("of", "row-ends")
    if cursor.take("next"):
        count = read_amount(cursor) or ONE
        stitch = _row_kind(cursor)
        cursor.need("row", "row-ends")
        return RowEnds(stitch, count)
    cursor.take("each")
    stitch = _row_kind(cursor)
    cursor.need("row", "row-ends")
    return RowEnds(stitch, None, read_until(cursor) or Until(word="across"))


def _row_kind(cursor: Cursor) -> Stitch | None:
    return read_stitch(cursor) if cursor.means == "stitch" else None


def _evenly(cursor: Cursor) -> Place:
    """`evenly along edge`, `evenly across`, `evenly along neck edge to next corner`."""
    first = cursor.at
    cursor.take("evenly")
    along = ""
    if cursor.take("along"):
        start = cursor.at
        while cursor.means not in (",", "end", ")", "(", "and") and not starts_until(cursor, cursor.at):
            cursor.at += 1
        if cursor.at == start:
            raise cursor.fail("along")
        along = " ".join(cursor.said(start, cursor.at).lower().split())
    until = read_until(cursor)
    if until is None and not along:
        raise cursor.fail("evenly")
    return Evenly(along, until or Until(word="across"), cursor.span(first))


_READERS = {
    "next": _next, "first": _first, "last": _last, "same": _same, "each": _each, "remaining": _remaining,
    "ring": _ring, "ord": _ord, "top": _top, "centre": _centre, "marked": _marked, "skipped": _skipped, "any": _any,
    "corresponding": _corresponding, "between": _between, "end": _row_ends,
}  # fmt: skip
