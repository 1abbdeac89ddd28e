"""The schematic of a piece: its outline with the measures, in both units and one a size."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from math import cos, dist, hypot, pi, sin

from ..fabric import PatternWork
from ..measure import Measured, measure
from ..measure.fan import is_gathered
from ..measure.finished import What
from ..measure.size import enclosed
from .arc_figure import arc
from .canvas import Point
from .fanned import fanned
from .form import Form, about, form_of, outline_above, said
from .foundation_edge import foot_mm
from .from_middle import sheet_of
from .lettered import Lettered
from .letters import width_of
from .measuring import DRAWN, GAP, arrow, broken, measured_across, measured_up, split
from .neck import drawn_neck, has_neck
from .parts_outlined import part_outlines
from .sketch import WORDS, Figure, Sketch
from .slanting_sides import eased
from .subject import Subject, of_each_size, subject_of
from .top_edge import top_of_rows
from .uneven_figure import Told, evenly_not, uneven
from .yoke import yoke_of
from .yoke_figure import yoked

LONGEST = 2.4
"""What is so many times as long as wide is drawn shortened, with a break."""

THINNEST = 5.0
"""The shorter side is drawn at least so wide, in units."""

ALONG = "high along the cloth"
"""What is worn is measured so, lying folded."""

ALIKE = 0.04
"""Widths that differ by less than this share are given once."""


def schematic(
    work: PatternWork, name: str, measured: Measured | None = None, left_handed: bool = False
) -> Figure | None:
    """One piece with its measures; None where it has no rounds or no gauge to measure by."""
    measured = measured or measure(work)
    piece = work.piece(name)
    subject = subject_of(work, piece, measured) if piece is not None else None
    own = measured.piece(name)
    if subject is None or own is None or own.scale is None:
        return None
    sketch, letters = Sketch(left_handed), Lettered()
    draw = _rows if subject.in_rows else _rounds
    facts = draw(sketch, letters, subject, measured)
    letters.write(sketch)
    title = work.pattern.pieces[name].title or name
    return sketch.figure(f"{title}: measures", f"The outline of the {title.lower()}: {'; '.join(facts)}.")


# ---- in rounds ------------------------------------------------------------------------------------


def _rounds(sketch: Sketch, letters: Lettered, subject: Subject, measured: Measured) -> list[str]:
    form = form_of(subject)
    if form.lying:
        facts = _from_above(sketch, letters, form, subject.piece.name, measured)
        if has_neck(form, subject):
            return [*facts, drawn_neck(sketch, letters, form)]
        if form.corners != 4 and not form.spine:
            sketch.dot((0.0, 0.0), 0.6)
        return facts
    if not form.spine:
        return _front(sketch, letters, form, subject, measured, 0.0)
    facts = _from_above(sketch, letters, form, subject.piece.name, measured)
    return [*facts, *_front(sketch, letters, form, subject, measured, sketch.box[3] + 8.0)]


def _from_above(sketch: Sketch, letters: Lettered, form: Form, name: str, measured: Measured) -> list[str]:
    """A flat piece, or the plan of an oval one, with its length across and its width at the side."""
    scale = DRAWN / (2 * form.widest + form.spine)
    sketch.line([(x * scale, -y * scale) for x, y in form.edge], closed=True)
    if form.foot and not form.lying:
        sketch.line(outline_above(form.foot * scale, form.corners, form.spine * scale), "thin", closed=True)
    half = max(x for x, _ in form.edge) * scale
    high = max(y for _, y in form.edge) * scale
    facts: list[str] = []
    if form.spine or form.corners == 4:
        length, width = said(measured, name, "length"), said(measured, name, "width")
        if form.corners == 4:
            length = width = said(measured, name, "across") or width
        if length:
            measured_across(
                sketch, -half, half, high + GAP, letters.short(length, "long" if form.spine else "wide"), high
            )
            facts.append(f"{length} {'long' if form.spine else 'wide'}")
        if width:
            measured_up(
                sketch, half + GAP, high, -high, letters.short(width, "wide" if form.spine else "high"), half
            )
            facts.append(f"{width} {'wide' if form.spine else 'high'}")
        return facts
    across = said(measured, name, "across")
    words = letters.short(across, "across")
    if across and form.corners:  # from side to side
        low = -min(y for _, y in form.edge) * scale
        measured_up(sketch, half + GAP, low, -high, words, half)
    elif across:
        measured_across(sketch, -half, half, high + GAP, words, 0.0)
    facts += [f"{across} across"] if across else []
    return facts


def _front(
    sketch: Sketch, letters: Lettered, form: Form, subject: Subject, measured: Measured, top: float
) -> list[str]:
    """A standing piece seen from the front: the way around, the height, and what its base measures."""
    name, half_mm = subject.piece.name, form.widest + form.spine / 2
    scale = min(DRAWN / (2 * half_mm), DRAWN / form.height)
    high = max(y for _, y in form.side()) * scale
    side = silhouette(form, scale)
    rim = [(x * scale, y * scale) for x, y in form.front_edge()]
    up = side[:-2] if rim else side
    way = [*up, *rim, *((-x, y) for x, y in reversed(up))]
    sketch.line([(x, top + high - y) for x, y in way], closed=True)
    half = half_mm * scale
    facts: list[str] = []
    height = said(measured, name, "height")
    own = measured.piece(name)
    if height and own is not None and own.along_cloth:
        _down_the_side(sketch, [(x, top + high - y) for x, y in side[:-1]], letters.short(height, ALONG))
        facts.append(f"{height} {ALONG}")
    elif height:
        measured_up(sketch, half + GAP, top + high, top, letters.short(height, "high"), half)
        facts.append(f"{height} high")
    if form.spine:
        return facts
    if form.foot:
        words = about([2 * form.foot])
        foot, edge = form.foot * scale, top + high
        measured_across(sketch, -foot, foot, edge + GAP, letters.short(words, "across the base"), edge)
        facts.append(f"the base {words} across")
    around = said(measured, name, "around")
    if around:
        widest = [0.0, high] if rim else [y for x, y in side if x > 0.99 * half]
        _belt(
            sketch,
            half,
            top + high - (min(widest) + max(widest)) / 2,
            top + high,
            letters.short(around, "around"),
        )
        facts.insert(1 if height else 0, f"{around} around")
    return facts


def _down_the_side(sketch: Sketch, side: Sequence[Point], words: str) -> None:
    """A measure along the cloth: beside the silhouette from its middle to its end, with a head at both."""
    way = _beside(side, GAP)
    sketch.line(way, "thin")
    for before, end in ((way[1], way[0]), (way[-2], way[-1])):
        arrow(sketch, before, end, both=False)
    x, y = max(way)
    for index, part in enumerate(split(words)):
        sketch.words((x + 1.6, y + WORDS * (0.35 + 1.2 * index)), part, "start")


def _beside(side: Sequence[Point], gap: float) -> list[Point]:
    """A line so far outside of a silhouette's right side."""
    way = [side[0]] + [point for before, point in pairwise(side) if dist(before, point) > gap / 10]
    found: list[Point] = []
    for at, (x, y) in enumerate(way):
        (x0, y0), (x1, y1) = way[max(at - 1, 0)], way[min(at + 1, len(way) - 1)]
        length = hypot(x1 - x0, y1 - y0) or 1.0
        turn = 1 if way[-1][1] > way[0][1] else -1
        found.append((x + (y1 - y0) / length * gap * turn, y - (x1 - x0) / length * gap * turn))
    return found


def silhouette(form: Form, scale: float) -> list[Point]:
    """The right side of a standing piece from the middle of its beginning to that of its end, y up."""
    side = [(x * scale, y * scale) for x, y in form.side()]
    return [(0.0, side[0][1]), *side, (0.0, side[-1][1])]


def _belt(sketch: Sketch, half: float, at: float, low: float, words: str) -> None:
    """The way around as a belt about the middle; its words on the form, or below where they have no room."""
    depth = half * 0.16
    sketch.line([(half * x, at + depth * y) for x, y in _half_circle(-1)], "dashed")
    sketch.line([(half * x, at + depth * y) for x, y in _half_circle(1)], "thin")
    parts = split(words)
    wide, tall = max(width_of(part, WORDS) for part in parts), WORDS * 1.2 * len(parts)
    first = at + depth + WORDS * 1.1
    if wide > 1.8 * half or first + tall > low:
        first, parts = max(low + GAP, sketch.box[3]) + WORDS * 1.2, [f"{words} around"]
    for index, part in enumerate(parts):
        sketch.words((0.0, first + WORDS * 1.2 * index), part)


def _half_circle(side: int) -> list[Point]:
    return [(-cos(pi * i / 24), side * sin(pi * i / 24)) for i in range(25)]


# ---- in rows --------------------------------------------------------------------------------------


def _rows(sketch: Sketch, letters: Lettered, subject: Subject, measured: Measured) -> list[str]:
    own = measured.piece(subject.piece.name)
    fan = own.fans[0] if own is not None and own.fans else None
    if fan is not None:
        return fanned(sketch, letters, fan, sheet_of(subject), subject.piece.name, measured)
    subject = replace(subject, sizes=enclosed(subject.sizes))
    if subject.sizes[-1].blocks:
        return _straight(sketch, letters, replace(subject, sizes=subject.sizes[-1:]), measured)
    sheet = sheet_of(subject)
    yoke = yoke_of(subject)
    if not sheet.arc and yoke is None:
        return _straight(sketch, letters, subject, measured)
    edges = (_inner(subject, measured), about(_outer(subject, measured)))
    deep_mm, deep = subject.sizes[-1].height_mm, _length(subject, measured)
    if yoke is not None:
        return yoked(sketch, letters, yoke, deep_mm, edges, deep)
    return arc(sketch, letters, sheet, deep_mm, edges, deep)


def _widths(subject: Subject, measured: Measured, at: int) -> str:
    """How wide a row is (-1: the last), one a size; as the author says it where that is what is stated: the
    width, or the length along the rows.
    """
    own = measured.piece(subject.piece.name)
    assert own is not None
    rows = [enclosed(own.known_rounds(size)) for size in range(len(own.rounds))]
    widths = [known[at].length_mm if known else None for known in rows]
    what: What = "length" if own.lengthwise else "width"
    stated = next((one for one in measured.stated if one.what == what and one.piece in ("", own.name)), None)
    known = stated.mm(0) if stated else None
    if known and widths[0] and abs(known / widths[0] - 1) < 0.1:
        return said(measured, own.name, what)
    return about(widths)


def _is_lengthwise(subject: Subject, measured: Measured) -> bool:
    own = measured.piece(subject.piece.name)
    return own is not None and own.lengthwise


def _length(subject: Subject, measured: Measured) -> str:
    name = subject.piece.name
    stated = {one.what for one in measured.stated if one.piece in ("", name)}
    if _is_lengthwise(subject, measured):
        return said(measured, name, "width")
    return said(measured, name, "height" if "height" in stated and "length" not in stated else "length")


def _straight(sketch: Sketch, letters: Lettered, subject: Subject, measured: Measured) -> list[str]:
    """Rows one above the other: the outline, its widths below and above, its length at the side. A piece of
    blocks is all there with its last row.
    """
    blocks = subject.sizes[-1].blocks
    widest = max(one.length_mm for one in subject.sizes)
    long = subject.sizes[-1].height_mm
    bottom, length = _widths(subject, measured, -1 if blocks else 0), _length(subject, measured)
    wide = "long" if _is_lengthwise(subject, measured) else "wide"
    first, last = subject.sizes[0].length_mm, subject.sizes[-1].length_mm
    alike = abs(last / first - 1) <= ALIKE
    if not blocks and not is_gathered(subject.worked[-1]) and (laid := evenly_not(subject)) is not None:
        told = Told(bottom, _widths(subject, measured, -1), length, wide, alike)
        return uneven(sketch, letters, subject, measured, laid, told)
    scale = DRAWN / max(min(widest, long * LONGEST), min(long, widest * LONGEST))
    across, up = min(1.0, long * LONGEST / widest), min(1.0, widest * LONGEST / long)
    x_scale, y_scale = scale * across, scale * up
    if widest * x_scale < THINNEST:
        x_scale = THINNEST / widest
    if long * y_scale < THINNEST:
        y_scale = THINNEST / long
    # What is told as one width is drawn as one: where the height is drawn larger, sides would slant.
    as_told = [first if abs(one.length_mm / first - 1) <= ALIKE else one.length_mm for one in subject.sizes]
    widths = eased(as_told, [one.rise_mm for one in subject.sizes], subject.scale.width_mm)
    right = [(widths[0][0] / 2 * x_scale, 0.0)]
    right += [
        (top / 2 * x_scale, -one.height_mm * y_scale)
        for (_, top), one in zip(widths, subject.sizes, strict=True)
    ]
    outline = [*right, *((-x, y) for x, y in reversed(right))]
    if not blocks and (edge := top_of_rows(subject)):
        along_it, rise = subject.sizes[-1].length_mm * x_scale, subject.sizes[-1].rise_mm
        over = [((along - 0.5) * along_it, -(long - rise * (1 - share)) * y_scale) for along, share in edge]
        outline = [*right[:-1], *reversed(over), *((-x, y) for x, y in reversed(right[:-1]))]
    high = long * y_scale
    half = widest * x_scale / 2
    sketch.line(outline, closed=True)
    parts = part_outlines(subject, measured) if min(across, up) >= 0.9 and not blocks else []
    highest = -high
    for part in parts:
        around = [(x * x_scale, -y * y_scale) for x, y in part.points]
        sketch.line(around, "dashed", closed=True)
        highest = min(highest, *(y for _, y in around))
    if across < 0.9:
        broken(sketch, [(0.0, -high), (0.0, 0.0)])
    if up < 0.9:
        broken(sketch, [(-half, -high / 2), (half, -high / 2)])
    below_it, above_it = ((-mm / 2 * x_scale, mm / 2 * x_scale) for mm in (first, last))
    below = letters.short(bottom, wide if alike else f"{wide} at the first row")
    measured_across(sketch, *below_it, GAP, below, 0.0)
    facts = [f"{bottom} {wide}"]
    if not alike:
        top = _widths(subject, measured, -1)
        above = letters.short(top, f"{wide} at the last row")
        measured_across(sketch, *above_it, highest - GAP, above, -high)
        facts = [f"{bottom} {wide} at the first row", f"{top} at the last"]
    far = "long" if blocks else "from first row to last"
    measured_up(sketch, half + GAP, 0.0, -high, letters.short(length, far), half)
    facts.append(f"{length} {far}")
    if parts:
        facts.append(f"dashed above it, what begins on it: {', '.join(part.title.lower() for part in parts)}")
    return facts


def _inner(subject: Subject, measured: Measured) -> str:
    """How long the edge that the rows begin at is, one a size."""
    if foot_mm(subject) == subject.sizes[0].length_mm:
        return _widths(subject, measured, 0)
    sizes = of_each_size(subject, measured)
    return about([foot_mm(one) if one is not None else None for one in sizes])


def _outer(subject: Subject, measured: Measured) -> list[float | None]:
    own = measured.piece(subject.piece.name)
    assert own is not None
    rows = [enclosed(own.known_rounds(size)) for size in range(len(own.rounds))]
    return [known[-1].length_mm if known else None for known in rows]
