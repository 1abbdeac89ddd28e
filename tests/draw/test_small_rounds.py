"""Small rounds with much in them: fans and clusters on few stitches, picots, a key with wide signs."""

import re
from math import dist, hypot

import pytest

from loopleaf.draw import chart_of, diagram
from loopleaf.draw.chart_labels import placed
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_words import labels
from loopleaf.draw.signs import UNIT, height_of, is_cross
from loopleaf.fabric import Made
from tests.measure.worked_patterns import worked

from .engraving import inked, overlaps
from .pieces import SVG, rounds, signs_in, subject_from, tree

SC_6, DC_12 = "ch 1, 6 sc in ring, join", "ch 3 (counts as dc), 11 dc in ring, join"
FLOWER = (SC_6, "ch 1, (sc, hdc, 2 dc, hdc, sc) in each st around, join")
CLUSTERS = ("ch 2 (does not count), (3-dc cluster in ring, ch 2) x 6, join",)
SMALL = {
    "flower": FLOWER,
    "clusters": CLUSTERS,
    "bobbles": (
        "ch 1, 8 sc in ring, join", "ch 1, 2 sc in each st around, join",
        "ch 1, (5-dc bobble in next st, sc in next st) x 8, join",
    ),
    "popcorns": (
        DC_12,
        "ch 3 (counts as dc), dc in same st, (5-dc popcorn in next st, 2 dc in next st) x 5, "
        "5-dc popcorn in next st, join",
    ),
    "ribbing": (
        "ch 3 (counts as dc), 15 dc in ring, join",
        *["ch 2 (does not count), (FPdc around next st, BPdc around next st) x 8, join"] * 2,
    ),
    "shells": (
        DC_12, "ch 3 (counts as dc), dc in same st, 2 dc in each st around, join",
        "ch 1, (sc in next st, sk next st, 5 dc in next st, sk next st) x 6, join",
    ),
    "ruffle": (
        "ch 1, 8 sc in ring, join", "ch 3 (counts as dc), 2 dc in same st, 3 dc in each st around, join",
    ),
    "hexagon": (
        "ch 3 (counts as dc), dc in ring, ch 2, (2 dc in ring, ch 2) x 5, join",
        "sl st in next dc, sl st in next ch-2 sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, "
        "*(2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * around, join",
    ),
    "many in a ring": ("ch 3 (counts as dc), 23 dc in ring, join",),
    "mandala": (
        DC_12, "ch 1, (sc in next st, ch 3) x 12, join",
        "sl st in next ch-3 sp, ch 3 (counts as dc), 2 dc in same sp, 3 dc in each ch-3 sp around, join",
        "ch 1, (sc in next st, ch 5, sk 2 sts) x 12, join",
        "sl st in next ch-5 sp, ch 1, (3 sc, ch-3 picot, 3 sc) in each ch-5 sp around, join",
    ),
}  # fmt: skip
EACH = pytest.mark.parametrize("lines", SMALL.values(), ids=SMALL)

TALLEST, IN_A_FLOWER = 1.95, 2.4
"""No stitch of these is drawn so many times as tall as its kind; six in each of six a little more."""


@EACH
def test_stitches_keep_about_their_own_height(lines: tuple[str, ...]) -> None:
    looked_at = 0
    for line in lay_out(subject_from(rounds(*lines))).lines:
        for thing in line.things:
            if isinstance(thing, Made) and not is_cross(thing.kind) and thing.role == "stitch":
                tall = dist(line.heads[id(thing)], line.feet[id(thing)][0]) / height_of(thing.kind)
                assert 0.6 < tall < (IN_A_FLOWER if lines == FLOWER else TALLEST)
                looked_at += 1
    assert looked_at >= 6


@EACH
def test_signs_of_small_rounds_hardly_lie_on_each_other(lines: tuple[str, ...]) -> None:
    pairs = overlaps(inked(diagram(worked(rounds(*lines))), "piece"))
    apart = [
        (share, one, other)
        for share, one, other in pairs
        if share > 0.6 and not (one.round == other.round == "1" and "ch" in (one.kind, other.kind))
    ]
    assert not apart, "but for a turning chain about a ring, where all feet meet"


def test_first_chains_stand_beside_a_cluster() -> None:
    """Near the ring too, where it is broad and the gap is narrow; the number beside both."""
    drawn = diagram(worked(rounds(*CLUSTERS)))
    signs = inked(drawn, "piece")
    first = [sign for sign in signs if sign.kind == "ch"][:2]
    clusters = [sign for sign in signs if sign.kind == "dc"]
    assert not overlaps([first[0], *clusters[:1]])
    assert not [share for share, _, _ in overlaps([first[1], *clusters[:1]]) if share > 0.1]
    piece = subject_from(rounds(*CLUSTERS))
    number = next(one for one in placed([*labels(piece, lay_out(piece))], 7.8) if one.text)
    assert min(dist(number.middle, sign.middle) for sign in signs) > 5.0


@pytest.mark.parametrize("first", ["ch-3 picot, ", ""], ids=["on the first stitch", "further on"])
def test_the_arrow_of_a_round_keeps_clear_of_its_picots(first: str) -> None:
    lines = (
        "ch 1, 12 sc in ring, join",
        f"ch 1, (sc in next st, {first}sc in next st, ch-3 picot) x 6, join",
    )
    piece = subject_from(rounds(*lines))
    layout = lay_out(piece)
    arrow = next(one for one in placed([*labels(piece, layout)], 7.8) if not one.text)
    heads = layout.lines[1].heads.values()
    assert hypot(*arrow.middle) > max(hypot(*head) for head in heads) + 3, "outside"
    for made in piece.worked[1].made:
        if isinstance(made, Made) and made.role == "picot":
            assert isinstance(made.previous, Made)
            x, y = layout.lines[1].heads[id(made.previous)]
            middle = (x * (1 + 5.5 / hypot(x, y)), -y * (1 + 5.5 / hypot(x, y)))
            assert dist(arrow.middle, middle) > 7.0


def test_the_key_draws_many_legs_within_a_signs_room() -> None:
    wheel = (
        "ch 3 (counts as dc), 15 dc in ring, join",
        "ch 1, (sc in next st, sk next st, 7 dc in next st, sk next st) x 4, join",
        "ch 1, (sc in next st, ch 2, dc7tog over next 7 sts, ch 2) x 4, join",
    )
    chart = chart_of(worked(rounds(*wheel)))
    assert chart is not None
    entry = next(one for one in chart.key() if one.words.startswith("dc7tog"))
    ways = re.findall(r" d=\"([^\"]+)\"", entry.svg)
    xs = [float(x) for x, _ in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", ways[0])]
    assert len(xs) > 7
    assert max(map(abs, xs)) < 10


NET = (DC_12, "ch 1, (sc in next st, ch 5) x 12, join")


@pytest.mark.parametrize("edge", [NET[1], "ch 1, *sc in next st, ch 7; rep from * around, join"])
def test_a_join_lies_beside_the_arch_that_ends_there(edge: str) -> None:
    signs = [sign for sign in inked(diagram(worked(rounds(DC_12, edge))), "piece") if sign.round == "2"]
    join = next(sign for sign in signs if sign.kind == "sl st")
    first = next(sign for sign in signs if sign.kind == "sc")
    assert dist(join.middle, first.middle) < UNIT
    pairs = [(share, {one.kind, other.kind}) for share, one, other in overlaps(signs)]
    assert not [share for share, kinds in pairs if share > 0.3 and kinds == {"ch", "sl st"}]


def test_a_net_stands_close_to_what_it_is_worked_on() -> None:
    """Its arches rise before they push its stitches away from their feet; single chains can't."""
    single = "ch 4 (counts as dc, ch 1), *dc in next st, ch 1; rep from * around, join to 3rd ch of ch-4"
    net, open_work = (lay_out(subject_from(rounds(DC_12, edge))).lines[1] for edge in (NET[1], single))
    for made in net.things:
        if isinstance(made, Made):
            assert dist(net.heads[id(made)], net.feet[id(made)][0]) < 1.5 * UNIT
    assert sorted(arch.rise / arch.wide for arch in net.arches.values())[1] > 0.5, (
        "all but the one at the start"
    )
    assert all(arch.rise < 0.25 * arch.wide for arch in open_work.arches.values())


@pytest.mark.parametrize(("many", "marked"), [(3, 6), (5, 6), (2, 12), (1, 6)])
def test_stitches_that_share_a_loop_share_its_mark(many: int, marked: int) -> None:
    """One arc lies under all that meet in it; two stand apart."""
    piece = rounds("ch 1, 6 sc in ring, join", f"{many} dc in BLO of each st around".replace("1 dc", "dc"))
    root = tree(diagram(worked(piece)))
    shapes = {str(path.get("id")): str(path.get("d")) for path in root.iter(f"{SVG}path") if path.get("id")}
    tall = [sign for sign in signs_in(root) if sign.get("data-kind") == "dc" and sign.tag == f"{SVG}use"]
    assert len(tall) == 6 * many
    arcs = [sign for sign in tall if "q3.4" in shapes[str(sign.get("href")).removeprefix("#")]]
    assert len(arcs) == marked
