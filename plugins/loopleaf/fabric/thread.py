"""One size of a piece in work: the places for the next round, and how far they can be trusted."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from enum import IntEnum

from ..notation.tree import Step, Stitch, Tally
from ..pattern.rounds import Path
from .flaps import Flap
from .round import Attempt
from .worked import Made, Place, Space

MOST_EDGES = 4
"""So many edges that a round may have left in truth are followed, where no count ever settles it."""


class Trust(IntEnum):
    """How far a thread's places can be trusted after a mistake.

    NOTHING: none of the edges may be right. NUMBER: one of them has the right number of stitches, though what
    they are and what lies between them isn't known. SURE: they are right.
    """

    NOTHING = 0
    NUMBER = 1
    SURE = 2


@dataclass(slots=True)
class Thread:
    """One size of a piece in work.

    further: edges that the places may be in truth: after a mistake nobody knows whether the line is right or
    the count. erring: the line that the mistake was met in, until the next one that fits.
    corners: corner stitches of another piece, see `Edge`, while its edge is worked into.
    unworked: what rows left at their ends, for the even and the odd rows. fastened: the line that fastened
    off the
    yarn. turned: the round below was joined and then turned. flap: the rows on a part of a round that are
    in work.
    """

    places: list[Place]
    yarn: str
    other_side: list[Place] = field(default_factory=list)
    markers: list[Place] = field(default_factory=list)
    unworked: tuple[list[Place], list[Place]] = field(default_factory=lambda: ([], []))
    further: list[list[Place]] = field(default_factory=list)
    trust: Trust = Trust.SURE
    erring: Path | None = None
    fastened: Path | None = None
    circle: bool = False
    turned: bool = False
    corners: frozenset[int] = frozenset()
    before: tuple[Step, ...] = ()
    flap: Flap | None = None

    def go_on_from(self, edges: Iterable[list[Place] | None], trust: Trust) -> None:
        """Take the first of the edges for the places, the others for what they may be in truth."""
        known = _different([edge for edge in edges if edge is not None])[:MOST_EDGES]
        self.corners = frozenset()
        self.places, self.further = (known[0], known[1:]) if known else (self.places, [])
        self.trust = trust

    def after_fit(self, fitting: list[Attempt], stated: bool) -> None:
        """The round fits. A count that is met settles what came before; without one all stays open that was.

        fitting: the way taken, and the other edges' ways that fit too.
        """
        edges = [one.worked.edge for one in fitting]
        self.go_on_from(edges[:1] if stated else edges, Trust.SURE if stated else self.trust)

    def after_mistake(self, attempt: Attempt, by_count: list[Place] | None, trust: Trust) -> None:
        """The round doesn't fit: the next one goes into what was worked, or into what the count says.

        by_count: the edge that the stated count describes. trust: how far.
        """
        worked = None if attempt.stuck else attempt.worked.edge
        edges = [worked, attempt.otherwise, by_count]
        if self.trust is Trust.NOTHING:
            edges.reverse()
        self.go_on_from(edges if any(edge is not None for edge in edges) else [attempt.worked.edge], trust)


def _different(edges: list[list[Place]]) -> list[list[Place]]:
    """One of each: edges alike in all that the next round could tell them apart by."""
    alike: dict[tuple[tuple[object, ...], ...], list[Place]] = {}
    for edge in edges if len(edges) > 1 else ():
        alike.setdefault(tuple(map(_look, edge)), edge)
    return list(alike.values()) or edges


def _look(place: Place) -> tuple[object, ...]:
    if isinstance(place, Made):
        return (place.kind, place.role, place.form, place.special, place.legs, place.unit)
    return (place.chains, place.corner) if isinstance(place, Space) else (id(place),)


def edge_of(stated: Tally, kind: str, size: int, index: int, yarn: str) -> list[Place] | None:
    """An edge such as a stated count describes: its stitches, with its spaces spread evenly between them."""
    if stated.total is not None:
        number = stated.total.of(size)
        return (
            None if number is None else [Made(kind, (), index, yarn, "stitch", i + 1) for i in range(number)]
        )
    stitches: list[Place] = []
    spaces: list[Place] = []
    for amount, named in stated.entries:
        number = amount.of(size) or 0
        if isinstance(named, Stitch):
            stitches += [
                Made(named.kind, (), index, yarn, "stitch", len(stitches) + i + 1, special=named.name)
                for i in range(number)
            ]
        elif named.kind == "space":
            spaces += [Space(named.length or 1, index, yarn, i + 1) for i in range(number)]
    if not spaces:
        return stitches
    edge: list[Place] = []
    done = 0
    for i, stitch in enumerate(stitches):
        edge.append(stitch)
        due = (i + 1) * len(spaces) // len(stitches)
        edge += spaces[done:due]
        done = due
    return edge


def trust_in(stated: Tally | None, counted: bool) -> Trust:
    """How far an edge made from a stated count can be trusted: groups and counted chains hide a number."""
    if stated is None:
        return Trust.NOTHING
    if stated.total is not None:
        return Trust.NOTHING if stated.entries else Trust.NUMBER
    stitches = [named for _, named in stated.entries if isinstance(named, Stitch)]
    plain = all(one.kind not in ("special", "chain") and one.form in ("", "tog") for one in stitches)
    return Trust.NUMBER if stitches and plain and not counted else Trust.NOTHING
