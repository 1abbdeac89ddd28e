"""Where parts are sewn on: the front of a piece, with each part at its round and stitches."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import cos, inf, sin, tau

from ..fabric import Made, PatternWork
from ..measure import Measured, measure
from ..pattern import Mark, Run, Sew
from .canvas import Point
from .form import Form, form_of, outline_above
from .from_middle import sheet_of
from .items import Item, items_of_rows
from .letters import room_for
from .sketch import WORDS, Figure, Sketch
from .stand import sewn_at, stand_of
from .subject import Subject, subject_of

Placed = Sew | Mark
"""What lies over stitches of a piece."""

DRAWN = 56.0
"""The longer side of the piece, in units."""

_BESIDE = 6
"""So many labels stand beside the piece; more stand below it, as far as there is room."""

LABELS_APART = 0.5
"""Labels one below the other are so far apart, of the height of their words."""

AT_THE_SIDE, EDGEWISE = -0.35, 0.15
"""A part that faces so little away is at the side, not behind: it is drawn as narrow as this, at least."""

AROUND = 120
"""A line around a piece has so many stretches: the corners of any usual polygon lie between two of them."""

_TURNED = 0.25
"""A place so far around from the front's middle (a share of the way around) is at the side."""


@dataclass(frozen=True, slots=True)
class _Place:
    """A run of stitches that a part covers. ends: where it begins in the drawing, its middle, where it ends.
    facing: 1 in front, 0 at the side, below it at the back.
    """

    sew: Placed
    run: Run
    ends: tuple[Point, Point, Point]
    facing: float

    @property
    def middle(self) -> Point:
        return self.ends[1]

    @property
    def behind(self) -> bool:
        """Whether it lies at the back, where a reader of the front can't see it."""
        return self.facing <= AT_THE_SIDE


def placing(
    work: PatternWork, name: str, measured: Measured | None = None, left_handed: bool = False
) -> Figure | None:
    """The piece with all that is sewn to stitches of it; None where nothing is."""
    measured = measured or measure(work)
    piece = work.piece(name)
    subject = subject_of(work, piece, measured) if piece is not None else None
    steps = [step.sew or step.mark for step in work.pattern.finishing]
    sewn = [one for one in steps if one is not None and one.to == name and one.stitches and one.number]
    if subject is None or not sewn:
        return None
    sketch = Sketch(left_handed)
    places = _on_rows(sketch, subject, sewn) if subject.in_rows else _on_rounds(sketch, subject, sewn)
    if not places:
        return None
    scale, found = places
    for place in sorted(found, key=lambda place: place.facing):
        _draw_part(sketch, subject, measured, place, scale)
    _labels(sketch, subject, found)
    title = work.pattern.pieces[name].title or name
    behind = [(place.sew, place.run) for place in found if place.behind]
    told = "; ".join(
        f"{where}{_told(subject, sew, runs)}"
        for hidden, where in ((False, ""), (True, "behind, "))
        for sew in sewn
        if (runs := [run for run in sew.stitches if ((sew, run) in behind) is hidden])
    )
    return sketch.figure(f"{title}: what is sewn on", f"The front of the {title.lower()}, with {told}.")


# ---- the piece ------------------------------------------------------------------------------------


def _on_rounds(sketch: Sketch, subject: Subject, sewn: Sequence[Placed]) -> tuple[float, list[_Place]] | None:
    """A piece in the round from the front, or from above where it lies, turned as in the picture: what is
    sewn on first faces the reader.
    """
    form = form_of(subject)
    stand, rounds = stand_of(subject)
    known = [
        (sew, run, at, along)
        for sew in sewn
        for at in _round(subject, sew)
        for run in sew.stitches
        if (along := _along(rounds[at], run)) is not None
    ]
    if not known:
        return None
    faced = sewn_at(subject, rounds)
    front = known[0][3][1] if faced is None else faced
    reach = form.widest + form.spine / 2
    scale = DRAWN / max(2 * reach, form.height)
    side = [(x * scale, -y * scale) for x, y in form.side()]
    if form.lying:
        sketch.line(outline_above(form.widest * scale, form.corners, form.spine * scale), closed=True)
    else:
        sketch.line([*((-x, y) for x, y in reversed(side)), *side], closed=True)

    def point(at: int, along: float, share: float = 1.0) -> Point:
        turn = tau * (along - front)
        if form.lying:
            ring = form.rings[at]
            x, y = stand.section.at(ring.out0 + (ring.out1 - ring.out0) * share, along)
            return (x * scale, -y * scale)
        (x0, y0), (x1, y1) = side[at], side[at + 1]
        x, y = x0 + (x1 - x0) * share, y0 + (y1 - y0) * share
        return (-x * sin(turn), y)

    for at in sorted({at for _, _, at, _ in known}):
        _round_line(sketch, rounds[at], at, None if form.lying else front, point)
    found: list[_Place] = []
    for sew, run, at, (start, middle, end) in known:
        facing = 1.0 if form.lying else cos(tau * (middle - front))
        up = 1.0 if isinstance(sew, Mark) and sew.between else 0.5
        ends = (point(at, start, up), point(at, middle, up), point(at, end, up))
        found.append(_Place(sew, run, ends, facing))
    return scale, found


def _round_line(
    sketch: Sketch,
    items: Sequence[Item],
    at: int,
    front: float | None,
    point: Callable[[int, float, float], Point],
) -> None:
    """What shows of a round, the half about its front or (None) all of it: its lower and upper edge, and a
    tick between neighbouring stitches.
    """
    if front is None:
        steps = [i / AROUND for i in range(AROUND + 1)]
    else:
        steps = [front - _TURNED + i / 48 for i in range(25)]
    for share in (0.0, 1.0):
        sketch.line([point(at, along, share) for along in steps], "fine")
    for item in items:
        if front is None or cos(tau * (item.start - front)) > 0:
            sketch.line([point(at, item.start, 0.0), point(at, item.start, 1.0)], "fine")


def _on_rows(sketch: Sketch, subject: Subject, sewn: Sequence[Placed]) -> tuple[float, list[_Place]] | None:
    """A piece in rows, its right side to the reader."""
    mirrored = [one.side != "WS" for one in subject.piece.rounds]
    start = subject.piece.starts[0] if subject.piece.starts else []
    rows = items_of_rows(subject.worked, mirrored, subject.scale, start)
    sheet = sheet_of(subject)
    widest = max(one.length_mm for one in subject.sizes)
    scale = min(100.0 / widest, DRAWN * 2 / subject.sizes[-1].height_mm)
    tall = max(1.0, 3.0 / (subject.sizes[-1].height_mm * scale))

    def point(at: int, along: float, share: float) -> Point:
        low = subject.sizes[at].height_mm - subject.sizes[at].rise_mm
        x, y = sheet.point(subject.sizes[at].length_mm, along, low + subject.sizes[at].rise_mm * share)
        return (x * scale, -y * scale * tall)

    last = len(subject.sizes) - 1
    ends = [point(0, i / 24, 0.0) for i in range(25)] + [point(last, 1 - i / 24, 1.0) for i in range(25)]
    sketch.line(ends, closed=True)
    found = [
        _Place(sew, run, (point(at, along[0], 0.5), point(at, along[1], 0.5), point(at, along[2], 0.5)), 1.0)
        for sew in sewn
        for at in _round(subject, sew)
        for run in sew.stitches
        if (along := _along(rows[at], run)) is not None
    ]
    return (scale, found) if found else None


def _round(subject: Subject, sew: Placed) -> Iterator[int]:
    """The index of the round or row that a part is sewn to, if the size has it."""
    yield from (at for at, one in enumerate(subject.piece.rounds) if one.plan.number == sew.number)


def _along(items: Sequence[Item], run: Run) -> tuple[float, float, float] | None:
    """Where a run of stitches begins, its middle and where it ends, along its round."""
    covered = [item for item in items if isinstance(item.thing, Made) and item.thing.number in run]
    if not covered:
        return None
    start, end = min(item.start for item in covered), max(item.end for item in covered)
    return start, (start + end) / 2, end


# ---- the parts ------------------------------------------------------------------------------------


def _draw_part(sketch: Sketch, subject: Subject, measured: Measured, place: _Place, scale: float) -> None:
    """The part's own outline where it lies flat, and the stitches that it covers."""
    piece = subject.work.piece(place.sew.piece) if isinstance(place.sew, Sew) else None
    part = subject_of(subject.work, piece, measured) if piece is not None else None
    form = form_of(part) if part is not None and not part.in_rows else None
    x, y = place.middle
    if form is not None and not place.behind:
        flat = max(place.facing, EDGEWISE)
        shape = [(x + px * flat, y + py) for px, py in _turned(form, scale, hanging=bool(form.spine))]
        if form.lying:
            sketch.area(shape, "tint")
        else:
            sketch.line(shape, "dashed", closed=True)
    sketch.line(place.ends, "second" if place.facing > 0 else "dashed")


def _turned(form: Form, scale: float, hanging: bool) -> list[Point]:
    """The outline about its middle; an oval one hangs by its end."""
    shape = outline_above(form.widest * scale, form.corners, form.spine * scale)
    if not hanging:
        return shape
    reach = (form.widest + form.spine / 2) * scale
    return [(py, px + reach) for px, py in shape]


def _labels(sketch: Sketch, subject: Subject, places: Sequence[_Place]) -> None:
    """What each part is and the stitches that it covers, from the top down: so leaders don't cross. Below
    the piece, what would touch another label is left out: the words of the step name all.
    """
    if len(places) > _BESIDE:
        _labels_below(sketch, places)
        return
    left, _, right, _ = sketch.box
    reached = {-1: -inf, 1: -inf}
    sides = [-1 if place.middle[0] < -1.0 else 1 for place in places]
    for place, side in sorted(zip(places, sides, strict=True), key=lambda one: one[0].middle[1]):
        words = [f"{_title(subject, place.sew)}:", f"{_row(place.sew)}, {_numbers(place.run)}"]
        if place.behind:
            words = [words[0], f"{words[1]},", "behind"]
        if len(set(sides)) == 1:
            words = [" ".join(words)]  # with words at both sides the piece has a third of the width left
        high = WORDS * (1.2 * len(words) + LABELS_APART)
        edge, y = (left if side < 0 else right) + 3.8 * side, place.middle[1] + WORDS * 0.35
        y = max(y, reached[side])
        reached[side] = y + high
        sketch.line([place.middle, (edge, y - WORDS * 0.35)], "fine")
        sketch.dot(place.middle, 0.6)
        for line, part in enumerate(words):
            sketch.words((edge + side, y + line * WORDS * 1.2), part, "start" if side > 0 else "end")


def _labels_below(sketch: Sketch, places: Sequence[_Place]) -> None:
    low = sketch.box[3]
    taken: list[tuple[float, float]] = []
    for place in places:
        text, x = _numbers(place.run), place.middle[0]
        wide = room_for(text, WORDS)
        if all(abs(x - other) > (wide + w) / 2 + 1.5 for other, w in taken):
            taken.append((x, wide))
            sketch.line([(x, low + 1.0), (x, low + 2.8)], "fine")
            sketch.words((x, low + 6.5), text)


def _row(sew: Placed) -> str:
    if isinstance(sew, Mark) and sew.between:
        return f"rounds {sew.between[0].first}–{sew.between[0].last}"
    return f"round {sew.round}" if sew.round is not None else f"row {sew.row}"


def _title(subject: Subject, sew: Placed) -> str:
    if isinstance(sew, Mark):
        return sew.what
    model = subject.work.pattern.pieces.get(sew.piece)
    return ((model.title if model else "") or sew.piece).lower()


def _numbers(run: Run) -> str:
    return str(run.first) if run.last in (None, run.first) else f"{run.first}–{run.last}"


def _told(subject: Subject, sew: Placed, runs: Sequence[Run]) -> str:
    where = f"of {_row(sew)}"
    if isinstance(sew, Mark) and sew.between:
        where = f"between rounds {sew.between[0].first} and {sew.between[0].last}"
    return f"the {_title(subject, sew)} over stitches {', '.join(map(_numbers, runs))} {where}"
