"""The drawings of a leaflet: which pieces have which, their files, and how they are kept between builds."""

from pathlib import Path

from loopleaf.publish.kept import Worked, put, take
from loopleaf.publish.leaflet_parts import Telling
from loopleaf.publish.settings import Settings
from loopleaf.publish.site_charts import chart_files
from loopleaf.publish.workshop import work
from tests.publish.small_site import ROOT

from .small_site import COASTER


def worked(text: bytes, source: str) -> Worked:
    found = work(source, text, Settings())
    assert found is not None
    return found


def lantern() -> Worked:
    return worked((ROOT / "patterns" / "lantern-pouch.yml").read_bytes(), "lantern-pouch.yml")


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


def test_a_chart_says_how_it_runs() -> None:
    charts = [drawing for drawing in lantern().leaflets["US"].pieces[0].drawings if drawing.kind == "chart"]
    assert charts[0].alt == (
        "Chart of the piece “Pouch”: one sign a stitch, rounds 1 to 6 from the middle outwards, "
        "rounds 7 to 19 cut open where they begin, from the bottom up. The same rounds stand below in words."
    )


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
