"""Small rounds that are turned, and tight spirals: what stands at a round's start is told apart."""

import re
from itertools import combinations
from math import dist, hypot

import pytest

from loopleaf.draw import diagram
from loopleaf.draw.chart_labels import box_of, placed
from loopleaf.draw.chart_layout import lay_out
from loopleaf.draw.chart_lines import Line
from loopleaf.draw.chart_words import labels
from loopleaf.draw.crossed import uncrossed
from loopleaf.draw.signs import UNIT
from loopleaf.fabric import Made
from tests.measure.worked_patterns import worked

from .engraving import inked, overlaps
from .pieces import rounds, subject_from

SC = "ch 1, sc in each st around, join, turn"
CH_3 = "ch 3 (counts as dc), dc in next 11 sts, join, turn"
TURNED = {
    "6 sc": ("ch 1, 6 sc in ring, join, turn", "ch 1, 2 sc in each st around, join, turn", SC),
    "8 sc": ("ch 1, 8 sc in ring, join, turn", SC, SC, "ch 1, 2 sc in each st around, join, turn"),
    "10 sc": ("ch 1, 10 sc in ring, join, turn", SC, SC),
    "8 hdc": (
        "ch 1, 8 hdc in ring, join, turn",
        "ch 1, 2 hdc in each st around, join, turn",
        "ch 1, (hdc in next st, 2 hdc in next st) x 8, join, turn",
    ),
    "12 dc": ("ch 3 (counts as dc), 11 dc in ring, join, turn", CH_3, CH_3),
    "24 dc": (
        "ch 3 (counts as dc), 11 dc in ring, join, turn",
        "ch 3 (counts as dc), dc in same st, 2 dc in each st around, join, turn",
        "ch 1, sc in each st around, join",
    ),
}
EACH = pytest.mark.parametrize("lines", TURNED.values(), ids=TURNED)


def _off(line: Line, made: Made) -> float:
    """How far around its middle a stitch leans, in radians."""
    (x, y), (foot_x, foot_y) = line.heads[id(made)], line.feet[id(made)][0]
    return abs((x * foot_y - y * foot_x) / (hypot(x, y) * hypot(foot_x, foot_y)))


@EACH
def test_stitches_of_turned_rounds_stand_above_their_places(lines: tuple[str, ...]) -> None:
    """Away from the starts they are nearly upright, and nowhere do they lie down."""
    layout = lay_out(subject_from(rounds(*lines)))
    for line in layout.lines[1:]:
        assert line.backward != layout.lines[layout.lines.index(line) - 1].backward
        for thing in line.things:
            assert isinstance(thing, Made)
            if thing.kind != "single":  # a cross is drawn upright
                away = line.heads[id(thing)][0] < 0  # rounds begin at the right
                assert _off(line, thing) < (0.27 if away else 0.55)


def test_a_turned_round_is_no_crossing() -> None:
    """Its last stitch stands beside its first: all are in order about the middle. Two over two do cross."""
    layout = lay_out(subject_from(rounds(*TURNED["12 dc"])))
    places = [layout.tops[id(thing)] for thing in layout.lines[0].things]
    begun_later = [[top] for top in (*places[1:], places[0])]
    assert uncrossed(begun_later) == begun_later
    crossed = [[places[at]] for at in (2, 3, 0, 1, *range(4, 12))]
    assert uncrossed(crossed) == [[top] for top in places]


@EACH
def test_signs_of_turned_rounds_keep_apart(lines: tuple[str, ...]) -> None:
    signs = inked(diagram(worked(rounds(*lines))), "piece")
    assert not [(a, b) for share, a, b in overlaps(signs) if share > 0.45]


@EACH
def test_numbers_and_arrows_of_turned_rounds_lie_clear(lines: tuple[str, ...]) -> None:
    """Of each other and of the beginning chain, the join and all stitches; each near its round's start."""
    piece = subject_from(rounds(*lines))
    layout = lay_out(piece)
    shown = placed([*labels(piece, layout)], 7.8)
    assert len(shown) == 2 * len(lines), "a number and an arrow each"
    boxes = [box_of(one, 7.8) for one in shown]
    for (left, top, right, bottom), other in combinations(boxes, 2):
        assert right <= other[0] or other[2] <= left or bottom <= other[1] or other[3] <= top
    signs = inked(diagram(worked(rounds(*lines))), "piece")
    for one in shown:
        assert (
            min(dist(one.middle, sign.middle) for sign in signs if sign.kind in ("sl st", "ch", "sc")) > 4.6
        )
    for number, line in zip((one for one in shown if one.text), layout.lines, strict=True):
        x, y = line.before(0.0, 0.5)
        assert dist(number.middle, (x, -y)) < 3 * UNIT


def test_rounds_that_are_not_turned_have_one_arrow_outside() -> None:
    lines = [line.replace(", turn", "") for line in TURNED["10 sc"]]
    piece = subject_from(rounds(*lines))
    shown = [one for one in placed([*labels(piece, lay_out(piece))], 7.8) if not one.text]
    assert len(shown) == 1
    heads = [hypot(*head) for line in lay_out(piece).lines for head in line.heads.values()]
    assert hypot(*shown[0].middle) > max(heads)


PLAIN = "sc in each st around"
DISC = [
    "6 sc in ring", "2 sc in each st around", "(sc in next st, 2 sc in next st) x 6",
    "(sc in next 2 sts, 2 sc in next st) x 6", "(sc in next 3 sts, 2 sc in next st) x 6",
]  # fmt: skip


@pytest.mark.parametrize(
    "lines",
    [
        DISC[:3],
        [*DISC, PLAIN, PLAIN],
        ["6 sc in ring", PLAIN, PLAIN],
        [*DISC[:2], PLAIN, PLAIN, DISC[2], PLAIN, PLAIN, PLAIN, DISC[3], PLAIN, PLAIN],
        ["8 hdc in ring", "2 hdc in each st around", "(hdc in next st, 2 hdc in next st) x 8"],
        [*DISC, PLAIN, "(sc in next 3 sts, sc2tog) x 6", "(sc in next 2 sts, sc2tog) x 6"],
    ],
    ids=["eighteen", "thirty", "six", "steps", "half double", "ball"],
)
def test_every_round_of_a_tight_spiral_is_numbered(lines: list[str]) -> None:
    """In the letters that print needs, clear of the stitches."""
    drawn = diagram(worked(rounds(*lines, worked_in="spiral rounds")))
    words = re.findall(r"<text[^>]*>(\d+)</text>", drawn)
    assert sorted(words, key=int) == [str(at + 1) for at in range(len(lines))]
    piece = subject_from(rounds(*lines, worked_in="spiral rounds"))
    crosses = [sign.middle for sign in inked(drawn, "piece") if sign.kind in ("sc", "hdc")]
    numbers = [one.at for one in labels(piece, lay_out(piece)) if one.text]
    assert min(dist(number, cross) for number in numbers for cross in crosses) > 4.6
