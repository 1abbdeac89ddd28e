"""Each technique: a pattern that uses it, and a near miss that doesn't."""

from dataclasses import replace

import pytest

from loopleaf import trade
from loopleaf.fabric import Made, WorkedRound
from loopleaf.measure.made import contents
from loopleaf.measure.techniques import IN_A_ROUND, in_rounds
from loopleaf.notation.tree import Line, Next, Repeat, Stitch, Target, Work

from .by_hand import made, piece, worked
from .worked_patterns import HEAD, measured, rounds, rows

SC_ROW = "sc in 2nd ch from hook and in each ch across, turn"
DC_ROW = "dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"
DC_PLAIN = "ch 3 (counts as dc), dc in next st and in each st across, turn"


def found(pieces: str, more: str = "", head: str = HEAD) -> dict[str, str]:
    """Techniques used, with the round of the first use."""
    return {use.technique: use.round for use in measured(pieces, more, head).level.uses}


def in_row_2(line: str, chain: int = 11, first: str = SC_ROW) -> dict[str, str]:
    return found(rows(first, line, chain=chain))


@pytest.mark.parametrize(
    ("technique", "line"),
    [
        ("treble", "ch 4 (counts as tr), tr in next st and in each st across"),
        ("double-treble", "ch 5 (counts as dtr), dtr in next st and in each st across"),
        ("chain-spaces", "ch 1, sc in first st, (ch 1, sk 1 st, sc in next st) x 4, sc in last st"),
        ("loops", "ch 1, sc in BLO of each st across"),
        ("shells", "ch 1, sc in first st, sk 2 sts, 5 dc in next st, sk 2 sts, sc in each of next 4 sts"),
        (
            "v-stitches",
            "ch 1, sc in first st, sk 1 st, ((dc, ch 1, dc) in next st, sk 2 sts) x 2, sc in last 2 sts",
        ),
        ("clusters", "ch 1, sc in first 4 sts, 5-dc bobble in next st, sc in each of next 5 sts"),
        ("picot-edging", "ch 1, sc in first 5 sts, ch-3 picot, sc in each of next 5 sts"),
        ("colors-within-a-round", "ch 1, sc in next 5 sts, change to B, sc in next 5 sts"),
        ("tapestry", "ch 1, sc in next 3 sts, change to B, sc in next 3 sts, change to C, sc in next 4 sts"),
    ],
)
def test_a_row_that_uses_it(technique: str, line: str):
    assert in_row_2(line)[technique] == "2"


@pytest.mark.parametrize(
    "line",
    [
        PLAIN,
        "ch 2 (does not count), hdc in each st across",
        "ch 1, sc in first 3 sts, sc2tog x 2, 3 sc in next st, sc in each of next 2 sts",
        "with B, ch 1, sc in each st across",
        "ch 3 (counts as dc), dc in next st and in each st across",
    ],
)
def test_basic_rows_use_none(line: str):
    assert in_row_2(line) == {}


def test_two_stitches_and_no_space_are_no_v():
    assert "v-stitches" not in in_row_2("ch 1, sc in first 8 sts, sk 1 st, 2 dc in next st")


def test_corners_are_no_v_stitches_unless_they_are_called_so():
    corner = "ch 3 (counts as dc), dc in next 2 sts, {0}, dc in next 3 sts, {0}, dc in next 2 sts"
    assert "v-stitches" not in in_row_2(corner.format("(dc, ch 1, dc) in next st"))
    head = HEAD + 'special stitches: {V-st: {work: "(dc, ch 1, dc) in same st", text: Two in one.}}\n'
    named = "ch 1, sc in first 9 sts, V-st in next st"
    assert found(rows(SC_ROW, named, chain=11), head=head)["v-stitches"] == "2"


def test_three_tall_stitches_in_one_place_are_no_shell():
    line = "ch 1, sc in first 4 sts, sk 1 st, 3 dc in next st, sk 1 st, sc in each of next 3 sts"
    assert "shells" not in in_row_2(line)


def test_a_middle_worked_in_one_place_is_no_shell():
    """Half a circle's first row, all of it in one chain."""
    first = "7 dc in 4th ch from hook (skipped chs do not count)"
    assert "shells" not in found(rows(first, chain=4))


def test_an_authors_group_of_three_is_a_shell():
    head = HEAD + 'special stitches:\n  fan: {short: fan, work: "3 dc in same st", text: Three in one.}\n'
    line = "ch 1, sc in first 4 sts, sk 1 st, fan in next st, sk 1 st, sc in each of next 3 sts"
    assert found(rows(SC_ROW, line), head=head)["shells"] == "2"


def test_posts():
    line = "ch 3 (counts as dc), FPdc around next st, BPdc around next st, dc in each of next 6 sts"
    assert in_row_2(line, 11, DC_ROW)["posts"] == "2"


def test_posts_that_cross_are_a_cable():
    crossed = "ch 3 (counts as dc), sk next st, FPdc around next st, FPdc around skipped st, dc in next 6 sts"
    assert in_row_2(crossed, 11, DC_ROW)["crossed-posts"] == "2"
    plain = "ch 3 (counts as dc), FPdc around next st, FPdc around next st, dc in next 6 sts"
    assert "crossed-posts" not in in_row_2(plain, 11, DC_ROW)


def test_picots_in_a_net_are_lace():
    line = "ch 1, sc in first st, (ch 3, ch-3 picot, ch 1, sk 2 sts, sc in next st) x 3"
    used = in_row_2(line)
    assert used["picot-lace"] == "2"
    assert "picot-edging" not in used


def test_a_stitch_two_rounds_below():
    line = "ch 1, sc in first 4 sts, sc in st 2 rows below, sc in each of next 5 sts"
    used = found(rows(SC_ROW, PLAIN, PLAIN, line))
    assert used == {"rounds-below": "4"}


def test_short_rows_come_back_over_what_they_left():
    first = worked(("single", 10), round=0)
    short = worked(("single", 6), round=1)
    short.edge = [*first.edge[6:], *short.edge]
    back = worked(("single", 10), round=2)
    for one, place in zip(back.made, short.edge, strict=True):
        assert isinstance(one, Made)
        one.into = (place,)
    assert by_hand(first, short, back) == {"short-rows": "3"}
    plain = worked(("single", 6), round=2)
    for one, place in zip(plain.made, short.edge[4:], strict=True):
        assert isinstance(one, Made)
        one.into = (place,)
    assert by_hand(first, short, plain) == {}


def by_hand(*worked_rows: WorkedRound) -> dict[str, str]:
    """Techniques in rows made by hand."""
    cloth = piece(*worked_rows)
    for round in cloth.rounds:
        round.plan = replace(round.plan, word="row")
    return {use.technique: use.round for use in in_rounds(cloth, [contents(one) for one in worked_rows], {})}


def test_very_tall_by_name_and_by_yarn_overs():
    assert "very-tall" in in_row_2("ch 6 (counts as trtr), trtr in next st and in each st across")
    head = HEAD + "special stitches:\n  spire: {short: sp6, yarn overs: 6, text: Six turns of yarn.}\n"
    used = found(rows(SC_ROW, "ch 1, sc in next 9 sts, spire in last st"), head=head)
    assert "very-tall" in used
    assert "treble" not in used


def test_foundation_stitches():
    assert by_hand(worked(("foundation-single", 10))) == {"foundation": "1"}
    assert by_hand(worked(("single", 10))) == {}


def test_both_sides_of_a_chain():
    oval = rounds(
        "2 sc in 2nd ch from hook, sc in next 3 chs, 3 sc in last ch, "
        "working along other side of foundation ch, sc in next 3 chs, sc in last ch, join",
        start="chain 6, both sides",
    )
    assert "both-sides" in found(oval)
    assert "both-sides" not in found(rounds("6 sc in ring, join"))


CORD = "\ncord:\n  yarn: A\n  worked: chain\n  length: 30 cm\n"
MOON = "\n" + rounds("6 sc in ring, join, fasten off", name="moon")
BUMP = "\n" + rounds(
    "6 sc in ring, join", "ch 1, sc in each st around, join", "ch 1, sc in each st around, join", name="bump"
)


def test_a_cord():
    threaded = "finishing:\n  - thread: {piece: cord, through: cloth, row: 1, under: 1, over: 1}\n"
    assert "cords" in found(rows(SC_ROW) + CORD, threaded)
    assert "cords" not in found(rows(SC_ROW) + CORD)


def test_sewing_a_flat_piece_on():
    sewn = "finishing:\n  - sew: {piece: moon, to: cloth}\n"
    assert "sewing-flat" in found(rows(SC_ROW) + MOON, sewn)
    assert "sewing-flat" not in found(rows(SC_ROW) + MOON)


def test_sewing_a_shaped_piece_on():
    sewn = "finishing:\n  - sew: {piece: bump, to: cloth}\n"
    used = found(rows(SC_ROW) + BUMP, sewn)
    assert "sewing-in-place" in used
    assert "sewing-flat" not in used


def test_stuffing_in_the_finishing_and_between_rounds():
    assert "stuffing" in found(rows(SC_ROW), "finishing:\n  - stuff: Fill it.\n")
    between = rounds("6 sc in ring, join") + "    - stuff: Fill it.\n"
    assert "stuffing" in found(between)


def test_a_shaped_garment_needs_a_body_and_a_shape():
    fits = "to fit: {neck: 34 cm}\n"
    shaped = rows(SC_ROW, "ch 1, 2 sc in first st, sc in each st across, turn")
    assert "shaped-garment" in found(shaped, fits)
    assert "shaped-garment" not in found(rows(SC_ROW, PLAIN), fits)
    assert "shaped-garment" not in found(shaped)
    assert "shaped-garment" not in found(shaped, "to fit: {head: 54 cm}\n")


def test_a_grid_of_yarns_is_no_filet_picture():
    grid = 'grid: {rows: ["#.#.#.#.#.", ".#.#.#.#.#"], key: {"#": A, ".": B}, from: bottom right}'
    assert "filet" not in found(rows(SC_ROW, PLAIN, fields=grid))
    filet = grid.replace('"#": A, ".": B', '"#": 2 dc in next st, ".": ch 1')
    assert "filet" in found(rows(SC_ROW, PLAIN, fields=filet))


def test_a_stitch_into_a_space_of_another_piece_joins_as_you_go():
    def line(target: str, of: str) -> Line:
        place = Next(target=Target(target), piece=of)  # type: ignore[arg-type]
        return Line((Repeat((Work(Stitch("single"), places=(place,)),)),))

    def used(one: Line) -> set[str]:
        motif = piece(worked(("single", 10)))
        motif.rounds[0].line = one
        return {use.technique for use in in_rounds(motif, [made(("single", 10))], {})}

    assert used(line("space", "square 1")) == {"joining-as-you-go"}
    assert used(line("stitch", "leg 2")) == set()
    assert used(line("space", "")) == set()


def test_a_round_that_a_size_lacks_is_passed_over():
    motif = piece(worked(("single", 10)))
    assert list(in_rounds(motif, [None], {})) == []


def test_every_technique_has_its_row():
    rows_ = {row.key for row in trade.techniques()}
    assert set(IN_A_ROUND) < rows_
    others = {"both-sides", "cords", "filet", "stuffing", "sewing-flat", "sewing-in-place"}
    assert rows_ == set(IN_A_ROUND) | others | {"shaped-garment", "three-at-once"}
