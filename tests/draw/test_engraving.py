"""The rules of engraving that every chart keeps: on all demo patterns and on patterns made by chance.

The rules are our own: no source outside states them in numbers.
"""

import random
import re
import time
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from itertools import pairwise
from math import dist
from statistics import mean, pstdev

import pytest
from hypothesis import given, settings

from loopleaf.draw import diagram
from loopleaf.draw.chart_ground import Fan, Straight
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_lines import Layout
from loopleaf.draw.chart_things import place_key
from loopleaf.draw.chart_unrolled import Unrolled
from loopleaf.draw.chart_words import strokes_of
from loopleaf.draw.signs import UNIT
from loopleaf.draw.strokes import STROKE
from loopleaf.draw.subject import Subject, subject_of
from loopleaf.fabric import Made, Space, work_pattern
from loopleaf.measure import measure
from loopleaf.notation import stitch_name
from loopleaf.notation.tree import Stitch
from loopleaf.pattern import load
from tests.measure.worked_patterns import HEAD, worked
from tests.quality.generated import patterns

from .engraving import inked, overlaps
from .pieces import DEMO, MAT, SVG, charted, demo, marked, rounds, rows, stitches_by_kind, subject, tree

MOST_IN_COMMON = 0.6
"""No two signs have more of the smaller one's box in common than this."""

A_QUARTER = 0.05
"""Not more of a chart's signs than this share lie on another by more than a quarter."""

PLAIN = "ch 1, sc in each st around, join"
OPENING = (
    "ch 1, sc in next 4 sts, ch 4, sk next 4 sts, sc in next 8 sts, join",
    "ch 1, sc in next 4 sts, 4 sc in ch-4 sp, sc in next 8 sts, join",
)

FOOT_TO_PLACE = 0.6 * UNIT
"""A foot lies no further from the middle of its place than this."""


def pieces(name: str) -> Iterator[Subject]:
    work, measured = demo(name)
    for piece in work.pieces:
        found = subject_of(work, piece, measured)
        if found is not None:
            yield found


@cache
def laid_out(name: str) -> list[tuple[Subject, Layout]]:
    return [(found, lay_out(found)) for found in pieces(name)]


@pytest.mark.parametrize("name", DEMO)
def test_signs_hardly_lie_on_each_other(name: str) -> None:
    looked_at = 0
    for found in pieces(name):
        signs = inked(charted(name, found.piece.name).svg(), found.piece.name)
        pairs = overlaps(signs)
        worst = max(pairs, default=(0.0, None, None), key=lambda pair: pair[0])
        assert worst[0] <= MOST_IN_COMMON, worst
        close = sum(share > 0.25 for share, _, _ in pairs)
        assert close <= max(A_QUARTER * len(signs), 2)
        looked_at += len(signs)
    assert looked_at > 20


@pytest.mark.parametrize("name", ["leaf", "small leaf"])
def test_signs_at_the_ends_of_a_leaf_have_room(name: str) -> None:
    signs = inked(charted("purslane-garland", name).svg(), name)
    crowded = [(share, one, other) for share, one, other in overlaps(signs) if share > 0.05]
    assert not [pair for pair in crowded if "ss" not in (pair[1].kind, pair[2].kind)]
    assert not [(one, other) for _, one, other in overlaps(signs) if "dc" in (one.kind, other.kind)]


def test_a_first_round_into_one_chain_stands_clear_of_both_that_are_drawn() -> None:
    signs = inked(charted("lantern-pouch", "moon").svg(), "moon")
    chains = [
        replace(sign, half=(sign.half[0] + 0.6, sign.half[1] + 0.6)) for sign in signs if sign.round == "0"
    ]
    assert len(chains) == 2
    first = [sign for sign in signs if sign.round == "1"]
    assert not [pair for chain in chains for sign in first for pair in overlaps([chain, sign])]


@pytest.mark.parametrize("name", ["leaf", "small leaf"])
def test_stitches_about_a_chain_stand_above_their_chains(name: str) -> None:
    """The chains that are worked into lie side by side; the one at the hook that is passed stands beside."""
    found = next(one for one in pieces("purslane-garland") if one.piece.name == name)
    layout = lay_out(found)
    chains = [one for one in inked(charted("purslane-garland", name).svg(), name) if one.round == "0"]
    flat = [one.middle for one in chains if one.turned == 0]
    assert len(chains) == len(flat) + 1
    for line, one in zip(layout.lines[:1], found.worked, strict=False):
        for made in one.made:
            if isinstance(made, Made) and made.number and made.kind != "single":
                place = made.into[0]
                assert isinstance(place, Made)
                assert abs(line.feet[id(made)][0][0] - flat[place.number - 2][0]) < 0.6


@pytest.mark.parametrize("name", DEMO)
def test_feet_meet_their_places(name: str) -> None:
    met = 0
    for found, layout in laid_out(name):
        for line, one in zip(layout.lines, found.worked, strict=True):
            for made in one.made:
                if not isinstance(made, Made) or id(made) not in line.feet or made.form == "tog":
                    continue
                for foot, place in zip(line.feet[id(made)], made.into, strict=False):
                    top = layout.tops.get(place_key(place))
                    if top is None or top.ground is not line.ground or top.arch is not None:
                        continue
                    if len(made.into) == 1:
                        assert dist(foot, top.point(top.out)) <= FOOT_TO_PLACE
                        met += 1
    assert met > 10


def test_feet_in_a_chain_space_stand_on_its_arch() -> None:
    ((_, layout),) = laid_out("sea-lavender-doily")
    stood = 0
    for line in layout.lines:
        for thing in line.things:
            if not isinstance(thing, Made) or len(thing.into) != 1 or not isinstance(thing.into[0], Space):
                continue
            arch = layout.tops[id(thing.into[0])].arch
            assert arch is not None
            middle = arch.at(0.0, -arch.radius)
            foot = line.feet[id(thing)][0]
            assert 1.0 < dist(foot, middle) - arch.radius < 0.5 * UNIT
            assert dist(foot, arch.at(0.0)) < arch.wide
            stood += 1
    assert stood > 200


@pytest.mark.parametrize("name", DEMO)
def test_neighbours_keep_their_distance_and_their_order(name: str) -> None:
    for _, layout in laid_out(name):
        for line in layout.lines:
            heads = [line.heads[id(thing)] for thing in line.things if isinstance(thing, Made)]
            assert all(dist(a, b) > 0.45 * UNIT for a, b in pairwise(heads))


@pytest.mark.parametrize(
    "text",
    [
        MAT,
        rounds("ch 1, 8 sc in ring, join", *["ch 1, sc in each st around, join"] * 6),
        rows("sc in 2nd ch from hook and in each ch across, turn", "ch 1, sc in each st across, turn"),
    ],
    ids=["mat", "tube", "rows"],
)
def test_plain_rounds_are_evenly_spaced(text: str) -> None:
    layout = lay_out(subject(worked(text)))
    for line in layout.lines:
        heads = [line.heads[id(thing)] for thing in line.things]
        steps = [dist(a, b) for a, b in pairwise(heads)]
        assert pstdev(steps) < 0.12 * mean(steps)


def test_taller_stitches_stand_taller_and_level_out() -> None:
    text = rows(
        "sc in 2nd ch from hook and in each ch across, turn",
        "ch 1, sc in next 3 sts, hdc in next st, tr in next 2 sts, hdc in next st, sc in next 3 sts, turn",
    )
    line = lay_out(subject(worked(text))).lines[1]
    heads = [line.heads[id(thing)][1] for thing in line.things]
    low, middle, high = heads[0], heads[3], heads[4]
    assert low < middle < high
    assert all(abs(a - b) < 0.3 for a, b in zip(heads, reversed(heads), strict=True))


def test_a_wave_waves() -> None:
    """Three in one place make a crest, three together a trough: the rows bend as the cloth does."""
    wave = (
        "ch 3 (counts as dc), dc in first st, *dc in next 5 sts, dc3tog over next 3 sts, dc in next 5 sts, "
        "3 dc in next st; rep from * to last 14 sts, dc in next 5 sts, dc3tog over next 3 sts, "
        "dc in next 5 sts, 2 dc in last st, turn"
    )
    first = "dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn"
    layout = lay_out(subject(worked(rows(first, *[wave] * 8, chain=45))))
    line = layout.lines[-1]
    high = {
        len(thing.into): line.heads[id(thing)][1]
        for thing in line.things
        if isinstance(thing, Made) and (thing.form == "tog" or thing.number in (15, 29))
    }
    assert high[1] - high[3] > 1.0 * UNIT
    widths = [abs(one.heads[id(one.things[-1])][0] - one.heads[id(one.things[0])][0]) for one in layout.lines]
    assert max(widths) < 1.15 * min(widths)


def test_a_waving_cloth_is_as_wide_at_its_beginning_as_above() -> None:
    """Its rows have as many stitches each; left alone they come to lie wider and wider for dozens of rows."""
    layout = next(layout for one, layout in laid_out("ebb-scarf") if one.piece.name == "scarf")
    wides = [max(line.xs) - min(line.xs) for line in layout.lines]
    assert max(wides) < 1.03 * min(wides)
    ends = [x for x, _ in (one.middle for one in inked(charted("ebb-scarf", "scarf").svg(), "scarf")[:44])]
    assert max(ends) - min(ends) < 1.03 * max(wides)


def test_a_cloth_with_half_fans_at_its_ends_stays_as_wide_and_level() -> None:
    """Half a fan at an end leans inwards, over the stitches passed beside it: all rows have 43."""
    ((_, layout),) = laid_out("tide-cloth")
    ends = [[line.heads[id(line.things[at])] for at in (0, -1)] for line in layout.lines]
    wides = [dist(*pair) for pair in ends]
    assert max(wides) < 1.02 * min(wides)
    heights = [line.heads[id(thing)][1] for line in layout.lines[-1:] for thing in line.things]
    third = len(heights) // 3
    parts = [sum(some) / len(some) for some in (heights[:third], heights[third:-third], heights[-third:])]
    assert max(parts) - min(parts) < 0.1 * UNIT


def test_a_fan_is_round() -> None:
    text = rows(
        "sc in 2nd ch from hook and in each ch across, turn",
        "ch 1, sc in first st, sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st",
        chain=8,
    )
    layout = lay_out(subject(worked(text)))
    fan = [thing for thing in layout.lines[1].things if isinstance(thing, Made) and thing.kind == "double"]
    heads = [layout.lines[1].heads[id(one)] for one in fan]
    assert heads[2][1] > heads[1][1] > heads[0][1]
    feet = [layout.lines[1].feet[id(one)][0] for one in fan]
    assert feet[-1][0] - feet[0][0] < UNIT


def test_an_arch_rises_above_what_it_passes_over() -> None:
    text = rounds(
        "ch 3 (counts as dc), 15 dc in ring, join",
        "ch 1, (sc in next st, sk st, 5 dc in next st, sk st) x 4, join",
        "ch 1, (sc in next st, ch 5, sk 5 sts) x 4, join",
    )
    layout = lay_out(subject(worked(text)))
    fans, arches = layout.lines[1:]
    tallest = max(dist((0.0, 0.0), head) for head in fans.heads.values())
    assert len(arches.arches) == 4
    for one in arches.arches.values():
        assert dist((0.0, 0.0), one.at(0.0)) > tallest


def test_a_straight_cloth_with_a_full_edge_is_no_arc() -> None:
    plain = ["ch 1, sc in each st across, turn"] * 5
    edge = "ch 1, sc in first st, *ch 5, sk next st, sc in next st; rep from * to last st, sc in last st"
    text = rows("sc in 2nd ch from hook and in each ch across, turn", *plain, edge, chain=17)
    assert isinstance(lay_out(subject(worked(text))).ground, Straight)
    assert isinstance(laid_out("gull-collar")[0][1].ground, Fan)


def test_the_far_side_of_a_ball_is_drawn_inwards() -> None:
    ((found, layout),) = laid_out("pebble-ball")
    ((centre, radius, at),) = layout.rims
    assert found.piece.rounds[at].plan.label == "11"
    for line in layout.lines[at + 1 :]:
        outs = [dist(centre, head) for head in line.heads.values()]
        assert max(outs) < radius
    last = [dist(centre, head) for head in layout.lines[-1].heads.values()]
    assert max(last) < 0.4 * radius
    work, measured = demo("pebble-ball")
    assert "Rounds 12 to 18 close the piece." in diagram(work, measured=measured)


@pytest.mark.parametrize(("name", "piece"), [("pebble-ball", "ball"), ("sandbank-seal", "fore flipper")])
def test_stitches_drawn_together_on_a_far_side_keep_their_form(name: str, piece: str) -> None:
    """Their head stands clear of the line between their places: a flat one looks like a part of the rim."""
    layout = next(layout for one, layout in laid_out(name) if one.piece.name == piece)
    tall: list[float] = []
    for line in layout.lines:
        for thing in line.things:
            if isinstance(thing, Made) and thing.form == "tog":
                (ax, ay), (bx, by) = line.feet[id(thing)]
                (x, y), apart = line.heads[id(thing)], dist((ax, ay), (bx, by))
                tall.append(abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / apart / apart)
                legs = sorted(dist(foot, (x, y)) for foot in line.feet[id(thing)])
                assert legs[1] < 1.45 * legs[0], "above the middle of its places"
    assert len(tall) >= 4
    assert min(tall) > 0.42


def test_the_sides_of_a_tube_are_rows_above_its_base() -> None:
    (found, layout), _ = laid_out("lantern-pouch")
    ((start, end, at),) = layout.sills
    assert found.piece.rounds[at].plan.label == "6"
    base = [y for line in layout.lines[: at + 1] for _, y in line.heads.values()]
    assert start[1] == end[1] > max(base)
    assert {type(line.ground) for line in layout.lines[at + 1 :]} == {Unrolled}
    for line in layout.lines[at + 1 : -1]:
        xs = [
            line.heads[id(made)][0]
            for made in found.worked[layout.lines.index(line)].made
            if id(made) in line.heads
        ]
        assert xs == sorted(xs, reverse=True), "worked from right to left, the right side before the maker"
        assert start[0] < min(xs) < max(xs) < end[0]
        assert max(xs) - min(xs) < 1.3 * UNIT * len(line.things)
    work, measured = demo("lantern-pouch")
    assert "Rounds 7 to 19 go up." in diagram(work, "pouch", measured=measured)


@pytest.mark.parametrize(
    ("lines", "unrolled"),
    [
        (["ch 1, 12 sc in ring, join", *["ch 1, sc in each st around, join"] * 4], True),
        (["ch 1, 12 sc in ring, join", *[PLAIN] * 4, "ch 1, (sc2tog) x 6, join"], True),
        (["ch 1, 16 sc in ring, join", PLAIN, *OPENING, *[PLAIN] * 4], True),
        (["ch 1, 12 sc in ring, join", *["ch 1, sc in each st around, join"] * 3], False),
        (["ch 1, 6 sc in ring, join", *["ch 1, 2 sc in each st around, join"] * 5], False),
        (["ch 1, 8 sc in ring, join", *["sl st in next 2 sts, sc in same st, sc in next 7 sts"] * 4], False),
    ],
    ids=["tube", "closed at last", "with an opening", "too short", "flat", "begun elsewhere each time"],
)  # fmt: skip
def test_only_what_goes_up_is_cut_open(lines: list[str], unrolled: bool) -> None:
    assert bool(lay_out(subject(worked(rounds(*lines)))).sills) is unrolled


def test_long_bands_lie_in_bends() -> None:
    work, measured = demo("purslane-garland")
    box = re.search(r'viewBox="0 0 (\S+) (\S+)"', diagram(work, "string", measured=measured))
    assert box
    assert float(box[1]) < 100 * UNIT
    assert "The rows are straight. They are drawn in bends to save room." in diagram(work, measured=measured)


@pytest.mark.parametrize(("name", "piece"), [("purslane-garland", "string"), ("ebb-scarf", "side edge")])
def test_signs_in_a_bend_keep_apart(name: str, piece: str) -> None:
    crosses = [sign for sign in inked(charted(name, piece).svg(), piece) if sign.kind != "ch"]
    assert min(dist(a.middle, b.middle) for a, b in pairwise(crosses)) > 0.8 * UNIT


def test_first_chains_that_do_not_count_do_not_touch() -> None:
    drawn = charted("curlew-cap", "cap").svg()
    chains = [sign for sign in inked(drawn, "cap") if sign.kind == "ch" and sign.round == "21"]
    assert len(chains) == 2
    assert dist(chains[0].middle, chains[1].middle) > 2 * chains[0].half[0] + 0.9


def test_a_large_chart_shows_repeats_once() -> None:
    work, measured = demo("curlew-cap")
    drawn = tree(diagram(work, measured=measured))
    light = [group for group in drawn.iter() if group.get("stroke-opacity")]
    signs = sum(1 for group in light for sign in group if sign.get("data-stitch"))
    counted = sum(one.sizes[0].count for one in work.pieces[0].rounds if one.sizes[0] is not None)
    assert signs == counted * 7 // 8
    assert "What only repeats is drawn lighter." in diagram(work, measured=measured)
    assert "opacity" not in diagram(worked(MAT))


def test_signs_alike_share_one_form_turn_and_all() -> None:
    signs = marked(charted("lantern-pouch", "pouch").svg())
    stems = [sign for sign in signs if sign.get("data-kind") == "hdc"]
    turned = Counter(str(sign.get("transform")).partition(") ")[2] for sign in stems if sign.get("transform"))
    assert len(stems) > 500
    assert max(turned.values()) < 4, "so many are turned where their form is defined"
    assert sum(turned.values()) < 0.3 * len(stems)


@pytest.mark.parametrize("name", DEMO)
def test_mirrored_twice_is_the_same(name: str) -> None:
    for found in pieces(name):
        right, left = (charted(name, found.piece.name).svg("US", hand) for hand in (False, True))
        opening = '<g transform="scale(-1 1)">'
        assert left.count(opening) == 1
        mirrored = left.partition(opening)[2]
        signs = right.partition("data-piece=")[2].partition(">")[2]
        signs = signs.partition('<g class="chart-words" font-size')[0]
        assert signs.endswith("</g>")
        assert mirrored.startswith(signs)
        assert "<text" not in mirrored.partition("<text")[0]
        assert left.count("<text") == right.count("<text")


def test_printed_strokes_are_no_thinner_than_a_hairline() -> None:
    """A quarter of a point where a sign is a millimetre wide; smaller ones couldn't be told apart anyway."""
    for name in DEMO:
        found = re.search(r'stroke-width="(\S+)"', charted(name).svg())
        assert found
        assert float(found[1]) / UNIT * 72 / 25.4 >= 0.25


def test_yarns_differ_in_stroke_as_well_as_colour() -> None:
    work, measured = demo("harbour-square")
    drawn = diagram(work, measured=measured)
    dashes = {group.get("stroke-dasharray") for group in tree(drawn).iter() if group.get("stroke")}
    assert len(dashes) == 3
    assert "A, buoy" in drawn
    assert "stroke-dasharray" not in diagram(worked(MAT))


def test_twenty_yarns_have_twenty_strokes() -> None:
    letters = "ABCDEFGHIJKLMNOPQRST"
    stripes = "".join(
        f'    - {{row: {at}, yarn: {yarn}, work: "ch 1, sc in each st across, turn"}}\n'
        for at, yarn in enumerate(f"{letters[1:]}AB", 2)
    )
    yarns = "".join(f"    {yarn}: {{weight: 4}}\n" for yarn in letters[3:])
    head = HEAD.replace("  hook: 5 mm\n", f"{yarns}  hook: 5 mm\n")
    text = rows("sc in 2nd ch from hook and in each ch across, turn") + stripes
    strokes = strokes_of(subject(worked(text, head=head)))
    assert list(strokes) == list(letters)
    assert len(set(strokes.values())) == 20
    plain = sorted(stroke.width or STROKE for stroke in strokes.values() if not stroke.dash)
    assert all(wide > 1.5 * narrow for narrow, wide in pairwise(plain)), "told from each other in black"
    for stroke in strokes.values():
        gaps = [float(part) for part in stroke.dash.split()][1::2]
        assert all(gap - (stroke.width or STROKE) > 0.4 for gap in gaps), "round ends leave a gap"
    drawn = diagram(worked(text, head=head))
    looks = {
        (g.get("stroke-dasharray"), g.get("stroke-width")) for g in tree(drawn).iter() if g.get("stroke")
    }
    assert len(looks) == 20


def test_arrows_show_the_way() -> None:
    cloth = rows("sc in 2nd ch from hook and in each ch across, turn", "ch 1, sc in each st across")
    drawn = diagram(worked(cloth))
    assert _arrows(drawn) in ([180, 0], [-180, 0])
    assert len(_arrows(diagram(worked(MAT)))) == 1


def _arrows(drawn: str) -> list[int]:
    """The turns of a chart's arrows, in degrees."""
    root = tree(drawn)
    turns = {
        str(form.get("id")): int(found[1]) if (found := re.search(r"rotate\((-?\d+)\)", way)) else 0
        for form in root.iter(f"{SVG}path")
        if form.get("id") and (way := str(form.get("transform")))
    }
    groups = [group for group in root.iter(f"{SVG}g") if group.get("class") == "chart-words"]
    return [turns[str(use.get("href"))[1:]] for group in groups for use in group.iter(f"{SVG}use")]


def _solid_square(rounds_: int) -> str:
    """All double crochet, with two chains in each corner: 12 stitches, and 16 more a round."""
    corner = "(2 dc, ch 2, 2 dc) in next ch-2 sp"
    lines = ["ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) x 3, join"]
    for at in range(1, rounds_):
        side, ahead = 4 * at - 1, 2 * at
        behind = f"dc in next {side - ahead - 1} sts, " if at > 1 else ""
        lines.append(
            f"ch 3 (counts as dc), dc in next {ahead} sts, *{corner}, dc in next {side} sts; rep from * 2 "
            f"more times, {corner}, {behind}join"
        )
    return rounds(*lines)


@pytest.mark.parametrize(
    "text",
    [
        rows(
            "dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn",
            *["ch 3 (counts as dc), dc in next 49 sts, turn"] * 39,
            chain=52,
        ),
        rows(
            "sc in 2nd ch from hook and in each ch across, turn",
            *["ch 1, sc in each st across, turn"] * 37,
            "ch 1, sc in each st across",
            "ch 1, sc in each row end, turn",
            "ch 1, sc in each st across, turn",
            chain=51,
        ),
        _solid_square(16),
    ],
    ids=["rows", "rows with a side", "solid square"],
)
def test_two_thousand_stitches_take_two_seconds_at_most(text: str) -> None:
    work = worked(text)
    assert not [trouble for one in work.pieces[0].rounds for trouble in one.troubles]
    measured = measure(work)
    start = time.process_time()
    drawn = diagram(work, measured=measured)
    assert time.process_time() - start < 2.0
    labels = [one.plan.label for one in work.pieces[0].rounds]
    assert sum(sum(stitches_by_kind(marked(drawn), label).values()) for label in labels) >= 2000


@settings(max_examples=40, deadline=None, derandomize=True)
@given(patterns())
def test_charts_of_patterns_made_by_chance(text: bytes) -> None:
    work = work_pattern(load(text, "chance.yml"))
    drawn = diagram(work)
    assert diagram(work) == drawn
    for piece in work.pieces:
        for one in piece.rounds:
            worked_round = one.sizes[0]
            if worked_round is None:
                continue
            counted = Counter(
                {
                    stitch_name(Stitch(kind), work.pattern.terms): number
                    for kind, number in worked_round.makes.items()
                    if isinstance(kind, str) and kind != "picot"
                }
            )
            assert stitches_by_kind(marked(drawn, piece.name), one.plan.label) == counted
            picots = [s for s in marked(drawn, piece.name) if s.get("data-kind") == "picot"]
            assert sum(s.get("data-round") == one.plan.label for s in picots) == worked_round.makes.get(
                "picot", 0
            )
    crossed = b"skipped st" in text  # these are meant to lie on each other
    for found_piece in work.pieces if not crossed else []:
        made = [len(one.sizes[0].made) for one in found_piece.rounds if one.sizes[0] is not None]
        if any(after > 2 * one for one, after in pairwise(made)):  # no flat cloth grows so fast
            continue
        signs = inked(drawn, found_piece.name)
        pairs = overlaps(signs)
        assert sum(share > 0.5 for share, _, _ in pairs) <= 0.1 * len(signs) + 5


def test_the_order_of_the_file_is_the_order_of_the_drawing() -> None:
    """The same whatever was drawn before: nothing is kept between drawings."""
    names = ["curlew-cap", "pebble-ball", "purslane-garland"]
    first = {name: diagram(demo(name)[0], measured=demo(name)[1]) for name in names}
    random.Random(3).shuffle(names)
    assert {name: diagram(demo(name)[0], measured=demo(name)[1]) for name in names} == first
