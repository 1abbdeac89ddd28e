"""The side of the work that faces, from row to row."""

from dataclasses import dataclass

from loopleaf.notation.tree import Facing, FastenOff, JoinYarn, Line, Turn, Work

OTHER = {"RS": "WS", "WS": "RS", "": ""}


def facing(line: Line, side: str) -> str:
    """The side that a line names, or its entry; "" where neither does."""
    return next((step.side for step in line.steps if isinstance(step, Facing)), side)


def goes_backwards(line: Line) -> bool:
    """Whether all of a row's stitches are reverse ones: it goes back along a row that wasn't turned."""
    kinds = [step.stitch.kind for step in line.steps if isinstance(step, Work)]
    return bool(kinds) and all(kind.startswith("reverse-") for kind in kinds)


def stays_unturned(line: Line) -> bool:
    return any(isinstance(step, Turn) and not step.turns for step in line.steps)


def joins_yarn(line: Line) -> bool:
    return any(isinstance(step, JoinYarn) for step in line.steps)


@dataclass
class Sides:
    """Rows that are turned, or broken off and begun again on the same side; the first is a right one.

    next: the side that faces when the work is turned as ever. off: the row before was broken off.
    stayed: it said that the work is not turned.
    """

    next: str = "RS"
    off: bool = False
    stayed: bool = False

    def begins_at_the_other_end(self, line: Line, side: str) -> bool:
        """Whether the row begins at the other end than the edge is laid for; goes on to the next.

        That is where the row before did, for the same side faces, or where it ended, for the stitches of
        this one go backwards.
        """
        now = facing(line, side) or self.next
        again = self.off and joins_yarn(line) and now != self.next
        again = again or (self.stayed and goes_backwards(line))
        self.stayed = stays_unturned(line)
        self.next = now if self.stayed else OTHER[now]
        self.off = any(isinstance(step, FastenOff) for step in line.steps)
        return again
