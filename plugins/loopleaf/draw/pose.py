"""A piece in the round turned any way before the viewer, as where it is worn or sewn to another piece.

Directions have x to the right, y away from the viewer, z up.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, sin, sqrt, tau

from .canvas import Point
from .profile import Ring
from .stand import Stand, lean

Vector = tuple[float, float, float]

FRONT: Vector = (0.0, -1.0, 0.0)
UP: Vector = (0.0, 0.0, 1.0)

HARDLY = 1e-6
"""The square of a length that is none."""


@dataclass(frozen=True)
class Posed(Stand):
    """axes: where the piece's own right, away and up point to; shorter or longer than 1 where it is pressed
    flat. origin: where its beginning lies, in mm.
    """

    axes: tuple[Vector, Vector, Vector]
    origin: Vector

    @property
    def is_open(self) -> bool:
        """Its opening is turned away or sewn shut."""
        return False

    def place(self, out: float, high: float, along: float) -> Vector:
        """Where a point of the fabric lies in space."""
        x, y = self.across(out, along)
        (ax, ay, az), (bx, by, bz), (cx, cy, cz) = self.axes
        from_x, from_y, from_z = self.origin
        return (
            from_x + x * ax + y * bx + high * cx,
            from_y + x * ay + y * by + high * cy,
            from_z + x * az + y * bz + high * cz,
        )

    def point(self, out: float, high: float, along: float) -> Point:
        """Where a point of the fabric lies in the drawing."""
        x, y, z = self.place(out, high, along)
        up, away = self._tilt
        return (x, z * up + y * away)

    def normal(self, ring: Ring, along: float) -> Vector:
        """The direction that the outside faces."""
        nx, ny = self.outside(ring, along)
        aside, up = lean(ring)
        return unit(
            added(
                *(
                    scaled(axis, by / dot(axis, axis))
                    for axis, by in zip(self.axes, (nx * aside, ny * aside, up), strict=True)
                )
            )
        )

    def facing(self, ring: Ring, along: float) -> float:
        """How squarely the outside faces the viewer there."""
        return self.nearness(self.normal(ring, along))

    def light(self, ring: Ring, along: float) -> float:
        """Light on the outside from the upper left."""
        return 0.72 + 0.4 * max(dot(self.normal(ring, along), (-0.45, -0.7, 0.55)), -0.2)

    def nearness(self, place: Vector) -> float:
        """How far a place lies towards the viewer."""
        up, away = self._tilt
        return place[2] * away - place[1] * up


def worn(stand: Stand, rings: Sequence[Ring]) -> Posed:
    """A cap as it is worn, with the rings that its wearer gives it: turned over, its opening below, the same
    side to the front.
    """
    axes: tuple[Vector, Vector, Vector] = ((-1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, -1.0))
    return Posed(stand.section, rings, stand.slant, axes, (0.0, 0.0, rings[-1].high1))


def around(axis: Vector, direction: Vector, along: float) -> tuple[Vector, Vector, Vector]:
    """The axes of a piece that grows along one direction and whose rounds face another one where they are so
    far along. Where both are one direction, the rounds face the viewer, or upwards.
    """
    upward = unit(axis)
    facing = across(upward, direction)
    aside = cross(upward, facing)
    angle = tau * along
    right = added(scaled(facing, -cos(angle)), scaled(aside, -sin(angle)))
    away = added(scaled(facing, sin(angle)), scaled(aside, -cos(angle)))
    return right, away, upward


def across(upward: Vector, *directions: Vector) -> Vector:
    """The part at right angles to one direction of the first of others that has any, else of that towards the
    viewer or upwards; of length 1.
    """
    for one in (*directions, FRONT, UP):
        aside = added(one, scaled(upward, -dot(one, upward)))
        if dot(aside, aside) > HARDLY:
            return unit(aside)
    raise ValueError("no direction")  # two of three directions at right angles always differ


def added(*vectors: Sequence[float]) -> Vector:
    """Their sum."""
    return (sum(v[0] for v in vectors), sum(v[1] for v in vectors), sum(v[2] for v in vectors))


def scaled(vector: Vector, by: float) -> Vector:
    """As much longer."""
    return (vector[0] * by, vector[1] * by, vector[2] * by)


def dot(one: Vector, other: Vector) -> float:
    """The inner product."""
    return one[0] * other[0] + one[1] * other[1] + one[2] * other[2]


def cross(one: Vector, other: Vector) -> Vector:
    """The outer product."""
    return (
        one[1] * other[2] - one[2] * other[1],
        one[2] * other[0] - one[0] * other[2],
        one[0] * other[1] - one[1] * other[0],
    )


def unit(vector: Vector) -> Vector:
    """The same direction with length 1."""
    return scaled(vector, 1 / (sqrt(dot(vector, vector)) or 1.0))
