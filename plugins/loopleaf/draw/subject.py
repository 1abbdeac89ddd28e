"""What there is to draw of a piece in one size: its stitches, their sizes and their colours."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from ..fabric import PatternWork, PieceWork, WorkedRound
from ..fabric.laid_out import Whole
from ..measure import Measured
from ..measure.fan import Fan
from ..measure.finished import is_stuffed
from ..measure.gauge import Sample, Scale
from ..measure.made import contents
from ..measure.size import RoundSize, round_sizes
from ..measure.units import Band
from .colour import UNDYED
from .once import once

NO_GAUGE = Scale({("single", ""): Sample(6.0, 5.5, 1.0, 1.0)})
"""A piece without a gauge is drawn as in a medium yarn: its form is right, its size means nothing."""


@dataclass(frozen=True, slots=True)
class Subject:
    """A piece in one size with all that its drawing needs; rounds that the size lacks are left out.

    colours: of its yarns by letter, "" for a piece that names none. whole: the way around the piece's own
    rows, of a border that its last ones are. fan: of rows that fan out from a point. parts: the rows, by
    their index, that begin a piece on stitches of an earlier one, where several pieces are one cloth.
    """

    work: PatternWork
    piece: PieceWork
    worked: list[WorkedRound]
    sizes: list[RoundSize]
    scale: Scale
    colours: Mapping[str, str]
    whole: Whole | None = None
    fan: Fan | None = None
    parts: Sequence[int] = ()

    @property
    def in_rows(self) -> bool:
        """Whether the piece is worked in rows."""
        return self.whole is None and self.work.pattern.pieces[self.piece.name].worked.startswith("rows")

    @property
    def stuffed(self) -> bool:
        """Whether the piece is filled, between its rounds or in the finishing."""
        return is_stuffed(self.work.pattern, self.piece.name)


def subject_of(work: PatternWork, piece: PieceWork, measured: Measured) -> Subject | None:
    """What there is to draw of a piece in its first size; None where nothing was worked."""
    return subject_in(work, piece, measured, 0)


@once
def subject_in(work: PatternWork, piece: PieceWork, measured: Measured, size: int) -> Subject | None:
    """What there is to draw of a piece in a size, by its index; None where nothing was worked."""
    pairs = [(r, r.sizes[size]) for r in piece.rounds]
    kept = [(r, one) for r, one in pairs if one is not None and one.made]
    if not kept:
        return None
    own = measured.piece(piece.name)
    sizes: list[RoundSize | None]
    if own is not None and own.scale is not None and own.rounds:
        scale = own.scale
        measured_rows = zip(pairs, own.rounds[size], strict=True)
        sizes = [_without_points(one) for (_, w), one in measured_rows if w is not None and w.made]
    else:
        scale = NO_GAUGE
        sizes = list(round_sizes([r.plan.label for r, _ in kept], [contents(one) for _, one in kept], scale))
    shown = PieceWork(piece.name, piece.path, piece.starts[size:], [r for r, _ in kept])
    yarns = work.pattern.materials.yarns if work.pattern.materials is not None else {}
    colours = {letter: yarn.colour or UNDYED for letter, yarn in yarns.items()}
    for _, one in kept:
        colours.update({made.yarn: UNDYED for made in one.made if made.yarn not in colours})
    known = [s for s in sizes if s is not None]
    fan = own.fans[size] if own is not None and own.fans else None
    return Subject(work, shown, [one for _, one in kept], known, scale, colours, fan=fan)


def of_each_size(subject: Subject, measured: Measured) -> list[Subject | None]:
    """A piece's rows in each of the pattern's sizes; None for a size that works none of them."""
    piece, own = subject.work.piece(subject.piece.name), measured.piece(subject.piece.name)
    if piece is None or own is None:
        return []
    return [subject_in(subject.work, piece, measured, size) for size in range(len(own.rounds))]


def _without_points(size: RoundSize | None) -> RoundSize | None:
    """A round as its cloth is: points worked back on chains are drawn where they stand on it."""
    if size is None or not size.points_mm:
        return size
    less = size.points_mm
    height = Band(size.height.low - less, size.height.high - less)
    return replace(
        size, rise_mm=size.rise_mm - less, height_mm=size.height_mm - less, height=height, petals=False
    )


def main_colour(subject: Subject) -> str:
    """The colour of most of its stitches."""
    yarns: dict[str, int] = {}
    for one in subject.worked:
        for made in one.made:
            yarns[made.yarn] = yarns.get(made.yarn, 0) + 1
    return subject.colours[max(yarns, key=lambda yarn: yarns[yarn])]
