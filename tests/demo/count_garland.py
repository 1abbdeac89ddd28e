"""Purslane garland, worked as lists of stitches from the words of the pattern alone."""

from .by_hand import Edge, Rounds, Tally

LARGE_SIDE = ("htr", "tr", "tr", "dtr", "dtr", "dtr", "tr", "tr", "htr")
SMALL_SIDE = ("htr", "tr", "tr", "tr", "htr")


def _leaf(chain: int, side: tuple[str, ...]) -> Edge:
    """Up one side of the chain, round the point, down the other side; both ends in the chain at the stem."""
    chains = ["ch"] * (chain - 1)
    t = Tally(chains + chains[-2:0:-1])
    t.each("dc", 1)
    for stitch in side:
        t.each(stitch, 1)
    t.take()
    t.make("dc", "2ch sp", "dc")
    for stitch in reversed(side):
        t.each(stitch, 1)
    t.make("dc")  # in the chain first worked, which has one already
    return t.done()


def purslane_garland() -> dict[str, Rounds]:
    string: Rounds = {1: [["dc"] * 230]}
    t = Tally(string[1][0], turned=True)
    t.each("dc", 1)
    t.make("10ch sp")
    t.take(3)
    t.each("dc", t.left - 4)
    t.make("10ch sp")
    t.take(3)
    t.each("dc", 1)
    string[2] = [t.done()]

    leaf: Rounds = {1: [_leaf(12, LARGE_SIDE)]}
    t = Tally(leaf[1][0])
    t.inc("dc")
    t.each("dc", 10)
    t.take(1, "2ch sp")
    t.make("dc", "dc", "2ch sp", "dc", "dc")
    t.each("dc", 10)
    t.inc("dc")
    leaf[2] = [t.done()]
    return {"string": string, "leaf": leaf, "small leaf": {1: [_leaf(8, SMALL_SIDE)]}}
