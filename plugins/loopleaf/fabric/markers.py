"""Markers: what a round puts one in; those that it doesn't name are carried up with the work."""

from collections.abc import Sequence

from ..notation.tree import First, JustMade, Last, Marker, Next, Span
from .hand import Hand
from .seek import Into
from .worked import Made, Place, Space


def to_mark(hand: Hand, step: Marker) -> Place | None:
    """The stitch or space of this round that takes the marker: the one named, else the last one made; None
    where nothing is made yet."""
    made = [one for one in hand.new if isinstance(one, Made | Space)]
    match place := step.place:
        case JustMade() if place.number:
            return in_made(hand, place, place.span or step.span)[0][0]
        case First() | Next() | Last() | JustMade():
            fitting = [one for one in made if hand.edge.matches(one, place.target)] or made
            return None if not fitting else fitting[0] if isinstance(place, First) else fitting[-1]
        case _:
            return made[-1] if made else None


def in_made(hand: Hand, place: JustMade, span: Span | None) -> list[Into]:
    """The stitch of this round by its number: among the last so many of its kind, or from the beginning."""
    made = [one for one in hand.new if isinstance(one, Made | Space) and hand.edge.matches(one, place.target)]
    among = made[len(made) - place.among :] if 0 < place.among <= len(made) else made
    if place.number > len(among) or place.among > len(made):
        there = hand.edge.describe()
        raise hand.stuck("no-such-place", span, what="number made", there=there)
    return [(among[place.number - 1],)]


def carried_up(markers: Sequence[Place], made: Sequence[Made | Space]) -> list[Place]:
    """Each marker in the stitch made into its own, the middle one of several; else it stays."""
    above: dict[int, list[Place]] = {id(one): [] for one in markers}
    if above:
        for stitch in made:
            for place in stitch.into if isinstance(stitch, Made) and stitch.number else ():
                if id(place) in above:
                    above[id(place)].append(stitch)
    return [found[(len(found) - 1) // 2] if (found := above[id(one)]) else one for one in markers]
