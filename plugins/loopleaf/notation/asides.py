"""Reads what stands in round brackets beside a step: what a chain counts as, and stitch counts (also a
round's `count`).
"""

from dataclasses import replace

from .behind_counts import BEHIND_COUNTS, only_ends
from .cursor import Cursor, UnreadableError, read_amount
from .names import read_counted_stitch, read_stitch
from .targets import read_counted_target, read_target, starts_named_number
from .tree import Amount, CountsAs, Stitch, Tally, Target

_COUNT_WORDS = frozenset({"counts-as", "counts-not"})
_ASIDE_BEGINS = _COUNT_WORDS | {"skipped", "first", "beg", "tch"}


def is_counts_aside(cursor: Cursor, at: int) -> bool:
    """Whether the bracket at a word says what something counts as: `(counts as dc)`, `(skipped chs count as
    dc)`.
    """
    words = cursor.words
    close: int = words[at].value
    numbered = words[at + 1].means == "num" and words[at + 2].means in (
        "skipped",
        "ch",
    )  # `(3 skipped chs …)`
    if words[at + 1].means not in _ASIDE_BEGINS and not numbered:
        return False
    for word in words[at + 1 : min(at + 8, close)]:
        if word.means in _COUNT_WORDS:
            return True
        if word.means == "(":
            return False
    return False


def read_counts_aside(cursor: Cursor, own: int = 0, pair: bool = False) -> CountsAs:
    """The bracket, which has been found to be one of these. own: the chain just made, behind one. pair: what
    stands before it and the chains that it passed may be meant together.
    """
    first = cursor.at
    close: int = cursor.words[first].value
    cursor.at += 1
    try:
        counts = read_counts(cursor, own, pair=pair)
    except UnreadableError as error:
        raise UnreadableError(first, "counts-as", close) from error
    if cursor.at != close:
        raise UnreadableError(first, "counts-as", close)
    cursor.at = close + 1
    return replace(counts, span=cursor.span(first))


def read_counts(cursor: Cursor, own: int = 0, one: bool = False, pair: bool = False) -> CountsAs:
    """`counts as dc, ch 1`, `does not count as a st`, `skipped chs count as dc`, without brackets.

    own: the chain just made, if it stands behind one. one: a comma ends it. pair: it may be two, as of `dc in
    4th ch from hook (counts as 2 dc)`, the skipped chains and the stitch.
    """
    named, said = _pass_which_chains(cursor)
    skipped = named and not own
    if cursor.take("counts-not"):
        if cursor.take("as"):
            _pass_small(cursor)
            if cursor.means in ("st", "stitch"):
                read_target(cursor)
        return CountsAs(skipped=skipped, throughout=cursor.take("throughout"), said=said)
    cursor.need("counts-as", "counts-as")
    stitch: Stitch | None = None
    chains = space = 0
    throughout = False
    while True:
        _pass_small(cursor)
        if cursor.means == "skipped" and cursor.ahead() == "ch" and cursor.ahead(2) == ",":
            cursor.at += 3  # `count as skipped ch, dc and ch-1 sp`: the chain below the space
        means = cursor.means
        if means == "ch" or (means == "num" and cursor.ahead() == "ch"):
            number, is_space = _chains(cursor, own or 1)
            if is_space:
                space = number
            else:
                chains = number
        elif means == "st":
            cursor.at += 1
            stitch = Stitch("")
        else:
            amount, stitch = _stitch(cursor)
            if amount == Amount((2,)) and pair:
                skipped = True
            elif amount is not None and amount != Amount((1,)):
                raise cursor.fail("counts-as")
        if cursor.means not in (",", "and") or (one and cursor.means == ","):
            break
        if cursor.words[cursor.at].means == "," and cursor.ahead() not in ("ch", "num", "a", "and"):
            break
        cursor.at += 1
        cursor.take("and")
        if cursor.take("throughout"):
            throughout = True
            break
    if cursor.means == "," and cursor.ahead() == "throughout":
        cursor.at += 1
    throughout = cursor.take("throughout") or throughout
    if stitch is not None and space:  # `dc and ch-1 sp`: the space is the chain behind the stitch
        chains, space = chains + space, 0
    return CountsAs(stitch, chains, space, skipped, throughout=throughout, said=said)


def _stitch(cursor: Cursor) -> tuple[Amount | None, Stitch]:
    if cursor.means == "form":
        return None, read_stitch(cursor, as_place=True)
    return read_counted_stitch(cursor)


def _pass_which_chains(cursor: Cursor) -> tuple[bool, int]:
    """`skipped chs`, `missed 3 ch`, `first 3 chs`, `beg ch`: whether chains are named; they are those passed
    at a row's start, or, behind a chain just made, that one. With how many `3 skipped chs` says, else 0.
    """
    first = cursor.at
    while cursor.means in ("skipped", "first", "num", "ch", "beg", "tch", "a", "st", ","):
        cursor.at += 1
    passed = cursor.words[first : cursor.at]
    named = any(word.means in ("skipped", "ch", "tch") for word in passed)
    numbers = [word.value for word in passed if word.means == "num"]
    told = len(numbers) == 1 and {word.means for word in passed} == {"num", "skipped", "ch"}
    return named, numbers[0].sizes[0] or 0 if told and not numbers[0].varies else 0


def _pass_small(cursor: Cursor) -> None:
    while cursor.means in ("a", "first", "last"):
        cursor.at += 1
    if (
        cursor.means == "num"
        and cursor.words[cursor.at].value == Amount((1,))
        and cursor.ahead() in ("stitch", "st")
    ):
        cursor.at += 1


def _chains(cursor: Cursor, own: int) -> tuple[int, bool]:
    """`ch 2`, `2ch`, `ch-5 sp`, `5ch-sp`, `ch-sp` (own): the number, and whether a space is meant."""
    if cursor.take("ch"):
        if cursor.take("sp"):
            return own, True
        number = 1
        if cursor.means == "num":
            number = cursor.words[cursor.at].value.sizes[0]
            cursor.at += 1
    else:
        number = cursor.words[cursor.at].value.sizes[0]
        cursor.at += 2
    return number, cursor.take("sp")


# ---- counts ------------------------------------------------------------------------------------


def read_tally(cursor: Cursor, end: int) -> Tally:
    """`48`, `24 sts`, `24 dc, 24 ch-1 sps`, `24 sts, 4 ch-2 sps`, `40 (48, 56)`, up to a word.

    Raises UnreadableError where it isn't one.
    """
    first = cursor.at
    cursor.at = _count_begins(cursor, first)
    total: Amount | None = None
    entries: list[tuple[Amount, Stitch | Target]] = []
    while cursor.at < end:
        begins = cursor.at
        amount = read_amount(cursor)
        if amount is None:
            raise cursor.fail("count")
        bare = cursor.at >= end
        named = None if bare or cursor.take("st") else _counted(cursor)
        if named is None:
            if entries and bare:
                raise cursor.fail("counted")
            if entries and cursor.at < end:  # `24 dc, 4 tr, 28 sts` ends with them
                raise cursor.fail("count")
            if total is not None:
                raise UnreadableError(begins, "count-end")
            total = amount
        elif total is not None and isinstance(named, Stitch):  # `24 sts, 4 ch-2 sps`, but not `24 sts, 4 dc`
            raise UnreadableError(begins, "count-end")
        else:
            entries.append((amount, named))
        while cursor.at < end and cursor.means in (",", "and", "in-all"):
            cursor.at += 1
    if total is None and not entries:
        raise cursor.fail("count")
    return Tally(total, tuple(entries), cursor.span(first))


def _count_begins(cursor: Cursor, at: int) -> int:
    """Behind the words that only lead in a count: `= 24 sts`, `total: 24`."""
    if cursor.words[at].value == "=":
        return at + 1
    if cursor.words[at].means == "in-all":
        return at + 1 + (cursor.words[at + 1].means == ",")
    return at


_SPACES = frozenset(
    {"buttonhole", "buttonholes", "eyelet", "eyelets", "handle", "handles", "hole", "holes", "armhole",
     "armholes", "opening", "openings"}
)  # fmt: skip
"""What a count may call the chain spaces by, for what they are made for."""

_BLOCKS = frozenset({"block", "blocks", "tile", "tiles"})
"""What corner to corner counts its rows by."""


def _counted(cursor: Cursor) -> Stitch | Target:
    """What is counted: a stitch, `ch` (chains), a space, a picot."""
    if cursor.means == "num" and not starts_named_number(cursor, cursor.at):
        raise cursor.fail("counted")
    if cursor.take("group-name"):
        return Target("group")
    said = cursor.said(cursor.at, cursor.at + 1).lower()
    if said in _SPACES or said in _BLOCKS:
        cursor.at += 1
        return Target("space" if said in _SPACES else "block")
    target = read_counted_target(cursor)[1]
    if target.kind == "chain":
        return Stitch("chain")
    if target.kind == "stitch" and target.stitch is not None:
        return target.stitch
    if target.kind in ("space", "picot", "corner", "loop", "group"):
        return target
    raise cursor.fail("counted")


def is_tally(cursor: Cursor, at: int) -> bool:
    """Whether the bracket at a word holds nothing but a stitch count, as at a line's end: `(24 sts)`, `(24
    dc, 4 ch-2 sps)`.
    """
    words = cursor.words
    close: int = words[at].value
    if words[_count_begins(cursor, at + 1)].means not in ("num", "-"):
        return False
    after = close + 1
    while words[after].means == ",":
        after += 1
    ends = (
        words[after].means in BEHIND_COUNTS
        or _chains_and_turn(cursor, after)
        or (close == at + 2 and after > close + 1 and only_ends(words, after))
    )
    if not ends and not any(words[i].means == "st" for i in range(at, close)):
        return False
    return may_be_tally(cursor, at + 1, close)


def _chains_and_turn(cursor: Cursor, at: int) -> bool:
    """Whether `ch 1, turn` stands at a word, the row's last."""
    means = [word.means for word in cursor.words[at : at + 4]]
    return sorted(means[:2]) == ["ch", "num"] and means[2:] in ([",", "turn"], ["and", "turn"])


def may_be_tally(cursor: Cursor, at: int, close: int) -> bool:
    """Whether the words from one to another are a count and nothing else."""
    keep = cursor.at
    problems = len(cursor.problems)
    cursor.at = at
    try:
        read_tally(cursor, close)
    except UnreadableError:
        return False
    finally:
        cursor.at = keep
        del cursor.problems[problems:]
    return True
