"""The shelf: order, scale, facts."""

from dataclasses import replace

from loopleaf.publish.leaflet_parts import Leaflet
from loopleaf.publish.site_shelf import SMALLEST, shelved
from tests.publish.lantern import lantern


def _sized(title: str, across_mm: float) -> Leaflet:
    one = lantern()
    return replace(one, title=title, picture=replace(one.picture, across_mm=across_mm))


def test_pieces_stand_by_title() -> None:
    items = shelved([_sized("Tide", 1), _sized("gull", 1), _sized("Moth", 1)], str)
    assert [item.leaflet.title for item in items] == ["gull", "Moth", "Tide"]


def test_larger_pieces_are_larger_and_the_smallest_is_never_a_dot() -> None:
    ball, square, blanket = shelved([_sized("a", 57), _sized("b", 500), _sized("c", 1000)], str)
    assert ball.scale == SMALLEST
    assert ball.scale < square.scale < blanket.scale == 1


def test_a_piece_of_unknown_size_takes_its_place() -> None:
    assert [item.scale for item in shelved([_sized("a", 0), _sized("b", 0)], str)] == [1, 1]


def test_the_facts_are_level_size_and_yarn() -> None:
    (item,) = shelved([lantern()], lambda slug: f"us/{slug}/")
    assert item.href == "us/lantern-pouch/"
    assert item.facts == ("34.5 × 13.5 cm (13½ × 5¼ in)", "Easy", "Worsted, 2 colors")
