"""Curlew cap, worked as lists of stitches from the words of the pattern alone.

A size that doesn't work a round has an empty edge there.
"""

from .by_hand import Edge, Rounds, Tally

SIZES = 4


def _grown(below: Edge, plain: int) -> Edge:
    """Eight times two in one, with so many plain stitches between."""
    t = Tally(below)
    for _ in range(8):
        t.inc("htr")
        t.each("htr", plain)
    return t.done()


def _plain(below: Edge, stitch: str) -> Edge:
    t = Tally(below)
    t.each(stitch, t.left)
    return t.done()


def _ribs(below: Edge) -> Edge:
    t = Tally(below)
    while t.left:
        t.each("RtrF", 1)
        t.each("RtrB", 1)
    return t.done()


def curlew_cap() -> dict[str, Rounds]:
    cap: Rounds = {number: [] for number in range(1, 24)}
    for size in range(SIZES):
        edge = ["htr"] * 8
        cap[1].append(edge)
        for number, plain in ((2, 0), (3, 1), (4, 2), (5, 3), (6, 4)):
            cap[number].append(edge := _grown(edge, plain))
        cap[7].append(edge := _plain(edge, "htr"))
        cap[8].append(edge := _grown(edge, 5))
        cap[9].append(edge := _plain(edge, "htr"))
        cap[10].append(edge := _grown(edge, 6))
        for number, plain, smallest in ((11, 7, 1), (12, 8, 2), (13, 9, 3)):
            if size >= smallest:
                edge = _grown(edge, plain)
            cap[number].append(edge if size >= smallest else [])
        for number, smallest in ((14, 0), (15, 0), (16, 0), (17, 0), (18, 1), (19, 2)):
            if size >= smallest:
                edge = _plain(edge, "htr")
            cap[number].append(edge if size >= smallest else [])
        cap[20].append(edge := _plain(edge, "tr"))
        for number in (21, 22, 23):
            cap[number].append(edge := _ribs(edge))
    return {"cap": cap}
