"""Stitches around posts look like raised and sunken cloth: ribs in a row, ridges across what lies behind.

How they lie is common practice, no source.
"""

from collections.abc import Sequence

import pytest

from loopleaf.draw.canvas import Point
from loopleaf.draw.items import Item
from loopleaf.draw.stitchwork import Placed, between, draw_row, straight
from loopleaf.fabric import Made

from .strokes import Strokes

WIDE, TALL = 5.0, 10.0


def drawn(*posts: str, reverse: bool = False) -> Strokes:
    """Stitches beside each other, five wide and ten high."""
    canvas, row = Strokes(), []
    for at, post in enumerate(posts):
        made = Made("double", (), 1, "A", number=at + 1, post=post)
        left, right = at * WIDE, (at + 1) * WIDE
        patch = between(straight((left, 0.0), (right, 0.0)), straight((left, TALL), (right, TALL)))
        row.append(Placed(Item(made, at / 4, (at + 1) / 4), patch, 1.0, reverse, True))
    draw_row(canvas, 0, row, {"A": "#808080"})
    return canvas


def across(lines: Sequence[tuple[int, float, Sequence[Point]]]) -> list[float]:
    """How far each level line goes to the side."""
    return [points[-1][0] - points[0][0] for *_, points in lines if len({y for _, y in points}) == 1]


@pytest.mark.parametrize(("post", "reverse"), [("front", False), ("back", True)])
def test_a_post_in_front_is_a_rib_within_its_row(post: str, reverse: bool) -> None:
    canvas = drawn(post, reverse=reverse)
    cloth, rib = sorted(canvas.shapes, key=lambda shape: shape[0])
    xs, ys = zip(*rib[2], strict=True)
    assert 0.5 * WIDE < max(xs) - min(xs) < 0.8 * WIDE
    assert min(ys) > 0.0
    assert max(ys) == pytest.approx(TALL), "it goes on in the rib above"
    for _, width, points in canvas.lines:
        assert max(y for _, y in points) + width / 2 <= TALL + 0.2, "nothing stands out over a rim"
    assert rib[1] > cloth[1], "lighter than the cloth"
    assert not across(canvas.lines)


@pytest.mark.parametrize(("post", "reverse"), [("back", False), ("front", True)])
def test_posts_behind_have_a_ridge_across_them(post: str, reverse: bool) -> None:
    canvas, plain = drawn(post, post, reverse=reverse), drawn("", "", reverse=reverse)
    assert across(canvas.lines) == [pytest.approx(0.88 * WIDE)] * 2
    assert len(canvas.lines) == 4, "and their own strands behind"
    assert canvas.shapes[0][1] < plain.shapes[0][1], "their cloth lies in the shade"
    assert not across(drawn("", "").lines), "no ridge where nothing is pushed forward"


def test_a_post_behind_between_two_ribs_has_no_ridge() -> None:
    assert not across(drawn("front", "back", "front").lines)
    assert len(across(drawn("front", "back", "back").lines)) == 2
