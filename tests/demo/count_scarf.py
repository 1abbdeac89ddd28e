"""Ebb scarf, worked as lists of stitches from the words of the pattern alone."""

from .by_hand import Edge, Rounds, Tally

WAVE = 14


def _row(below: Edge, turned: bool = True) -> Edge:
    """Half a crest at each end, whole crests between, a trough in the middle of every wave."""
    t = Tally(below, turned=turned)
    t.inc("dc")  # the beginning chain, and the stitch at its foot
    while True:
        t.each("dc", 5)
        t.take(3)
        t.make("dc3tog")
        t.each("dc", 5)
        if t.left == 1:
            break
        t.take()
        t.make("dc", "dc", "dc")
    t.inc("dc")
    return t.done()


def ebb_scarf() -> dict[str, Rounds]:
    chain = 46
    assert (chain - 4) % WAVE == 0
    edge = _row(["ch"] * (chain - 3), turned=False)
    scarf: Rounds = {1: [edge]}
    for number in range(2, 141):
        scarf[number] = [edge := _row(edge)]
    along = ["sc"] * (2 * len(scarf))  # two in the end of each row
    return {"scarf": scarf, "side edge": {1: [along], 2: [along]}}


def yarn_of_each_row() -> list[str]:
    """The yarn of rows 1 to 140: four rows of A, two of B, two of C, and A once more at the end."""
    return [*("AAAABBCC" * 17), *"AAAA"]
