"""Pebble ball, worked as lists of stitches from the words of the pattern alone."""

from collections.abc import Callable

from .by_hand import Rounds, Tally


def pebble_ball() -> dict[str, Rounds]:
    edge = ["sc"] * 5
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

    def shape_between(number: int, runs: tuple[int, ...], shaping: Callable[[Tally], None]) -> None:
        """Shaping once between each two runs of plain stitches."""
        nonlocal edge
        t = Tally(edge)
        t.each("sc", runs[0])
        for plain in runs[1:]:
            shaping(t)
            t.each("sc", plain)
        ball[number] = [edge := t.done()]

    shape(2, 0, 5, inc)
    shape(3, 1, 5, inc)
    shape(4, 2, 5, inc)
    shape(5, 4, 4, inc)
    shape_between(6, (2, 5, 5, 5, 3), inc)
    shape(7, 6, 4, inc)
    shape(8, 15, 2, inc)
    shape_between(9, (8, 16, 8), inc)
    for number in (10, 11):
        t = Tally(edge)
        t.each("sc", t.left)
        ball[number] = [edge := t.done()]
    shape_between(12, (8, 16, 8), dec)
    shape(13, 15, 2, dec)
    shape(14, 6, 4, dec)
    shape_between(15, (2, 5, 5, 5, 3), dec)
    shape(16, 4, 4, dec)
    shape(17, 2, 5, dec)
    shape(18, 1, 5, dec)
    shape(19, 0, 5, dec)
    return {"ball": ball}
