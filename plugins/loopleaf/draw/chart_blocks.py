"""The chart of a piece worked corner to corner: each block in its square, the rows along the diagonals, an
edging outside.
"""

from collections.abc import Hashable, Sequence
from dataclasses import dataclass, replace
from math import sqrt

from ..fabric import Made, Space, WorkedRound
from ..fabric.squares import Block
from .arch import Arch, arch
from .blocks import Frame
from .canvas import Point
from .chart_begin import Beginning
from .chart_ground import Edge, Ground, Sideways, Straight
from .chart_lines import Layout, Line, Top
from .chart_things import ROOM, Thing, place_key, tall_of, wide_of
from .hem import Hem, Post, Way, goes_around, posts, stitches_of, ways
from .signs import CHAIN_LONG, CHAIN_THICK, UNIT
from .subject import Subject

SLOT = 0.95
"""A stitch of a block takes so much of its usual width, and so do its chains side by side."""

CHAIN_STEP = 8.4
"""From one of its chains to the next."""


@dataclass(slots=True)
class Diagonal(Line):
    """A row of blocks. begins: the corner that it begins at. down: it is worked downwards to the right."""

    begins: Point = (0.0, 0.0)
    down: bool = False

    def before(self, away: float, up: float) -> Point:
        """A point beside its start, on the row's own way."""
        step, aside = away / sqrt(2), (up - 0.5) * UNIT / sqrt(2)
        x, y = (aside - step, aside + step) if self.down else (aside + step, aside - step)
        return (self.begins[0] + x, self.begins[1] + y)


def laid_in_blocks(subject: Subject, rows: Sequence[Sequence[Block]]) -> Layout:
    """The layout of a chart whose rows are rows of blocks."""
    side = _side([block for row in rows for block in row])
    slots = {
        place_key(place): Frame(block, side).at(_slot(block, side, at), 0.0)[0]
        for block in rows[0]
        for at, made in enumerate(block.stitches)
        for place in made.into
    }
    chains: dict[Hashable, float] = {id(place): 0.0 for place in subject.piece.starts[0]}
    layout = Layout(Straight(), Beginning(0.0, 0.0, {**chains, **slots}), [], {})
    for at, row in enumerate(rows):
        layout.lines.append(_row(layout, row, side, bool(at)))
    hems = [
        _hem(worked, work.side != "WS")
        for work, worked in zip(subject.piece.rounds[len(rows) :], subject.worked[len(rows) :], strict=True)
    ]
    around = bool(hems) and goes_around(rows, hems)
    if around:
        for line in layout.lines:  # they lead slantwise out of it
            line.beyond = sqrt(2) * sum(hem.tall for hem in hems)
    edges = ways(rows, side, hems) if hems else ()
    for at, (hem, (lower, upper)) in enumerate(zip(hems, edges, strict=True)):
        line = _edging(layout, hem, lower, upper)
        if around:  # it begins in a corner, and those outside of it go around that
            line.beyond = hem.lead + sum(outer.tall for outer in hems[at:])
        layout.lines.append(line)
    return layout


def _side(blocks: Sequence[Block]) -> float:
    return max(
        max(
            SLOT * UNIT * (len(block.stitches) + 1),
            CHAIN_STEP * block.chains.chains + CHAIN_THICK,
            max(map(tall_of, block.stitches)) + 2 * ROOM,
        )
        for block in blocks
    )


def _slot(block: Block, side: float, at: int) -> float:
    """How far across a block one of its stitches stands, by its index."""
    return side * (at + 1.5) / (len(block.stitches) + 1)


def _row(layout: Layout, row: Sequence[Block], side: float, later: bool) -> Diagonal:
    first = Frame(row[0], side)
    ground = Straight() if row[0].upright else Sideways()
    things: list[Thing] = []
    for block in row:
        things += [block.chains, *block.stitches]
    line = Diagonal(
        ground, things, True, frozenset(), 0.0, 0.0, high=side,
        begins=first.at(0.0, 0.0), down=not row[0].upright,
    )  # fmt: skip
    tops: dict[Hashable, Top] = {}
    for block in row:
        frame, order = Frame(block, side), len(tops)
        hung = _chains(frame)
        line.arches[id(block.chains)] = hung
        tops[id(block.chains)] = _top(ground, hung.at(0.0), order)._replace(arch=hung, wide=hung.wide)
        for at, made in enumerate(block.stitches):
            across = _slot(block, side, at)
            foot, head = frame.at(across, ROOM + CHAIN_THICK / 2 * block.own), frame.at(across, side - ROOM)
            line.feet[id(made)], line.heads[id(made)] = [foot] * max(len(made.into), 1), head
            tops[id(made)] = _top(ground, head, order + at + 1)
            if block.own and later:
                middle, after = frame.at(across, 0.0), frame.at(across - 1.0, 0.0)
                line.chains.append((middle, (after[0] - middle[0], after[1] - middle[1])))
    layout.tops.update(tops)
    return line


@dataclass(slots=True)
class Straightened(Line):
    """A row of the edging. first: where its first stitch stands."""

    first: Post = Post((0.0, 0.0), (0.0, 0.0), (0.0, 0.0), 0.0)

    def before(self, away: float, up: float) -> Point:
        """A point before its first stitch, on the stretch that it begins on."""
        return self.first.at(up * self.high, -away)


def _hem(worked: WorkedRound, right: bool) -> Hem:
    things = stitches_of(worked)
    uncounted = any(isinstance(made, Made) and made.role == "chain" for made in worked.made)
    lead = UNIT if uncounted else 0.0
    return Hem(things, max(map(tall_of, things)) + ROOM, lead + sum(map(wide_of, things)), right, lead)


def _edging(layout: Layout, hem: Hem, lower: Way, upper: Way) -> Straightened:
    """Its stitches side by side, evenly, whichever places they were worked into: a corner has no room for
    three that stand upright.
    """
    ground, places = Edge(upper.corners, not hem.right), posts(hem, lower)
    line = Straightened(
        ground, hem.things, not hem.right, frozenset(), 0.0, 0.0, high=hem.tall, first=places[0]
    )
    for at, (thing, post) in enumerate(zip(hem.things, places, strict=True)):
        top = post.at(hem.tall)
        if isinstance(thing, Space):
            before, after = post.at(hem.tall, -post.room / 2), post.at(hem.tall, post.room / 2)
            line.arches[id(thing)] = arch(before, after, post.out, thing.chains, CHAIN_LONG)
        else:
            line.feet[id(thing)] = [post.at(ROOM)] * max(len(thing.into), 1)
            line.heads[id(thing)] = post.at(ROOM + tall_of(thing))
        layout.tops[id(thing)] = _top(Straight(), top, at)
    return line


def _chains(frame: Frame) -> Arch:
    """A block's chains, along the side that it begins at: from where it stands up to where it ends."""
    many, across = frame.block.chains.chains, frame.side / (len(frame.block.stitches) + 1) / 2
    start, end, edge = frame.at(across, ROOM), frame.at(across, frame.side - ROOM / 2), frame.at(0.0, ROOM)
    hung = arch(start, end, (edge[0] - start[0], edge[1] - start[1]), many, CHAIN_LONG)
    return replace(hung, beads=hung.beads[::-1])


def _top(ground: Ground, at: Point, order: int) -> Top:
    along, out = at if not isinstance(ground, Sideways) else at[::-1]
    return Top(ground, along, along, out, out, UNIT, order)
