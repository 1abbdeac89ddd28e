"""Words of a file that leave the fabric without a line, a count or a piece: said once, in which words."""

from typing import Any

import pytest

from loopleaf.fabric import work_pattern
from loopleaf.pattern import KEY, load

from .test_going_on import in_rounds, worked


def in_rows(*rows: dict[str, Any], **more: Any) -> Any:
    piece = {"title": "Piece", "yarn": "A", "worked": "rows", "start": "chain 11", "rows": list(rows)}
    return worked({**more, "pieces": {"piece": piece}})


FIRST = {"row": 1, "work": "sc in 2nd ch from hook and in each ch across, turn", "count": 10}


def test_a_row_that_can_not_change_ends() -> None:
    work = in_rows(
        FIRST,
        {
            "row": 2,
            "work": "ch 1, sc in each st to last 4 sts, leave last 4 sts unworked, turn",
            "reversed": True,
        },
    )
    (one,) = work.problems
    problem = one.problem
    assert (one.piece, one.round) == ("piece", "2")
    assert one.path == ("pieces", "piece", "rows", 1, "work")
    assert (problem.rule, problem.severity) == ("unknown-instruction", "error")
    said = "leave last 4 sts unworked"
    assert problem.message == f"“{said}” doesn't say how row 2 goes with its shaping at the other end."
    assert (
        "ch 1, sc in each st to last 4 sts, leave last 4 sts unworked, turn"[
            problem.span.start : problem.span.end
        ]
        == said
    )
    assert "can't just change ends" in problem.working
    assert problem.suggestion == ("Write row 2 out, without `reversed`.", None, "fill-in")
    assert work.pieces[0].rounds[1].line is None


def test_a_turning_chain_of_no_stitch_and_of_all() -> None:
    work = in_rounds("ch 3, 11 dc in ring, join", **{"turning chains": {"frob": "counts", "dc": "counts"}})
    (one,) = work.problems
    assert one.path == ("turning chains", "frob", KEY)
    assert "frob" in one.problem.message
    assert work.pieces[0].rounds[0].sizes[0].count == 12  # type: ignore[union-attr]


@pytest.mark.parametrize(("counts", "number"), [("counts", 12), ("does not count", 11)])
def test_all_turning_chains_in_one_word(counts: str, number: int) -> None:
    work = in_rounds("ch 3, 11 dc in ring, join", **{"turning chains": counts})
    assert [p.problem for p in work.problems] == []
    assert work.pieces[0].rounds[0].sizes[0].count == number  # type: ignore[union-attr]


def test_a_count_that_can_not_be_read_is_said_once_for_the_rounds_that_share_it() -> None:
    piece = {
        "title": "Piece",
        "yarn": "A",
        "worked": "joined rounds",
        "start": "magic ring",
        "rounds": [
            {"round": 1, "work": "ch 1, 8 sc in ring, join", "count": 8},
            {"rounds": "2-4", "work": "ch 1, sc in each st around, join", "count": "eight or so"},
        ],
    }
    work = worked({"pieces": {"piece": piece}})
    (one,) = work.problems
    assert one.path == ("pieces", "piece", "rounds", 1, "count")
    assert (one.piece, one.round) == ("piece", "2")
    assert [r.stated for r in work.pieces[0].rounds[1:]] == [None, None, None]
    assert [r.sizes[0].count for r in work.pieces[0].rounds if r.sizes[0]] == [8, 8, 8, 8]


def test_no_pattern_no_work() -> None:
    with pytest.raises(ValueError, match=r"nothing\.yml holds no pattern"):
        work_pattern(load(b"title: [", "nothing.yml"))


def test_a_piece_by_its_name() -> None:
    work = in_rounds("ch 1, 8 sc in ring, join")
    assert work.piece("piece") is work.pieces[0]
    assert work.piece("pieces") is None
