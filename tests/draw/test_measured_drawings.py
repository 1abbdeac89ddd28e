"""Schematics and profiles: what they measure, what they number, how they are mirrored and spoken."""

import re
from itertools import pairwise
from math import dist
from xml.etree import ElementTree

import pytest

from loopleaf.draw import Figure, profile, schematic, stacked
from loopleaf.draw.form import form_of
from loopleaf.draw.measuring import GAP, measured_along, split
from loopleaf.draw.sketch import Sketch
from tests.measure.worked_patterns import HEAD, worked

from .pieces import COLLECTION, DEMO, MAT, SVG, demo, rounds, rows, subject, tree

BOOKLET = COLLECTION.parent / "theme_overrides" / "booklet" / "booklet.css"
ON_A_PHONE = 350
"""So many pixels of a phone's 390 are a drawing's."""


def words(figure: Figure | None) -> list[str]:
    """The words of a drawing, in the order written."""
    assert figure is not None
    return [text.text or "" for text in tree(figure.svg).iter(f"{SVG}text")]


def piece_of(name: str, piece: str) -> Figure:
    work, measured = demo(name)
    figure = schematic(work, piece, measured)
    assert figure is not None
    return figure


@pytest.mark.parametrize(
    ("pattern", "piece", "said"),
    [
        ("lantern-pouch", "pouch", ["13.5 cm", "(5¼ in)", "34.5 cm", "(13½ in)", "about 11 cm (4¼ in)"]),
        ("tide-cloth", "cloth", ["25.5 cm (10 in)", "24 cm", "(9½ in)"]),
        ("reed-tray", "tray", ["29 cm (11½ in)", "19 cm", "(7½ in)", "7 cm", "(2¾ in)"]),
        ("harbour-square", "square", ["17 cm (6¾ in)", "17 cm", "(6¾ in)"]),
    ],
)
def test_a_schematic_gives_the_stated_measures_in_both_units(
    pattern: str, piece: str, said: list[str]
) -> None:
    assert sorted(words(piece_of(pattern, piece))) == sorted(said)


def test_measures_by_size_stand_in_a_list_below_the_figure_that_letters_lead_to() -> None:
    assert words(piece_of("gull-collar", "collar")) == [
        *("a", "12 cm", "(4¾ in)", "b"),
        *("a", "about 107.5 (118, 129) cm,", "42½ (46½, 50¾) in along the outer edge"),
        *("b", "about 37 (40.5, 44) cm,", "14½ (16, 17¼) in along the inner edge"),
    ]
    assert words(piece_of("curlew-cap", "cap")) == [
        *("a", "b around"),
        *("a", "about 17 (19, 21, 21.5) cm,", "6¾ (7½, 8¼, 8½) in high along the cloth"),
        *("b", "42.5 (48, 53.5, 58.5) cm,", "16¾ (19, 21, 23) in around"),
    ]


def test_the_list_reads_from_left_to_right_for_either_hand() -> None:
    work, measured = demo("curlew-cap")
    for left_handed in (False, True):
        figure = schematic(work, "cap", measured, left_handed)
        assert figure is not None
        letter, *lines = list(tree(figure.svg).iter(f"{SVG}text"))[2:5]
        assert {text.get("text-anchor") for text in (letter, *lines)} == {"start"}
        assert all(float(letter.get("x", 0)) < float(line.get("x", 0)) for line in lines)


@pytest.mark.parametrize("name", DEMO)
def test_words_are_legible_in_the_booklet_and_on_a_phone(name: str) -> None:
    """6.5 points where a figure is fitted to its place on the page, 11 pixels on a phone 390 pixels wide."""
    place = re.search(r"\.measured img { max-width: (\d+)mm; }", BOOKLET.read_text(encoding="utf-8"))
    assert place is not None
    work, measured = demo(name)
    for piece in work.pieces:
        figure = schematic(work, piece.name, measured)
        if figure is None:
            continue
        root = tree(figure.svg)
        wide = float(root.get("viewBox", "").split()[2])
        smallest = min(float(text.get("font-size", 0)) for text in root.iter(f"{SVG}text"))
        assert smallest * min(1, int(place[1]) / wide) * 72 / 25.4 >= 6.5, piece.name
        assert smallest * min(96 / 25.4, ON_A_PHONE / wide) >= 11, piece.name


def test_what_the_author_states_is_printed_without_about_and_what_is_worked_out_with_it() -> None:
    collar, band = piece_of("gull-collar", "collar"), piece_of("gull-collar", "button band")
    assert "12 cm" in words(collar)
    assert all(text.startswith("about") for text in words(band) if "cm" in text or "mm" in text)


def test_a_schematic_says_what_it_shows() -> None:
    assert piece_of("lantern-pouch", "pouch").alt == (
        "The outline of the pouch: 13.5 cm (5¼ in) high; 34.5 cm (13½ in) around; "
        "the base about 11 cm (4¼ in) across."
    )


def test_without_a_gauge_nothing_is_measured() -> None:
    work = worked(MAT, head=re.sub("gauge: .*\n", "", HEAD))
    assert schematic(work, "mat") is None
    assert profile(work, "mat") is not None


def test_what_is_much_longer_than_wide_is_drawn_with_a_break() -> None:
    def strokes(long: int) -> int:
        work = worked(rows(*["ch 1, sc in each st across, turn"] * long, chain=12))
        figure = schematic(work, "cloth")
        assert figure is not None
        return figure.svg.count('stroke-width=".25"')

    assert strokes(200) == strokes(9) + 2, "the two waved lines of the break"


def test_a_profile_numbers_its_rounds_and_names_its_parts() -> None:
    work, measured = demo("lantern-pouch")
    figure = profile(work, "pouch", measured)
    said = words(figure)
    assert {str(number) for number in range(1, 20)} <= {*said}
    assert {"Base", "Sides", "Casing", "Edge"} <= {*said}
    assert figure is not None
    assert "Rounds 1 to 6 lie flat." in figure.alt


def test_the_base_is_what_the_author_means_to_lie_flat() -> None:
    work, _ = demo("reed-tray")
    assert form_of(subject(work)).grounded == 11


def test_a_filled_piece_is_closed_and_has_its_filling() -> None:
    work, measured = demo("pebble-ball")
    ball = profile(work, "ball", measured)
    assert ball is not None
    assert "filled" in ball.alt
    assert "drawn closed" in ball.alt
    pouch = profile(*demo("lantern-pouch")[:1], "pouch")
    assert pouch is not None
    assert ball.svg.count("<path") > 2 * pouch.svg.count("<path")


def test_rows_have_no_profile() -> None:
    work, measured = demo("tide-cloth")
    assert profile(work, "cloth", measured) is None


def test_numbers_do_not_touch() -> None:
    """Two numbers lie apart by their own width or height."""
    work, measured = demo("reed-tray")
    figure = profile(work, "tray", measured)
    assert figure is not None
    texts = [text for text in tree(figure.svg).iter(f"{SVG}text") if (text.text or "").isdigit()]
    places = [(float(text.get("x", 0)), float(text.get("y", 0)), len(text.text or "")) for text in texts]
    assert len(places) >= 5
    for at, (x, y, long) in enumerate(places):
        for other_x, other_y, other_long in places[at + 1 :]:
            assert abs(x - other_x) > 0.95 * (long + other_long) or abs(y - other_y) > 3.4


def test_numbers_are_left_out_by_a_rule_and_never_singly() -> None:
    """Every second of the seal's body; every fifth of the tray's base; all of the cap, which has room."""
    for name, piece, wanted in (
        ("sandbank-seal", "body", [*range(1, 28, 2)]),
        ("reed-tray", "tray", [1, 5, 10, 15, 19]),
        ("curlew-cap", "cap", [*range(1, 11), 14, 15, 16, 17, *range(20, 24)]),
    ):
        work, measured = demo(name)
        figure = profile(work, piece, measured)
        assert figure is not None
        texts = [text.text or "" for text in tree(figure.svg).iter(f"{SVG}text")]
        assert sorted(int(text) for text in texts if text.isdigit()) == wanted


@pytest.mark.parametrize("draw", [schematic, profile])
def test_a_left_handers_is_the_mirror_image_with_its_words_upright(draw: object) -> None:
    work, measured = demo("lantern-pouch")
    plain, mirrored = (draw(work, "pouch", measured, hand) for hand in (False, True))  # type: ignore[operator]

    def texts(figure: Figure) -> list[tuple[float, str | None]]:
        return [(float(t.get("x", 0)), t.text) for t in tree(figure.svg).iter(f"{SVG}text")]

    assert [(-x, text) for x, text in texts(mirrored)] == texts(plain)
    assert "scale(-1" not in re.sub(r"<path[^>]*>", "", mirrored.svg)


def test_drawings_are_stacked_without_touching() -> None:
    work, measured = demo("lantern-pouch")
    figures = [schematic(work, name, measured) for name in ("pouch", "moon")]
    known = [figure for figure in figures if figure is not None]
    together = stacked([*zip(("Pouch", "Moon & star"), known, strict=True)], "Both")
    assert together is not None
    whole = ElementTree.fromstring(together.svg)
    inner = [one for one in whole if one.tag == f"{SVG}svg"]
    names = [one for one in whole if one.tag == f"{SVG}text"]
    assert [name.text for name in names] == ["Pouch", "Moon & star"], "each under its name"
    (first, second), (above, below) = (
        [float(one.get("y", 0)) for one in inner], [float(name.get("y", 0)) for name in names]
    )  # fmt: skip
    assert above < first < first + float(inner[0].get("height", 0)) < below < second
    assert together.alt == " ".join(figure.alt for figure in known)
    assert stacked([("Pouch", known[0])], "One") is known[0], "one alone needs no name"
    assert stacked([], "None") is None


@pytest.mark.parametrize(
    ("words_", "lines"),
    [
        ("about 34.5 cm (13½ in)", ["about 34.5 cm", "(13½ in)"]),
        ("37 (40.5, 44) cm, 14½ (16, 17¼) in", ["37 (40.5, 44) cm,", "14½ (16, 17¼) in"]),
        ("18 mm", ["18 mm"]),
    ],
)
def test_a_measure_parts_between_its_units(words_: str, lines: list[str]) -> None:
    assert split(words_) == lines


def test_what_fits_a_head_is_shown_as_it_is_worn() -> None:
    """The crown comes first and stands on top, rounded as over a head."""
    work, measured = demo("curlew-cap")
    figure = profile(work, "cap", measured)
    assert figure is not None
    assert figure.alt.startswith("Cap in section, from round 1 at the top to round 23 at the bottom.")
    side = form_of(subject(work)).side()
    assert side[0][1] == max(y for _, y in side)
    assert side[-1][1] == 0


@pytest.mark.parametrize("name", DEMO)
def test_a_form_is_as_high_as_the_measure_beside_it(name: str) -> None:
    """Along the cloth where it is said so, upright else; stiff cloth shares a sudden change of its rounds,
    which may add a tenth.
    """
    work, measured = demo(name)
    for piece in work.pieces:
        own = measured.piece(piece.name)
        band = own.size[0].get("height") if own is not None and own.in_rounds else None
        if band is None:
            continue
        assert own is not None
        form = form_of(subject(work, piece.name))
        cloth = sum(dist(below, above) for below, above in pairwise(form.side()))
        assert (cloth if own.along_cloth else form.height) == pytest.approx(band.middle, rel=0.12), piece.name
        if form.filled or own.along_cloth:
            assert (cloth if own.along_cloth else form.height) == pytest.approx(band.middle, rel=0.02)


def test_a_cap_is_measured_along_its_cloth() -> None:
    words_of_cap = " ".join(words(piece_of("curlew-cap", "cap")))
    assert "in high along the cloth" in words_of_cap
    assert "high along the cloth" in piece_of("curlew-cap", "cap").alt
    assert "along the cloth" not in piece_of("lantern-pouch", "pouch").alt


def test_a_string_is_long_and_a_scarf_wide() -> None:
    assert "128 cm (50½ in) long" in piece_of("purslane-garland", "string").alt
    assert "22.5 cm (8¾ in) wide" in piece_of("ebb-scarf", "scarf").alt


def test_what_is_told_as_one_width_has_upright_sides() -> None:
    """The string's second row is a hundredth wider; its height is drawn larger than its length."""
    outline = re.search(r'd="(M[^"]*Z)"', piece_of("purslane-garland", "string").svg)
    assert outline is not None
    sides = {abs(float(x)) for x, _ in re.findall(r"(-?[\d.]+) (-?[\d.]+)", outline[1])}
    assert len(sides) == 1


@pytest.mark.parametrize("end", [(20.0, 0.0), (20.0, 9.0), (20.0, -9.0), (6.0, 19.0)])
def test_a_measure_along_a_slanted_edge_runs_beside_it(end: tuple[float, float]) -> None:
    sketch = Sketch()
    measured_along(sketch, (0.0, 0.0), end, "12 cm (4¾ in)")
    svg = sketch.figure("", "").svg
    ways = [[float(n) for n in re.findall(r"-?[\d.]+", way)] for way in re.findall(r' d="([^"]*)"', svg)]
    runs = [((x0, y0), (x1, y1)) for x0, y0, x1, y1 in (way for way in ways if len(way) == 4)]
    along = [pair for pair in runs if dist(*pair) == pytest.approx(dist((0, 0), end), abs=0.05)]
    ((x0, y0), (x1, y1)) = along[0]
    assert (x1 - x0, y1 - y0) == pytest.approx(end, abs=0.05)
    assert dist((x0, y0), (0, 0)) == pytest.approx(GAP, abs=0.05)
    assert y0 > 0, "below the edge"


def outline(figure: Figure | None) -> list[tuple[float, float]]:
    """The corners of the first shape of a drawing, y down."""
    assert figure is not None
    found = re.search(r'<path [^>]*d="M([^"]*)Z"', figure.svg)
    assert found is not None
    return [(float(x), float(y)) for x, y in (part.split(" ") for part in found[1].split("L"))]


SC = "ch 1, sc in each st across, turn"
UP, DOWN = "sc in next st, hdc in next st, dc in next st", "dc in next st, hdc in next st, sc in next st"
TALL = f"{UP}, tr in next 2 sts, {DOWN}"


def test_a_last_row_in_points_has_its_points() -> None:
    first = "sc in 2nd ch from hook and in each ch across, turn"
    flag = rows(first, SC, SC, SC, f"ch 1, ({TALL}) x 2", chain=17)
    points = outline(schematic(worked(flag), "cloth"))
    top = min(y for _, y in points)
    peaks = [b for a, b, c in zip(points, points[1:], points[2:], strict=False) if a[1] > b[1] <= c[1]]
    assert len([y for _, y in peaks if y - top < 0.2]) >= 2
    low = [y for x, y in points if abs(x) < 1.5 and y < -1]
    assert low
    assert min(low) - top > 2.0, "a notch between them"
    even = outline(schematic(worked(rows(first, SC, SC, SC, SC, chain=17)), "cloth"))
    assert {abs(x) for x, _ in even} == {23.0}, "one line across the top"


def test_a_crown_has_its_points() -> None:
    around = "ch 1, sc in each st around, join"
    begun = rounds(
        "ch 1, sc in each ch around, join", *[around] * 12, f"ch 1, *{TALL}; rep from * around, join"
    )
    crown = begun.replace("start: magic ring", "start: chain 64, joined")
    points = outline(schematic(worked(crown), "piece"))
    levels = [y for x, y in points if y < min(y for _, y in points) + 6]
    turns = [b for a, b, c in zip(levels, levels[1:], levels[2:], strict=False) if a > b <= c]
    assert len(turns) >= 4, "half of the eight show in front"
    assert max(x for x, _ in points) == pytest.approx(-min(x for x, _ in points), abs=0.1)


def test_points_worked_back_on_chains_make_a_star() -> None:
    star = rounds(
        "ch 1, 10 sc in ring, join",
        "ch 1, *sc in next st, ch 4, sl st in 2nd ch from hook, sc in next ch, hdc in next ch, sk next st; "
        "rep from * 4 more times, join",
    )
    outs = [dist(point, (0.0, 0.0)) for point in outline(schematic(worked(star), "piece"))]
    far = [out for out in outs if out > 0.9 * max(outs)]
    assert len(far) == 5
    assert min(outs) < 0.75 * max(outs)


def test_what_is_gathered_at_once_is_no_diamond() -> None:
    bag = rows(
        "dtr in 6th ch from hook and in each ch across, turn",
        "ch 5 (counts as dtr), (dtr2tog over next 2 sts) x 4, dtr in last st, turn",
        "ch 5 (counts as dtr), dtr5tog over next 5 sts",
        chain=14,
    )
    figure = schematic(worked(bag), "cloth")
    assert figure is not None
    assert "wide at the first row" in figure.alt
    points = outline(figure)
    foot = max(y for _, y in points)
    at_foot = [x for x, y in points if y == foot]
    assert max(at_foot) - min(at_foot) == pytest.approx(
        max(x for x, _ in points) - min(x for x, _ in points), abs=0.1
    )


def _edged(corner: str) -> Figure | None:
    """A granny square with a round of single crochet. corner: what it has in each corner."""
    square = rounds(
        "ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) x 3, join",
        "sl st in next 2 dc, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, "
        "*ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * around, ch 1, join",
        f"ch 1, *sc in next 3 dc, {corner}sc in next 3 dc, sc in next ch-1 sp; rep from * around, join",
    )
    return schematic(worked(square), "piece")


def test_a_square_edged_without_chains_stays_a_square() -> None:
    assert len(outline(_edged("3 sc in next ch-2 sp, "))) == 4


def test_a_round_too_short_for_its_corners_draws_them_in() -> None:
    assert len(outline(_edged(""))) > 20
