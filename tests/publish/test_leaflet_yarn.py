"""Yarn by piece, where several pieces share a yarn."""

from loopleaf.publish.json_report import pattern_object
from loopleaf.publish.leaflet import leaflet, leaflets_by_size
from loopleaf.publish.leaflet_parts import Leaflet, Table, Terms
from loopleaf.publish.settings import Settings
from loopleaf.review import check
from tests.alter.patterns import DEMO
from tests.demo.leaflets import leaf_of

SIZED = """\
title: Two bands
designer: Saltmarsh Makers' Library
terms: US
licence: CC-BY-4.0
sizes: [S, M]
materials:
  yarns:
    A: {weight: 3, name: kelp, ball: {grams: 50, metres: 105}}
  hook: 4 mm
gauge: {stitch: sc, stitches: 20, rows: 20, over: 10 cm}
turning chains: {sc: does not count}
pieces:
  band:
    title: Band
    make: 2
    worked: rows
    start: chain 41 (61)
    rows:
      - {rows: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: 40 (60)}
      - {rows: 2-20, work: "ch 1, sc in each st across, turn", count: 40 (60)}
  flap:
    title: Flap
    worked: rows
    start: chain 21
    rows:
      - {rows: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: 20}
      - {rows: 2-20, work: "ch 1, sc in each st across, turn", count: 20}
"""


def table(one: Leaflet) -> Table | None:
    return next((table for table in one.tables if table.place == "pieces"), None)


def of(name: str, terms: Terms = "US") -> Table | None:
    return table(leaf_of(name, terms))


def test_pouch_and_cords_share_a_yarn() -> None:
    found = of("lantern-pouch")
    assert found is not None
    assert found.head == ("Piece", "Yarn", "Weight", "Length")
    assert [row[:2] for row in found.rows] == [
        ("Pouch", "A (lichen)"),
        ("2 drawstrings", "A (lichen)"),
        ("Moon", "B (oat)"),
    ]
    assert found.rows[0][2:] == (
        "about 45 to 55 g (1½ to 1¾ oz)",
        "about 75 to 90 m (80 to 95 yd)",
    )


def test_squares_and_the_border_around_them_share_a_yarn() -> None:
    found = of("harbour-square")
    assert found is not None
    assert ("Border", "A (buoy)") in [row[:2] for row in found.rows]
    assert ("12 squares", "A (buoy)") in [row[:2] for row in found.rows]


def test_only_where_it_makes_a_difference() -> None:
    """Single pieces, pieces that share no yarn, and bands of a few metres beside a collar say nothing new."""
    for name in ("curlew-cap", "reed-tray", "gull-collar"):
        assert of(name) is None, name


def test_a_column_a_size_and_one_yarn_needs_no_column() -> None:
    checked = check(SIZED.encode(), "bands.yml")
    found = table(leaflet(checked, "US", Settings()))
    assert found is not None
    assert found.head == ("Piece", "S", "M")
    assert [row[0] for row in found.rows] == ["2 bands", "Flap"]
    (_, small, medium), (_, flap, as_large) = found.rows
    assert all(cell.startswith("about ") and " g (" in cell for cell in (small, medium, flap))
    assert small != medium
    assert flap == as_large
    alone = table(leaflets_by_size(checked, Settings())["M"]["US"])
    assert alone is not None
    assert alone.head == ("Piece", "Weight", "Length")
    assert alone.rows[0][1] == medium


def test_without_a_ball_the_length_alone() -> None:
    text = SIZED.replace("{weight: 3, name: kelp, ball: {grams: 50, metres: 105}}", "{name: kelp}")
    found = table(leaflet(check(text.encode(), "bands.yml"), "US", Settings()))
    assert found is not None
    assert " m (" in found.rows[0][1]


def test_nothing_is_known_without_a_gauge() -> None:
    text = SIZED.replace("gauge: {stitch: sc, stitches: 20, rows: 20, over: 10 cm}\n", "")
    assert table(leaflet(check(text.encode(), "bands.yml"), "US", Settings())) is None


def test_copies_are_named_in_the_pages_own_terms() -> None:
    found = of("purslane-garland", "UK")
    assert found is not None
    assert [row[0] for row in found.rows] == ["12 large leaves", "11 small leaves", "String"]


def test_the_json_tells_grams_too() -> None:
    checked = check((DEMO / "lantern-pouch.yml").read_bytes(), "lantern-pouch.yml")
    pouch, cord, _ = pattern_object(checked)["pieces"]
    (taken,) = pouch["yarn"]
    assert taken["grams"][0] + cord["yarn"][0]["grams"][0] == 49.4  # 52 g less 5 %
