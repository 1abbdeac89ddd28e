"""A crocheter's tally on paper: a list of places below, a list of what was made, and nothing of the engine.

Each step takes places from the front of the list below and says aloud when the wrong one comes up. Tops are
written by their stitch (`sc`), chain spaces as `ch-2 sp`. A round that ends must have used every place.
"""

from collections import Counter

Edge = list[str]
"""What a round leaves to work into, in the order made."""

Rounds = dict[int, list[Edge]]
"""Round number to the edge that it leaves, one a size (most have one); a size without the round has `[]`."""


class Tally:
    """One round or row being worked into the places below."""

    def __init__(self, below: list[str], *, turned: bool = False) -> None:
        self.below = list(reversed(below)) if turned else list(below)
        self.at = 0
        self.made: list[str] = []

    def take(self, number: int = 1, place: str = "") -> None:
        """Use the next places. `place` says what each must be: "sp" any chain space, "" any top."""
        for _ in range(number):
            assert self.at < len(self.below), "the edge is used up"
            here = self.below[self.at]
            is_space = here.endswith(" sp")
            if place == "sp":
                assert is_space, f"a chain space was wanted, {here} comes next"
            elif place:
                assert here == place, f"{place} was wanted, {here} comes next"
            else:
                assert not is_space, f"a stitch was wanted, {here} comes next"
            self.at += 1

    def pass_to(self, place: str) -> None:
        """Pass over whatever lies before the next such place, as naming it in print does."""
        while self.below[self.at] != place:
            self.at += 1

    def make(self, *things: str) -> None:
        """What the hook makes, in order."""
        self.made += things

    def each(self, stitch: str, number: int) -> None:
        """One stitch in each of the next tops."""
        for _ in range(number):
            self.take()
            self.make(stitch)

    def inc(self, stitch: str) -> None:
        """Two in one."""
        self.take()
        self.make(stitch, stitch)

    def dec(self, stitch: str) -> None:
        """Two made into one."""
        self.take(2)
        self.make(stitch)

    @property
    def left(self) -> int:
        """Places still unused."""
        return len(self.below) - self.at

    def done(self) -> list[str]:
        """The finished round; every place must be used."""
        assert self.left == 0, f"{self.left} places are left over"
        return self.made


def by_kind(edge: list[str]) -> Counter[str]:
    """How many of each thing an edge holds."""
    return Counter(edge)


def stitches(edge: list[str]) -> int:
    """Stitch tops alone: chains between them don't count, and a picot sits on the stitch before it."""
    return sum(1 for thing in edge if not thing.endswith(" sp") and thing != "picot")
