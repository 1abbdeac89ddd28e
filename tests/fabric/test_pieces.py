"""Several pieces: edges picked up, borders with corners, joining as you go, short rows."""

from typing import Any

import pytest

from loopleaf.fabric import Made, RoundWork
from tests.yaml_text import read_yaml

from .test_going_on import worked

FRONT: dict[str, Any] = {
    "title": "Front",
    "yarn": "A",
    "worked": "rows",
    "start": "chain 11",
    "rows": [
        {"row": 1, "work": "sc in 2nd ch from hook and in each ch across, turn", "count": 10},
        {"rows": "2-8", "work": "ch 1, sc in each st across, turn", "count": 10},
    ],
}


def rules(document: dict[str, Any]) -> list[tuple[str, str]]:
    work = worked(document)
    assert [p.problem for p in work.problems if p.problem.severity == "error"] == []
    return [
        (piece.name, trouble.rule) for piece in work.pieces for r in piece.rounds for trouble in r.troubles
    ] + [(piece.name, trouble.rule) for piece in work.pieces for trouble in piece.troubles]


def on(edge: dict[str, Any] | str, *rows: tuple[str, Any], worked: str = "rows") -> dict[str, Any]:
    word = "row" if worked.startswith("rows") else "round"
    return {
        "title": "Band",
        "yarn": "A",
        "worked": worked,
        "start": edge,
        f"{word}s": [{word: n, "work": work, "count": count} for n, (work, count) in enumerate(rows, 1)],
    }


def test_a_stitch_in_the_end_of_each_row() -> None:
    band = on(
        {"edge": "front", "row ends": True},
        ("sc in end of each row, turn", 8),
        ("ch 1, sc in each st across", 8),
    )
    assert rules({"pieces": {"front": FRONT, "band": band}}) == []


def test_more_stitches_in_taller_rows() -> None:
    tall = {
        **FRONT,
        "start": "chain 12",
        "rows": [
            {
                "row": 1,
                "work": "dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn",
                "count": 10,
            },
            {"rows": "2-5", "work": "ch 3 (counts as dc), dc in next 9 sts, turn", "count": 10},
        ],
    }
    band = on({"edge": "front", "row ends": True}, ("2 sc in end of each dc row", 10))
    assert rules({"pieces": {"front": tall, "band": band}}) == []


def test_so_many_stitches_evenly() -> None:
    band = on({"edge": "front", "row ends": True}, ("7 sc evenly along edge", 7))
    assert rules({"pieces": {"front": FRONT, "band": band}}) == []


def test_a_border_around_a_piece_worked_in_rows() -> None:
    border = on(
        {"edge": "front", "around": True},
        (
            "ch 1, 3 sc in first st, sc in next 8 sts, 3 sc in next st, sc in end of next 8 rows, "
            "3 sc in next ch, sc in next 8 chs, 3 sc in next ch, sc in end of next 8 rows, join",
            44,
        ),
        ("ch 1, sc in each st around, join", 44),
        worked="joined rounds",
    )
    assert rules({"pieces": {"front": FRONT, "border": border}}) == []


@pytest.mark.parametrize(
    ("line", "count"),
    [  # ten stitches, eight row ends, ten chains, eight row ends
        ("ch 1, *3 sc in corner, 7 sc evenly along edge; rep from * 3 more times, join", 40),
        (
            "ch 1, 3 sc in corner, sc in each st across, 3 sc in corner, sc in end of each row, "
            "3 sc in corner, sc in each ch across, 3 sc in corner, sc in end of each row, join",
            12 + 8 + 8 + 8 + 8,
        ),
        (
            "ch 1, sc in each st across, ch 2, sc in end of each row, ch 2, sc in each ch across, ch 2, "
            "sc in end of each row, ch 2, join",
            36,
        ),
        (
            "ch 1, sc in each st across to corner, 3 sc in corner, 8 sc evenly across to next corner, "
            "3 sc in corner, sc in each ch across, 3 sc in corner, 8 sc evenly along edge, join",
            9 + 3 + 8 + 3 + 8 + 3 + 8,
        ),
        ("ch 1, 44 sc evenly around, join", 44),
        ("ch 1, sc in each st around, join", 36),
    ],
)
def test_a_border_goes_side_by_side(line: str, count: int) -> None:
    border = on({"edge": "front", "around": True}, (line, count), worked="joined rounds")
    assert rules({"pieces": {"front": FRONT, "border": border}}) == []


def test_a_border_round_a_granny_square_by_its_corners() -> None:
    square = {
        "title": "Square",
        "yarn": "A",
        "worked": "joined rounds",
        "start": "magic ring",
        "rounds": [
            {
                "round": 1,
                "work": "ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) x 3, "
                "join to top of ch-3",
                "count": "12 dc, 4 ch-2 sps",
            }
        ],
    }
    border = on(
        {"edge": "square", "around": True},
        (
            "join A with sc in any corner sp, 2 sc in same sp, "
            "(sc in next 3 sts, 3 sc in corner sp) x 3, sc in next 3 sts, join",
            24,
        ),
        worked="joined rounds",
    )
    assert rules({"pieces": {"square": square, "border": border}}) == []


@pytest.mark.parametrize(
    ("count", "wrong"),
    [
        ("12", []),
        ("12 sc, 4 ch-3 sps", []),
        ("12 sc, 2 sl sts", []),
        ("12 sc, 3 sl sts", [("square 2", "count-differs")]),
        ("14", [("square 2", "count-differs")]),
    ],
)
def test_joining_as_you_go(count: str, wrong: list[tuple[str, str]]) -> None:
    first = {
        "title": "Square 1",
        "yarn": "A",
        "worked": "joined rounds",
        "start": "magic ring",
        "rounds": [{"round": 1, "work": "ch 1, (3 sc in ring, ch 3) x 4, join, fasten off", "count": 12}],
    }
    second = {
        **first,
        "title": "Square 2",
        "rounds": [
            {
                "round": 1,
                "work": "ch 1, (3 sc in ring, ch 3) twice, (3 sc in ring, ch 1, "
                "sl st in corresponding ch-sp of square 1, ch 1) twice, join, fasten off",
                "count": count,
            }
        ],
    }
    assert rules({"pieces": {"square 1": first, "square 2": second}}) == wrong


@pytest.mark.parametrize(
    ("join", "count", "wrong"),
    [
        ("ch 1, sl st in corresponding ch-2 sp of square 1, ch 1", "12 sc, 4 ch-2 sps", []),
        ("ch 1, sl st in corresponding ch-2 sp of square 1, ch 1", "12 sc, 2 ch-2 sps, 2 ch-3 sps", []),
        (
            "ch 1, sl st in corresponding ch-2 sp of square 1, ch 1",
            "12 sc, 3 ch-2 sps, 1 ch-3 sp",
            [("square 2", "count-differs")],
        ),
        (
            "ch 2, sl st in corresponding ch-2 sp of square 1, ch 1",
            "12 sc, 4 ch-2 sps",
            [("square 2", "count-differs")],
        ),
        ("sl st in corresponding ch-2 sp of square 1", "12 sc, 4 ch-2 sps", []),
        ("sl st in corresponding ch-2 sp of square 1", "12 sc, 2 ch-2 sps", []),
        ("sl st in corresponding ch-2 sp on first square", "12 sc, 2 ch-2 sps", []),
        ("sl st in adjacent ch-2 sp of square 1", "12 sc, 2 ch-2 sps", []),
        ("sl st in adjacent ch-4 sp on first square", "12 sc, 2 ch-2 sps", [("square 2", "no-such-place")]),
        ("sl st in corresponding ch-2 sp of square 1", "12 sc, 4 ch-sps", []),
        ("sl st in corresponding st of square 1", "12 sc, 4 ch-sps", [("square 2", "count-differs")]),
        (
            "sl st in corresponding ch-2 sp of square 1",
            "12 sc, 3 ch-2 sps",
            [("square 2", "count-differs")],
        ),
        ("ch 1, sl st in any ch-2 sp of square 1, ch 1", "12 sc, 4 ch-2 sps", []),
        ("ch 1, sl st in next ch-2 sp of square 1, ch 1", "12 sc, 2 ch-2 sps, 2 ch-3 sps", []),
        (
            "ch 1, sl st in any ch-2 sp of square 1, ch 1",
            "12 sc, 3 ch-2 sps",
            [("square 2", "count-differs")],
        ),
        (
            "ch 1, sl st in any ch-4 sp of square 1, ch 1",
            "12 sc, 4 ch-2 sps",
            [("square 2", "no-such-place")],
        ),
    ],
)
def test_an_arch_joined_as_you_go_counts_like_the_one_it_is_joined_to(
    join: str, count: str, wrong: list[tuple[str, str]]
) -> None:
    first = {
        "title": "Square 1",
        "yarn": "A",
        "worked": "joined rounds",
        "start": "magic ring",
        "rounds": [{"round": 1, "work": "ch 1, (3 sc in ring, ch 2) x 4, join, fasten off", "count": 12}],
    }
    work = f"ch 1, (3 sc in ring, ch 2) twice, (3 sc in ring, {join}) twice, join, fasten off"
    second = {**first, "title": "Square 2", "rounds": [{"round": 1, "work": work, "count": count}]}
    assert rules({"pieces": {"square 1": first, "square 2": second}}) == wrong


@pytest.mark.parametrize("name", ["first", "last", "next", "second", "same"])
def test_a_word_that_says_which_place_is_no_piece(name: str) -> None:
    piece = {
        "title": "Motif",
        "yarn": "A",
        "worked": "joined rounds",
        "start": "magic ring",
        "rounds": [
            {"round": 1, "work": "ch 1, 12 sc in ring, join with sl st in first sc", "count": 12},
            {"round": 2, "work": "ch 1, sc in same st, sc in next 10 sc, 2 sc in last sc, join", "count": 13},
        ],
    }
    joined = {
        **piece,
        "title": "Other",
        "rounds": [
            {
                "round": 1,
                "work": f"ch 1, 12 sc in ring, sl st in any sc of {name}, join",
                "count": "12 sc, 1 sl st",
            }
        ],
    }
    assert rules({"pieces": {name: piece}}) == []
    assert rules({"pieces": {name: piece, "other": joined}}) == []


def test_the_legs_of_two_pieces_joined_into_one() -> None:
    leg = {
        "title": "Leg",
        "make": 2,
        "yarn": "A",
        "worked": "spiral rounds",
        "start": "magic ring",
        "rounds": [{"round": 1, "work": "12 sc in ring", "count": 12}],
    }
    body = on(
        {"edge": "leg", "around": True},
        ("sc in next 12 sts, sc in next 12 sts of leg 2", 24),
        ("sc in each st around", 24),
        worked="spiral rounds",
    )
    assert rules({"pieces": {"leg": leg, "body": body}}) == []


@pytest.mark.parametrize(
    ("round", "wanted"),
    [
        ("sc in next 3 chs, sc in next 12 sts, sc in other side of next 3 chs", []),
        ("sc in each of next 3 chs, sc in next 12 sts, sc in other side of each of next 3 chs", []),
        ("sc in next 3 chs, sc in next 12 sts", [("leg 2", "count-differs")]),
        ("sc in next 4 chs, sc in next 12 sts, sc in other side of next 4 chs", [("leg 2", "no-such-place")]),
        ("sc in other side of next 3 chs, sc in next 12 sts, sc in next 3 chs", [("leg 2", "no-such-place")]),
    ],
)
def test_legs_with_a_chain_between_them(round: str, wanted: list[tuple[str, str]]) -> None:
    leg = {
        "title": "Leg",
        "yarn": "A",
        "worked": "spiral rounds",
        "start": "magic ring",
        "rounds": [{"round": 1, "work": "12 sc in ring", "count": 12}],
    }
    work = f"ch 3, sc in next 12 sts of leg 1, {round}"
    more = [
        {"round": 2, "work": work, "count": 30},
        {"round": 3, "work": "sc in each st around", "count": 30},
    ]
    other = {**leg, "rounds": [*leg["rounds"], *more]}
    found = rules({"pieces": {"leg 1": leg, "leg 2": other}})
    assert found == wanted


@pytest.mark.parametrize(
    ("again", "wanted"),
    [
        ("rep from * 4 more times", []),
        ("rep from * 3 more times", [("tape", "count-differs")]),
    ],
)
def test_a_tape_takes_up_one_copy_after_another(again: str, wanted: list[tuple[str, str]]) -> None:
    flag = {**FRONT, "title": "Flag", "make": 5}
    line = (
        f"sc in 2nd ch from hook and in each ch across, *ch 4, sc in next 10 sts of next flag; {again}, turn"
    )
    tape = on("chain 7", (line, "56 sc, 5 ch-4 sps"))  # 6 + 5 times 10
    assert rules({"pieces": {"flag": flag, "tape": tape}}) == wanted


def test_what_a_square_means_is_told_at_the_key_once() -> None:
    front = {
        **FRONT,
        "start": "chain 4",
        "grid": {"rows": ["#.#", "...", "##."], "key": {"#": "block", ".": "sc in next st"}},
        "rows": [{"rows": "1-3", "from": "grid"}],
    }
    work = worked({"pieces": {"front": front}})
    assert [(p.path[-2:], p.problem.rule) for p in work.problems] == [(("key", "#"), "unknown-instruction")]
    assert [one.troubles for one in work.pieces[0].rounds] == [[], [], []]


@pytest.mark.parametrize(
    ("fourth", "wanted"),
    [
        ("sc in next 14 sts, sc in next 6 unworked sts", []),
        ("sc in each st across, sc in each unworked st across", []),
        ("sc in each st across, sc in next 6 unworked sts of row 1", []),
        ("sc in each st across, sc in each unworked st of row 1", []),
        ("sc in next 14 sts, sc in next 7 unworked sts", [("front", "works-past-the-end")]),
        ("sc in next 12 sts, sc in next 6 unworked sts", [("front", "stitches-left-over")]),
    ],
)
def test_short_rows_take_up_again_what_was_left(fourth: str, wanted: list[tuple[str, str]]) -> None:
    front = {
        **FRONT,
        "start": "chain 21",
        "rows": [
            {"row": 1, "work": "sc in 2nd ch from hook and in each ch across, turn", "count": 20},
            {"row": 2, "work": "ch 1, sc in next 14 sts, leave last 6 sts unworked, turn", "count": 14},
            {"row": 3, "work": "ch 1, sc in each st across, turn", "count": 14},
            {"row": 4, "work": f"ch 1, {fourth}", "count": 20},
        ],
    }
    assert rules({"pieces": {"front": front}}) == wanted


def test_a_piece_that_is_not_there() -> None:
    assert rules(
        {"pieces": {"band": on({"edge": "front", "row ends": True}, ("sc in end of each row", 8))}}
    ) == [("band", "no-such-place")]


FRONTS = """
title: Two fronts
terms: US
turning chains: {dc: counts, sc: does not count}
pieces:
  left front:
    worked: rows
    start: chain 21
    rows:
      - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: 20}
      - {row: 2, work: "ch 3, dc2tog, dc in each st to end, turn", count: 19}
      - {row: 3, work: "ch 3, dc in first st, dc in next 11 sts, ch 1, sk next st, dc in last 6 sts, turn"}
      - {row: 4, as: 2, reversed: true, count: 18}
      - {row: 5, work: "ch 1, sc in next 3 sts, 2 sc in next st, hdc in each st to end", count: 19}
  right front: {as: left front, reversed: true}
"""


def test_a_piece_worked_as_another_with_all_shaping_reversed_is_its_mirror_image():
    work = worked(read_yaml(FRONTS))
    left, right = work.pieces
    assert [t for piece in (left, right) for r in piece.rounds for t in r.troubles] == []
    assert [size.count for r in right.rounds for size in r.sizes if size] == [20, 19, 19, 18, 19]
    for one, other in zip(left.rounds, right.rounds, strict=True):
        last = sum(size.uses for size in one.sizes if size) - 1
        turned = [(kind, tuple(sorted(last - at for at in into))) for kind, into in stitches(other)]
        assert stitches(one) == turned[::-1]


def stitches(round_: RoundWork) -> list[tuple[str, tuple[int, ...]]]:
    """Each stitch of a row and the numbers of the places it leans on, counted in the row's own direction."""
    worked = round_.sizes[0]
    assert worked is not None
    below = worked.uses
    found = []
    for made in worked.made:
        if isinstance(made, Made) and made.number:
            numbers = [place.number - 1 for place in made.into if isinstance(place, Made)]
            turned = round_.plan.number > 1
            found.append((made.kind, tuple(sorted(below - 1 - n if turned else n - 1 for n in numbers))))
    return found


MAT = """
title: A mat with a border
terms: US
materials: {yarns: {A: {name: reed}, B: {name: foam}}}
pieces:
  mat:
    yarn: A
    worked: rows
    start: chain 21
    rows:
      - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: 20}
      - {rows: 2-8, work: "ch 1, sc in each st across, turn", count: 20}
  border:
    worked: joined rounds
    start: {edge: mat, around: true}
    rounds:
      - round: 1
        work: >-
          join B with sl st in any corner, ch 1, *3 sc in corner, sc in each st across to next corner,
          3 sc in corner, sc in end of each row to next corner; rep from * once more, join
        count: 64
      - round: 2
        work: >-
          ch 1, sc in next st, *3 sc in corner, sc in each st across to next corner; rep from * on 2nd,
          3rd and 4th sides, join
        count: 72
  strip:
    worked: rows
    start: {edge: mat, row ends: true}
    rows:
      - {row: 1, work: "3 sc in every 2 row ends across, turn", count: 12}
      - {row: 2, work: "ch 1, sc in each st across", count: 12}
"""


def test_a_border_around_rows_finds_the_four_corners_and_both_sides() -> None:
    """20 + 8 + 20 + 8 places, of which the four corner stitches take three each: 56 + 4 × 2 = 64."""
    work = worked(read_yaml(MAT))
    assert [t for piece in work.pieces for r in piece.rounds for t in r.troubles] == []
    first = work.pieces[1].rounds[0].sizes[0]
    assert first is not None
    ends = [made.into[0] for made in first.made if isinstance(made, Made) and made.role == "stitch"]
    sides = [end.into[0] for end in ends if isinstance(end, Made) and end.role == "row-end"]
    assert len(set(map(id, sides))) == 16
    assert {getattr(one, "number", 0) for one in sides} == {1, 20}


def test_a_rate_along_row_ends_is_spread_over_them() -> None:
    work = worked(read_yaml(MAT))
    strip = work.pieces[2].rounds[0].sizes[0]
    assert strip is not None
    on = [made.into[0] for made in strip.made if isinstance(made, Made) and made.number]
    assert [sum(1 for one in on if one is end) for end in dict.fromkeys(on)] == [2, 1] * 4
