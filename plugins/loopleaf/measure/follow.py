"""What the author weighed calibrates the model for that pattern, and so tells what it takes when altered."""

from dataclasses import replace

from .measured import Measured
from .units import Band
from .yarn import YarnNeed, metres_a_gram, need_of

_FOLLOWS_OFF = 0.05
"""What the alteration may add to a weighed amount's own uncertainty (chosen here): the same hands, the same
stitches, a few more or fewer of them."""


def needs_followed(before: Measured, now: Measured) -> tuple[tuple[YarnNeed, ...], ...]:
    """The yarn that an altered pattern takes, one tuple a size.

    A weighed amount is multiplied by what the stitches take now over what they took before; without one the
    estimate stands as it is. Without a gauge the stitches tell nothing, and what was weighed holds no longer.
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
        return YarnNeed(need.yarn, None, None, None, False, need.model_metres)
    share = need.model_metres.middle / was.model_metres.middle
    yarn = now.pattern.materials.yarns.get(need.yarn)
    if metres_a_gram(yarn) == metres_a_gram(before.pattern.materials.yarns.get(need.yarn)):
        if share == 1:
            return was
        followed = need_of(need.yarn, yarn, need.model_metres, _more_or_less(was.grams, share))
        return replace(followed, shares=need.shares)
    if was.metres is None:  # another yarn: its metres follow, and make grams of their own
        return need
    return replace(need_of(need.yarn, yarn, _more_or_less(was.metres, share), None), shares=need.shares)


def _more_or_less(amount: Band, share: float) -> Band:
    return Band(amount.low * share * (1 - _FOLLOWS_OFF), amount.high * share * (1 + _FOLLOWS_OFF))
