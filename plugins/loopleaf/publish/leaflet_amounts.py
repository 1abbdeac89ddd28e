"""How the amounts of yarn were come by, and how far they can be trusted: said once below the yarns."""

import math
from collections.abc import Iterator, Sequence

from ..measure import Measured, YarnNeed
from ..measure.yarn import ESTIMATE_OFF, RESERVE
from .leaflet_voice import Voice


def amounts_note(voice: Voice, measured: Measured, followed: bool = False) -> str:
    """Whether amounts were weighed or worked out, how far off the stitches are, what reserve balls have.

    followed: the pattern is altered, and what was weighed is multiplied. "" where no amount is known.
    """
    sizes = [[need for need in size if need.grams or need.metres] for size in measured.yarn]
    return " ".join(_told(voice, sizes, followed))


def _told(voice: Voice, sizes: Sequence[Sequence[YarnNeed]], followed: bool) -> Iterator[str]:
    needs = [need for size in sizes for need in size]
    weighed = [need for need in needs if need.weighed]
    estimate = f"{ESTIMATE_OFF:.0%}"
    if weighed and followed:
        yield voice.words["amounts_followed"]
    elif weighed and len(weighed) < len(needs):
        yield voice.say("amounts_mixed", off=estimate)
    elif weighed:
        off = _off(sizes)
        yield voice.words["amounts_weighed"] if off is None else voice.say("amounts_weighed_off", off=off)
    elif needs:
        yield voice.say("amounts_estimated", off=estimate)
    if any(need.balls for need in needs):
        yield voice.say("balls_reserve", reserve=f"{RESERVE:.0%}")


def _off(sizes: Sequence[Sequence[YarnNeed]]) -> str | None:
    """`6%`: how far all yarns by the stitches alone are off all that was weighed; in the size that is
    farthest off.

    None where not all of it has both.
    """
    shares = []
    for size in sizes:
        both = [
            (one.model_metres.middle, one.metres.middle) for one in size if one.model_metres and one.metres
        ]
        if len(both) < len(size):
            return None
        shares.append(abs(sum(model for model, _ in both) / sum(weighed for _, weighed in both) - 1))
    return f"{max(math.ceil(100 * max(shares) - 1e-9), 1)}%"
