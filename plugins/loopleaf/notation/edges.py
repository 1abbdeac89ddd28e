"""Reads places on another piece's edge, along rows' ends, and spread evenly along an edge."""

from dataclasses import replace

from .along_words import names_an_edge
from .cursor import Cursor, read_amount
from .names import read_stitch
from .piece_names import nth_piece, piece_at, starts_both_together
from .purposes import purposes
from .targets import read_counted_target
from .tree import ONE, Corresponding, Each, Evenly, Next, Place, RowEnds, Stitch, Target, Until
from .undersides import OPENINGS, pass_underside
from .untils import read_until, starts_until

_AFTER_EDGE = frozenset({",", "end", ")", "(", "*", "rep", "and", "then", "through", "with", "working"})


def read_after_target(cursor: Cursor, place: Next) -> Next:
    """What may follow `next 3 sts`: `2 rounds below`, `of edge`, `of leg 2`."""
    means = cursor.means
    if place.target.kind == "chain" and pass_underside(cursor):
        return replace(place, far=True)
    if means == "num" and cursor.ahead() in ("row", "round") and cursor.ahead(2) == "below":
        below = cursor.words[cursor.at].value.sizes[0]
        rows = cursor.ahead() == "row"
        cursor.at += 3
        if cursor.means == "next" and cursor.ahead() in ("st", "stitch"):
            cursor.at += 2  # `in st 2 rows below next st`
        return replace(place, below=below, rows=rows)
    if means == "row" and cursor.ahead() == "below":
        cursor.at += 2
        return replace(place, below=1, rows=True)
    if means == "round" and cursor.ahead() == "below":
        cursor.at += 2
        return replace(place, below=1)
    if means == "in" and (piece := read_of_piece(cursor)):
        return replace(place, piece=piece)  # `corner sp on square 1`
    if means == "of" and not starts_both_together(cursor):
        if cursor.ahead() == "edge" and not piece_at(cursor, cursor.at + 1):
            cursor.at += 2
            return replace(place, target=Target("edge"))
        piece = read_piece(cursor)
        if piece:
            return replace(place, piece=piece)
    return place


def read_piece(cursor: Cursor) -> str:
    """`of leg 2`, `of next flag`: a piece of the pattern with the number of its copy or `next` before it, or
    words that can only be such a name; "" else.
    """
    words = cursor.words
    at = cursor.at + 1
    nth = nth_piece(cursor, at)
    if nth:
        cursor.at = at + 2
        return nth
    following = words[at].means == "next" and bool(piece_at(cursor, at + 1))
    at += following
    which = _which_copy(cursor, at)
    at += bool(which)
    piece = piece_at(cursor, at)
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
        piece = " ".join(cursor.said(first, at).lower().split())
    if which:
        piece = f"{piece} {which}"
    elif words[at].means == "num" and words[at + 1].means not in ("row", "round", "times"):
        piece = f"{piece} {words[at].value.sizes[0]}"
        at += 1
    cursor.at = at
    return f"next {piece}" if following else piece


def read_of_piece(cursor: Cursor) -> str:
    """`of motif 1`, `on 2nd motif` behind places: a piece of the pattern; "" (and nothing passed) else."""
    on = cursor.means == "in" and cursor.said(cursor.at, cursor.at + 1).lower() == "on"
    named = (on or cursor.means == "of") and names_piece(cursor, cursor.at + 1)
    return read_piece(cursor) if named else ""


_AROUND = frozenset({"of", "around", "across", "along", "in"})


def read_around_piece(cursor: Cursor) -> str:
    """`around leg 1`, `of leg 1`: the piece of the pattern that stitches go around or are of; "" where none
    is named.
    """
    return read_piece(cursor) if cursor.means in _AROUND and names_piece(cursor, cursor.at + 1) else ""


def names_piece(cursor: Cursor, at: int) -> bool:
    """Whether a piece of the pattern is named at a word: `leg 1`, `first leg`, `2nd square`."""
    return bool(piece_at(cursor, at) or nth_piece(cursor, at) or _which_copy(cursor, at))


def _which_copy(cursor: Cursor, at: int) -> int:
    """1 for `first square`, where the piece is called `square`; 0 where no copy is named by its number."""
    word = cursor.words[at]
    if word.means not in ("first", "ord") or piece_at(cursor, at) or not piece_at(cursor, at + 1):
        return 0
    return 1 if word.means == "first" else int(word.value)


def read_corresponding(cursor: Cursor) -> Place:
    """`corresponding ch-sp of square 1`; `corresponding st 2 rounds below` is the next one there."""
    cursor.at += 1
    target = read_counted_target(cursor)[1]
    place = read_after_target(cursor, Next(ONE, target))
    if place.below:
        return place
    if not place.piece:
        raise cursor.fail("of-piece")
    return Corresponding(target, place.piece)


def read_row_ends(cursor: Cursor) -> Place:
    """`end of each row`, `end of each dc row`, `end of next 4 rows`, `side of each row`; the `side` of one
    stitch, at an opening."""
    side = cursor.means == "side"
    cursor.at += 1
    if side and cursor.means in _AFTER_EDGE:
        return RowEnds(count=ONE, side=True)
    if side and (one := _side_of_a_stitch(cursor)) is not None:
        return one
    cursor.need("of", "row-ends")
    if cursor.means == "first" and cursor.ahead() == "row":
        cursor.at += 2  # `join yarn in end of first row`: where the edge begins
        return RowEnds(count=ONE)
    if cursor.take("next"):
        count = read_amount(cursor) or ONE
        stitch = _row_kind(cursor)
        cursor.need("row", "row-ends")
        return RowEnds(stitch, count)
    cursor.take("each")
    cursor.take("remaining")
    every = 2 if cursor.take("other") else 1
    stitch = _row_kind(cursor)
    cursor.need("row", "row-ends")
    return RowEnds(stitch, None, to_the_end_of_its_edge(cursor), every)


def to_the_end_of_its_edge(cursor: Cursor) -> Until:
    """How far row ends go: `across`, `to next corner`, or, in the words of the piece, `up right front to neck
    edge`, which is the whole of its edge.
    """
    until = read_until(cursor)
    at = cursor.at
    while cursor.words[at].means not in _AFTER_EDGE and cursor.said(at, at + 1).lower() in _ALONG_THE_PIECE:
        at += 1
    if at > cursor.at and cursor.words[at].means in _AFTER_EDGE and until is None:
        cursor.at = at
    return until or Until(word="across")


_ALONG_THE_PIECE = purposes() | {"up", "down", "to", "along", "side", "of"}


_WHICH = frozenset({"next", "last", "same", "first", "a"})


def _side_of_a_stitch(cursor: Cursor) -> RowEnds | None:
    """`of st`, `of next sc`, `of opening` behind `side`; None (and nothing passed) where rows follow."""
    words, at = cursor.words, cursor.at
    if words[at].means != "of":
        return None
    at += 1 + (words[at + 1].means in _WHICH)
    if cursor.said(at, at + 1).lower() in OPENINGS:
        cursor.at = at + 1 + (cursor.said(at + 1, at + 2).lower() in OPENINGS)
        return RowEnds(count=ONE, side=True)
    if words[at].means == "st":
        cursor.at = at + 1
        return RowEnds(count=ONE, side=True)
    if words[at].means == "stitch" and words[at + 1].means != "row":
        cursor.at = at
        return RowEnds(read_stitch(cursor), ONE, side=True)
    return None


def starts_row_ends(cursor: Cursor, at: int) -> bool:
    """Whether `2 row ends`, `2 dc row ends` stands at a word, behind an `every`."""
    words = cursor.words
    at += words[at].means == "num"
    at += words[at].means == "stitch"
    return words[at].means == "row" and words[at + 1].means == "ending"


def read_every_row_end(cursor: Cursor) -> Place:
    """`2 row ends` of `3 sc in every 2 row ends`, and how far that goes."""
    per = read_amount(cursor) or ONE
    stitch = _row_kind(cursor)
    cursor.need("row", "row-ends")
    cursor.take("ending")
    return RowEnds(stitch, None, to_the_end_of_its_edge(cursor), per.sizes[0] or 1)


def read_for_rows(cursor: Cursor) -> Place:
    """`each row`, `every 2 rows` of `3 sc for every 2 rows`."""
    first = cursor.at
    cursor.need("each", "row-ends")
    return replace(read_every_row_end(cursor), span=cursor.span(first))


def _row_kind(cursor: Cursor) -> Stitch | None:
    return read_stitch(cursor) if cursor.means == "stitch" else None


def one_in_each(places: tuple[Place, ...]) -> tuple[Place, ...]:
    """`sc evenly around` without a number, over stitches alone: one in each of them; none where an edge is
    named, which is no row of stitches.
    """
    match places:
        case (Evenly(along="", until=Until(kind="end") as until, span=span),):
            return (Each(until=until, evenly=True, span=span),)
    return ()


def _to_the_first(cursor: Cursor) -> Until | None:
    """`to first sc`: all that is left of the way around; None (and nothing passed) where that isn't said."""
    means = [cursor.ahead(by) for by in range(4)]
    if means[:2] != ["to", "first"] or means[2] not in ("st", "stitch") or means[3] not in _AFTER_EDGE:
        return None
    cursor.at += 3
    return Until(word="end")


def read_evenly(cursor: Cursor) -> Place:
    """`evenly along edge`, `evenly across`, `evenly along neck edge to next corner`."""
    first = cursor.at
    cursor.take("evenly")
    along = ""
    if cursor.take("along") or names_an_edge(cursor):
        start = cursor.at
        while cursor.means not in _AFTER_EDGE and not starts_until(cursor, cursor.at):
            cursor.at += 1
        if cursor.at == start:
            raise cursor.fail("along")
        along = " ".join(cursor.said(start, cursor.at).lower().split())
    until = read_until(cursor) or _to_the_first(cursor)
    if until is None and not along:
        raise cursor.fail("evenly")
    return Evenly(along, until or Until(word="across"), cursor.span(first))
