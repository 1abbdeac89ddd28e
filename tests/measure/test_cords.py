"""Cords and tails: lengths from rounds, chains, and what is usual."""

import pytest

from loopleaf.measure.cords import Cord, chains_for, least_cord_mm
from loopleaf.measure.tails import Tail, drawing_up_tail, sewing_tail
from loopleaf.measure.units import Band

from .worked_patterns import HEAD, measured, rounds, rows

TUBE = rounds("20 sc in ring, join", "ch 1, 2 sc in each st around, join", name="bag")
"""20 and 40 stitches of 5 mm: 100 and 200 mm around."""


def cord(length: str, more: str = "") -> Cord:
    (found,) = measured(
        f"{TUBE}\ncord:\n  yarn: A\n  worked: chain\n  make: 2\n  length: {length}\n", more
    ).cords[0]
    return found


def test_so_many_times_around_a_round():
    found = cord("{times: 2, around: bag, round: 1}")
    assert found.length_mm == pytest.approx(200)
    assert found.around_mm == pytest.approx(100)
    assert found.chains == 40
    assert found.make == 2


def test_without_a_round_it_is_the_last_one():
    assert cord("{times: 1.5, around: bag}").length_mm == pytest.approx(300)


def test_a_plain_length_is_held_against_the_round_that_it_is_threaded_through():
    through = "finishing:\n  - thread: {piece: cord, through: bag, round: 2, under: 1, over: 1, from: [1]}\n"
    found = cord("70 cm", through)
    assert found.length_mm == 700
    assert found.around_mm == pytest.approx(200)
    assert found.least_mm == pytest.approx(400)


def test_a_plain_length_alone_has_nothing_to_be_held_against():
    found = cord("70 cm")
    assert found.around_mm is None
    assert found.least_mm is None


def test_a_round_that_isnt_there_gives_no_cord():
    none = measured(
        f"{TUBE}\ncord:\n  yarn: A\n  worked: chain\n  length: {{times: 2, around: bag, round: 9}}\n"
    )
    assert none.cords == ((),)


def test_without_a_gauge_a_plain_length_still_holds_but_has_no_chains():
    no_gauge = HEAD.replace(
        "gauge: {stitch: sc, stitches: 20, rows: 20, over: 10 cm}\n", "gauge: not critical\n"
    )
    found = measured("cord:\n  yarn: A\n  worked: chain\n  length: 70 cm\n", head=no_gauge)
    assert found.cords[0][0].chains is None


def test_sizes_have_their_own_cords():
    two = TUBE + "\ncord:\n  yarn: A\n  worked: chain\n  length: 60 (70) cm\n"
    found = measured(two, "sizes: [S, L]\n")
    assert [one[0].length_mm for one in found.cords] == [600, 700]
    missing = measured(two.replace("60 (70) cm", "60 (-) cm"), "sizes: [S, L]\n")
    assert [len(one) for one in missing.cords] == [1, 0]


THROUGH = "finishing:\n  - thread: {piece: cord, through: bag, round: 1, under: 1, over: 1, from: [1]}\n"
"""100 mm around, so 30 cm are usual."""

ROW = rows("sc in 2nd ch from hook and in each ch across", chain=51, name="cord")
SLIPPED = rows("sl st in 2nd ch from hook and in each ch across", chain=51, name="cord")
STRIP = rows(
    "sc in 2nd ch from hook and in next ch, turn",
    *["ch 1, sc in each st across, turn"] * 49,
    chain=3,
    name="cord",
)
CORD_IN_ROUNDS = rounds("4 sc in ring", *["sc in each st around"] * 49, name="cord").replace(
    "joined", "spiral"
)


@pytest.mark.parametrize("piece", [ROW, SLIPPED, STRIP, CORD_IN_ROUNDS])
def test_a_cord_in_rows_or_rounds_is_as_long_as_its_stitches_make_it(piece: str):
    """50 stitches or rows of 5 mm."""
    found = measured(f"{TUBE}\n{piece}", THROUGH)
    (one,) = found.cords[0]
    assert one.length_mm == pytest.approx(250, rel=0.01)
    assert one.worked
    assert one.chains is None
    assert one.around_mm == pytest.approx(100)
    assert one.length_off > 0


def test_a_worked_cords_yarn_and_time_are_counted_once():
    """The same strip, threaded or not, takes the same."""
    threaded, alone = measured(f"{TUBE}\n{STRIP}", THROUGH), measured(f"{TUBE}\n{STRIP}")
    assert threaded.yarn[0][0].metres == alone.yarn[0][0].metres
    assert threaded.hours == alone.hours


def test_what_is_not_threaded_or_not_long_is_no_cord():
    assert measured(f"{TUBE}\n{STRIP}").cords == ((),)
    tag = rows(
        "sc in 2nd ch from hook and in each ch across, turn", *["ch 1, sc in each st across, turn"] * 9
    )
    assert measured(f"{TUBE}\n{tag.replace('cloth', 'cord')}", THROUGH).cords == ((),)
    moon = rounds("6 sc in ring, join", "ch 1, 2 sc in each st around, join", name="cord")
    assert measured(f"{TUBE}\n{moon}", THROUGH).cords == ((),)


def test_a_cord_of_so_many_chains_is_as_long_as_they_are():
    """60 chains of 5 mm; they are counted with the piece that begins with them."""
    chain = "cord:\n  yarn: A\n  worked: chain\n  start: chain 60\n"
    (one,) = measured(f"{TUBE}\n{chain}", THROUGH).cords[0]
    assert one.worked
    assert one.chains is None
    assert one.length_mm == pytest.approx(300)


def test_the_usual_least():
    """1.5 × around, and on a small bag around + 20 cm (common practice, no source)."""
    assert least_cord_mm(1000) == 1500
    assert least_cord_mm(100) == 300
    assert least_cord_mm(400) == 600


def test_chains_are_as_wide_as_stitches():
    assert chains_for(100, 5) == 20
    assert chains_for(1, 5) == 1


def tail(text: str, more: str = "") -> Tail | None:
    disc = rounds("20 sc in ring, join, fasten off", name="moon", fields=f"tail: {text}")
    found = measured(disc, more).tails[0]
    return found[0] if found else None


def test_a_tail_by_its_own_edge():
    found = tail("{times: 2.5, around: self}")
    assert found is not None
    assert found.length_mm == pytest.approx(250)
    assert found.usual is not None
    assert (found.usual.low, found.usual.high) == pytest.approx((200, 300))


def test_a_tail_as_a_length():
    found = tail("20 cm")
    assert found is not None
    assert found.length_mm == 200
    assert found.edge_mm == pytest.approx(100)


def test_no_tail_where_none_is_said_or_its_round_isnt_there():
    assert measured(TUBE).tails == ((),)
    assert tail("{times: 2, around: self, round: 9}") is None


def test_usual_tails():
    """2 to 3 × the edge to sew; once the edge and 20 cm to draw up (common practice, from memory)."""
    assert sewing_tail(100) == Band(200, 300)
    assert drawing_up_tail(100) == 300
    assert Tail("moon", 100, None).usual is None
