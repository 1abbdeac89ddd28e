"""Arches joined to another piece as one goes: `ch 1, sl st in corresponding ch-2 sp of square 1, ch 1`."""

from itertools import pairwise

from .worked import Made, Space, WorkedRound


def chains_of(arch: Space, slips: list[Made], behind: int) -> int:
    """How long an arch is, with so many chains behind the slip stitch that joins it: as long as the one that
    it is joined to, where that is its own chains alone; else its own and the slip stitch as one more.
    """
    own = arch.chains + behind
    return own if any(_length_joined_to(slip) == own for slip in slips) else own + 1


def _length_joined_to(slip: Made | Space) -> int:
    other = slip.into[0] if slip.into else None
    return other.chains if isinstance(other, Space) else 0


def said_longer(worked: WorkedRound) -> dict[int, int]:
    """The joined arches (by id) that print may count with the slip stitch as one more chain, and how long
    they are then."""
    found = {}
    for before, slip in pairwise(worked.made):
        joined = isinstance(slip, Made) and id(slip) in worked.joining
        if isinstance(before, Space) and joined and _length_joined_to(slip) == before.chains:
            found[id(before)] = before.chains + 1
    return found


def joined_alone(worked: WorkedRound, length: int) -> int:
    """How many slip stitches into another piece's space of that length (0: any) stand for one by themselves,
    with no chain beside them."""
    alone = [
        _length_joined_to(slip)
        for before, slip in pairwise(worked.made)
        if id(slip) in worked.joining and isinstance(before, Made)
    ]
    return sum(1 for one in alone if one and length in (0, one))
