"""Reads places told by what they belong to: the same, the marked, the skipped, part of a
group.
"""

from dataclasses import replace

from .cursor import Cursor
from .targets import of_round, read_counted_target, read_target, starts_named_number, starts_target
from .tree import STITCH, Amount, Each, Marked, Place, Ring, Same, Skipped, Target, Until, Within
from .tree_places import BegunBy
from .untils import names_a_space, read_until, starts_until

WHICH_GROUP = frozenset({"next", "same", "last"})
"""Which group or arch: `centre st of next sh`, `of same sh`, `of last sh`."""


def pass_at_base(cursor: Cursor) -> bool:
    """`st at base of ch-3`, `ch at base of ch-3`: what the beginning chain stands on."""
    if cursor.means not in ("st", "ch", "stitch") or cursor.ahead() != "at-base":
        return False
    cursor.at += 1
    _pass_base(cursor)
    return True


def _pass_base(cursor: Cursor) -> None:
    """`at base of ch-3`."""
    cursor.at += 1
    while cursor.means in ("a", "beg", "turning", "tch", "ch", "num"):
        cursor.at += 1


def read_ring(cursor: Cursor) -> Ring:
    """`ring`, `magic ring`, where the cursor stands at it."""
    first = cursor.at
    magic = cursor.words[first].value in ("magic", "mc")
    cursor.at += 1
    return Ring(magic, cursor.span(first))


def read_same(cursor: Cursor) -> Place:
    """`same st`, `same sp`, `same st as join`, `same st at base of ch-3`."""
    cursor.at += 1
    if cursor.means in (",", ")", "rep"):  # `2 dc in same, ch 1`
        return Same()
    target = read_counted_target(cursor)[1]
    if cursor.means == "base" or (cursor.means == "a" and cursor.ahead() == "base"):
        raise cursor.fail("place")
    begun: BegunBy = ""
    if cursor.means == "as":
        cursor.at += 1
        begun = _begun(cursor)
        _pass_as(cursor)
    elif cursor.means == "at-base":
        _pass_base(cursor)
    return Same(target, begun)


def _begun(cursor: Cursor) -> BegunBy:
    """By what the place that the round began in is called: `join`, `first sc`, `beg ch-3`, or `ch-3` where
    that is the one chain of this length and the line begins with it."""
    if cursor.means in ("join", "first"):
        return cursor.means  # type: ignore[return-value]
    if cursor.means == "beg":
        return "chain"
    length = _chain_length(cursor, cursor.at)
    before = [_chain_length(cursor, at) for at in range(cursor.at)]
    chains = [
        one for at, one in enumerate(before) if one and not (at and cursor.words[at - 1].means == "num")
    ]
    return "chain" if length and chains[:1] == [length] and chains.count(length) == 1 else ""


def _chain_length(cursor: Cursor, at: int) -> int:
    """How long the chain is that is named at a word, `ch 3` or `3ch`; 0 where none is, and for a space."""
    words = cursor.words
    number = words[at + 1] if words[at].means == "ch" else words[at]
    if number.means != "num" or (words[at].means != "ch" and words[at + 1].means != "ch"):
        return 0
    if words[at + 2].means in ("sp", "sps"):
        return 0
    return number.value.sizes[0] or 0


def _pass_as(cursor: Cursor) -> None:
    """`same st as join`, `as last sc`, `as joining sl st`: only says again which stitch that is."""
    first = cursor.at
    while cursor.means in ("last", "first", "join", "beg", "tch", "turn"):
        cursor.at += 1
    if cursor.at > first and cursor.means == "num" and cursor.ahead() in ("stitch", "st"):
        cursor.at += 1
    if cursor.at > first and cursor.said(cursor.at, cursor.at + 1).lower() == "leg":
        cursor.at += 1
    elif cursor.means == "num" and cursor.ahead() == "ch":  # `as 7ch`
        cursor.at += 2
    elif starts_target(cursor, cursor.at):
        read_target(cursor)
    if cursor.at > first:
        cursor.take("just-made")  # `as last dc made`
    if cursor.at == first:
        raise cursor.fail("place")
    if cursor.means == "working" and cursor.said(cursor.at, cursor.at + 1).lower() == "worked":
        cursor.at += 1  # `as last st worked`


def read_marked(cursor: Cursor) -> Place:
    """`marked st`."""
    cursor.at += 1
    return Marked(read_target(cursor))


def read_skipped(cursor: Cursor) -> Place:
    """`skipped st`, `skipped sts`."""
    cursor.at += 1
    several = ends_in_s(cursor, cursor.at)
    read_target(cursor)
    return Skipped("all" if several else "")


def read_so_many_skipped(cursor: Cursor) -> Place:
    """`2 skipped sts`, `4 skipped sts of round 1`."""
    number: int = cursor.words[cursor.at].value.sizes[0]
    cursor.at += 1
    read_skipped(cursor)
    of_round(cursor, STITCH)  # which those are is known
    return Skipped("all", number)


def skips_none(cursor: Cursor) -> bool:
    """Whether the line passes nothing over before this: then `5th skipped ch` is one that the foundation's
    first stitch passed."""
    return all(word.means != "skip" for word in cursor.words[: cursor.at])


def bare_group(cursor: Cursor) -> Target | None:
    """The group of `3rd of 5tr`, `2nd of next 3dc`, with its `of` passed; None where none is named so."""
    at = cursor.at + 1 + (cursor.ahead() == "next")
    number, stitch = cursor.words[at], cursor.words[at + 1]
    if number.means != "num" or stitch.means != "stitch" or cursor.words[at + 2].means in ("group", "form"):
        return None
    cursor.at = at + 2
    return Target("group", replace(stitch.value, number=number.value.sizes[0]))


def read_within(cursor: Cursor, part: str, inner: Target, number: int = 0) -> Place:
    """What of the group or arch is meant: `centre st of next sh`, `2nd dc of same sh`."""
    if pass_each_corner(cursor, part, number):
        return Each((Target("corner", word="st"),), Until(word=""))
    cursor.need("of", "of-what")
    each = part != "each" and cursor.take("each")
    which = "next" if each else cursor.means
    cursor.at -= each
    arch = part == "each" and cursor.means == "num" and cursor.ahead() == "ch"  # `each ch of 3ch`
    named = arch or starts_target(cursor, cursor.at) or starts_named_number(cursor, cursor.at)
    unsaid = named and which not in WHICH_GROUP
    if which in WHICH_GROUP or which == "first":
        cursor.at += 1
    elif not named or not (
        part == "centre"
        or cursor.means == "num"
        or names_a_space(cursor, cursor.at)
        or (part == "each" and cursor.means == "ch")
    ):
        raise cursor.fail("of-what")
    if cursor.take("group-name"):
        of = Target("group")
    elif cursor.means == "num" and cursor.ahead() == "ch" and cursor.ahead(2) not in ("sp", "sps", "picot"):
        of = Target("space", length=cursor.words[cursor.at].value.sizes[0])
        cursor.at += 2
    else:
        of = read_counted_target(cursor)[1]
    if each:
        cursor.each_group = read_until(cursor) or Until(word="across")
    within = Within(part, inner, of, number, which == "same", which == "last")  # type: ignore[arg-type]
    return replace(within, unsaid=unsaid)


_AT_A_CORNER = 3
"""So many stitches in one place are a corner; the middle one of them is the corner's own."""


def pass_each_corner(cursor: Cursor, part: str, number: int) -> bool:
    """`centre sc of each corner`, `2nd sc of each 3-sc group`: passes what stands behind the stitch."""
    words, at = cursor.words, cursor.at
    if [word.means for word in words[at : at + 2]] != ["of", "each"]:
        return False
    if part != "centre" and number != _AT_A_CORNER - 1:
        return False
    at += 2
    if words[at].means == "num" and words[at + 1].means == "stitch":
        if words[at].value != Amount((_AT_A_CORNER,)) or words[at + 2].means not in ("group", "corner"):
            return False
        at += 2
        if starts_until(cursor, at + 1):  # `across`: into each of the groups that there are
            return False
    elif words[at].means != "corner":
        return False
    cursor.at = at + 1
    return True


def ends_in_s(cursor: Cursor, at: int) -> bool:
    """Whether the word is said of several: `sts`, `ends`."""
    word = cursor.words[at]
    return cursor.text[word.start : word.end].lower().endswith("s")
