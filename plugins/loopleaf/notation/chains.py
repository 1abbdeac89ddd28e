"""Reads the names of turning and beginning chains: `ch-3`, `3ch`, `beg ch-3`, `tch`, `turning ch-3`,
`7 skipped chs`."""

from dataclasses import replace

from .cursor import Cursor
from .tree import ChainOf


def starts_chain_name(cursor: Cursor, at: int) -> bool:
    """Whether such a name begins at a word. A bare `ch` is none: it is any chain; `ch-5 sp` is a space."""
    words = cursor.words
    means = words[at].means
    if means == "tch":
        return True
    if _starting(cursor, at):
        return True
    if means == "beg":
        return words[at + 1].means in ("ch", "num")
    if means == "turning":
        return words[at + 1].means == "num"
    if means == "skipped":
        return words[at + 1].means == "ch" or (_number(cursor, at + 1) and words[at + 2].means == "ch")
    if _number(cursor, at) and words[at + 1].means == "skipped":
        return words[at + 2].means == "ch"
    if means == "ch":
        return _number(cursor, at + 1) and words[at + 2].means not in ("sp", "sps", "loop", "picot")
    return _number(cursor, at) and words[at + 1].means == "ch" and words[at + 2].means not in (
        "sp", "sps", "loop", "picot"
    )  # fmt: skip


def _starting(cursor: Cursor, at: int) -> bool:
    """`starting chain`: the one that a round begins with, where one of its chains or its top is named."""
    words = cursor.words
    return cursor.said(at, at + 1).lower() == "starting" and words[at + 1].means in ("ch", "num")


def _number(cursor: Cursor, at: int) -> bool:
    word = cursor.words[at]
    return word.means == "num" and not word.value.variable


def read_chain_name(cursor: Cursor, number: int) -> ChainOf:
    """The chain named here; number: which of its chains is meant, 0 for its top."""
    if cursor.take("tch"):
        return ChainOf(number, "tch", _length(cursor))
    if cursor.take("skipped"):  # those that the foundation's first stitch passed
        return replace(read_chain_name(cursor, number), chain="tch")
    if _starting(cursor, cursor.at) or (cursor.means == "beg" and cursor.ahead() in ("ch", "num")):
        cursor.at += 1
        if cursor.take("ch"):
            return ChainOf(number, "beg", _length(cursor))
        length = _length(cursor)
        cursor.need("ch", "chain-name")
        return ChainOf(number, "beg", length)
    if cursor.take("turning"):
        length = _length(cursor)
        cursor.need("ch", "chain-name")
        return ChainOf(number, "tch", length)
    if cursor.means == "num":
        length = _length(cursor)
        skipped = cursor.take("skipped")
        cursor.need("ch", "chain-name")
        return ChainOf(number, "tch" if skipped else "ch", length)
    cursor.need("ch", "chain-name")
    return ChainOf(number, "ch", _length(cursor))


def pass_of_these(cursor: Cursor) -> bool:
    """`first of 3 chs`, `first of these 3ch`: passes what stands before the chain's name."""
    at = cursor.at + 1 + (cursor.said(cursor.at + 1, cursor.at + 2).lower() == "these")
    if not starts_chain_name(cursor, at):
        return False
    cursor.at = at
    return True


def read_begun_with(cursor: Cursor, number: int) -> ChainOf | None:
    """The `first 3ch` of `3rd of first 3ch`: the one that the round began with."""
    if cursor.means != "first" or not starts_chain_name(cursor, cursor.at + 1):
        return None
    cursor.at += 1
    return replace(read_chain_name(cursor, number), chain="beg")


def _length(cursor: Cursor) -> int:
    if not _number(cursor, cursor.at):
        return 0
    length: int = cursor.words[cursor.at].value.sizes[0]
    cursor.at += 1
    return length
