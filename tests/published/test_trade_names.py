"""Names of stitches against what print says of them.

Sources: "Handbook of Wool Knitting and Crochet" (Needlecraft, Augusta 1918) for the turning chains;
the names themselves are common practice (public tables of US and UK names agree on the first seven rows).
"""

import pytest

from loopleaf import trade


@pytest.mark.parametrize(
    ("key", "us", "uk"),
    [
        ("chain", "ch", "ch"),
        ("slip", "sl st", "ss"),
        ("single", "sc", "dc"),
        ("half", "hdc", "htr"),
        ("double", "dc", "tr"),
        ("treble", "tr", "dtr"),
        ("double-treble", "dtr", "trtr"),
    ],
)
def test_short_names(key: str, us: str, uk: str) -> None:
    """Common practice: public tables of US and UK names."""
    row = trade.stitch(key)
    assert (row.us.short, row.uk.short) == (us, uk)


@pytest.mark.parametrize(
    ("uk_name", "chains"),
    [("double crochet", 1), ("half treble", 2), ("treble", 3), ("double treble", 4), ("triple treble", 5)],
)
def test_turning_chains_of_the_1918_handbook(uk_name: str, chains: int) -> None:
    """Handbook of Wool Knitting and Crochet, 1918, which names stitches in the British way."""
    (row,) = [row for row in trade.stitches() if row.uk.name == uk_name]
    assert row.turning_chain == chains


def test_one_more_chain_for_each_further_draw() -> None:
    """Handbook of Wool Knitting and Crochet, 1918: "one more for each draw"."""
    tall = ["double", "treble", "double-treble", "triple-treble", "quadruple-treble"]
    rows = [trade.stitch(key) for key in tall]
    assert [row.turning_chain for row in rows] == [3, 4, 5, 6, 7]
    assert [row.yarn_overs for row in rows] == [1, 2, 3, 4, 5]


def test_the_same_letters_for_different_stitches() -> None:
    """Common practice: dc, tr, dtr, trtr and fdc exist on both sides and differ."""
    us = {row.us.short: row.key for row in trade.stitches()}
    uk = {row.uk.short: row.key for row in trade.stitches()}
    assert {short for short in us.keys() & uk.keys() if us[short] != uk[short]} >= {
        "dc",
        "tr",
        "dtr",
        "trtr",
        "fdc",
        "edc",
    }


def test_names_of_one_side_only() -> None:
    """Common practice: sc and hdc are said in the US only, htr in the UK only."""
    us = {name for row in trade.stitches() for name in (row.us.short, *row.us.alternatives)}
    uk = {name for row in trade.stitches() for name in (row.uk.short, *row.uk.alternatives)}
    assert {"sc", "hdc"} <= us - uk
    assert "htr" in uk - us


def test_measured_yarn_lies_in_the_ranges() -> None:
    """One hobbyist's sample (worsted, 5 mm hook): yarn per length of chain and of rows, both in inches."""
    for key, measured in {"chain": 5.1, "single": 10.6, "half": 15.7, "double": 20.4}.items():
        low, high = trade.stitch(key).yarn or (0, 0)
        assert low <= measured <= high


def test_heights_of_a_printed_rule_of_thumb() -> None:
    """A rule page on the web gives 1, 1.5, 2 for the height of sc, hdc, dc over their width."""
    for key, ratio in {"single": 1, "half": 1.5, "double": 2}.items():
        low, high = trade.stitch(key).height or (0, 0)
        assert low <= ratio <= high
