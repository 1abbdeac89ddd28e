"""The six demo patterns worked as lists of stitches, from the words of the patterns alone.

Written before the engine could read them. `rounds_of(name)` gives for each piece the finished edge of every
round by its number, one list a size.
"""

from collections.abc import Callable
from itertools import pairwise

from .by_hand import Tally

Edge = list[str]
Rounds = dict[int, list[Edge]]
"""Round number to the edge that it leaves, one a size (most patterns have one)."""


def lantern_pouch() -> dict[str, Rounds]:
    edge = ["hdc"] * 8
    pouch: Rounds = {1: [edge]}

    t = Tally(edge)
    while t.left:
        t.inc("hdc")
    pouch[2] = [edge := t.done()]

    t = Tally(edge)
    for _ in range(8):
        t.each("hdc", 1)
        t.inc("hdc")
    pouch[3] = [edge := t.done()]

    for number, plain in ((4, 2), (5, 3), (6, 4)):
        t = Tally(edge)
        for _ in range(8):
            t.inc("hdc")
            t.each("hdc", plain)
        pouch[number] = [edge := t.done()]

    for number in range(7, 17):
        t = Tally(edge)
        t.each("hdc", t.left)
        pouch[number] = [edge := t.done()]

    t = Tally(edge)
    while t.left:  # the beginning chain of 4 stands for the first dc and its chain
        t.each("dc", 1)
        t.make("ch-1 sp")
        t.take()
    pouch[17] = [edge := t.done()]

    t = Tally(edge)
    while t.left:
        t.each("sc", 1)
        t.take(1, "ch-1 sp")
        t.make("sc")
    pouch[18] = [edge := t.done()]

    t = Tally(edge)
    while t.left:
        t.each("sc", 1)
        t.take(2)
        t.take()
        t.make("sh")
        t.take(2)
    pouch[19] = [t.done()]

    moon: Rounds = {1: [["sc"] * 7]}
    t = Tally(["sc"] * 7)
    while t.left:
        t.inc("sc")
    moon[2] = [t.done()]
    return {"pouch": pouch, "moon": moon}


def _fan(t: Tally, place: str) -> None:
    t.take(1, place)
    t.make("tr", "tr", "1ch sp", "tr", "tr")


def _whole_fans(below: Edge, into: str) -> Edge:
    t = Tally(below, turned=True)
    t.each("tr", 1)
    while t.left:
        t.take(2)
        _fan(t, into)
        t.take(2)
        t.each("tr", 1)
    return t.done()


def _half_fans_at_the_ends(below: Edge, into: str) -> Edge:
    t = Tally(below, turned=True)
    t.take()
    t.make("tr", "tr", "tr")
    t.take(2)
    t.each("tr", 1)
    while t.left > 3:
        t.take(2)
        _fan(t, into)
        t.take(2)
        t.each("tr", 1)
    t.take(3)
    t.make("tr", "tr", "tr")
    return t.done()


def _plain(below: Edge) -> Edge:
    t = Tally(below, turned=True)
    while t.left:
        t.take(1, "sp" if t.below[t.at].endswith(" sp") else "")
        t.make("dc")
    return t.done()


def tide_cloth() -> dict[str, Rounds]:
    chain = 44
    assert chain == 7 * 6 + 2
    edge = ["dc"] * (chain - 1)
    cloth: Rounds = {1: [edge]}

    def eight_rows(first: int) -> None:
        nonlocal edge
        for row, work in enumerate(
            (
                lambda e: _whole_fans(e, ""),
                lambda e: _whole_fans(e, "1ch sp"),
                _plain,
                _plain,
                lambda e: _half_fans_at_the_ends(e, ""),
                lambda e: _half_fans_at_the_ends(e, "1ch sp"),
                _plain,
                _plain,
            ),
            start=first,
        ):
            if row > 29:
                return
            edge = work(edge)
            cloth[row] = [edge]

    for first in (2, 10, 18, 26):
        eight_rows(first)
    return {"cloth": cloth}


def pebble_ball() -> dict[str, Rounds]:
    edge = ["sc"] * 6
    ball: Rounds = {1: [edge]}

    def inc(t: Tally) -> None:
        t.inc("sc")

    def dec(t: Tally) -> None:
        t.dec("sc")

    def shape(number: int, plain: int, times: int, shaping: Callable[[Tally], None]) -> None:
        """(sc in next `plain` sts, shaping) x `times`."""
        nonlocal edge
        t = Tally(edge)
        for _ in range(times):
            t.each("sc", plain)
            shaping(t)
        ball[number] = [edge := t.done()]

    def shape_half_a_step_on(number: int, plain: int, shaping: Callable[[Tally], None]) -> None:
        """The same three times, with half of the plain stitches moved from the start to the end."""
        nonlocal edge
        t = Tally(edge)
        t.each("sc", plain // 2)
        shaping(t)
        for _ in range(2):
            t.each("sc", plain)
            shaping(t)
        t.each("sc", plain // 2)
        ball[number] = [edge := t.done()]

    shape(2, 0, 6, inc)
    shape(3, 1, 6, inc)
    shape(4, 5, 3, inc)
    shape_half_a_step_on(5, 6, inc)
    shape(6, 7, 3, inc)
    shape_half_a_step_on(7, 8, inc)
    shape(8, 9, 3, inc)
    shape_half_a_step_on(9, 10, inc)
    for number in (10, 11):
        t = Tally(edge)
        t.each("sc", t.left)
        ball[number] = [edge := t.done()]
    shape_half_a_step_on(12, 10, dec)
    shape(13, 9, 3, dec)
    shape_half_a_step_on(14, 8, dec)
    shape(15, 7, 3, dec)
    shape_half_a_step_on(16, 6, dec)
    shape(17, 5, 3, dec)
    shape(18, 1, 6, dec)
    shape(19, 0, 6, dec)
    return {"ball": ball}


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


def reed_tray() -> dict[str, Rounds]:
    chain = 13
    chains = ["ch"] * (chain - 1)
    t = Tally(chains + chains[-2:0:-1])  # along the top, round the tip, back along the other side
    t.take()
    t.make("sc", "sc")
    t.each("sc", 10)
    t.take()
    t.make("sc", "sc", "sc")
    t.each("sc", 10)
    t.make("sc")  # in the chain first worked, which has two already
    edge = t.done()
    tray: Rounds = {1: [edge]}

    t = Tally(edge)
    for _ in range(2):
        t.inc("sc")
    t.each("sc", 10)
    for _ in range(3):
        t.inc("sc")
    t.each("sc", 10)
    t.inc("sc")
    tray[2] = [edge := t.done()]

    for number in range(3, 12):
        plain = number - 2
        t = Tally(edge)
        for _ in range(2):
            t.each("sc", plain)
            t.inc("sc")
        t.each("sc", 10)
        for _ in range(3):
            t.each("sc", plain)
            t.inc("sc")
        t.each("sc", 10)
        t.each("sc", plain)
        t.inc("sc")
        tray[number] = [edge := t.done()]

    for number in range(12, 17):
        t = Tally(edge)
        t.each("sc", t.left)
        tray[number] = [edge := t.done()]

    t = Tally(edge)
    t.each("sc", 1)
    t.make("ch-12 sp")
    t.take(9)
    t.each("sc", 34)
    t.make("ch-12 sp")
    t.take(9)
    t.each("sc", 33)
    tray[17] = [edge := t.done()]

    t = Tally(edge)
    t.each("sc", 1)
    t.take(1, "ch-12 sp")
    t.make(*["sc"] * 12)
    t.each("sc", 34)
    t.take(1, "ch-12 sp")
    t.make(*["sc"] * 12)
    t.each("sc", 33)
    tray[18] = [edge := t.done()]

    t = Tally(edge)
    t.each("sc", t.left)
    tray[19] = [t.done()]
    return {"tray": tray}


PATTERNS: dict[str, Callable[[], dict[str, Rounds]]] = {
    "lantern-pouch": lantern_pouch,
    "tide-cloth": tide_cloth,
    "pebble-ball": pebble_ball,
    "harbour-square": harbour_square,
    "gull-collar": gull_collar,
    "reed-tray": reed_tray,
}
