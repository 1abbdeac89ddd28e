"""Whatever begins on another piece shows in the picture: on its stitches, as one with it, or beside it."""

import re
from collections.abc import Sequence
from math import cos

import pytest

from loopleaf.draw import first_picture, piece_picture
from loopleaf.draw.begun_on import Bent, _strips
from loopleaf.draw.canvas import Point
from loopleaf.draw.flaps import OnRound
from loopleaf.draw.openings import begun_in_rows
from loopleaf.draw.sheet import Sheet
from loopleaf.draw.stand import LOOKING_DOWN, stand_of
from loopleaf.draw.subject import Subject, subject_of
from loopleaf.draw.went_on import went_on
from loopleaf.fabric import PatternWork
from loopleaf.measure import Measured, measure
from tests.measure.worked_patterns import HEAD, worked

COLOURED = HEAD.replace("A: {", 'A: {colour: "#3b6e4a", ').replace("B: {", 'B: {colour: "#ff0000", ')


def has_yarn_b(svg: str) -> bool:
    """Whether anything is red, in any light: as much green as blue, and less than red."""
    colours = re.findall('"#(..)(..)(..)"', svg)
    return any(green == blue and int(red, 16) > int(green, 16) + 40 for red, green, blue in colours)


PLAIN = "ch 1, sc in each st across, turn"
AROUND = "ch 1, sc in each st around, join"


def piece(name: str, how: str, start: str, *lines: str, yarn: str = "A", make: int = 1) -> str:
    word = "row" if how == "rows" else "round"
    made = "\n".join(f'    - {{{word}: {at}, work: "{line}"}}' for at, line in enumerate(lines, 1))
    return f"{name}:\n  yarn: {yarn}\n  make: {make}\n  worked: {how}\n  start: {start}\n  {word}s:\n{made}\n"


def part(on: str, *lines: str, name: str = "part", how: str = "rows") -> str:
    plain = PLAIN if how == "rows" else AROUND
    return piece(name, how, f"{{edge: {on}}}", *(lines or [plain] * 4), yarn="B")


TUBE = piece("base", "joined rounds", "chain 32, joined", *[AROUND] * 6)
DISC = piece("base", "spiral rounds", "magic ring", "6 sc in ring", "inc around", "(sc in next st, inc) x 6")
CORNERS = "ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) x 3, join"
SQUARE = piece("base", "joined rounds", "magic ring", CORNERS)
ON_A_SIDE = "join B with sl st in any ch-2 sp, ch 1, sc in same sp, sc in next 3 sts, turn"
CLOTH = piece("base", "rows", "chain 21", "sc in 2nd ch from hook and in each ch across, turn", *[PLAIN] * 7)
FAN = piece(
    "base",
    "rows",
    "magic ring",
    "ch 3 (counts as dc), 6 dc in ring, turn",
    "ch 3 (counts as dc), dc in same st, 2 dc in each st across, turn",
    "ch 3 (counts as dc), dc in same st, (dc in next st, 2 dc in next st) x 6, dc in last st, turn",
)
LEG = piece(
    "base", "spiral rounds", "magic ring", "6 sc in ring", "inc around", *["sc in each st around"] * 4, make=2
)
TWO = "sc in next 12 sts of base 1, sc in next 12 sts of base 2"

PLACES = {
    "on a tube": TUBE + part("base, round: 6, stitches: 1-16"),
    "over a tube's beginning": TUBE + part("base, round: 6, stitches: 30-32", PLAIN, PLAIN),
    "within a tube": TUBE + part("base, round: 3, stitches: 4-10"),
    "on a disc": DISC + part("base, round: 3, stitches: 3-7"),
    "in a square's spaces": SQUARE
    + part(
        "base, round: 1",
        "join B with sl st in any ch-2 sp, ch 1, sc in same sp, sc in next 3 sts, turn",
        PLAIN,
    ),
    "on half a disc": FAN + part("base, row: 3, stitches: 4-9"),
    "on all of half a disc": FAN + part("base, row: 3, stitches: 1-21"),
    "within a cloth": CLOTH + part("base, row: 4, stitches: 4-10"),
    "on a band": CLOTH
    + piece("band", "rows", "{edge: base, row ends: true}", "ch 1, sc in end of each row, turn", PLAIN)
    + part("band, row: 2, stitches: 2-5"),
    "on a flap": TUBE
    + piece("flap", "rows", "{edge: base, round: 6, stitches: 1-8}", *[PLAIN] * 4)
    + part("flap, row: 4, stitches: 2-5"),
    "on a flap's row ends": TUBE
    + piece("flap", "rows", "{edge: base, round: 6, stitches: 1-8}", *[PLAIN] * 4)
    + part("flap, row ends: true", "ch 1, sc in end of each row, turn"),
    "all around a tube": TUBE + part("base, round: 6", how="joined rounds"),
    "all around a disc": DISC + part("base, around: true", how="joined rounds"),
    "on a tube on a tube": TUBE
    + piece("more", "joined rounds", "{edge: base, round: 6}", *[AROUND] * 2)
    + part("more, round: 2", how="joined rounds"),
    "in rounds on a cloth": CLOTH + part("base, row: 8, stitches: 1-9", how="joined rounds"),
    "on two copies": LEG + part("base, round: 6", TWO, "sc in each st around", how="spiral rounds"),
    "on what lies beside": CLOTH
    + piece("tube", "joined rounds", "{edge: base, row: 8, stitches: 1-9}", *[AROUND] * 2)
    + part("tube, round: 2, stitches: 1-4"),
}


def of(pieces: str) -> PatternWork:
    work = worked(pieces, head=COLOURED)
    assert not work.problems, work.problems
    return work


def base(pieces: str) -> tuple[Subject, Measured]:
    work = of(pieces)
    measured = measure(work)
    subject = subject_of(work, work.pieces[0], measured)
    assert subject is not None
    return subject, measured


def box(svg: str) -> list[float]:
    """Width and height of a picture without its margin, in mm."""
    found = re.search(r'viewBox="\S+ \S+ (\S+) ([^"]+)"', svg)
    assert found is not None
    return [float(one) - 4 for one in found.groups()]


@pytest.mark.parametrize("left_handed", [False, True])
@pytest.mark.parametrize("place", PLACES)
def test_nothing_that_begins_on_another_piece_is_missing(place: str, left_handed: bool) -> None:
    work = of(PLACES[place])
    assert has_yarn_b(first_picture(work, None, left_handed))
    assert not has_yarn_b(piece_picture(work, "base", None, left_handed))


def test_what_begins_on_nothing_is_not_added() -> None:
    other = piece("other", "rows", "chain 9", "sc in 2nd ch from hook and in each ch across, turn", yarn="B")
    assert not has_yarn_b(first_picture(of(TUBE + other)))


@pytest.mark.parametrize("rows", [2, 4, 8])
def test_a_flap_goes_on_up_from_its_round(rows: int) -> None:
    """Half the way around, it reaches from the nearest part of the rim to the farthest or nearly so."""
    tube, flap = TUBE, part("base, round: 6, stitches: 1-16", *[PLAIN] * rows)
    low, high = (box(first_picture(of(pieces)))[1] for pieces in (tube, tube + flap))
    assert high - low == pytest.approx(rows * 5 * cos(LOOKING_DOWN), abs=3)


def test_a_flap_lies_on_its_rounds_edge_its_right_side_outside() -> None:
    subject, _ = base(TUBE + part("base, round: 6, stitches: 1-8"))
    stand, rounds = stand_of(subject)
    (begun,) = begun_in_rows(subject, rounds, around=True)
    assert begun.at == 5
    assert begun.wide == pytest.approx(8 / 32)
    ring = stand.rings[5]
    surface = OnRound(stand, ring, ring, begun.along, subject.sizes[5].length_mm)
    assert surface.point(0.0, 0.0) == pytest.approx(stand.point(ring.out1, ring.high1, begun.along))
    assert surface.point(0.0, 10.0)[1] > surface.point(0.0, 0.0)[1]
    # It faces the viewer, who sees its right side: what lies to its right lies to the right.
    assert surface.is_near(0.0, 0.0)
    assert surface.point(5.0, 0.0)[0] > surface.point(-5.0, 0.0)[0]
    # Half the way around there is the other side of the tube, seen from within.
    assert not surface.is_near(16 * 5.0, 0.0)
    # Its ends lie where the run of stitches ends.
    first = next(item for item in rounds[5] if id(item.thing) in _under(subject))
    end = stand.point(ring.out1, ring.high1, first.start)
    assert surface.point(4 * 5.0, 0.0) == pytest.approx(end, abs=0.3)


def _under(subject: Subject) -> set[int]:
    made = subject.work.pieces[1].rounds[0].sizes[0]
    assert made is not None
    return {id(place) for one in made.made if getattr(one, "number", 0) for place in getattr(one, "into", ())}


def test_a_run_over_a_rounds_beginning_has_its_middle_there() -> None:
    lines = ["sc in next 4 sts, turn", "ch 1, sc in next 4 sts, turn"]
    subject, _ = base(TUBE + part("base, round: 6, stitches: [31-32, 1-2]", *lines))
    _, rounds = stand_of(subject)
    (begun,) = begun_in_rows(subject, rounds, around=True)
    first = rounds[5][0].start
    assert (begun.along - first + 0.5) % 1.0 - 0.5 == pytest.approx(0.0, abs=0.02)
    assert begun.wide == pytest.approx(4 / 32)


def test_rounds_go_on_as_one_piece() -> None:
    subject, measured = base(PLACES["on a tube on a tube"])
    shown = {"base"}
    whole = went_on(subject, measured, shown)
    assert shown == {"base", "more", "part"}
    assert len(whole.worked) == len(whole.sizes) == len(whole.piece.rounds) == 6 + 2 + 4
    assert [size.height_mm for size in whole.sizes] == pytest.approx([5.0 * at for at in range(1, 13)])


@pytest.mark.parametrize("place", ["on two copies", "on a tube", "in rounds on a cloth", "on a flap"])
def test_what_does_not_go_once_around_the_last_round_is_not_one_with_it(place: str) -> None:
    subject, measured = base(PLACES[place])
    assert went_on(subject, measured, {"base"}) is subject


def test_what_lies_beside_is_drawn_apart() -> None:
    """Below a cloth that is wider than high: eight rows high, twenty stitches wide, a gap of 0.08 of that."""
    wide, high = box(first_picture(of(PLACES["in rounds on a cloth"])))
    assert wide == pytest.approx(100, abs=1)
    own = box(piece_picture(of(PLACES["in rounds on a cloth"]), "part"))[1]
    assert high == pytest.approx(40 + 8 + own, abs=1)


def test_rows_on_an_arc_keep_their_length_and_stand_straight_on_a_straight_side() -> None:
    round_, straight = Sheet(3.14159, 0.0), Sheet(3.14159, 0.0, sides=2)
    for sheet in (round_, straight):
        surface = Bent(sheet, 3.14159 * 50 if sheet is round_ else 141.4, 0.25, 50.0)
        for y in (0.0, 20.0):
            (ax, ay), (bx, by) = surface.point(-1.0, y), surface.point(1.0, y)
            assert ((ax - bx) ** 2 + (ay - by) ** 2) ** 0.5 == pytest.approx(2.0, abs=0.02)
        (ax, ay), (bx, by) = surface.point(0.0, 0.0), surface.point(0.0, 20.0)
        assert bx - ax == pytest.approx(-((20**2 / 2) ** 0.5), abs=0.5)
        assert by - ay == pytest.approx((20**2 / 2) ** 0.5, abs=0.5)


def test_strips_are_all_of_a_shape_and_hardly_more() -> None:
    shape = [(0.0, 0.0), (100.0, 0.0), (100.0, 10.0), (40.0, 20.0), (0.0, 10.0)]
    strips = [*_strips(shape)]
    assert len(strips) == 17
    assert all(max(x for x, _ in one) - min(x for x, _ in one) <= 6.1 for one in strips)
    assert _area(shape) <= sum(map(_area, strips)) <= _area(shape) + 17 * 0.1 * 20
    small = [(0.0, 0.0), (5.0, 0.0), (5.0, 5.0)]
    assert [*_strips(small)] == [small]


def _area(shape: Sequence[Point]) -> float:
    ends = zip(shape, [*shape[1:], shape[0]], strict=True)
    return abs(sum(ax * by - bx * ay for (ax, ay), (bx, by) in ends)) / 2
