"""Harbour square, worked as lists of stitches from the words of the pattern alone."""

from itertools import pairwise

from .by_hand import Edge, Rounds, Tally


def harbour_square() -> dict[str, Rounds]:
    square: Rounds = {}
    edge: Edge = (["dc"] * 3 + ["ch-2 sp"]) * 4
    square[1] = [edge]

    def from_a_corner(below: Edge) -> Edge:
        """The same circle of places, begun at a corner space."""
        at = below.index("ch-2 sp")
        return below[at:] + below[:at]

    t = Tally(from_a_corner(edge))
    for _ in range(4):
        t.pass_to("ch-2 sp")
        t.take(1, "ch-2 sp")
        t.make("dc", "dc", "dc", "ch-2 sp", "dc", "dc", "dc", "ch-1 sp")
    t.take(3, "dc")  # bridged by the last ch 1
    square[2] = [edge := t.done()]

    t = Tally(from_a_corner(edge))
    for _ in range(4):
        t.pass_to("ch-2 sp")
        t.take(1, "ch-2 sp")
        t.make("dc", "dc", "dc", "ch-2 sp", "dc", "dc", "dc", "ch-1 sp")
        t.pass_to("ch-1 sp")
        t.take(1, "ch-1 sp")
        t.make("dc", "dc", "dc", "ch-1 sp")
    t.take(3, "dc")
    square[3] = [edge := t.done()]

    t = Tally(from_a_corner(edge))
    for _ in range(4):
        t.take(1, "ch-2 sp")
        t.make("dc", "dc", "ch-2 sp", "dc", "dc")
        for _ in range(2):
            t.each("dc", 3)
            t.take(1, "ch-1 sp")
            t.make("dc")
        t.each("dc", 3)
    square[4] = [edge := t.done()]

    t = Tally(from_a_corner(edge))
    for _ in range(4):
        t.take(1, "ch-2 sp")
        t.make("dc", "dc", "ch-2 sp", "dc", "dc")
        t.each("dc", 15)
    square[5] = [edge := t.done()]

    t = Tally(from_a_corner(edge))
    for _ in range(4):
        t.take(1, "ch-2 sp")
        t.make("sc", "ch-2 sp", "sc")
        t.each("sc", 19)
    square[6] = [t.done()]
    return {"square": square}


def harbour_border(across: int = 3, down: int = 4) -> tuple[int, int, int]:
    """Border stitches between corners on a short and a long side, and in all with two in each corner.

    Each side of a square is the run of single crochet between two corner spaces of its last round; each seam
    that ends at the border brings the two corner spaces beside it.
    """
    last = harbour_square()["square"][6][0]
    side = stitches_between_corners(last)
    short = across * side + (across - 1) * 2
    long = down * side + (down - 1) * 2
    return short, long, 2 * short + 2 * long + 4 * 2


def stitches_between_corners(edge: Edge) -> int:
    """How many stitches lie between one corner space of a square and the next."""
    corners = [at for at, thing in enumerate(edge) if thing == "ch-2 sp"]
    runs = {after - before - 1 for before, after in pairwise(corners)}
    assert len(runs) == 1, "the sides of the square differ"
    return runs.pop()
