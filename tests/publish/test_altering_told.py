"""What changed, line by line: each line of the story is where the new file has it."""

import re

import pytest

from loopleaf.alter import Change
from loopleaf.publish.altering import Wanted, adjusted, resized
from loopleaf.publish.altering_told import told
from tests.alter.patterns import demo

STORIES = {
    "ball smaller": ("pebble-ball", Wanted(around="16.6 cm")),
    "ball between": ("sandbank-seal", Wanted(around="20 cm", piece="body")),
    "base and edge": ("lantern-pouch", Wanted(around="42 cm")),
    "oval": ("reed-tray", Wanted(around="80 cm")),
    "one of its sizes": ("curlew-cap", Wanted(around="50 cm")),
}


@pytest.mark.parametrize("name", list(STORIES))
def test_what_is_told_of_a_round_stands_in_its_line(name: str) -> None:
    pattern, wanted = STORIES[name]
    text, story = resized(demo(pattern), wanted)
    lines = text.splitlines()
    found = re.findall(r"^  line (\d+), (?:[^:,]+, )?(?:round|row)s? ([\d-]+): (.*)$", story, re.MULTILINE)
    for line, run, what in found:
        if not what.startswith("left out"):
            assert re.search(rf"(?:round|row)s?: \"?{run}\b", lines[int(line) - 1]), (line, run, what)
    assert found


def test_one_line_a_change_by_the_numbers_of_now() -> None:
    story = resized(demo("pebble-ball"), Wanted(around="16.6 cm"))[1].splitlines()
    assert "  line 47, old round 7: left out, “(sc in next 9 sts, inc) x 3”; 33 stitches" in story
    assert "  line 47, round 7: was round 8" in story
    assert "  line 47, round 7: 33 stitches, before 36" in story
    assert "  line 47, round 7: “round 10”, before “round 11”" in story
    assert "  line 22, finished size: around 16.5 cm, before 18 cm" in story
    longer = resized(demo("sandbank-seal"), Wanted(around="20 cm", piece="body"))[1].splitlines()
    assert "  line 46, body, round 8: new, “(sc in next 20 sts, inc) x 2”; 44 stitches" in longer
    assert "  line 125, finishing, step 9: stitches 19-24, before 16-21" in longer


def test_a_number_has_its_words_beside_it() -> None:
    story = resized(demo("reed-tray"), Wanted(around="80 cm"))[1].splitlines()
    assert "  line 37: start “chain 14”, before “chain 13”" in story
    assert "  line 41, round 1: “next 11 chs”, before “next 10 chs”" in story
    assert "  line 43, rounds 3-11: count from 40, before 38" in story


def test_fewer_rounds_and_how_many_kinds_there_are() -> None:
    story = adjusted(demo("lantern-pouch"), "-2 rounds")[1].splitlines()
    assert "  line 50, pouch, rounds 7-14: was rounds 7-16" in story
    assert "  line 61, cord, length: round 15, before 17" in story
    assert (
        told(Change(9, "count", "24 dc", "30 dc", "round 17"))
        == "line 9, round 17: count 30 dc, before 24 dc"
    )
    assert told(Change(9, "fill", "{fill: firmly}", "", "")) == "line 9: left out, {fill: firmly}"
