"""The drawings of a leaflet: which pieces have which, their files, and how they are kept between builds."""

from pathlib import Path
from xml.etree import ElementTree

import pytest

from loopleaf.measure import measure
from loopleaf.publish.drawing import Drawing
from loopleaf.publish.kept import Worked, put, take
from loopleaf.publish.leaflet_drawings import drawn
from loopleaf.publish.leaflet_parts import Telling, Terms
from loopleaf.publish.leaflet_told import LISTENED_TO
from loopleaf.publish.settings import Settings
from loopleaf.publish.site_charts import chart_files
from loopleaf.publish.workshop import work
from tests.demo import leaflets
from tests.draw.test_begun_on_others import AROUND, CLOTH, PLACES, PLAIN, TUBE, of, part

from .small_site import COASTER

SVG = "{http://www.w3.org/2000/svg}"


def worked(text: bytes, source: str) -> Worked:
    found = work(source, text, Settings())
    assert found is not None
    return found


def lantern() -> Worked:
    return leaflets.worked("lantern-pouch")


def test_pieces_have_the_drawings_that_show_something() -> None:
    kinds = {
        piece.name: [drawing.kind for drawing in piece.drawings] for piece in lantern().leaflets["US"].pieces
    }
    assert kinds == {"pouch": ["schematic", "profile", "chart"], "cord": [], "moon": ["schematic", "chart"]}


def test_threading_and_sewing_have_their_figures() -> None:
    steps = [step for step in lantern().leaflets["UK"].finishing if isinstance(step, Telling)]
    assert [step.picture is not None for step in steps] == [True, False, True, False]
    assert "Cord 2 begins before stitch 13" in (steps[0].picture.alt if steps[0].picture else "")
    assert "the moon over stitches 11–14 of round 11" in (steps[2].picture.alt if steps[2].picture else "")


def test_each_chart_is_a_file_in_both_terms_and_for_left_hands() -> None:
    files = chart_files([lantern()])
    assert {path for path in files if path.startswith("drawings/")} == {
        f"drawings/lantern-pouch-{piece}-{which}.svg"
        for piece in ("pouch", "moon")
        for which in ("us", "uk", "us-left", "uk-left")
    }
    assert "hdc, half double crochet (UK: htr" in files["drawings/lantern-pouch-pouch-us.svg"]
    assert "htr, half treble (US: hdc" in files["drawings/lantern-pouch-pouch-uk.svg"]
    assert "scale(-1 1)" in files["drawings/lantern-pouch-pouch-us-left.svg"]


def charts(terms: Terms, piece: int = 0) -> list[Drawing]:
    return [one for one in lantern().leaflets[terms].pieces[piece].drawings if one.kind == "chart"]


def test_a_chart_says_how_it_runs_and_its_first_rounds() -> None:
    (chart,) = charts("US")
    assert chart.alt.startswith(
        "Chart of the piece “Pouch”: one sign a stitch, rounds 1 to 6 from the middle outwards, "
        "rounds 7 to 19 cut open where they begin, from the bottom up. "
        "Round 1: ch 1, 8 hdc in ring, join with sl st to first hdc (8). Round 2: ch 1, 2 hdc in each st "
    )
    assert chart.alt.endswith(" These and all other rounds stand in words in the text.")
    assert len(chart.alt) < 200 + LISTENED_TO


def test_a_short_chart_says_all_its_rounds_in_the_page_s_terms() -> None:
    (us,), (uk,) = charts("US", 2), charts("UK", 2)
    moon = lantern().leaflets["US"].pieces[2]
    assert all(one.text in us.alt for one in moon.rounds)
    assert us.alt.endswith(" The same rounds stand in words in the text.")
    assert "Round 1: 7 dc in 2nd ch from hook (7)." in uk.alt
    assert "sc" not in uk.alt


def test_a_chart_s_file_says_what_the_page_says() -> None:
    for drawing in (*charts("US"), *charts("UK", 2)):
        for svg in (drawing.svg, drawing.left):
            assert [one.text for one in ElementTree.fromstring(svg).iter(f"{SVG}desc")] == [drawing.alt]


def test_a_picture_in_squares_says_the_rows_that_are_worked_from_it() -> None:
    bookmark = leaflets.worked("lighthouse-bookmark")
    (picture,) = (one for one in bookmark.leaflets["UK"].pieces[0].drawings if one.kind == "squares")
    assert "from the bottom up. Row 2: 3ch (counts as tr)" in picture.alt
    assert "Row 1:" not in picture.alt
    assert all(f"<desc>{picture.alt}</desc>" in svg for svg in (picture.svg, picture.left, *picture.printed))


def test_a_page_has_the_charts_key_in_its_own_words() -> None:
    for terms, name in (("US", "hdc, half double crochet (UK: htr"), ("UK", "htr, half treble (US: hdc")):
        chart = lantern().leaflets[terms].pieces[0].drawings[-1]  # type: ignore[index]
        assert chart.key
        for line in chart.key:
            assert line.words in chart.svg.replace("&#x27;", "'")
            assert line.left in chart.left
        assert any(line.words.startswith(name) and line.svg for line in chart.key)


def test_what_is_kept_comes_back_with_every_drawing_once(tmp_path: Path) -> None:
    one = worked(COASTER.encode(), "coaster.yml")
    put(tmp_path, "key", one)
    assert take(tmp_path, "key") == one
    kept = (tmp_path / "key.json").read_text(encoding="utf-8")
    schematic = one.leaflets["US"].pieces[0].drawings[0]
    assert schematic == one.leaflets["UK"].pieces[0].drawings[0]
    assert kept.count("The outline of the coaster") == 3, "twice as words, once in the drawing"


def test_a_text_that_looks_like_a_drawing_comes_back_as_it_was(tmp_path: Path) -> None:
    odd = COASTER.replace("care: Machine wash.", 'care: "<svg 0"')
    one = worked(odd.encode(), "coaster.yml")
    put(tmp_path, "key", one)
    assert take(tmp_path, "key") == one


@pytest.mark.parametrize(
    ("pieces", "outlined"),
    [
        (
            CLOTH + part("base, row: 8, stitches: 3-12", *[PLAIN] * 3),
            True,
        ),  # three rows high, ten stitches wide
        (CLOTH + part("base, row: 8, stitches: 3-16", *[PLAIN] * 3), False),  # and fourteen: an edging
        (CLOTH + part("base, row ends: true", "ch 1, sc in end of each row, turn", PLAIN, PLAIN), True),
        (CLOTH + part("base, row ends: true", "ch 1, sc in end of each row, turn", PLAIN), False),
        (TUBE + part("base, round: 6, stitches: 1-16"), False),  # four rows of sixteen stitches
        (TUBE + part("base, round: 6, stitches: 1-15"), True),
        (TUBE + part("base, round: 6", *[AROUND] * 3, how="joined rounds"), True),  # 32 around: 10.2 across
        (TUBE + part("base, round: 6", *[AROUND] * 2, how="joined rounds"), False),
        (PLACES["all around a disc"], False),
    ],
)
def test_what_begins_on_another_piece_has_its_outline_unless_it_is_an_edging(
    pieces: str, outlined: bool
) -> None:
    work = of(pieces)
    shown = drawn(work, measure(work)).measures
    assert "base" in shown
    assert ("part" in shown) == outlined
