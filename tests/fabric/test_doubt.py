"""One mistake is met once: what follows from it stays silent, and the next mistake is found all the same."""

from typing import Any

import pytest

from .test_going_on import in_rounds, troubles, worked


def met(piece: dict[str, Any], *others: dict[str, Any], **more: Any) -> list[tuple[str, str, str]]:
    pieces = {"piece": piece, **{f"other {at}": other for at, other in enumerate(others, 1)}}
    work = worked({**more, "pieces": pieces})
    words = [(one.piece, one.round, one.problem.rule) for one in work.problems]
    plans = [(name, problem.round, problem.rule) for name, problem in work.plans]
    return words + plans + [
        (p.name, r.plan.label, t.rule) for p in work.pieces for r in p.rounds for t in r.troubles
    ]  # fmt: skip


def rounds(
    *lines: tuple[Any, ...], worked: str = "joined rounds", start: Any = "magic ring"
) -> dict[str, Any]:
    """A piece of lines with their counts (None: none), numbered from 1."""
    word = "row" if worked == "rows" else "round"
    entries = []
    for number, line in enumerate(lines, 1):
        entry: dict[str, Any] = {word: number, "work": line[0]}
        if line[1] is not None:
            entry["count"] = line[1]
        entries.append(entry | (line[2] if line[2:] else {}))
    return {"title": "P", "yarn": "A", "worked": worked, "start": start, f"{word}s": entries}


SIX = ("6 sc in ring, join", 6)
EACH = "ch 1, sc in each st around, join"


@pytest.mark.parametrize(
    ("third", "wanted"),
    [
        (("ch 1, (sc in next st, 2 sc in next st) x 6, join", 18), []),
        (("ch 1, (sc in next 3 sts, 2 sc in next st) x 6, join", 18), ["3 works-past-the-end"]),
        (("ch 1, (sc in next st, 2 sc in next st) x 6, join", 19), ["3 count-differs"]),
    ],
)
def test_a_second_mistake_among_plain_stitches_is_found(third: tuple[str, int], wanted: list[str]) -> None:
    piece = rounds(SIX, ("ch 1, 2 sc in each st around, join", 13), third)
    assert [f"{label} {rule}" for _, label, rule in met(piece)] == ["2 count-differs", *wanted]


def test_a_mistake_after_a_round_that_can_not_be_read_is_found_where_numbers_tell() -> None:
    unread = ("ch 1, 2 sc innn each st around, join", 12)
    right = ("ch 1, (sc in next st, 2 sc in next st) x 6, join", 18)
    wrong = ("ch 1, (sc in next st, 2 sc in next st) x 5, join", 15)
    assert met(rounds(SIX, unread, right)) == [("piece", "2", "unknown-instruction")]
    assert met(rounds(SIX, unread, wrong))[1:] == [("piece", "3", "stitches-left-over")]
    spaces = ("ch 1, sc in each ch-2 sp around, join", 6)
    assert met(rounds(SIX, unread, spaces)) == [("piece", "2", "unknown-instruction")]


def test_doubt_ends_with_a_count_that_is_met() -> None:
    lost = ("ch 1, (sc in next 4 sts, 2 sc in next st) x 6, join", None)
    loose = (EACH, None)
    stated = ("ch 1, 12 sc evenly along edge, join", 12)
    wrong = (EACH, 13)
    assert met(rounds(SIX, lost, loose, loose)) == [("piece", "2", "works-past-the-end")]
    found = met(rounds(SIX, lost, loose, stated, wrong))
    assert [label for _, label, _ in found] == ["2", "5"]


def test_rows_that_repeat_a_wrong_row_say_nothing_new() -> None:
    lines = [
        ("sc in 2nd ch from hook and in each ch across, turn", 12),
        ("ch 1, (sc in next 2 sts, sc2tog) x 3, turn", 10),
        ("ch 1, (sc in next 2 sts, 2 sc in next st) x 3, turn", 12),
        ("ch 1, sc in each st across, turn", 12),
    ]
    piece = rounds(*lines, worked="rows", start="chain 13")
    piece["rows"] += [
        {"rows": "5-16", "repeat": "2-4"},
        {"row": 17, "work": "ch 1, (sc in next st, sk next st) x 6, turn", "count": 6},
        {"row": 18, "work": "ch 1, sc in each st across", "count": 6},
    ]
    assert met(piece) == [("piece", "2", "count-differs")]
    piece["rows"][-1]["count"] = 7
    assert met(piece) == [("piece", "2", "count-differs"), ("piece", "18", "count-differs")]


def test_a_piece_on_the_edge_of_an_erring_one_is_silent() -> None:
    base = rounds(
        ("sc in 2nd ch from hook and in each ch across, turn", 12),
        ("ch 1, sc in nexxt 12 sts, turn", 12),
        ("ch 1, sc in each st across", 12),
        worked="rows",
        start="chain 13",
    )
    edge = rounds(("2 sc in end of each row", 6), worked="rows", start={"edge": "piece", "row ends": True})
    assert met(base, edge) == [("piece", "2", "unknown-instruction")]
    base["rows"][1]["work"] = "ch 1, sc in next 12 sts, turn"
    edge["rows"][0]["count"] = 7
    assert met(base, edge) == [("other 1", "1", "count-differs")]


@pytest.mark.parametrize(("begins", "found"), [({"round": 2}, True), ({"round": 3}, False), ({}, False)])
def test_a_piece_on_a_round_before_the_mistake_is_checked(begins: dict[str, Any], found: bool) -> None:
    base = rounds(SIX, (EACH, 6), ("ch 1, 2 sc in each st around, join", 13))
    cuff = rounds((EACH, 7), start={"edge": "piece", **begins})
    wrong = [("piece", "3", "count-differs")]
    assert met(base, cuff) == [*wrong, *([("other 1", "1", "count-differs")] if found else [])]


def test_an_author_s_stitch_is_wrong_where_it_is_told() -> None:
    lines = (
        SIX,
        ("ch 1, fan in each st around, join", "6 fan"),
        ("ch 1, fan in each st around, join", "18 fan"),
    )
    for work, rule in (
        ("(3 sc in same st", "unknown-instruction"),
        ("3 sc in same st, turn", "turn-not-expected"),
        ("3 sc in same st, fasten off", "unknown-instruction"),
    ):
        special = {"special stitches": {"fan": {"work": work, "text": "A fan."}}}
        assert met(rounds(*lines), **special) == [("", "", rule)]


def test_a_round_lost_is_missed_once() -> None:
    piece = rounds(
        SIX,
        ("ch 1, 2 sc in each st around, join", 12),
        ("ch 1, (sc in next 2 sts, 2 sc in next st) x 6, join", 24),
        (EACH, 24),
    )
    piece["rounds"][2]["round"], piece["rounds"][3]["round"] = 4, 5
    assert met(piece) == [("piece", "4", "rounds-out-of-order")]


ROW = ("ch 1, sc in each st across", 12)
FIRST = ("sc in 2nd ch from hook and in each ch across", 12)


@pytest.mark.parametrize(
    ("lines", "wanted"),
    [
        ([FIRST, ("turn, ch 1, sc in each st across", 12), ("ch 1, turn, sc in each st across", 12)], []),
        ([(FIRST[0] + ", turn", 12), ("turn, " + ROW[0], 12)], ["2 turn-not-expected"]),
        ([("turn, " + FIRST[0], 12), ROW], ["1 turn-missing"]),
        ([(FIRST[0] + ", turn", 12), ("ch 1, sc in next 6 sts, turn, sc in next 6 sts", 12), ROW],
         ["2 turn-not-expected"]),
    ],
)  # fmt: skip
def test_turns_at_a_row_s_end_or_at_the_next_one_s_start(lines: list[Any], wanted: list[str]) -> None:
    found = met(rounds(*lines, worked="rows", start="chain 13"))
    assert [f"{label} {rule}" for _, label, rule in found] == wanted


def test_a_side_told_wrong_once() -> None:
    sides = ["RS", "RS", "RS", "WS"]
    lines = [(FIRST[0] + ", turn", 12, {"side": "RS"})]
    lines += [(ROW[0] + ", turn", 12, {"side": side}) for side in sides[1:]]
    assert met(rounds(*lines, worked="rows", start="chain 13")) == [("piece", "2", "side-differs")]


def test_a_yarn_that_isn_t_there_is_missed_once() -> None:
    piece = rounds(SIX, ("ch 1, 2 sc in each st around, join, fasten off", 12), (EACH, 12), (EACH, 12))
    piece["rounds"] += [{"round": 5, "as": 2, "count": 24}, {"round": 6, "as": 3, "count": 24}]
    assert met(piece) == [("piece", "3", "yarn-not-joined")]


@pytest.mark.parametrize(
    ("line", "count", "wanted"),
    [
        ("ch 1, *sc in next 2 sts, ch 1, sk 2 sts; rep from * to last st, sk 1 st, sc in next 2 sts, join",
         None, ["repeat-does-not-fit"]),
        ("ch 1, (sc in next st, ch 2, sk next st, dc in next st, sc in same sp) x 4, join", None,
         ["no-such-place"]),
        ("ch 1, ch 1, sc in each st around, join", "12 sc, 1 ch-1 sp", ["count-differs"]),
        ("ch 1, ch 1, sc in each st around, join", "12 sc, 1 ch-2 sp", []),
    ],
)  # fmt: skip
def test_said_in_the_round_itself(line: str, count: str | None, wanted: list[str]) -> None:
    piece = rounds(("ch 1, 12 sc in ring, join", 12), (line, count))
    assert [rule for _, _, rule in met(piece)] == wanted


def test_a_side_told_wrong_for_a_stretch_of_rows() -> None:
    lines = [(FIRST[0] + ", turn", 12, {"side": "RS"}), (ROW[0] + ", turn", 12), (ROW[0] + ", turn", 12)]
    piece = rounds(*lines, worked="rows", start="chain 13")
    piece["rows"][1:] = [
        {"rows": "2-5", "side": "RS", "work": ROW[0] + ", turn", "count": 12},
        {"row": 6, "side": "WS", "work": ROW[0], "count": 12},
    ]
    assert met(piece) == [("piece", "2", "side-differs")]


@pytest.mark.parametrize("end", ["join, ch 1", "join, ch 1, fasten off", "join"])
def test_a_chain_behind_the_join_is_no_space(end: str) -> None:
    first = (f"ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) x 3, {end}", "12 dc, 4 ch-2 sps")
    yarn = "join A with sl st in first st, " if "fasten" in end else ""
    second = (f"{yarn}ch 1, *sc in next 3 dc, 2 sc in next ch-2 sp; rep from * around, join", 20)
    assert met(rounds(first, second)) == []


def test_a_multiple_that_is_not_met_is_said_once() -> None:
    start = {"chain": 32, "multiple": 10, "plus": 1}
    lines = [("sc in 2nd ch from hook, *sc in next 9 chs, 2 sc in next ch; rep from * across", 34)]
    piece = rounds(*lines, worked="rows", start=start)
    work = worked({"pieces": {"piece": piece}})
    assert [t.rule for t in work.pieces[0].troubles] == ["multiple-not-met"]
    assert met(piece) == []


def test_what_names_a_missing_row_only_follows() -> None:
    piece = rounds((FIRST[0] + ", turn", 12), (ROW[0] + ", turn", 12), worked="rows", start="chain 13")
    piece["rows"] += [{"row": 4, "as": 3}, {"rows": "5-8", "repeat": "3-4"}, {"row": 9, "work": ROW[0]}]
    assert met(piece) == [("piece", "4", "rounds-out-of-order")]


def test_places_kept_for_what_follows_a_repeat() -> None:
    line = "ch 1, *sc in next st, sk next st; rep from * across, sk next st, 3 sc in last st"
    assert met(rounds((FIRST[0] + ", turn", 12), (line, 8), worked="rows", start="chain 13")) == []


@pytest.mark.parametrize(("count", "wanted"), [("4 fan", ["count-differs"]), ("4 fan, 1 sc", [])])
def test_a_stitch_beside_an_author_s_own_is_counted(count: str, wanted: list[str]) -> None:
    special = {"special stitches": {"fan": {"work": "3 dc in same st", "text": "A fan."}}}
    line = ("ch 1, sc in next st, fan in next 4 sts, leave last st unworked, join", count)
    assert [rule for _, _, rule in met(rounds(SIX, line), **special)] == wanted


def test_a_chain_before_the_yarn_and_the_turn_belongs_to_the_next_row() -> None:
    lines = [(FIRST[0] + ", ch 1, change to A, turn", 12), ("sc in each st across", "12 sc")]
    assert met(rounds(*lines, worked="rows", start="chain 13")) == []


def test_along_the_ends_of_rows_of_which_some_are_missing() -> None:
    base = rounds((FIRST[0] + ", turn", 12), (ROW[0] + ", turn", 12), ROW, worked="rows", start="chain 13")
    base["rows"][2]["row"] = 4
    edge = rounds(("2 sc in end of each row", 8), worked="rows", start={"edge": "piece", "row ends": True})
    assert met(base, edge) == [("piece", "4", "rounds-out-of-order")]


def test_a_repeat_of_rows_whose_last_number_is_wrong() -> None:
    lines = [(FIRST[0] + ", turn", 12), (ROW[0] + ", turn", 12), (ROW[0] + ", turn", 12)]
    piece = rounds(*lines, worked="rows", start="chain 13")
    piece["rows"] += [{"rows": "4-8", "repeat": "2-3"}, {"row": 10, "work": ROW[0], "count": 12}]
    assert met(piece) == [("piece", "10", "rounds-out-of-order")]
    piece["rows"][3]["rows"] = "4-10"
    assert met(piece) == [("piece", "10", "rounds-out-of-order")]


def test_a_wrong_count_in_the_first_round_does_not_turn_the_convention_in_the_second() -> None:
    work = in_rounds(
        ("ch 2, 10 hdc in ring, join", 11),
        ("ch 2, 2 hdc in each st around, join", 20),
        ("ch 2, [2 hdc in next st, hdc in next st] repeat 10 times, join", 30),
        **{"turning chains": {"hdc": "does not count"}},
    )
    assert troubles(work) == [("1", "turning-chain-contradicted")]


def test_a_bracket_so_many_times_is_not_in_doubt_where_neither_reading_fits() -> None:
    work = in_rounds(
        ("ch 1, 10 sc in ring, join", 10),
        ("ch 1, [2 sc in next st] repeat 10 times, join", 21),
        ("ch 1, sc in each st around, join", 20),
    )
    assert troubles(work) == [("2", "count-differs")]
    work = in_rounds(
        ("ch 1, 10 sc in ring, join", 10),
        ("ch 1, (2 sc in next st), repeat 9 times, join", 20),
    )
    assert troubles(work) == []


def test_a_start_with_too_few_sizes_leaves_the_others_in_doubt() -> None:
    """The file's own flaw is told; a size without a chain isn't told again at its first row."""
    piece = rounds(
        ("sc in 2nd ch from hook and in each ch across, turn", "10 (12, 14)"),
        ("ch 1, sc in each st across", "10 (12, 14)"),
        worked="rows",
        start="chain 11 (13)",
    )
    assert met(piece, sizes=["S", "M", "L"]) == []
    assert [rule for _, _, rule in met(rounds(*[("sc in 2nd ch from hook", None)], worked="rows"))] == [
        "no-such-place"
    ]


def test_a_forgotten_turn_is_told_by_its_side_alone() -> None:
    piece = rounds(
        ("ch 1, 6 sc in ring, 6 hdc in ring, join", 12, {"side": "RS"}),
        ("ch 1, hdc in next 6 hdc, sc in next 6 sc, join", 12, {"side": "WS"}),
    )
    kinds = {"sc": "does not count", "hdc": "does not count"}
    assert met(piece, **{"turning chains": kinds}) == [("piece", "2", "side-differs")]
