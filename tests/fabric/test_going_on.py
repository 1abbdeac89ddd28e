"""One mistake, one trouble: how the hand goes on after an error, in every size."""

from typing import Any

import pytest

from loopleaf.fabric import Made, PatternWork, work_pattern
from loopleaf.pattern import load
from tests.yaml_text import written_yaml


def worked(document: dict[str, Any]) -> PatternWork:
    document = {"title": "Trial", "terms": "US", "materials": {"yarns": {"A": {"name": "a"}}}, **document}
    source = load(written_yaml(document).encode(), "trial.yml")
    assert source.pattern is not None, source.findings
    return work_pattern(source)


def in_rounds(*lines: tuple[str, Any] | str, **more: Any) -> PatternWork:
    rounds = []
    for number, line in enumerate(lines, 1):
        work, count = line if isinstance(line, tuple) else (line, None)
        entry: dict[str, Any] = {"round": number, "work": work}
        if count is not None:
            entry["count"] = count
        rounds.append(entry)
    piece = {
        "title": "Piece",
        "yarn": "A",
        "worked": "joined rounds",
        "start": "magic ring",
        "rounds": rounds,
    }
    return worked({**more, "pieces": {"piece": piece}})


def troubles(work: PatternWork) -> list[tuple[str, str]]:
    return [(r.plan.label, t.rule) for r in work.pieces[0].rounds for t in r.troubles]


def test_a_wrong_stated_count_is_said_once_and_the_worked_edge_goes_on() -> None:
    work = in_rounds(
        ("ch 1, 8 hdc in ring, join", 8),
        ("ch 1, 2 hdc in each st around, join", 17),
        ("ch 1, (hdc in next st, 2 hdc in next st) x 8, join", 24),
    )
    assert troubles(work) == [("2", "count-differs")]
    facts = work.pieces[0].rounds[1].troubles[0].facts
    assert (facts["stated"], facts["worked"], facts["difference"], facts["stated_text"]) == (17, 16, -1, "17")


def test_a_wrong_line_is_said_once_when_the_next_round_fits_the_stated_count() -> None:
    work = in_rounds(
        ("ch 1, 8 hdc in ring, join", 8),
        ("ch 1, hdc in each st around, join", 16),
        ("ch 1, (hdc in next st, 2 hdc in next st) x 8, join", 24),
        ("ch 1, hdc in each st around, join", 24),
    )
    assert troubles(work) == [("2", "count-differs")]


def test_a_repeat_that_does_not_fit_without_a_count_says_nothing_more_until_the_next_count() -> None:
    work = in_rounds(
        ("ch 1, 10 sc in ring, join", 10),
        "ch 1, *sc in next 2 sts, 2 sc in next st; rep from * around, join",
        "ch 1, *sc in next 3 sts, 2 sc in next st; rep from * around, join",
        ("ch 1, *sc in next 4 sts, 2 sc in next st; rep from * around, join", 18),
        ("ch 1, (sc in next st, 2 sc in next st) x 9, join", 27),
    )
    assert troubles(work) == [("2", "repeat-does-not-fit")]


def test_the_working_of_a_repeat_that_does_not_fit() -> None:
    work = in_rounds(
        ("ch 1, 20 sc in ring, join", 20),
        ("ch 1, *sc in next 2 sts, 2 sc in next st; rep from * around, join", 27),
    )
    facts = work.pieces[0].rounds[1].troubles[0].facts
    assert (facts["available"], facts["each"], facts["passes"], facts["left"]) == (20, 3, 6, 2)


@pytest.mark.parametrize(
    ("work", "count", "wanted"),
    [
        ("ch 3 (counts as dc), dc in first st, dc in next 9 sts", 11, []),
        ("ch 3 (counts as dc), dc in next 9 sts", 10, []),
        ("ch 3 (counts as dc), dc in each of next 10 sts", 10, ["turning-chain-contradicted"]),
        ("ch 3 (does not count), dc in next 9 sts", 10, ["turning-chain-contradicted"]),
        ("ch 3, dc in next 9 sts", 10, []),
        ("ch 3, dc in next 10 sts", 10, []),
        ("ch 3, dc in each st across", 10, []),
        ("ch 3, dc in first st, dc in each st across", None, ["turning-chain-unclear"]),
    ],
)
def test_turning_chains(work: str, count: int | None, wanted: list[str]) -> None:
    rows: list[dict[str, Any]] = [
        {"row": 1, "work": "sc in 2nd ch from hook and in each ch across, turn", "count": 10},
        {"row": 2, "work": work},
    ]
    if count is not None:
        rows[1]["count"] = count
    piece = {"title": "Piece", "yarn": "A", "worked": "rows", "start": "chain 11", "rows": rows}
    found = worked({"pieces": {"piece": piece}})
    assert [t.rule for t in found.pieces[0].rounds[1].troubles] == wanted


def test_sizes_are_parallel() -> None:
    work = in_rounds(
        ("ch 1, 6 (8, 10) sc in ring, join", "6 (8, 10)"),
        ("ch 1, 2 sc in each st around, join", "12 (16, 20)"),
        ("ch 1, (sc in next st, 2 sc in next st) x 6 (8, 10), join", "18 (24, 30)"),
        sizes=["S", "M", "L"],
    )
    assert troubles(work) == []
    assert [[one.count for one in r.sizes if one] for r in work.pieces[0].rounds] == [
        [6, 8, 10],
        [12, 16, 20],
        [18, 24, 30],
    ]


def test_a_mistake_in_one_size_names_it() -> None:
    work = in_rounds(
        ("ch 1, 6 (8, 10) sc in ring, join", "6 (8, 10)"),
        ("ch 1, 2 sc in each st around, join", "12 (15, 20)"),
        sizes=["S", "M", "L"],
    )
    assert troubles(work) == [("2", "count-differs")]
    assert work.pieces[0].rounds[1].troubles[0].size == 1


def test_rounds_that_turn() -> None:
    work = in_rounds(
        ("ch 1, (sc, hdc, dc) in ring, join, turn", 3),
        ("ch 1, sc in each st around, join", 3),
    )
    first, second = work.pieces[0].rounds
    assert first.sizes[0] is not None
    assert second.sizes[0] is not None
    below = [m.into[0] for m in second.sizes[0].made if isinstance(m, Made) and m.number]
    assert [p.kind for p in below if isinstance(p, Made)] == ["single", "double", "half"]
    assert (first.side, second.side) == ("RS", "WS")


def test_a_piece_begun_on_the_unworked_stitches_of_another() -> None:
    yoke = {
        "title": "Yoke",
        "yarn": "A",
        "worked": "rows",
        "start": "chain 21",
        "rows": [
            {"row": 1, "work": "sc in 2nd ch from hook and in each ch across, turn", "count": 20},
            {
                "row": 2,
                "work": "ch 1, sc in next 6 sts, leave remaining sts unworked, fasten off",
                "count": 6,
            },
        ],
    }
    front = {
        "title": "Front",
        "yarn": "A",
        "worked": "rows, right side only",
        "start": {"edge": "yoke", "row": 1, "stitches": "unworked"},
        "rows": [
            {
                "row": 1,
                "work": "join A with sl st in first st, ch 1, sc in same st, sc in each st across",
                "count": 14,
            }
        ],
    }
    work = worked({"pieces": {"yoke": yoke, "front": front}})
    assert [t for p in work.pieces for r in p.rounds for t in r.troubles] == []


def test_a_thumb_begun_on_the_stitches_that_an_arch_passed_over() -> None:
    hand = {
        "title": "Hand",
        "yarn": "A",
        "worked": "spiral rounds",
        "start": "magic ring",
        "rounds": [
            {"round": 1, "work": "12 sc in ring", "count": 12},
            {"round": 2, "work": "sc in next 4 sts, ch 5, sk 3 sts, sc in next 5 sts", "count": 9},
            {"round": 3, "work": "sc in next 4 sts, 5 sc in next ch-5 sp, sc in next 5 sts, fasten off"},
        ],
    }
    begun = {"edge": "hand", "round": 1, "stitches": "unworked"}
    rows = [{"round": 1, "work": "join A with sc in first st, sc in next 2 sts", "count": 3}]
    thumb = {**hand, "title": "Thumb", "start": begun, "rounds": rows}
    work = worked({"pieces": {"hand": hand, "thumb": thumb}})
    assert [t for p in work.pieces for r in p.rounds for t in r.troubles] == []
    first = work.pieces[1].rounds[0].sizes[0]
    assert first is not None
    assert [p.number for m in first.made if isinstance(m, Made) for p in m.into if isinstance(p, Made)] == [
        5,
        6,
        7,
    ]


@pytest.mark.parametrize(("stitches", "into"), [("3-6", [3, 4, 5, 6]), ("11-12, 1-2", [11, 12, 1, 2])])
def test_a_flap_begun_on_stitches_by_number(stitches: str, into: list[int]) -> None:
    base = {
        "title": "Base",
        "yarn": "A",
        "worked": "spiral rounds",
        "start": "magic ring",
        "rounds": [{"round": 1, "work": "12 sc in ring", "count": 12}],
    }
    rows = [{"row": 1, "work": "join A with sc in first st, sc in next 3 sts", "count": 4}]
    begun = {"edge": "base", "round": 1, "stitches": stitches}
    flap = {"title": "Flap", "yarn": "A", "worked": "rows", "start": begun, "rows": rows}
    work = worked({"pieces": {"base": base, "flap": flap}})
    assert [t for p in work.pieces for r in p.rounds for t in r.troubles] == []
    first = work.pieces[1].rounds[0].sizes[0]
    assert first is not None
    assert [
        p.number for m in first.made if isinstance(m, Made) for p in m.into if isinstance(p, Made)
    ] == into


def test_a_flap_begun_on_more_stitches_than_there_are() -> None:
    base = {
        "title": "Base",
        "yarn": "A",
        "worked": "spiral rounds",
        "start": "magic ring",
        "rounds": [{"round": 1, "work": "12 sc in ring", "count": 12}],
    }
    begun = {"edge": "base", "round": 1, "stitches": "9-14"}
    rows = [{"row": 1, "work": "join A with sc in first st, sc in next 3 sts", "count": 4}]
    flap = {"title": "Flap", "yarn": "A", "worked": "rows", "start": begun, "rows": rows}
    found = worked({"pieces": {"base": base, "flap": flap}}).pieces[1].troubles
    assert [(t.rule, t.facts["what"]) for t in found] == [("no-such-place", "stitch 14")]


def test_a_multiple_that_is_not_met() -> None:
    piece = {
        "title": "Piece",
        "yarn": "A",
        "worked": "rows",
        "start": {"chain": 31, "multiple": 14, "plus": 2},
        "rows": [{"row": 1, "work": "sc in 2nd ch from hook and in each ch across", "count": 30}],
    }
    found = worked({"pieces": {"piece": piece}}).pieces[0].troubles
    assert [(t.rule, t.facts["nearest"]) for t in found] == [("multiple-not-met", [30, 44])]


def test_a_marker_moved_on() -> None:
    document = {
        "pieces": {
            "piece": {
                "title": "Piece",
                "yarn": "A",
                "worked": "spiral rounds",
                "start": "magic ring",
                "rounds": [
                    {"round": 1, "work": "12 sc in ring", "count": 12},
                    {"round": 2, "work": "sc in each st around, sc in next 3 sts, move marker", "count": 12},
                    {"round": 3, "work": "sc in each st around", "count": 12},
                ],
            }
        }
    }
    work = worked(document)
    assert troubles(work) == []


def test_only_as_many_stitches_as_the_spiral_has() -> None:
    document = {
        "pieces": {
            "piece": {
                "title": "Piece",
                "yarn": "A",
                "worked": "spiral rounds",
                "start": "magic ring",
                "rounds": [
                    {"round": 1, "work": "12 sc in ring", "count": 12},
                    {"round": 2, "work": "sc in each st around, sc in next 3 sts", "count": 15},
                ],
            }
        }
    }
    assert troubles(worked(document)) == [("2", "works-past-the-end")]


def test_counts_by_kind() -> None:
    lines = ("ch 1, 24 sc in ring, join", "ch 1, (sc in next st, ch 2, sk next st, dc in next st) x 8, join")
    assert troubles(in_rounds(lines[0], (lines[1], "8 sc, 8 dc, 8 ch-2 sps"))) == []
    assert troubles(in_rounds(lines[0], (lines[1], "8 sc, 8 dc"))) == []
    assert troubles(in_rounds(lines[0], (lines[1], "8 sc, 9 dc"))) == [("2", "count-differs")]
    assert troubles(in_rounds(lines[0], (lines[1], "8 sc, 8 dc, 7 ch-2 sps"))) == [("2", "count-differs")]
    assert troubles(in_rounds(lines[0], (lines[1], "16 sc"))) == [("2", "count-differs")]
    assert troubles(in_rounds(lines[0], (lines[1], 32))) == [("2", "count-unclear")]


def test_a_turning_chain_settled_by_the_rest_of_the_piece() -> None:
    rows: list[dict[str, Any]] = [
        {"row": 1, "work": "sc in 2nd ch from hook and in each ch across, turn", "count": 10},
        {"row": 2, "work": "ch 3, dc in first st, dc in each st across, turn"},
        {"row": 3, "work": "ch 1, sc in each st across", "count": 11},
    ]
    piece = {"title": "Piece", "yarn": "A", "worked": "rows", "start": "chain 11", "rows": rows}
    work = worked({"pieces": {"piece": piece}})
    assert troubles(work) == []
    assert [one.count for r in work.pieces[0].rounds for one in r.sizes if one] == [10, 11, 11]
    rows[2]["count"] = 10
    assert [
        one.count for r in worked({"pieces": {"piece": piece}}).pieces[0].rounds for one in r.sizes if one
    ] == [
        10,
        10,
        10,
    ]


def test_a_turn_after_a_step_that_does_not_fit_is_still_a_turn() -> None:
    rows: list[dict[str, Any]] = [
        {"row": 1, "work": "sc in 2nd ch from hook and in each ch across, turn", "count": 10},
        {"row": 2, "work": "ch 1, sc in next 8 sts, hdc in next 5 sts, turn", "count": 10},
        {"row": 3, "work": "ch 1, sc in each st across", "count": 10},
    ]
    piece = {"title": "Piece", "yarn": "A", "worked": "rows", "start": "chain 11", "rows": rows}
    assert troubles(worked({"pieces": {"piece": piece}})) == [("2", "works-past-the-end")]


def test_rounds_of_one_entry_share_their_mistake() -> None:
    rounds: list[dict[str, Any]] = [
        {"round": 1, "work": "ch 1, 12 sc in ring, join", "count": 12},
        {"rounds": "2-4", "work": "ch 1, sc in each st around, join", "count": 13},
        {"round": 5, "work": "ch 1, (sc in next st, 2 sc in next st) x 6, join", "count": 18},
    ]
    piece = {"title": "P", "yarn": "A", "worked": "joined rounds", "start": "magic ring", "rounds": rounds}
    assert troubles(worked({"pieces": {"piece": piece}})) == [("2", "count-differs")]


def test_a_convention_turned_round_is_said_once() -> None:
    rows: list[dict[str, Any]] = [
        {"row": 1, "work": "sc in 2nd ch from hook and in each ch across, turn", "count": 10},
        {"row": 2, "work": "ch 3, dc in each of next 10 sts, turn", "count": 10},
        {"row": 3, "work": "ch 3, dc in each of next 10 dc, turn", "count": 10},
        {"row": 4, "work": "ch 3, dc in first dc, dc in next 9 dc", "count": 10},
    ]
    piece = {"title": "P", "yarn": "A", "worked": "rows", "start": "chain 11", "rows": rows}
    work = worked({"turning chains": {"dc": "counts"}, "pieces": {"piece": piece}})
    assert troubles(work) == [("2", "turning-chain-contradicted")]


def test_a_missing_turn_is_said_once_a_piece() -> None:
    rows: list[dict[str, Any]] = [
        {"row": 1, "work": "sc in 2nd ch from hook and in each ch across", "count": 10},
        {"rows": "2-6", "work": "ch 1, sc in each st across", "count": 10},
    ]
    piece = {"title": "P", "yarn": "A", "worked": "rows", "start": "chain 11", "rows": rows}
    work = worked({"pieces": {"piece": piece}})
    assert troubles(work) == [("1", "turn-missing")]
    assert work.pieces[0].rounds[0].troubles[0].facts["others"] == ["2", "3", "4", "5"]


@pytest.mark.parametrize(
    ("line", "wanted"),
    [
        ("ch 1, sc in each st around, sc in each st around, join", "works-past-the-end"),
        (
            "ch 1, sc in each st to last 4 sts, sc in each st to last 4 sts, sc in last 4 sts, join",
            "works-past-the-end",
        ),
        ("ch 1, sc in next 6 sts, fasten off, sc in next 6 sts", "yarn-not-joined"),
        ("ch 1, sc in next 6 sts, sc in last 0 sc, join", "stitches-left-over"),
        ("ch 1, (sc in next st, ch 1, ch 2, sk 1 st) x 6, join", "count-differs"),
    ],
)
def test_steps_that_can_not_follow(line: str, wanted: str) -> None:
    assert troubles(in_rounds(("ch 1, 12 sc in ring, join", 12), (line, "6 sc, 6 ch-2 sps"))) == [
        ("2", wanted)
    ]


def test_a_turn_in_the_middle_of_a_row() -> None:
    rows: list[dict[str, Any]] = [
        {"row": 1, "work": "sc in 2nd ch from hook and in each ch across, turn", "count": 10},
        {"row": 2, "work": "ch 1, sc in next 9 sts, turn, sc in last st", "count": 10},
    ]
    piece = {"title": "P", "yarn": "A", "worked": "rows", "start": "chain 11", "rows": rows}
    assert troubles(worked({"pieces": {"piece": piece}})) == [("2", "turn-not-expected")]
