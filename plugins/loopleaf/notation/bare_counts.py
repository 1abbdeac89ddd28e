"""Tells a row's count that stands without brackets at its end from stitches to be made."""

from collections.abc import Sequence

from .asides import may_be_tally
from .behind_counts import BEHIND_COUNTS
from .cursor import Cursor
from .tree import ChainOf, Each, FastenOff, First, Join, Last, Leave, Repeat, Ring, Step, Turn, Work


def only_counts(cursor: Cursor) -> bool:
    """Whether `4 sc rem` says how many there are. The finger is behind the number."""
    return cursor.means in ("st", "stitch") and cursor.ahead() in ("remain", "remaining")


def where_counts_end(cursor: Cursor, steps: Sequence[Step], dash: bool) -> int:
    """Behind which word a count ends that stands without brackets: `— 24 sts`, `turn. 10 sc.`, `turn: 24 dc,
    4 ch-2 sps`, `across: 10 sc`, `in tch. 12 dc.`, `…, 18 sts`; 0 for anything else. dash: one is before it.
    """
    words, end = cursor.words, cursor.at
    before = cursor.said(cursor.at - 1, cursor.at)
    last = steps[-1] if steps else None
    ended = isinstance(last, Turn | Join | FastenOff | Leave) or _to_the_end(last)
    ended = ended or (before == "." and _ends_there(last))
    no_kind = words[end + 1].means == "st"  # `… x 6. 24 sts.`, `…, 18 sts`
    behind = words[end + 2 + (words[end + 2].means == "," and before != ",")].means
    stitches = no_kind and (behind == "end" or (before in (".", ":", ";") and behind in BEHIND_COUNTS))
    if not dash and not (ended and before in (".", ":", ";")) and not (stitches and steps):
        return 0
    while words[end].means not in BEHIND_COUNTS:
        end += 1
    while words[end - 1].means == ",":
        end -= 1
    return end if dash or may_be_tally(cursor, cursor.at, end) else 0


def _ends_there(step: Step | None) -> bool:
    """Whether nothing is left to work behind a step: `dc in last st`, `ss to top of 3ch`, `6 sc in ring`."""
    places = step.places if isinstance(step, Work) else ()
    match places[-1:]:
        case (Last() | Ring(),):
            return True
        case (ChainOf(chain=chain),):
            return chain != "ch" or _is_a_slip(step)
        case (First(),):
            return _is_a_slip(step)
    return False


def _is_a_slip(step: Step | None) -> bool:
    return isinstance(step, Work) and step.stitch.kind == "slip"


def _to_the_end(step: Step | None) -> bool:
    """Whether a step goes to the end of the row: `sc in each st across`."""
    if isinstance(step, Repeat):
        return step.until is not None and step.until.kind == "end"
    last = step.places[-1] if isinstance(step, Work) and step.places else None
    return isinstance(last, Each) and last.until.kind == "end"
