"""Reads what is passed over: `sk next 2 sts`, `leave last 4 sts unworked`."""

from .cursor import Cursor, read_amount
from .place_kinds import pass_at_base
from .targets import read_counted_target, starts_named_number, starts_target
from .tree import ONE, STITCH, Leave, Skip, Step


def read_skip(cursor: Cursor, steps: list[Step]) -> None:
    """`sk 2`, `sk next ch-sp`, `sk first st`, `sk last st`, `sk st`."""
    first = cursor.at
    cursor.at += 1
    cursor.take("over")
    which = "next"
    if pass_at_base(cursor):
        steps.append(Skip(ONE, STITCH, "first", cursor.span(first)))
        return
    if cursor.means in ("next", "first", "last"):
        which = cursor.means
        cursor.at += 1
    amount = None
    target = STITCH
    if cursor.means in ("num", "-") and not starts_named_number(cursor, cursor.at):
        amount = read_amount(cursor)
    if amount is None or starts_target(cursor, cursor.at) or starts_named_number(cursor, cursor.at):
        target = read_counted_target(cursor)[1]
    bare = amount == ONE and cursor.words[first + 1].means == "num"
    steps.append(Skip(amount or ONE, target, which, cursor.span(first), bare))  # type: ignore[arg-type]


def read_leave(cursor: Cursor, steps: list[Step]) -> None:
    """`leave last 4 sts unworked`, `leave remaining sts unworked`; `leave first 3 sts unworked` skips."""
    first = cursor.at
    cursor.at += 1
    if cursor.take("first"):
        amount, target = read_counted_target(cursor)
        cursor.need("unworked", "unworked")
        steps.append(Skip(amount or ONE, target, "first", cursor.span(first)))
        return
    remaining = cursor.means == "remaining"
    if cursor.means in ("last", "remaining", "next"):
        cursor.at += 1
    amount, target = read_counted_target(cursor)
    cursor.need("unworked", "unworked")
    count = amount if remaining else (amount or ONE)
    steps.append(Leave(count, target, cursor.span(first)))
