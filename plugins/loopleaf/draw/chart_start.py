"""What the first round or row of a chart goes into, drawn: foundation chains carry round 0 and their own
number.
"""

from ..fabric import Made, Ring, Space
from ..fabric.worked import Place
from .canvas import Point
from .chart_ground import is_closed
from .chart_lines import Layout
from .chart_things import place_key
from .pen import Mark, Pen
from .signing import BESIDE, down
from .signs import CHAIN_LONG
from .subject import Subject


def draw_start(pen: Pen, subject: Subject, layout: Layout, chain: str) -> None:
    """A ring, or the chains of a foundation."""
    start = subject.piece.starts[0] if subject.piece.starts else []
    first = start[0] if start else None
    if isinstance(first, Ring):
        if not first.chains:
            pen.ring((0.0, 0.0), layout.begin.ring)
        for at in range(first.chains):
            share = at / first.chains
            _lying(pen, layout, layout.begin.ring, share, 1 / 40, Mark(chain, "0", at + 1))
        return
    chains = [place for place in start if isinstance(place, Made) and place.role == "foundation"]
    if is_closed(layout.ground):
        _about_the_middle(pen, chains, chain)
    else:
        _in_a_row(pen, subject, layout, chains, chain)


def _about_the_middle(pen: Pen, chains: list[Made], chain: str) -> None:
    """The chains that rounds go around, the last one made at the left: there the first round turns back."""
    for at, place in enumerate(chains):
        pen.chain(((len(chains) / 2 - at - 0.5) * 10.0, 0.0), (1.0, 0.0), Mark(chain, "0", place.number))


def _in_a_row(pen: Pen, subject: Subject, layout: Layout, chains: list[Made], chain: str) -> None:
    """Side by side as far as the first row goes over them; those that it passes stand beside its start."""
    used = [
        at for at, place in enumerate(chains) if any(place in made.into for made in subject.worked[0].made)
    ]
    first = subject.worked[0].made[0]
    counts = isinstance(first, Made) and first.role == "turning" and not first.into
    low, end = (used[0], used[-1] + 1) if used else (0, 0)
    passed = 0
    for at, place in enumerate(chains):
        mark = Mark(chain, "0", place.number)
        along = layout.begin.chains[place_key(place)]
        if low <= at < end:
            _lying(pen, layout, layout.begin.out, along, 0.01, mark)
        elif (at >= end or not counts) and not _begins_block(first):
            up = (CHAIN_LONG * (passed + 0.5)) / max(layout.lines[0].high - layout.lines[0].low, 1.0)
            middle, above = (layout.lines[0].before(BESIDE, share) for share in (up, up + 0.1))
            pen.chain(down(middle), down(_step(middle, above)), mark)
            passed += 1


def _begins_block(first: Place) -> bool:
    """Whether the chains that a row passes are drawn as the side of its first block."""
    return isinstance(first, Space) and first.block


def _lying(pen: Pen, layout: Layout, out: float, along: float, ahead: float, mark: Mark) -> None:
    middle, after = (layout.ground.at(out, share) for share in (along, along + ahead))
    pen.chain(down(middle), down(_step(middle, after)), mark)


def _step(start: Point, end: Point) -> Point:
    return (end[0] - start[0], end[1] - start[1])
