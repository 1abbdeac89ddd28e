"""A cord on its way through a round: over and under, where its ends come out, how far the round then opens.

A cord passes `under` posts behind the cloth and `over` posts before it, in turn, from the gap before the post
that it begins at, once around to the same gap.
"""

from dataclasses import dataclass

from ..fabric import PatternWork
from ..fabric.worked import Made
from ..pattern import Pattern, Thread
from .cords import ENDS_AND_KNOT_MM, Cord


@dataclass(frozen=True, slots=True)
class Pass:
    """One pass: the posts that the cord goes under or over, by number; last may be below first (around)."""

    way: str
    first: int
    last: int


@dataclass(frozen=True, slots=True)
class Way:
    """One cord's way. start: the post before whose gap it begins, and ends. passes: in order.

    same_face: both ends come out on the same face, so that they can be knotted.
    """

    start: int
    passes: tuple[Pass, ...]
    same_face: bool


@dataclass(frozen=True, slots=True)
class Threading:
    """All cords of one threading step, in one size.

    posts: of the round. opens_mm: how far around the round opens with the ends knotted, None where cord or
    round aren't known; spare_mm: what of the cord is then left outside.
    """

    cord: str
    through: str
    label: str
    word: str
    posts: int
    ways: tuple[Way, ...]
    same_gaps: bool
    opens_mm: float | None
    spare_mm: float | None


def threadings(
    work: PatternWork, pattern: Pattern, cords: tuple[Cord, ...], size: int
) -> tuple[Threading, ...]:
    """Every threading step of the finishing, in one size."""
    found = []
    for step in pattern.finishing:
        if step.thread is None:
            continue
        cord = next((one for one in cords if one.piece == step.thread.piece), None)
        one = _threading(work, step.thread, cord, size)
        if one is not None:
            found.append(one)
    return tuple(found)


def _threading(work: PatternWork, thread: Thread, cord: Cord | None, size: int) -> Threading | None:
    piece = work.piece(thread.through)
    number = thread.round or thread.row
    round = next((one for one in piece.rounds if one.plan.number == number), None) if piece else None
    worked = round.sizes[size] if round is not None and size < len(round.sizes) else None
    if round is None or worked is None:
        return None
    posts = sum(1 for made in worked.made if isinstance(made, Made) and made.number)
    if not posts:
        return None
    starts = thread.from_ or (1,)
    each = thread.under + thread.over
    around_mm = cord.around_mm if cord is not None else None
    opens_mm = None if cord is None or around_mm is None else opening_mm(cord.length_mm, around_mm)
    spare_mm = None if cord is None or opens_mm is None else cord.length_mm - opens_mm
    return Threading(
        thread.piece,
        thread.through,
        round.plan.label,
        round.plan.word,
        posts,
        tuple(way(posts, start, thread.under, thread.over) for start in starts),
        all((start - starts[0]) % each == 0 for start in starts),
        opens_mm,
        spare_mm,
    )


def way(posts: int, start: int, under: int, over: int) -> Way:
    """A cord's way around so many posts, from the gap before post `start`."""
    passes: list[Pass] = []
    done = 0
    while done < posts:
        goes, number = ("under", under) if len(passes) % 2 == 0 else ("over", over)
        number = min(number, posts - done)
        first = (start - 1 + done) % posts + 1
        passes.append(Pass(goes, first, (first - 1 + number - 1) % posts + 1))
        done += number
    return Way(start, tuple(passes), passes[-1].way == "over" if passes else False)


def opening_mm(cord_mm: float, around_mm: float) -> float:
    """How far around the round opens with its cord knotted.

    All the way where the cord leaves its 20 cm for ends and knot (common practice), else as much less as it
    lacks of them.
    """
    return max(min(around_mm, cord_mm - ENDS_AND_KNOT_MM), 0.0)
