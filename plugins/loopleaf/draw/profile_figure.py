"""The profile of work in the round: a section through its middle, each round with its number at the side."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise
from math import hypot

from ..fabric import PatternWork
from ..measure import Measured, measure
from .canvas import Point
from .form import Form, form_of
from .layers import last_layer
from .letters import width_of
from .measuring import broken
from .sketch import WORDS, Figure, Sketch
from .subject import Subject, subject_of

DRAWN = 60.0
"""The longer side of a section, in units."""

CLOSED = 0.3
"""A last round that reaches less far out than this share of the widest closes the piece."""

STEPS = (1, 2, 5, 10, 20, 50)
"""Every round is numbered, or every second, or every fifth: as there is room."""

DIGIT_HIGH, BESIDE, OFF_THE_AXIS = 0.7 * WORDS, 1.1, 0.8
"""The height of a digit; a number's distance from the ticks beside it, and from the axis."""

LONGEST = 6.0
"""What is so many times as high as wide is drawn shortened, with a break: its two walls stand apart."""

TICKS_APART = 0.9
"""Where rounds lie closer than this, in units, only every second has its tick, or every fifth."""

Scale = tuple[float, float]
"""Units for each mm, across and up."""

_TICK = 1.4
_CLOSE = WORDS * 0.95


def profile(
    work: PatternWork, name: str, measured: Measured | None = None, left_handed: bool = False
) -> Figure | None:
    """One piece in section; None for one that isn't worked in rounds, or where nothing was worked."""
    measured = measured or measure(work)
    piece = work.piece(name)
    subject = subject_of(work, piece, measured) if piece is not None else None
    if subject is None or subject.in_rows:
        return None
    form = form_of(subject)
    reach = form.widest + form.spine / 2
    shorter = min(1.0, LONGEST * 2 * reach / form.height) if form.height else 1.0
    across = DRAWN / max(2 * reach, form.height * shorter)
    scale = (across, across * shorter)
    sketch = Sketch(left_handed)
    _cloth(sketch, form, scale)
    _numbers(sketch, subject, form, scale)
    _parts(sketch, subject, form, scale)
    if shorter < 1:
        half, middle = reach * across, -form.height * scale[1] / 2
        broken(sketch, [(-half, middle), (half, middle)])
    title = work.pattern.pieces[name].title or name
    return sketch.figure(f"{title} in section", _told(subject, form, title, shorter < 1))


def _side(form: Form, scale: Scale, side: int) -> list[Point]:
    """One side of the section from its middle out and up, y down."""
    return [(side * x * scale[0], -y * scale[1]) for x, y in form.side()]


def _cloth(sketch: Sketch, form: Form, scale: Scale) -> None:
    left, right = _side(form, scale, -1), _side(form, scale, 1)
    if form.filled:
        for x, y in _filling([*left[::-1], *right]):
            sketch.line([(x - 0.5, y), (x + 0.5, y)], "thin")
    top = min(y for _, y in right)
    low = max(y for _, y in right)
    if not form.lying:
        sketch.line([(0.0, top - 3.0), (0.0, low + 3.0)], "dashed")
        rim = right[-1]
        if not form.filled and rim[0] > 1.0:
            sketch.line([(-rim[0], rim[1]), rim], "fine")
    if left[0][0] < -0.3 and not form.spine:
        sketch.line(left, "cut")
        sketch.line(right, "cut")
    else:
        sketch.line([*left[::-1], *right], "cut")
    every = _ticked(right)
    for side in (left, right):
        for number, (before, at) in enumerate(pairwise(side), 1):
            if not number % every or number == len(side) - 1:
                sketch.line(_across(before, at), "thin")


def _ticked(side: Sequence[Point]) -> int:
    """Every how many rounds have a tick where they end."""
    steps = [hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(side)]
    mean = sum(steps) / len(steps)
    return next((step for step in STEPS if step * mean >= TICKS_APART), STEPS[-1])


def _across(before: Point, at: Point) -> list[Point]:
    """A tick where a round ends, across the cloth."""
    dx, dy = at[0] - before[0], at[1] - before[1]
    length = hypot(dx, dy) or 1.0
    nx, ny = -dy / length * _TICK, dx / length * _TICK
    return [(at[0] - nx, at[1] - ny), (at[0] + nx, at[1] + ny)]


def _filling(outline: Sequence[Point]) -> list[Point]:
    """Points inside an outline, evenly spread in rows that are shifted by turns."""
    found: list[Point] = []
    top, low = min(y for _, y in outline), max(y for _, y in outline)
    row = 0
    y = top + 3.0
    while y < low - 2.0:
        crossings = sorted(
            x0 + (x1 - x0) * (y - y0) / (y1 - y0)
            for (x0, y0), (x1, y1) in zip(outline, [*outline[1:], outline[0]], strict=True)
            if (y0 <= y) != (y1 <= y)
        )
        for start, end in zip(crossings[::2], crossings[1::2], strict=False):
            x = -60.0 + (2.0 if row % 2 else 0.0)
            while x < end - 2.0:
                if x > start + 2.0:
                    found.append((x, y))
                x += 4.0
        y += 3.0
        row += 1
    return found


def _numbers(sketch: Sketch, subject: Subject, form: Form, scale: Scale) -> None:
    """Round numbers outside the right side, clear of its ticks. Where not all have room, every second stands
    there, or every fifth, of those that lie flat and of the others; always the first and the last.
    """
    spots = list(_spots(subject, form, scale))
    kept = [spots[0], *([spots[-1]] if len(spots) > 1 else [])]
    runs = [spots[: form.grounded], spots[form.grounded :]]
    for run in runs:
        for step in STEPS:
            wanted = [spot for at, spot in enumerate(run) if _in_step(spot.label, at, step)]
            shown = [spot for spot in wanted if all(_clear(spot, other) for other in kept)]
            if all(_clear(one, other) for one, other in pairwise(shown)) or step == STEPS[-1]:
                kept += shown
                break
    for spot in kept:
        sketch.words((spot.middle[0], spot.middle[1] + DIGIT_HIGH / 2), spot.label)


@dataclass(frozen=True, slots=True)
class _Spot:
    """A round's number about its middle."""

    label: str
    middle: Point
    wide: float


def _spots(subject: Subject, form: Form, scale: Scale) -> Iterator[_Spot]:
    """Where each number would stand: square to its round, as far outside as the tick and its digits reach."""
    labels = [one.plan.label for one in subject.piece.rounds]
    way = -1 if form.worn else 1
    for label, (before, after) in zip(labels, pairwise(_side(form, scale, 1)), strict=True):
        dx, dy = after[0] - before[0], after[1] - before[1]
        long = hypot(dx, dy) or 1.0
        nx, ny = (0.0, 1.0) if form.lying else (-dy / long * way, dx / long * way)
        wide = width_of(label, WORDS)
        off = _TICK + BESIDE + abs(nx) * wide / 2 + abs(ny) * DIGIT_HIGH / 2
        x, y = (before[0] + after[0]) / 2 + nx * off, (before[1] + after[1]) / 2 + ny * off
        yield _Spot(label, (x if form.lying else max(x, wide / 2 + OFF_THE_AXIS), y), wide)


def _in_step(label: str, at: int, step: int) -> bool:
    """Whether a number is one of every so many: from the first of its run by twos, else the round ones."""
    return not (int(label) if label.isdecimal() and step > 2 else at) % step


def _clear(one: _Spot, other: _Spot) -> bool:
    """Whether two numbers don't touch; no number is clear of itself, which stands there already."""
    aside, down = abs(one.middle[0] - other.middle[0]), abs(one.middle[1] - other.middle[1])
    return one is not other and (aside > (one.wide + other.wide) / 2 + 0.9 or down > _CLOSE)


def _parts(sketch: Sketch, subject: Subject, form: Form, scale: Scale) -> None:
    """The author's headings on the left, each at the middle of its rounds."""
    side = _side(form, scale, -1)
    for text, first, last in _headings(subject):
        if form.lying:
            continue
        at, (x, y) = _halfway(side, first, last)
        if at < form.grounded:
            sketch.words((x, y + 5.6), text)
        else:
            left = min(x for x, beside in side if abs(beside - y) < WORDS)
            sketch.words((min(left, x) - 3.0, y + WORDS * 0.35), text, "end")


def _halfway(side: Sequence[Point], first: int, last: int) -> tuple[int, Point]:
    """The point halfway along some rounds, and the round that it lies in."""
    steps = [hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(side[first : last + 2])]
    rest = sum(steps) / 2
    for at, step in enumerate(steps, first):
        if rest <= step or at == last:
            (x0, y0), (x1, y1) = side[at], side[at + 1]
            share = rest / step if step else 0.0
            return at, (x0 + (x1 - x0) * share, y0 + (y1 - y0) * share)
        rest -= step
    return last, side[last + 1]


def _headings(subject: Subject) -> Iterator[tuple[str, int, int]]:
    """Headings among the rounds, each with the indexes of its first and last round."""
    entries = subject.work.pattern.pieces[subject.piece.name].entries
    over = [
        next((one.heading for one in reversed(entries[: r.plan.entry]) if one.heading), "")
        for r in subject.piece.rounds
    ]
    first = 0
    for heading, run in groupby(over):
        last = first + len(list(run)) - 1
        if heading:
            yield heading, first, last
        first = last + 1


def _told(subject: Subject, form: Form, title: str, shortened: bool) -> str:
    rounds = subject.piece.rounds
    first, last = rounds[0].plan.label, rounds[-1].plan.label
    if form.lying:
        how = "layer behind layer" if last_layer(subject.worked) >= 0 else "one outside the other"
        runs = f"rounds {first} to {last} lie flat, {how}" if first != last else "it lies flat"
        return f"{title} in section: {runs}."
    base = f" Rounds {first} to {rounds[form.grounded - 1].plan.label} lie flat." if form.grounded else ""
    outs = [ring.out1 for ring in form.rings]
    widest = rounds[outs.index(max(outs))].plan.label
    ends = "is drawn closed" if form.rings[-1].out1 < CLOSED * form.widest else "is open"
    filled = ", filled" if form.filled else ""
    length = " It is drawn shorter than it is." if shortened else ""
    ends_at = ("top", "bottom") if form.worn else ("bottom", "top")
    return (
        f"{title} in section{filled}, from round {first} at the {ends_at[0]} to round {last} at the "
        f"{ends_at[1]}.{base} It is widest at round {widest} and {ends} at the {ends_at[1]}.{length}"
    )
