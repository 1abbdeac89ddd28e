"""The yarns of a piece as a maker has them at the hook: which are cut, which wait at the edge and go on.

A yarn that is fastened off, or cut and joined anew, leaves two ends to weave in. One that waits is taken up
again without any: up the edge for a few rows, where the row begins at the edge that it waits at, or along
the round's back where colours change on the way (common practice, no source). How many rows a yarn may wait
is chosen here; whoever carries it further has fewer ends than are told.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from ..fabric.around import ways
from ..fabric.survey import walk
from ..fabric.worked import Made, PieceWork, WorkedRound
from ..notation.tree import FastenOff, JoinYarn

CARRIED_AT_MOST = 6
"""Rows or rounds that a yarn waits at the most (chosen here; common practice names a few, no source)."""
_ENDS_A_LENGTH = 2
"""Every length of yarn has a beginning and an end."""


@dataclass(frozen=True, slots=True)
class Threads:
    """ends: to weave in, by yarn. taken_up: how often a yarn that waited is taken up again. own: the yarn of
    what is worked without naming one.
    """

    ends: Mapping[str, int]
    taken_up: int = 0


def threads_of(piece: PieceWork, size: int, own: str, in_rounds: bool, broken_off: bool = False) -> Threads:
    """The threads of one copy of a piece, in one size.

    own: the piece's yarn. broken_off: each row is broken off and the next one begun anew.
    """
    gone = ways(piece.rounds)
    lengths: Counter[str] = Counter()
    waits: dict[str, int] = {}
    taken_up, last = 0, ""
    for at, work in enumerate(piece.rounds):
        worked = work.sizes[size] if size < len(work.sizes) else None
        if worked is None:
            continue
        steps = list(walk(work.line.steps)) if work.line else []
        for anew in (step for step in steps if isinstance(step, JoinYarn)):
            waits.pop(anew.yarn or own, None)
        for place, yarn in enumerate(_in_order(worked, own)):
            since = waits.get(yarn)
            if since is None or (yarn != last and not _reaches(since, at, place, in_rounds, gone)):
                lengths[yarn] += 1
            elif yarn != last:
                taken_up += 1
            waits[yarn], last = at, yarn
        for off in (step for step in steps if isinstance(step, FastenOff)):
            waits.pop(off.yarn or last, None)
        if broken_off:
            waits.clear()
    ends = {yarn: number * _ENDS_A_LENGTH for yarn, number in lengths.items()}
    return Threads(ends or {own: _ENDS_A_LENGTH}, taken_up)


def _reaches(since: int, at: int, place: int, in_rounds: bool, gone: Sequence[bool]) -> bool:
    """Whether a yarn last used in one row can be taken up in another. place: of the yarn in that row's order:
    0 where the row begins with it.
    """
    here = in_rounds or place > 0 or gone[since] != gone[at]
    return here and at - since - 1 <= CARRIED_AT_MOST


def _in_order(worked: WorkedRound, own: str) -> Iterator[str]:
    """The yarns of a row in the order that they are used, one for each change."""
    used = (one.yarn or own for one in worked.made if not isinstance(one, Made) or one.role not in _NO_YARN)
    return (yarn for yarn, _ in groupby(used))


_NO_YARN = {"join"}
"""A joining stitch may be made with the next round's yarn already."""
