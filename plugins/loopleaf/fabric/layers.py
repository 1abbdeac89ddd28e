"""Layers: rounds worked into an earlier round than the one before (a flower's rows of petals, a skirt)."""

from collections.abc import Sequence

from .worked import Made, Place, WorkedRound


def step_down(worked: WorkedRound) -> int:
    """How many rounds below a round its uppermost stitch stands: 1, but for a layer."""
    return min(
        (
            made.round - max(place.round for place in made.into)
            for made in worked.made
            if isinstance(made, Made) and made.number and made.into and made.role != "turning"
        ),
        default=1,
    )


def root_of(at: int, rounds: Sequence[WorkedRound | None]) -> int | None:
    """The earlier round of its own piece that a layer stands on, by its index.

    None for a round that stands on the one before it, on a foundation, or on another piece.
    """
    worked = rounds[at]
    before = next((index for index in range(at - 1, -1, -1) if rounds[index] is not None), None)
    if worked is None or before is None:
        return None
    highest: Place | None = None
    for made in worked.made:
        if isinstance(made, Made) and made.number and made.into and made.role != "turning":
            place = max(made.into, key=lambda one: one.round)
            if place.round >= before:
                return None
            if highest is None or place.round > highest.round:
                highest = place
    if highest is None or highest.round < 0:
        return None
    if isinstance(highest, Made) and highest.role == "loop":
        highest = highest.into[0]
    below = rounds[highest.round]
    return highest.round if below is not None and any(one is highest for one in below.made) else None
