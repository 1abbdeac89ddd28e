"""Stitches of rounds stand on their places and keep the heights of their kinds, however full a round is.

The bounds are our own: no source outside states them in numbers.
"""

from collections import defaultdict
from itertools import combinations, pairwise
from math import atan2, degrees, dist, hypot, tau
from statistics import mean

import pytest

from loopleaf.draw import diagram
from loopleaf.draw.arch import arch, slimmer
from loopleaf.draw.chart_ground import outward
from loopleaf.draw.chart_labels import placed
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_lines import Layout, Line
from loopleaf.draw.chart_things import place_key
from loopleaf.draw.chart_words import labels
from loopleaf.draw.section import Oval, Polygon
from loopleaf.draw.signs import CHAIN_LONG, CHAIN_THICK, MAGIC_RING, UNIT, height_of, is_cross
from loopleaf.draw.subject import Subject
from loopleaf.fabric import Made
from tests.measure.worked_patterns import worked

from .engraving import inked, overlaps
from .pieces import rounds, subject_from

DISC = ("ch 1, 6 sc in ring, join", "ch 1, 2 sc in each st around, join")
NET = (
    "ch 3 (counts as dc), 13 dc in ring, join",
    "ch 1, sc in same st, ch 3, sk next st, *sc in next st, ch 3, sk next st; rep from * around, join",
)
SCALLOPS = (*NET, "ch 1, (sc, hdc, 2 dc, hdc, sc) in each ch-3 sp around, join")
CLOSING = (DISC[0], "*(ch 2, 2 dc, ch 2, sl st) in same st, sl st in next st; rep from * around")
FULL = {
    "loops": (*DISC, "ch 1, *sc in next st, ch 11, sc in next st; rep from * around, join"),
    "long loops side by side": (*DISC, "ch 1, *sc in next st, ch 8; rep from * around, join"),
    "star": (
        "ch 4 (counts as tr), tr in ring, ch 2, *2 tr in ring, ch 2; rep from * 4 more times, join",
        "ch 1, *sc in next 2 sts, (dc, tr, ch 1, tr, dc) in next ch-2 sp; rep from * around, join",
    ),
    "scallops": SCALLOPS,
    "scallops with arches": (
        *SCALLOPS,
        "ch 1, *sc in sp between next 2 groups, ch 6; rep from * around, join",
    ),
    "fans and crosses in a net": (
        "ch 3 (counts as dc), 11 dc in ring, join",
        "ch 1, *sc in next st, ch 5; rep from * around, join",
        "sl st in next 2 chs, ch 1, sc in same sp, ch 5, *sc in next ch-5 sp, ch 5; rep from * around, join",
        "sl st in next ch-5 sp, ch 3 (counts as dc), 4 dc in same sp, sc in next ch-5 sp, "
        "*5 dc in next ch-5 sp, sc in next ch-5 sp; rep from * around, join",
    ),
}
EACH = pytest.mark.parametrize("lines", FULL.values(), ids=FULL)

AFLOAT = 0.75 * UNIT
"""A cross, which has no stem, stands no further out from its place than this."""

ASIDE = 1.3 * UNIT
"""A foot lies no further from its place, those of a whole shell in one space."""

LEAST, MOST = 0.75, 1.65
"""A stem is so long, of its kind's height, at least and at most."""


def _laid(lines: tuple[str, ...]) -> tuple[Subject, Layout]:
    found = subject_from(rounds(*lines))
    return found, lay_out(found)


def _stitches(line: Line) -> list[Made]:
    return [thing for thing in line.things if isinstance(thing, Made) and thing.role != "turning"]


def _foot(line: Line, made: Made) -> tuple[float, float]:
    if not is_cross(made.kind):
        return line.feet[id(made)][0]
    (x, y), (across, up) = line.heads[id(made)], outward(line.ground, line.heads[id(made)])
    return (x - across * UNIT, y - up * UNIT)


@EACH
def test_stitches_stand_on_their_places(lines: tuple[str, ...]) -> None:
    _, layout = _laid(lines)
    looked_at = 0
    for line in layout.lines[1:]:
        for made in _stitches(line):
            tops = [layout.tops[place_key(one)] for one in made.into if place_key(one) in layout.tops]
            if not tops:
                continue  # in a single chain of an arch
            floor = mean(top.out for top in tops)
            if is_cross(made.kind):
                assert line.outs[line.things.index(made)] - UNIT - floor <= AFLOAT
            if len(tops) == 1:
                bent = tops[0].arch
                places = [one.middle for one in bent.beads] if bent else [tops[0].point(floor)]
                assert min(dist(_foot(line, made), place) for place in places) <= ASIDE
                looked_at += 1
    assert looked_at >= 24


@EACH
def test_tall_stitches_keep_the_heights_of_their_kinds(lines: tuple[str, ...]) -> None:
    for line in _laid(lines)[1].lines[1:]:
        talls = defaultdict(list)
        for made in _stitches(line):
            if not is_cross(made.kind) and made.kind != "slip":
                talls[height_of(made.kind)].append(dist(line.heads[id(made)], line.feet[id(made)][0]))
        for height, long in talls.items():
            assert LEAST * height <= min(long) <= max(long) <= MOST * height
        means = [mean(talls[height]) for height in sorted(talls)]
        assert means == sorted(means), "a taller kind is drawn taller"


@EACH
def test_nothing_lies_on_another(lines: tuple[str, ...]) -> None:
    signs = [one for one in inked(diagram(worked(rounds(*lines))), "piece") if one.round != "1"]
    assert max((share for share, _, _ in overlaps(signs)), default=0.0) < 0.55


@pytest.mark.parametrize("name", ["loops", "long loops side by side"])
def test_a_loop_longer_than_its_base_takes_height_not_the_circle(name: str) -> None:
    line = _laid(FULL[name])[1].lines[-1]
    loops = list(line.arches.values())
    assert sum(one.rise > one.wide for one in loops) >= len(loops) - 1, "all but the one over the start"
    for one, other in combinations(loops, 2):
        beads = (dist(a.middle, b.middle) for a in one.beads for b in other.beads)
        assert min(beads) > CHAIN_THICK
    for one in loops:
        assert all(dist(a.middle, b.middle) < 1.15 * CHAIN_LONG for a, b in pairwise(one.beads))


def test_a_round_with_room_is_laid_as_it_was() -> None:
    line = _laid(NET)[1].lines[1]
    assert not line.crowded
    assert all(one.rise < one.wide for one in line.arches.values())


def test_points_between_crosses_stand_in_a_circle_and_corners_in_a_polygon() -> None:
    assert isinstance(_laid(FULL["star"])[1].lines[-1].ground, Oval)
    square = "(2 dc, ch 2, 2 dc) in next ch-2 sp"
    granny = (
        "ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join",
        f"ch 1, *sc in next 3 sts, {square}; rep from * around, join",
    )
    assert isinstance(_laid(granny)[1].lines[-1].ground, Polygon)


def test_arches_upon_scallops_pass_over_all_of_them_and_close_nothing() -> None:
    """The last one too, over the scallop before the first stitch; the round is no far side of a ball."""
    _, layout = _laid(FULL["scallops with arches"])
    assert not layout.rims
    scallops, arches = layout.lines[-2:]
    heads = [scallops.heads[id(made)] for made in _stitches(scallops) if not is_cross(made.kind)]
    beads = [bead.middle for one in arches.arches.values() for bead in one.beads]
    assert min(dist(head, bead) for head in heads for bead in beads) > CHAIN_THICK / 2


def test_slip_stitches_into_single_chains_lie_above_them() -> None:
    drawn = inked(diagram(worked(rounds(*FULL["fans and crosses in a net"]))), "piece")
    order = [one for one in drawn if one.round == "3"]
    dots = [one.middle for one in order if one.kind == "sl st"][:2]
    assert dist(*dots) > 0.6 * CHAIN_LONG
    chains = [one.middle for one in drawn if one.round == "2" and one.kind == "ch"]
    for dot in dots:
        assert CHAIN_THICK < min(dist(dot, chain) for chain in chains) + 0.2 < 1.3 * CHAIN_THICK


@pytest.mark.parametrize("lines", [CLOSING, (*CLOSING[:1], CLOSING[1] + ", fasten off")])
def test_petals_that_close_their_round_stand_upright(lines: tuple[str, ...]) -> None:
    """The slip stitch that ends in the first place again crosses nothing."""
    line = _laid(lines)[1].lines[1]
    for made in _stitches(line):
        if made.kind == "double":
            (x, y), (u, v) = line.heads[id(made)], line.feet[id(made)][0]
            assert abs((degrees(atan2(y, x) - atan2(v, u)) + 180) % 360 - 180) < 25
            assert dist((x, y), (u, v)) < 1.3 * height_of("double")


@pytest.mark.parametrize(
    ("first", "start", "larger"),
    [
        ("ch 1, 20 sc in ring, join", "magic ring", True),
        ("ch 1, 18 sc in ring, join", "chain 6, joined", True),
        ("ch 3 (counts as dc), 27 dc in ring, join", "magic ring", True),
        ("ch 1, 6 sc in ring, join", "magic ring", False),
        ("ch 3 (counts as dc), 11 dc in ring, join", "chain 6, joined", False),
    ],
)
def test_a_ring_is_as_large_as_its_stitches_need_to_stand_on_it(first: str, start: str, larger: bool) -> None:
    layout = lay_out(subject_from(rounds(first, start=start)))
    (line,) = layout.lines
    usual = 6 * CHAIN_LONG / tau if "chain" in start else MAGIC_RING - 2
    assert (layout.begin.ring > usual + 0.1) == larger
    for made in _stitches(line):
        assert hypot(*_foot(line, made)) - layout.begin.ring < 0.8 * UNIT
        assert dist(line.heads[id(made)], _foot(line, made)) < 1.2 * height_of(made.kind)


@pytest.mark.parametrize("first", ["ch 1, 8 hdc in ring, join", "ch 2, 10 hdc in ring, join"])
def test_the_number_of_a_first_round_lies_clear_of_its_chains(first: str) -> None:
    piece = subject_from(rounds(first))
    number = next(one for one in placed([*labels(piece, lay_out(piece))], 7.8) if one.text)
    signs = inked(diagram(worked(rounds(first))), "piece")
    assert min(dist(number.middle, one.middle) for one in signs if one.kind == "ch") > 5.0


def test_chains_with_straight_sides_are_as_long_and_no_wider_than_told() -> None:
    round_one = arch((0.0, 0.0), (8.0, 0.0), (0.0, 1.0), 9, CHAIN_LONG)
    slim = slimmer(round_one, 14.0, CHAIN_LONG)
    assert slim.rise > round_one.rise
    xs = [bead.middle[0] for bead in slim.beads]
    assert max(xs) - min(xs) <= 14.0 + 1e-6
    assert all(0.9 < dist(a.middle, b.middle) / CHAIN_LONG < 1.01 for a, b in pairwise(slim.beads))
    assert all(abs(hypot(*bead.along) - 1) < 1e-9 for bead in slim.beads)
    assert slimmer(round_one, 2 * round_one.radius, CHAIN_LONG) is round_one
    flat = arch((0.0, 0.0), (40.0, 0.0), (0.0, 1.0), 6, CHAIN_LONG)
    assert slimmer(flat, 5.0, CHAIN_LONG) is flat
