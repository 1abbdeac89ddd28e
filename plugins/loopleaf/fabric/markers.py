"""Markers that a round doesn't name: they are carried up with the work."""

from collections.abc import Sequence

from .worked import Made, Place, Space


def carried_up(markers: Sequence[Place], made: Sequence[Made | Space]) -> list[Place]:
    """Each marker in the stitch made into its own, the middle one of several; else it stays."""
    above: dict[int, list[Place]] = {id(one): [] for one in markers}
    if above:
        for stitch in made:
            for place in stitch.into if isinstance(stitch, Made) and stitch.number else ():
                if id(place) in above:
                    above[id(place)].append(stitch)
    return [found[(len(found) - 1) // 2] if (found := above[id(one)]) else one for one in markers]
