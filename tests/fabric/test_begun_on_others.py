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
