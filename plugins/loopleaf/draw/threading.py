"""How a cord goes through a round: the round from above with each cord's start, and the first posts from the
front with the cord over and under them.
"""

from collections.abc import Iterator, Sequence
from math import cos, pi, sin, tau

from ..fabric import Made, PatternWork
from ..pattern import Thread
from .canvas import Point
from .measuring import arrow
from .sketch import WORDS, Figure, Sketch
from .strands import Knot, Strand, draw_strands

RADIUS = 30.0
"""Of the round as seen from above, in units."""

SWING = 2.3
"""How far a cord swings out and in between posts, in units."""

_SAMPLES = 6
_SHOWN = 8
"""So many posts are shown from the front."""

_STEP = 9.0


def threading(work: PatternWork, thread: Thread, left_handed: bool = False) -> Figure | None:
    """The figure of one threading step; None where the round or its posts aren't there."""
    posts, from_behind = _posts(work, thread)
    if posts < 2:
        return None
    starts = [start for start in thread.from_ or (1,) if start <= posts] or [1]
    around = work.pattern.pieces[thread.through].worked != "rows" and thread.round is not None
    # What was worked from the wrong side runs the other way, seen from the front.
    sketch = Sketch(left_handed != from_behind)
    if around:
        _from_above(sketch, posts, starts, thread)
    top = sketch.box[3] + 5.0 if around else 0.0
    _from_the_front(sketch, posts, starts[0], thread, top)
    place = f"round {thread.round}" if thread.round is not None else f"row {thread.row}"
    cord = work.pattern.pieces[thread.piece].title if thread.piece in work.pattern.pieces else ""
    title = f"{cord or thread.piece} through {place}"
    return sketch.figure(title, _told(posts, starts, thread, place, around))


def _posts(work: PatternWork, thread: Thread) -> tuple[int, bool]:
    """Counted stitches of the round in the first size, and whether it was worked from the wrong side."""
    piece = work.piece(thread.through)
    number = thread.round if thread.round is not None else thread.row
    for one in piece.rounds if piece is not None else ():
        worked = one.sizes[0] if one.sizes else None
        if one.plan.number == number and worked is not None:
            counted = sum(1 for made in worked.made if isinstance(made, Made) and made.number)
            return counted, one.side == "WS"
    return 0, False


def under(thread: Thread, start: int, post: int) -> bool:
    """Whether the cord that begins before `start` passes under (behind) a post."""
    return (post - start) % (thread.under + thread.over) < thread.under


# ---- from above -----------------------------------------------------------------------------------


def _angle(posts: int, place: float) -> float:
    """The round begins in the middle of the front, the side towards the reader, and goes to the left there,
    as a right-hander works it with its right side outside: clockwise, seen from above.
    """
    return -pi / 2 - tau * (place - 0.5) / posts


def _at(posts: int, place: float, out: float) -> Point:
    turn = _angle(posts, place)
    return (out * cos(turn), -out * sin(turn))


def _from_above(sketch: Sketch, posts: int, starts: Sequence[int], thread: Thread) -> None:
    radius = max(RADIUS, posts * 0.9)
    for post in range(1, posts + 1):
        sketch.dot(_at(posts, post, radius), 0.9)
    every = max(1, posts // 12)
    for post in [1, *range(1 + every, posts + 1, every)]:
        x, y = _at(posts, post, radius - 6.0)
        sketch.words((x, y + 1.2), str(post), size=WORDS * 0.9)
    for at, start in enumerate(starts):
        way = _way_above(posts, start, thread, radius, 0.9 * at - 0.45 * (len(starts) - 1))
        sketch.line(way, "second" if at % 2 == 0 else "dashed")
        for end in (way[0], way[-1]):
            sketch.dot(end, 0.6, "second" if at % 2 == 0 else "ink")
        x, y = _at(posts, start - 0.5, radius + 9.5)
        sketch.words(
            (x, y + 1.2 + (1.5 if y > 0 else -1.5)), f"cord {at + 1}" if len(starts) > 1 else "start"
        )
        bow = [_at(posts, start - 0.5 + posts * (0.02 + 0.01 * i), radius + 6.8) for i in range(9)]
        sketch.line(bow[:-1], "thin")
        arrow(sketch, bow[-2], bow[-1], both=False)
    sketch.words((0.0, 1.2), "from above")


def _way_above(posts: int, start: int, thread: Thread, radius: float, apart: float) -> list[Point]:
    """Outside the posts that it passes over, inside those that it passes under; both ends hang outside."""
    points: list[Point] = [_at(posts, start - 0.5, radius + 4.6)]
    for step in range(posts * _SAMPLES + 1):
        place = start - 0.5 + step / _SAMPLES
        points.append(_at(posts, place, radius + SWING * _side(thread, start, place) + apart))
    return [*points, _at(posts, start - 0.5, radius + 4.6)]


def _side(thread: Thread, start: int, place: float) -> float:
    """1 outside (over), -1 inside (under), eased between two posts."""
    before, after = int(place // 1), int(place // 1) + 1
    part = place - before
    a, b = (-1.0 if under(thread, start, post) else 1.0 for post in (before, after))
    return a + (b - a) * (1 - cos(pi * part)) / 2


# ---- from the front -------------------------------------------------------------------------------


def _from_the_front(sketch: Sketch, posts: int, start: int, thread: Thread, top: float) -> None:
    """Posts from right to left as a right-hander works them; the cord goes on to the left."""
    shown = min(_SHOWN, posts)
    left, right = -_STEP * shown / 2, _STEP * shown / 2
    low, middle = top + 17.0, top + 9.2
    edges = [Strand([Knot(left - 3, y), Knot(right + 3, y)], 2.6) for y in (top + 1.4, low)]
    uprights: list[Strand] = []
    cord = [Knot(right + 3.5, middle + 12.0, 1), Knot(right + 2.6, middle + 4.0, 1), Knot(right, middle, 1)]
    for at in range(shown):
        x = right - _STEP * (at + 0.5)
        hidden = under(thread, start, start + at)
        uprights.append(Strand([Knot(x, low - 1.0, 1), Knot(x, top + 2.4, 1)], 2.6))
        cord += [
            Knot(x, middle + (0.5 if hidden else -0.5), 0 if hidden else 2),
            Knot(x - _STEP / 2, middle, 1),
        ]
        sketch.words((x, low + 5.6), str((start + at - 1) % posts + 1))
    cord.append(Knot(left - 6.0, middle, 1))
    draw_strands(sketch, [*uprights, *edges, Strand(cord, 2.6, "tint")])
    arrow(sketch, (left - 7.5, middle), (left - 13.0, middle), both=False)
    sketch.words((right + 3.5, middle + 15.8), "start", "middle")
    sketch.words((0.0, low + 11.5), f"from the front: {_words(thread)}")


def _words(thread: Thread) -> str:
    return f"under {thread.under}, over {thread.over}"


def _told(posts: int, starts: Sequence[int], thread: Thread, place: str, around: bool) -> str:
    def passed(start: int) -> Iterator[str]:
        for post in range(start, start + min(4, posts)):
            yield f"{'under' if under(thread, start, post) else 'over'} {(post - 1) % posts + 1}"

    cords = [
        f"{'Cord ' + str(at) if len(starts) > 1 else 'The cord'} begins before stitch {start}, goes "
        f"{', '.join(passed(start))} and so on"
        f"{' around, and comes out where it began' if around else ''}."
        for at, start in enumerate(starts, 1)
    ]
    return f"The {posts} stitches of {place}. {' '.join(cords)}"
