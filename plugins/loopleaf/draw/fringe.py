"""A fringe along the ends of a piece in rows, and a pompon on the crown of a cap, in the picture."""

from collections.abc import Sequence
from math import cos, hypot, pi, sin, sqrt

from .canvas import Canvas, Point
from .colour import level, shaded
from .in_rows import ROW_LAYERS, Lay
from .pose import Posed
from .sheet import Sheet
from .stand import Stand
from .subject import Subject, main_colour
from .trimmings import End, Fringe, Pompon

STRANDS = (-0.32, -0.1, 0.12, 0.34)
"""The strands of a tassel fan out by so much of their distance to the next one."""

THICK = 0.26
"""A strand's thickness, in stitch widths."""

UNSAID, LONGEST = 0.09, 0.3
"""A fringe without a length is so much of the piece's longer side, and none is drawn longer than this."""

KNOT = 0.7
"""The loop that holds a tassel reaches so many stitch widths into the cloth."""

GOLDEN = pi * (3 - sqrt(5))
"""Turned on by this angle, points spread evenly over a disc (the golden angle)."""

TUFTS, TUFT = 340, 0.3
"""A pompon shows so many ends of yarn, each so long, of its radius."""

POMPON, SUNK = 0.17, 0.75
"""A pompon without a size is so much of the cap's width; its middle lies so much of its radius above it."""

POMPON_LAYER = 6000


def draw_fringe(canvas: Canvas, subject: Subject, sheet: Lay, fringe: Fringe) -> None:
    """A tassel in every so many stitches, straight out from the edge."""
    wide = subject.scale.width_mm
    tall = subject.sizes[-1].height_mm
    side = max(tall, max(size.length_mm for size in subject.sizes))
    long = min(fringe.long_mm or UNSAID * side, LONGEST * side)
    for end in fringe.ends or _usual(subject, sheet):
        at, edge, inwards = (0, 0.0, 1.0) if end == "first" else (-1, tall, -1.0)
        size, worked = subject.sizes[at], subject.worked[at]
        colour = subject.colours[fringe.yarn or worked.made[0].yarn]
        many = max(size.stitches, 1)
        for stitch in range((many - 1) % fringe.every // 2, many, fringe.every):
            along = (stitch + 0.5) / many
            foot, left, right = (
                sheet.point(size.length_mm, along + aside / many, edge) for aside in (0.0, -0.5, 0.5)
            )
            within = sheet.point(size.length_mm, along, edge + inwards)
            out = _outwards(left, right, (foot[0] - within[0], foot[1] - within[1]))
            layer = ROW_LAYERS * len(subject.sizes) + 8
            _tassel(canvas, layer, foot, out, (long, wide, min(fringe.every, 2) * wide), colour)


def _outwards(left: Point, right: Point, away: Point) -> Point:
    """The direction straight out from an edge between two points of it, on the side that `away` points to."""
    dx, dy = right[0] - left[0], right[1] - left[1]
    long = hypot(dx, dy) or 1.0
    side = 1.0 if -dy * away[0] + dx * away[1] > 0 else -1.0
    return (-dy / long * side, dx / long * side)


def _usual(subject: Subject, sheet: Lay) -> Sequence[End]:
    """Where a fringe goes whose place isn't told: along the outer edge of a shawl, else at both ends."""
    return ("last",) if isinstance(sheet, Sheet) and sheet.arc else ("first", "last")


def _tassel(
    canvas: Canvas, layer: int, foot: Point, out_to: Point, size: tuple[float, float, float], colour: str
) -> None:
    """One tassel. out_to: the direction it hangs in. size: how long it is, how wide a stitch, and how wide it
    fans out.
    """
    (ox, oy), (long, wide, fans) = out_to, size
    ax, ay = oy, -ox
    thick = THICK * wide

    def at(out: float, aside: float) -> Point:
        return (foot[0] + ox * out + ax * aside, foot[1] + oy * out + ay * aside)

    for strand, fan in enumerate(STRANDS):
        aside = fan * fans
        # No two strands are quite as long: the third and the first reach a little less far.
        out = long * (1.0, 0.96, 0.985, 0.94)[strand]
        ends = [at(0.0, aside * 0.25), at(out * 0.4, aside * 0.75), at(out, aside)]
        canvas.line(layer, shaded(colour, 0.6), thick * 1.5, ends)
        canvas.line(layer + 1, shaded(colour, (1.0, 0.9, 1.04, 0.94)[strand]), thick, ends)
    canvas.line(layer + 2, shaded(colour, 0.6), thick * 3.2, [at(-KNOT * wide, 0.0), at(thick, 0.0)])
    canvas.line(layer + 3, shaded(colour, 1.0), thick * 2.2, [at(-KNOT * wide, 0.0), at(thick, 0.0)])


def draw_pompon(canvas: Canvas, stand: Stand, subject: Subject, pompon: Pompon) -> None:
    """A pompon on the crown of a cap as it is worn; none on what isn't."""
    if not isinstance(stand, Posed):
        return
    radius = (pompon.across_mm or POMPON * 2 * max(ring.out1 for ring in stand.rings)) / 2
    x, y = stand.point(0.0, stand.rings[0].high0, 0.0)
    y += radius * SUNK
    colour = subject.colours[pompon.yarn] if pompon.yarn else main_colour(subject)
    ball = [(x + radius * cos(turn * pi / 24), y + radius * sin(turn * pi / 24)) for turn in range(48)]
    canvas.fill(POMPON_LAYER, shaded(colour, 0.5), ball)
    for tuft in range(TUFTS):
        out, turn = sqrt((tuft + 0.5) / TUFTS), GOLDEN * tuft
        across, up = cos(turn), sin(turn)
        light = 0.84 - 0.3 * out * (across * 0.6 - up * 0.7) - 0.12 * out + 0.1 * (tuft % 3 - 1)
        start, end = radius * (out - TUFT / 2), radius * (out + TUFT / 2 * (0.5 + out / 2))
        tip = [(x + across * start, y + up * start), (x + across * end, y + up * end)]
        canvas.line(POMPON_LAYER + 1 + tuft % 3, shaded(colour, level(light)), radius * 0.09, tip)
