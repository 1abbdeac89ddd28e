"""Tells a row's count that stands without brackets at its end from stitches to be made."""

from collections.abc import Sequence

from .asides import BEHIND_COUNTS, may_be_tally
from .cursor import Cursor
from .tree import Each, FastenOff, Join, Repeat, Step, Turn, Work


def only_counts(cursor: Cursor) -> bool:
    """Whether `4 sc rem` says how many there are. The finger is behind the number."""
    return cursor.means in ("st", "stitch") and cursor.ahead() in ("remain", "remaining")


def where_counts_end(cursor: Cursor, steps: Sequence[Step], dash: bool) -> int:
    """Behind which word a count ends that stands without brackets: `— 24 sts`, `turn. 10 sc.`, `turn: 24 dc,
    4 ch-2 sps`, `across: 10 sc`, `…, 18 sts`; 0 for anything else. dash: one stands before it."""
    words, end = cursor.words, cursor.at
    before = cursor.said(cursor.at - 1, cursor.at)
    last = steps[-1] if steps else None
    ended = isinstance(last, Turn | Join | FastenOff) or (before == ":" and _to_the_end(last))
    stitches = [word.means for word in words[end : end + 3]] == ["num", "st", "end"]  # `…, 18 sts`: no kind
    if not dash and not (ended and before in (".", ":")) and not (stitches and steps):
        return 0
    while words[end].means not in BEHIND_COUNTS:
        end += 1
    while words[end - 1].means == ",":
        end -= 1
    return end if dash or may_be_tally(cursor, cursor.at, end) else 0


def _to_the_end(step: Step | None) -> bool:
    """Whether a step goes to the end of the row: `sc in each st across`."""
    if isinstance(step, Repeat):
        return step.until is not None and step.until.kind == "end"
    last = step.places[-1] if isinstance(step, Work) and step.places else None
    return isinstance(last, Each) and last.until.kind == "end"
