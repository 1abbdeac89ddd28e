"""Lines that reach the chains of an arch one by one: `in each of next 3 chs`, `miss 2 ch, tr in next ch`."""

from collections.abc import Iterable

from ..notation.tree import Each, First, FromHook, Last, Next, Over, Skip, Step, Target, Work
from .survey import walk
from .worked import Made, Place, Space

_CHAIN = Target("chain")


def opens_spaces(places: Iterable[Place]) -> bool:
    """Whether the edge's arches are to lie open, chain by chain, for a line that names chains.

    A foundation has chains anyway; where no space is longer than one chain, each is that chain."""
    longest = max((place.chains for place in places if isinstance(place, Space)), default=0)
    foundation = any(isinstance(place, Made) and place.role == "foundation" for place in places)
    return longest > 1 and not foundation


def names_chains(steps: tuple[Step, ...]) -> bool:
    """Whether a line reaches chains one by one; one that works back on a chain of its own means that one."""
    named = False
    for step in walk(steps):
        if isinstance(step, Skip):
            named = named or step.target == _CHAIN
        for place in step.places if isinstance(step, Work) else ():
            if isinstance(place, FromHook):
                return False
            match place:
                case Next(target=target) | First(target=target) | Last(target=target) | Over(target=target):
                    named = named or target == _CHAIN
                case Each(targets=targets):
                    named = named or _CHAIN in targets
    return named
