"""Notes under the rounds that the measures put there: balls, and tails that nobody states."""

from loopleaf.publish.json_report import pattern_object
from loopleaf.publish.leaflet import leaflets
from loopleaf.publish.leaflet_parts import Leaflet, Terms
from loopleaf.publish.measure_report import measure_text
from loopleaf.publish.settings import Settings
from loopleaf.review import Checked, check
from tests.alter.patterns import DEMO

HEAD = """\
title: Sample
designer: Saltmarsh Makers' Library
terms: US
licence: CC-BY-4.0
materials:
  yarns:
    A: {weight: 4, name: kelp, weighed: 40 g}
  hook: 5 mm
gauge: {stitch: sc, stitches: 20, rows: 20, over: 10 cm}
turning chains: {sc: does not count}
"""

BALL = """\
pieces:
  ball:
    title: Ball
    yarn: A
    worked: spiral rounds
    start: magic ring
    rounds:
      - {round: 1, work: "6 sc in ring", count: 6}
      - {round: 2, work: "inc x 6", count: 12}
      - {rounds: 3-4, work: "(sc in next n sts, inc) x 6", n: {from: 1, step: 1}, count: {from: 18, step: 6}}
      - {rounds: 5-8, work: "sc in each st around", count: 24}
      - {rounds: 9-10, work: "(sc in next n sts, dec) x 6", n: {from: 2, step: -1}}
      - {round: 11, work: "dec x 6, fasten off", count: 6}
"""

POINTED = """\
      - {round: 3, work: "(sc in next st, inc) x 6", count: 18}
      - {round: 4, work: "(sc in next 5 sts, inc) x 3", count: 21}
      - {round: 5, work: "sc in each st around", count: 21}
      - {round: 6, work: "(sc in next 6 sts, inc) x 3", count: 24}
      - {round: 7, work: "(sc in next 6 sts, dec) x 3", count: 21}
      - {round: 8, work: "sc in each st around", count: 21}
      - {round: 9, work: "(sc in next 5 sts, dec) x 3", count: 18}
      - {round: 10, work: "(sc in next st, dec) x 6", count: 12}
      - {round: 11, work: "dec x 6, fasten off", count: 6}
"""


def _set_out(text: str, terms: Terms = "US") -> Leaflet:
    return _as_written(_checked(text), terms)


def _as_written(checked: Checked, terms: Terms = "US") -> Leaflet:
    """Without the heights on offer: here nobody looks at them, and they take most of the time."""
    return leaflets(checked, Settings(), ())[terms]


def _checked(text: str) -> Checked:
    checked = check(text.encode(), "sample.yml")
    assert not checked.has_errors, checked.findings
    return checked


def _notes(one: Leaflet) -> dict[str, str]:
    return {anchor: round.note for piece in one.pieces for round in piece.rounds for anchor in round.anchors}


# ---- balls --------------------------------------------------------------------------------------


def test_a_ball_says_so_where_it_is_widest() -> None:
    """24 stitches of 5 mm are 12 cm around, and 12 ÷ π are 3.8 cm across."""
    notes = _notes(_set_out(HEAD + BALL))
    assert notes["ball-8"] == (
        "Rounds 4–8 are the widest part of a ball, about 4 cm (1½ in) across. It draws in from round 9 on."
    )
    assert "ball" not in notes["ball-4"]
    assert "ball" not in notes["ball-9"]


def test_what_is_no_ball_says_nothing() -> None:
    bowl = HEAD + BALL[: BALL.index("      - {rounds: 9")]
    assert not any("ball" in note for note in _notes(_set_out(bowl)).values())


def test_one_widest_round() -> None:
    one = HEAD + BALL[: BALL.index("      - {rounds: 3-4")] + POINTED
    notes = _notes(_set_out(one, "UK"))
    assert notes["ball-6"] == (
        "Round 6 is the widest part of a ball, about 4 cm (1½ in) across. It draws in from round 7 on."
    )


def test_sizes_that_turn_elsewhere_are_named() -> None:
    sized = HEAD.replace("materials:", "sizes: [S, M]\nmaterials:") + BALL.replace(
        "rounds: 9-10", "rounds: 10-11"
    ).replace("round: 11", "round: 12").replace(
        "      - {rounds: 10-11",
        '      - {round: 9, sizes: [M], work: "sc in each st around"}\n      - {rounds: 10-11',
    )
    notes = _notes(_set_out(sized))
    assert notes["ball-8"].startswith(
        "In size S: rounds 4–8 are the widest part of a ball, about 4 cm (1½ in)"
    )
    assert notes["ball-9"].endswith(
        "In size M: rounds 4–9 are the widest part of a ball, about 4 cm (1½ in) across. "
        "It draws in from round 10 on."
    )


def test_a_size_that_works_a_round_alone_is_not_named_twice() -> None:
    """Round 13 says that only the largest cap has it; round 12 is the last to grow for one size of two."""
    notes = _notes(_set_out((DEMO / "curlew-cap.yml").read_text("utf-8")))
    assert notes["cap-13"].endswith("The work is now about 58.5 cm (23 in) around.")
    assert "In size" not in notes["cap-13"]
    assert notes["cap-12"].endswith("In size adult: the work is now about 53.5 cm (21 in) around.")


def test_a_demo_ball_and_its_json() -> None:
    checked = check((DEMO / "pebble-ball.yml").read_bytes(), "pebble-ball.yml")
    assert _notes(_as_written(checked))["ball-11"].endswith(
        "Rounds 8–11 are the widest part of a ball, about 5.5 cm (2¼ in) across. "
        "It draws in from round 12 on."
    )
    (ball,) = pattern_object(checked)["pieces"]
    assert ball["ball"] == {"widest": "8-11", "turns": "12", "across_mm": 57.3}


# ---- tails that nobody states -------------------------------------------------------------------

MOON = (DEMO / "lantern-pouch.yml").read_text("utf-8").replace("    tail: {times: 2.5, around: self}\n", "")


def test_a_tail_that_nobody_states_is_worked_out_and_says_so() -> None:
    """14 stitches of 10 cm ÷ 14 are 10 cm, and 2 to 3 times that is usual."""
    notes = _notes(_set_out(MOON))
    assert notes["moon-2"] == (
        "Leave a tail of about 20 to 30 cm (7 to 12 in) to sew this edge on, 2 to 3 times its length. "
        "That is worked out; the author states none."
    )
    assert "tail" not in notes["pouch-19"]
    assert "states none" not in " ".join(_notes(_set_out((DEMO / "lantern-pouch.yml").read_text())).values())


def test_of_a_patch_in_rows_what_sews_it_on_all_around() -> None:
    """14 stitches of 10 cm ÷ 14 and 10 rows of 10 mm: 10 cm by 10 cm, 40 cm around."""
    rows = [
        "worked: rows",
        "    start: chain 15",
        "    rows:",
        '      - {row: 1, work: "hdc in 2nd ch from hook and in each ch across, turn", count: 14}',
        '      - {rows: 2-9, work: "ch 1, hdc in each st across, turn", count: 14}',
        '      - {row: 10, work: "ch 1, hdc in each st across, fasten off", count: 14}\n',
    ]
    at = MOON.index("worked: spiral rounds")
    patch = MOON[:at] + "\n".join(rows) + MOON[MOON.index("\nfinishing:", at) :]
    note = _notes(_set_out(patch))["moon-10"]
    assert note.startswith("Leave a tail of about 20 to 30 cm (7 to 12 in) to sew this edge on, or of about ")
    assert "or of about 80 to 120 cm (30 to 50 in) to sew the piece on all around" in note
    *_, moon = pattern_object(check(patch.encode(), "patch.yml"))["pieces"]
    assert moon["usual_tail_around_mm"] == [800.0, 1200.0]
    measured = check(patch.encode(), "patch.yml").measured
    assert measured is not None
    assert "    sewn on all around, about 80 to 120 cm (30 to 50 in) for 40 cm (15¾ in)" in (
        measure_text(measured).splitlines()
    )


def test_of_a_short_edge_what_can_be_woven_in() -> None:
    small = MOON.replace('"7 sc in 2nd ch from hook", count: 7', '"5 sc in 2nd ch from hook", count: 5')
    small = small.replace(
        '"inc around, sl st in next st, fasten off", count: 14', '"sc in each st around, fasten off"'
    )
    assert _notes(_set_out(small))["moon-2"].startswith(
        "Leave a tail of about 15 cm (6 in), enough to sew this short edge on and weave in."
    )


def test_the_same_for_programs_and_on_the_terminal() -> None:
    checked = _checked(MOON)
    *_, moon = pattern_object(checked)["pieces"]
    assert moon["usual_tail_mm"] == [200.0, 300.0]
    assert "tail_mm" not in moon
    assert checked.measured is not None
    assert (
        "  moon: none stated, usually about 20 to 30 cm (7 to 12 in) for an edge of 10 cm (4 in)"
        in measure_text(checked.measured).splitlines()
    )


def test_no_demo_pattern_leaves_a_seam_without_its_tail() -> None:
    for file in DEMO.glob("*.yml"):
        measured = check(file.read_bytes(), file.name).measured
        assert measured is not None
        assert not any(measured.unsaid_tails), file.name
