"""`loopleaf measure`: every figure with its working; and the same figures for programs."""

import json
import re
from functools import cache

import pytest

from loopleaf.publish.json_report import pattern_object
from loopleaf.publish.measure_report import measure_text
from loopleaf.review import check
from tests.alter.patterns import POUCH, checked, demo


@cache
def told(name: str) -> list[str]:
    measured = demo(name).measured
    assert measured is not None
    return measure_text(measured).splitlines()


def test_a_round_with_its_sum() -> None:
    """48 stitches of 10 cm ÷ 14 are 34.3 cm; the sixth round of 10 mm ends at 6 cm."""
    lines = told("lantern-pouch")
    at = next(index for index, line in enumerate(lines) if line.split()[:2] == ["6", "48"])
    assert lines[at].split("  ")[-1] == "48 × 7.1 mm; 50 + 10.0 mm"
    assert "  34.5 cm (13½ in)    11 cm (4¼ in)       6 cm (2¼ in)  " in lines[at]
    assert lines[at + 1].strip() == "here: about 11 cm (4¼ in) across"
    assert lines[at + 2].split()[:2] == ["7-16", "48"]
    assert lines[at + 2].endswith("48 × 7.1 mm; 60 + 10 × 10.0 mm")
    assert any("7.1 mm wide and 10.0 mm high by the gauge, give or take 4% and 5%" in line for line in lines)


def test_alike_rounds_in_one_line_and_both_units_in_each() -> None:
    lines = told("ebb-scarf")
    assert sum("43 × 5.3 mm" in line for line in lines) == 1
    assert any("between 22 cm (8¾ in) and 23 cm (9¼ in)" in line for line in lines)
    rounds = [line for line in lines if "; 0 + " in line]
    assert len(rounds) == 2
    assert all(line.count(" in)") == 2 for line in rounds)


def test_cords_over_and_under_and_how_far_the_bag_opens() -> None:
    lines = [line.strip() for line in told("lantern-pouch")]
    assert (
        "cord: 68.5 cm (27 in), about 96 chains; around 34.5 cm (13½ in), so 54.5 cm (21¼ in) or more"
        in lines
    )
    assert (
        "2: under 13, over 14, under 15, over 16, …, under 11, over 12; both ends before post 13, "
        "on the same face" in lines
    )
    assert "the second passes through the same gaps as the first" in lines
    assert "opens to 34.5 cm (13½ in) around, with 34.5 cm (13½ in) of cord left" in lines
    assert "moon: 25 cm (9¾ in) for an edge of 10 cm (4 in)" in lines


def test_how_far_the_model_is_off_what_was_weighed() -> None:
    (line,) = [line for line in told("reed-tray") if line.startswith("  A  about")]
    assert "as weighed: by the stitches it would be 1% more" in line


def test_another_yarn_and_who_is_new_to_it() -> None:
    text = "\n".join(told("lantern-pouch"))
    assert "weight 3, hook about 4.5 mm (US 7): around about 30 cm (11½ in)" in text
    assert "for someone new to it" in text
    assert "Cords: a cord (Drawstring)" in text


def test_a_piece_without_a_gauge_says_so() -> None:
    assert any("not measured" in line for line in told("lantern-pouch"))


def test_sizes_one_by_one() -> None:
    lines = told("curlew-cap")
    assert [line for line in lines if line.startswith("cap (")] == [
        f"cap (size {size})" for size in ("toddler", "child", "adult", "large adult")
    ]
    assert sum("here: about" in line for line in lines) == 4


def test_the_same_for_programs() -> None:
    found = json.loads(json.dumps(pattern_object(demo("lantern-pouch"))))
    pouch, cord, moon = found["pieces"]
    assert pouch["checkpoints"] == [{"round": "6", "across_mm": 109.1}]
    assert moon["tail_mm"] == 250.0
    assert cord["opens_mm"] == 342.9
    (tray,) = pattern_object(demo("reed-tray"))["pieces"]
    assert tray["checkpoints"] == [{"round": "11", "length_mm": 291.3, "width_mm": 191.3}]
    (cap,) = pattern_object(demo("curlew-cap"))["pieces"]
    assert cap["checkpoints"][1] == {"round": "11", "around_mm": [None, 480.0, None, None]}


def test_what_a_reader_may_choose_for_programs() -> None:
    found = pattern_object(demo("lantern-pouch"))
    pouch, cord, _ = found["pieces"]
    assert pouch["adjustable"] == [{"rounds": "7-16", "step": 1, "step_mm": 10.0}]
    assert "adjustable" not in cord
    assert [one["title"] for one in found["cautions"]] == ["Cords", "Small parts"]
    assert found["cautions"][0]["because"] == ["a cord (Drawstring)"]
    thinner, thicker = found["other_yarns"]
    assert (thinner["weight"], thinner["hook_mm"], thicker["weight"]) == (3, 4.5, 5)
    low, high = thinner["size"]["around_mm"]
    assert low < 295 < high
    (threading,) = cord["threading"]
    assert (threading["through"], threading["round"], threading["same_gaps"]) == ("pouch", "17", True)
    first, second = threading["cords"]
    assert (first["before"], second["before"]) == (1, 13)
    assert first["passes"][:2] == [{"way": "under", "posts": "1"}, {"way": "over", "posts": "2"}]
    assert len(first["passes"]) == 24


def test_a_sum_with_spaces_and_with_stitches_of_two_heights() -> None:
    """24 stitches and 24 chains of 7.14 mm; 8 sc of 6.6 mm and 40 dc of 13.6 mm are 12.4 mm on average."""
    lines = told("lantern-pouch")
    casing, edge = (next(one for one in lines if one.split()[:1] == [label]) for label in ("17", "19"))
    assert casing.endswith("24 × 7.1 mm + 24 ch-1 sps × 7.1 mm; 160 + 13.6 mm")
    assert edge.endswith("48 × 7.1 mm; 180 + 12.4 mm on average")


def test_the_sum_comes_to_the_figure_that_it_explains() -> None:
    """Every sum of stitches and spaces in the demo's tables, added up: within what rounding leaves."""
    examined = 0
    for name in ("harbour-square", "sea-lavender-doily", "lighthouse-bookmark", "gull-collar", "reed-tray"):
        for line in told(name):
            parts = re.findall(r"(\d+) (?:ch-\d+ sps? )?× ([\d.]+) mm", line.split(";")[0])
            figure = re.search(r"\d  +([\d.]+) (cm|mm) \(", line)
            if parts and figure and "ch-" in line:
                mm = float(figure[1]) * (10 if figure[2] == "cm" else 1)
                rounding = 2.6 + 0.05 * sum(int(number) for number, _ in parts)
                assert abs(sum(int(number) * float(each) for number, each in parts) - mm) <= rounding, line
                examined += 1
    assert examined > 20


def test_a_band_narrower_than_print_is_told_so() -> None:
    """28 stitches of 10 cm ÷ 42 are 6.7 cm, half a stitch either way 6.6 to 6.7: all 6.5 in print."""
    (width,) = (line for line in told("lighthouse-bookmark") if line.startswith("  width"))
    assert width.endswith("as near as that is printed")
    assert not any(re.search(r"between ([\d.]+ cm) .* and \1 ", line) for line in told("curlew-cap"))


def test_rows_of_a_collar_are_told_once() -> None:
    """What closes around a neck is as wide as it is around, and as high as it is long."""
    lines = told("gull-collar")
    collar = lines[lines.index("collar (size S)") : lines.index("collar (size M)")]
    assert [line.split()[0] for line in collar if " between " in line] == ["around", "height"]
    assert not any(" across " in line for line in collar)


def test_every_height_for_programs() -> None:
    """Five rounds of 10 mm fewer, of ten; the moon's yarn stays, the cords too."""
    found = pattern_object(demo("lantern-pouch"))
    first = found["heights"][0]
    assert [one["more"] for one in found["heights"]] == [-5, -4, -3, -2, -1, 1, 2, 3, 4, 5, 6]
    assert (first["by_mm"], first["adjustable"]) == (-50.0, [{"piece": "pouch", "rounds": "7-11"}])
    assert first["cords"] == found["cords"]
    assert first["yarn"][0]["grams"][1] < found["yarn"][0]["grams"][0]
    assert first["yarn"][1] == found["yarn"][1]
    low, high = first["size"]["height_mm"]
    assert low < 85 < high
    assert pattern_object(demo("tide-cloth"))["heights"] == []


def test_sizes_of_pieces_and_how_far_across_each_round_is_for_programs() -> None:
    """228.6 mm around are 72.8 mm across (÷ π); the moon is 2 × 13.2 mm across."""
    pouch, cord, moon = pattern_object(demo("lantern-pouch"))["pieces"]
    assert (pouch["rounds"][3]["around_mm"], pouch["rounds"][3]["across_mm"]) == (228.6, 72.8)
    assert moon["rounds"][1]["across_mm"] == pytest.approx(2 * 13.2, abs=0.15)
    low, high = moon["size"]["across_mm"]
    assert low < 26.4 < high
    assert "size" not in cord
    (cloth,) = pattern_object(demo("tide-cloth"))["pieces"]
    assert "across_mm" not in cloth["rounds"][0]


def test_how_a_height_is_measured() -> None:
    """A cap lies folded, a pouch stands, a doily has none."""
    assert sum(", along the cloth" in line for line in told("curlew-cap")) == 4
    assert not any(", along the cloth" in line for line in told("lantern-pouch"))
    (cap,) = pattern_object(demo("curlew-cap"))["pieces"]
    assert cap["height_along"] == "cloth"
    assert pattern_object(demo("lantern-pouch"))["pieces"][0]["height_along"] == "upright"
    for flat in ("sea-lavender-doily", "tide-cloth"):
        assert "height_along" not in pattern_object(demo(flat))["pieces"][0]


def test_yarn_that_a_step_told_in_words_takes_is_not_in_the_stitches() -> None:
    """The seams of the blanket take C, which is told in words; its border is a piece of its own."""
    lines = [line for line in told("harbour-square") if line.startswith(("  A  ", "  B  ", "  C  "))]
    assert ["told in words" in line for line in lines] == [False, False, True]
    assert not any("told in words" in line for line in told("lantern-pouch"))


def test_a_string_is_long() -> None:
    lines = told("purslane-garland")
    assert any(line.startswith("  length   131.5 cm") for line in lines)
    assert any(line.startswith("  width    10 mm") for line in lines)


def test_why_no_yarn_is_told() -> None:
    text = """\
title: Crown
designer: Saltmarsh Makers' Library
terms: US
licence: CC-BY-4.0
pieces:
  hat:
    title: Hat
    worked: spiral rounds
    start: magic ring
    rounds:
      - {round: 1, work: "6 sc in ring", count: 6}
      - {round: 2, work: "inc x 6, fasten off", count: 12}
"""
    measured = check(text.encode(), "crown.yml").measured
    assert measured is not None
    lines = measure_text(measured).splitlines()
    at = next(index for index, line in enumerate(lines) if line.startswith("Yarn, "))
    assert lines[at + 1] == ("  not known: the pattern gives no gauge and lists no yarn under `materials`")


def test_yarn_by_piece() -> None:
    """The cord's 2 × 96 chains are 5.1 times as long as it is, the body has the rest."""
    lines = told("lantern-pouch")
    (at,) = [at for at, line in enumerate(lines) if "of which" in line]
    assert lines[at].startswith("     of which pouch about 45 to 55 g (1½ to 1¾ oz), about ")
    assert lines[at + 1].startswith("              cord about 3 to 5 g (⅛ to ¼ oz), about ")
    assert not any("of which" in line for line in told("curlew-cap"))


def test_all_of_it_laid_out() -> None:
    lines = told("harbour-square")
    at = lines.index("All of it, laid out and joined")
    assert lines[at + 1].startswith("  width    53 cm")
    assert lines[at + 2].startswith("  length   70.5 cm")
    assert "All of it, laid out and joined" not in told("lantern-pouch")


def test_a_yarn_that_nothing_is_worked_with() -> None:
    """With a gauge it isn't for want of one."""
    pouch = POUCH.replace("  hook: 5.5", "    Z: {weight: 4}\n  hook: 5.5")
    for text, said in (
        (pouch, "none: no stitch is worked with it"),
        (_without_gauge(pouch), "without a gauge"),
    ):
        measured = checked(text).measured
        assert measured is not None
        (line,) = (line for line in measure_text(measured).splitlines() if line.startswith("  Z "))
        assert said in line


def _without_gauge(text: str) -> str:
    return re.sub(r"gauge: {.*}", "gauge: not critical", text)
