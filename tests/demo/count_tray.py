"""Reed tray, worked as lists of stitches from the words of the pattern alone."""

from .by_hand import Rounds, Tally


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
