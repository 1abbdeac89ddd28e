"""One size of a pattern in several: its numbers alone, the numbers of its rounds kept."""

import pytest

from loopleaf.alter import one_size
from loopleaf.measure import measure
from loopleaf.publish.leaflet import leaflets_by_size
from loopleaf.publish.settings import Settings
from loopleaf.review import check
from tests.alter.patterns import checked, demo
from tests.demo.leaflets import leaf_of

BAND = """\
title: Band
terms: US
sizes: [S, M, L]
materials: {yarns: {A: {weight: 4, name: oat, weighed: "10 (12, 14) g"}}, hook: 5 mm}
gauge: {stitch: sc, stitches: 20, rows: 20, over: 10 cm}
finished size: {width: "10 (12, 14) cm"}
to fit: {wrist: "15 (17, 19) cm"}
turning chains: {sc: does not count}
notes: ["It is 10 (12, 14) cm long. Two numbers (3, 4) stay."]
pieces:
  band:
    title: Band
    yarn: A
    worked: rows
    start: chain 21 (25, 29)
    rows:
      - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: "20 (24, 28)"}
      - {row: 2, sizes: [M, L], work: "ch 1, sc in each st across, turn", count: "- (24, 28)"}
      - {row: 3, work: "ch 1, sc in next 10 (12, 14) sts, sc in each remaining st", count: "20 (24, 28)"}
"""


@pytest.mark.parametrize(("size", "rows", "number"), [(0, ["1", "3"], 10), (1, ["1", "2", "3"], 12)])
def test_rounds_counts_and_numbers_of_one_size(size: int, rows: list[str], number: int) -> None:
    work = checked(BAND).work
    assert work is not None
    alone = one_size(work, size)
    (piece,) = alone.pieces
    assert [one.plan.label for one in piece.rounds] == rows
    assert [len(one.sizes) for one in piece.rounds] == [1] * len(rows)
    assert alone.pattern.size_count == 1
    assert str(alone.pattern.finished_size and alone.pattern.finished_size.width) == f"{number} cm"
    assert str(alone.pattern.to_fit["wrist"]) == f"{15 + 2 * size} cm"
    assert alone.pattern.notes == (f"It is {number} cm long. Two numbers (3, 4) stay.",)
    found = measure(alone)
    assert found.pieces[0].size[0]["width"].middle == pytest.approx(2 * number * 5)
    (need,) = found.yarn[0]
    assert need.grams is not None
    assert need.grams.middle == pytest.approx(10 + 2 * size)


@pytest.mark.parametrize(
    ("note", "kept"),
    [
        ("Work loosely. Where your size isn't named, go on.", "Work loosely."),
        ("Not every size works every round. It stretches.", "It stretches."),
        ("Choose your size, and mark its numbers.", ""),
        (
            "Dry it over a bowl of the right size. Try it on.",
            "Dry it over a bowl of the right size. Try it on.",
        ),
    ],
)
def test_words_that_help_to_find_a_size_are_left_out(note: str, kept: str) -> None:
    work = checked(BAND.replace("Two numbers (3, 4) stay.", note)).work
    assert work is not None
    assert one_size(work, 0).pattern.notes == (f"It is 10 cm long. {kept}".strip(),)
    assert work.pattern.notes == (f"It is 10 (12, 14) cm long. {note}",)


def test_a_note_of_nothing_else_goes() -> None:
    work = demo("curlew-cap").work
    assert work is not None
    notes = one_size(work, 1).pattern.notes
    assert len(notes) == len(work.pattern.notes) - 1
    assert not any("your size" in note for note in notes)


def test_a_drawing_says_in_which_of_several_sizes_it_is() -> None:
    several = leaf_of("curlew-cap")
    titles = [one.title for one in several.pieces[0].drawings if one.kind != "chart"]
    assert titles == ["Measures, drawn in size toddler", "In section, drawn in size toddler"]
    alone = leaflets_by_size(demo("curlew-cap"), Settings(), ())["child"]["US"]
    assert [one.title for one in alone.pieces[0].drawings if one.kind != "chart"] == [
        "Measures",
        "In section",
    ]


def test_a_leaflet_a_size() -> None:
    found = leaflets_by_size(check(BAND.encode(), "band.yml"), Settings())
    assert list(found) == ["S", "M", "L"]
    small = found["S"]["US"]
    assert (small.title, small.slug) == ("Band, S", "band-s")
    texts = [one.text for piece in small.pieces for one in piece.rounds]
    counts = [one.count for piece in small.pieces for one in piece.rounds]
    assert texts[-1].startswith("ch 1, sc in next 10 sts, sc in each remaining st")
    assert counts == ["20", "20"]
    assert not any("(" in line for size in small.sizes for line in size.lines if "in)" not in line)
    assert [(one.name, one.slug) for one in small.size_pages] == [
        ("", "band"),
        ("M", "band-m"),
        ("L", "band-l"),
    ]
    assert [table.place for table in small.tables if table.place == "sizes"] == []


def test_every_size_of_the_demo_says_one_number_at_a_time() -> None:
    for name in ("curlew-cap", "gull-collar"):
        for size, found in leaflets_by_size(demo(name), Settings(), ()).items():
            for leaflet in found.values():
                for piece in leaflet.pieces:
                    for one in piece.rounds:
                        assert "(" not in one.count, (name, size, one.label)
                        assert ", -" not in one.text


def test_a_pattern_in_one_size_has_none() -> None:
    assert leaflets_by_size(demo("lantern-pouch"), Settings()) == {}
