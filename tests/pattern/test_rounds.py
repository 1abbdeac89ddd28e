"""Rounds set out one by one, for every form in which an author may write them."""

import time
from typing import Any

import pytest

from loopleaf.pattern import Pattern, PlanProblem, RoundPlan, set_out

Row = dict[str, Any]
ABC: list[Row] = [{"row": "1", "work": "a"}, {"row": "2", "work": "b"}, {"row": "3", "work": "c"}]


def pattern(rows: list[Row], worked: str = "rows", **fields: Any) -> Pattern:
    key = "rounds" if worked.endswith("rounds") else "rows"
    return Pattern.model_validate(
        {
            "title": "t",
            "terms": "US",
            "sizes": ["S", "M", "L"],
            "gauge": {"stitch": "dc", "stitches": "14", "rows": "8", "over": "10 cm"},
            "pieces": {"p": {"worked": worked, key: rows} | fields},
        }
    )


def laid(rows: list[Row], worked: str = "rows", **fields: Any) -> tuple[list[RoundPlan], list[PlanProblem]]:
    return set_out(pattern(rows, worked, **fields), "p")


def sound(rows: list[Row], worked: str = "rows", **fields: Any) -> list[RoundPlan]:
    plans, problems = laid(rows, worked, **fields)
    assert problems == []
    return plans


def told(rows: list[Row], **fields: Any) -> PlanProblem:
    _, problems = laid(rows, **fields)
    assert len(problems) == 1, problems
    return problems[0]


def test_rounds_written_together() -> None:
    rounds: list[Row] = [
        {"heading": "Base"},
        {
            "round": "1",
            "work": "a",
            "count": "24",
            "side": "RS",
            "note": "So.",
            "picture": "x.jpg",
            "video": "6:10",
        },
        {"rounds": "2-4", "work": "b", "n": {"from": "2", "step": "1"}, "count": {"from": "32", "step": "8"}},
        {"rounds": "5-6", "work": "c", "count": "48", "adjustable": "height", "yarn": "B"},
    ]
    plans = sound(rounds, "joined rounds")
    assert [(one.label, one.work, one.n, one.stated) for one in plans] == [
        ("1", "a", None, "24"),
        ("2", "b", 2, "32"),
        ("3", "b", 3, "40"),
        ("4", "b", 4, "48"),
        ("5", "c", None, "48"),
        ("6", "c", None, "48"),
    ]
    first, third, last = plans[0], plans[2], plans[-1]
    assert (first.word, first.side, first.note, first.picture, first.video) == (
        "round",
        "RS",
        "So.",
        "x.jpg",
        "6:10",
    )
    assert (first.entry, first.entry_path) == (1, ("pieces", "p", "rounds", 1))
    assert third.work_path == ("pieces", "p", "rounds", 2, "work")
    assert third.stated_path == ("pieces", "p", "rounds", 2, "count")
    assert (last.adjustable, last.yarn, last.by_rule, last.sizes) == ("height", "B", "", None)


def test_counts_that_lessen_in_every_size() -> None:
    plans = sound([{"rows": "1-3", "work": "a", "count": {"from": "40 (48, 56)", "step": "-4"}}])
    assert [one.stated for one in plans] == ["40 (48, 56)", "36 (44, 52)", "32 (40, 48)"]


def test_repeated_rows() -> None:
    """`{rows: 4-49, repeat: 2-3}`: rows 2 and 3, 23 times more."""
    plans = sound([*ABC, {"rows": "4-49", "repeat": "2-3"}])
    assert len(plans) == 49
    assert [one.work for one in plans[3:]] == ["b", "c"] * 23
    assert [(one.again, one.by_rule) for one in plans[3:5]] == [("2", "repeat"), ("3", "repeat")]
    assert plans[-1].work_path == ("pieces", "p", "rows", 2, "work")
    assert plans[-1].entry == 3


def test_a_repeat_that_stops_midway() -> None:
    problem = told([*ABC, {"rows": "4-50", "repeat": "2-3"}])
    assert (problem.rule, problem.severity) == ("row-repeat-stops-midway", "warning")
    assert problem.path == ("pieces", "p", "rows", 3, "rows")
    assert problem.working == "47 rows in repeats of 2: 23 times, and 1 more."
    assert problem.suggestion == ("Whole repeats: 4-49 or 4-51.", "4-49", "likely")
    assert problem.facts == {"rows": 47, "repeat": 2, "over": 1}


def test_until_a_length() -> None:
    """120 cm at 8 rows to 10 cm are 96 rows; row 1 is RS, so row 96 is WS."""
    plans = sound([*ABC, {"rows": "4 on", "repeat": "2-3", "until": "120 cm", "end": "WS"}])
    assert [plans[-1].label, plans[-1].work] == ["96", "b"]
    plans = sound([*ABC, {"rows": "4 on", "repeat": "2-3", "until": "120 cm"}])
    assert len(plans) == 97  # whole repeats: 93 rows after row 3 would stop midway


def test_until_a_length_in_every_size() -> None:
    """12, 15 and 18 cm at 12.5 mm a row are 9.6, 12 and 14.4 rows."""
    plans = sound([*ABC, {"rows": "4 on", "as": "2", "until": "12 (15, 18) cm"}])
    assert len(plans) == 14
    assert [one.sizes for one in plans[8:14]] == [None, None, (1, 2), (1, 2), (2,), (2,)]


def test_until_without_a_gauge() -> None:
    bare = pattern([*ABC, {"rows": "4 on", "as": "2", "until": "12 cm"}]).model_copy(update={"gauge": ()})
    _, (problem,) = set_out(bare, "p")
    assert (problem.rule, problem.path[-1]) == ("field-missing", "until")


def test_row_two_and_all_ws_rows() -> None:
    rows: list[Row] = [
        {"row": "1", "work": "a"},
        {"rows": "2-8", "every": "2", "work": "e", "side": "WS"},
        {"row": "3", "work": "c"},
        {
            "rows": "5-7",
            "work": "d",
            "every": "2",
            "n": {"from": "2", "step": "1"},
            "count": {"from": "9", "step": "3"},
        },
    ]
    plans = sound(rows)
    assert [one.work for one in plans] == ["a", "e", "c", "e", "d", "e", "d", "e"]
    assert [(one.n, one.stated) for one in plans[4::2]] == [(2, "9"), (3, "12")]
    assert {one.side for one in plans[1::2]} == {"WS"}
    assert plans[1].by_rule == "every"


def test_every_other_row_leaves_what_is_written_otherwise() -> None:
    plans = sound(
        [
            {"rows": "2-6", "every": "2", "work": "e"},
            *ABC[::2],
            {"row": "4", "work": "own"},
            {"row": "5", "as": "1"},
        ]
    )
    assert [one.work for one in plans] == ["a", "e", "c", "own", "a", "e"]


def test_every_other_row_to_the_end() -> None:
    plans = sound([{"rows": "2 on", "every": "2", "work": "e"}, *ABC[::2], {"row": "5", "work": "f"}])
    assert [one.work for one in plans] == ["a", "e", "c", "e", "f"]


def test_worked_as_another() -> None:
    rows = [
        *ABC,
        {"row": "4", "as": "2", "count": "12"},
        {"rows": "5-7", "as": "1"},
        {"row": "8", "as": "4", "reversed": "true"},
    ]
    rows += [{"rows": "9-11", "as": "1-3"}, {"row": "12", "as": "8", "reversed": "true"}]
    plans = sound(rows)
    assert [one.work for one in plans[3:]] == ["b", "a", "a", "a", "b", "a", "b", "c", "b"]
    assert [one.again for one in plans[3:]] == ["2", "1", "1", "1", "4", "1", "2", "3", "8"]
    assert plans[3].stated == "12"
    assert plans[4].stated is None
    assert plans[7].work_path == ("pieces", "p", "rows", 1, "work")
    assert [one.reversed for one in plans[3:]] == [False] * 4 + [True] + [
        False
    ] * 4  # reversed twice is as it was
    assert plans[3].by_rule == "as"


def test_the_n_and_the_yarn_of_the_row_that_is_named() -> None:
    rows: list[Row] = [
        {"rows": "1-3", "work": "a", "n": {"from": "2", "step": "1"}, "yarn": "B"},
        {"row": "4", "as": "3"},
        {"rows": "5-6", "as": "1", "n": {"from": "7", "step": "2"}, "yarn": "A"},
    ]
    plans = sound(rows)
    assert [(one.n, one.yarn) for one in plans[3:]] == [(4, "B"), (7, "A"), (9, "A")]


def test_sides_change_from_row_to_row_where_the_work_turns() -> None:
    rows: list[Row] = [{"rows": "1-3", "work": "a", "side": "RS"}]
    assert [one.side for one in sound(rows)] == ["RS", "WS", "RS"]
    assert [one.side for one in sound(rows, "rows, right side only")] == ["RS"] * 3
    assert [one.side for one in sound([{"rounds": "1-2", "work": "a", "side": "RS"}], "joined rounds")] == [
        "RS"
    ] * 2


def test_rows_of_a_grid() -> None:
    grid = {"rows": ["#.", ".#"], "key": {"#": "sc in next st", ".": "ch 1, sk next st"}}
    plans = sound([{"rows": "1-2", "from": "grid"}], grid=grid)
    assert [one.work for one in plans] == [
        "sc in next st, ch 1, sk next st, turn",
        "ch 1, sc in next st, ch 1, sk next st, turn",
    ]
    assert plans[0].by_rule == "grid"
    problem = told([{"rows": "1-4", "from": "grid"}], grid=grid)
    assert (problem.rule, problem.message) == ("rounds-out-of-order", "The grid has no row for row 3.")
    assert told([{"rows": "1-2", "from": "grid"}]).message == "This piece has no `grid`."
    assert sound([{"rows": "1-2", "from": "grid", "work": "sc"}], grid=grid)[0].work_path[-1] == "work"


def test_rounds_of_some_sizes() -> None:
    rows: list[Row] = [
        {"row": "1", "work": "a", "sizes": "S"},
        {"row": "1", "work": "b", "sizes": ["M", "L"]},
        {"row": "2", "as": "1"},
        {"row": "3", "as": "1", "sizes": ["L"]},
    ]
    assert [(one.label, one.work, one.sizes) for one in sound(rows)] == [
        ("1", "a", (0,)), ("1", "b", (1, 2)), ("2", "a", (0,)), ("2", "b", (1, 2)), ("3", "b", (2,)),
    ]  # fmt: skip
    problem = told([{"row": "1", "work": "a", "sizes": "XL"}])
    assert (problem.rule, problem.message, problem.working) == (
        "wrong-type",
        "There is no size `XL`.",
        "The sizes are S, M, L.",
    )


@pytest.mark.parametrize(
    ("rows", "message", "working", "path", "replacement"),
    [
        ([ABC[0], ABC[2]], "Row 2 is missing.", "Row 1 is followed by row 3.", ("rows", 1, "row"), None),
        ([ABC[2]], "Rows 1-2 are missing.", "The first row is row 3.", ("rows", 0, "row"), None),
        (
            [*ABC, {"rows": "6-7", "work": "d"}],
            "Rows 4-5 are missing.",
            "Row 3 is followed by row 6.",
            ("rows", 3, "rows"),
            None,
        ),
        (
            [*ABC, {"row": "3", "work": "d"}],
            "Row 3 is written twice.",
            "The entry for row 3 holds it already.",
            ("rows", 3, "row"),
            "4",
        ),
        (
            [*ABC, {"rows": "2-3", "work": "d"}],
            "Rows 2-3 are written twice.",
            "The entry for row 2 holds them already.",
            ("rows", 3, "rows"),
            "4-5",
        ),
        (
            [*ABC, {"rows": "3-5", "work": "d"}],
            "Row 3 is written twice.",
            "The entry for row 3 holds it already.",
            ("rows", 3, "rows"),
            "4-6",
        ),
        (
            [ABC[0], ABC[2], ABC[1]],
            "Row 2 comes after row 3.",
            "A piece's entries stand in the order in which they are worked.",
            ("rows", 2, "row"),
            None,
        ),
        (
            [ABC[0], ABC[1], ABC[1], {"row": "3", "work": "c"}, {"row": "4", "work": "d"}],
            "Row 2 is written twice.",
            "The entry for row 2 holds it already.",
            ("rows", 2, "row"),
            None,
        ),
        (
            [ABC[0], ABC[1], ABC[1], {"row": "4", "work": "d"}],
            "Row 2 is written twice.",
            "The entry for row 2 holds it already.",
            ("rows", 2, "row"),
            "3",
        ),
        (
            [ABC[0], ABC[2], ABC[2], {"row": "4", "work": "d"}],
            "Row 3 is written twice, and row 2 is missing.",
            "The entries before and after this one are in order if it is 2.",
            ("rows", 1, "row"),
            "2",
        ),
        (
            [ABC[0], {"rows": "2-5", "work": "b"}, {"row": "5", "work": "c"}, {"row": "6", "work": "d"}],
            "Row 5 is written twice.",
            "The entries before and after this one are in order if it is 2-4.",
            ("rows", 1, "rows"),
            "2-4",
        ),
        (
            [*ABC, {"row": "4", "as": "9"}],
            "There is no row 9 to work again.",
            "This piece has rows 1-4.",
            ("rows", 3, "as"),
            None,
        ),
        (
            [{"row": "1", "as": "2"}],
            "There is no row 2 to work again.",
            "This piece has row 1 only.",
            ("rows", 0, "as"),
            None,
        ),
        (
            [*ABC, {"row": "4", "as": "4"}],
            "Row 4 isn't worked yet when row 4 names it.",
            "A row can only be worked again once it has been worked.",
            ("rows", 3, "as"),
            None,
        ),
        (
            [*ABC, {"rows": "4-7", "repeat": "3-4"}],
            "Row 4 is itself one of the rows that are to be worked again.",
            "These rows are 4-7, and they are worked as 3-4.",
            ("rows", 3, "repeat"),
            None,
        ),
        (
            [*ABC[:2], {"rows": "3-6", "repeat": "8-9"}],
            "There is no row 8 to work again.",
            "This piece has rows 1-6.",
            ("rows", 2, "repeat"),
            None,
        ),
    ],
)
def test_rounds_out_of_order(
    rows: list[Row], message: str, working: str, path: tuple[str | int, ...], replacement: str | None
) -> None:
    problem = laid(rows)[1][0]
    assert (problem.rule, problem.severity) == ("rounds-out-of-order", "error")
    assert (problem.message, problem.working) == (message, working)
    assert problem.path == ("pieces", "p", *path)
    assert problem.suggestion is not None
    assert problem.suggestion[1] == replacement


def test_a_number_that_a_later_entry_has_is_not_given_away() -> None:
    """Of two mends for two entries neither may take the other's number."""
    again = [ABC[0], ABC[1], ABC[1], *({"row": str(number), "work": "d"} for number in (3, 4))]
    assert _mends(again) == ["Make it 3, and number on from there, or take it out."]
    astray = [ABC[0], {"row": "3", "work": "c"}, {"row": "2", "work": "b"}, {"row": "4", "work": "d"}]
    assert _mends(astray) == ["Set it behind row 1."]
    first_last = [{"row": "2", "work": "b"}, {"row": "3", "work": "c"}, {"row": "1", "work": "a"}]
    assert _mends(first_last) == ["Set it before row 2."]
    thrice = [ABC[0], ABC[0], ABC[0]]
    assert [one.suggestion and one.suggestion[1] for one in laid(thrice)[1]] == ["2", "3"]


def _mends(rows: list[Row]) -> list[str]:
    return [one.suggestion[0] for one in laid(rows)[1] if one.suggestion is not None]


def test_what_follows_from_one_slip_is_not_told() -> None:
    two_twice = [ABC[0], ABC[1], {"row": "2", "work": "x"}, {"row": "4", "as": "3"}]
    plans, problems = laid(two_twice)
    assert [one.message for one in problems] == ["Row 2 is written twice."]
    assert [(one.label, one.work) for one in plans] == [("1", "a"), ("2", "b"), ("3", "x"), ("4", "x")]
    lost = [*ABC, {"row": "4", "as": "9"}, {"row": "5", "as": "4"}]
    plans, problems = laid(lost)
    assert [one.message for one in problems] == ["There is no row 9 to work again."]
    assert len(plans) == 3


def test_an_entry_with_the_next_one_s_number_is_worked_where_it_stands() -> None:
    plans, problems = laid([ABC[0], {"row": "3", "work": "x"}, ABC[2], {"row": "4", "as": "2"}])
    assert [one.round for one in problems] == ["3"]
    assert [(one.label, one.work) for one in plans] == [("1", "a"), ("2", "x"), ("3", "c"), ("4", "x")]
    plans, problems = laid([ABC[0], {"rows": "2-4", "work": "x"}, ABC[2], {"row": "6", "work": "d"}])
    assert [(one.message, one.path) for one in problems] == [
        ("Row 3 is written twice.", ("pieces", "p", "rows", 2, "row"))
    ]


def test_a_piece_on_another_edge_may_go_on_from_its_numbers() -> None:
    start = {"edge": "yoke", "round": "14", "stitches": "unworked"}
    assert len(sound([{"rows": "15-20", "work": "a"}], start=start)) == 6
    assert (
        told([{"row": "15", "work": "a"}, {"row": "17", "work": "b"}], start=start).message
        == "Row 16 is missing."
    )


def test_n_below_nought() -> None:
    problem = told([{"rows": "1-5", "work": "a", "n": {"from": "2", "step": "-1"}}])
    assert (problem.rule, problem.path[-1], problem.round) == ("wrong-type", "n", "4")
    assert problem.message == "`n` falls below 0 in row 4."
    assert len(sound([{"rows": "1-3", "work": "a", "n": {"from": "2", "step": "-1"}}])) == 3


def test_n_in_several_sizes() -> None:
    plans, problems = laid([{"rows": "1-2", "work": "a", "n": {"from": "2 (-, 4)", "step": "1 (2, 3)"}}])
    assert (problems, [plan.n for plan in plans]) == ([], [(2, None, 4), (3, None, 7)])
    below = told([{"rows": "1-3", "work": "a", "n": {"from": "2 (1, 4)", "step": -1}}])
    assert below.message == "`n` falls below 0 in row 3."


@pytest.mark.no_cover  # which would be most of the time
@pytest.mark.parametrize(
    "more",
    [
        [{"rows": "4 on", "as": "2", "until": "9999 m"}],
        [{"rows": "1-10000", "work": "x"}] * 500,
        [{"rows": "1-10000", "work": "x", "every": "2"}] * 500,
        [{"row": "1", "work": "x"}] * 5000,
        [{"row": str(i), "as": str(i - 1)} for i in range(4, 5000)],
        [{"rows": "4-10000", "repeat": "2-3"}],
    ],
)
def test_too_many_rounds_cost_no_time(more: list[Row]) -> None:
    made = pattern([*ABC, *more])
    began = time.process_time()
    plans, problems = set_out(made, "p")
    assert time.process_time() - began < 20  # what grows with the square of the rounds takes minutes
    assert len(plans) <= 10_000
    assert len(problems) <= 102


def test_more_rounds_than_any_piece_has() -> None:
    problem = told([*ABC, {"rows": "4 on", "as": "2", "until": "9999 m"}])
    assert (problem.rule, problem.path[-1]) == ("number-too-large", "until")


def test_a_piece_that_is_not_there() -> None:
    with pytest.raises(KeyError):
        set_out(pattern(ABC), "q")


def test_until_a_length_where_the_gauge_is_not_critical() -> None:
    bare = pattern([*ABC, {"rows": "4 on", "repeat": "2-3", "until": "12 cm"}]).model_copy(
        update={"gauge": ()}
    )
    bare._gauge_not_critical = True
    plans, (problem,) = set_out(bare, "p")
    assert (problem.rule, problem.path[-1], problem.severity) == ("field-missing", "until", "note")
    assert [plan.number for plan in plans] == [1, 2, 3, 4, 5]


def test_fasten_off_after_the_last_of_several() -> None:
    work = "sc in each st around. Fasten off after last round."
    plans = sound([{"rounds": "1-3", "work": work}])
    assert [plan.work for plan in plans] == ["sc in each st around", "sc in each st around", work]
