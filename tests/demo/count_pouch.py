"""Lantern pouch, worked as lists of stitches from the words of the pattern alone."""

from .by_hand import Rounds, Tally


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
