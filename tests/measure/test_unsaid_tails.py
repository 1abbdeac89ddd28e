"""Tails that a seam needs and that nobody states."""

import pytest

from loopleaf.measure.units import Band
from loopleaf.measure.unsaid_tails import UnsaidTail

from .worked_patterns import HEAD, measured, rounds, rows

CLOTH = rows("sc in 2nd ch from hook and in each ch across, turn", "ch 1, sc in each st across")
SEWN = "finishing:\n  - sew: {piece: moon, to: cloth}\n"


def found(
    line: str = "20 sc in ring, join, fasten off", more: str = SEWN, fields: str = ""
) -> list[UnsaidTail]:
    (size,) = measured(CLOTH + rounds(line, name="moon", fields=fields), more).unsaid_tails
    return list(size)


def test_the_edge_that_is_sewn_on() -> None:
    """20 stitches of 5 mm are 10 cm, and a tail is 2 to 3 times the edge."""
    (tail,) = found()
    assert (tail.piece, tail.edge_mm) == ("moon", 100)
    assert tail.usual == Band(200, 300)
    assert not tail.short


def test_a_short_edge_needs_an_end_that_can_be_woven_in() -> None:
    """6 stitches are 3 cm, 2 to 3 times that is less than the 15 cm of an end."""
    (tail,) = found("6 sc in ring, join, fasten off")
    assert tail.usual == Band(150, 150)
    assert tail.short
    (tail,) = found("12 sc in ring, join, fasten off")
    assert tail.usual == Band(150, 180)
    assert not tail.short


def test_a_piece_in_rows_by_its_last_row() -> None:
    patch = rows("sc in 2nd ch from hook and in each ch across, fasten off", name="patch")
    disc = rounds("20 sc in ring, join", name="moon")
    ((tail,),) = measured(disc + patch, "finishing:\n  - sew: {piece: patch, to: moon}\n").unsaid_tails
    assert tail == UnsaidTail("patch", 50)


@pytest.mark.parametrize(
    ("line", "more", "fields"),
    [
        ("20 sc in ring, join, fasten off", "", ""),  # not sewn on
        ("20 sc in ring, join, fasten off", "finishing:\n  - sew: {piece: cloth, to: moon}\n", ""),
        ("20 sc in ring, join, fasten off", "finishing:\n  - sew: {piece: moon, text: Close it.}\n", ""),
        ("20 sc in ring, join", SEWN, ""),  # the yarn goes on
        ("20 sc in ring, join, fasten off", SEWN, "tail: 30 cm"),
        ("20 sc in ring, join, fasten off, leaving a 30 cm tail", SEWN, ""),
        ("20 sc in ring, join, fasten off, leaving a long tail for sewing", SEWN, ""),
        ("20 sc in ring, join, fasten off and weave in ends", SEWN, ""),
        ("20 sc in ring, join, fasten off", SEWN + "notes: [Leave a tail of 30 cm on every piece.]\n", ""),
        ("20 sc in ring, join, fasten off", SEWN + "notes: [Use the long ends for sewing.]\n", ""),
        ("20 sc in ring, join, fasten off", SEWN.replace("}", ", text: Use the sewing thread.}"), ""),
        ("20 sc in ring, join, fasten off", SEWN.replace("}", ", text: With a new length of A.}"), ""),
    ],
)
def test_silent_where_it_is_said_or_not_needed(line: str, more: str, fields: str) -> None:
    assert found(line, more, fields) == []


def test_the_tail_of_an_animal_is_none() -> None:
    (tail,) = found(more=SEWN + "notes: [The tail bends upwards at its end.]\n")
    assert tail.edge_mm == 100


def test_no_gauge_no_tail() -> None:
    head = HEAD.replace("gauge: {stitch: sc, stitches: 20, rows: 20, over: 10 cm}\n", "")
    (size,) = measured(
        CLOTH + rounds("20 sc in ring, join, fasten off", name="moon"), SEWN, head
    ).unsaid_tails
    assert size == ()
