"""The level from the techniques, and its reasons in words."""

from loopleaf.measure import Use, because, reason
from loopleaf.measure.level import level_of

from .worked_patterns import measured, rounds, rows

SC_ROW = "sc in 2nd ch from hook and in each ch across, turn"


def test_without_techniques_it_is_basic():
    level = level_of([])
    assert level.level == "basic"
    assert level.because == ()


def test_the_hardest_technique_decides_and_alone_is_a_reason():
    level = level_of(
        [Use("chain-spaces", "cloth", "2"), Use("posts", "cloth", "3"), Use("shells", "cloth", "4")]
    )
    assert level.level == "intermediate"
    assert [use.technique for use in level.because] == ["posts"]
    assert len(level.uses) == 3


def test_two_involved_techniques_are_intermediate_and_three_at_once_complex():
    two = [Use("posts", "cloth", "2"), Use("clusters", "cloth", "3")]
    assert level_of(two).level == "intermediate"
    three = level_of([*two, Use("foundation", "cloth", "1")])
    assert three.level == "complex"
    assert [use.technique for use in three.because] == ["three-at-once"]


def test_three_in_different_pieces_are_not_at_once():
    apart = [Use("posts", "hat", "2"), Use("clusters", "hat", "3"), Use("foundation", "scarf", "1")]
    assert level_of(apart).level == "intermediate"


def test_only_the_first_place_is_named():
    level = level_of([Use("loops", "hat", "2"), Use("loops", "hat", "9"), Use("loops", "brim", "1")])
    assert [use.round for use in level.because] == ["2"]


def test_more_sizes_alone_raise_nothing():
    two_sizes = rows("sc in 2nd ch from hook and in each ch across, turn", chain=11).replace(
        "chain 11", "chain 11 (13)"
    )
    assert measured(two_sizes, "sizes: [S, L]\n").level.level == "basic"


LACE = rows(SC_ROW, "ch 1, sc in first st, (ch 1, sk 1 st, sc in next st) x 4, sc in last st")
TREBLE_DISC = "\n" + rounds("ch 4 (counts as tr), 15 tr in ring, join", name="disc", fields="title: Moon")
CORD = "\ncord:\n  title: Drawstring\n  yarn: A\n  worked: chain\n  length: 30 cm\n"


def test_the_sentence_names_rounds_and_other_pieces():
    more = "finishing:\n  - thread: {piece: cord, through: cloth, row: 2, under: 1, over: 1}\n"
    found = measured(LACE + TREBLE_DISC + CORD, more)
    assert because(found.level, found.pattern, "US") == (
        "easy, because chain spaces (row 2), treble crochet (Moon, round 1) and a cord (Drawstring)"
    )
    assert "double treble (Moon, round 1)" in because(found.level, found.pattern, "UK")


def test_one_reason_alone():
    found = measured(LACE)
    assert because(found.level, found.pattern, "US") == "easy, because chain spaces (row 2)"


def test_basic_needs_no_reason():
    found = measured(rows(SC_ROW))
    assert because(found.level, found.pattern, "US") == "basic"


def test_a_technique_of_the_whole_file_names_no_piece():
    found = measured(rows(SC_ROW), "finishing:\n  - stuff: Fill it.\n")
    assert reason(found.level.because[0], found.pattern, "US") == "stuffing"
