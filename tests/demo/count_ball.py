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
