"""Sides named late, sizes without a stitch of a stretch, and pieces that take one opening each."""

from typing import Any

import pytest

from .test_doubt import met, rounds

FIRST = ("sc in 2nd ch from hook and in each ch across, turn", 10)
NEXT = ("ch 1, sc in each sc across, turn", 10)


@pytest.mark.parametrize(
    ("sides", "wanted"),
    [
        (("", "RS", ""), []),
        (("", "RS", "WS"), []),
        (("", "RS", "RS"), ["side-differs"]),
        (("", "", "WS"), []),
        (("RS", "RS", ""), ["side-differs"]),
    ],
)
def test_the_first_row_that_names_its_side_says_the_others(sides: tuple[str, ...], wanted: list[str]) -> None:
    lines: list[tuple[Any, ...]] = [
        (*line, {"side": side} if side else {}) for line, side in zip((FIRST, NEXT, NEXT), sides, strict=True)
    ]
    piece = rounds(*lines, worked="rows", start="chain 11")
    assert [rule for _, _, rule in met(piece)] == wanted


@pytest.mark.parametrize(("count", "wanted"), [("10 (14)", []), ("11 (14)", ["works-past-the-end"])])
def test_to_the_end_may_be_no_stitch_in_one_size(count: str, wanted: list[str]) -> None:
    piece = rounds(
        ("ch 1, sc in each ch around, join", "12 (16)"),
        ("ch 1, *sc in next 4 sts, sc2tog; rep from * once more, sc in each st to end, join", count),
        start="chain 12 (16), joined",
    )
    assert [rule for _, _, rule in met(piece, sizes=["S", "M"])] == wanted


def test_to_the_end_with_nothing_left_is_an_error_in_the_only_size() -> None:
    piece = rounds(
        ("ch 1, sc in each ch around, join", 12),
        ("ch 1, *sc in next 4 sts, sc2tog; rep from * once more, sc in each st to end, join", 10),
        start="chain 12, joined",
    )
    assert [rule for _, _, rule in met(piece)] == ["works-past-the-end"]


YOKE = rounds(
    ("ch 3 (counts as dc), dc in each ch around, join", 40),
    (
        "ch 3 (counts as dc), dc in next 9 dc, ch 4, sk next 10 dc, dc in next 10 dc, ch 4, sk next 10 dc, "
        "join",
        "20 dc, 2 ch-4 sps",
    ),
    start="chain 40, joined",
)


@pytest.mark.parametrize(("stitches", "wanted"), [(9, []), (8, ["stitches-left-over"])])
def test_a_sleeve_takes_one_of_two_openings(stitches: int, wanted: list[str]) -> None:
    line = f"join yarn with sl st in first skipped dc, ch 3 (counts as dc), dc in next {stitches} dc, join"
    sleeve = rounds((line, stitches + 1), start={"edge": "piece", "round": 1, "stitches": "unworked"})
    assert [rule for _, _, rule in met(YOKE, {**sleeve, "make": 2})] == wanted


@pytest.mark.parametrize(("count", "wanted"), [(10, []), (11, ["count-differs"])])
def test_a_second_shoulder_is_counted_too(count: int, wanted: list[str]) -> None:
    piece = rounds(
        FIRST,
        ("ch 1, sc in next 3 sts, leave remaining sts unworked, fasten off", 3),
        (
            "with RS facing, sk next 4 unworked sts of row 1, join yarn with sl st in next unworked st, "
            "ch 1, sc in same st, sc in each rem st across, turn",
            count - 7,
        ),
        worked="rows",
        start="chain 11",
    )
    assert [rule for _, _, rule in met(piece)] == wanted


PATCH = rounds(
    ("dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn", 10),
    *[("ch 3 (counts as dc), dc in each dc across, turn", 10)] * 4,
    worked="rows",
    start="chain 12",
)
OTHER_SIDE = "3 sc in corner, sc in each ch to next corner, 3 sc in corner, 2 sc in each row end to end"
ROW_ENDS = "2 sc in each row end to next corner"


@pytest.mark.parametrize(("stitches", "wanted"), [(8, []), (7, ["stitches-left-over"])])
def test_the_last_stitch_of_a_side(stitches: int, wanted: list[str]) -> None:
    line = (
        f"ch 1, 3 sc in first st, sc in next {stitches} dc, 3 sc in last st, {ROW_ENDS}, {OTHER_SIDE}, join"
    )
    edging = rounds((line, None), start={"edge": "piece", "around": True})
    assert [rule for _, _, rule in met(PATCH, edging)] == wanted


@pytest.mark.parametrize(
    ("stitches", "wanted"), [(8, []), (7, ["stitches-left-over"]), (9, ["no-such-place"])]
)
def test_the_stitches_over_the_foundation_by_their_kind(stitches: int, wanted: list[str]) -> None:
    side = f"3 sc in corner, sc in next {stitches} dc, 3 sc in corner, {ROW_ENDS}"
    edging = rounds(
        (f"ch 1, *{side}; rep from * once more, join", None), start={"edge": "piece", "around": True}
    )
    assert [rule for _, _, rule in met(PATCH, edging)] == wanted


@pytest.mark.parametrize("count", ["12 (16)", 12])
def test_each_stitch_twice_over_is_an_error_in_sizes_too(count: object) -> None:
    sizes = {"sizes": ["S", "M"]} if isinstance(count, str) else {}
    piece = rounds(
        ("ch 1, sc in each ch around, join", count),
        ("ch 1, sc in each st around, sc in each st around, join", count),
        start="chain 12 (16), joined" if sizes else "chain 12, joined",
    )
    assert {rule for _, _, rule in met(piece, **sizes)} == {"works-past-the-end"}


def test_the_last_stitch_is_shared_with_a_gathered_one_alone() -> None:
    rows = [FIRST, ("ch 1, sc in next 3 sts, sk next st, sc in next 6 sts, sc in last st, turn", 10)]
    assert [rule for _, _, rule in met(rounds(*rows, worked="rows", start="chain 11"))] == [
        "works-past-the-end"
    ]
