"""How much yarn: from the stitches, or better from what the author weighed.

Model: length = Σ stitches × factor × w, the factor being yarn in widths of a stitch (`trade/stitches.yml`:
one hobbyist's measured sample in worsted with a 5 mm hook; chain 5.1, single 10.6, half 15.7, double 20.4),
w the width of a stitch by the gauge. The estimate is good to about 25 % either way until something is
weighed (chosen here); a weighed amount is taken as good to 5 %. Without a ball's length the usual metres in
100 g of the yarn's weight stand in (`trade/yarn_weights.yml`), which widens the band.
"""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache

from .. import trade
from ..pattern import Yarn
from .gauge import Scale
from .made import Contents, Sort
from .units import Band

ESTIMATE_OFF = 0.25
WEIGHED_OFF = 0.05
RESERVE = 0.1
"""Balls are counted with a tenth in reserve (chosen here): a swatch, an unravelled round, a longer tail."""

_CHAIN = 5.1
_SLIP = 4.5
_A_YARN_OVER_TAKES = 5.0


@dataclass(frozen=True, slots=True)
class YarnNeed:
    """What one yarn takes in one size, for all pieces and copies.

    metres, grams, balls: None where they can't be known. weighed: the author weighed it, and the figures
    are that. model_metres: what the stitches alone gave; kept to show how far the model was off. shares: of
    each piece that takes some, by the stitches; together 1.
    """

    yarn: str
    metres: Band | None
    grams: Band | None
    balls: tuple[int, int] | None
    weighed: bool
    model_metres: Band | None
    shares: tuple[tuple[str, float], ...] = ()

    def metres_by_piece(self) -> dict[str, Band]:
        """Metres of each piece in all its copies; nothing where no amount is known."""
        return {piece: self.metres * share for piece, share in self.shares} if self.metres else {}

    def grams_by_piece(self) -> dict[str, Band]:
        """Grams, in the same way."""
        return {piece: self.grams * share for piece, share in self.shares} if self.grams else {}


def stitch_factor(sort: Sort, specials: Mapping[str, int]) -> float:
    """Yarn in one made stitch, in widths of a stitch. A chain that stands for a stitch is paid for as chains.

    specials: yarn overs by the names of the author's own stitches.
    """
    if sort.chains and sort.role != "back":
        closing = _SLIP if sort.role == "picot" else 0.0
        return sort.chains * _CHAIN + closing
    return kind_factor(sort.kind, specials) * max(sort.legs if sort.form else 1, 1)


def kind_factor(kind: str, specials: Mapping[str, int]) -> float:
    """Yarn in one plain stitch of a kind, in widths of a stitch.

    About 5 more for each yarn over beyond a double's.
    """
    known = _factors()
    return known.get(kind, known["double"] + _A_YARN_OVER_TAKES * (specials.get(kind, 1) - 1))


@cache
def _factors() -> dict[str, float]:
    return {row.key: sum(row.yarn) / 2 for row in trade.stitches() if row.yarn}


def metres_by_yarn(rounds: Iterable[Contents], scale: Scale) -> dict[str, float]:
    """Metres in the stitches of some rounds, by yarn, without tails and joins."""
    metres: dict[str, float] = {}
    for made in rounds:
        for sort, number in made.stitches.items():
            width_m = scale.width_of(sort.kind, sort.post) / 1000
            metres[sort.yarn] = (
                metres.get(sort.yarn, 0.0) + number * stitch_factor(sort, scale.specials) * width_m
            )
        for space, number in made.spaces.items():
            took = number * space.chains * _CHAIN * scale.width_mm / 1000
            metres[space.yarn] = metres.get(space.yarn, 0.0) + took
    return metres


def chain_metres(length_mm: float) -> float:
    """Metres of yarn in a plain chain of that length: 5.1 times as long (the same measured sample)."""
    return length_mm * _CHAIN / 1000


def seam_metres(length_mm: float) -> float:
    """Metres in a seam of single crochet of that length: 10.6 times as long (the same measured sample)."""
    return length_mm * kind_factor("single", {}) / 1000


def metres_a_gram(yarn: Yarn | None) -> Band | None:
    """Metres in a gram: of the ball where its band says both, else the usual range of the yarn's weight."""
    if yarn is None:
        return None
    if yarn.ball is not None and yarn.ball.weight_grams and yarn.ball.length_metres:
        exact = yarn.ball.length_metres / yarn.ball.weight_grams
        return Band(exact, exact)
    if yarn.weight is not None:
        low, high = trade.yarn_weights()[yarn.weight].metres_per_100_g
        if low is not None and high is not None:
            return Band(low / 100, high / 100)
    return None


def need_of(letter: str, yarn: Yarn | None, model: Band | None, weighed_as: Band | None) -> YarnNeed:
    """What is needed of one yarn.

    model: metres by the stitches. weighed_as: (grams or metres) see `weighed_amount`.
    """
    rate = metres_a_gram(yarn)
    grams = weighed_as
    metres = model
    if weighed_as is not None:
        metres = _times(weighed_as, rate) if rate is not None else None
    elif model is not None and rate is not None:
        grams = Band(model.low / rate.high, model.high / rate.low)
    balls = _balls(yarn, metres, grams)
    return YarnNeed(letter, metres, grams, balls, weighed_as is not None, model)


def weighed_amount(yarn: Yarn | None, size: int) -> Band | None:
    """What the author weighed, as grams ± 5 %.

    A length is turned into grams by the ball. None where nothing was weighed.
    """
    if yarn is None or not yarn.weighed:
        return None
    if len(yarn.weighed) > 1 and size >= len(yarn.weighed):  # a size without one is told elsewhere
        return None
    amount = yarn.weighed[0] if len(yarn.weighed) == 1 else yarn.weighed[size]
    if hasattr(amount, "grams"):
        return Band.about(amount.grams, WEIGHED_OFF)
    rate = metres_a_gram(yarn)
    return None if rate is None else Band.about(amount.mm / 1000 / rate.middle, WEIGHED_OFF)


def _times(grams: Band, rate: Band) -> Band:
    return Band(grams.low * rate.low, grams.high * rate.high)


def _balls(yarn: Yarn | None, metres: Band | None, grams: Band | None) -> tuple[int, int] | None:
    if yarn is None or yarn.ball is None:
        return None
    for need, held in ((grams, yarn.ball.weight_grams), (metres, yarn.ball.length_metres)):
        if need is not None and held:
            return (balls_for(need.low, held, 0.0), balls_for(need.high, held, RESERVE))
    return None


def balls_for(need: float, held: float, reserve: float) -> int:
    """Whole balls for a need with so much in reserve; need and held in the same unit."""
    return max(math.ceil(need * (1 + reserve) / held - 1e-9), 1)
