"""What is put on a piece or embroidered on it: drawn at its stitches, where they are turned to the viewer."""

import re
from math import dist

import pytest

from loopleaf.draw import first_picture, placing
from loopleaf.draw.marks import UNSAID
from tests.measure.worked_patterns import worked

from .pieces import demo
from .test_assembled import BALL

RED = "#aa1122"
HEAD_FIRST = BALL.split("ear:")[0]


def spots(finishing: str, pieces: str = HEAD_FIRST, colour: str = RED) -> list[list[tuple[float, float]]]:
    """The shapes of that colour in the picture, each as its points in mm."""
    svg = first_picture(worked(pieces, f"finishing:\n{finishing}"))
    found = re.findall(rf'<path fill="{colour}" d="([^"]*)"', svg)
    ways = [way for path in found for way in path.split("M") if way.strip()]
    return [_points(way) for way in ways]


def _points(way: str) -> list[tuple[float, float]]:
    """A way told in steps, as points."""
    numbers = [float(one) for one in re.findall(r"-?\d*\.?\d+", way)]
    x, y = numbers[0], numbers[1]
    points = [(x, y)]
    for dx, dy in zip(numbers[2::2], numbers[3::2], strict=False):
        x, y = x + dx, y + dy
        points.append((x, y))
    return points


def eyes(more: str, stitches: str = "12, 15") -> str:
    return f'  - place: {{what: safety eyes, to: ball, stitches: "{stitches}", colour: "{RED}"{more}}}\n'


def test_one_spot_at_each_place_in_front() -> None:
    assert len(spots(eyes(", round: 5, across: 4 mm"))) == 2


def test_none_at_the_back() -> None:
    """The first mark faces the viewer; half of the way around from it lies the back."""
    front, back = eyes(", round: 5", "14"), eyes(", round: 5", "5").replace(RED, "#2211aa")
    assert len(spots(front + back)) == 1
    assert spots(front + back, colour="#2211aa") == []


@pytest.mark.parametrize("wide", [3, 6])
def test_a_spot_is_as_wide_as_the_step_says(wide: int) -> None:
    (shape,) = spots(eyes(f", round: 5, across: {wide} mm", "14"))
    assert max(dist(a, b) for a in shape for b in shape) == pytest.approx(wide, rel=0.12)


def test_between_two_rounds_lies_higher_than_on_the_lower_one() -> None:
    """Rounds 4 to 6 go up; half a single of 5 mm higher, y counted downwards."""
    middles = []
    for where in (", round: 5", ", between: 5-6"):
        (shape,) = spots(eyes(where, "14"))
        middles.append(sum(y for _, y in shape) / len(shape))
    assert 0.5 < middles[0] - middles[1] < 3.0


def test_without_a_colour_it_is_as_in_black_thread_and_without_stitches_over_the_whole_tip() -> None:
    (tip,) = spots("  - embroider: {what: nose, to: ball, round: 7}\n", colour=UNSAID)
    assert len(tip) >= 3


def test_the_seal_looks_at_the_reader() -> None:
    svg = first_picture(*demo("sandbank-seal"))
    (drawn,) = {path for path in re.findall(r'<path fill="#26221f" d="([^"]*)"', svg) if path.count("M") > 1}
    assert drawn.count("M") == 2


def test_the_figure_of_the_head_shows_where_the_eyes_lie() -> None:
    work, measured = demo("sandbank-seal")
    figure = placing(work, "head", measured)
    assert figure is not None
    assert "the eyes over stitches 11, 20 between rounds 5 and 6" in figure.alt
    assert figure.svg.count("rounds 5–6") == 2
