"""What a pattern says once and its lines then only name: its own stitches beside the trade's, its picot."""

import pytest

from loopleaf.notation import SpecialStitch, Vocabulary, parse, parse_count, picot_of, write
from loopleaf.notation.tree import Stitch


def of_its_own(**specials: SpecialStitch) -> Vocabulary:
    return Vocabulary("US", specials)


LINKED = of_its_own(ldc=SpecialStitch("ldc", work="dc in next st"))
POPCORN = of_its_own(popcorn=SpecialStitch("popcorn", "pc", work="5-dc popcorn in same st"))


@pytest.mark.parametrize("full", [False, True])
def test_the_trade_keeps_another_name_beside_the_authors(full: bool) -> None:
    line = parse("linked dc in 4th ch from hook, ldc in each ch across", LINKED).line
    assert line is not None
    printed = write(line, "US", full, LINKED)
    assert parse(printed, LINKED).line == line
    assert printed.startswith("linked d")


def test_the_trades_words_are_the_authors_stitch() -> None:
    assert parse("5-dc popcorn in next st", POPCORN).line == parse("pc in next st", POPCORN).line
    assert parse("4-dc popcorn in next st", POPCORN).line != parse("pc in next st", POPCORN).line
    counted, _ = parse_count("4 popcorns", POPCORN)
    assert counted is not None
    assert [stitch for _, stitch in counted.entries] == [Stitch("special", name="popcorn")]


def test_its_own_definition_stays_the_trades() -> None:
    line = parse("5-dc popcorn in same st", POPCORN).line
    assert line == parse("5-dc popcorn in same st", Vocabulary("US")).line


@pytest.mark.parametrize(
    ("lines", "chains"),
    [
        (["sc in next st, ch 3, sl st in 3rd ch from hook (picot made), sc in next st"], 3),
        (["sc in next st", "picot (ch 4, sl st in 4th ch from hook), sc in next st"], 4),
        (["1dc in next st, 3ch, ss in first of these ch (first picot made)"], 3),
        (["ch 3, sl st in 3rd ch from hook (picot made)", "ch 4, sl st in 4th ch from hook (picot made)"], 0),
        (["ch 3, sl st in first ch to form a ring"], 0),
    ],
)
def test_the_picot_of_a_pattern(lines: list[str], chains: int) -> None:
    assert picot_of(lines) == chains


def test_a_picot_that_another_line_tells() -> None:
    told = Vocabulary("US", picot=3)
    assert parse("sc in next st, picot", told).line == parse("sc in next st, ch-3 picot", told).line
