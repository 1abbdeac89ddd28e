"""V-stitches: two tall stitches with a space between them in one place, as a round's fabric or by name."""

import re
from collections.abc import Sequence

from ..fabric.survey import walk
from ..fabric.worked import Made, Place, Space
from ..notation.tree import Step, Work

_NAMED = re.compile(r"V[- ]?st", re.IGNORECASE)
_OF_ALL = 2
"""Half of a round's stitches at least, or they are corners, not fabric (chosen here)."""


def fabric_of_v_stitches(made: Sequence[Place], tall: Sequence[str]) -> bool:
    """Whether at least half of the stitches made are in V-stitches, of which there are two at least.

    A corner is worked the same way, `(dc, ch 1, dc)`, but stands among other stitches. tall: kinds.
    """
    found = sum(_is_one(made, at, tall) for at in range(1, len(made) - 1))
    stitches = sum(isinstance(one, Made) for one in made)
    return found > 1 and 2 * found * _OF_ALL >= stitches


def named_so(steps: Sequence[Step]) -> bool:
    """Whether a stitch is called a V-stitch, by the usual name or as one of the author's own."""
    stitches = [one.stitch for one in walk(tuple(steps)) if isinstance(one, Work)]
    return any(one.form == "v-stitch" or _NAMED.match(one.name) is not None for one in stitches)


def _is_one(made: Sequence[Place], at: int, tall: Sequence[str]) -> bool:
    """One tall stitch, a space, one tall stitch, in one place, and nothing else in it."""
    first, space, last = made[at - 1], made[at], made[at + 1]
    if not (isinstance(space, Space) and isinstance(first, Made) and isinstance(last, Made)):
        return False
    if first.kind not in tall or not first.into or not last.into or first.into[0] is not last.into[0]:
        return False
    place = first.into[0]
    beside = (*made[max(at - 2, 0) : at - 1], *made[at + 2 : at + 3])
    return isinstance(place, Made | Space) and all(
        all(place is not into for into in one.into) for one in beside if isinstance(one, Made)
    )
