"""Circles within a polygon, turned so that what bears its corners stands on rays from the middle to them."""

from collections.abc import Hashable, Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from math import cos, floor, pi, tan, tau

from .chart_ground import Circles
from .chart_lines import Top
from .chart_things import Thing
from .section import Polygon

NEARLY = 0.1
"""A round that ends no further before a corner than this share of a side ends in it."""


@dataclass(frozen=True, slots=True)
class Turned:
    """The circles within a polygon; their rounds begin that share of a turn behind its first corner."""

    polygon: Polygon
    by: float = 0.0

    @property
    def circles(self) -> Circles:
        """The ground of the rounds without corners."""
        many = self.polygon.corners
        return Circles(0.0, -pi / 2 - pi / many + tau * self.by, many, self.by)

    def aright(self, things: Sequence[Thing], below: Sequence[Sequence[Top]], corners: Set[int]) -> "Turned":
        """The same, turned so that what bears the corners of a round stands in the polygon's."""
        many = self.polygon.corners
        shares = [_middle(tops) for tops in _bearing(things, below, corners) if tops]
        if not shares:
            return self
        off = [(share - shares[0]) * many for share in shares]
        first = shares[0] * many + sum(one - round(one) for one in off) / len(off)
        return Turned(self.polygon, (_first_corner(first) - first) / many)

    def onto(
        self,
        tops: Mapping[Hashable, Top],
        things: Sequence[Thing],
        below: Sequence[Sequence[Top]],
        corners: Set[int],
    ) -> Iterator[tuple[Hashable, Top]]:
        """The circles' places as the polygon has them. What bears a corner alone stands in it."""
        many = self.polygon.corners
        alone = {id(found[0]) for found in _bearing(things, below, corners) if len(found) == 1}
        for key, top in tops.items():
            along, _ = _on_a_side(top.along + self.by, many)
            drawn, nearer = _on_a_side(top.drawn + self.by, many)
            if id(top) in alone:
                along = round(along * many) / many
            out = top.out * nearer
            yield (
                key,
                Top(self.polygon, along, drawn, out, out, top.wide, top.order, top.arch, id(top) in alone),
            )


def _first_corner(sides: float) -> int:
    """The number of the corner that a round's first one comes to, where it lies so many sides on: so rounds
    begin on the lower side, or in its corners.
    """
    return floor(sides + NEARLY) + 1


def _bearing(
    things: Sequence[Thing], below: Sequence[Sequence[Top]], corners: Set[int]
) -> Iterator[list[Top]]:
    """What each of a round's corners stands on; a chain space on what its neighbours stand on."""
    for at, thing in enumerate(things):
        if id(thing) in corners:
            found = below[at] or [*below[at - 1], *below[(at + 1) % len(things)]]
            yield list({id(top): top for top in found}.values())


def _middle(tops: Sequence[Top]) -> float:
    """The middle of some places along their circle."""
    first = tops[0].along
    return first + sum((top.along - first + 0.5) % 1.0 - 0.5 for top in tops) / len(tops)


def _on_a_side(along: float, many: int) -> tuple[float, float]:
    """Where on a polygon's way a share of a circle's lies, seen from the middle; and how far out the side is
    there, of the circle's radius.
    """
    side, part = divmod(along * many, 1.0)
    angle = (part - 0.5) * tau / many
    return (side + 0.5 + tan(angle) / (2 * tan(pi / many))) / many, cos(angle)
