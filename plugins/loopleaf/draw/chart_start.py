"""What the first round or row of a chart goes into, drawn: foundation chains carry round 0 and their own
number.
"""

from ..fabric import Made, Ring, Space
from ..fabric.worked import Place
from .border import bordered
from .canvas import Point
from .chart_beside import BESIDE, beside
from .chart_ground import Fan, Ground, is_closed
from .chart_lines import Layout
from .chart_stood_on import draw_stood_on
from .chart_things import ROOM, STACKED, place_key
from .pen import Mark, Pen
from .section import Oval
from .signing import down
from .signs import CHAIN_LONG, UNIT
from .stand import chains_of
from .subject import Subject


def draw_start(pen: Pen, subject: Subject, layout: Layout, chain: str) -> None:
    """A ring, the chains of a foundation, or the edge of another piece."""
    pen.round = "0"
    start = subject.piece.starts[0] if subject.piece.starts else []
    first = start[0] if start else None
    if isinstance(first, Ring):
        if not first.chains:
            pen.ring((0.0, 0.0), layout.begin.ring)
        for at in range(first.chains):
            share = at / first.chains
            # Rows in an arc stand on its upper part; its chains need the whole of it.
            whole = Oval() if isinstance(layout.ground, Fan) else layout.ground
            _lying(pen, whole, layout.begin.ring, share, 1 / 40, Mark(chain, at + 1))
        return
    own = subject.work.pattern.pieces[subject.piece.name].start
    if bordered(subject) is not None or (own is not None and own.kind == "edge"):
        draw_stood_on(pen, subject, layout)
        return
    chains = [place for place in start if isinstance(place, Made) and place.role == "foundation"]
    if is_closed(layout.ground):
        _about_the_middle(pen, subject, layout, chains, chain)
    else:
        _in_a_row(pen, subject, layout, chains, chain)


def _about_the_middle(pen: Pen, subject: Subject, layout: Layout, chains: list[Made], chain: str) -> None:
    """The chains that rounds go around, the first one made at the left: there the first round turns back.
    Those that it passes at the hook stand beside its start.
    """
    used = chains_of(subject)
    passed = [place for place in chains if used and place.number < used[0]]
    around = chains[len(passed) :]
    for at, place in enumerate(passed if not _counts(subject.worked[0].made[0]) else ()):
        _beside(pen, layout, at, Mark(chain, place.number))
    for at, place in enumerate(around):
        pen.chain(((len(around) / 2 - at - 0.5) * UNIT, 0.0), (1.0, 0.0), Mark(chain, place.number))


def _beside(pen: Pen, layout: Layout, passed: int, mark: Mark) -> None:
    """A chain that the first row or round passes, beside its start. passed: how many stand below it."""
    line = layout.lines[0]
    closed = is_closed(layout.ground)
    long = CHAIN_LONG * STACKED if closed else CHAIN_LONG
    middle, along = beside(line, ROOM * closed + long * (passed + 0.5), BESIDE + ROOM * closed)
    pen.chain(down(middle), down(along), mark, long)


def _in_a_row(pen: Pen, subject: Subject, layout: Layout, chains: list[Made], chain: str) -> None:
    """Side by side as far as the first row goes over them; those that it passes stand beside its start."""
    used = [
        at for at, place in enumerate(chains) if any(place in made.into for made in subject.worked[0].made)
    ]
    first = subject.worked[0].made[0]
    counts = _counts(first)
    low, end = (used[0], used[-1] + 1) if used else (0, 0)
    passed = 0
    for at, place in enumerate(chains):
        mark = Mark(chain, place.number)
        if low <= at < end and not layout.begin.chains:  # the one that rows go around
            pen.chain((0.0, 0.0), (1.0, 0.0), mark)
        elif low <= at < end:
            _lying(pen, layout.ground, layout.begin.out, layout.begin.chains[place_key(place)], 0.01, mark)
        elif (at >= end or not counts) and not _begins_block(first):
            _beside(pen, layout, passed, mark)
            passed += 1


def _counts(first: Place) -> bool:
    """Whether the chains that a row or round passes count as its first stitch, and are drawn as that."""
    return isinstance(first, Made) and first.role == "turning" and not first.into


def _begins_block(first: Place) -> bool:
    """Whether the chains that a row passes are drawn as the side of its first block."""
    return isinstance(first, Space) and first.block


def _lying(pen: Pen, ground: Ground, out: float, along: float, ahead: float, mark: Mark) -> None:
    middle, after = (ground.at(out, share) for share in (along, along + ahead))
    pen.chain(down(middle), down(_step(middle, after)), mark)


def _step(start: Point, end: Point) -> Point:
    return (end[0] - start[0], end[1] - start[1])
