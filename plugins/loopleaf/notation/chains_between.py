"""Reads stitches told with the chains between them: `dc in each ch-sp around with ch 1 between`."""

from dataclasses import replace

from .cursor import Cursor, UnreadableError
from .names import starts_stitch
from .tree import ONE, Amount, Chain, Each, Next, Repeat, Ring, Step, Stitch, Until, Work

_CLOSES = frozenset({",", "end", ")", "(", "rep", "*", "and", "then"})


def spaced_out(cursor: Cursor, step: Step) -> Step:
    """The stitches just read, with a chain behind each where `with ch 1 between` follows; else as they are.

    Around a round the last chain lies before the join; of a row or a number of stitches none is behind the
    last.
    """
    first = cursor.at
    length = _length(cursor)
    if length is None:
        return step
    chain = Chain(length, span=cursor.span(first))
    begun = getattr(step, "span", None)
    span = cursor.span(first) if begun is None else replace(cursor.span(first), start=begun.start)
    match step:
        case Work(each=each, counts=None, places=(Each(targets=(target,), every=1, until=until),)) if (
            each == ONE and until.kind == "end" and until.before is None
        ):
            closed = until.word == "around" or (until.word in ("", "end") and _joins_behind(cursor))
            inside = (replace(step, places=(Next(ONE, target),)), chain)
            end = Until(word="around" if closed else "across")
            return Repeat(inside, until=end, omitting=() if closed else (chain,), star=not closed, span=span)
        case Work(each=each, counts=None, places=(Next(count=count) as run,)) if (
            each == ONE and not count.variable and count != ONE
        ):
            inside = (replace(step, places=(replace(run, count=ONE),)), chain)
            return Repeat(inside, count, omitting=(chain,), star=True, span=span)
        case Work(each=each, counts=None, places=(Ring(),)) if not each.variable and each != ONE:
            inside = (replace(step, each=ONE), chain)  # `11 dc in ring with ch 1 between each`
            return Repeat(inside, each, omitting=(chain,), star=True, span=span)
    raise UnreadableError(first, "step", cursor.at - 1)


def _length(cursor: Cursor) -> Amount | None:
    """How many chains stand in `with ch 1 between`, `with 2ch between each`; None (nothing passed) else."""
    if cursor.means != "with":
        return None
    words, at = cursor.words, cursor.at + 1
    at += words[at].means == "a"
    pair = {words[at].means: words[at], words[at + 1].means: words[at + 1]}
    if [word.means for word in words[at + 2 : at + 6]] == ["in", "each", "sp", "between"]:
        at += 3  # `between each dc`, as the words are read
    if set(pair) != {"ch", "num"} or words[at + 2].means != "between":
        return None
    at += 3
    at += words[at].means == "each"
    at += words[at].means == "st" or starts_stitch(cursor, at) or cursor.said(at, at + 1).lower() == "them"
    length: Amount = pair["num"].value
    if words[at].means not in _CLOSES or length.variable:
        return None
    cursor.at = at
    return length


def _joins_behind(cursor: Cursor) -> bool:
    """Whether the line closes a round behind this."""
    words = cursor.words[cursor.at :]
    return any(word.means == "join" or word.value == Stitch("slip") for word in words)
