"""A piece worked in rows, laid flat: straight, or as an arc where its rows grow steadily."""

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Protocol

from ..fabric import Made
from ..measure.size import RoundSize
from .canvas import Canvas, Point
from .chart_things import begun_in
from .items import Item, items_of_rows
from .mitre import Mitre
from .sheet import Edging, Sheet
from .slanting_sides import eased, is_steady
from .stitchwork import Patch, between, draw_row, placed_on, straight
from .subject import Subject
from .worked_back import Surface, draw_leaf_on, goes_on, leaves_of
from .yoke import Yoke

ROW_LAYERS = 4


class Lay(Protocol):
    """What rows are laid on, their right side to the viewer."""

    def point(self, width: float, along: float, high: float) -> Point:
        """Where a point lies: `along` 0 to 1 of a row `width` mm wide, at a height in mm."""


def draw_rows(canvas: Canvas, subject: Subject, sheet: Lay, layer: int = 0) -> None:
    """The rows from the first up, their right side to the viewer."""
    mirrored = [work.side != "WS" for work in subject.piece.rounds]
    start = subject.piece.starts[0] if subject.piece.starts else []
    rows = items_of_rows(subject.worked, mirrored, subject.scale, start)
    sizes = [_rounded(size) for size in subject.sizes]
    low = 0.0
    below: RoundSize | None = None
    foot = sizes[0].length_mm
    if _slants(subject, sheet):
        rises = [one.rise_mm for one in sizes]
        widths = eased([one.length_mm for one in sizes], rises, subject.scale.width_mm)
        foot = widths[0][0]
        below = replace(sizes[0], length_mm=foot)
        sizes = [replace(one, length_mm=top) for one, (_, top) in zip(sizes, widths, strict=True)]
    alike: dict[Hashable, Canvas] = {}
    for at, (items, back, size) in enumerate(zip(rows, mirrored, sizes, strict=True)):
        row = _Row(items, size, below, not back)
        if isinstance(sheet, Sheet) and not sheet.arc:
            look = row.look()
            if look not in alike:
                alike[look] = Canvas()
                row.draw(alike[look], 0, sheet, 0.0, subject.colours)
            canvas.stamp(alike[look], layer + ROW_LAYERS * at, low)
        else:
            row.draw(canvas, layer + ROW_LAYERS * at, sheet, low, subject.colours)
        low += size.rise_mm
        below = size
        for leaf in leaves_of(subject.worked[at]):
            item = next(i for i in items if i.thing is leaf.on)
            if goes_on(subject.worked[at]):
                surface = _in_line(sheet, size, low, -1 if back else 1)
            else:
                surface = _standing_out(sheet, size, low, item)
            draw_leaf_on(
                canvas, layer + ROW_LAYERS * (len(rows) + 1), leaf, surface, subject.scale, subject.colours
            )
    _outline(canvas, sheet, sizes, foot, rows, begun_in(subject.worked[0]) is not None)


def _slants(subject: Subject, sheet: Lay) -> bool:
    """Whether rows on a straight sheet change at both ends, each ending near the one below."""
    lengths = [one.length_mm for one in subject.sizes]
    if (
        not isinstance(sheet, Sheet)
        or sheet.arc
        or sheet.wave.knots
        or begun_in(subject.worked[0]) is not None
    ):
        return False
    return max(lengths) > min(lengths) and is_steady(lengths, subject.scale.width_mm)


def _standing_out(sheet: Lay, size: RoundSize, low: float, item: Item) -> Surface:
    """What stands out from a row above one of its stitches, to the left of it. low: the row's top."""
    return lambda out, aside: sheet.point(
        size.length_mm, item.middle - aside / (size.length_mm or 1.0), low + out
    )


def _in_line(sheet: Lay, size: RoundSize, low: float, way: int) -> Surface:
    """What goes on in line with a row, beyond its end. low: the row's top. way: 1 to the right, -1 to the
    left.
    """
    end = 1.0 if way > 0 else 0.0
    return lambda out, aside: sheet.point(
        size.length_mm, end + way * out / (size.length_mm or 1.0), low + aside
    )


@dataclass(frozen=True, slots=True)
class _Row:
    """A row and what it stands on. reverse: its wrong side shows."""

    items: Sequence[Item]
    size: RoundSize
    below: RoundSize | None
    reverse: bool

    def look(self) -> Hashable:
        """All that its drawing shows, but for how high it lies."""
        below = self.below and (self.below.length_mm, self.below.rise_mm)
        return (
            self.reverse, self.size.length_mm, self.size.rise_mm, below, *(_look(one) for one in self.items)
        )  # fmt: skip

    def draw(self, canvas: Canvas, layer: int, sheet: Lay, low: float, colours: Mapping[str, str]) -> None:
        """Its stitches, so high on a sheet."""
        placed = [
            placed_on(
                item, lambda one: _patch(sheet, one, low, self.size, self.below), reverse=self.reverse
            )._replace(turned=True)
            for item in self.items
        ]
        draw_row(canvas, layer, placed, colours)


def _look(item: Item) -> Hashable:
    """What an item looks like and where it stands, to the thousandth of its row."""
    thing = item.thing
    of = (thing.kind, thing.form, thing.loop, thing.post) if isinstance(thing, Made) else thing.chains
    start, end, left, right = (round(share, 5) for share in (item.start, item.end, *item.foot))
    return (thing.yarn, of, start, end, left, right, item.floor, item.tops, item.picots)


def _rounded(size: RoundSize) -> RoundSize:
    """Row upon row in whole hundredths of a millimetre: rows alike are then drawn alike to the last digit."""
    return replace(size, rise_mm=round(size.rise_mm, 2))


def _patch(sheet: Lay, item: Item, low: float, size: RoundSize, below: RoundSize | None) -> Patch:
    wide = below.length_mm if below is not None else size.length_mm
    sunk = low - (1 - item.floor) * below.rise_mm if below is not None else low
    bends = isinstance(sheet, Sheet) and (sheet.wave.knots or (sheet.sides and item.corner))
    if bends or isinstance(sheet, Mitre | Yoke):
        left, right = item.foot

        def bent(share: float) -> Point:
            return sheet.point(wide, left + (right - left) * share, sunk)

        def over(share: float) -> Point:
            return sheet.point(
                size.length_mm, item.start + (item.end - item.start) * share, low + size.rise_mm
            )

        return between(bent, over)
    foot = [sheet.point(wide, along, sunk) for along in item.foot]
    top = [
        sheet.point(size.length_mm, along, low + size.rise_mm * up)
        for along, up in zip((item.start, item.end), item.tops, strict=True)
    ]
    return between(straight(*foot), straight(*top))


def _outline(
    canvas: Canvas,
    sheet: Lay,
    sizes: Sequence[RoundSize],
    foot: float,
    rows: Sequence[Sequence[Item]],
    tip: bool,
) -> None:
    """Around the sheet: along the first row, up the ends, over the tops of the last row. foot: how wide the
    first row is there. tip: it stands in one place.
    """
    bare = isinstance(sheet, Edging) or (isinstance(sheet, Sheet) and not sheet.arc and not sheet.wave.knots)
    steps = 1 if bare else 48
    feet = [share for item in rows[0] for share in item.foot]
    left_foot, wide = (min(feet), max(feet) - min(feet)) if tip else (0.0, 1.0)
    ways = [at / steps for at in range(steps + 1)]
    if isinstance(sheet, Yoke):
        ways = [0.0, *sheet.knots[0], 1.0]
    bottom = [sheet.point(foot, left_foot + wide * way, 0.0) for way in ways]
    right: list[Point] = []
    left: list[Point] = []
    low = 0.0
    for size in sizes[:-1]:
        low += size.rise_mm
        right.append(sheet.point(size.length_mm, 1.0, low))
        left.append(sheet.point(size.length_mm, 0.0, low))
    tops: list[Point] = []
    for item in rows[-1]:
        for share in (0.0, 1.0) if bare else (0.0, 0.5, 1.0):
            up = item.tops[0] + (item.tops[1] - item.tops[0]) * share
            along = item.start + (item.end - item.start) * share
            tops.append(sheet.point(sizes[-1].length_mm, along, low + sizes[-1].rise_mm * up))
    canvas.outline([*bottom, *right, *reversed(tops), *reversed(left)])
