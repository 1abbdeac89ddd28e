"""What is worked into one loop shows at its foot; what is worked low down lies over both faces of the cloth.

Which face the loops left free lie on: from first principles, as in the module; common practice, no source.
"""

import pytest

from loopleaf.draw.free_loops import Foot, draw_foot, foot_of
from loopleaf.draw.stitchwork import between, straight
from loopleaf.fabric import Made
from tests.measure.worked_patterns import worked

from .pieces import rounds, rows
from .strokes import Strokes, strokes_of

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"
SPIKED = "ch 1, *sc in next 4 sts, sc in st 2 rows below; rep from * across, turn"


@pytest.mark.parametrize(
    ("loop", "reverse", "turned", "seen"),
    [
        ("back", False, True, "ridge"),
        ("back", True, True, "groove"),
        ("front", False, True, "groove"),
        ("front", True, True, "ridge"),
        ("third", True, True, "braid"),
        ("third", False, True, "groove"),
        ("third", False, False, "braid"),
        ("", False, True, ""),
        ("", True, True, ""),
    ],
)
def test_where_the_loops_left_free_are_seen(loop: str, reverse: bool, turned: bool, seen: Foot) -> None:
    made = Made("half", (), 1, "A", number=1, loop=loop)
    assert foot_of(made, reverse, turned) == seen


@pytest.mark.parametrize(("foot", "lines"), [("ridge", 2), ("braid", 3), ("groove", 1), ("", 0)])
def test_a_ridge_has_its_shadow_and_stays_within_its_stitch(foot: Foot, lines: int) -> None:
    canvas = Strokes()
    patch = between(straight((0.0, 0.0), (5.0, 0.0)), straight((0.0, 5.0), (5.0, 5.0)))
    draw_foot(canvas, 0, foot, "#808080", 1.0, 1.35, patch)
    assert len(canvas.lines) == lines
    for _, width, points in canvas.lines:
        xs = [x for x, _ in points]
        assert min(xs) - width / 2 > -0.5
        assert max(xs) + width / 2 < 5.5


def test_ribs_in_the_back_loop_differ_from_plain_rows() -> None:
    ribs = rows(FIRST, *["ch 1, sc in BLO of each st across, turn"] * 4)
    plain = rows(FIRST, *[PLAIN] * 4)
    assert len(strokes_of(worked(ribs))) == len(strokes_of(worked(plain))) + 10 * (1 + 2 + 1 + 2)


@pytest.mark.parametrize("before", [1, 2], ids=["from the right side", "from the wrong side"])
def test_spikes_show_from_either_side(before: int) -> None:
    """The loop drawn up goes around the edge of all that it passes: two strands on each face."""
    spiked = rows(FIRST, *[PLAIN] * (before + 1), SPIKED, chain=11)
    tall = [high for high in strokes_of(worked(spiked)) if high > 7.0]
    assert len(tall) == 2 * 2, "two spikes, each with its shadow"
    assert not [high for high in strokes_of(worked(rows(FIRST, *[PLAIN] * (before + 2)))) if high > 7.0]


def test_third_loops_in_rounds_braid_the_outside() -> None:
    sock = rounds(
        "ch 2 (does not count), 10 hdc in ring, join",
        "ch 2 (does not count), hdc in 3rd loop of each st around, join",
    )
    plain = sock.replace("hdc in 3rd loop of each", "hdc in each")
    more = len(strokes_of(worked(sock))) - len(strokes_of(worked(plain)))
    assert more >= 3 * 5, "two strands and a shadow at each stitch in sight"
    assert not more % 3
