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


PATCH = rows(
    "sc in 2nd ch from hook and in each ch across, turn",
    *["ch 1, sc in each st across, turn"] * 8,
    "ch 1, sc in each st across, fasten off",
    name="patch",
)
"""10 stitches and 10 rows of 5 mm: a square of 5 cm, 20 cm around."""


def patch_tail(said: str) -> UnsaidTail:
    disc = rounds("20 sc in ring, join", name="moon")
    more = f'finishing:\n  - sew: {{piece: patch, to: moon, text: "{said}"}}\n'
    ((tail,),) = measured(disc + PATCH, more).unsaid_tails
    return tail


@pytest.mark.parametrize("said", ["", "Pin it first.", "Sew it near the edge.", "Turn it around."])
def test_a_piece_in_rows_by_its_last_row_or_by_all_its_sides(said: str) -> None:
    tail = patch_tail(said)
    assert (tail.edge_mm, tail.outline_mm) == (50, 200)
    assert (tail.usual, tail.usual_around) == (Band(150, 150), Band(400, 600))


@pytest.mark.parametrize(
    "said",
    ["Sew all around.", "Sew around the outside edge.", "Sew all four sides."],
)
def test_where_the_seam_goes_around_its_sides_count(said: str) -> None:
    tail = patch_tail(said)
    assert (tail.edge_mm, tail.outline_mm) == (200, None)
    assert tail.usual == Band(400, 600)


def test_where_the_seam_leaves_a_side_open_three_count() -> None:
    """Three sides of 5 cm."""
    assert patch_tail("Along three sides.").edge_mm == pytest.approx(150)


@pytest.mark.parametrize(
    ("title", "said", "tails"), [("Strap", "", 0), ("Patch", "", 1), ("Strap", "Along its side.", 1)]
)
def test_a_strap_is_sewn_on_by_its_ends(title: str, said: str, tails: int) -> None:
    """Its long edge says nothing of its tail, unless a word tells that the seam goes there."""
    strap = PATCH.replace("patch:\n", f"patch:\n  title: {title}\n")
    text = f', text: "{said}"' if said else ""
    more = f"finishing:\n  - sew: {{piece: patch, to: moon{text}}}\n"
    (size,) = measured(strap + rounds("20 sc in ring, join", name="moon"), more).unsaid_tails
    assert len(size) == tails


def test_a_stated_tail_around_a_patch_is_measured_by_its_sides() -> None:
    """2.5 × 20 cm are 50 cm; a tail stated by its length is held against the least seam."""
    tails = [
        measured(PATCH.replace("  yarn: A", f"  yarn: A\n  tail: {tail}")).tails[0][0]
        for tail in ("{times: 2.5, around: self}", "{times: 2.5, around: self, row: 10}", "12 cm")
    ]
    assert [(one.length_mm, one.edge_mm) for one in tails] == [(500, 200), (125, 50), (120, 50)]


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
