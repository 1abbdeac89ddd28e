"""Reads what stands after `each`: `each st and ch-sp around`, `every other st`, `each ch of next ch-7`."""

from .behind_counts import is_bare_count
from .cursor import Cursor, UnreadableError
from .edges import read_around_piece, to_the_end_of_its_edge
from .free_loops import starts_free_loops
from .targets import read_counted_target, starts_named_number, starts_target
from .tree import Each, RowEnds, Target, Until
from .untils import names_a_space, read_until, starts_until

_NOTHING_MORE = frozenset({",", "end", ")"})


def read_each(cursor: Cursor) -> Each | RowEnds | Target:
    """What stands after `each`; a Target alone where it is each of something inside a group (`each ch of
    next ch-7`).
    """
    means = cursor.means
    every = 1
    if means == "other":
        every = 2
        cursor.at += 1
    elif means == "ord":
        every = cursor.words[cursor.at].value
        cursor.at += 1
    elif means == "loop-of" and cursor.words[cursor.at].value == "third":
        cursor.at += 1
        return Each((Target("loop"),), read_until(cursor) or Until(word=""), False, 3)
    if cursor.means == "row" and cursor.ahead() == "ending":
        cursor.at += 2
        return RowEnds(until=to_the_end_of_its_edge(cursor))
    alone = cursor.means in _NOTHING_MORE or is_bare_count(cursor.words, cursor.at)
    if alone or starts_until(cursor, cursor.at):  # `2 sc in each`, `inc in each (12)`, `sc in each around`
        return Each(until=read_until(cursor) or Until(word=""), every=every)
    remaining = not starts_free_loops(cursor, cursor.at) and cursor.take("remaining")
    targets = [read_counted_target(cursor)[1]]
    while cursor.means == "and" and _joins_target(cursor):
        cursor.at += 1
        if cursor.means == "in":
            cursor.at += 1
        cursor.take("each")
        targets.append(read_counted_target(cursor)[1])
    if cursor.means == "of" and len(targets) == 1 and (_of_one(cursor) or _of_an_arch(cursor, targets[0])):
        return targets[0]
    piece = read_around_piece(cursor)
    until = read_until(cursor) or _to_another(cursor) or Until(word="")
    if piece:
        return Each(tuple(targets), Until(word=""), remaining, every, piece)
    _pass_including(cursor)
    return Each(tuple(targets), until, remaining, every)


def _of_one(cursor: Cursor) -> bool:
    return cursor.ahead() in ("next", "same", "last")


def _of_an_arch(cursor: Cursor, target: Target) -> bool:
    """Whether `of ch-3` stands behind `each ch`: the arch that the line has come to."""
    words, at = cursor.words, cursor.at + 1
    arch = words[at].means == "ch" and words[at + 1].means == "num" and words[at + 1].glued
    return target.kind == "chain" and (arch or (words[at].means == "num" and words[at + 1].means == "ch"))


def _to_another(cursor: Cursor) -> Until | None:
    """`each dc to next FPdc`: up to the next stitch of another kind."""
    if cursor.means != "to" or cursor.ahead() != "next":
        return None
    if not starts_target(cursor, cursor.at + 2) and not starts_named_number(cursor, cursor.at + 2):
        return None
    cursor.at += 2
    return Until("next", target=read_counted_target(cursor)[1])


def _spaces_up_to(cursor: Cursor, at: int) -> bool:
    """Whether `ch-1 sp around` stands at a word: `in each sc and in ch-1 sp around` means each of them."""
    if not names_a_space(cursor, at):
        return False
    keep, cursor.at = cursor.at, at
    read_counted_target(cursor)
    goes_on, cursor.at = starts_until(cursor, cursor.at), keep
    return goes_on


def _joins_target(cursor: Cursor) -> bool:
    """Whether `and` goes on with what `each` counts (`each st and ch-sp`), not with another step."""
    at = cursor.at + 1
    words = cursor.words
    if words[at].means == "in":
        if words[at + 1].means != "each":
            return _spaces_up_to(cursor, at + 1)
        at += 1
    if words[at].means == "each":
        at += 1
        return starts_target(cursor, at) or starts_named_number(cursor, at)
    if words[at].means in ("st", "sp", "sps", "chsp", "picot", "corner"):
        return True
    if words[at].means == "ch":
        return (
            words[at + 1].means in ("sp", "sps", "loop")
            or (words[at + 1].means == "num" and words[at + 2].means in ("sp", "sps", "loop"))
            or _closes(cursor, at + 1)
        )
    if words[at].means == "num" and not starts_named_number(cursor, at):
        return False
    return words[at].means in ("num", "stitch", "form", "special") and _names_a_place(cursor, at)


def _names_a_place(cursor: Cursor, at: int) -> bool:
    """Whether a stitch's name (`dc`, `5-dc bobble`) and nothing more stands there."""
    here = cursor.at
    cursor.at = at
    try:
        read_counted_target(cursor)
        return _closes(cursor, cursor.at)
    except UnreadableError:
        return False
    finally:
        cursor.at = here


def _closes(cursor: Cursor, at: int) -> bool:
    return cursor.words[at].means in (",", "end", ")", "and") or starts_until(cursor, at)


def _pass_including(cursor: Cursor) -> None:
    """`in each dc across, including tch`: the turning chain is one of the stitches in any case."""
    at = cursor.at + (cursor.means == ",")
    if cursor.words[at].means == "including" and cursor.words[at + 1].means in ("tch", "top"):
        cursor.at = at + 1
        if cursor.take("top"):
            cursor.need("of", "of-what")
        cursor.need("tch", "chain-name")
