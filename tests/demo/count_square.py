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
    return {"square": square, "border": harbour_border(square[6][0])}


def harbour_border(last: Edge, across: int = 3, down: int = 4) -> Rounds:
    """The round around the blanket, two stitches and a space in each of its corners.

    Each side of a square is the run of single crochet between two corner spaces of its last round; each seam
    that ends at the border brings the two corner spaces beside it.
    """
    side = stitches_between_corners(last)
    whole: Edge = []
    for squares in (across, down, across, down):
        whole += ["corner sp", *["sc"] * side, *["ch-2 sp", "ch-2 sp", *["sc"] * side] * (squares - 1)]
    t = Tally(whole)
    for squares in (across, down, across, down):
        t.take(1, "corner sp")
        t.make("sc", "ch-2 sp", "sc")
        for number in range(squares):
            if number:
                t.take(2, "ch-2 sp")
                t.make("sc", "sc")
            t.each("sc", side)
    return {1: [t.done()]}


def along_the_border(border: Edge) -> tuple[int, int]:
    """Border stitches between the corners on a short and a long side, without the two in each corner."""
    corners = [at for at, thing in enumerate(border) if thing == "ch-2 sp"]
    short, long = (after - before - 3 for before, after in list(pairwise(corners))[:2])
    return short, long


def stitches_between_corners(edge: Edge) -> int:
    """How many stitches lie between one corner space of a square and the next."""
    corners = [at for at, thing in enumerate(edge) if thing == "ch-2 sp"]
    runs = {after - before - 1 for before, after in pairwise(corners)}
    assert len(runs) == 1, "the sides of the square differ"
    return runs.pop()
