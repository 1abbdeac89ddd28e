"""A stuffed piece with what is sewn to it: each part stands out from the stitches that it is sewn over.

A long filled piece lies on its side, the first filled part sewn to it upwards, its beginning to the left and
towards the viewer. One with a filled part sewn on all around its end, as a head is, stands with that end up.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import inf, pi
from typing import NamedTuple

from ..fabric import Made
from ..measure import Measured
from ..pattern import Sew
from .canvas import Canvas
from .colour import outline_of
from .flaps import draw_flaps
from .in_the_round import draw_rounds
from .items import Item
from .marks import draw_marks
from .pose import FRONT, UP, Posed, Vector, across, added, around, cross, scaled, unit
from .section import Oval
from .stand import LOOKING_DOWN, Stand, lies, lying_flat, middle_of, stand_of
from .subject import Subject, main_colour, subject_of

LONG = 1.2
"""A filled piece so many times as long as it is wide lies."""

LYING = (0.78, 0.62, 0.0)
"""The direction that a lying piece grows in."""

SUNK = 0.12
"""A sewn part is pressed into the other by so much of its height."""

BACKWARDS, PRESSED_WIDE, PRESSED_THIN = 0.9, pi / 2, 0.28
"""A part that isn't filled is sewn on flat, leaning so much towards the end of the other piece."""

LAYERS = 4000


ALL_AROUND = 0.75
"""What is sewn over so much of a round sits on its middle, not at one side of it."""

HANGING = 1.6
"""What is sewn flat to the side of a figure that stands hangs down by so much of what it stands out."""

AT_THE_SIDE = 0.4
"""Where a piece faces the viewer less squarely than this, what is sewn on there begins behind it."""


@dataclass(frozen=True, slots=True)
class Part:
    """A piece in its place. upright: it belongs to a figure that stands. behind: how near it may lie, of what
    is sewn on where its piece turns away: that covers its open end.
    """

    subject: Subject
    pose: Posed
    rounds: Sequence[Sequence[Item]]
    upright: bool = False
    behind: float = inf

    @property
    def nearness(self) -> float:
        """How far its middle lies towards the viewer."""
        own = self.pose.nearness(self.pose.place(0.0, self.pose.rings[-1].high1 / 2, 0.0))
        return min(own, self.behind)


def is_assembled(subject: Subject, measured: Measured) -> bool:
    """Whether something is sewn to a stuffed piece in the round, or something that stands out to one that
    isn't, and has no cord.
    """
    if subject.in_rows:
        return False
    sewn = [part for _, part in _sewn(subject, measured)]
    if subject.stuffed or not sewn:
        return bool(sewn)
    corded = any(
        step.thread is not None and step.thread.through == subject.piece.name
        for step in subject.work.pattern.finishing
    )
    return not (corded or lies(subject)) and any(not lies(part) for part in sewn)


def parts_of(subject: Subject, measured: Measured) -> list[Part]:
    """The piece with what is sewn to it, and what is sewn to that, each in its place."""
    parts = [_body(subject, measured)]
    for onto in parts:
        for sew, sewn in _sewn(onto.subject, measured):
            parts += _in_place(onto, sewn, sew, measured)
    return parts


def draw_assembled(
    canvas: Canvas, subject: Subject, measured: Measured, shown: set[str], outline: float
) -> None:
    """The piece with its parts, the furthest first, and what is worked onto them in rows, whose names are
    added to `shown`. outline: the width of their outlines, in mm.
    """
    parts = parts_of(subject, measured)
    for at, part in enumerate(sorted(parts, key=lambda part: part.nearness)):
        shown.add(part.subject.piece.name)
        own = Canvas()
        draw_rounds(own, part.pose, part.subject, part.rounds)
        draw_flaps(own, part.subject, part.pose, part.rounds, measured, shown)
        draw_marks(own, part.pose, part.subject, part.rounds)
        canvas.lay(own, LAYERS * at, outline_of(main_colour(part.subject)), outline)


def _sewn(onto: Subject, measured: Measured) -> Iterator[tuple[Sew, Subject]]:
    """What is sewn to a piece at stitches that are named, each part once a step."""
    for step in onto.work.pattern.finishing:
        if step.sew is None or step.sew.to != onto.piece.name or not step.sew.stitches:
            continue
        piece = onto.work.piece(step.sew.piece)
        part = subject_of(onto.work, piece, measured) if piece is not None else None
        if part is not None and not part.in_rows and part.piece.name != onto.piece.name:
            yield step.sew, part


def _body(subject: Subject, measured: Measured) -> Part:
    stand, rounds = stand_of(subject)
    high = stand.rings[-1].high1
    wide = 2 * max(ring.out1 for ring in stand.rings)
    filled = [
        found
        for sew, part in _sewn(subject, measured)
        if part.stuffed
        for found in _places(subject, rounds, sew)
    ]
    head = next((place for place in filled if place.around), None)
    if head is not None:
        at_end = head.round * 2 >= len(rounds)
        axes = around(UP if at_end else scaled(UP, -1.0), FRONT, _front(subject, rounds, measured))
        return Part(subject, _posed(stand, axes, scaled(axes[2], -high / 2)), rounds, upright=True)
    top = filled[0].along if filled else 0.5
    axis: Vector = LYING if high > LONG * wide else UP
    facing: Vector = UP if high > LONG * wide else FRONT
    axes = around(axis, facing, top)
    return Part(subject, _posed(stand, axes, scaled(axes[2], -high / 2)), rounds)


def _front(subject: Subject, rounds: Sequence[Sequence[Item]], measured: Measured) -> float:
    """Which part of the way around a figure's piece faces the viewer: where its eyes are, else halfway
    between the first two parts of a pair, else the half away from where rounds begin.
    """
    for step in subject.work.pattern.finishing:
        if step.mark is not None and step.mark.to == subject.piece.name:
            found = middle_of(subject, rounds, step.mark)
            if found is not None:
                return found[1]
    for sew, _ in _sewn(subject, measured):
        pair = [place.along for place in _places(subject, rounds, sew)]
        if len(pair) > 1:
            return (pair[0] + pair[1]) / 2
    return 0.5


def _posed(stand: Stand, axes: tuple[Vector, Vector, Vector], origin: Vector) -> Posed:
    section = Oval(stand.section.spine) if isinstance(stand.section, Oval) else stand.section
    return Posed(section, stand.rings, LOOKING_DOWN, axes, origin)


class _Spot(NamedTuple):
    """Where a part is sewn on: the round, by its index, how far along it, and whether all around it."""

    round: int
    along: float
    around: bool


def _places(onto: Subject, rounds: Sequence[Sequence[Item]], sew: Sew) -> Iterator[_Spot]:
    """The middle of each run of stitches that a part is sewn over."""
    number = sew.round if sew.round is not None else sew.row
    at = next((i for i, r in enumerate(onto.piece.rounds) if r.plan.number == number), None)
    for run in sew.stitches if at is not None else ():
        wanted = range(run.first, (run.last or run.first) + 1)
        row = rounds[at or 0]
        found = [i.middle for i in row if isinstance(i.thing, Made) and i.thing.number in wanted]
        if found:
            yield _Spot(at or 0, sum(found) / len(found), len(found) >= ALL_AROUND * len(row))


def _in_place(onto: Part, part: Subject, sew: Sew, measured: Measured) -> Iterator[Part]:
    """A part at each run of stitches that it is sewn to."""
    if lies(part) and not part.stuffed:
        stand, rounds = lying_flat(part)
    else:
        stand, rounds = stand_of(part)
    high = stand.rings[-1].high1
    for at, along, around_it in _places(onto.subject, onto.rounds, sew):
        ring = onto.pose.rings[at]
        out, level = (ring.out0 + ring.out1) / 2, (ring.high0 + ring.high1) / 2
        place, normal = onto.pose.place(out, level, along), onto.pose.normal(ring, along)
        growing = onto.pose.axes[2]
        if onto.upright and around_it and part.stuffed:
            place = onto.pose.place(0.0, level, 0.0)
            away = unit(scaled(growing, 1.0 if at * 2 >= len(onto.rounds) else -1.0))
            axes = around(scaled(away, -1.0), FRONT, _front(part, rounds, measured))
            origin = added(place, scaled(away, high))
        elif part.stuffed or lies(part):
            axes = around(scaled(normal, -1.0), scaled(growing, -1.0), 0.5)
            origin = added(place, scaled(normal, high * (1 - SUNK)))
        else:
            lean = scaled(growing, BACKWARDS)
            if onto.upright:
                lean = scaled(UP, -HANGING * (1 - abs(normal[2])))
            tip = unit(added(normal, lean))
            aside = cross(across(normal, growing), normal)
            thin = scaled(cross(tip, aside), -PRESSED_THIN)
            axes = (scaled(aside, PRESSED_WIDE), thin, scaled(tip, -1.0))
            origin = added(place, scaled(tip, high * (1 - SUNK)))
        turned_away = onto.upright and onto.pose.nearness(normal) < AT_THE_SIDE
        behind = onto.nearness - 1 if turned_away else inf
        yield Part(part, _posed(stand, axes, origin), rounds, onto.upright, behind)
