"""The signs. What they look like is common practice, no source (signs are not standardised): a chain an oval,
a slip stitch a dot, single crochet an x, then a T with a bar for each yarn over from the double on.
"""

import re

import pytest

from loopleaf import trade
from loopleaf.draw.signs import CHAIN, UNIT, Sign, head, height_of, is_cross, lines, longer, stem

KINDS = [row.key for row in trade.stitches() if row.key != "chain"]


def bars(kind: str) -> int:
    return lines(Sign(kind)).count("l4.8 -2.2")


@pytest.mark.parametrize(
    ("kind", "number"), [("half", 0), ("double", 1), ("treble", 2), ("double-treble", 3)]
)
def test_a_bar_for_each_yarn_over(kind: str, number: int) -> None:
    assert bars(kind) == number


def test_a_taller_stitch_has_a_taller_sign() -> None:
    order = (
        "slip",
        "single",
        "half",
        "double",
        "treble",
        "double-treble",
        "triple-treble",
        "quadruple-treble",
    )
    heights = [height_of(kind) for kind in order]
    assert heights == sorted(set(heights))
    assert height_of("single") == UNIT


def test_a_single_is_a_cross_without_a_stem() -> None:
    assert is_cross("single")
    assert is_cross("extended-single")
    assert not is_cross("double")
    assert head("single") == ""
    assert lines(Sign("single")).count("L") == 2


@pytest.mark.parametrize("kind", KINDS)
def test_every_stitch_of_the_tables_has_a_sign_of_its_own(kind: str) -> None:
    assert lines(Sign(kind)).startswith("M")
    assert [other for other in KINDS if lines(Sign(other)) == lines(Sign(kind))] == [kind]
    assert stem(kind) != CHAIN


def test_an_authors_own_stitch_that_nothing_is_known_of() -> None:
    assert lines(Sign("wave")) == lines(Sign("anything"))
    assert "z" in lines(Sign("wave"))


@pytest.mark.parametrize("form", ["bobble", "cluster", "popcorn", "tog"])
def test_gathered_stitches_have_their_stems_and_bars(form: str) -> None:
    sign = lines(Sign("double", form, 5))
    assert sign.count("Q") == 5
    assert sign.count("l2.4 -1.2") == 5
    assert ("a3.4" in sign) == (form == "popcorn")


def test_stems_gathered_in_one_place_have_a_bar_for_each_yarn_over() -> None:
    bars = {kind: lines(Sign(kind, "cluster", 3)).count("l2.4 -1.2") for kind in ("half", "double", "treble")}
    assert bars == {"half": 0, "double": 3, "treble": 6}


def test_a_puff_has_no_bars() -> None:
    assert "l2.4" not in lines(Sign("half", "puff", 3))


def test_posts_and_loops_show_where_the_hook_goes() -> None:
    plain = lines(Sign("double"))
    found = {lines(Sign("double", post=post)) for post in ("front", "back", "around")}
    found |= {lines(Sign("double", loop=loop)) for loop in ("front", "back", "third")}
    assert len(found) == 6
    assert all(sign.startswith(plain) for sign in found)


@pytest.mark.parametrize("sign", [Sign("double"), Sign("treble", post="front"), Sign("double", "cluster", 3)])
def test_a_longer_sign_keeps_its_bars(sign: Sign) -> None:
    """It reaches so much further up, what is drawn across its stem is no thicker and no steeper."""
    way, twice = lines(sign), longer(lines(sign), 2.0)
    across = re.compile(r"[hlamc][^A-Z]*")
    assert across.findall(twice) == across.findall(way)
    top, higher = (float(re.findall(r"M-[\d.]+ (-[\d.]+)h", one)[-1]) for one in (way, twice))
    assert higher == pytest.approx(2 * top, abs=0.1)
