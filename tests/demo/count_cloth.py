"""Tide cloth, worked as lists of stitches from the words of the pattern alone."""

from .by_hand import Edge, Rounds, Tally


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
