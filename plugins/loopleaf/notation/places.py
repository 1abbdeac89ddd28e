"""Reads where stitches go: all the places of one step, and what their wording says about the stitch."""

from dataclasses import dataclass, replace

from .along_words import pass_part, side_of_a_part
from .cursor import Cursor
from .edges import read_evenly, read_for_rows
from .free_loops import read_free_place, starts_free_loops
from .manner_of_post import read_from_behind
from .piece_names import read_layers
from .place_kinds import read_over, read_place
from .stacked import read_stacked
from .targets import CHAIN, is_post_stitch
from .tree import ONE, Amount, Each, First, FromHook, Last, Next, Place, Ring, RowEnds, Same, Stitch, Target
from .untils import names_a_space, read_until, starts_until


@dataclass(slots=True)
class Where:
    """Places as read, and what their wording says about the stitch: its loop, its post, the layers it goes
    through.

    each: `each of` was said, so that a number before the stitch means so many in each.
    """

    places: tuple[Place, ...] = ()
    loop: str = ""
    post: str = ""
    through: str = ""
    each: bool = False


_BEGIN = frozenset({"in", "over", "between", "evenly", "along", "for", "at-base"})


def starts_place(cursor: Cursor, at: int) -> bool:
    """Whether a place begins at a word."""
    means = cursor.words[at].means
    if means == "in":
        return True
    if means == "in-all":  # `sc in all 8 sts`
        return cursor.words[at + 1].means == "num"
    if means == "for":
        return cursor.words[at + 1].means == "each"
    if means in _BEGIN:
        return means != "along" or cursor.words[at + 1].means == "edge" or side_of_a_part(cursor, at)
    return means == "around" and not starts_until(cursor, at)


def read_places(cursor: Cursor) -> Where:
    """All the places of a stitch, as far as they are joined by `and`."""
    where = Where()
    places: list[Place] = []
    _read_one(cursor, where, places)
    while (at := _goes_on(cursor, where.loop)) >= 0 or (at := _another_kind(cursor, where, places)) >= 0:
        cursor.at = at
        _read_one(cursor, where, places)
    where.through = read_through(cursor)
    if where.post == "around":
        where.post = "" if places and all(map(_has_no_post, places)) else read_from_behind(cursor)
    if cursor.means == "in" and cursor.ahead() == "loop-of" and cursor.ahead(2) != "of" and not where.loop:
        where.loop = cursor.words[cursor.at + 1].value
        cursor.at += 2
    where.places = tuple(places)
    return where


def _has_no_post(place: Place) -> bool:
    """Whether a place is a chain's space, so that `around ch-9` is only into it, or a row's end: `around post
    of each end dc` is how that is worked."""
    if isinstance(place, RowEnds):
        return place.stitch is not None and place.count is None
    if isinstance(place, Each):
        return all(target.kind == "space" for target in place.targets)
    return isinstance(place, Next | First | Last | Same) and place.target.kind == "space"


def _goes_on(cursor: Cursor, loop: str) -> int:
    """Where the next place begins behind `and`, or behind a comma with `and in`; -1 where none does."""
    words = cursor.words
    at = cursor.at + (cursor.means == ",")
    if words[at].means != "and":
        return -1
    after = words[at + 1].means
    if after == "in":
        other = words[at + 2]
        again = words[at + 3].means == "of" and other.value == loop
        return -1 if other.means == "loop-of" and not again else at + 1
    if cursor.means == ",":
        return -1
    plain = after in ("next", "first", "last", "same", "each", "over")
    return at + 1 if plain or names_a_space(cursor, at + 1) else -1


def _another_kind(cursor: Cursor, where: Where, places: list[Place]) -> int:
    """Where `tr` begins in `each of next htr and tr`, one of each kind; -1 where no such list goes on."""
    words, at = cursor.words, cursor.at
    match places:
        case [*_, Next(count=count, target=Target(kind="stitch", stitch=Stitch()))] if where.each:
            kind = words[at].means == "and" and words[at + 1].means == "stitch"
            return at + 1 if kind and count == ONE and words[at + 2].means in _NO_NOUN else -1
    return -1


_NO_NOUN = frozenset({",", "end", ")"})


def _read_one(cursor: Cursor, where: Where, places: list[Place]) -> None:
    means = cursor.means
    if means == "in" and starts_free_loops(cursor, cursor.at + 1):
        cursor.at += 1
        places.append(read_free_place(cursor))
        return
    if means == "for":
        cursor.at += 1
        places.append(read_for_rows(cursor))
        return
    if (stacked := read_stacked(cursor)) is not None:
        places.append(stacked)
        return
    if means == "in" and _reads_from_the_back(cursor, where, places):
        return
    if means in ("in", "in-all"):
        cursor.at += 1
    elif means == "around":
        cursor.at += 1
        if cursor.means != "ring":
            where.post = where.post or "around"
        if cursor.means == "fp":
            where.post = cursor.words[cursor.at].value
            cursor.at += 1
            cursor.take("post")
            cursor.need("of", "post")
        elif not is_post_stitch(cursor, cursor.at) and cursor.take("post") and not cursor.take("of"):
            if starts_place(cursor, cursor.at):
                _read_one(cursor, where, places)
            return
    elif means == "over" and (hooked := _chains_from_hook(cursor)):
        places += hooked
        return
    elif means == "over" and cursor.ahead() != "same":
        cursor.at += 1
        places.append(read_over(cursor))
        return
    elif means == "over":  # `sc3tog over same st and next 2 sts`
        cursor.at += 1
    elif means in ("evenly", "along"):
        places.append(read_evenly(cursor))
        return
    if means == "in-all" and cursor.ahead() in (*_NO_NOUN, *(("(",) if cursor.vocabulary.sizes == 1 else ())):
        places.append(Next(cursor.need("num", "place").value))  # `inc in all 6 [12]`
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
    if cursor.means == "each":
        where.each = True
    arch = means == "around" and cursor.means == "num" and cursor.ahead() == "ch"
    place = read_place(cursor)
    if arch and isinstance(place, Next) and place.target == CHAIN:  # `15dc around 9ch`
        length = place.count.sizes[0] or 0
        place = replace(place, count=ONE, target=Target("space", length=length), unsaid=True)
    places.append(place)
    if isinstance(place, RowEnds | Each):
        pass_part(cursor)
    if means == "in-all":
        read_until(cursor)  # `in all 8 sts around`: the number says it


def _reads_from_the_back(cursor: Cursor, where: Where, places: list[Place]) -> bool:
    """`into back of next dc of round 2`, between the petals in front of it: around its post, from behind.

    False (and nothing passed) where no earlier round is named: that is a stitch's back loop, or nothing."""
    first = cursor.at
    if cursor.said(first + 1, first + 2).lower() != "back" or cursor.ahead(2) != "of":
        return False
    cursor.at += 3
    place = read_place(cursor) if cursor.means in ("next", "first", "each") else Ring()
    target = place.targets[0] if isinstance(place, Each) else getattr(place, "target", None)
    if not isinstance(target, Target) or not target.round:
        cursor.at = first
        return False
    places.append(place)
    where.post = "back"
    return True


def _chains_from_hook(cursor: Cursor) -> list[Place]:
    """`over 2nd and 3rd ch from hook`: the first of them and those behind it; none (and nothing passed) where
    that isn't said.
    """
    at = cursor.at + 1
    numbers: list[int] = []
    while cursor.words[at].means == "ord":
        numbers.append(cursor.words[at].value)
        at += 1
        while cursor.words[at].means in (",", "and") and cursor.words[at + 1].means in ("ord", "and"):
            at += 1
    if len(numbers) < 2 or [cursor.words[at].means, cursor.words[at + 1].means] != ["ch", "from-hook"]:
        return []
    if numbers != list(range(numbers[0], numbers[0] + len(numbers))):
        return []
    cursor.at = at + 2
    return [FromHook(numbers[0]), Next(Amount((len(numbers) - 1,)), CHAIN)]


def read_through(cursor: Cursor) -> str:
    """`through both layers`; "" where nothing is said of layers."""
    return read_layers(cursor)
