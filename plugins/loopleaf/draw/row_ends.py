"""The ends of a piece's own rows, as places that its further rows go into."""

from collections.abc import Iterator, Sequence

from ..fabric import Made, WorkedRound
from ..fabric.worked import Place


def first_aside(worked: Sequence[WorkedRound]) -> int | None:
    """The first row that goes into the ends of its own piece's rows, by its index."""
    own: set[int] = set()
    for at, one in enumerate(worked):
        own |= {id(made) for made in one.made}
        if any(id(end.into[0]) in own for made in one.made for end in row_ends(made)):
            return at
    return None


def row_ends(made: Place) -> Iterator[Made]:
    """The row ends that a stitch was worked into."""
    for place in made.into if isinstance(made, Made) else ():
        if isinstance(place, Made) and place.role == "row-end":
            yield place
