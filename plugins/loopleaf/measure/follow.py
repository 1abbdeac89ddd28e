"""What the author weighed calibrates the model for that pattern, and so tells what it takes when altered."""

from .measured import Measured
from .units import Band
from .yarn import YarnNeed, need_of

_FOLLOWS_OFF = 0.05
"""What the alteration may add to a weighed amount's own uncertainty (chosen here): the same hands, the same
stitches, a few more or fewer of them."""


def needs_followed(before: Measured, now: Measured) -> tuple[tuple[YarnNeed, ...], ...]:
    """The yarn that an altered pattern takes, one tuple a size.

    A weighed amount is multiplied by what the stitches take now over what they took before; without one (or
    without a gauge) the estimate stands as it is.
    """
    return tuple(
        tuple(_followed(before, now, size, at) for at in range(len(now.yarn[size])))
        for size in range(len(now.yarn))
    )


def _followed(before: Measured, now: Measured, size: int, at: int) -> YarnNeed:
    need = now.yarn[size][at]
    was = next((one for one in before.yarn[size] if one.yarn == need.yarn), None)
    if was is None or not was.weighed or was.grams is None:
        return need
    if was.model_metres is None or need.model_metres is None:
        return need
    share = need.model_metres.middle / was.model_metres.middle
    if share == 1:
        return was
    grams = Band(was.grams.low * share * (1 - _FOLLOWS_OFF), was.grams.high * share * (1 + _FOLLOWS_OFF))
    return need_of(need.yarn, now.pattern.materials.yarns.get(need.yarn), need.model_metres, grams)
