"""Step drawings: the moves are the trade's own, and the yarn passes over and under where it must."""

from collections.abc import Sequence
from importlib.resources import files
from itertools import pairwise
from math import hypot
from typing import Any

import pytest

from loopleaf import trade
from loopleaf.draw import step_uses
from loopleaf.draw.crochet_hook import Hook
from loopleaf.draw.loops import BEFORE, BEHIND, HOOK_NEAR, lying, on_the_hook
from loopleaf.draw.sketch import Sketch
from loopleaf.draw.step_drawings import techniques
from loopleaf.draw.step_fabric import tops, x_of
from loopleaf.draw.step_grounds import setting
from loopleaf.draw.step_moves import FIRST, STITCH, TOP_HALF, Bar, Lain, Loop, Place, State, Wrap, carried_out
from loopleaf.draw.step_needle import cord_scene
from loopleaf.draw.step_scene import DEEP, LEFT, hook_for, places_on, scene
from loopleaf.draw.step_uses import uses
from loopleaf.draw.strands import Knot, Solid, Strand, curve, draw_strands
from tests.measure.worked_patterns import worked
from tests.yaml_text import read_yaml

from .pieces import COLLECTION, demo, rounds, rows

ROWS: list[dict[str, Any]] = read_yaml(
    files("loopleaf.draw").joinpath("steps.yml").read_text(encoding="utf-8")
)["techniques"]
WITH_A_HOOK = [row for row in ROWS if row["ground"] not in ("posts", "seam")]
PLAIN = ("single", "half", "double", "treble", "double-treble", "triple-treble")


def states(row: dict[str, Any]) -> list[State]:
    """The work after each step of a technique."""
    place = setting(row["ground"], row["stitch"])
    found, state = [], place.start
    for step in row["steps"]:
        state = carried_out(state, step["do"], place.ground)
        found.append(state)
    return found


def moves(key: str) -> list[str]:
    row = next(row for row in ROWS if row["key"] == key)
    return [move for step in row["steps"] for move in step["do"]]


# ---- the moves --------------------------------------------------------------------------------------


@pytest.mark.parametrize("key", PLAIN)
def test_as_many_yarns_over_before_going_in_as_the_table_has(key: str) -> None:
    first = moves(key)[: moves(key).index("into next")]
    assert first.count("over") == trade.stitch(key).yarn_overs


@pytest.mark.parametrize("key", PLAIN[1:])
def test_the_yarns_over_before_going_in_have_a_drawing_of_their_own(key: str) -> None:
    """Of single there are none, and its first drawing is of the hook in its place."""
    begun, gone_in = states(next(row for row in ROWS if row["key"] == key))[:2]
    assert begun.inside is None
    assert sum(isinstance(one, Wrap) for one in begun.on) + bool(begun.over) == trade.stitch(key).yarn_overs
    assert gone_in.inside is not None
    assert states(next(row for row in ROWS if row["key"] == "single"))[0].inside is not None


@pytest.mark.parametrize("key", PLAIN)
def test_the_loop_drawn_up_makes_two_more_loops_than_yarns_over(key: str) -> None:
    """Single: two; half and double: three; treble: four; double treble: five (trade/stitches.yml, `how`)."""
    row = next(row for row in ROWS if row["key"] == key)
    place = setting(row["ground"], row["stitch"])
    upto = moves(key)[: moves(key).index("up") + 1]
    assert len(carried_out(place.start, upto, place.ground).on) == (trade.stitch(key).yarn_overs or 0) + 2


@pytest.mark.parametrize("row", WITH_A_HOOK, ids=lambda row: row["key"])
def test_every_technique_ends_with_one_loop_on_the_hook(row: dict[str, Any]) -> None:
    last = states(row)[-1]
    if row["key"] == "fasten-off":
        assert last.on == ()
        return
    if row["key"] != "chain":  # which shows how it goes on
        assert last.over == ""
    assert [type(one) for one in last.on] == [Loop]
    assert last.inside is None


@pytest.mark.parametrize(
    ("key", "said"),
    [
        ("double", ["three loops on the hook", "two are left"]),
        ("treble", ["four loops on the hook", "three are left", "two are left"]),
        ("double-treble", ["five loops on the hook", "three are left", "two are left"]),
        ("decrease", ["three on the hook"]),
        ("single", ["two loops on the hook"]),
        ("puff", ["three loops on the hook", "seven loops on the hook"]),
        ("foundation", ["two loops on the hook"]),
        ("triple-treble", ["six loops on the hook", "four loops are left", "two loops are left"]),
        ("extended", ["two loops on the hook"]),
        ("linked", ["two loops on the hook", "three loops on the hook"]),
        ("reverse", ["two loops on the hook"]),
        ("invisible-decrease", ["two loops on the hook"]),
    ],
)
def test_the_words_count_the_loops_that_are_drawn(key: str, said: Sequence[str]) -> None:
    numbers = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7}
    row = next(row for row in ROWS if row["key"] == key)
    after = dict(zip((step["say"] for step in row["steps"]), states(row), strict=True))
    for phrase in said:
        matching = [state for words, state in after.items() if phrase in words]
        assert matching, phrase
        assert {len(state.on) for state in matching} == {numbers[phrase.split()[0]]}


def test_no_yarn_is_lost() -> None:
    """Every loop and yarn over is on the hook, or lies in the stitch."""
    place = setting("stitches", "treble")
    done = carried_out(place.start, moves("treble"), place.ground)
    drawn = moves("treble").count("over")
    laid = [one for one in done.lain if isinstance(one, Bar)]
    loops = [one for one in done.lain if isinstance(one, Lain)]
    assert len(laid) == 2
    assert len(laid) + len(loops) + len(done.on) == drawn + 1, "with the loop that was there at first"


def test_stitches_of_a_fan_share_their_foot_and_end_apart() -> None:
    place = setting("fan", "double")
    done = carried_out(place.start, moves("group"), place.ground)
    feet = [one for one in done.lain if isinstance(one, Lain) and one.root[1] > 0]
    assert len(feet) == 3
    assert max(one.root[0] for one in feet) - min(one.root[0] for one in feet) < 2
    ends = sorted({one.tip for one in done.lain if isinstance(one, Lain) and one.half > 2}, reverse=True)
    assert len(ends) == 3
    assert min(a[0] - b[0] for a, b in pairwise(ends)) > 4


def ended(key: str) -> State:
    return states(next(row for row in ROWS if row["key"] == key))[-1]


def test_the_chains_of_a_picot_come_back_to_where_they_began() -> None:
    done = ended("picot")
    chains = [one for one in done.lain if isinstance(one, Lain)][:3]
    assert all(b.root == a.tip for a, b in pairwise(chains))
    (last,) = done.on
    assert isinstance(last, Loop)
    begin = chains[0].root
    assert hypot(last.root[0] - begin[0], last.root[1] - begin[1]) < STITCH / 2


def test_the_loop_that_was_let_go_closes_a_popcorn_at_its_first_stitch() -> None:
    row = next(row for row in ROWS if row["key"] == "popcorn")
    finished, dropped, caught = states(row)
    assert finished.ended == 3, "each of its stitches is finished first"
    assert dropped.on == ()
    assert dropped.loose == finished.on[0]
    assert isinstance(caught.on[0], Loop)
    drawn = caught.lain[-1]
    assert isinstance(drawn, Lain)
    assert drawn.root == dropped.loose.root
    assert drawn.tip == caught.on[0].root
    assert drawn.tip[0] > drawn.root[0] + STITCH, "back over all of them, against the way"


def test_each_foundation_stitch_has_its_own_foot_for_the_next_one() -> None:
    place = setting("foundation", "single")
    once = carried_out(place.start, moves("foundation"), place.ground)
    foot = next(one for one in once.lain if isinstance(one, Lain) and one.tip[1] == one.root[1])
    next_foot = place.ground.places["next foot"]
    assert foot.tip == pytest.approx(next_foot.hole)
    assert foot.tip[0] < next_foot.middle[0] < foot.root[0]


def test_a_spike_covers_the_rows_between() -> None:
    loops = [one for one in ended("spike").lain if isinstance(one, Lain)]
    long = max(loops, key=lambda one: one.root[1] - one.tip[1])
    assert long.tip[1] < 0
    assert long.root[1] > STITCH, "below the row that is passed"
    drawn = scene(ended("spike"), [])
    loop = next(t for t in drawn if isinstance(t, Strand) and (t.knots[0].x, t.knots[0].y) == long.root)
    assert min(knot.near for knot in loop.knots) > max(knot.near for row in tops(0.0) for knot in row.knots)


@pytest.mark.parametrize("key", PLAIN[1:])
def test_the_yarns_over_lie_evenly_up_the_stem(key: str) -> None:
    """And the stitch ends as high as its neighbours: none of its parts is taller than it."""
    place = setting("stitches", key)
    done = carried_out(place.start, moves(key), place.ground)
    bars = sorted((one.middle[1] for one in done.lain if isinstance(one, Bar)), reverse=True)
    assert len(bars) == trade.stitch(key).yarn_overs
    if key != "half":
        gaps = [a - b for a, b in pairwise([3.4, *bars])]
        assert max(gaps) - min(gaps) < 0.01
    (top,) = done.on
    assert isinstance(top, Loop)
    assert top.root[1] == -place.ground.height
    assert min(bars) > top.root[1]


def test_an_extended_stitch_has_a_chain_at_its_foot_and_no_yarn_across() -> None:
    done, plain = ended("extended"), ended("single")
    assert len(done.lain) == len(plain.lain) + 1
    assert not any(isinstance(one, Bar) for one in done.lain)
    assert done.on[0].root[1] < plain.on[0].root[1]  # type: ignore[union-attr]


def test_a_linked_stitch_takes_its_first_loop_from_the_stem_beside_it() -> None:
    first, second = (
        one for one in ended("linked").lain if isinstance(one, Lain) and one.made in (FIRST + 1, FIRST + 2)
    )
    assert first.root[1] < 0 < second.root[1], "above the row below, and in it"
    assert first.root[0] > second.root[0] + STITCH / 2
    assert not any(isinstance(one, Bar) for one in ended("linked").lain), "no yarn over before it goes in"


def test_reverse_stitches_go_the_other_way_and_stand_beside_the_last() -> None:
    place = setting("backwards", "single")
    before, (after,) = place.start.on[0], ended("reverse").on
    assert isinstance(before, Loop)
    assert isinstance(after, Loop)
    assert after.root == pytest.approx((before.root[0] + STITCH, before.root[1]))
    (usual,) = ended("single").on
    assert isinstance(usual, Loop)
    assert usual.root[0] < place.ground.places["behind"].middle[0] < after.root[0]


def test_of_two_front_loops_both_lie_over_the_hook_and_nothing_else_does() -> None:
    place = setting("stitches", "single").ground.places["front loops"]
    for strand in tops(0.0, place):
        number = round((12.0 - strand.knots[0].x) / STITCH + 0.5)
        near = [k.near for k in strand.knots if k.y > 1]
        assert (min(near) > HOOK_NEAR) is (number in (1, 2))
        assert max(k.near for k in strand.knots if k.y < -1) < HOOK_NEAR


def test_the_first_row_goes_into_the_second_chain_from_the_hook() -> None:
    place = setting("first row", "single")
    (loop,) = place.start.on
    assert isinstance(loop, Loop)
    middle = place.ground.places["chain"].middle[0]
    assert loop.root[0] - 2 * STITCH < middle < loop.root[0] - STITCH, "one chain is passed over"
    inside = carried_out(place.start, ["into chain"], place.ground)
    chains = [s for s in place.fabric(inside) if isinstance(s, Strand)]
    named = next(s for s in chains if min(k.x for k in s.knots) < middle < min(k.x for k in s.knots) + STITCH)
    assert min(k.near for k in named.knots if k.y < -1) > HOOK_NEAR, "its upper strand lies over the hook"
    assert max(k.near for k in named.knots if k.y > 1) < HOOK_NEAR, "the lower one does not"
    first = max(chains, key=lambda s: s.knots[0].x)
    assert max(k.near for k in first.knots) < HOOK_NEAR
    heads = [one.tip for one in ended("into-chain").lain if isinstance(one, Lain) and one.half == TOP_HALF]
    assert heads[0][0] == pytest.approx(x_of(1) - 1.0)
    assert heads[1] == pytest.approx((heads[0][0] - STITCH, heads[0][1]))


def test_crossed_stitches_change_sides_between_foot_and_top() -> None:
    done = ended("cross")
    feet = [one for one in done.lain if isinstance(one, Lain) and one.root[1] > 0]
    heads = [one.tip for one in done.lain if isinstance(one, Lain) and one.half == TOP_HALF]
    assert feet[0].root[0] < feet[1].root[0]
    assert heads[0][0] > heads[1][0]
    assert feet[1].made > feet[0].made, "the second lies before the first"


def test_a_back_post_stitch_stands_behind_the_tops_and_a_front_post_stitch_before_them() -> None:
    row = min(knot.near for top in tops(0.0) for knot in top.knots)
    for key, behind in (("back-post", True), ("front-post", False)):
        done = ended(key)
        stem = [one for one in done.lain if isinstance(one, Lain) and one.half < TOP_HALF]
        drawn = {(s.knots[0].x, s.knots[0].y): s for s in scene(done, []) if isinstance(s, Strand)}
        upper = next(one for one in stem if one.hug is None)
        assert all((knot.near < row) is behind for knot in drawn[upper.root].knots)


def test_a_cut_end_goes_out_through_the_last_loop_and_the_hook_is_put_away() -> None:
    row = next(row for row in ROWS if row["key"] == "fasten-off")
    before, over, out = states(row)
    for state in (before, over):
        things = scene(state, [])
        assert any(isinstance(thing, Solid) for thing in things), "the hook"
        assert min(k.x for s in things if isinstance(s, Strand) for k in s.knots) > LEFT, "cut"
    things = scene(out, [])
    assert not any(isinstance(thing, Solid) for thing in things)
    end = things[-1]
    assert isinstance(end, Strand)
    assert LEFT < end.knots[-1].x < end.knots[0].x
    uncut = scene(states(next(row for row in ROWS if row["key"] == "single"))[1], [])
    assert min(k.x for s in uncut if isinstance(s, Strand) for k in s.knots) < LEFT


def test_an_unknown_move_is_no_move() -> None:
    place = setting("stitches", "single")
    with pytest.raises(KeyError):
        carried_out(place.start, ["under"], place.ground)


# ---- over and under ---------------------------------------------------------------------------------


def crossings(strand: Strand, hook: Hook) -> str:
    """How a strand passes the hook's middle line: `-` behind it, `+` before it, in the strand's order."""
    found = ""
    for a, b in pairwise(strand.knots):
        sides = [(k.x - hook.tip[0], k.y - hook.tip[1]) for k in (a, b)]
        dx, dy = hook.at(1.0)[0] - hook.tip[0], hook.at(1.0)[1] - hook.tip[1]
        one, other = ((y * dx - x * dy) for x, y in sides)
        if (one < 0) != (other < 0):
            found += "+" if (a.near + b.near) / 2 > HOOK_NEAR else "-"
    return found


@pytest.mark.parametrize("root", [(20.0, 10.0), (20.0, -12.0)])
def test_a_loop_goes_around_the_hook_behind_it_and_before_it(root: tuple[float, float]) -> None:
    hook = Hook((0.0, 0.0), 0.1)
    assert sorted(crossings(on_the_hook(root, hook, 20.0, 25.0), hook)) == ["+", "-"]


@pytest.mark.parametrize("row", WITH_A_HOOK, ids=lambda row: row["key"])
def test_yarn_in_the_throat_passes_before_the_hook(row: dict[str, Any]) -> None:
    place = setting(row["ground"], row["stitch"])
    for state in states(row):
        if not state.over:
            continue
        hook = hook_for(state)
        far = 0.0 if state.cut else -33.0
        working = [
            thing
            for thing in scene(state, list(place.fabric(state)))
            if isinstance(thing, Strand) and thing.knots[-1].x < far and thing.fill == state.over
        ]
        assert len(working) == 1
        assert "+" in crossings(working[0], hook)


def test_the_hook_goes_under_both_loops_and_its_head_is_behind_the_work() -> None:
    place = Place("next", (2.4, 3.4), (2.4, 0.0))
    rows = {round((12.0 - s.knots[0].x) / 9.6 + 0.5): s for s in tops(0.0, place)}
    assert all(knot.near > HOOK_NEAR for knot in rows[1].knots), "both loops lie over the hook"
    assert all(knot.near > BEFORE for knot in rows[2].knots), "the next stitch covers hook and yarn"
    assert all(knot.near < BEHIND for knot in rows[0].knots), "the last one is behind the stem"


@pytest.mark.parametrize(("name", "over"), [("front loop", "lower"), ("back loop", "upper")])
def test_in_one_loop_only_the_other_stays_under_the_hook(name: str, over: str) -> None:
    strand = next(s for s in tops(0.0, Place(name, (2.4, 3.4), (2.4, 0.0)), [1]))
    near = {
        "lower": [k.near for k in strand.knots if k.y > 1],
        "upper": [k.near for k in strand.knots if k.y < -1],
    }
    other = "upper" if over == "lower" else "lower"
    assert min(near[over]) > HOOK_NEAR > max(near[other])


@pytest.mark.parametrize(("name", "behind"), [("front-post", True), ("back-post", False)])
def test_a_post_stitch_goes_around_its_stem(name: str, behind: bool) -> None:
    """From the front the yarn passes behind the stem, from the back before it."""
    row = next(row for row in ROWS if row["key"] == name)
    last = states(row)[-1]
    around = next(one for one in last.lain if isinstance(one, Lain) and one.hug is not None)
    across, beside = around.hug or (0.0, 0.0)
    assert (across < beside) is behind


def test_later_loops_lie_over_the_ones_that_they_come_out_of() -> None:
    place = setting("stitches", "double")
    done = carried_out(place.start, moves("double"), place.ground)
    by_root = {one.root: one for one in done.lain if isinstance(one, Lain)}
    for one in by_root.values():
        if one.tip in by_root:
            assert by_root[one.tip].made > one.made


def test_loops_on_the_hook_keep_their_order_and_do_not_touch() -> None:
    place = setting("stitches", "double-treble")
    state = carried_out(place.start, moves("double-treble")[:6], place.ground)
    assert [type(one) for one in state.on] == [Loop, Wrap, Wrap, Wrap, Loop]
    along = places_on(state, hook_for(state))
    assert along == sorted(along, reverse=True)
    assert min(a - b for a, b in pairwise(along)) > 4


def test_a_cord_passes_each_post_as_the_moves_say() -> None:
    passes = ["under", "over", "over", "under"]
    cord = next(thing for thing in cord_scene(passes) if isinstance(thing, Strand) and thing.fill == "tint")
    nears = [knot.near for knot in cord.knots[3:]][1::3]
    assert ["over" if near > HOOK_NEAR else "under" for near in nears] == passes


# ---- how it is drawn --------------------------------------------------------------------------------


def test_the_nearer_strand_is_laid_down_last() -> None:
    across = Strand([Knot(-5, 0, 1), Knot(5, 0, 1)], 2.0, "#111111")
    up = Strand([Knot(0, -5, 2), Knot(0, 5, 2)], 2.0, "#222222")
    sketch = Sketch()
    draw_strands(sketch, [up, across])
    svg = sketch.figure("t", "t").svg
    assert svg.index("#111111") < svg.index("#222222")


def test_a_strand_is_cut_halfway_between_depths() -> None:
    sketch = Sketch()
    draw_strands(sketch, [Strand([Knot(0, 0, 1), Knot(10, 0, 3), Knot(20, 0, 3)], 2.0, "#111111")])
    svg = sketch.figure("t", "t").svg
    assert svg.count('stroke="#111111"') == 2
    assert "M5 0c" in svg.replace("M4.88 0c", "M5 0c")


def test_curves_go_through_their_knots() -> None:
    knots = [Knot(0, 0), Knot(3, 4), Knot(9, 4), Knot(12, -3)]
    found = curve(knots)
    assert [cubic[0] for cubic in found] == [(k.x, k.y) for k in knots[:-1]]
    assert found[-1][3] == (12, -3)


def test_a_lying_loop_closes_at_its_root() -> None:
    strand = lying((10.0, 0.0), (0.0, 0.0), 20.0)
    assert strand.knots[0] == strand.knots[-1]
    assert min(knot.x for knot in strand.knots) < 0, "it goes around what comes out of it"
    assert DEEP < 20.0


# ---- what is published ------------------------------------------------------------------------------


def test_both_hands_have_the_same_steps_mirrored() -> None:
    for technique in techniques("US"):
        for step in technique.steps:
            left, top, wide, high = view(step.right.svg)
            assert view(step.left.svg) == pytest.approx((-left - wide, top, wide, high))
            assert step.left.svg.count("<path") == step.right.svg.count("<path")
            assert 'transform="scale(-1 1)"' in step.left.svg


def view(svg: str) -> tuple[float, ...]:
    return tuple(float(number) for number in svg.split('viewBox="', 1)[1].split('"', 1)[0].split())


def test_the_words_are_in_the_reader_s_terms() -> None:
    us, uk = ({t.key: t for t in techniques(terms)} for terms in ("US", "UK"))
    assert us["double"].title == "Double crochet"
    assert uk["double"].title == "Treble"
    assert "Yarn over" in us["half"].steps[0].words
    assert "Yarn round hook" in uk["half"].steps[0].words
    assert us["half"].steps[0].right.alt.startswith("Half double crochet. Yarn over once, before")


@pytest.mark.parametrize(
    ("terms", "others"),
    [("US", ("yarn round hook", "neighbour", "colour")), ("UK", ("yarn over", "neighbor", "color"))],
)
def test_no_sentence_speaks_in_the_other_country_s_words(terms: trade.Terms, others: Sequence[str]) -> None:
    said = [step.words.lower() for technique in techniques(terms) for step in technique.steps]
    assert any({"US": "yarn over", "UK": "yarn round hook"}[terms] in words for words in said)
    assert [words for words in said if any(f" {other}" in f" {words}" for other in others)] == []


def test_all_that_the_collection_uses_is_drawn() -> None:
    keys = {technique.key for technique in techniques("US")}
    used: set[str] = set()
    for path in COLLECTION.glob("*.yml"):
        used |= uses(demo(path.stem)[0])
    assert used <= keys
    assert {"ring", "front-post", "back-post", "cluster", "cord", "sew", "change", "back-loop"} <= used


@pytest.mark.parametrize(
    ("lines", "key"),
    [
        (["ch 1, 12 sc in ring, join"] * 1, "chain-ring"),
        (["ch 1, 12 sc in ring, join", "ch 1, (sc in next 2 sts, ch-3 picot) x 6, join"], "picot"),
        (["ch 1, 12 sc in ring, join", "ch 2, (3-hdc puff in next st, ch 1, sk next st) x 6, join"], "puff"),
        (["ch 1, 12 sc in ring, join", "ch 2, (5-dc pc in next st, ch 1, sk next st) x 6, join"], "popcorn"),
        (["ch 1, 12 sc in ring, join", "ch 2, (dc V-st in next st, sk next st) x 6, join"], "group"),
        (["ch 1, 12 sc in ring, join", "ch 1, rsc in each st around, join"], "reverse"),
        (["ch 1, 12 sc in ring, join", "ch 3, edc in each st around, join"], "extended"),
        (["ch 1, 12 sc in ring, join", "ch 7, quadtr in each st around, join"], "triple-treble"),
        (["ch 1, 12 sc in ring, join", "ch 1, invdec x 6, join"], "invisible-decrease"),
        (["ch 1, 12 sc in ring, join", "ch 2, (sk next st, dc in next st, dc in skipped st) x 6"], "cross"),
        (["ch 1, 12 sc in ring, join, fasten off"], "fasten-off"),
    ],
)  # fmt: skip
def test_what_small_pieces_use(lines: list[str], key: str) -> None:
    text = rounds(*lines).replace("magic ring", "chain 6, joined" if key == "chain-ring" else "magic ring")
    assert key in uses(worked(text))


def test_what_is_not_said_is_not_drawn() -> None:
    plain = uses(worked(rounds("ch 1, 12 sc in ring, join", "ch 1, (sc2tog) x 6, join")))
    assert "decrease" in plain
    assert not plain & {"invisible-decrease", "fasten-off", "cross", "reverse", "group"}
    hidden = uses(worked(rounds("ch 1, 12 sc in ring, join", "ch 1, invdec x 6, join")))
    assert "decrease" not in hidden
    both = uses(worked(rounds("ch 1, 12 sc in ring, join", "ch 1, (invdec, sc2tog) x 3, join")))
    assert {"decrease", "invisible-decrease"} <= both


def test_linked_stitches_are_drawn_by_their_make() -> None:
    assert "linked" in uses(worked(rows("ch 3, ldc in each st across")))
    assert "linked" not in uses(worked(rows("ch 3, dc in each st across")))


def test_every_stitch_that_can_be_worked_has_a_drawing() -> None:
    """Or is drawn with others of its make; the loop stitch is told in words only."""
    keys = {technique.key for technique in techniques("US")}
    drawn = {row.key for row in trade.stitches() if step_uses.drawn_as(row.key) in keys}
    assert {row.key for row in trade.stitches()} - drawn == {"loop-single"}


def test_a_knot_stitch_is_a_long_chain_held_by_a_stitch_around_its_back_strand() -> None:
    """As trade/stitches.yml tells it."""
    row = next(row for row in ROWS if row["key"] == "knot")
    _, drawn_up, going_in, _, ended = states(row)
    (long,) = drawn_up.lain
    assert isinstance(long, Lain)
    assert long.root[1] - long.tip[1] > 1.5 * STITCH
    assert going_in.inside is not None
    assert long.tip[1] < going_in.inside.middle[1] < long.root[1]
    fabric = [*setting("knot", "single").fabric(going_in)]
    before = [one for one in fabric if isinstance(one, Strand) and min(k.near for k in one.knots) > BEFORE]
    behind = [one for one in fabric if isinstance(one, Strand) and {k.near for k in one.knots} == {DEEP}]
    assert len(before) == len(behind) == 1, "two strands before the hook, one behind it"
    assert len(ended.lain) == 3


def test_a_slip_knot_closes_around_one_loop() -> None:
    row = next(row for row in ROWS if row["key"] == "slip-knot")
    laid, drawn, tied = states(row)
    assert (len(laid.on), len(drawn.on), len(tied.on)) == (0, 1, 1)
    reaches = []
    for state in (drawn, tied):
        fabric = setting("slip knot", "single").fabric(state)
        xs = [knot.x for one in fabric if isinstance(one, Strand) for knot in one.knots]
        reaches.append(max(xs) - min(xs))
    assert reaches[1] < reaches[0] / 4


def test_a_chain_begins_with_a_slip_knot_and_a_magic_ring_with_none() -> None:
    assert "slip-knot" in uses(worked(rows("sc in 2nd ch from hook and in each ch across")))
    assert "slip-knot" not in uses(worked(rounds("ch 1, 12 sc in ring, join")))


def test_an_entry_of_every_stitch_is_each_of_them_and_no_other_form() -> None:
    decrease = next(one for one in techniques("US") if one.key == "decrease")
    assert {"abbr-decrease", "stitch-tog-half", "stitch-tog-double-treble"} <= set(decrease.entries)
    assert not any(entry.startswith("stitch-cluster") or entry.endswith("*") for entry in decrease.entries)


def test_a_spike_is_one_by_its_words_and_a_loop_left_free_is_none() -> None:
    below = ["ch 1, 12 sc in ring, join", "ch 1, sc in BLO of each st around, join"]
    spikes = "ch 1, (sc in next 2 sts, dc in st 2 rounds below) x 4, join"
    assert "spike" in uses(worked(rounds(*below, spikes)))
    assert "spike" not in uses(worked(rounds(*below, "ch 1, sc in each st around, join")))


def test_foundation_stitches_are_used_whatever_their_height() -> None:
    cloth = rows("12 fdc, turn", "ch 1, sc in each st across").replace("  start: chain 11\n", "")
    assert {"foundation", "single"} <= uses(worked(cloth))


def test_what_a_pattern_uses() -> None:
    tray = {
        "back-loop", "chain", "fasten-off", "increase", "into-chain", "join", "single", "slip-knot",
    }  # fmt: skip
    assert uses(demo("reed-tray")[0]) == tray
    assert "into-chain" not in uses(demo("harbour-square")[0]), "chains in a ring are worked into as a ring"
    assert {"cord", "sew", "ring", "space", "group"} <= uses(demo("lantern-pouch")[0])
    assert "group" not in uses(demo("curlew-cap")[0]), "increases are two in one"
    assert "join" not in uses(demo("pebble-ball")[0]), "a spiral"
    assert "invisible-decrease" in uses(demo("sandbank-seal")[0])
    assert "decrease" not in uses(demo("sandbank-seal")[0])
