"""Reads what kind of place is meant: stitch tops, chain spaces, single chains, corners, picots, groups,
edges.
"""

from dataclasses import replace

from .behind_counts import is_bare_count
from .cursor import Cursor, read_amount
from .free_loops import read_free_loops, starts_free_loops
from .lexicon import words_file
from .names import is_tall, read_counted_stitch, read_stitch, starts_stitch
from .tree import STITCH, Amount, Stitch, Target

SPACE = Target("space")
BARE_SPACE = Target("space", word="sp")
CHAIN = Target("chain")
GAP = Target("gap")
PARTS = frozenset(words_file()["parts"])
"""What print calls stitches by, and a stretch of the edge that it works across."""
STRETCHES = PARTS | frozenset(words_file()["stretches"])
"""What else such a stretch may be called; the pattern's pieces often bear these names."""
SP = frozenset({"sp", "sps"})
SPACES = SP | {"corner"}
"""What may stand behind the chains: `ch-3 sp`, `ch-3 corner sp`."""


def starts_target(cursor: Cursor, at: int) -> bool:
    """Whether a kind of place is named at a word."""
    means = cursor.words[at].means
    if starts_free_loops(cursor, at) or _row_end(cursor, at) or is_post_stitch(cursor, at):
        return True
    if _foundation(cursor, at) or _of_a_part(cursor, at):
        return True
    return means in _READERS or means == "unworked" or starts_stitch(cursor, at)


def read_target(cursor: Cursor) -> Target:
    """One kind of place. Raises UnreadableError where none is named."""
    cursor.at += _foundation(cursor, cursor.at) or _of_a_part(cursor, cursor.at)
    word = cursor.words[cursor.at]
    if starts_free_loops(cursor, cursor.at):
        return read_free_loops(cursor)
    if _row_end(cursor, cursor.at):
        cursor.at += 2
        return Target("row-end")
    if is_post_stitch(cursor, cursor.at):
        cursor.at += 2
        return Target("stitch", Stitch("", post="around"))
    if word.means == "unworked":
        cursor.at += 1
        target = replace(read_target(cursor), unworked=True)
        if cursor.means == "of" and cursor.ahead() in ("row", "round") and cursor.ahead(2) == "num":
            cursor.at += 3  # `of row 4`: which those are is known
        return target
    reader = _READERS.get(word.means)
    if reader is not None:
        return reader(cursor)
    if starts_named_number(cursor, cursor.at):
        return _numbered_target(cursor)
    if starts_stitch(cursor, cursor.at):
        return _stitch_target(cursor)
    raise cursor.fail("target")


def _foundation(cursor: Cursor, at: int) -> bool:
    """`each foundation ch`: of the edge that the piece began on, which the line has come to."""
    return cursor.words[at].means == "foundation" and cursor.words[at + 1].means == "ch"


def _of_a_part(cursor: Cursor, at: int) -> bool:
    """`in each of 16 heel sts`, `4 underarm chs`: the part of the piece adds nothing to their number."""
    named = cursor.words[at].means == "?" and cursor.said(at, at + 1).lower() in PARTS
    return named and cursor.words[at + 1].means in ("st", "ch", "stitch")


def is_post_stitch(cursor: Cursor, at: int) -> bool:
    """Whether `post st` stands at a word: one worked around a post, front or back."""
    words = cursor.words
    return words[at].means == "post" and words[at + 1].means == "st"


def _row_end(cursor: Cursor, at: int) -> bool:
    return cursor.words[at].means == "row" and cursor.words[at + 1].means == "ending"


def read_counted_target(cursor: Cursor, bare: bool = False) -> tuple[Amount | None, Target]:
    """`3 sts`, `2ch-sp` (one space of two chains), `2 ch-sps`, `2 2ch-sps`, `5-dc bobble`; the number None
    where unsaid. bare: a number alone means stitches (`sc in next 3`).
    """
    amount: Amount | None = None
    words = cursor.words
    if words[cursor.at].means in ("num", "-"):
        if not starts_named_number(cursor, cursor.at):
            amount = read_amount(cursor)
            if amount is None:
                raise cursor.fail("target")
        if words[cursor.at].means == "num" and not starts_named_number(cursor, cursor.at):
            raise cursor.fail("target")
    if words[cursor.at].means == "num":
        return amount, of_round(cursor, _numbered_target(cursor))
    ends = words[cursor.at].means in (",", "end", ")") or is_bare_count(words, cursor.at)
    if bare and amount is not None and ends:
        return amount, STITCH
    return amount, of_round(cursor, read_target(cursor))


def of_round(cursor: Cursor, target: Target) -> Target:
    """The target with `of round 1`, `of 2nd round`, `in row 2` or `of R1` behind it: that round's own
    stitches, not those below."""
    words, at = cursor.words, cursor.at
    if target.unworked or words[at].means not in ("of", "in"):
        return target
    if words[at + 1].means == "ord" and words[at + 2].means in ("round", "row"):
        cursor.at += 3
        return replace(target, round=words[at + 1].value, rows=words[at + 2].means == "row")
    if words[at + 1].means not in ("round", "row"):
        return target
    if words[at + 2].means != "num" or words[at + 2].value.variable:
        return target
    cursor.at += 3
    rows = words[at + 1].means == "row"
    return replace(target, round=words[at + 2].value.sizes[0], rows=rows)


def starts_named_number(cursor: Cursor, at: int) -> bool:
    """Whether the number at a word belongs to the place's own name: `2ch-sp`, `3-dc group`, `5-dc bobble`,
    `3ch picot`.
    """
    words = cursor.words
    if words[at].means != "num" or words[at].value.variable:
        return False
    after = words[at + 1]
    if after.means == "ch":
        third = words[at + 2]
        if third.means == "picot" or (third.means == "corner" and after.glued):
            return True
        if third.means in SP:
            return after.glued or third.means == "sp"
        return third.means == "loop" and after.glued
    if after.means != "stitch" and not (after.means == "special" and is_tall(cursor, at + 1)):
        return False
    third = words[at + 2]
    if third.means == "tog":  # not of `sc next 2 sc together`
        return after.glued
    if third.means == "corner":  # `3-sc corner`, not `3 sc corner`
        return after.glued
    return third.means == "group" or (third.means == "form" and third.value != "v-stitch")


def _numbered_target(cursor: Cursor) -> Target:
    words = cursor.words
    number = words[cursor.at].value.sizes[0]
    if words[cursor.at + 1].means == "ch":
        third = words[cursor.at + 2].means
        if third == "corner":  # `3ch corner sp`
            cursor.at += 2
            return replace(_corner(cursor), length=number)
        cursor.at += 3
        if third == "picot":
            return Target("picot", length=number)
        return Target("space", length=number)
    if words[cursor.at + 2].means in ("group", "corner"):
        stitch: Stitch = words[cursor.at + 1].value
        cursor.at += 3
        return Target("group", replace(stitch, number=number))
    return _stitch_target(cursor)


def _stitch_target(cursor: Cursor) -> Target:
    if cursor.means == "num":
        _, stitch = read_counted_stitch(cursor)
    else:
        stitch = read_stitch(cursor, as_place=True)
    if stitch.form == "picot":
        return Target("picot", length=stitch.number)
    return Target("stitch", stitch)


def _st(cursor: Cursor) -> Target:
    cursor.at += 1
    return STITCH


def _sp(cursor: Cursor) -> Target:
    cursor.at += 1
    return GAP if pass_between_groups(cursor) else BARE_SPACE


def _chsp(cursor: Cursor) -> Target:
    cursor.at += 1
    return GAP if pass_between_groups(cursor) else SPACE


def pass_between_groups(cursor: Cursor) -> bool:
    """`between groups`, `between shells`, `between 3tr groups`, `between each group of 3tr`, `before next
    dc`."""
    words, at = cursor.words, cursor.at
    before = words[at].means == "in-front" and cursor.said(at, at + 1).lower() == "before"
    if before and words[at + 1].means == "next" and words[at + 2].means in ("st", "stitch", "group"):
        cursor.at += 3
        return True
    if words[at].means != "between":
        return False
    at += 1 + (words[at + 1].means in ("each", "a"))
    sized = words[at].means == "num" and words[at + 1].means == "stitch"
    at += 2 * sized
    if words[at].means not in ("group", "group-name", "special") and words[at].value != "shell":
        return False
    cursor.at = at + 1
    if cursor.means == "of" and cursor.ahead() == "num" and cursor.ahead(2) == "stitch":
        cursor.at += 3
    return True


def _loop(cursor: Cursor) -> Target:
    cursor.at += 1
    return Target("loop")


def _ch(cursor: Cursor) -> Target:
    """`ch`, `ch-sp`, `ch-2 sp`, `ch-5` (an arch), `ch-5 lp`, `ch-3 picot`."""
    words = cursor.words
    at = cursor.at
    after = words[at + 1]
    if after.means in SP or after.means == "loop":
        cursor.at += 2
        return GAP if pass_between_groups(cursor) else SPACE
    if after.means == "num" and not after.value.variable:
        third = words[at + 2].means
        if third in SP or third == "loop":
            cursor.at += 3
            return Target("space", length=after.value.sizes[0])
        if third == "picot":
            cursor.at += 3
            return Target("picot", length=after.value.sizes[0])
        if third == "corner":  # `ch-2 corner sp`
            cursor.at += 2
            return replace(_corner(cursor), length=after.value.sizes[0])
        if after.glued:
            cursor.at += 2
            return Target("space", length=after.value.sizes[0], word="ch")
    cursor.at += 1
    return CHAIN


CLOSES = frozenset({",", "end", ")", "and", "then", "*", "around", "across"})
"""Behind `corner sc` the stitch is the corner's own, not one more to be made."""


def _corner(cursor: Cursor) -> Target:
    """`corner`, `corner st`, `corner sp`, `corner ch-2 sp`, `corner 2ch-sp`."""
    cursor.at += 1
    means = cursor.means
    if means == "st" or (means == "stitch" and cursor.ahead() in CLOSES):
        cursor.at += 1
        return Target("corner", word="st")
    if means in SP:
        cursor.at += 1
        return Target("corner", word="sp")
    if means == "ch" or (means == "num" and starts_named_number(cursor, cursor.at)):
        inner = _numbered_target(cursor) if means == "num" else _ch(cursor)
        return Target("corner", length=inner.length, word="sp")
    return Target("corner")


def _picot(cursor: Cursor) -> Target:
    cursor.at += 1
    return Target("picot")


def _group(cursor: Cursor) -> Target:
    cursor.at += 1
    if cursor.means == "of" and cursor.ahead() == "num" and cursor.ahead(2) == "stitch":
        number, stitch = cursor.words[cursor.at + 1].value.sizes[0], cursor.words[cursor.at + 2].value
        cursor.at += 3
        return Target("group", Stitch(stitch.kind, number=number))
    return Target("group")


def _edge(cursor: Cursor) -> Target:
    cursor.at += 1
    return Target("edge")


_READERS = {
    "st": _st, "place": _st, "sp": _sp, "sps": _sp, "chsp": _chsp, "loop": _loop, "ch": _ch,
    "corner": _corner,
    "picot": _picot, "group": _group, "edge": _edge,
}  # fmt: skip
