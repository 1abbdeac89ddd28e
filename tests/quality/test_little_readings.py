"""The little model's rarer readings stay narrow: what is nearly such a line contradicts its file."""

from typing import Any

import pytest

from tests.yaml_text import written_yaml

from .model import judge

ROW_OF_NINE = (
    "sc in 2nd ch from hook, *ch 3, sk next ch, sc in next ch; rep from * to end, turn",
    "5 sc, 4 ch-3 sps",
)


def first_wrong(start: str, *lines: tuple[str, Any], **fields: Any) -> str:
    """The round that the model finds wrong first, and of which sort; "" where it finds none."""
    worked = fields.pop("worked", "rows")
    name = "row" if worked == "rows" else "round"
    rounds = [
        {name: at, "work": work, **({} if count is None else {"count": count})}
        for at, (work, count) in enumerate(lines, 1)
    ]
    piece = {"yarn": "A", "worked": worked, "start": start, f"{name}s": rounds}
    yarns = {"yarns": {"A": {"name": "lichen"}}}
    file = {"title": "One piece", "terms": "US", "materials": yarns, **fields, "pieces": {"piece": piece}}
    verdict = judge(written_yaml(file).encode())
    assert verdict.cannot_say == ""
    return next((f"{one.round} {one.what}" for one in verdict.wrong), "")


def test_a_row_goes_back_unturned_only_with_reverse_stitches() -> None:
    base = ("sc in 2nd ch from hook and in each ch across, turn", 10)
    unturned = ("ch 1, sc in each st across, do not turn", 10)
    assert first_wrong("chain 11", base, unturned, ("ch 1, rsc in each st across", 10)) == ""
    assert first_wrong("chain 11", base, unturned, ("ch 1, sc in each st across", 10)) == "2 turn"
    unsaid = ("ch 1, sc in each st across", 10)
    assert first_wrong("chain 11", base, unsaid, ("ch 1, rsc in each st across", 10)) == "2 turn"


def test_a_line_that_only_fastens_off_makes_no_stitch() -> None:
    rounds = (("6 sc in ring", 6), ("sc in each st around", 6))
    of = {"worked": "spiral rounds"}
    assert first_wrong("magic ring", *rounds, ("fasten off", 0), **of) == ""
    assert first_wrong("magic ring", *rounds, ("fasten off", 6), **of) == "3 count"
    assert first_wrong("magic ring", *rounds, ("sc in next 3 sts, fasten off", 3), **of) == "3 fit"


@pytest.mark.parametrize(
    ("line", "count", "wrong"),
    [
        ("ch 3, dc2tog in ring, (ch 3, dc3tog in ring) 5 times, ch 3, join", "6 cl, 6 ch-3 sps", ""),
        ("ch 3, dc2tog in ring, (ch 3, dc3tog in ring) 5 times, ch 3, join", "7 dc, 6 ch-3 sps", ""),
        ("ch 3, dc2tog in ring, (ch 3, dc2tog in ring) 5 times, ch 3, join", "6 cl, 6 ch-3 sps", "1 count"),
        ("ch 3, dc in ring, (ch 3, dc3tog in ring) 5 times, ch 3, join", "6 dc, 6 ch-3 sps", "1 count"),
    ],
)
def test_a_chain_is_a_first_leg_where_the_others_have_one_more(line: str, count: str, wrong: str) -> None:
    of = {"worked": "joined rounds", "turning chains": {"dc": "counts"}}
    assert first_wrong("chain 6, joined", (line, count), **of) == wrong


def test_a_chain_is_a_taller_stitch_where_the_row_ends_with_one() -> None:
    middle = "(ch 3, sc in next ch-3 sp) 3 times"
    line = f"ch 3, sc in first ch-3 sp, {middle}, dc in last sc, turn"
    shorter = f"ch 2, sc in first ch-3 sp, {middle}, dc in last sc, turn"
    of = {"turning chains": {"dc": "counts"}}
    count = "2 dc, 4 sc, 3 ch-3 sps"
    assert first_wrong("chain 10", ROW_OF_NINE, (line, count), **of) == ""
    assert first_wrong("chain 10", ROW_OF_NINE, (line, count)) == "2 count"
    assert first_wrong("chain 10", ROW_OF_NINE, (shorter, count), **of) == "2 count"


GROUPS = (
    "3 dc in 5th ch from hook, *sk next 2 chs, 3 dc in next ch; rep from * to last 3 chs, sk next 2 chs, "
    "dc in last ch, turn",
    20,
)
DC_COUNTS = {"turning chains": {"dc": "counts"}}


def test_the_top_of_three_chains_may_be_that_of_four_skipped_ones() -> None:
    line = (
        "ch 3, dc in first dc, *3 dc in sp between next 2 groups; rep from * to end, "
        "2 dc in top of ch-{}, turn"
    )
    assert first_wrong("chain 23", GROUPS, (line.format(3), 19), **DC_COUNTS) == ""
    assert first_wrong("chain 23", GROUPS, (line.format(4), 19), **DC_COUNTS) == ""
    assert first_wrong("chain 23", GROUPS, (line.format(2), 19), **DC_COUNTS) == "2 join"
    assert first_wrong("chain 23", GROUPS, (line.format(5), 19), **DC_COUNTS) == "2 join"


def test_a_row_skips_to_each_gap() -> None:
    line = (
        "ch 3, dc in first dc, sk {0} dc, *3 dc in next sp, sk {0} dc; rep from * to last dc, "
        "2 dc in top of ch-3, turn"
    )
    assert first_wrong("chain 23", GROUPS, (line.format(3), 19), **DC_COUNTS) == ""
    assert first_wrong("chain 23", GROUPS, (line.format(4), 19), **DC_COUNTS) == "2 fit"


def test_half_a_group_at_either_end_is_one_where_the_count_says_so() -> None:
    rows = (
        ("sc in 2nd ch from hook and in each ch across, turn", 9),
        (
            "ch 3, dc in same st, *sk 2 sts, 3 dc in next st; rep from * to last 2 sts, sk next st, "
            "2 dc in last st, turn",
            10,
        ),
    )
    line = "ch 3, *3 dc in sp between next 2 groups; rep from * across, dc in top of tch, turn"
    assert first_wrong("chain 10", *rows, (line, 11), **DC_COUNTS) == ""
    assert first_wrong("chain 10", *rows, (line, 8), **DC_COUNTS) == "3 fit"
    assert first_wrong("chain 10", *rows, (line, None), **DC_COUNTS) == "3 fit"


def test_the_turning_chain_stands_behind_a_gap_named_as_the_last() -> None:
    rows = (
        ("sc in 2nd ch from hook and in each ch across, turn", 13),
        ("ch 3, sk 2 sts, *3 dc in next st, sk 2 sts; rep from * to last st, dc in last st, turn", 11),
    )
    start = "ch 3, dc in sp between first st and next group, *3 dc in sp between next 2 groups; rep from * "
    end = "to last group, 2 dc in sp between last group and tch, turn"
    assert first_wrong("chain 14", *rows, (start + end, 10), **DC_COUNTS) == ""
    assert first_wrong("chain 14", *rows, (start + end, 7), **DC_COUNTS) == "3 count"
    assert first_wrong("chain 14", *rows, (start + end, None), **DC_COUNTS) == "3 fit"
    assert first_wrong("chain 14", *rows, (start + "to last group, turn", 8), **DC_COUNTS) == "3 fit"


ROUNDS = {"worked": "joined rounds"}


def test_loops_come_back_to_the_stitch_joined_to() -> None:
    ring = ("ch 1, 8 sc in ring, join with sl st in first sc", 8)
    loops = "*ch 4, sc in next sc; rep from * to end, working last sc in first sc"
    assert first_wrong("magic ring", ring, (loops, "8 sc, 8 ch-4 sps"), **ROUNDS) == ""
    assert first_wrong("magic ring", ring, (loops, None), **ROUNDS) == ""
    assert first_wrong("magic ring", ring, (loops, "7 sc, 7 ch-4 sps"), **ROUNDS) != ""
    assert first_wrong("magic ring", ring, (loops, "8 sc, 7 ch-4 sps"), **ROUNDS) != ""
    unjoined = ("8 sc in ring", 8)
    assert first_wrong("magic ring", unjoined, (loops, "8 sc, 8 ch-4 sps"), **ROUNDS) != ""


def test_a_slip_stitch_into_the_stitch_joined_to_ends_a_round_that_makes_none_such() -> None:
    ring = ("ch 1, 12 sc in ring, join with sl st in first sc", 12)
    scallops = (
        "*sk next sc, 5 dc in next sc, sk next sc, sl st in next sc; rep from * around, "
        "ending with sl st in first sc"
    )
    assert first_wrong("magic ring", ring, (scallops, 18), **ROUNDS) == ""
    assert first_wrong("magic ring", ring, (scallops, 17), **ROUNDS) == "2 join"
    assert first_wrong("magic ring", ring, (scallops, None), **ROUNDS) == ""
    thirteen = ("ch 1, 13 sc in ring, join with sl st in first sc", 13)
    assert first_wrong("magic ring", thirteen, (scallops, None), **ROUNDS) == "2 join"


def test_every_stitch_of_a_circle_has_its_petal() -> None:
    ring = ("ch 1, 5 sc in ring, join", 5)
    petals = "*(ch 3, 2 dc, ch 3, sl st) in same st, sl st in next st; rep from * around"
    assert first_wrong("magic ring", ring, (petals, "10 dc, 10 ch-3 sps"), **ROUNDS) == ""
    assert first_wrong("magic ring", ring, (petals, "10 dc, 10 sl st, 10 ch-3 sps"), **ROUNDS) == ""
    assert first_wrong("magic ring", ring, (petals, "8 dc, 8 sl st, 8 ch-3 sps"), **ROUNDS) == "2 count"
    assert first_wrong("magic ring", ring, (petals, "10 dc, 9 sl st, 10 ch-3 sps"), **ROUNDS) == "2 count"


def test_the_last_stitch_is_shared_where_all_before_it_are() -> None:
    base = ("sc in 2nd ch from hook and in each ch across, turn", 7)
    line = "ch 1, sc in first sc, *sc3tog over same sc and next 2 sc; rep from * to end, sc in last sc, turn"
    assert first_wrong("chain 8", base, (line, "2 sc, 3 sc3tog")) == ""
    assert first_wrong("chain 8", base, (line, 5)) == ""
    assert first_wrong("chain 8", base, (line, 4)) == "2 count"
    assert first_wrong("chain 8", base, (line, None)) == "2 fit"
    apart = "ch 1, sc in first 3 sc, sc2tog twice, sc in last sc, turn"
    assert first_wrong("chain 8", base, (apart, 6)) == "2 fit"


def test_a_chain_before_the_slip_stitch_to_a_space_is_not_yet_the_turning_chain() -> None:
    on = "*ch 3, sc in next ch-3 sp; rep from * across, turn"
    line = f"ch 1, sl st in first ch-3 sp, ch 1, sc in same sp, {on}"
    assert first_wrong("chain 10", ROW_OF_NINE, (line, "4 sc, 3 ch-3 sps")) == ""
    assert first_wrong("chain 10", ROW_OF_NINE, (line, 5)) == "2 count"
    assert first_wrong("chain 10", ROW_OF_NINE, (line.replace("first", "next"), "4 sc, 3 ch sps")) == ""
    in_a_stitch = f"ch 1, sl st in first sc, ch 1, sc in next ch-3 sp, {on}"
    assert first_wrong("chain 10", ROW_OF_NINE, (in_a_stitch, "4 sc, 3 ch-3 sps")) == "2 fit"


def test_a_tape_leaves_as_much_behind_its_space_as_lies_before_it() -> None:
    of = {"turning chains": {"dc": "does not count"}}
    first = ("ch 3, (2 dc, ch 2, 2 dc) in ring, turn", "4 dc, 1 ch-2 sp")
    line = "ch 5, (2 dc, ch 2, 2 dc) in ch-2 sp, turn"
    ring = "chain 6, joined"
    assert first_wrong(ring, first, (line, "4 dc, 1 ch-2 sp"), (line, "4 dc, 1 ch-2 sp"), **of) == ""
    assert first_wrong(ring, first, (line, 4), (line, 4), **of) == ""
    assert first_wrong(ring, first, (line, 5), **of) == "2 count"
    assert first_wrong(ring, first, (line, None), **of) == "2 fit"
    uneven = ("ch 3, (2 dc, ch 2, 3 dc) in ring, turn", "5 dc, 1 ch-2 sp")
    assert first_wrong(ring, uneven, (line, "4 dc, 1 ch-2 sp"), **of) == "2 fit"


@pytest.mark.parametrize(
    ("line", "count", "wrong"),
    [
        ("sk next 10 unworked sts of row 1, {join}, sc in same st, sc in each rem st across, turn", 10, ""),
        ("sk next 9 unworked sts of row 1, {join}, sc in same st, sc in each rem st across, turn", 11, ""),
        (
            "sk next 9 unworked sts of row 1, {join}, sc in same st, sc in each rem st across, turn",
            10,
            "4 count",
        ),
        ("sk next 20 unworked sts of row 1, {join}, sc in same st, turn", 1, "4 fit"),
        ("{join}, sc in same st and in next 9 sts, turn", 10, "4 fit"),
        ("{join}, sc in same st and in next 9 sts, leave remaining sts unworked, turn", 10, ""),
        ("{join}, sc in each unworked st across, turn", 20, ""),
        ("with RS facing, {join}, sc in each st across, turn", 20, ""),
        ("{join}, sc in same st and in next 9 unworked sts, turn", 20, "4 fit"),
    ],
)
def test_a_second_shoulder_goes_along_what_was_left(line: str, count: int, wrong: str) -> None:
    rows = (
        ("sc in 2nd ch from hook and in each ch across, turn", 30),
        ("ch 1, sc in next 10 sts, leave remaining sts unworked, turn", 10),
        ("ch 1, sc in each st across, fasten off", 10),
    )
    joined = "join yarn with sl st in next unworked st, ch 1"
    assert first_wrong("chain 31", *rows, (line.format(join=joined), count)) == wrong


def test_a_picot_is_named_behind_the_line_that_tells_it() -> None:
    picot = "ch 3, sl st in 3rd ch from hook (picot made)"
    told = f"ch 1, *sc in next ch, {picot}, sc in next ch; rep from * around, join"
    named = "ch 1, *sc in each of next 2 sc, picot; rep from * around, join"
    first = (told, "8 sc, 4 picots")
    ring = "chain 8, joined"
    assert first_wrong(ring, first, (named, "8 sc, 4 picots"), **ROUNDS) == ""
    assert first_wrong(ring, first, (named, "8 sc, 8 picots"), **ROUNDS) == "2 count"
    into_it = "ch 1, *sc in next sc, sc in next picot, sc in next sc; rep from * around, join"
    assert first_wrong(ring, first, (into_it, 12), **ROUNDS) == ""
    untold = (told.replace(" (picot made)", ""), "8 sc, 4 picots")
    assert first_wrong(ring, untold, (named, "8 sc, 4 picots"), **ROUNDS) == "2 reading"
