"""A ball: both ends drawn in, as high as it is across."""

import math

import pytest

from loopleaf.measure.ball import Ball, ball_of

from .test_filled import TOY, rounds
from .worked_patterns import measured
from .worked_patterns import rounds as rounds_of


def of(*counts: float, start: float | None = 0.0, rise: float = 1.0) -> Ball | None:
    return ball_of(rounds(*counts, rise=rise), start)


def test_the_toys_usual_ball() -> None:
    """6, 12, 18, 24, four plain, 18, 12, 6: it turns in after its five rounds of 24 (common practice)."""
    assert of(*TOY) == Ball("4", "8", "9")


@pytest.mark.parametrize("rounds_in_all", [12, 24, 48])
def test_the_spheres_own_counts(rounds_in_all: int) -> None:
    """2πR·sin(s/R) stitches along a meridian (textbook geometry): it turns behind its equator."""
    radius = rounds_in_all / math.pi
    counts = [math.tau * radius * math.sin((k - 0.5) / radius) for k in range(1, rounds_in_all + 1)]
    found = of(*counts)
    assert found is not None
    assert int(found.turns) == rounds_in_all // 2 + 2  # two rounds share the equator


def test_what_is_no_ball() -> None:
    sausage = (6, 12, *[18] * 20, 12, 6)
    pill = (6, 12, 18, 24, 30, 36, 36, 30, 24, 18, 12, 6)
    bowl = (6, 12, 18, 24, 24, 24, 24)
    hourglass = (6, 12, 18, 24, 24, 18, 12, 18, 24, 24, 18, 12, 6)
    flat = (6, 12, 18, 24, 30, 36)
    for counts in (sausage, pill, bowl, hourglass, flat, ()):
        assert of(*counts) is None
    assert of(24, 24, 24, 18, 12, 6, start=24) is None


def test_a_worked_ball() -> None:
    lines = ["ch 1, 6 sc in ring, join", "ch 1, 2 sc in each st around, join"]
    lines += [f"ch 1, (sc in next {n} sts, inc) x 6, join" for n in (1, 2)]
    lines += ["ch 1, sc in each st around, join"] * 4
    lines += [f"ch 1, (sc in next {n} sts, dec) x 6, join" for n in (2, 1)] + ["ch 1, dec x 6, join"]
    (piece,) = measured(rounds_of(*lines)).pieces
    assert piece.ball == (Ball("4", "8", "9"),)
