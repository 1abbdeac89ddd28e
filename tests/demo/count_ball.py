"""Pebble ball, worked as lists of stitches from the words of the pattern alone."""

from collections.abc import Callable

from .by_hand import Rounds, Tally


def pebble_ball() -> dict[str, Rounds]:
    edge = ["sc"] * 6
    ball: Rounds = {1: [edge]}

    def inc(t: Tally) -> None:
        t.inc("sc")

    def dec(t: Tally) -> None:
        t.dec("sc")

    def shape(number: int, plain: int, times: int, shaping: Callable[[Tally], None], after: int = 0) -> None:
        """(sc in next `plain` sts, shaping) x `times`, and plain stitches after."""
        nonlocal edge
        t = Tally(edge)
        for _ in range(times):
            t.each("sc", plain)
            shaping(t)
        t.each("sc", after)
        ball[number] = [edge := t.done()]

    shape(2, 0, 6, inc)
    shape(3, 1, 6, inc)
    shape(4, 3, 4, inc, after=2)
    shape(5, 4, 4, inc, after=2)
    shape(6, 5, 4, inc, after=2)
    shape(7, 9, 3, inc)
    shape(8, 10, 3, inc)
    for number in (9, 10, 11):
        t = Tally(edge)
        t.each("sc", t.left)
        ball[number] = [edge := t.done()]
    shape(12, 10, 3, dec)
    shape(13, 9, 3, dec)
    shape(14, 5, 4, dec, after=2)
    shape(15, 4, 4, dec, after=2)
    shape(16, 3, 4, dec, after=2)
    shape(17, 1, 6, dec)
    shape(18, 0, 6, dec)
    return {"ball": ball}
