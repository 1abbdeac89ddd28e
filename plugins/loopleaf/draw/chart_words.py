"""What a chart says in words: the numbers and ways of its rounds, its yarns, what a reader must know."""

from collections.abc import Iterator, Mapping
from itertools import pairwise
from math import atan2, degrees, hypot

from ..fabric import Made
from .canvas import Point
from .chart_beside import at_an_end, begins_gathered
from .chart_ground import Bends, Inward, is_closed
from .chart_key import KeyLine, said
from .chart_labels import Label
from .chart_lines import Layout, Line
from .chart_numbers import NUMBER_HIGH, OUTSIDE, Inked, clear_spot, ink_of, spot_for_arrow
from .chart_stood_on import stood_on
from .chart_things import NUMBER_ROOM
from .colour import ink_on_light
from .section import Oval, Polygon
from .signing import down
from .signs import is_cross
from .strokes import STROKES, Stroke
from .subject import Subject
from .worked_back import leaves_of

BESIDE_A_ROW = 14.0
"""An arrow begins so far before its row."""

BESIDE_A_LEAF = 0.75
"""Where a leaf stands on a round's first stitch its arrow lies so much of the gap before it."""

BEHIND_A_LEAF = 6.0
"""And so far before a leaf that rises before that stitch."""

IN_THE_GAP, BEFORE_A_JOIN = 1.5, 3.5
"""A round's number stands so far into the gap at its start, from the last stitch's side of it."""

WIDE_APART, HIGH_APART = 6.6, 6.0
"""Numbers beside each other are so far apart, and those one above the other, at least."""

CLEAR_OF_BEGINNING, CLOSE = 0.9, 16.0
"""The number of a first round stands so far up its height where that is less, in units, or around chains:
further in, stitches stand closely.
"""

FEW_ROUNDS = 3
"""A chart of no more rounds has large numbers: in a ring they need a clear spot."""

OUTLINE = 4
"""The lines of an outline without seams."""


def strokes_of(subject: Subject) -> dict[str, Stroke]:
    """The strokes of each yarn, in the order met."""
    yarns = dict.fromkeys(made.yarn for one in subject.worked for made in one.made)
    return {letter: STROKES[at % len(STROKES)] for at, letter in enumerate(yarns)}


def labels(subject: Subject, layout: Layout) -> Iterator[Label]:
    """The number of each round or row, at its start. An arrow shows which way the work goes: beside each row;
    outside the outermost round, and of rounds that turn each way.
    """
    lines = layout.lines
    spots, inked = _spots(subject, layout)
    for at, (work, line) in enumerate(zip(subject.piece.rounds, lines, strict=True)):
        after = lines[at + 1] if at + 1 < len(lines) else None
        if not is_closed(line.ground):
            start = line.before(BESIDE_A_ROW + line.beyond, 0.5)
            away = _direction(start, line.before(BESIDE_A_ROW + line.beyond + 1.0, 0.5))
            turned = _turned((-away[0], -away[1]))
            apart = line.arrow > 0
            if apart:
                yield Label(down(line.before(line.arrow, 0.5)), (0.0, 0.0), turned=turned)
            yield Label(down(start), down(away), work.plan.label, None if apart else turned, lined_up=apart)
            continue
        inward, high = isinstance(line.ground, Inward), max(line.high - line.low, 1.0)
        yield Label(down(spots[at]), (0.0, 0.0), work.plan.label, part=inward)
        if inward and not isinstance(lines[at - 1].ground, Inward):
            up = -OUTSIDE / high
        elif not inward and (after is None or _way(after) != _way(line)):
            up = 1 + OUTSIDE / high
        else:
            continue
        leaf = next(leaves_of(subject.worked[at]), None)
        aside = BESIDE_A_LEAF * line.gap if leaf is not None and leaf.on.number == 1 else 0.0
        aside = line.leaf + BEHIND_A_LEAF if line.leaf else aside
        start, ahead = line.before(aside, up), line.before(aside - 1.0, up)
        if not inward and (after is not None or line.crowded or _has_picots(subject, at)):
            start, (x, y) = spot_for_arrow(line, inked, after is None), _direction(start, ahead)
            ahead = (start[0] + x, start[1] + y)
            inked.append(_ink_of(start))
        away = _direction(line.before(0.0, 0.5), start)
        yield Label(down(start), down(away), turned=_turned(_direction(start, ahead)))


def _spots(subject: Subject, layout: Layout) -> tuple[list[Point], list[Inked]]:
    """Where the numbers of rounds stand: in the gap at their start, or in a clear spot where it is narrow or
    they would lie on each other; and what ink they and arrows must keep clear of.
    """
    lines = layout.lines
    turned = {
        at + more
        for at, (line, after) in enumerate(pairwise(lines))
        if is_closed(line.ground) and is_closed(after.ground) and _way(line) != _way(after)
        for more in (0, 1)
    }
    narrow = {
        at
        for at, line in enumerate(lines)
        if isinstance(line.ground, Polygon | Inward)
        or at_an_end(line)
        or line.petals
        or line.crowded
        or at in turned
        or begins_gathered(line)
        or (not at and layout.begin.ring > 0 and len(lines) <= FEW_ROUNDS and type(line.ground) is Oval)
    }
    found = [line.before(*_in_the_gap(layout, at)) for at, line in enumerate(lines)]
    narrow |= {
        at for at in range(len(lines) - 1) if is_closed(lines[at].ground) and _touch(*found[at : at + 2])
    }
    inked = ink_of(layout, subject.worked) if narrow or _has_picots(subject, -1) else []
    inked += [_ink_of(spot) for at, spot in enumerate(found) if at not in narrow]
    for at in sorted(narrow):
        found[at] = clear_spot(lines[at], subject.piece.rounds[at].plan.label, inked)
        inked.append(_ink_of(found[at]))
    return found, inked


def _has_picots(subject: Subject, at: int) -> bool:
    return any(isinstance(made, Made) and made.role == "picot" for made in subject.worked[at].made)


def _ink_of(spot: Point) -> Inked:
    return (spot, spot, NUMBER_HIGH)


def _touch(one: Point, other: Point) -> bool:
    """Whether two numbers of one digit lie on each other, in letters as a small chart has them."""
    return abs(one[0] - other[0]) < WIDE_APART and abs(one[1] - other[1]) < HIGH_APART


def _in_the_gap(layout: Layout, at: int) -> tuple[float, float]:
    """How far before its round's first stitch a number stands in the gap there, and how far up."""
    line = layout.lines[at]
    beside = BEFORE_A_JOIN if line.gap > NUMBER_ROOM else IN_THE_GAP
    close = not at and (layout.begin.chains or line.high - line.low < CLOSE)
    return line.gap - beside, CLEAR_OF_BEGINNING if close else 0.5


def _direction(start: Point, end: Point) -> Point:
    x, y = end[0] - start[0], end[1] - start[1]
    length = hypot(x, y) or 1.0
    return (x / length, y / length)


def _turned(way: Point) -> int:
    """The degrees that an arrow is turned by, y down."""
    return -round(degrees(atan2(way[1], way[0])))


def _way(line: Line) -> tuple[bool, bool]:
    return line.backward, isinstance(line.ground, Inward)


def remarks(subject: Subject, layout: Layout, again: bool, left_handed: bool) -> Iterator[KeyLine]:
    """What else must be said. again: repeats are drawn lighter."""
    yield from _yarns(subject)
    turned = [
        is_closed(layout.lines[at].ground)
        for at, work in enumerate(subject.piece.rounds)
        if work.side == "WS" and _takes_sides(subject, at)
    ]
    if turned:
        begun = f"rows that begin at the {'right' if left_handed else 'left'}"
        where = "rounds worked from the wrong side" if all(turned) else begun
        yield said("As the right side shows it.")
        yield said(f"On {where}, front is worked as back and back as front.")
    if any(line.leads for line in layout.lines):
        yield said("A layer that lies behind is drawn outside. Dots lead to the stitches that it goes into.")
    if any(id(one) in line.deep and is_cross(one.kind) for line in layout.lines for one in _stitches(line)):
        yield said("A line leads down from a cross to the stitch that it goes into.")
    if any(
        id(one) in line.deep and not is_cross(one.kind) for line in layout.lines for one in _stitches(line)
    ):
        yield said("A stem that is led down past a row goes into the stitch at its foot.")
    if isinstance(layout.ground, Bends):
        one = len(layout.lines) == 1
        rows, they = ("The row is", "It is") if one else ("The rows are", "They are")
        yield said(f"{rows} straight. {they} drawn in bends to save room.")
    for _, _, at in layout.rims:
        first, last = (subject.piece.rounds[n].plan.label for n in (at + 1, -1))
        if first == last:
            yield said(f"Round {first} closes the piece. It is drawn from its other side, inwards.")
            continue
        yield said(f"Rounds {first} to {last} close the piece. They are drawn from its other side, inwards.")
    for _, _, at in layout.sills:
        first, last = (subject.piece.rounds[n].plan.label for n in (at + 1, -1))
        yield said(f"Rounds {first} to {last} go up. They are drawn cut open where they begin, as rows.")
    if layout.outline:
        seams = " and its seams" if len(layout.outline) > OUTLINE else ""
        yield said(f"The lighter lines are the edge that the border goes around{seams}.")
    if edge := stood_on(subject):
        yield said(edge)
    if again:
        yield said("What only repeats is drawn lighter.")
    if subject.work.pattern.size_count > 1:
        yield said(f"Drawn in size {subject.work.pattern.sizes[0]}.")


def _stitches(line: Line) -> Iterator[Made]:
    return (thing for thing in line.things if isinstance(thing, Made))


def _takes_sides(subject: Subject, at: int) -> bool:
    return any(
        getattr(made, "post", "") in ("front", "back") or getattr(made, "loop", "") in ("front", "back")
        for made in subject.worked[at].made
    )


def _yarns(subject: Subject) -> Iterator[KeyLine]:
    """Each yarn with its colour and stroke, where there are several."""
    strokes = strokes_of(subject)
    materials = subject.work.pattern.materials
    names: Mapping[str, str] = (
        {letter: yarn.name for letter, yarn in materials.yarns.items()} if materials is not None else {}
    )
    if len(strokes) < 2:
        return
    for letter, stroke in strokes.items():
        words = ", ".join(part for part in (letter, names.get(letter, "")) if part)
        ink = ink_on_light(subject.colours[letter])
        yield KeyLine({"US": words, "UK": words}, "M-9 0h18", stroke=stroke, colour=ink)
