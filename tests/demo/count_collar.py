"""Gull collar, worked as lists of stitches from the words of the pattern alone."""

from .by_hand import Edge, Rounds, Tally


def gull_collar() -> dict[str, Rounds]:
    collar: Rounds = {number: [] for number in range(1, 14)}
    for chain in (65, 71, 77):
        edge = ["dc"] + ["dc"] * (chain - 3)
        collar[1].append(edge)

        def ribs(below: Edge, rib: str, hollow: str, into_each: tuple[int, ...]) -> Edge:
            """An edge stitch, ribs with a hollow between each two, a last rib, an edge stitch."""
            t = Tally(below, turned=True)
            t.each("dc", 1)
            while t.left > 2:
                t.each(rib, 1)
                for made in into_each:
                    t.take()
                    t.make(*[hollow] * made)
            t.each(rib, 1)
            t.each("dc", 1)
            return t.done()

        for row in (2, 3, 4, 5, 6):
            faces = ("BPdc", "FPdc") if row % 2 == 0 else ("FPdc", "BPdc")
            collar[row].append(edge := ribs(edge, *faces, (1,)))
        collar[7].append(edge := ribs(edge, "FPdc", "BPdc", (2,)))
        for row in (8, 9, 10):
            faces = ("BPdc", "FPdc") if row % 2 == 0 else ("FPdc", "BPdc")
            collar[row].append(edge := ribs(edge, *faces, (1, 1)))
        collar[11].append(edge := ribs(edge, "FPdc", "BPdc", (1, 2)))
        collar[12].append(edge := ribs(edge, "BPdc", "FPdc", (1, 1, 1)))

        t = Tally(edge, turned=True)
        t.each("sc", 2)
        while t.left > 1:
            t.take(1)
            t.take(1)
            t.make("sh")
            t.take(1)
            t.each("sc", 1)
        t.each("sc", 1)
        collar[13].append(t.done())

    loop_band: Rounds = {1: [["sc"] * 21]}
    t = Tally(["sc"] * 21, turned=True)
    t.each("sc", 1)
    for _ in range(3):
        t.make("ch-4 sp")
        t.take(2)
        t.each("sc", 2)
    t.each("sc", t.left)
    loop_band[2] = [t.done()]
    button_band: Rounds = {1: [["sc"] * 21], 2: [["sc"] * 21]}
    return {"collar": collar, "loop band": loop_band, "button band": button_band}
