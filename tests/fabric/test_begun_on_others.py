"""Rounds of one piece that go into another's edge: what they may leave, and chains between two of them."""

import pytest

from loopleaf.review import check

HEAD = "title: Scrap\nterms: US\ngauge: not critical\npieces:\n"
CUFF = """
  cuff:
    title: Cuff
    worked: joined rounds
    start: chain 20, joined
    rounds:
      - {round: 1, work: "ch 1, sc in each ch around, join, fasten off", count: 20}
  flap:
    title: Flap
    worked: rows
    start: {edge: cuff}
    rows:
      - {row: 1, work: "join yarn in next sc, ch 1, sc in same sc, sc in next 3 sc, turn", count: COUNT}
      - {row: 2, work: "ch 1, sc in each st across, fasten off", count: 4}
"""
LEGS = """
  leg:
    title: Leg
    make: 2
    worked: spiral rounds
    start: magic ring
    rounds:
      - {round: 1, work: "6 sc in ring", count: 6}
  body:
    title: Body
    worked: spiral rounds
    start: {edge: leg}
    rounds:
      - round: 1
        work: "sc in next 6 sts of leg 1, ch 2, sc in next 6 sts of leg 2, sc in next 2 chs"
        count: 14
      - {round: 2, work: "sc in next 6 sts, sc in other side of next CHAINS chs, sc in next 8 sts", count: 16}
"""

MITTEN = """
  mitten:
    title: Mitten
    worked: joined rounds
    start: chain 24, joined
    rounds:
      - {round: 1, work: "ch 1, sc in each ch around, join", count: 24}
      - {round: 2, work: "ch 1, sc in next 9 sts, ch 6, sk 6 sts, sc in next 9 sts, join", count: 18}
      - round: 3
        work: "ch 1, sc in next 9 sts, 6 sc in ch-6 sp, sc in next 9 sts, join, fasten off"
        count: 24
  thumb:
    title: Thumb
    worked: joined rounds
    start: {edge: mitten, round: 1, stitches: unworked}
    rounds:
      - {round: 1, work: "LINE, join", count: COUNT}
"""
YOKE = """
  yoke:
    title: Yoke
    worked: joined rounds
    start: chain 72, joined
    rounds:
      - {round: 1, work: "ch 1, sc in each ch around, join", count: 72}
      - round: 2
        work: "ch 1, (sc in next 18 sc, CHAINsk next 18 sc for sleeve) twice, join, fasten off"
        count: 36
  sleeve:
    title: Sleeve
    make: 2
    worked: joined rounds
    start: {edge: yoke, round: 1, stitches: unworked}
    rounds:
      - {round: 1, work: "LINE, join", count: COUNT}
"""

SOCK = """
  leg:
    title: Leg
    worked: joined rounds
    start: chain 32, joined
    rounds:
      - {round: 1, work: "ch 1, sc in each ch around, join, fasten off", count: 32}
  heel:
    title: Heel
    worked: rows
    start: {edge: leg, round: 1}
    rows:
      - row: 1
        work: "join yarn with sl st in first st, ch 1, sc in same st, sc in next 15 sts, turn"
        count: 16
      - {rows: 2-8, work: "ch 1, sc in each st across, turn", count: 16}
  foot:
    title: Foot
    worked: joined rounds
    start: {edge: heel}
    rounds:
      - {round: 1, work: "join yarn in first st, ch 1, sc in same st, sc in next 15 sts, LINE, join"}
      - {round: 2, work: "ch 1, sc in each st around, join", count: COUNT}
"""


def errors(text: str) -> list[str]:
    checked = check((HEAD + text.lstrip("\n")).encode(), "scrap.yml")
    return [one.rule for one in checked.findings if one.severity == "error"]


@pytest.mark.parametrize(("count", "rules"), [("4", []), ("5", ["stitches-left-over"])])
def test_a_flap_begun_on_part_of_an_edge(count: str, rules: list[str]) -> None:
    """Print doesn't say that the rest is left; the count bears it out, or it is told."""
    assert errors(CUFF.replace("COUNT", count)) == rules


@pytest.mark.parametrize(("chains", "rules"), [("2", []), ("3", ["no-such-place"])])
def test_the_other_side_of_a_chain_one_round_later(chains: str, rules: list[str]) -> None:
    assert errors(LEGS.replace("CHAINS", chains)) == rules


def test_a_piece_without_a_start_that_names_a_space() -> None:
    piece = '  scrap:\n    worked: rows\n    rows:\n      - {row: 1, work: "sc in ch-2 sp, turn"}\n'
    assert "no-such-place" in errors(piece)


@pytest.mark.parametrize(
    ("line", "count", "rules"),
    [
        ("ch 1, sc in each of 6 skipped sts, sc in side, sc in each of 6 chs, sc in side", 14, []),
        (
            "ch 1, sc in each of 6 skipped sts, 2 sc in side, sc in next 6 chs, 2 sc in side of next sc",
            16,
            [],
        ),
        ("ch 1, sc in side of st, sc in each skipped st, sc in side of st, sc in each ch across", 14, []),
        ("ch 1, sc in each ch across, sc in side, sc in each skipped st, sc in side", 14, []),
        ("ch 1, sc in each of 6 skipped sts, sc in corner, sc in next 6 chs, sc in corner", 14, []),
        ("ch 1, sc in each of 6 skipped sts, sc in underside of next 6 chs", 12, []),
        ("ch 1, sc in each of 6 skipped sts, sc in remaining loops of each of 6 chs", 12, []),
        (
            "ch 1, sc in each of 6 skipped sts, working along other side of chs, sc in each of next 6 chs",
            12,
            [],
        ),
        (
            "ch 1, sc in each of 6 skipped sts, working along other side of chs, sc in each of next 5 chs",
            11,
            ["stitches-left-over"],
        ),
        (
            "ch 1, sc in each of 5 skipped sts, sc in side, sc in each of 6 chs, sc in side",
            13,
            ["stitches-left-over"],
        ),
        (
            "ch 1, sc in each of 6 skipped sts, sc in side, sc in each of 5 chs, sc in side",
            13,
            ["stitches-left-over"],
        ),
        ("ch 1, sc in each of 6 skipped sts, sc in side, sc in each of 6 chs", 13, ["stitches-left-over"]),
        (
            "ch 1, sc in each of 6 skipped sts, sc in side, sc in each of 6 chs, sc in side",
            15,
            ["count-differs"],
        ),
        ("ch 1, sc in each of 7 skipped sts, sc in each of 6 chs", 13, ["works-past-the-end"]),
    ],
)
def test_a_thumb_around_its_opening(line: str, count: int, rules: list[str]) -> None:
    """The sides of an opening are stitched into to close the gap there (common practice, no source)."""
    text = MITTEN.replace("LINE", f"join yarn at thumb opening, {line}").replace("COUNT", str(count))
    assert errors(text) == rules


@pytest.mark.parametrize(
    ("chain", "line", "count", "rules"),
    [
        ("ch 4, ", "join yarn with sl st in 3rd ch of underarm ch-4, ch 1, sc in same ch, sc in next ch, "
         "sc in each of 18 skipped sc, sc in next 2 chs", 22, []),
        ("ch 4, ", "join yarn with sl st at center of underarm, ch 1, sc in same ch and in next ch, "
         "sc in each of 18 skipped sc, sc in next 2 chs", 22, []),
        ("ch 4, ", "join yarn with sl st at center of underarm, ch 1, sc in same ch and in next 2 chs, "
         "sc in each of 18 skipped sc, sc in next ch", 22, []),
        ("ch 4, ", "join yarn at underarm, ch 1, sc in each of 4 underarm chs, "
         "sc in each of 18 skipped sc", 22, []),
        ("ch 4, ", "join yarn in first ch of underarm, ch 1, sc in next 4 chs at underarm, "
         "sc in each of 18 unworked sc", 22, []),
        ("", "join yarn with sl st in first skipped sc, ch 1, sc in each of 18 skipped sc, ch 4", 18, []),
        ("", "ch 4, sc in each of 18 skipped sc", 18, []),
        ("ch 4, ", "join yarn at underarm, ch 1, sc in each of 4 underarm chs, "
         "sc in each of 17 skipped sc", 21, ["stitches-left-over"]),
        ("ch 4, ", "join yarn with sl st in 3rd ch of underarm ch-4, ch 1, sc in same ch, sc in next ch, "
         "sc in each of 18 skipped sc, sc in next ch", 21, ["stitches-left-over"]),
        ("", "join yarn with sl st in first skipped sc, ch 1, sc in each of 17 skipped sc, ch 4", 17,
         ["stitches-left-over"]),
    ],
)  # fmt: skip
def test_a_sleeve_at_its_underarm(chain: str, line: str, count: int, rules: list[str]) -> None:
    """The chain at the underarm is the body's, worked from below, or the sleeve's own."""
    text = YOKE.replace("CHAIN", chain).replace("LINE", line).replace("COUNT", str(count))
    assert errors(text) == rules


REST = "sc in each of 16 unworked sts of leg"


@pytest.mark.parametrize(
    ("line", "count", "rules"),
    [
        (f"sc in end of each of next 8 rows, {REST}, sc in end of each of next 8 rows", 48, []),
        (f"12 sc evenly along side of heel, {REST}, 12 sc evenly along other side of heel", 56, []),
        ("sc in end of each row, sc in next 16 sts, sc in end of each row", 48, []),
        (f"sc in end of next 7 rows, {REST}, sc in end of next 8 rows", 47, ["works-past-the-end"]),
        (f"sc in end of next 8 rows, {REST}, sc in end of next 7 rows", 47, ["stitches-left-over"]),
        (f"12 sc evenly along side of heel, {REST}, 12 sc along other side of heel", 57, ["count-differs"]),
        ("sc in end of each row, sc in next 15 sts, sc in end of each row", 47, ["works-past-the-end"]),
    ],
)
def test_a_foot_around_a_heel(line: str, count: int, rules: list[str]) -> None:
    """A gusset takes up the heel's sides and the leg's stitches between (common practice, no source)."""
    assert errors(SOCK.replace("LINE", line).replace("COUNT", str(count))) == rules


TWO_LEGS = """
  leg 1:
    worked: spiral rounds
    start: magic ring
    rounds: [{round: 1, work: "9 sc in ring, fasten off", count: 9}]
  leg 2:
    worked: spiral rounds
    start: magic ring
    rounds: [{round: 1, work: "9 sc in ring", count: 9}]
  body:
    worked: spiral rounds
    start: {edge: leg 2, around: true}
    rounds: [{round: 1, work: "ch 3, WORK", count: 24}]
"""


@pytest.mark.parametrize(
    "work",
    [
        "sc in each st around leg 1, sc in each of next 3 ch, sc in each st around leg 2, "
        "sc in other side of next 3 ch",
        "9 sc around leg 1, sc in next 3 ch, 9 sc around leg 2, sc in other side of next 3 ch",
        "join with sl st to leg 1, sc in next 9 sts of leg 1, sc in next 3 ch, sc in next 9 sts of leg 2, "
        "sc in other side of next 3 ch",
        "join with sl st to leg 1, sc in each st around leg 1, sc in next 3 ch, sc in next 9 sts of leg 2, "
        "sc in other side of next 3 ch",
        "sc in first leg, sc in next 8 sts of first leg, sc in each of the 3 chs, "
        "sc in next 9 sts of 2nd leg, sc in other side of next 3 ch",
        "join to leg 1 with a sc, sc in next 8 sts of leg 1, sc in 3 ch, sc in next 9 sts of leg 2, "
        "sc in 3 ch",
    ],
)
def test_two_legs_joined_into_a_body(work: str) -> None:
    """9 + 3 + 9 + 3; common practice in print, no source."""
    assert errors(TWO_LEGS.replace("WORK", work)) == []


@pytest.mark.parametrize(
    ("work", "rule"),
    [
        (
            "8 sc around leg 1, sc in next 3 ch, 9 sc around leg 2, sc in other side of next 3 ch",
            "count-differs",
        ),
        (
            "join with sl st to leg 1, sc in next 10 sts of leg 1, sc in next 3 ch, 9 sc around leg 2, "
            "sc in other side of next 3 ch",
            "works-past-the-end",
        ),
        ("9 sc around leg 1, sc in 3 ch, 8 sc around leg 2, sc in 3 ch", "stitches-left-over"),
        ("9 sc around leg 1, sc in 3 ch, 9 sc around leg 2, sc in 2 ch", "no-such-place"),
        ("9 sc around leg 1, sc in 3 ch, 9 sc around leg 2, sc in 3 ch, sc in 3 ch", "no-such-place"),
    ],
)
def test_legs_joined_wrongly(work: str, rule: str) -> None:
    assert errors(TWO_LEGS.replace("WORK", work)) == [rule]
