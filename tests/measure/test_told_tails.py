"""Tails told in words, in the line that fastens off or in a note."""

import pytest

from loopleaf.measure.tails import Tail

from .worked_patterns import measured, rounds

BAG = rounds("20 sc in ring, join", "ch 1, 2 sc in each st around, join, fasten off", name="bag")
SEWN = "finishing:\n  - sew: {piece: moon, to: bag, round: 2, stitches: 1-4}\n"


def tail(end: str = "fasten off", note: str = "", more: str = SEWN) -> Tail | None:
    """Of a moon of 20 stitches of 5 mm, so with an edge of 10 cm."""
    moon = rounds(f"20 sc in ring, join, {end}", name="moon")
    if note:
        moon = moon.replace(f'{end}"}}', f'{end}", note: "{note}"}}')
    found = measured(f"{BAG}\n{moon}", more).tails[0]
    return found[0] if found else None


@pytest.mark.parametrize(
    ("end", "mm"),
    [
        ("fasten off, leaving a 10 cm tail for sewing", 100),
        ("fasten off, leaving a 4 inch tail for sewing to bag", 101.6),
        ("cut yarn, leaving a 30 cm end for sewing", 300),
        ("fasten off, leaving a 10 cm tail", 100),
        ("fasten off, leaving a 20-25 cm tail for sewing", 250),
    ],
)
def test_the_line_that_fastens_off(end: str, mm: float) -> None:
    """An inch is 25.4 mm (its definition)."""
    found = tail(end)
    assert found is not None
    assert found.length_mm == pytest.approx(mm)
    assert found.edge_mm == pytest.approx(100)
    assert found.told is not None


@pytest.mark.parametrize(
    "end",
    [
        "fasten off",
        "fasten off, leaving a long tail for sewing",
        "fasten off and weave in ends",
        "fasten off, leaving a 10 cm tail, weave tail through last sts and pull tight to close",
    ],
)
def test_what_is_no_length_or_no_seam(end: str) -> None:
    assert tail(end) is None


def test_a_tail_without_a_purpose_sews_what_is_sewn_on() -> None:
    assert tail("fasten off, leaving a 10 cm tail", more="") is None
    assert tail("fasten off, leaving a 10 cm tail for sewing", more="") is not None
    strand = SEWN.replace("1-4}", "1-4, text: Sew it on with a new strand of B.}")
    assert tail("fasten off, leaving a 10 cm tail", more=strand) is None


def test_what_is_sewn_on_at_a_point_needs_no_tail_for_its_edge() -> None:
    """A leaf by its stem: a stitch or two of each copy (common practice, no source)."""
    end = "fasten off, leaving a 10 cm tail for sewing"
    assert tail(end, more=SEWN.replace("1-4", "1-2")) is None
    assert tail(end, more=SEWN.replace("1-4", "1-3")) is not None


@pytest.mark.parametrize(
    ("note", "mm"),
    [
        ("Leave a tail of 8 cm for sewing.", 80),
        ("Leave an 8 in (20 cm) tail to sew it on.", 203.2),
        ("The moon is small. Cut the yarn, leaving a sewing tail of 8.5 cm.", 85),
        ("Leave a tail of 20 to 25 cm for sewing.", 250),
    ],
)
def test_a_note(note: str, mm: float) -> None:
    """The same length in both units of a note is one tail (an inch is 25.4 mm, its definition)."""
    found = tail(note=note)
    assert found is not None
    assert found.length_mm == pytest.approx(mm)


@pytest.mark.parametrize(
    "note",
    [
        "Leave a tail of 8 cm to weave in.",
        "Leave a long tail for sewing.",
        "Leave a tail of 8 cm at the beginning for sewing.",
        "Leave a tail of 8 cm for sewing on the eyes.",
        "The seal's tail is 8 cm long. Leave it for sewing later.",
        "Leave a tail of 0 cm for sewing.",
        "Leave a tail of 99999999999 cm for sewing.",
        "Sew 8 cm of the edge.",
    ],
)
def test_a_note_of_something_else(note: str) -> None:
    assert tail(note=note) is None


def test_the_field_comes_first() -> None:
    moon = rounds("20 sc in ring, join, fasten off, leaving a 10 cm tail", name="moon", fields="tail: 25 cm")
    (found,) = measured(f"{BAG}\n{moon}", SEWN).tails[0]
    assert (found.length_mm, found.told) == (250, None)


def test_a_tail_told_by_another_piece_sews_its_own_edge() -> None:
    """1.25 × the bag's 20 cm are 25 cm, for an edge of 10 cm."""
    fields = "tail: {times: 1.25, around: bag, round: 2}"
    moon = rounds("20 sc in ring, join, fasten off", name="moon", fields=fields)
    (found,) = measured(f"{BAG}\n{moon}", SEWN).tails[0]
    assert found.length_mm == pytest.approx(250)
    assert found.edge_mm == pytest.approx(100)
