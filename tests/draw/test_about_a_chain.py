"""Ovals: the first round about a chain, and what stands on it."""

from itertools import pairwise
from math import dist

import pytest

from loopleaf.draw import diagram
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_lines import Layout
from loopleaf.draw.section import Oval
from loopleaf.draw.signs import UNIT, height_of
from loopleaf.fabric import Made
from tests.measure.worked_patterns import worked

from .pieces import marked, rounds, subject_from

BACK = "working along other side of foundation ch"
SOLE = (
    f"hdc in 2nd ch from hook and in next 5 chs, dc in next 3 chs, 7 dc in last ch, {BACK}, "
    "dc in next 3 chs, hdc in next 5 chs, 3 hdc in last ch, join",
    "ch 2 (does not count), 2 hdc in next st, hdc in next 5 sts, dc in next 3 sts, 2 dc in next 7 sts, "
    "dc in next 3 sts, hdc in next 5 sts, 2 hdc in next 3 sts, join",
)
BASE = (
    f"sc in 2nd ch from hook and in next 5 chs, 3 sc in last ch, {BACK}, sc in next 5 chs, 2 sc in last ch",
    "2 sc in next st, sc in next 5 sts, 2 sc in next 3 sts, sc in next 5 sts, 2 sc in next 2 sts",
    "sc in each st around",
)
TALL = (
    f"3 dc in 4th ch from hook (skipped chs count as dc), dc in next 6 chs, 7 dc in last ch, {BACK}, "
    "dc in next 6 chs, 3 dc in last ch, join",
    "ch 3 (counts as dc), dc in same st, 2 dc in next 3 sts, dc in next 6 sts, 2 dc in next 7 sts, "
    "dc in next 6 sts, 2 dc in next 3 sts, join",
)


def piece(lines: tuple[str, ...], start: str) -> str:
    return rounds(*lines).replace("start: magic ring", f"start: {start}")


def laid(lines: tuple[str, ...], start: str) -> Layout:
    return lay_out(subject_from(piece(lines, start)))


@pytest.mark.parametrize("start", ["chain 11", "chain 11, both sides"])
def test_a_round_that_goes_back_along_its_chain_makes_an_oval(start: str) -> None:
    """Also where only the round's own words say so."""
    ground = laid(SOLE, start).ground
    assert isinstance(ground, Oval)
    assert ground.spine == 9 * UNIT


def test_a_disc_begun_in_a_chain_is_none() -> None:
    """Nor is a tube whose chain is joined."""
    disc = laid(("6 sc in 2nd ch from hook", "2 sc in each st around"), "chain 2").ground
    tube = laid(("ch 1, sc in each ch around, join",), "chain 12, joined").ground
    assert isinstance(disc, Oval)
    assert isinstance(tube, Oval)
    assert disc.spine == tube.spine == 0


@pytest.mark.parametrize(
    ("lines", "start", "toe"),
    [(SOLE, "chain 11", range(10, 17)), (TALL, "chain 11", range(11, 18)), (BASE, "chain 8", range(7, 10))],
    ids=["sole", "tall", "single"],
)
def test_stitches_about_an_end_are_even(lines: tuple[str, ...], start: str, toe: range) -> None:
    """As far from each other, as far from the chain's end, and as tall as they are elsewhere."""
    line = laid(lines, start).lines[0]
    made = [thing for thing in line.things if isinstance(thing, Made) and thing.number in toe]
    assert len(made) == len(toe)
    steps = [dist(line.heads[id(a)], line.heads[id(b)]) for a, b in pairwise(made)]
    assert max(steps) < 1.15 * min(steps)
    assert isinstance(line.ground, Oval)
    end = (-line.ground.spine / 2, 0.0)
    outs = [dist(end, line.heads[id(one)]) for one in made]
    assert max(outs) < 1.15 * min(outs)
    for one in made:
        assert dist(line.heads[id(one)], line.feet[id(one)][0]) > 0.8 * height_of(one.kind)


@pytest.mark.parametrize("lines", [SOLE, TALL], ids=["sole", "tall"])
def test_both_sides_stand_above_their_chains(lines: tuple[str, ...]) -> None:
    line = laid(lines, "chain 11").lines[0]
    heads: dict[int, list[float]] = {}
    for thing in line.things:
        place = thing.into[0] if isinstance(thing, Made) and thing.into else None
        if isinstance(place, Made) and len(thing.into) == 1:
            heads.setdefault(place.number, []).append(line.heads[id(thing)][0])
    sides = [xs for xs in heads.values() if len(xs) == 2]
    assert len(sides) >= 6
    assert all(abs(a - b) < 0.5 for a, b in sides)


@pytest.mark.parametrize("lines", [SOLE, TALL], ids=["sole", "tall"])
def test_the_next_round_stands_close_about_the_toe(lines: tuple[str, ...]) -> None:
    """No stitch of it lies down or is drawn out: all are about as tall as their kind."""
    line = laid(lines, "chain 11").lines[1]
    for thing in line.things:
        assert isinstance(thing, Made)
        if thing.role == "stitch":
            tall = dist(line.heads[id(thing)], line.feet[id(thing)][0]) / height_of(thing.kind)
            assert 0.75 < tall < 1.35, thing.number


def test_chains_that_count_as_the_first_stitch_are_drawn_once() -> None:
    drawn = marked(diagram(worked(piece(TALL, "chain 11"))))
    chains = [
        sign for sign in drawn if sign.get("data-kind") == "ch" and sign.get("data-round") in ("0", "1")
    ]
    assert len(chains) == 8 + 3
    passed = marked(diagram(worked(piece(SOLE, "chain 11"))))
    assert (
        len([sign for sign in passed if sign.get("data-kind") == "ch" and sign.get("data-round") == "0"])
        == 11
    )
