"""Where every stitch of a chart stands: worked out from what each was worked into.

Round by round from the first, each stitch is pulled to stand straight above its place and held at a
stitch's width from its neighbours; what comes to rest is spread until nothing stands closer than signs allow.
Then each head rises its sign's own height above its foot, a leaning one less, and is held level with its
neighbours: so tall stitches bulge, shells round themselves, and waves wave. A round lies as far out as it
needs to hold its stitches; the rounds that close a ball are drawn as its far side, those that go up
as rows. All in units of a tenth of a stitch's width.
"""

from collections.abc import Hashable, Sequence
from itertools import accumulate, pairwise
from math import isclose, tau

from ..fabric import Made, Space, WorkedRound
from ..fabric.spikes import depths
from .blocks import blocks_of
from .border import bordered, outline_of
from .chart_about_chain import about, ends_of, room_about
from .chart_across import Across, room_for
from .chart_alike import as_before, widened
from .chart_around import goes_around, lay_rows_around
from .chart_begin import begun
from .chart_blocks import laid_in_blocks
from .chart_corners import corners_of, first_with_corners
from .chart_crowded import fit_of, has_points, is_crowded
from .chart_ends import spread
from .chart_fanned import along_the_arc
from .chart_feet import set_down
from .chart_form import ground_for
from .chart_ground import Ground, Inward, Straight, is_closed
from .chart_layers import lead, lifted
from .chart_leaves import room_for_leaves, wide_at_first
from .chart_lines import Layout, Line, Top
from .chart_petals import (
    folded,
    low_on,
    petals_on,
    squeeze,
    unfolded,
    with_low,
    worked_into,
)
from .chart_rooms import is_gathered, rooms_of
from .chart_seams import OPEN, lean_of, open_below, passed_over
from .chart_shaped import lefts_of, straight_above
from .chart_short import clear_of_lines, too_narrow
from .chart_sides import Side, clear_of, side_of
from .chart_things import (
    NUMBER_ROOM,
    ROOM,
    Thing,
    begun_in,
    gap_of,
    lowest_height,
    place_key,
    things_of,
    wide_of,
)
from .chart_turned import Turned
from .chart_unrolled import Unrolled, goes_up_from, laid_above
from .chart_up import AS_TALL_AS_WIDE, corners_alike, heads, level_for
from .crossed import least_for, uncrossed
from .layers import is_layer
from .row_ends import first_aside
from .section import Oval, Polygon, Rectangle
from .signs import CHAIN_LONG, UNIT
from .subject import Subject
from .valleys import passed_over as places_passed
from .valleys import waves
from .worked_back import leaves_of

CLOSING = 0.7
"""A piece whose last round has less than this share of its fullest one's room closes over itself."""

MOST_WIDENED = 1.4
"""The beginning of a waving cloth is laid so much wider than its chains are long, at most."""

MOST_APART = 2.0
"""Stitches stand so much further apart, at most, for the numbers in a narrow gap between two parts."""

BETWEEN = 40.0
"""Between the two sides of a ball."""


def lay_out(
    subject: Subject, by: float = 0.0, signs: bool = True, wide: float = 0.0, apart: float = 1.0,
    sides: bool = True,
) -> Layout:  # fmt: skip
    """The chart of a piece in its first size. by: how far the circles within a polygon are turned.
    signs: it must have room for them everywhere; else it is the form that counts. wide: how wide the
    beginning of rows is laid, at least. apart: rows are laid so much wider than they need. sides: of
    a piece with corners they are straight.
    """
    blocks = blocks_of(subject)
    if blocks:
        return laid_in_blocks(subject, blocks)
    around = goes_around(subject)
    ground = Straight() if around else ground_for(subject, sides)
    turned = Turned(ground, by) if isinstance(ground, Polygon) and is_closed(ground) else None
    cornered = first_with_corners(subject, turned.polygon.corners) if turned else 0
    backward = [(work.side != "WS") == subject.in_rows for work in subject.piece.rounds]
    rows = [things_of(one, back) for one, back in zip(subject.worked, backward, strict=True)]
    side: Side | None = None
    aside = first_aside(subject.worked)
    lefts = lefts_of(rows[:aside]) if type(ground) is Straight else []
    rooms = [
        *rooms_of(ground, rows[:aside], lefts),
        *rooms_of(Straight(), rows[len(rows) if aside is None else aside :]),
    ]
    rooms = [room + (room - UNIT) * (apart - 1) for room in rooms]  # between the middles of its ends
    spread = apart
    if any(is_gathered(one, above) for one, above in pairwise(rows)):
        spread = max(rooms[0] / (sum(map(wide_of, rows[0])) or UNIT), apart)
    chains = UNIT * spread * len(subject.piece.starts[0]) if spread > 1 and subject.piece.starts else 0.0
    begin = begun(subject, ground, backward[0], max(rooms[0], wide, chains))
    most = MOST_WIDENED * rooms[0]
    if wide:
        rooms[0] = max(rooms[0], wide * len(rows[0]) / max(len(begin.chains), 1))
    tops: dict[Hashable, Top] = {
        key: Top(ground, along, along, begin.level, begin.out, UNIT, order, corner=_in_corner(ground, along))
        for order, (key, along) in enumerate(sorted(begin.chains.items(), key=lambda chain: chain[1]))
    }
    layout = Layout(turned.circles if turned else ground, begin, [], tops)
    if (whole := None if subject.in_rows else bordered(subject)) is not None:
        layout.outline += outline_of(whole, subject, UNIT)
    closing = _closing(ground, rows, subject.worked)
    up = goes_up_from(ground, rows, subject.worked) if closing in (None, len(rows) - 1) else None
    closing = closing if up is None else None
    if up is not None:
        backward[up:] = [not back for back in backward[up:]]
        rows[up:] = [
            things_of(one, back) for one, back in zip(subject.worked[up:], backward[up:], strict=True)
        ]
        rooms[up:] = rooms_of(Straight(), rows[up:])
    low, used = begin.out, worked_into(subject.worked)
    for at, (one, things, back, room) in enumerate(zip(subject.worked, rows, backward, rooms, strict=True)):
        if at == closing:
            ground = _turned_over(layout, rows[at:])
            low = 0.0
        elif at == up:
            ground = _unrolled(layout, room)
            low = 0.0
        elif at == aside and around:
            lay_rows_around(layout, subject, at, low)
            return layout
        elif at == aside and (side := side_of(layout, things, back, low)):
            ground = side.ground
            layout.tops.update(side.tops)
        if side is not None and things:
            room = max(room, side.room(len(things)))
        corners = corners_of(one) if isinstance(ground, Polygon) and at >= cornered else frozenset()
        if turned and at == cornered and not layout.outline:
            below = [_places(layout, Line(ground, things, back), thing) for thing in things]
            if at and (aright := turned.aright(things, below, corners)) != turned:
                return lay_out(subject, aright.by, signs)
            tops.update([*turned.onto(tops, things, below, corners)])
        on_sides = turned is not None and at >= cornered
        gap = gap_of(one, on_sides, len(subject.piece.rounds[at].plan.label))
        line = Line(layout.ground if at < cornered else ground, things, back, corners, gap, room)
        line.made_first = next(iter(one.made), None)
        line.around = begun_in(one) if not at and subject.in_rows else None
        line.petals, line.left = petals_on(line, one, used), lefts[at] if at < len(lefts) else None
        low = _lay_line(layout, line, low, one, subject.worked[at - 1] if at else None, signs)
        if turned and has_points(line) and not layout.outline:
            return lay_out(subject, signs=signs, sides=False)
    if aside is not None:
        clear_of(layout, aside)
    elif type(ground) is Straight and wide < most and (more := widened(layout)):
        return lay_out(subject, by, signs, max(most / MOST_WIDENED, wide) * more)
    elif type(ground) is Straight and signs and apart == 1.0 and (more := too_narrow(layout, subject)):
        return lay_out(subject, by, signs, apart=min(more, MOST_APART))
    if type(ground) is Straight:
        clear_of_lines(layout)
    return layout


def _in_corner(ground: Ground, along: float) -> bool:
    """Whether a place of what a border goes around lies in its corner."""
    return isinstance(ground, Rectangle) and isclose(
        along * ground.corners, round(along * ground.corners), abs_tol=1e-6
    )


def _lay_line(
    layout: Layout, line: Line, low: float, worked: WorkedRound, before: WorkedRound | None, signs: bool
) -> float:
    """One more round; how far out its heads lie in the mean."""
    layout.lines.append(line)
    if not line.things:
        line.low, line.high, line.level = low, low + UNIT, low
        return low
    places = [_places(layout, line, thing) for thing in line.things]
    layer = is_layer(worked, before)
    line.deep = frozenset(depths(worked))
    line.waves = waves(line.things, places_passed([[top.order for top in tops] for tops in places]))
    below = lifted(layout, line, places) if layer else places
    skipped = low_on(line)
    high = [at for at in range(len(line.things)) if at not in skipped]
    risen = [line.things[at] for at in high], [below[at] for at in high]
    squeeze(line, line.ground.way(level_for(line.ground, *risen, 0.0, low)))
    whole, under = folded(line, below)
    under_it = layout.lines[-2] if len(layout.lines) > 1 else None
    ends = passed_over(line, under_it, below)
    if is_closed(line.ground):
        line.leaf = wide_at_first(worked)
        line.gap = max(line.gap, line.leaf)
    gaps = line.gap + (OPEN * under_it.gap if under_it and ends else 0.0)
    leafy = room_for_leaves(worked, line.things, line.gap) if is_closed(line.ground) else 0.0
    need = max(room_for(line.ground, whole, line.corners, gaps), leafy)
    about_ends = ends_of(line, below) if len(layout.lines) == 1 else []
    line.level = level_for(line.ground, *risen, room_about(line, about_ends) or need, low)
    crossed = least_for(line, below, line.level)
    line.crowded = not (line.petals or crossed or layer) and is_crowded(line, whole, under, line.level)
    fit = fit_of(line, whole, under, gaps) if line.crowded and isinstance(line.ground, Oval) else None
    if fit:
        line.level, line.gap = fit.level, min(line.gap, fit.gap)
    line.level = max(line.level, crossed)
    firm = len(layout.lines) == 1 and isinstance(line.ground, Oval) and line.ground.spine > 0
    straight = straight_above(line, under_it)
    xs: list[float]
    footing: list[float | None]
    if straight:
        xs, footing = straight, [*straight]
    else:
        wides = fit and fit.wides
        xs, footing = Across(
            line.ground, whole, under, line.level, line.corners, firm, line.room, line.around, wides
        ).settled()
        xs, footing = unfolded(line, whole, xs, footing)
        if even := along_the_arc(line, below, xs):
            xs, footing = even, [*even]
    if about_ends:
        xs, footing, drawn = about(line, about_ends, below)
        line.firm = [*zip((x / line.ground.way(line.level) for x in xs), drawn, strict=True)]
    sides = [xs[at] for at in high], [footing[at] for at in high]
    sloping = bool(signs and line.waves)
    outs = heads(
        line.ground, risen[0], *sides, risen[1], line.level, low, line.deep, fit, sloping, bool(straight)
    )
    outs = with_low(line, outs, below, low)
    outs = corners_alike(outs, [at for at, thing in enumerate(line.things) if id(thing) in line.corners])
    first, way, feet = -1 if line.backward else 0, line.ground.way(line.level), below[-line.backward]
    line.start, line.seam = _start(line, xs[first], below[first]) / way, ((xs[0] + xs[-1]) / way - 1) / 2
    if under_it is not None and ends is not None:
        line.passed = open_below(line, under_it, ends, xs)
    outs = spread(line, xs, outs) if signs else outs
    line.low = sum(top.out for top in feet) / len(feet) if feet else low
    line.high = outs[(high or [first])[first]]
    line.xs, line.outs = as_before(layout.lines[:-1], line, xs, outs)
    xs, outs = line.xs, line.outs
    line.lean = lean_of(line, line.things[first], uncrossed(below)[first])
    set_down(layout, line, xs, outs, below, low)
    if layer and is_closed(line.ground):
        lead(line, places)
    return sum(outs) / len(outs)


def _start(line: Line, x: float, below: Sequence[Top]) -> float:
    """Where a round begins along its way: a row at the outermost of its first head and its places."""
    if is_closed(line.ground) or len(below) < 2:
        return x
    outermost = max if line.backward else min
    return outermost(x, *(top.carried(line.level) * line.ground.way(line.level) for top in below))


def _places(layout: Layout, line: Line, thing: Thing) -> list[Top]:
    """The places that a stitch was worked into, as far as the chart has them."""
    if isinstance(thing, Space):
        return []
    found = (
        _one_chain(layout, place, line.backward)
        if isinstance(place, Made) and place.role == "loop"
        else layout.tops.get(place_key(place))
        for place in line.into(thing)
    )
    return [top for top in found if top is not None]


def _one_chain(layout: Layout, place: Made, backward: bool) -> Top | None:
    """One chain of an arch as a place. backward: its chains are counted against the way."""
    space = place.into[0]
    whole = layout.tops.get(id(space))
    if whole is None or whole.arch is None or not isinstance(space, Space):
        return None
    number = space.chains - place.number if backward else place.number - 1
    share = (number + 0.5) / space.chains - 0.5
    out = whole.out - whole.arch.rise * (2 * share) ** 2
    aside = share * whole.arch.wide / whole.ground.way(whole.level)
    return Top(
        whole.ground, whole.along + aside, whole.drawn + aside, whole.level, out, CHAIN_LONG, whole.order
    )


def _unrolled(layout: Layout, room: float) -> Unrolled:
    """The sides of a tube, above its base."""
    at = len(layout.lines) - 1
    ground, tops = laid_above(layout.lines[at], room)
    layout.sills.append((ground.at(0.0, 0.0), ground.at(0.0, room), at))
    layout.tops.clear()
    layout.tops.update(tops)
    return ground


# ---- the far side of a ball ----------------------------------------------------------------------


def _closing(ground: Ground, rows: Sequence[Sequence[Thing]], worked: Sequence[WorkedRound]) -> int | None:
    """The round from which on a round piece closes, by its index; None for what stays open or lies flat: as
    what ends in leaves or points does, which stand on few stitches far apart, and what goes on behind.
    """
    if not isinstance(ground, Oval) or ground.spine or len(rows) < 4:
        return None
    needs = [sum(wide_of(thing) for thing in row) for row in rows]
    fullest = max(at for at, need in enumerate(needs) if need == max(needs))
    before = needs.index(max(needs)) - 1
    if before >= 0 and needs[-1] > needs[before]:  # what it grows by at once are fans
        return None
    after = needs[fullest:]
    steady = all(b <= a for a, b in pairwise(after))
    if any(True for one in worked[fullest + 1 :] for _ in leaves_of(one)):
        return None
    if any(is_layer(one, before) for before, one in pairwise(worked[fullest:])):
        return None
    return fullest + 1 if steady and needs[-1] < CLOSING * max(needs) else None


def _reach(rows: Sequence[Sequence[Thing]], talls: Sequence[float]) -> float:
    """How far from its middle a far side must begin to hold its rounds, so tall each."""
    deep = accumulate(tall + ROOM for tall in talls)
    return max(
        out + (sum(wide_of(thing) for thing in row) + NUMBER_ROOM) / tau
        for out, row in zip(deep, rows, strict=True)
    )


def _turned_over(layout: Layout, rows: Sequence[Sequence[Thing]]) -> Inward:
    """The far side of a ball, to the right of the near one; the tops that it goes on from lie on its rim."""
    last = layout.lines[-1]
    talls = [lowest_height(row) for row in rows]
    reach = _reach(rows, talls)
    outs = [reach - out for out in accumulate((tall + ROOM for tall in talls[:-1]), initial=0.0)]
    for at, (row, before, out) in enumerate(zip(rows, [last.things, *rows], outs, strict=False)):
        gathers = max((len(thing.into) for thing in row if isinstance(thing, Made) and thing.form), default=1)
        talls[at] = max(talls[at], AS_TALL_AS_WIDE * (gathers - 1) * tau * out / max(len(before), 1))
    reach = _reach(rows, talls)
    near = max(layout.tops[id(thing)].out for thing in last.things)
    swing = layout.ground.swing if isinstance(layout.ground, Oval) else 0.0
    ground = Inward(reach, (near + reach + BETWEEN, 0.0), swing)
    layout.rims.append((ground.centre, reach, len(layout.lines) - 1))
    kept: dict[Hashable, Top] = {
        id(thing): Top(ground, top.along, top.along, 0.0, 0.0, UNIT, top.order)
        for thing in last.things
        for top in (layout.tops[id(thing)],)
    }
    layout.tops.clear()
    layout.tops.update(kept)
    return ground
