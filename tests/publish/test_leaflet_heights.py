"""Heights on a leaflet: a table of what was worked, and for each what a page then says."""

import json
import re

import pytest

from loopleaf.publish.kept import Worked
from loopleaf.publish.leaflet import leaflets, leaflets_by_size
from loopleaf.publish.leaflet_heights import heights_worked
from loopleaf.publish.leaflet_parts import Leaflet
from loopleaf.publish.leaflet_tables import tables_by_part
from loopleaf.publish.overrides import overrides
from loopleaf.publish.settings import Settings
from loopleaf.publish.site_charts import chart_files
from loopleaf.publish.site_pages import Later, heights_text, templates
from tests.alter.patterns import DEMO, POUCH, checked, demo
from tests.demo.leaflets import leaf_of


@pytest.fixture(scope="module")
def pouch() -> Leaflet:
    return leaf_of("lantern-pouch")


@pytest.fixture(scope="module")
def half_weighed() -> Leaflet:
    """The pouch, the amount of whose first yarn nobody weighed."""
    text = (DEMO / "lantern-pouch.yml").read_text("utf-8").replace(", weighed: 52 g", "")
    return leaflets(checked(text), Settings())["US"]


def test_a_row_for_each_height_the_pattern_itself_among_them(pouch: Leaflet) -> None:
    assert pouch.heights is not None
    assert pouch.heights.head == ("Height", "Rounds", "Change", "Yarn A (lichen)", "Time")
    rows = {one.more: one.cells for one in pouch.heights.settings}
    assert list(rows) == [*range(-5, 7)]
    assert rows[0] == ("as written", "7–16", "", "52 g (1¾ oz)", "About 1 to 2 hours")
    assert rows[3][:3] == ("3 rounds more", "7–19", "about 3 cm (1¼ in) taller")
    assert rows[3][3].startswith("about 61 g")
    assert rows[-1][:3] == ("1 round fewer", "7–15", "about 10 mm (⅜ in) shorter")


def test_how_far_the_amounts_may_be_off_is_said_once(pouch: Leaflet, half_weighed: Leaflet) -> None:
    """Weighed to 5 % and 5 % more for what the alteration adds; the stitches alone tell it to 25 %."""
    assert pouch.heights is not None
    assert pouch.heights.note == "Amounts of yarn are give or take 10%."
    assert half_weighed.heights is not None
    assert half_weighed.heights.note == "Amounts of yarn are give or take 25%."


def test_what_follows_is_worked_not_counted_on(pouch: Leaflet) -> None:
    assert pouch.heights is not None
    (taller,) = [one.changed for one in pouch.heights.settings if one.more == 3]
    assert taller is not None
    (piece,) = taller.pieces
    assert [one.label for one in piece.rounds][-4:] == ["Rounds 7–19", "Round 20", "Round 21", "Round 22"]
    assert "round 20 of the pouch" in taller.finishing[0].text
    assert "round 12 of the pouch, over stitches 11–14" in taller.finishing[2].text
    assert any("between rounds 7 and 19" in note for note in taller.notes)
    assert any("16.5 cm" in line for size in taller.sizes for line in size.lines)
    assert taller.yarns[0].amount.startswith("about ")
    assert taller.yarns[1] == pouch.yarns[1]


def test_small_drawings_follow(pouch: Leaflet) -> None:
    assert pouch.heights is not None
    (taller,) = [one.changed for one in pouch.heights.settings if one.more == 3]
    assert taller is not None
    now = {one.kind: one.svg for one in taller.pieces[0].drawings}
    before = {one.kind: one.svg for one in pouch.pieces[0].drawings}
    assert set(now) == {"schematic", "profile", "chart"}
    assert "16.5 cm" in now["schematic"]
    assert "16.5 cm" not in before["schematic"]
    assert ">22<" in now["profile"]
    assert ">22<" not in before["profile"]
    assert taller.finishing[2].picture is not None
    assert "round 12" in taller.finishing[2].picture.svg


def test_chart_and_first_picture_are_files_of_their_own(pouch: Leaflet) -> None:
    assert pouch.heights is not None
    worked = Worked("lantern-pouch.yml", "lantern-pouch", "", True, (), {"US": pouch})
    files = chart_files([worked])
    for more, name in ((3, "plus-3"), (-2, "minus-2")):
        (changed,) = [one.changed for one in pouch.heights.settings if one.more == more]
        assert changed is not None
        assert changed.picture is not None
        assert changed.picture.file == f"heights/lantern-pouch/{name}.svg"
        assert files[changed.picture.file] != pouch.picture.svg
        (chart,) = [one for one in changed.pieces[0].drawings if one.kind == "chart"]
        assert f"rounds 1 to 6 from the middle outwards, rounds 7 to {19 + more} cut open" in chart.alt
        last = f'data-round="{19 + more}"'
        assert last in files[f"heights/lantern-pouch/{name}-pouch-us.svg"]
        assert last in files[f"heights/lantern-pouch/{name}-pouch-us-left.svg"]
        assert f'data-round="{20 + more}"' not in files[f"heights/lantern-pouch/{name}-pouch-us.svg"]


def test_a_piece_that_stays_as_it_is_has_no_other_chart(pouch: Leaflet) -> None:
    worked = Worked("lantern-pouch.yml", "lantern-pouch", "", True, (), {"US": pouch})
    taller = {path for path in chart_files([worked]) if path.startswith("heights/lantern-pouch/plus-3")}
    assert len(taller) == 3


def test_where_the_author_has_pictures_none_is_drawn() -> None:
    text = POUCH + "pictures:\n  - {file: pouch.jpg, alt: A pouch.}\n"
    offered = leaflets(checked(text), Settings())["US"].heights
    assert offered is not None
    assert all(one.changed.picture is None for one in offered.settings if one.changed)


def test_one_size_alone_has_them_by_its_own_measures() -> None:
    pattern = demo("curlew-cap")
    two_more = [one for one in heights_worked(pattern) if one.more == 2]
    alone = leaflets_by_size(pattern, Settings(), two_more)["child"]["US"]
    assert alone.heights is not None
    rows = {one.more: one for one in alone.heights.settings}
    printed = {one.number for piece in alone.pieces for one in piece.rounds}
    assert rows[0].cells[1] in printed
    assert rows[0].cells[3] == "76 g (2¾ oz)"
    taller = rows[2].changed
    assert taller is not None
    assert rows[2].cells[1] in {one.number for one in taller.pieces[0].rounds}
    assert all("(" not in one.count for one in taller.pieces[0].rounds)


def test_the_uk_page_has_them_in_its_own_terms() -> None:
    leaflet = leaf_of("lantern-pouch", "UK")
    assert leaflet.heights is not None
    (taller,) = [one.changed for one in leaflet.heights.settings if one.more == 1]
    assert taller is not None
    assert any("htr" in round.text for round in taller.pieces[0].rounds)


def test_a_file_of_its_own_holds_them_for_the_page(pouch: Leaflet) -> None:
    said = json.loads(
        heights_text(templates([str(overrides("site"))]), pouch, "../", Later(lambda path: path))
    )
    assert set(said) == {str(more) for more in range(-5, 7) if more}
    three = said["3"]
    assert set(three) >= {"facts", "sizes", "yarn-A", "yarn-B", "notes", "about-pouch", "piece-pouch"}
    assert three["drawn-pouch-profile"].startswith("<svg")
    assert three["drawn-finishing-3"].startswith("<svg")
    assert 'src="heights/lantern-pouch/plus-3.svg"' in three["picture"]
    assert 'src="heights/lantern-pouch/plus-3-pouch-us.svg"' in three["chart-pouch"]
    assert 'id="pouch-22"' in three["piece-pouch"]
    assert "<dt>" in three["facts"]
    assert "data-later" not in three["piece-pouch"]


def test_tables_follow_where_they_say_something_else(pouch: Leaflet) -> None:
    said = json.loads(
        heights_text(templates([str(overrides("site"))]), pouch, "../", Later(lambda path: path))
    )
    assert '<th scope="row">Pouch</th>' in said["3"]["table-pieces-1"]
    assert said["3"]["table-pieces-1"] != said["6"]["table-pieces-1"]
    assert "table-cords-1" not in said["3"]
    (written,) = [one for one in pouch.tables if one.place == "pieces"]
    assert written.rows[0][3] not in said["3"]["table-pieces-1"]


def test_each_table_has_a_part_of_its_own(pouch: Leaflet) -> None:
    assert list(tables_by_part(pouch.tables)) == ["table-pieces-1", "table-yarns-1", "table-cords-1"]
    twice = [one for one in pouch.tables if one.place == "cords"] * 2
    assert list(tables_by_part(twice)) == ["table-cords-1", "table-cords-2"]


def test_amounts_say_how_they_were_come_by(pouch: Leaflet, half_weighed: Leaflet) -> None:
    assert pouch.yarn_note.startswith("The author weighed these amounts; worked out from the stitches alone")
    assert pouch.yarn_note.endswith("Balls are rounded up, with 10% in reserve.")
    assert pouch.heights is not None
    (taller,) = [one.changed for one in pouch.heights.settings if one.more == 3]
    assert taller is not None
    assert taller.yarn_note.startswith("These amounts follow from what the author weighed")
    unweighed = POUCH.replace(", weighed: 40 g", "")
    bare = leaflets(checked(unweighed), Settings(), ())["UK"]
    assert bare.yarn_note.startswith("These amounts are worked out from the stitches, give or take 25%.")
    assert "the others were weighed" in half_weighed.yarn_note
    loose = re.sub(r"(?m)^gauge: .*$", "gauge: not critical", unweighed)
    assert leaflets(checked(loose), Settings(), ())["US"].yarn_note == ""


def test_sizes_have_both_units_in_the_table_of_heights() -> None:
    heights = leaf_of("curlew-cap").heights
    assert heights is not None
    assert heights.head[-1] == "Time, large adult"
    assert heights.settings[0].cells[3] == "about 53 (67, 82, 95) g, 2 (2¼, 3, 3¼) oz"


def test_nothing_marked_nothing_offered() -> None:
    text = POUCH.replace(", adjustable: height", "")
    assert leaflets(checked(text), Settings())["US"].heights is None


def test_checkpoint_tail_and_cords_stand_where_they_are_needed(pouch: Leaflet) -> None:
    round_notes = {one.anchor: one.note for piece in pouch.pieces for one in piece.rounds}
    assert round_notes["pouch-6"].endswith("The base is now about 11 cm (4¼ in) across.")
    assert round_notes["moon-2"].endswith("Leave a tail of about 25 cm (9¾ in) for sewing.")
    (cords,) = [one for one in pouch.tables if one.place == "cords"]
    assert cords.rows == (
        ("1", "1, 3, 5 … 23", "2, 4, 6 … 24", "before post 1, on the same side"),
        ("2", "13, 15, 17 … 11", "14, 16, 18 … 12", "before post 13, on the same side"),
    )
    assert "opens to about 34.5 cm (13½ in) around" in cords.note


def test_another_yarn_by_the_countrys_own_name(pouch: Leaflet) -> None:
    (yarns,) = [one for one in pouch.tables if one.place == "yarns"]
    assert [row[0] for row in yarns.rows] == ["DK (3)", "Bulky (5)"]
    (of_uk,) = [one for one in leaf_of("lantern-pouch", "UK").tables if one.place == "yarns"]
    assert [row[0] for row in of_uk.rows] == ["DK (3)", "Chunky (5)"]


def test_sizes_side_by_side() -> None:
    leaflet = leaf_of("curlew-cap", "UK")
    (sizes,) = [one for one in leaflet.tables if one.place == "sizes"]
    assert sizes.head == ("", "toddler", "child", "adult", "large adult")
    rows = {row[0]: row[1:] for row in sizes.rows}
    assert rows["To fit, head"] == ("46 cm (18 in)", "51 cm (20 in)", "56 cm (22 in)", "61 cm (24 in)")
    assert rows["Around"][1] == "48 cm (19 in)"
    assert rows["Yarn A (curlew brown)"][0] == "61 g (2¼ oz)"
    notes = [one.note for piece in leaflet.pieces for one in piece.rounds]
    assert "In size child: the work is now about 48 cm (19 in) around." in " ".join(notes)
