"""The finished size isn't the size that gauge and counts make.

What: Stitches and rows times the gauge's own width and height of one, with the gauge's tolerance and half a
centimetre for rounding, are set beside the stated size. Where several sizes differ, and one other figure of
the gauge would put all of them right, that is told once, at the gauge.

Why it matters: The maker chooses size, hook and yarn by the number that is printed.

Wrong:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
    finished size: {across: 14 cm}
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}
      - {round: 3, work: "ch 1, (hdc in next st, 2 hdc in next st) x 8, join, fasten off", count: 24}

Right:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
    finished size: {across: 6 cm}
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}
      - {round: 3, work: "ch 1, (hdc in next st, 2 hdc in next st) x 8, join, fasten off", count: 24}

When to ignore: When the piece is blocked, stretched or lined to another size on purpose; say so in a note,
or measure the finished piece again.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from ...measure import Band, Measured, StatedSize, measure
from ...measure.amounts import as_typed, length
from ...measure.finished import What, meant_by
from ...pattern import Finding, Gauge, Length, Path, Related, Suggestion
from ..names import listed
from ..rule import Words, rule, told
from ..subject import Subject

ROUNDING_MM = 5.0
"""Sizes are printed to half a centimetre, and both ends of a piece are soft (chosen here)."""


_SEVERAL = 2
"""So many sizes that one other figure of the gauge would put right are the gauge's mistake, not theirs."""


@dataclass(frozen=True, slots=True)
class _Differing:
    """A stated size that the gauge doesn't make. bands: what it makes, in each way that it may be meant."""

    stated: StatedSize
    size: int
    length: Length
    bands: tuple[Band, ...]

    @property
    def path(self) -> Path:
        own: Path = ("pieces", self.stated.piece) if self.stated.piece else ()
        return (*own, "finished size", self.stated.what)


def find(subject: Subject) -> Iterator[Finding]:
    differing = list(_differing(subject, subject.measured))
    if len(differing) >= _SEVERAL:
        of_the_gauge = _told_of_the_gauge(subject, differing)
        if of_the_gauge is not None:
            yield of_the_gauge
            return
    for one in differing:
        low, high = min(band.low for band in one.bands), max(band.high for band in one.bands)
        of_size = f" of size {subject.sizes[one.size]}" if len(subject.sizes) > 1 else ""
        words = Words(
            message=f"The finished size{of_size} says {as_typed(one.length)} {_WORDS[one.stated.what]}, and "
            f"gauge and counts make about {length(one.bands[0].middle)}.",
            working=f"By the gauge it lies between {length(low)} and {length(high)}"
            f"{_how(subject, one.stated)}.",
        )
        at = subject.source.locate(one.path)
        yield told(__name__, "warning", subject, at, words, one.stated.piece)


def _differing(subject: Subject, measured: Measured) -> Iterator[_Differing]:
    """The stated sizes that differ from what is measured, each in the first size that does."""
    for stated in measured.stated:
        for size in range(subject.pattern.size_count):
            said, bands = stated.lengths.of(size), _worked_out(measured, stated, size)
            if said is not None and bands and not any(_fits(said.mm, band) for band in bands):
                yield _Differing(stated, size, said, bands)
                break


def _told_of_the_gauge(subject: Subject, differing: list[_Differing]) -> Finding | None:
    """All that differs, told once and at the gauge, where one other figure there puts all of it right."""
    gauges = subject.pattern.gauge
    if len(gauges) != 1 or gauges[0].over is None:
        return None
    right = dict(_figures_that_fit(subject, gauges[0], differing))
    if not right:
        return None
    by = [f"{length(one.bands[0].middle)} {_WORDS[one.stated.what]} for {one.length}" for one in differing]
    ways = listed([f"`{name}: {_said(figure)}`" for name, figure in right.items()], "or")
    words = Words(
        message=f"The gauge doesn't go with {len(differing)} of the stated sizes.",
        working=f"By it and the counts the work is about {listed(by)}.",
        suggestion=Suggestion(
            f"With {ways} all stated sizes come out; measure the gauge again.", None, "fill-in"
        ),
        related=tuple(Related(subject.source.locate(one.path), "stated here") for one in differing),
    )
    field: Path = (next(iter(right)),) if len(right) == 1 else ()
    return told(__name__, "warning", subject, subject.source.locate(("gauge", 0, *field)), words)


def _figures_that_fit(
    subject: Subject, gauge: Gauge, differing: list[_Differing]
) -> Iterator[tuple[str, float | Length]]:
    """The gauge's figures, each with another one that alone would make all stated sizes."""
    for name in ("stitches", "rows", "over"):
        figure = getattr(gauge, name)
        tried = {_other(figure, one.length.mm / one.bands[0].middle) for one in differing if figure}
        for other in sorted(tried - {figure}, key=str):
            mended = gauge.model_copy(update={name: other})
            pattern = subject.pattern.model_copy(update={"gauge": (mended,)})
            if not any(_differing(subject, measure(replace(subject.work, pattern=pattern)))):
                yield name, other
                break


def _said(figure: float | Length) -> str:
    return str(figure) if isinstance(figure, Length) else f"{figure:g}"


def _other(figure: float | Length, times: float) -> float | Length:
    """A figure of the gauge with which all is so many times as large: whole stitches and rows, half units."""
    if isinstance(figure, Length):
        return Length(max(round(figure.amount * times * 2), 1) / 2, figure.unit)
    return float(max(round(figure / times), 1))


_WORDS: Mapping[What, str] = {
    "around": "around",
    "across": "across",
    "width": "wide",
    "length": "long",
    "height": "high",
}


def _how(subject: Subject, stated: StatedSize) -> str:
    """How it is measured, where rows fan out from a point and nothing else tells."""
    measured = subject.measured
    piece = measured.piece(stated.piece) if stated.piece else next(iter(measured.pieces), None)
    if piece is None or not piece.tip_to_tip or stated.what == "around":
        return ""
    sideways = stated.what in ("width", "across")
    return ", from tip to tip" if sideways else ", from the middle of the top edge to the lowest point"


def _fits(mm: float, band: Band) -> bool:
    return band.low - ROUNDING_MM <= mm <= band.high + ROUNDING_MM


def _worked_out(measured: Measured, stated: StatedSize, size: int) -> tuple[Band, ...]:
    """The size by the gauge, in each way that it may be meant; () where it isn't known."""
    if not stated.piece and measured.laid_out is not None:
        found = [measured.laid_out.get(stated.what)]
    else:
        piece = measured.piece(stated.piece) if stated.piece else next(iter(measured.pieces), None)
        found = []
        if piece and piece.size:
            rows = () if piece.in_rounds else piece.known_rounds(size)
            found = list(meant_by(stated.what, piece.size[size], rows))
    return tuple(band for band in found if band is not None)


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
