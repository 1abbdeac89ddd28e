"""Placements on a round that gets more or fewer stitches: cords begin, and pieces lie, at the same share of
the way around; what lies on so many stitches still does.
"""

from collections.abc import Mapping

from ..fabric import PieceWork
from ..pattern import AtStitches, Path, Pattern, Thread
from ..review.placing import posts, round_numbered
from .draft import Draft


def place_anew(
    draft: Draft, pattern: Pattern, before: PieceWork, now: PieceWork, back: Mapping[int, int]
) -> None:
    """Write the stitch numbers of threading and sewing on a piece anew.

    draft: of the file in which the piece is as `now`; before: the same piece as it was; back:
    from its rounds' numbers now to those that they had.
    """
    for index, step in enumerate(pattern.finishing):
        at: Path = ("finishing", index)
        if step.thread is not None and step.thread.through == now.name:
            _thread(draft, (*at, "thread"), step.thread, before, now, back)
        if step.sew is not None and step.sew.to == now.name:
            _sew(draft, (*at, "sew"), step.sew, before, now, back)
        if step.mark is not None and step.mark.to == now.name:
            _sew(draft, (*at, step.kind), step.mark, before, now, back)


def _there(piece: PieceWork, number: int | None) -> int:
    found = round_numbered(piece, number)
    return posts(found, 0) if found is not None and found.sizes and found.sizes[0] is not None else 0


def _thread(
    draft: Draft, at: Path, thread: Thread, before: PieceWork, now: PieceWork, back: Mapping[int, int]
) -> None:
    """Where each cord begins: the gap in step with the first cord's that is nearest to the same share."""
    number = thread.round or thread.row
    new = _there(now, number)
    old = _old_count(before, number, back)
    if not new or not old or new == old:
        return
    each = thread.under + thread.over
    first = thread.from_[0] if thread.from_ else 1
    starts = [first if one == first else first + round((one - first) * new / old / each) * each
              for one in thread.from_]  # fmt: skip
    for index, start in enumerate(starts):
        draft.value((*at, "from", index), str(min(start, new)))


def _sew(
    draft: Draft, at: Path, sew: AtStitches, before: PieceWork, now: PieceWork, back: Mapping[int, int]
) -> None:
    number = sew.number
    new, old = _there(now, number), _old_count(before, number, back)
    if not new or not old or new == old or not sew.stitches:
        return
    runs = []
    for run in sew.stitches:
        last = run.last or run.first
        wide = min(last - run.first + 1, new)
        middle = (run.first + last) / 2 * new / old
        first = min(max(round(middle - (wide - 1) / 2), 1), new - wide + 1)
        runs.append(str(first) if wide == 1 else f"{first}-{first + wide - 1}")
    node = draft.node((*at, "stitches"))
    if node is not None and node.kind == "list":
        for index, words in enumerate(runs):
            draft.value((*at, "stitches", index), words)
    else:
        draft.value((*at, "stitches"), ", ".join(runs))


def _old_count(before: PieceWork, number: int | None, back: Mapping[int, int]) -> int:
    """Stitches of the same round as it was."""
    return _there(before, back.get(number)) if number is not None else 0
