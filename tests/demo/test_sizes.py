"""Sizes, flatness and yarn of the demo patterns by plain arithmetic, from the files' own gauges and counts.

Growth of a flat round, 2 pi x height / width: geometry (a radius of k rounds has an edge of 2 pi k h).
Yarn per stitch in stitch widths: one hobbyist's measured sample, read on the web (chain 5, sc 10.6, hdc 15.7,
dc 20.4; slip stitch from memory; tr and dtr about 5 more for each yarn over; raised stitches as plain ones).
Heights of sc, dc, tr and dtr, 0.95, 1.9, 2.7 and 3.5 widths: the middle of the common range, from memory.
"""

import math
from typing import Any

import pytest

from . import stated
from .by_hand import by_kind, stitches
from .counts import PATTERNS

YARN_PER_STITCH = {"ch": 5, "sl st": 4.5, "sc": 10.6, "hdc": 15.7, "dc": 20.4, "FPdc": 20.4, "BPdc": 20.4}
YARN_PER_STITCH |= {
    "tr": 26,
    "dtr": 31,
    "dc3tog": 3 * 20.4,
    "cl": 3 * 20.4,
    "tall cl": 3 * 26,
    "picot": 3 * 5 + 4.5,
}
IN_US_TERMS = {"dc": "sc", "htr": "hdc", "tr": "dc", "dtr": "tr", "RtrF": "FPdc", "RtrB": "BPdc"}
WIDTH_MM = {
    "lantern-pouch": 100 / 14,
    "tide-cloth": 100 / 17,
    "pebble-ball": 100 / 20,
    "harbour-square": 170 / 23,  # 21 stitches and a chain 2 make a side of 17 cm
    "gull-collar": 100 / 17,
    "reed-tray": 100 / 11,
    "ebb-scarf": 100 / 17,  # as plain stitches measure; the waves only push them together
    "curlew-cap": 100 / 15,
    "purslane-garland": 100 / 18,
    "lighthouse-bookmark": 100 / 42,
    "sea-lavender-doily": 42
    / 2
    / (4 * 1.9 + 8 / (2 * math.pi)),  # four rounds of dc about a ring of 8 chains
    "sandbank-seal": 100 / 22,
}


def _cm(written: str) -> list[float]:
    return [float(size.removesuffix(" cm")) for size in stated.sizes_of(written)]


def _gauge(name: str, stitch: str) -> tuple[float, float]:
    """Width and height of a stitch in cm."""
    gauges = stated.pattern(name)["gauge"]
    one = next(g for g in (gauges if isinstance(gauges, list) else [gauges]) if g["stitch"] == stitch)
    over = float(one["over"].removesuffix(" cm"))
    return over / one["stitches"], over / one["rows"]


def test_pouch_measures_what_it_says() -> None:
    size = stated.pattern("lantern-pouch")["finished size"]
    w, h = _gauge("lantern-pouch", "hdc")
    assert _cm(size["around"]) == [pytest.approx(48 * w, abs=w / 2)]
    sides = 10 * h
    above = 2 * 1.9 * w + 0.95 * w  # two rounds as tall as a dc and one of sc
    assert _cm(size["height"]) == [pytest.approx(sides + above, rel=0.05)]


def test_cloth_measures_what_it_says() -> None:
    size = stated.pattern("tide-cloth")["finished size"]
    w, low = _gauge("tide-cloth", "dc")
    _, tall = _gauge("tide-cloth", "tr")
    counts = stated.rounds(stated.pattern("tide-cloth")["pieces"]["cloth"])
    fans = sum(1 for count in counts.values() if count and "fans" in count)
    assert _cm(size["width"]) == [pytest.approx(43 * w, abs=w)]
    assert _cm(size["length"]) == [pytest.approx((29 - fans) * low + fans * tall, rel=0.02)]


def test_ball_is_round() -> None:
    """The tops of round k lie k heights along the way from pole to pole; a ball is 2 pi R sin(k h / R) around
    there. One step more than there are rounds is the hole drawn closed. (Geometry.)
    """
    w, h = _gauge("pebble-ball", "sc")
    ball = PATTERNS["pebble-ball"]()["ball"]
    around = max(stitches(edges[0]) for edges in ball.values()) * w
    assert _cm(stated.pattern("pebble-ball")["finished size"]["around"]) == [pytest.approx(around, abs=w)]
    steps = len(ball) + 1
    assert steps * h == pytest.approx(around / 2, rel=0.03), "as long from pole to pole as half around"
    for number, edges in ball.items():
        true = around / w * math.sin(math.pi * number / steps)
        assert stitches(edges[0]) == pytest.approx(true, abs=1.2), f"round {number}"


def test_square_is_as_wide_as_its_rounds_are_tall() -> None:
    size = stated.pattern("harbour-square")["pieces"]["square"]["finished size"]
    across = _cm(size["across"])[0]
    edge = PATTERNS["harbour-square"]()["square"][6][0]
    w = across / (stitches(edge) / 4 + 2)
    middle = 0.6  # half of the ring
    assert across == pytest.approx(2 * (middle + 5 * 1.9 * w + 0.95 * w), rel=0.06)
    blanket = stated.pattern("harbour-square")["finished size"]
    assert _cm(blanket["width"])[0] == pytest.approx(3 * across + 2, abs=1)
    assert _cm(blanket["length"])[0] == pytest.approx(4 * across + 2, abs=1)


def test_collar_measures_what_it_says() -> None:
    file = stated.pattern("gull-collar")
    w, rib = _gauge("gull-collar", "FPdc")
    _, dc = _gauge("gull-collar", "dc")
    collar = PATTERNS["gull-collar"]()["collar"]
    around = _cm(file["finished size"]["around"])
    assert around == [pytest.approx(stitches(edge) * w, abs=w / 2) for edge in collar[1]]
    height = 11 * rib + 2 * dc
    assert _cm(file["finished size"]["height"]) == [pytest.approx(height, rel=0.05)]
    band = stitches(PATTERNS["gull-collar"]()["button band"][1][0])
    assert band * w == pytest.approx(height, rel=0.05)
    for neck, collar_around in zip(_cm(file["to fit"]["neck"]), around, strict=True):
        assert 2 <= collar_around - neck <= 4, "room for two fingers at the neck"
    for size, edge in enumerate(collar[12]):
        grown = stitches(edge) - stitches(collar[6][size])
        assert 0.8 < grown / (2 * math.pi * 6 * rib / w) < 1.25, "the wing lies on the shoulders"


def test_tray_measures_what_it_says() -> None:
    size = stated.pattern("reed-tray")["finished size"]
    w, h = _gauge("reed-tray", "sc")
    assert _cm(size["width"]) == [pytest.approx(2 * 11 * h, abs=h / 2)]
    assert _cm(size["length"]) == [pytest.approx(2 * 11 * h + 11 * w, abs=h / 2)]
    assert _cm(size["height"]) == [pytest.approx(8 * h, abs=h / 2)]


def test_scarf_measures_what_it_says() -> None:
    file = stated.pattern("ebb-scarf")
    size = file["finished size"]
    w, h = _gauge("ebb-scarf", "dc")
    scarf = PATTERNS["ebb-scarf"]()["scarf"]
    assert _cm(size["width"]) == [pytest.approx(stitches(scarf[1][0]) * w, abs=w / 2)]
    assert _cm(size["length"]) == [pytest.approx(len(scarf) * h, rel=0.01)]
    slope = w / (
        WIDTH_MM["ebb-scarf"] / 10
    )  # how much narrower the waves are than the same stitches in a line
    assert 0.85 < slope < 0.95
    wave = file["pieces"]["scarf"]["start"]["multiple"]
    assert f"about {round(2 * wave * w) / 2:g} cm" in " ".join(file["notes"])


def test_cap_measures_what_it_says() -> None:
    file = stated.pattern("curlew-cap")
    w, h = _gauge("curlew-cap", "htr")
    _, rib = _gauge("curlew-cap", "RtrF")
    cap = PATTERNS["curlew-cap"]()["cap"]
    around = _cm(file["finished size"]["around"])
    assert around == [pytest.approx(stitches(edge) * w, abs=w / 2) for edge in cap[23]]
    for head, made in zip(_cm(file["to fit"]["head"]), around, strict=True):
        assert 2 <= head - made <= 4, "a cap is a little smaller than the head"
    deep = [
        sum(rib if number >= 20 else h for number, edges in cap.items() if edges[size]) for size in range(4)
    ]
    assert deep == [pytest.approx(said, abs=0.5) for said in (17, 19, 21, 21.5)]
    assert "17 (19, 21, 21.5) cm, 6¾ (7½, 8¼, 8½) in, deep" in " ".join(file["notes"])


def test_cap_lies_flat_and_then_bends_over_the_head() -> None:
    """A dome's rounds grow more slowly than 2 pi h / w, and its crown ends narrower than a flat one would."""
    w, h = _gauge("curlew-cap", "htr")
    cap = PATTERNS["curlew-cap"]()["cap"]
    for number in range(2, 7):
        growth = stitches(cap[number][0]) - stitches(cap[number - 1][0])
        assert 0.8 <= growth / (2 * math.pi * h / w) <= 1.25
    for size in range(4):
        crown = [edges[size] for number, edges in cap.items() if number <= 13 and edges[size]]
        flat = 2 * math.pi * len(crown) * h / w
        assert 0.7 < stitches(crown[-1]) / flat < 0.95


def test_bookmark_measures_what_it_says() -> None:
    size = stated.pattern("lighthouse-bookmark")["finished size"]
    w, h = _gauge("lighthouse-bookmark", "tr")
    bookmark = PATTERNS["lighthouse-bookmark"]()["bookmark"]
    assert _cm(size["width"]) == [pytest.approx(stitches(bookmark[1][0]) * w, abs=w)]
    assert _cm(size["length"]) == [pytest.approx(29 * h + 0.95 * w, rel=0.02)]
    assert 0.75 < h / (3 * w) < 1.1, "the squares are nearly square"


def test_doily_lies_flat_and_measures_what_it_says() -> None:
    """Each round against the circle at its height; lace may be a fifth off, for blocking evens it out."""
    heights = {"sc": 0.95, "dc": 1.9, "cl": 1.9, "tr": 2.7, "tall cl": 2.7, "dtr": 3.5}
    radius = 8 / (2 * math.pi)
    for number, edges in PATTERNS["sea-lavender-doily"]()["doily"].items():
        tally = by_kind(edges[0])
        radius += max(heights[thing] for thing in tally if thing in heights)
        chains = sum(
            int("".join(figure for figure in thing if figure.isdigit())) * times
            for thing, times in tally.items()
            if thing.endswith(" sp")
        )
        assert 0.8 < (stitches(edges[0]) + chains) / (2 * math.pi * radius) < 1.25, f"round {number}"
    across = 2 * radius * WIDTH_MM["sea-lavender-doily"] / 10
    assert _cm(stated.pattern("sea-lavender-doily")["finished size"]["across"]) == [
        pytest.approx(across, rel=0.03)
    ]


def test_garland_measures_what_it_says() -> None:
    w, _ = _gauge("purslane-garland", "dc")
    pieces = stated.pattern("purslane-garland")["pieces"]
    string = PATTERNS["purslane-garland"]()["string"]
    assert _cm(pieces["string"]["finished size"]["length"]) == [
        pytest.approx(stitches(string[1][0]) * w, abs=w)
    ]
    ends = 2 * 2 * 0.95 * w  # two rounds of dc at stem and point
    assert _cm(pieces["leaf"]["finished size"]["length"]) == [pytest.approx(11 * w + ends, abs=w)]
    assert 20 * w == pytest.approx(11, abs=0.5), "a further pair of leaves"


def test_seal_measures_what_it_says() -> None:
    w, h = _gauge("sandbank-seal", "sc")
    body = PATTERNS["sandbank-seal"]()["body"]
    around = max(stitches(edges[0]) for edges in body.values()) * w
    file = stated.pattern("sandbank-seal")
    assert _cm(file["pieces"]["body"]["finished size"]["around"]) == [pytest.approx(around, abs=w)]
    chest = around / (2 * math.pi)
    hind_flipper = len(PATTERNS["sandbank-seal"]()["hind flipper"]) * h
    curved = len(body) * h - 6 * h + chest / 2 + hind_flipper * 0.8  # the chest bulges by half its radius
    assert _cm(file["finished size"]["length"]) == [pytest.approx(curved, abs=1)]


@pytest.mark.parametrize(
    ("name", "piece", "stitch"), [("lantern-pouch", "pouch", "hdc"), ("reed-tray", "tray", "sc")]
)
def test_flat_rounds_grow_as_flat_rounds_do(name: str, piece: str, stitch: str) -> None:
    w, h = _gauge(name, stitch)
    flat = 2 * math.pi * h / w
    first, _, last = stated.pattern(name)["pieces"][piece]["lies flat"].partition("-")
    worked = PATTERNS[name]()[piece]
    for number in range(int(first) + 1, int(last) + 1):
        growth = stitches(worked[number][0]) - stitches(worked[number - 1][0])
        assert 0.8 <= growth / flat <= 1.25, f"round {number}"


def _yarn_metres(name: str) -> float:
    """First size: stitches and chain spaces of all pieces times their yarn; no tails, cords or seams."""
    file: dict[str, Any] = stated.pattern(name)
    uk = file["terms"] == "UK"
    w = WIDTH_MM[name] / 1000
    metres = 0.0
    for piece, rounds in PATTERNS[name]().items():
        make = file["pieces"][piece].get("make", 1)
        for edges in rounds.values():
            for thing, number in by_kind(edges[0]).items():
                if thing.endswith(" sp"):
                    chains = int("".join(figure for figure in thing if figure.isdigit()))
                    factor: float = chains * YARN_PER_STITCH["ch"]
                elif thing == "sh":
                    factor = 5 * YARN_PER_STITCH["dc"]
                else:
                    factor = YARN_PER_STITCH[IN_US_TERMS.get(thing, thing) if uk else thing]
                metres += make * number * factor * w
    return metres


@pytest.mark.parametrize("name", list(PATTERNS))
def test_weighed_amounts_are_believable(name: str) -> None:
    yarns = stated.pattern(name)["materials"]["yarns"].values()
    metres = 0.0
    for yarn in yarns:
        grams = float(stated.sizes_of(yarn["weighed"])[0].removesuffix(" g"))
        metres += grams / yarn["ball"]["grams"] * yarn["ball"]["metres"]
    assert 0.75 <= _yarn_metres(name) / metres <= 1.25
