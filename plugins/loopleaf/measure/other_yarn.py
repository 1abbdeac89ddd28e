"""The same stitches in a yarn of another weight: how the gauge, the hook and the size are likely to change.

From the usual ranges of both weights (`trade/yarn_weights.yml`, guidelines that touch and overlap): their
middles stand to each other as the gauges do. A swatch decides.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from .. import trade
from ..pattern import Pattern
from .finished import What, stated_sizes
from .units import Band

OTHER_OFF = 0.1
"""How far a yarn may lie from the middle of its weight's range (chosen here; the ranges are wider still)."""


@dataclass(frozen=True, slots=True)
class OtherYarn:
    """The first yarn's weight changed for another. by: new length over old. hook_mm: likely.

    size: of the first piece, or of all laid out, in one size each, by what is measured: what the author
    states, else what is worked out, so much larger or smaller.
    """

    weight: int
    by: float
    hook_mm: float | None
    size: tuple[Mapping[What, Band], ...]


def other_yarns(pattern: Pattern, size: tuple[Mapping[What, Band], ...]) -> tuple[OtherYarn, ...]:
    """The weights on either side of the pattern's first yarn; () where its weight or size isn't known.

    size: of the first piece, or of all laid out, one mapping a size.
    """
    yarn = next(iter(pattern.materials.yarns.values()), None)
    if yarn is None or yarn.weight is None or not any(size):
        return ()
    hook = pattern.materials.hook[0].size.mm if pattern.materials.hook else None
    known = {row.number for row in trade.yarn_weights()}
    stated = {
        (one.what, at): one.mm(at)
        for one in stated_sizes(pattern)
        if not one.piece
        for at in range(len(size))
    }
    found = []
    for weight in (yarn.weight - 1, yarn.weight + 1):
        if weight in known:
            by = likely_stitches(yarn.weight) / likely_stitches(weight)
            found.append(
                OtherYarn(
                    weight,
                    by,
                    None if hook is None else likely_hook(hook, yarn.weight, weight),
                    tuple(
                        {
                            what: Band.about((stated.get((what, at)) or band.middle) * by, OTHER_OFF)
                            for what, band in one.items()
                        }
                        for at, one in enumerate(size)
                    ),
                )
            )
    return tuple(found)


def likely_stitches(weight: int) -> float:
    """The middle of the usual range of stitches in 4 inches for a yarn weight; of an open range its end."""
    return _middle(_row(weight).stitches)


def likely_hook(mm: float, before: int, now: int) -> float:
    """A hook of those that there are, as much thicker or thinner as the middles of the weights' ranges."""
    wanted = mm * _middle(_row(now).hook_mm) / _middle(_row(before).hook_mm)
    return min((row.mm for row in trade.hooks()), key=lambda one: abs(one - wanted))


def _row(weight: int) -> trade.YarnWeightRow:
    return next(row for row in trade.yarn_weights() if row.number == weight)


def _middle(ends: tuple[float | None, float | None]) -> float:
    known = [end for end in ends if end is not None]
    return sum(known) / len(known)
