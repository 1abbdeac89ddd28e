"""The side of the work that faces, from row to row."""

from dataclasses import dataclass

from loopleaf.notation.tree import Facing, FastenOff, JoinYarn, Line, Turn

OTHER = {"RS": "WS", "WS": "RS", "": ""}


def facing(line: Line, side: str) -> str:
    """The side that a line names, or its entry; "" where neither does."""
    return next((step.side for step in line.steps if isinstance(step, Facing)), side)


def joins_yarn(line: Line) -> bool:
    return any(isinstance(step, JoinYarn) for step in line.steps)


@dataclass
class Sides:
    """Rows that are turned, or broken off and begun again on the same side; the first is a right one.

    next: the side that faces when the work is turned as ever. off: the row before was broken off.
    """

    next: str = "RS"
    off: bool = False

    def begins_at_the_other_end(self, line: Line, side: str) -> bool:
        """Whether the row begins where the row before did, for the same side faces; goes on to the next."""
        now = facing(line, side) or self.next
        again = self.off and joins_yarn(line) and now != self.next
        stays = any(isinstance(step, Turn) and not step.turns for step in line.steps)
        self.next = now if stays else OTHER[now]
        self.off = any(isinstance(step, FastenOff) for step in line.steps)
        return again
