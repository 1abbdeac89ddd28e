"""What shape the counts make: flat, cupped, ruffled, a tube.

In flat work the k-th round of height h ends at radius k·h, so its edge is 2π·k·h long and each round adds
2π·h ÷ w stitches of width w (a circle's circumference; a polygon with c corners adds 2c·tan(π/c)·h ÷ w, which
is 8·h ÷ w for a square). Hand fabric stretches: below 0.8 of the rule it cups, above 1.25 it ruffles (chosen
here; My Crochet Sampler, 1847, prints 7 a round in UK double crochet as flat, 6 to 8 is usual). Increases in
pairs that stack up to a hexagon are judged by the circle's rule all the same: the published counts are worked
so, and a pair rounds its corner off. A layer is
judged against the round that it stands on; its arches hang free behind others and its petals lie as they
like, so neither ruffles the piece.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from ..pattern import Run
from .polygon import POLYGONS
from .size import RoundSize

CUPS_BELOW = 0.8
RUFFLES_ABOVE = 1.25
_TUBE_WITHIN = 0.15

Form = Literal["flat", "cups", "ruffles", "tube"]


def flat_growth(height_mm: float, width_mm: float) -> float:
    """Stitches that each round of flat round work adds: 2π·h ÷ w."""
    return math.tau * height_mm / width_mm


def polygon_growth(corners: int, height_mm: float, width_mm: float) -> float:
    """Stitches that each round of a flat polygon adds: 2c·tan(π/c)·h ÷ w."""
    return 2 * corners * math.tan(math.pi / corners) * height_mm / width_mm


def ball_stitches(round: int, radius_mm: float, height_mm: float, width_mm: float) -> float:
    """Stitches of the k-th round of a ball.

    Its middle lies (k − ½)·h along the meridian, so 2πR·sin((k − ½)h/R) ÷ w.

    radius_mm: of the ball, R. Raises ValueError for a round beyond the far pole.
    """
    along = (round - 0.5) * height_mm
    if not 0 < along < math.pi * radius_mm:
        raise ValueError(f"a ball of radius {radius_mm} mm has no round {round}")
    return math.tau * radius_mm * math.sin(along / radius_mm) / width_mm


@dataclass(frozen=True, slots=True)
class Stretch:
    """Rounds that follow each other and do the same. first, last: their labels."""

    form: Form
    first: str
    last: str


@dataclass(frozen=True, slots=True)
class Flatness:
    """How rounds meant to lie flat grow. grows, flat: stitches a round, as worked and as would lie flat.

    corners: of the polygon that they make, 0 for a circle. ratio: grows ÷ flat.
    """

    grows: float
    flat: float
    corners: int = 0

    @property
    def ratio(self) -> float:
        return self.grows / self.flat

    @property
    def form(self) -> Form:
        return "cups" if self.ratio < CUPS_BELOW else "ruffles" if self.ratio > RUFFLES_ABOVE else "flat"


def way_out(rounds: Sequence[RoundSize]) -> list[RoundSize]:
    """The rounds that the last one stands on, and itself: without petals, and without layers that end."""
    at = len(rounds) - 1
    found: list[RoundSize] = []
    while at >= 0:
        one = rounds[at]
        if found or not one.petals:
            found.append(one)
        before = range(at - 1, -1, -1)
        at = next((index for index in before if rounds[index].label == one.on), -1) if one.on else at - 1
    return found[::-1]


def flatness(rounds: Sequence[RoundSize], start_mm: float | None, width_mm: float) -> Flatness | None:
    """Growth over several rounds against what would lie flat; None where there is nothing to compare.

    start_mm: length of the edge below the first of them: the round below, 0 for a ring drawn closed. None
    where the piece begins on a chain or an edge: the first round then only sets the length that the others
    grow from.
    """
    if start_mm is None:
        if len(rounds) < 2:
            return None
        start_mm, rounds = rounds[0].length_mm, rounds[1:]
    if not rounds or width_mm <= 0:
        return None
    rise_mm = sum(one.rise_mm for one in rounds)
    grows = (rounds[-1].length_mm - start_mm) / width_mm / len(rounds)
    corners = rounds[-1].corners if rounds[-1].corners in POLYGONS else 0
    return Flatness(grows, edge_a_height(corners) * rise_mm / width_mm / len(rounds), corners)


def stretches(
    rounds: Sequence[RoundSize], start_mm: float | None, width_mm: float, meant_flat: Sequence[Run] = ()
) -> tuple[Stretch, ...]:
    """The piece in stretches of one form.

    Where plain rounds alternate with rounds that grow, pairs are judged together; lace that is meant to lie
    flat is judged as a whole, since its rounds cup and ruffle by turns until it is blocked.

    rounds, start_mm: as in `flatness`, all the rounds of the piece. A round that draws in counts as cupping.
    """
    forms = [_form(below, one) for below, one in zip(_below(rounds, start_mm), rounds, strict=True)]
    if forms and start_mm is None:
        forms[0] = forms[min(1, len(forms) - 1)]
    for index in range(1, len(forms) - 1):
        around = (forms[index - 1], forms[index + 1])
        if rounds[index].on or rounds[index + 1].on:
            continue
        if forms[index] == "tube" and rounds[index - 1].length_mm < rounds[index + 1].length_mm:
            pair = flatness(rounds[index : index + 2], rounds[index - 1].length_mm, width_mm)
            if pair is not None and "tube" not in around:
                forms[index] = forms[index + 1] = pair.form
    for index, one in enumerate(rounds):
        if one.petals:
            if index == 1:  # a flower's heart lies with its petals
                forms[0] = "flat"
            forms[index] = forms[index - 1] if index else "flat"
    for run in meant_flat:
        within = [at for at, one in enumerate(rounds) if one.label.isdigit() and int(one.label) in run]
        lace = [rounds[at] for at in within if not rounds[at].on and not rounds[at].petals]
        if not any(one.arched for one in lace):
            continue
        below_mm = rounds[within[0] - 1].length_mm if within[0] else start_mm
        whole = flatness(lace, below_mm, width_mm)
        if whole is not None and whole.form == "flat":
            for at in within:
                forms[at] = "flat"
    if forms[:2] == ["ruffles", "flat"] and start_mm is not None:
        # Round 1 of a motif is held in its ring; what it has too many of spreads into the rounds around it.
        ends = next((at for at, form in enumerate(forms[1:], 1) if form != "flat"), len(forms))
        together = flatness(rounds[:ends], start_mm, width_mm)
        if together is not None and together.form == "flat":
            forms[0] = "flat"
    gathered: list[Stretch] = []
    for one, form in zip(rounds, forms, strict=True):
        if gathered and gathered[-1].form == form:
            gathered[-1] = Stretch(form, gathered[-1].first, one.label)
        else:
            gathered.append(Stretch(form, one.label, one.label))
    return tuple(gathered)


def _form(below_mm: float | None, one: RoundSize) -> Form:
    if below_mm is None or not one.rise_mm:
        return "flat"
    ratio = (one.length_mm - below_mm) / (edge_a_height(one.corners) * one.rise_mm)
    if abs(ratio) <= _TUBE_WITHIN:
        return "tube"
    if ratio > RUFFLES_ABOVE:
        return "flat" if one.on and one.arched else "ruffles"
    return "cups" if ratio < CUPS_BELOW else "flat"


def _below(rounds: Sequence[RoundSize], start_mm: float | None) -> list[float | None]:
    """The length of the edge that each round stands on, as far as it is known."""
    lengths: dict[str, float] = {}
    found: list[float | None] = []
    last = start_mm
    for one in rounds:
        found.append(lengths[one.on] if one.on else last)
        last = lengths[one.label] = one.length_mm
    return found


def edge_a_height(corners: int) -> float:
    """How much longer the edge of flat work grows for each millimetre of height: 2π; a polygon's own share,
    where there are so few corners that it isn't a circle's.
    """
    return 2 * corners * math.tan(math.pi / corners) if corners in POLYGONS else math.tau


def standing_height_mm(
    rounds: Sequence[RoundSize], forms: Sequence[Stretch], start_mm: float | None
) -> float:
    """How tall the piece stands, in mm.

    What rises as sides, from height along the fabric and change of radius.

    Flat and ruffled rounds lie in the base and add nothing; of the others each rises √(h² − Δr²).

    start_mm: as in `flatness`; on a chain or an edge the first round rises from one as long as itself.
    """
    form_of: dict[str, Form] = {}
    labels = [one.label for one in rounds]
    for stretch in forms:
        for label in labels[labels.index(stretch.first) : labels.index(stretch.last) + 1]:
            form_of[label] = stretch.form
    stands: dict[str, float] = {}
    at_mm = 0.0
    for one, below_mm in zip(rounds, _below(rounds, start_mm), strict=True):
        at_mm = stands[one.on] if one.on else at_mm
        if form_of.get(one.label) in ("cups", "tube"):
            below_mm = one.length_mm if below_mm is None else below_mm
            change = (one.length_mm - below_mm) / edge_a_height(one.corners)
            at_mm += math.sqrt(max(one.rise_mm**2 - change**2, 0.0))
        stands[one.label] = at_mm
    return max(stands.values(), default=0.0)
