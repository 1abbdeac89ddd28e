"""Chains worked back on inside a round or row stand out from it in the picture: leaves, points and fringe."""

from math import dist, hypot
from xml.etree import ElementTree

import pytest

from loopleaf.draw import diagram, first_picture
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_words import labels
from loopleaf.draw.signs import CHAIN_LONG, CHAIN_THICK, UNIT
from loopleaf.draw.stand import lies
from loopleaf.draw.worked_back import leaves_of
from tests.measure.worked_patterns import HEAD, rounds, rows, worked

from .engraving import inked, overlaps
from .pieces import subject, tree

LEAF = "ch 6, sc in 2nd ch from hook, hdc in next ch, dc in next 2 chs, hdc in next ch"
RING = "ch 1, 6 sc in ring, join"
CROSS = 6.4
"""How high a cross is, in tenths of a stitch."""

PLAIN = "ch 1, sc in each st around, join"
TUBE = ("ch 1, sc in each ch around, join", PLAIN, PLAIN, PLAIN)


def box(drawn: ElementTree.Element) -> tuple[float, float]:
    """Width and height of a picture in mm."""
    wide, high = (float(n) for n in str(drawn.get("viewBox")).split()[2:])
    return wide, high


def test_six_leaves_on_a_ring_lie_around_it() -> None:
    flower = worked(rounds(RING, f"ch 1, *sc in next st, {LEAF}; rep from * around, join, fasten off"))
    assert lies(subject(flower))
    wide, high = box(tree(first_picture(flower)))
    # Two rounds of 5 mm and a chain of six, each about 4 mm, to either side.
    assert 55 < wide < 80
    assert wide == pytest.approx(high, rel=0.2)


def test_each_leaf_has_its_stitches_from_the_tip_down() -> None:
    flower = subject(worked(rounds(RING, f"ch 1, *sc in next st, {LEAF}; rep from * around, join")))
    leaves = [*leaves_of(flower.worked[1])]
    assert len(leaves) == 6
    assert [[made.kind for made in leaf.stitches] for leaf in leaves] == [
        ["single", "half", "double", "double", "half"]
    ] * 6
    assert [leaf.on.number for leaf in leaves] == [1, 2, 3, 4, 5, 6]


def test_arches_are_no_leaves() -> None:
    net = worked(rounds(RING, "ch 1, *sc in next st, ch 6; rep from * around, join"))
    assert not [*leaves_of(subject(net).worked[1])]


def test_a_tube_with_points_at_its_rim_stands_with_its_points_up() -> None:
    point = "ch 4, sl st in 2nd ch from hook, sc in next ch, hdc in next ch"
    plain = worked(rounds(*TUBE, PLAIN, start="chain 24, joined"))
    crown = worked(
        rounds(*TUBE, f"ch 1, *sc in next 4 sts, {point}; rep from * around, join", start="chain 24, joined")
    )
    assert not lies(subject(crown))
    (wide, high), (_, bare) = box(tree(first_picture(crown))), box(tree(first_picture(plain)))
    assert 6 < high - bare < 16
    assert wide < high + 30


def test_fringe_hangs_out_from_the_last_row() -> None:
    """As long as its ten chains less the one that turns, each about three quarters of a stitch wide."""
    first = "sc in 2nd ch from hook and in each ch across, turn"
    plain = worked(rows(first, "ch 1, sc in each st across, turn"))
    fringed = worked(
        rows(
            first,
            "ch 1, *sc in next st, ch 10, sl st in 2nd ch from hook and in each ch across; rep from * across",
        )
    )
    (_, high), (_, bare) = box(tree(first_picture(fringed))), box(tree(first_picture(plain)))
    assert high - bare == pytest.approx(38, abs=6)


def test_a_leaf_is_in_its_own_yarn() -> None:
    leafy = f"ch 1, *sc in next st, {LEAF}; rep from * around, join"
    pieces = rounds(RING, leafy).replace("round: 2,", "round: 2, yarn: B,")
    two = HEAD.replace("B: {", "B: {colour: '#2a6b3c', ")
    assert "#2a6b3c" in first_picture(worked(pieces, head=two))
    assert "#2a6b3c" not in first_picture(worked(rounds(RING, leafy), head=two))


def test_a_cross_stands_on_its_chain_in_the_chart_and_not_apart_from_it() -> None:
    """Its ink begins close to the chain's edge, as that of taller signs does, and doesn't touch it."""
    flower = worked(rounds(RING, f"ch 1, *sc in next st, {LEAF}; rep from * around, join"))
    drawn = [one for one in inked(diagram(flower), "disc") if one.round == "2"]
    crosses = [at for at, one in enumerate(drawn) if one.kind == "sc" and drawn[at - 1].kind == "ch"]
    crosses = [at for at in crosses if [one.kind for one in drawn[at + 1 : at + 3]] == ["hdc", "dc"]]
    assert len(crosses) == 6
    for at in crosses:
        under, cross = drawn[at - 2], drawn[at].middle  # the second chain from the hook
        apart = hypot(under.middle[0] - cross[0], under.middle[1] - cross[1])
        assert 0.1 < apart - CHAIN_THICK / 2 - CROSS / 2 < 1.5


@pytest.mark.parametrize(("made", "clear"), [(LEAF, True), ("ch 6", False)])
def test_the_arrow_of_a_last_round_lies_beside_a_leaf_on_its_first_stitch(made: str, clear: bool) -> None:
    """Outside of that stitch where nothing stands; not on the chain that rises from it."""
    round = subject(worked(rounds(RING, f"ch 1, *sc in next st, {made}; rep from * around, join")))
    layout = lay_out(round)
    *_, arrow = labels(round, layout)
    first = layout.lines[-1].heads[id(layout.lines[-1].things[0])]
    assert (hypot(arrow.at[0] - first[0], -arrow.at[1] - first[1]) > 1.2 * CHAIN_LONG) == clear


@pytest.mark.parametrize(
    ("last", "closes"),
    [
        (f"ch 1, *sl st in next st, {LEAF}, sk next 3 sts; rep from * around, join", False),
        ("ch 1, sc4tog x 6", True),
    ],
    ids=["leaves on every fourth stitch", "drawn together"],
)
def test_a_round_of_leaves_closes_nothing(last: str, closes: bool) -> None:
    """Both go from 24 stitches to 6; leaves stand around a disc, which stays open."""
    disc = (
        "ch 1, 6 sc in ring, join",
        "ch 1, 2 sc in each st around, join",
        "ch 1, 2 sc in each st around, join",
    )
    layout = lay_out(subject(worked(rounds(*disc, "ch 1, sc in each st around, join", last))))
    assert bool(layout.rims) is closes


SMALL_LEAF = "ch 5, sl st in 2nd ch from hook, sc in next ch, hdc in next ch, dc in next ch"
TALL_LEAF = f"{LEAF.replace('ch 6', 'ch 7').replace('dc in next 2 chs', 'dc in next ch, tr in next 2 chs')}"


@pytest.mark.parametrize(
    "lines",
    [
        ("ch 1, 8 sc in ring, join", f"*{LEAF}, sl st in next 2 sts; rep from * around"),
        (RING, f"*{SMALL_LEAF}, sc in next st; rep from * around, join"),
        (f"{RING}, turn", f"*{SMALL_LEAF}, sc in next st; rep from * around, join"),
        ("ch 1, 7 sc in ring, join", f"*{TALL_LEAF}, sl st in next st; rep from * around"),
        (RING, f"ch 1, *sc in next st, {SMALL_LEAF}; rep from * around, join"),
    ],
    ids=["every second stitch", "before each stitch", "turned", "tall", "after each stitch"],
)
def test_a_leaf_has_room_beside_the_next(lines: tuple[str, str]) -> None:
    """That before the first stitch too: it stands in the gap at the round's start, as wide as it needs."""
    flower = worked(rounds(*lines))
    signs = [one for one in inked(diagram(flower), "disc") if one.round == "2"]
    assert len(signs) > 30
    assert not [pair for pair in overlaps(signs) if pair[0] > 0.1]
    layout = lay_out(subject(flower))
    first, second = layout.lines
    risen = [dist((0.0, 0.0), head) for head in second.heads.values()]
    assert max(risen) < 1.8 * max(dist((0.0, 0.0), head) for head in first.heads.values()) + UNIT


def test_a_round_whose_leaves_lie_far_apart_is_no_wider_for_them() -> None:
    ring = "ch 1, 12 sc in ring, join"
    bare, leafy = (
        lay_out(subject(worked(rounds(ring, f"ch 1, *sc in next 4 sts{more}; rep from * around, join"))))
        for more in ("", f", {SMALL_LEAF}")
    )
    assert leafy.lines[1].level == pytest.approx(bare.lines[1].level)


@pytest.mark.parametrize(("turn", "side"), [("", 1), (", turn", -1)])
def test_a_leafs_stitches_lie_on_the_side_that_the_work_goes_to(turn: str, side: int) -> None:
    """A round that is turned goes the other way round, and so do the leaves on it."""
    flower = worked(rounds(f"{RING}{turn}", f"ch 1, *sc in next st, {SMALL_LEAF}; rep from * around, join"))
    signs = [one for one in inked(diagram(flower), "disc") if one.round == "2"]
    tall = [at for at, one in enumerate(signs) if one.kind == "dc"]
    assert len(tall) == 6
    for at in tall:
        (x, y), (chain_x, chain_y) = signs[at].middle, signs[at - 6].middle
        assert signs[at - 6].kind == "ch"
        assert side * (y * chain_x - x * chain_y) < 0, "y runs down"


LEDGE = ("sc in 2nd ch from hook and in each ch across, turn", "ch 1, sc in each st across, turn")


@pytest.mark.parametrize(
    ("before", "after"),
    [((LEDGE[0],), ()), (LEDGE, ()), ((LEDGE[0],), ("ch 1, sc in next 10 sts, turn",))],
)
def test_a_leaf_that_ends_a_row_goes_on_in_line_with_it(
    before: tuple[str, ...], after: tuple[str, ...]
) -> None:
    """It makes the cloth wider by its chain and hardly higher; at the row's end, on the side worked to."""
    leaf = f"ch 1, sc in each st across, {LEAF}, turn"
    plain = first_picture(worked(rows(*before, LEDGE[1], *after)))
    wide, high = box(tree(first_picture(worked(rows(*before, leaf, *after)))))
    was_wide, was_high = box(tree(plain))
    assert wide - was_wide > 4 * 5.0 * CHAIN_LONG / 10
    assert high - was_high < 3 * 5.0


def test_leaves_along_a_row_stand_out_from_it() -> None:
    wide, high = box(
        tree(first_picture(worked(rows(LEDGE[0], f"ch 1, (sc in next 5 sts, {LEAF}) x 2, turn"))))
    )
    was_wide, was_high = box(tree(first_picture(worked(rows(*LEDGE)))))
    assert wide == pytest.approx(was_wide, abs=5.0)
    assert high - was_high > 15


@pytest.mark.parametrize(("chain", "bent"), [(40, False), (100, True)])
def test_leaves_make_a_row_no_longer(chain: int, bent: bool) -> None:
    """A row is said to be drawn in bends only where it is: leaves stand out from it."""
    leaf = "ch 5, sc in 2nd ch from hook, hdc in next ch, dc in next 2 chs"
    garland = worked(
        rows(
            f"sc in 2nd ch from hook, sc in next 3 chs, *{leaf}, sc in next 5 sts; rep from * across",
            chain=chain,
        )
    )
    line = lay_out(subject(garland)).lines[0]
    ups = [y for _, y in line.heads.values()]
    assert (max(ups) - min(ups) > 2 * UNIT) == bent
    assert ("drawn in bends" in diagram(garland)) == bent
