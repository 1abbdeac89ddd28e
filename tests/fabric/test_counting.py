"""The author's count by kind, held against what a round made: names of every sort, and mistakes in each."""

from typing import Any

import pytest

from .test_cases import pattern_of
from .test_going_on import in_rounds

SPECIALS = {
    "shell": {"short": "sh", "work": "5 dc in same st", "text": "A fan."},
    "skyscraper": {"short": "sky", "yarn overs": 6, "text": "A very tall stitch."},
    "bead": {"short": "bd", "work": "ch 3, sl st in 3rd ch from hook", "text": "A little ring."},
}
TWELVE = ("ch 1, 12 sc in ring, join", 12)


def told(work: str, count: Any, **more: Any) -> list[dict[str, Any]]:
    """The facts of the troubles of a second round over twelve stitches."""
    done = in_rounds(TWELVE, (work, count), **{"special stitches": SPECIALS, **more})
    assert [p.problem for p in done.problems] == []
    return [
        {
            "rule": trouble.rule,
            **{name: trouble.facts[name] for name in ("kind", "stated", "worked", "difference")},
        }
        for trouble in done.pieces[0].rounds[1].troubles
    ]


RIGHT = [
    ("ch 1, (sc in next st, dc in next st) x 6, join", "6 sc, 6 dc"),
    ("ch 1, (sc in next st, dc in next st) x 6, join", "12 sts"),
    ("ch 1, (dc V-st in next st, sk 2 sts) x 4, join", "4 dc V-sts"),
    ("ch 1, (dc V-st in next st, sc in next 2 sts) x 4, join", "4 dc V-sts, 8 sc"),
    ("ch 1, (sh in next st, sc in next st) x 6, join", "6 sh, 6 sc"),
    ("ch 1, (sh in next st, dc in next st) x 6, join", "6 sh, 6 dc"),
    ("ch 1, (sky in next st, sc in next st) x 6, join", "6 sky, 6 sc"),
    ("ch 1, (sc in next 2 sts, bd) x 6, join", "12 sc, 6 bd"),
    ("ch 1, (sc in next 2 sts, ch-3 picot) x 6, join", "12 sc, 6 picots"),
    ("ch 1, (3-dc cl in next st, dc in next st) x 6, join", "6 3-dc cl, 6 dc"),
    ("ch 1, (FPdc around next st, dc in next st) x 6, join", "6 FPdc, 6 dc"),
    ("ch 1, (FPdc around next st, BPdc around next st) x 6, join", "6 FPdc, 6 BPdc"),
    ("ch 1, (FPdc around next st, BPdc around next st) x 6, join", "12 dc"),
    ("ch 1, (sc in next 3 sts, ch 2) x 4, join", "12 sc, 4 ch-2 sps"),
    ("ch 1, (sc in next 3 sts, ch 2) x 4, join", "12 sc, 8 ch"),
    ("ch 1, (sc in next 3 sts, ch 2) x 4, join", "12 sc, 4 ch-sps"),
    ("ch 1, (sc in next 3 sts, ch 2, sc in next 3 sts, ch 1) x 2, join", "12 sc, 2 ch-2 sps, 2 ch-sps"),
    ("ch 1, (sc in next 2 sts, (sc, ch 2, sc) in next st) x 4, join", "16 sc, 4 corners"),
    ("ch 1, (sc in next 3 sts, ch 3, sc in 2nd ch from hook, sc in next ch) x 4, join", "12 sc"),
    ("ch 1, (sc in next 3 sts, ch 3, sc in 2nd ch from hook, sc in next ch) x 4, join", "20 sc"),
]


@pytest.mark.parametrize(("work", "count"), RIGHT)
def test_a_right_count(work: str, count: str) -> None:
    assert told(work, count) == []


WRONG = [
    ("ch 1, (sc in next st, dc in next st) x 6, join", "6 sc", "double", 0, 6),
    ("ch 1, (sc in next st, dc in next st) x 6, join", "6 sc, 7 dc", "double", 7, 6),
    ("ch 1, (sc in next st, dc in next st) x 6, join", "11 sts", None, 11, 12),
    ("ch 1, (dc V-st in next st, sc in next 2 sts) x 4, join", "5 dc V-sts, 8 sc", "double v-stitch 1", 5, 4),
    ("ch 1, (dc V-st in next st, sc in next 2 sts) x 4, join", "4 dc V-sts", "single", 0, 8),
    ("ch 1, (sh in next st, sc in next st) x 6, join", "7 sh, 6 sc", "shell", 7, 6),
    ("ch 1, (sc in next 2 sts, bd) x 6, join", "12 sc, 5 bd", "bead", 5, 6),
    ("ch 1, (sc in next 2 sts, ch-3 picot) x 6, join", "12 sc, 5 picots", "picot", 5, 6),
    ("ch 1, (3-dc cl in next st, dc in next st) x 6, join", "5 3-dc cl, 6 dc", "double cluster 3", 5, 6),
    (
        "ch 1, (FPdc around next st, BPdc around next st) x 6, join",
        "6 FPdc, 5 BPdc",
        "back post double",
        5,
        6,
    ),
    ("ch 1, (sc in next 3 sts, ch 2) x 4, join", "12 sc, 5 ch-2 sps", "space 2", 5, 4),
    ("ch 1, (sc in next 3 sts, ch 2) x 4, join", "12 sc, 5 ch-sps", "space", 5, 4),
    ("ch 1, (sc in next 3 sts, ch 2) x 4, join", "12 sc, 9 ch", "chain", 9, 8),
    ("ch 1, (sc in next 2 sts, (sc, ch 2, sc) in next st) x 4, join", "16 sc, 3 corners", "corner", 3, 4),
    (
        "ch 1, (sc in next 3 sts, ch 3, sc in 2nd ch from hook, sc in next ch) x 4, join",
        "19 sc",
        "single",
        19,
        12,
    ),
]


@pytest.mark.parametrize(("work", "count", "kind", "stated", "worked"), WRONG)
def test_a_wrong_count(work: str, count: str, kind: str | None, stated: int, worked: int) -> None:
    (facts,) = told(work, count)
    assert (facts["rule"], facts["kind"], facts["difference"]) == ("count-differs", kind, worked - stated)
    assert (facts["stated"], facts["worked"]) == (
        (stated, worked)
        if kind is None
        else ({**facts["stated"], kind: stated}, {**facts["worked"], kind: worked})
    )


def test_a_count_by_kind_makes_the_edge_that_the_next_round_may_fit() -> None:
    """The line is short of two shells' places; the round behind it fits the stated count by kind."""
    work = in_rounds(
        TWELVE,
        ("ch 1, (sc in next st, ch 2, sk 2 sts) x 3, join", "4 sc, 4 ch-2 sps"),
        ("ch 1, (sc in next sc, 3 sc in next ch-2 sp) x 4, join", 16),
        **{"special stitches": SPECIALS},
    )
    assert [[t.rule for t in r.troubles] for r in work.pieces[0].rounds] == [[], ["stitches-left-over"], []]
    edge = work.pieces[0].rounds[2].sizes[0]
    assert edge is not None
    assert edge.makes == {"single": 16}


def test_a_count_of_groups_alone_leaves_out_the_stitch_at_either_end_and_no_other() -> None:
    case: dict[str, Any] = {
        "name": "V-stitches",
        "start": "chain 25",
        "worked": "rows",
        "turning": {"dc": "counts"},
        "specials": {"V": {"short": "V-st", "work": "(dc, ch 1, dc) in same st", "text": "A V."}},
        "lines": [
            ["dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn", 22, {}, 23],
            [
                "ch 3 (counts as dc), sk next st, *V-st in next st, sk 2 sts; rep from * to last 3 sts, "
                "V-st in next st, sk next st, dc in last st, turn", 23, {}, "7 V-sts",
            ],
            ["ch 3, V-st in next V-st, dc in same sp, V-st in next 6 V-sts, dc in last st", 9, {}, "7 V-sts"],
        ],
    }  # fmt: skip
    rounds = pattern_of(case).pieces[0].rounds
    assert [[t.rule for t in one.troubles] for one in rounds] == [[], [], ["count-differs"]]
