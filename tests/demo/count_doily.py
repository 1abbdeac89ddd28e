"""Sea lavender doily, worked as lists of stitches from the words of the pattern alone."""

from .by_hand import Edge, Rounds, Tally

PARTS = 12


def _from(below: Edge, place: str) -> Edge:
    """The same circle of places, begun at the first such place: where slip stitches lead."""
    at = below.index(place)
    return below[at:] + below[:at]


def sea_lavender_doily() -> dict[str, Rounds]:
    edge: Edge = ["dc"] * 24
    doily: Rounds = {1: [edge]}

    t = Tally(edge)
    for _ in range(PARTS):
        t.each("dc", 1)
        t.make("ch-2 sp")
        t.take()
    doily[2] = [edge := t.done()]

    t = Tally(_from(edge, "ch-2 sp"))
    for _ in range(PARTS):
        t.pass_to("ch-2 sp")
        t.take(1, "ch-2 sp")
        t.make("cl", "ch-3 sp")
    t.take(1, "dc")  # bridged by the last ch 3
    doily[3] = [edge := t.done()]

    t = Tally(edge)
    for _ in range(PARTS):
        t.take(1, "cl")
        t.make("dc")
        t.take(1, "ch-3 sp")
        t.make(*["dc"] * 4)
    doily[4] = [edge := t.done()]

    t = Tally(edge)
    for _ in range(PARTS):
        t.each("sc", 1)
        t.make("ch-5 sp")
        t.take(4)
    doily[5] = [edge := t.done()]

    t = Tally(_from(edge, "ch-5 sp"))
    for _ in range(PARTS):
        t.pass_to("ch-5 sp")
        t.take(1, "ch-5 sp")
        t.make("tr", "tr", "tr", "ch-1 sp", "tr", "tr", "tr")
    t.take(1, "sc")  # passed over, as between all the others
    doily[6] = [edge := t.done()]

    t = Tally(_from(edge, "ch-1 sp"))
    for _ in range(PARTS):
        t.pass_to("ch-1 sp")
        t.take(1, "ch-1 sp")
        t.make("sc", "ch-6 sp")
    t.take(6, "tr")
    doily[7] = [edge := t.done()]

    t = Tally(edge)
    for _ in range(PARTS):
        t.each("sc", 1)
        t.take(1, "ch-6 sp")
        t.make(*["sc"] * 7)
    doily[8] = [edge := t.done()]

    t = Tally(edge)
    for _ in range(2 * PARTS):
        for space in ("ch-2 sp", "ch-1 sp"):
            t.each("dtr", 1)
            t.make(space)
            t.take()
    doily[9] = [edge := t.done()]

    t = Tally(edge)
    for _ in range(2 * PARTS):
        t.each("dc", 1)
        t.take(1, "ch-2 sp")
        t.make("dc", "dc")
        t.each("dc", 1)
        t.take(1, "ch-1 sp")
        t.make("dc")
    doily[10] = [edge := t.done()]

    t = Tally(edge)
    for _ in range(2 * PARTS):
        t.each("sc", 1)
        t.make("ch-5 sp")
        t.take(4)
    doily[11] = [edge := t.done()]

    t = Tally(_from(edge, "ch-5 sp"))
    for _ in range(2 * PARTS):
        t.pass_to("ch-5 sp")
        t.take(1, "ch-5 sp")
        t.make("tall cl", "ch-3 sp", "tall cl", "ch-1 sp")
    t.take(1, "sc")
    doily[12] = [edge := t.done()]

    t = Tally(_from(edge, "ch-3 sp"))
    for _ in range(2 * PARTS):
        t.pass_to("ch-3 sp")
        t.take(1, "ch-3 sp")
        t.make("dc", "dc", "dc", "picot", "dc", "dc", "dc")
        t.pass_to("ch-1 sp")
        t.take(1, "ch-1 sp")
        t.make("sc")
    t.take(1, "tall cl")
    doily[13] = [t.done()]
    return {"doily": doily}
