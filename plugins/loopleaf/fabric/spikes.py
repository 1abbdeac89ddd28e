"""Spikes: stitches that begin further down than their neighbours, over the rounds between."""

from .worked import Made, WorkedRound


def depths(worked: WorkedRound, posts: bool = False) -> dict[int, int]:
    """How many rounds further down than the round below a stitch stands, by its id: a spike. None where no
    other stitch stands on the round below: such a round goes on further down.

    posts: stitches around posts are taken in, too.
    """
    stands = {
        id(made): made.round - 1 - max(place.round for place in made.into)
        for made in worked.made
        if isinstance(made, Made)
        and made.number
        and made.into
        and (posts or not made.post)
        and not beside(made)
    }
    return {key: deep for key, deep in stands.items() if deep > 0} if 0 in stands.values() else {}


def beside(made: Made) -> bool:
    """Whether a stitch goes into the end of a row."""
    return any(isinstance(place, Made) and place.role == "row-end" for place in made.into)
