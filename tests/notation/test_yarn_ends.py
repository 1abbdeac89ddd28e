"""Tails as print tells them: a length before or behind, in one unit or both, what for (common practice)."""

import pytest

from loopleaf.notation import parse
from loopleaf.notation.tree import FastenOff

from .trees import US


def off(line: str) -> FastenOff:
    read = parse(line, US)
    assert not read.problems, read.problems
    assert read.line is not None
    (step,) = read.line.steps
    assert isinstance(step, FastenOff)
    return step


@pytest.mark.parametrize(
    ("told", "tail", "what_for"),
    [
        ("leaving a tail of 10 cm for sewing", "10 cm", "for sewing"),
        ("leaving a tail of about 20 cm", "20 cm", ""),
        ("leaving a tail about 20 cm long", "20 cm", ""),
        ("leaving 30 cm to sew up", "30 cm", "to sew up"),
        ("leaving at least 12 inches for sewing", "12 in", "for sewing"),
        ("leaving a 20cm/8-inch tail", "20 cm (8 inch)", ""),
        ("leaving a 20 cm (7¾ in) tail for sewing", "20 cm (7¾ in)", "for sewing"),
        ("leaving a tail of 20 cm (8in) for sewing", "20 cm (8 in)", "for sewing"),
        ("leaving a tail long enough to sew", "long", "to sew"),
        ("leaving a long tail for sewing", "long", "for sewing"),
    ],
)
def test_a_tail_and_what_it_is_for(told: str, tail: str, what_for: str) -> None:
    step = off(f"fasten off, {told}")
    assert (step.tail, step.what_for) == (tail, what_for)


@pytest.mark.parametrize(
    "told", ["leaving 10 sts", "leaving 10 in each", "leaving a tail of 10 sts", "leaving 20 cm in next st"]
)
def test_what_is_no_tail_is_told(told: str) -> None:
    assert parse(f"fasten off, {told}", US).problems
