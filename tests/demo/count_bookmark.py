"""Lighthouse bookmark, worked square by square. Its counts include chains, so each chain is a place."""

from .by_hand import Edge, Rounds, Tally
from .stated import pattern


def _row(below: Edge, squares: str) -> Edge:
    t = Tally(below, turned=True)
    t.each("tr", 1)
    for square in squares:
        if square == "#":
            t.each("tr", 3)
        else:
            t.take(2)
            t.make("ch", "ch")
            t.each("tr", 1)
    return t.done()


def lighthouse_bookmark() -> dict[str, Rounds]:
    picture = pattern("lighthouse-bookmark")["pieces"]["bookmark"]["grid"]["rows"]
    edge = ["tr"] * (30 - 3 + 1)
    bookmark: Rounds = {1: [edge]}
    for number, squares in enumerate(reversed(picture), start=2):
        from_the_right = number % 2 == 1
        bookmark[number] = [edge := _row(edge, squares[::-1] if from_the_right else squares)]
    assert max(bookmark) == 28
    t = Tally(edge, turned=True)
    t.each("tr", t.left)
    bookmark[29] = [edge := t.done()]
    t = Tally(edge, turned=True)
    t.each("dc", 2)
    for _ in range(8):
        t.make("picot")
        t.each("dc", 3)
    t.make("picot")
    t.each("dc", 2)
    bookmark[30] = [t.done()]
    return {"bookmark": bookmark}
