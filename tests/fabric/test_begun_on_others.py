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
        "sc in first leg, sc in next 8 sts of first leg, sc in each of the 3 chs, sc in next 9 sts of 2nd leg, "
        "sc in other side of next 3 ch",
        "join to leg 1 with a sc, sc in next 8 sts of leg 1, sc in 3 ch, sc in next 9 sts of leg 2, sc in 3 ch",
    ],
)
def test_two_legs_joined_into_a_body(work: str) -> None:
    """9 + 3 + 9 + 3; common practice in print, no source."""
    assert errors(TWO_LEGS.replace("WORK", work)) == []


@pytest.mark.parametrize(
    ("work", "rule"),
    [
        ("8 sc around leg 1, sc in next 3 ch, 9 sc around leg 2, sc in other side of next 3 ch", "count-differs"),
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
