"""The nearest pattern of the same design that is so far around (or, in rows, so wide).

A base worked from its middle gets more or fewer increase rounds, and one more in which fewer increases are
spread evenly, as does a shawl from a point; a cap from its brim as many rounds that draw in; a piece on a
chain gets as many chains more or fewer as its stitches come out even with. Every candidate is worked, nearest
first, and the first one that checks is taken: a design that doesn't allow it says why in its own findings.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from ..measure.amounts import centimetres
from ..pattern.reading import read_length
from ..review import Checked
from .candidates import Candidate
from .design import Design, design_of, way_around
from .draft import CannotAlter, NotUnderstood
from .settle import Altered

__all__ = ["Fitted", "fit_around", "length_mm", "way_around"]

_TRIES = 36
"""Candidates worked one by one before it is said that none near fits."""
_REASONS = 3
_FAR = 0.15
"""A size that misses by more than so much of what is wanted isn't near (chosen here)."""
_BEYOND, _FINE, _AGAIN = 24, 6, 3
"""Candidates farther off that are worked to find one that can be made: the first few one by one, then always
halfway between what failed and what can be made, some of them there before that counts as failed. What was
leapt over comes last.
"""


@dataclass(frozen=True, slots=True)
class Fitted:
    """The nearest pattern. altered: None where it is the pattern as it was. around_mm: its way around.

    passed: why candidates that would have come nearer can't be worked, the nearest first.
    """

    altered: Altered | None
    around_mm: float
    passed: tuple[str, ...] = ()


def length_mm(text: str) -> float:
    """`32cm`, `32 cm`, `12½ in` in millimetres. Raises CannotAlter for anything else."""
    try:
        found = read_length(text)
    except ValueError:
        raise NotUnderstood(f"“{text}” isn't a length; write it as “32 cm” or “12½ in”.") from None
    return found.mm


@dataclass(slots=True)
class _Search:
    """The way to the nearest candidate that can be made.

    known_mm: the nearest that can be made, as far as is known. at_stitches, at_mm, a_stitch_mm: of what was
    made last, by which the others' way around is told before they are. beyond: candidates tried that are far
    from what is wanted. reached_mm: what misses by less failed; failed_mm: what failed behind that. halving:
    the next one lies halfway between; halved: that came to its end. passed: stitches, and why not.
    """

    design: Design
    wanted_mm: float
    left: list[Candidate]
    known_mm: float
    at_stitches: int
    at_mm: float
    a_stitch_mm: float
    best: Fitted | None = None
    beyond: int = 0
    reached_mm: float = 0.0
    failed_mm: list[float] = field(default_factory=list)
    halving: bool = False
    halved: bool = False
    passed: list[tuple[int, str]] = field(default_factory=list)

    @property
    def far_mm(self) -> float:
        """What misses by more isn't near."""
        return _FAR * self.wanted_mm

    def run(self) -> None:
        """Try them, the nearest first, until none that is left can come nearer."""
        for tried in range(min(_TRIES + _BEYOND, len(self.left))):
            self.halving = self.best is None and (self.beyond > _FINE or tried >= _TRIES)
            candidate = self._next()
            if candidate is None and self.halving and not self.halved:
                self.halved, self.reached_mm = True, 0.0  # then what was leapt over, the nearest first
                continue
            if candidate is None:
                return
            self.left.remove(candidate)
            misses, near = self._misses_by(candidate), self._nearest_misses_by()
            if near is not None and misses >= near:
                return
            if candidate.changes:
                self._try(candidate)
            elif misses < self.far_mm:
                self.best = Fitted(None, self.design.around_mm)
            else:
                return

    def _next(self) -> Candidate | None:
        aim_mm = 0.0
        if self.halving and not self.halved:
            aim_mm = (self.reached_mm + abs(self.known_mm - self.wanted_mm)) / 2
        return min(
            (one for one in self.left if not self.halving or self._is_towards(one)),
            key=lambda one: (abs(self._misses_by(one) - aim_mm), one.rest, abs(one.more) + abs(one.sides)),
            default=None,
        )

    def _misses_by(self, one: Candidate) -> float:
        """How far from what is wanted it would come out."""
        return abs(self.at_mm + self.a_stitch_mm * (one.stitches - self.at_stitches) - self.wanted_mm)

    def _nearest_misses_by(self) -> float | None:
        """By how much the best so far misses; None where another may well come nearer."""
        if self.best is not None:
            return abs(self.best.around_mm - self.wanted_mm)
        misses = abs(self.known_mm - self.wanted_mm)
        return misses if misses >= self.far_mm else None

    def _is_towards(self, one: Candidate) -> bool:
        """Between what is wanted and the pattern as it is."""
        wanted = self.design.stitches * self.wanted_mm / self.design.around_mm
        between = self.reached_mm < self._misses_by(one) < abs(self.known_mm - self.wanted_mm)
        return between and (one.stitches - wanted) * (self.design.stitches - wanted) > 0

    def _try(self, candidate: Candidate) -> None:
        misses = self._misses_by(candidate)
        self.beyond += self.best is None and misses >= self.far_mm
        try:
            altered = self.design.made(candidate)
        except CannotAlter as no:
            self.passed.append((candidate.stitches, no.reasons[0]))
            self.failed_mm.append(misses)
            if not self.halved and (not self.halving or len(self.failed_mm) >= _AGAIN):
                self.reached_mm = max(self.reached_mm, *self.failed_mm)
                self.failed_mm.clear()
            return
        made_mm = way_around(altered.checked, self.design.piece.name) or 0.0
        # The widest round may grow by more than the stitches added.
        if candidate.stitches != self.at_stitches:
            grown_mm = (made_mm - self.at_mm) / (candidate.stitches - self.at_stitches)
            self.a_stitch_mm = grown_mm or self.a_stitch_mm
        self.at_stitches, self.at_mm = candidate.stitches, made_mm
        if abs(made_mm - self.wanted_mm) > self.far_mm:
            self.known_mm = min(self.known_mm, made_mm, key=lambda mm: abs(mm - self.wanted_mm))
            self.failed_mm.clear()
        elif self.best is None or abs(made_mm - self.wanted_mm) < abs(self.best.around_mm - self.wanted_mm):
            self.best = Fitted(altered, made_mm)


def fit_around(before: Checked, now: Checked, wanted_mm: float, piece_name: str = "") -> Fitted:
    """The nearest to so many millimetres around one piece, the first without a name.

    before: the pattern that stated sizes and yarn follow from; now: what is altered, the same pattern or one
    with another gauge; in one size. Raises CannotAlter where the design has nothing that can be made wider
    or narrower, NotUnderstood where no piece has that name.
    """
    pattern = now.source.pattern
    if pattern is None or now.work is None or now.measured is None:
        raise CannotAlter("The pattern can't be worked as it stands.")
    if len(pattern.sizes) > 1:
        raise CannotAlter(_sizes_instead(now, wanted_mm))
    name = piece_name or next(iter(pattern.pieces))
    if name not in pattern.pieces:
        raise NotUnderstood(f"No piece is called “{name}”; there are {', '.join(pattern.pieces)}.")
    design = design_of(before, now, pattern, name)
    around_mm, stitches = design.around_mm, design.stitches
    search = _Search(
        design, wanted_mm, design.candidates(), around_mm, stitches, around_mm, around_mm / stitches
    )
    search.run()
    if search.best is not None:
        return replace(search.best, passed=tuple(_by_reason(search.passed)))
    reasons = _by_reason(search.passed)[:_REASONS]
    if centimetres(search.known_mm) != centimetres(around_mm):
        which = "One that" if search.halving else "The nearest that"
        reasons.append(f"{which} can be made is about {centimetres(search.known_mm)}.")
    elif not search.halving:
        reasons.append("No other number of stitches that can be made comes nearer.")
    raise CannotAlter(
        f"The design has no size near to {centimetres(wanted_mm)}; with the stitches that it has it is "
        f"{centimetres(around_mm)}.",
        *reasons,
    )


def _by_reason(passed: Sequence[tuple[int, str]]) -> list[str]:
    """`12, 18 and 24 stitches: why not`; a number of stitches that was tried in several ways by its first."""
    first: dict[int, str] = {}
    for stitches, reason in passed:
        first.setdefault(stitches, reason)
    alike: dict[str, list[int]] = {}
    for stitches, reason in first.items():
        alike.setdefault(reason, []).append(stitches)
    return [f"{_runs_of(numbers)} stitches: {reason}" for reason, numbers in alike.items()]


def _runs_of(numbers: Sequence[int]) -> str:
    """`12, 18 and 24 to 32`, smallest first."""
    runs: list[list[int]] = []
    for number in sorted(numbers):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    said = [f"{run[0]} to {run[-1]}" if run[1:] else str(run[0]) for run in runs]
    return " and ".join([", ".join(said[:-1])] * bool(said[1:]) + said[-1:])


def _sizes_instead(now: Checked, wanted_mm: float) -> str:
    assert now.measured is not None
    first = now.measured.pieces[0]
    sizes = []
    for name, found in zip(now.measured.pattern.sizes, first.size, strict=False):
        band = found.get("around")
        if band is not None:
            sizes.append((abs(band.middle - wanted_mm), f"{name} ({centimetres(band.middle)})"))
    told = ", ".join(text for _, text in sizes)
    nearest = f" The nearest is {min(sizes)[1]}." if sizes else ""
    return f"This pattern is written in {len(now.measured.pattern.sizes)} sizes already: {told}.{nearest}"
