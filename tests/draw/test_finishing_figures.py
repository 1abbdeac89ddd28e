"""Threading and placing: over and under as the step says, each part at its stitches."""

import re
from math import atan2, hypot

import pytest

from loopleaf.draw import Figure, placing, threading
from loopleaf.draw.stand import middle_of, stand_of
from loopleaf.draw.threading import RADIUS, under
from loopleaf.pattern import Thread
from tests.measure.worked_patterns import worked

from .pieces import SVG, demo, subject, tree

CORD = {"piece": "cord", "through": "pouch", "round": 17}


def thread(**parts: object) -> Thread:
    return Thread.model_validate({**CORD, **parts})


def figure_of(step: Thread, left_handed: bool = False) -> Figure:
    found = threading(demo("lantern-pouch")[0], step, left_handed)
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("under_", "over", "start", "passed"),
    [(1, 1, 1, "uouo"), (2, 1, 1, "uuou"), (1, 2, 1, "uoou"), (1, 1, 2, "ouou"), (2, 2, 3, "oouu")],
)
def test_a_cord_goes_under_first_and_then_over(under_: int, over: int, start: int, passed: str) -> None:
    step = thread(under=under_, over=over)
    assert "".join("u" if under(step, start, post) else "o" for post in range(1, 5)) == passed


def test_both_cords_begin_where_the_step_says() -> None:
    figure = figure_of(thread(**{"from": [1, 13]}))
    assert figure.alt.startswith(
        "The 24 stitches of round 17. Cord 1 begins before stitch 1, goes under 1, over 2"
    )
    assert "Cord 2 begins before stitch 13, goes under 13, over 14" in figure.alt
    said = [text.text for text in tree(figure.svg).iter(f"{SVG}text")]
    assert {"cord 1", "cord 2", "from above"} <= {*said}


def test_the_cord_lies_outside_the_posts_that_it_passes_over() -> None:
    """In the figure from above, at each post's own angle."""
    figure = figure_of(thread())
    paths = [p for p in tree(figure.svg).iter(f"{SVG}path") if p.get("class") == "draw-second"]
    assert len(paths) == 1
    points = [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) (-?[\d.]+)", paths[0].get("d", ""))][
        1:-1
    ]
    outs = [hypot(*point) - RADIUS for point in points]
    at_posts = outs[3::6]
    assert len(at_posts) == 24
    assert all(out < -1 for out in at_posts[0::2]), "under the odd posts: inside"
    assert all(out > 1 for out in at_posts[1::2]), "over the even ones: outside"


def test_from_the_front_the_round_goes_to_the_left_for_a_right_hander() -> None:
    def xs(figure: Figure) -> list[float]:
        found = {t.text: t for t in tree(figure.svg).iter(f"{SVG}text") if t.get("font-size") == "3.8"}
        return [float(found[str(number)].get("x", 0)) for number in range(1, 9)]

    right, left = xs(figure_of(thread())), xs(figure_of(thread(), left_handed=True))
    assert right == sorted(right, reverse=True)
    assert left == [-x for x in right]


def test_a_round_that_is_not_there_has_no_figure() -> None:
    assert threading(demo("lantern-pouch")[0], thread(round=30)) is None


def test_a_part_lies_at_its_round_and_stitches() -> None:
    work, measured = demo("lantern-pouch")
    figure = placing(work, "pouch", measured)
    assert figure is not None
    assert figure.alt == "The front of the pouch, with the moon over stitches 11–14 of round 11."
    parts = [p for p in tree(figure.svg).iter(f"{SVG}path") if "fill-tint" in (p.get("class") or "")]
    assert len(parts) == 1
    xs = [float(x) for x, _ in re.findall(r"(-?[\d.]+) (-?[\d.]+)", parts[0].get("d", ""))]
    assert abs(max(xs) + min(xs)) < 0.1, "its middle faces the reader"


def test_parts_at_both_sides_have_their_outlines() -> None:
    """Sides are hardly ever quite opposite each other: one is a little in front, and one a little behind."""
    figure = placing(demo("sandbank-seal")[0], "body")
    assert figure is not None
    closed = re.findall(
        r'<path[^>]*d="[^"]*Z"[^>]*stroke-dasharray|<path[^>]*stroke-dasharray[^>]*Z"', figure.svg
    )
    assert len(closed) == 3, "the head and both hind flippers"


def test_every_place_of_a_part_in_rows_is_drawn() -> None:
    work, measured = demo("purslane-garland")
    figure = placing(work, "string", measured)
    assert figure is not None
    assert figure.svg.count("fill-tint") - figure.svg.count(".fill-tint") == 12 + 11


def test_labels_stand_in_the_order_of_what_they_lead_to() -> None:
    """The seal's fore flippers are sewn above its head, which is named first: their leaders don't cross."""
    work, measured = demo("sandbank-seal")
    figure = placing(work, "body", measured)
    assert figure is not None
    texts = [text for text in tree(figure.svg).iter(f"{SVG}text") if text.get("text-anchor") == "start"]
    tall = {text.text: float(text.get("y", 0)) for text in texts}
    assert tall["hind flipper:"] < tall["fore flipper:"] < tall["head:"]
    heights = sorted(tall.values())
    assert heights[-2] - heights[-3] > 1.4 * (heights[-1] - heights[-2]), "one label and the next keep apart"


def test_nothing_is_placed_on_a_piece_that_nothing_is_sewn_to() -> None:
    assert placing(demo("tide-cloth")[0], "cloth") is None


EYES = """\
body:
  worked: spiral rounds
  start: magic ring
  rounds:
    - {round: 1, work: "6 sc in ring"}
    - {rounds: 2-3, work: "(sc in next n sts, inc) x 6", n: {from: 0, step: 1}}
    - {rounds: 4-5, work: "sc in each st around"}
    - {round: 6, work: "(sc, dec) x 6"}
eye:
  worked: spiral rounds
  start: magic ring
  rounds: [{round: 1, work: "6 sc in ring"}]
"""


def _eyes(*stitches: str) -> Figure:
    steps = "".join(f"  - sew: {{piece: eye, to: body, round: 4, stitches: {at}}}\n" for at in stitches)
    figure = placing(worked(EYES, f"finishing:\n{steps}"), "body")
    assert figure is not None
    return figure


def test_a_part_at_the_back_is_said_to_be_there() -> None:
    """Half of 18 stitches on from the first part, the second lies opposite it, behind."""
    figure = _eyes("3-4", "12-13")
    assert figure.alt == (
        "The front of the body, with the eye over stitches 3–4 of round 4; "
        "behind, the eye over stitches 12–13 of round 4."
    )
    assert ">eye: round 4, 12–13, behind<" in figure.svg
    assert ">eye: round 4, 3–4<" in figure.svg


def test_parts_side_by_side_are_in_front() -> None:
    figure = _eyes("3-4", "7-8")
    assert "behind" not in figure.svg


STRIP = """\
strip:
  worked: rows
  start: chain 23
  rows:
    - {row: 1, work: "dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn"}
    - {row: 2, work: "ch 3 (counts as dc), dc in next st and in each st across, turn"}
    - {row: 3, work: "ch 3 (counts as dc), dc in next st and in each st across"}
cord: {worked: chain, length: 60 cm}
"""


@pytest.mark.parametrize("left_handed", [False, True])
@pytest.mark.parametrize(("row", "from_the_right"), [(2, False), (3, True)])
def test_a_row_from_the_wrong_side_runs_the_other_way_in_front(
    row: int, from_the_right: bool, left_handed: bool
) -> None:
    """A right-hander's row 2 begins at the left of what lies with its right side up."""
    step = Thread.model_validate({"piece": "cord", "through": "strip", "row": row, "under": 3, "over": 2})
    figure = threading(worked(STRIP), step, left_handed)
    assert figure is not None
    found = {text.text: float(text.get("x", 0)) for text in tree(figure.svg).iter(f"{SVG}text")}
    xs = [found[str(number)] for number in range(1, 9)]
    assert xs == sorted(xs, reverse=from_the_right != left_handed)


DISC = """\
disc:
  worked: spiral rounds
  start: magic ring
  rounds:
    - {round: 1, work: "6 sc in ring"}
    - {rounds: 2-5, work: "(sc in next n sts, inc) x 6", n: {from: 0, step: 1}}
eye:
  worked: spiral rounds
  start: magic ring
  rounds: [{round: 1, work: "6 sc in ring"}]
"""
SQUARE = """\
disc:
  worked: joined rounds
  start: chain 4, joined
  rounds:
    - {round: 1, work: "ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) x 3, join"}
    - {round: 2, work: "ch 3 (counts as dc), dc in next 2 sts, (2 dc, ch 2, 2 dc) in next ch-2 sp,
        *dc in next 3 sts, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * around, join"}
eye:
  worked: spiral rounds
  start: magic ring
  rounds: [{round: 1, work: "6 sc in ring"}]
"""


def _middles(
    pieces: str, number: int, *stitches: str, left_handed: bool = False
) -> list[tuple[float, float]]:
    """Where the middles of parts lie in the drawing, in the order of their steps; y away from the reader."""
    steps = "".join(
        f"  - sew: {{piece: eye, to: disc, round: {number}, stitches: {at}}}\n" for at in stitches
    )
    figure = placing(worked(pieces, f"finishing:\n{steps}"), "disc", left_handed=left_handed)
    assert figure is not None
    middles = []
    for path in tree(figure.svg).iter(f"{SVG}path"):
        if "fill-tint" in (path.get("class") or ""):
            points = re.findall(r"(-?[\d.]+) (-?[\d.]+)", path.get("d", ""))
            xs, ys = [float(x) for x, _ in points], [float(y) for _, y in points]
            middles.append(((min(xs) + max(xs)) / 2, -(min(ys) + max(ys)) / 2))
    assert len(middles) == len(stitches)
    return middles


@pytest.mark.parametrize("left_handed", [False, True])
def test_a_flat_piece_s_rounds_go_counter_clockwise_for_a_right_hander(left_handed: bool) -> None:
    """Its right side is up: a quarter further on than the part nearest to the reader lies to the right."""
    near, side, far = _middles(DISC, 4, "3-4", "9-10", "15-16", left_handed=left_handed)
    assert near[1] < -10
    assert abs(near[0]) < 1.0
    assert side[0] * (-1 if left_handed else 1) > 10
    assert far[1] > 10
    assert abs(far[0]) < 1.0


def test_parts_on_a_square_lie_along_its_sides() -> None:
    """Middles of sides are nearer to the middle than corners, by the root of two."""
    side, corner = _middles(SQUARE, 2, "2", "5-6")
    assert side[1] == pytest.approx(corner[1], abs=0.5) or side[0] == pytest.approx(corner[0], abs=0.5)
    assert hypot(*corner) > 1.2 * hypot(*side)


@pytest.mark.parametrize(("pieces", "number"), [(DISC, 4), (SQUARE, 2)])
def test_the_picture_turns_what_lies_as_the_figure_does(pieces: str, number: int) -> None:
    """Parts lie in the same directions from the middle in both, the first one nearest to the reader."""
    places = ("2", "5-6")
    steps = "".join(f"  - sew: {{piece: eye, to: disc, round: {number}, stitches: {at}}}\n" for at in places)
    disc = subject(worked(pieces, f"finishing:\n{steps}"), "disc")
    stand, items = stand_of(disc)
    drawn = []
    for step in disc.work.pattern.finishing:
        assert step.sew is not None
        found = middle_of(disc, items, step.sew)
        assert found is not None
        ring = stand.rings[found[0]]
        drawn.append(stand.point((ring.out0 + ring.out1) / 2, 0.0, found[1]))
    for (x, y), (other_x, other_y) in zip(drawn, _middles(pieces, number, *places), strict=True):
        assert atan2(y, x) == pytest.approx(atan2(other_y, other_x), abs=0.05)
    assert drawn[0][1] < 0
