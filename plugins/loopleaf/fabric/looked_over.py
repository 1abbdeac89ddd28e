"""A line as the hand meets it: read for what it says as a whole, once, before a stitch of it is worked."""

from collections.abc import Mapping
from dataclasses import dataclass

from ..notation.once_a_line import Same, once_a_line
from ..notation.tree import Line, Step
from .first_leg import with_first_leg, with_first_pair
from .kept import into_chain
from .onward import begins_in_a_space, begins_without_chain
from .petals import is_one_in_a_ring
from .picots import with_picots
from .picots_in_same import with_picots_in_same
from .single_chains import names_chains
from .survey import Survey, only_ends, slips_on, survey
from .taken_up import with_skip_of_unworked
from .travelled import travelled


@dataclass(frozen=True, slots=True)
class Way:
    """The steps to work, and what they say as a whole."""

    steps: tuple[Step, ...]
    seen: Survey


@dataclass(frozen=True, slots=True)
class LookedOver:
    """What a round must know of its line, see the functions of the same names.

    plain: its steps with picots and travelling brackets read as such. led: the same with the leg that a first
    cluster has in its beginning chain; plain itself where no cluster has one. paired: the same where that
    chain and the stitch behind it are one decrease; plain itself where they can't be. ringed:
    the same where short chains closed in the same stitch are picots; plain itself where there are none.
    """

    plain: Way
    led: Way
    paired: Way
    ringed: Way
    begins_without_chain: bool
    begins_in_a_space: bool
    slips_on: bool
    is_one_in_a_ring: bool
    names_chains: bool
    into_chain: bool
    only_ends: bool


@once_a_line
def look_over(steps: tuple[Step, ...], specials: Same[Mapping[str, Line]]) -> LookedOver:
    """A line looked over. specials: the author's stitches, by identity."""
    read = with_picots(travelled(with_skip_of_unworked(steps)))
    ways = (read, with_first_leg(read), with_first_pair(read), with_picots_in_same(read))
    plain, led, paired, ringed = (Way(said, survey(said, specials.node)) for said in ways)
    return LookedOver(
        plain,
        plain if led.steps is read else led,
        plain if paired.steps is read else paired,
        plain if ringed.steps is read else ringed,
        begins_without_chain(read),
        begins_in_a_space(read),
        slips_on(read),
        is_one_in_a_ring(steps),
        names_chains(steps),
        any(into_chain(step) for step in read),
        only_ends(read),
    )
