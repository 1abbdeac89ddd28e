"""A cord that is only a chain has its chart and its picture, as long as it is."""

from math import dist

import pytest

from loopleaf.draw import chart_of, diagram, first_picture, piece_picture
from loopleaf.draw.canvas import Canvas, Point
from loopleaf.draw.cord import AT_ENDS, cord_of, draw_cord
from loopleaf.fabric import PatternWork
from loopleaf.measure import measure
from tests.measure.worked_patterns import worked

from .pieces import SVG, demo, rows, tree

CLOTH = rows("sc in 2nd ch from hook and in each ch across, turn", "ch 1, sc in each st across")


def cord(length: str) -> PatternWork:
    return worked(f"cord: {{title: Cord, yarn: A, worked: chain, length: {length}}}")


def links(drawn: str) -> list[str]:
    """The kinds of the signs of a chart, each of the cord's."""
    return [one.get("data-kind", "") for one in tree(drawn).iter() if one.get("data-kind")]


def words(drawn: str) -> list[str]:
    return [text.text or "" for text in tree(drawn).iter(f"{SVG}text")]


def test_a_short_one_is_drawn_chain_by_chain() -> None:
    """20 stitches to 10 cm: a chain is 5 mm long."""
    drawn = diagram(cord("20 cm"))
    assert links(drawn) == ["ch"] * 40
    assert "About 40 chains: 20 cm (7¾ in) long." in words(drawn)
    assert "ch, chain" in words(drawn)


def test_of_a_long_one_both_ends_are_drawn() -> None:
    drawn = diagram(cord("90 cm"))
    assert links(drawn) == ["ch"] * 2 * AT_ENDS
    assert "About 180 chains: 90 cm (35½ in) long." in words(drawn)


def test_all_pieces_together_have_their_cords() -> None:
    work, measured = demo("lantern-pouch")
    assert [one.get("data-piece") for one in tree(diagram(work)).iter() if one.get("data-piece")] == [
        piece.name for piece in work.pieces
    ]
    chart = chart_of(work, "", measured)
    assert chart is not None
    assert "cord" not in [one.name for one in chart.pieces], "a page tells them in words"


class Way(Canvas):
    """A canvas that keeps the longest line."""

    def __init__(self) -> None:
        super().__init__()
        self.way: list[Point] = []

    def line(self, layer: int, colour: str, width: float, points: object) -> None:
        assert isinstance(points, list)
        self.way = max(self.way, points, key=len)


@pytest.mark.parametrize("length", [30, 90, 240])
def test_it_lies_as_long_as_it_is(length: int) -> None:
    work = cord(f"{length} cm")
    found = cord_of(work, "cord", measure(work))
    assert found is not None
    canvas = Way()
    draw_cord(canvas, found)
    steps = [dist(a, b) for a, b in zip(canvas.way, canvas.way[1:], strict=False)]
    assert sum(steps) == pytest.approx(10 * length, rel=0.03)
    assert len(steps) == found.chains
    xs, ys = zip(*canvas.way, strict=True)
    assert 1.0 < (max(xs) - min(xs)) / (max(ys) - min(ys)) < 4.0


def test_a_pattern_of_a_cord_alone_has_a_picture_and_a_cloth_with_one_shows_the_cloth() -> None:
    alone = cord("30 cm")
    assert first_picture(alone) == piece_picture(alone, "cord") != ""
    both = worked(CLOTH + "cord: {title: Cord, yarn: B, worked: chain, length: 30 cm}\n")
    assert first_picture(both).count("<path") == first_picture(worked(CLOTH)).count("<path")
    assert piece_picture(both, "cord")


def test_what_has_rows_or_no_length_is_no_cord() -> None:
    cloth = worked(CLOTH)
    assert cord_of(cloth, "cloth", measure(cloth)) is None
    around = worked("cord: {title: Cord, yarn: A, worked: chain, length: {around: nowhere}}")
    assert diagram(around) == first_picture(around) == ""
