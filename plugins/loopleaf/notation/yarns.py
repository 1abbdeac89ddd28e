"""Reads yarn and its changes, joins, ends, markers, and the other side of a chain."""

from typing import Literal

from .carried import pass_along, pass_colour, pass_unused
from .cursor import Cursor
from .edges import names_piece, read_piece
from .joined_at import pass_from_the_seam, read_spot
from .made_here import read_marked_stitch
from .names import read_stitch, starts_stitch
from .place_kinds import read_place
from .places import read_places, starts_place
from .targets import read_target
from .tree import (
    ONE,
    STITCH,
    ChainOf,
    Corresponding,
    FastenOff,
    Join,
    JoinYarn,
    Marker,
    Next,
    OtherSide,
    Place,
    Step,
    Stitch,
    Work,
    Yarn,
)
from .yarn_ends import pass_after_last, pass_pulled_through, read_closing, read_tail

_CLOSING = frozenset({",", "end", ")", "with", "in", "and", "then", "to", "on"})


def starts_yarn_name(cursor: Cursor, at: int) -> bool:
    """Whether a yarn is named at a word: one of the pattern's, or a word that can be nothing else."""
    word = cursor.words[at]
    if word.means == "?":
        return True
    said = cursor.text[word.start : word.end]
    if said == "a" and word.means == "a":
        return cursor.words[at + 1].means in _CLOSING
    if said in cursor.vocabulary.yarns or said.upper() in cursor.vocabulary.yarns:
        return True
    return word.means == "a" and len(said) == 1 and cursor.words[at + 1].means in _CLOSING


def read_yarn_name(cursor: Cursor) -> str:
    """The yarn as the file spells it. Raises UnreadableError where none is named."""
    cursor.take("yarn-word")
    pass_colour(cursor)
    if not starts_yarn_name(cursor, cursor.at):
        raise cursor.fail("yarn")
    first = cursor.at
    cursor.at += 1
    while cursor.means == "?":
        cursor.at += 1
    said = cursor.said(first, cursor.at)
    if cursor.ahead() in _CLOSING:
        cursor.take("yarn-word")  # `with lichen yarn`
    for yarn in cursor.vocabulary.yarns:
        if yarn.lower() == said.lower():
            return yarn
    return said.upper() if len(said) == 1 else said


def is_listed(cursor: Cursor, at: int) -> bool:
    """Whether a word is one of the pattern's yarns, in just its letters: `A`, where `a` is an article."""
    word = cursor.words[at]
    return cursor.text[word.start : word.end] in cursor.vocabulary.yarns


_BEFORE_A_LABEL = frozenset({",", "(", "*", "and"})
_BEHIND_A_YARN = frozenset({",", "end", ")", "and", "rep", "*"})


_CALLED = frozenset({"yarn", "color", "colour"})


def pass_yarn_label(cursor: Cursor, steps: list[Step]) -> bool:
    """`A: 3 sc`, `A 3 sc`, `(A) 3 sc`, `color A: 3 sc`: a listed yarn as a label says what `with A` says."""
    first = cursor.at
    bracket = cursor.means == "("
    called = cursor.said(first, first + 1).lower() in _CALLED
    called = called or (cursor.means == "in" and cursor.ahead(2) == ",")  # `in A, ch 3`
    if not is_listed(cursor, first + bracket + called) or (bracket and cursor.ahead(2) != ")"):
        return False
    if first and cursor.words[first - 1].means not in _BEFORE_A_LABEL:
        return False
    cursor.at += bracket + called
    yarn = read_yarn_name(cursor)
    cursor.at += bracket
    steps.append(Yarn(yarn, "with", cursor.span(first)))
    return True


def read_in_yarn(cursor: Cursor) -> list[Yarn]:
    """`3 sc A`: the yarn of the step just read, said behind it."""
    first = cursor.at
    if not is_listed(cursor, first) or cursor.ahead() not in _BEHIND_A_YARN:
        return []
    return [Yarn(read_yarn_name(cursor), "with", cursor.span(first))]


def read_with(cursor: Cursor, steps: list[Step]) -> None:
    """`with B`; `with slip knot of B on hook, sc in any st` joins it with that stitch."""
    first = cursor.at
    cursor.at += 1
    yarn = _on_a_slip_knot(cursor)
    if yarn:
        stitch = read_stitch(cursor)
        steps.append(JoinYarn(yarn, stitch, place=_to_place(cursor), span=cursor.span(first)))
        return
    steps.append(Yarn(read_yarn_name(cursor), "with", cursor.span(first)))


def _on_a_slip_knot(cursor: Cursor) -> str:
    """The yarn of `slip knot of B on hook`, behind the `with`, where a stitch follows; "" (and nothing
    passed) for anything else.
    """
    first = cursor.at
    cursor.take("a")
    slip_knot = cursor.said(cursor.at, cursor.at + 2).lower().split() == ["slip", "knot"]
    if slip_knot and cursor.ahead(2) in ("of", "in") and starts_yarn_name(cursor, cursor.at + 3):
        cursor.at += 3
        yarn = read_yarn_name(cursor)
        if (
            cursor.take("in")
            and cursor.take("hook")
            and cursor.take(",")
            and starts_stitch(cursor, cursor.at)
        ):
            return yarn
    cursor.at = first
    return ""


def read_change(cursor: Cursor, steps: list[Step]) -> None:
    """`change to A`, `changing to B on last yo`, `carrying A`."""
    first = cursor.at
    how = cursor.means
    cursor.at += 1
    if how == "carrying" and pass_unused(cursor):
        return
    yarn = read_yarn_name(cursor)
    if how == "carrying":
        pass_along(cursor)
    if cursor.means == "in" and cursor.ahead() == "last":
        cursor.at += 2
        if cursor.means == "st" or starts_stitch(cursor, cursor.at):
            cursor.at += 1
        else:
            cursor.need("yarn-over", "last-yarn-over")
    steps.append(Yarn(yarn, how, cursor.span(first)))  # type: ignore[arg-type]


def read_join(cursor: Cursor, steps: list[Step]) -> None:
    """`join`, `join with sl st to first hdc`, `join to 3rd ch of ch-4`, `join B with sc in any corner sp`."""
    first = cursor.at
    cursor.at += 1
    if cursor.means in ("round", "row"):
        cursor.at += 1
    pass_from_the_seam(cursor, steps)
    if cursor.take("invisibly"):
        cursor.take("with-needle")
        steps.append(Join(_to_place(cursor), how="invisibly", span=cursor.span(first)))
        return
    new = cursor.take("a")
    a_yarn = new and _is_a_yarn(cursor, cursor.at - 1)
    if a_yarn or cursor.means == "yarn-word" or starts_yarn_name(cursor, cursor.at):
        steps.append(_joined_yarn(cursor, first, new))
        return
    if cursor.means == "with" and starts_yarn_name(cursor, cursor.at + 1):
        cursor.at += 1
        steps.append(_joined_yarn(cursor, first, False))
        return
    if cursor.means == "to" and names_piece(cursor, cursor.at + 1):
        steps.append(_to_a_piece(cursor, first))
        return
    stitch = Stitch("slip")
    if cursor.take("with"):
        cursor.take("a")
        stitch = read_stitch(cursor)
    if cursor.means == "to" and names_piece(cursor, cursor.at + 1):  # `join with sl st to leg 1`
        steps.append(Work(stitch, ONE, (Next(piece=read_piece(cursor)),), span=cursor.span(first)))
        return
    spot = read_spot(cursor)
    if spot:  # `join with sl st at top edge`
        steps.append(JoinYarn("", stitch, span=cursor.span(first), spot=spot))
        return
    closes = cursor.means == "to"
    place = _to_place(cursor)
    slip = cursor.at + 1 + (cursor.ahead() == "a")
    if place is not None and cursor.means == "with" and _is_a_slip(cursor, slip):
        cursor.at = slip + 1
    if isinstance(place, Next | Corresponding) and place.piece:  # `join with sl st to next sp of motif 1`
        steps.append(Work(stitch, ONE, (place,), span=cursor.span(first)))
        return
    begun = steps[0] if place is not None and not closes and len(steps) == 1 else None
    if isinstance(begun, Yarn) and begun.how == "with":
        steps[:] = [JoinYarn(begun.yarn, stitch, False, place, cursor.span(0))]  # `with B, join in any sp`
        return
    steps.append(Join(place, stitch, span=cursor.span(first)))


def _to_a_piece(cursor: Cursor, first: int) -> Work:
    """`join to leg 1 with sc in any st`: that stitch, in the first one of the piece."""
    piece = read_piece(cursor)
    stitch = Stitch("slip")
    if cursor.take("with"):
        cursor.take("a")
        stitch = read_stitch(cursor)
    if cursor.means == "in" and cursor.ahead() in ("any", "a", "first", "next"):
        cursor.at += 2
        read_target(cursor)
    return Work(stitch, ONE, (Next(ONE, STITCH, piece=piece),), span=cursor.span(first))


def _is_a_slip(cursor: Cursor, at: int) -> bool:
    """`join to first sc with a slip stitch`: the stitch may be said last."""
    word = cursor.words[at]
    return word.means == "stitch" and word.value == Stitch("slip")


def read_unjoined(cursor: Cursor, steps: list[Step]) -> None:
    """`do not join`."""
    first = cursor.at
    cursor.at += 1
    if cursor.means in ("round", "row"):
        cursor.at += 1
    steps.append(Join(how="not", span=cursor.span(first)))


def _is_a_yarn(cursor: Cursor, at: int) -> bool:
    word = cursor.words[at]
    said = cursor.text[word.start : word.end]
    return said in cursor.vocabulary.yarns or (len(said) == 1 and cursor.words[at + 1].means in _CLOSING)


def _joined_yarn(cursor: Cursor, first: int, article: bool) -> JoinYarn:
    if article and not starts_yarn_name(cursor, cursor.at) and cursor.means != "yarn-word":
        yarn = "A"
    elif cursor.means == "yarn-word" and not starts_yarn_name(cursor, cursor.at + 1):
        cursor.at += 1
        yarn = ""
    else:
        yarn = read_yarn_name(cursor)
    stitch = Stitch("slip")
    standing = False
    if cursor.take("with"):
        cursor.take("a")
        standing = cursor.take("standing")
        stitch = read_stitch(cursor)
    spot = read_spot(cursor)
    place = None if spot else _to_place(cursor)
    said_last = cursor.at + 1 + (cursor.ahead() == "a")
    if place is not None and cursor.means == "with" and _is_a_slip(cursor, said_last):
        cursor.at = said_last + 1
    return JoinYarn(yarn, stitch, standing, place, cursor.span(first), spot)


def _to_place(cursor: Cursor) -> Place | None:
    chain = _own_chain(cursor)
    if chain is not None:
        return chain
    if cursor.means == "to" or (cursor.means == "at" and _at_a_skipped(cursor)):
        cursor.at += 1
        return read_place(cursor)
    if starts_place(cursor, cursor.at):
        where = read_places(cursor)
        if len(where.places) != 1:
            raise cursor.fail("place")
        return where.places[0]
    return None


def _at_a_skipped(cursor: Cursor) -> bool:
    """Whether `at first skipped st` stands here, where an opening begins."""
    at = cursor.at + 1
    at += cursor.words[at].means in ("first", "next", "a")
    return cursor.words[at].means == "skipped"


def _own_chain(cursor: Cursor) -> ChainOf | None:
    """`join to 3rd ch`: of the chain that the round begins with, which needs no name where a join goes."""
    words, at = cursor.words, cursor.at
    if words[at].means not in ("to", "in") or words[at + 1].means != "ord" or words[at + 2].means != "ch":
        return None
    if words[at + 3].means not in (",", "end", "with", ")"):
        return None
    cursor.at += 3
    return ChainOf(words[at + 1].value, "beg")


def read_standing(cursor: Cursor, steps: list[Step]) -> None:
    """`standing dc in next sp`: a new yarn begins with the stitch itself."""
    first = cursor.at
    cursor.at += 1
    stitch = read_stitch(cursor)
    steps.append(JoinYarn("", stitch, True, _to_place(cursor), cursor.span(first)))


def read_fasten_off(cursor: Cursor, steps: list[Step]) -> None:
    """`fasten off`, `fasten off A`, `fasten off invisibly`, `cut yarn, leaving a 20 cm tail`, `fasten off and
    weave in ends`.
    """
    first = cursor.at
    cursor.at += 1
    yarn = ""
    if cursor.means != "weave-in" and starts_yarn_name(cursor, cursor.at) and cursor.ahead() in _AFTER_OFF:
        yarn = read_yarn_name(cursor)
    while cursor.means == "and" and yarn and starts_yarn_name(cursor, cursor.at + 1):
        cursor.at += 1  # `fasten off A and B`
        steps.append(FastenOff(yarn, span=cursor.span(first)))
        yarn = read_yarn_name(cursor)
    pass_after_last(cursor)
    pass_pulled_through(cursor)
    invisibly = cursor.take("invisibly")
    closing = read_closing(cursor)
    tail, what_for = read_tail(cursor)
    closing = closing or read_closing(cursor)
    at = cursor.at
    while cursor.means in (",", "and", "then"):
        cursor.at += 1
    ends = cursor.take("weave-in")
    if not ends:
        cursor.at = at
    steps.append(FastenOff(yarn, tail, invisibly, ends, cursor.span(first), closing, what_for))


_AFTER_OFF = frozenset(
    {",", "end", ")", "(", "and", "then", "rep", "*", "leave", "with", "invisibly", "weave-in", "at"}
)


def read_marker(cursor: Cursor, steps: list[Step]) -> None:
    """`place marker`, `place marker in last st`, `move marker`, `remove marker`."""
    first = cursor.at
    action: Literal["place", "move", "remove"] = cursor.means.split("-")[0]  # type: ignore[assignment]
    cursor.at += 1
    _pause_at_the_round(cursor)
    steps.append(Marker(action, read_marked_stitch(cursor) or _to_place(cursor), cursor.span(first)))


def _pause_at_the_round(cursor: Cursor) -> None:
    """`moving marker to first st of rnd`: of the one that begins, which goes without saying."""
    words, at = cursor.words, cursor.at
    while words[at].means not in ("of", ",", "end", ")"):
        at += 1
    if words[at].means == "of" and words[at + 1].means in ("round", "row") and words[at + 2].means != "num":
        words[at].means = words[at + 1].means = ","


def other_side(cursor: Cursor) -> Literal["foundation", "chain"] | None:
    """`along other side of foundation ch`, `in opposite side of ch`; None (and nothing passed) where that
    isn't said.
    """
    at = cursor.at
    if cursor.means == "in" and cursor.ahead() in ("remaining", "free") and cursor.ahead(2) == "loop":
        cursor.at += 3  # `in remaining loops along other side of foundation ch`
        cursor.take("of")
    if cursor.means in ("along", "in", "over"):
        cursor.at += 1
    if not cursor.take("other-side"):
        cursor.at = at
        return None
    side: Literal["foundation", "chain"] = "foundation"
    if cursor.take("of"):
        cursor.take("a")
        if not cursor.take("foundation") and not cursor.take("beg"):
            side = "chain"
        cursor.need("ch", "chain-side")
    return side


def read_other_side(cursor: Cursor, steps: list[Step]) -> None:
    """The same as a step of its own."""
    first = cursor.at
    side = other_side(cursor)
    if side is None:
        raise cursor.fail("along")
    if steps and isinstance(steps[-1], OtherSide):  # `rotate, working along opposite side` says it twice
        return
    steps.append(OtherSide(side, cursor.span(first)))
