"""Each caution: a pattern that earns it, and a near miss that doesn't."""

import pytest

from loopleaf import trade
from loopleaf.measure.cautions import LONG_WORK_HOURS

from .worked_patterns import HEAD, measured, rounds, rows

SC_ROW = "sc in 2nd ch from hook and in each ch across, turn"
CLOTH = rows(SC_ROW)
LACE = rows(SC_ROW, "ch 1, sc in first st, (ch 2, sk 2 sts, sc in next st) x 3")
CLOSE_MESH = rows(SC_ROW, "ch 1, sc in first st, (ch 1, sk 1 st, sc in next st) x 4, sc in last st")
CORD = "\ncord:\n  title: Drawstring\n  yarn: A\n  worked: chain\n  length: 30 cm\n"
SMALL = "\n" + rounds("6 sc in ring, join", name="moon", fields="title: Moon")
SEWN = "finishing:\n  - sew: {piece: moon, to: cloth}\n"
EYES = "finishing:\n  - {0}: {{what: safety eyes, to: cloth, row: 1, stitches: [3, 8]}}\n"
BIG = "\n" + rounds(
    "6 sc in ring, join",
    "ch 1, 2 sc in each st around, join",
    *(f"ch 1, (sc in next {k} sts, 2 sc in next st) x 6, join" for k in range(1, 7)),
    name="moon",
)
"""Eight rounds of 5 mm: 8 cm across."""


def notion(text: str) -> str:
    return f"  notions: [{text}]\n"


def earned(pieces: str, more: str = "", notions: str = "") -> dict[str, tuple[str, ...]]:
    head = HEAD.replace("  hook: 5 mm\n", f"  hook: 5 mm\n{notions}")
    return {one.caution.key: one.because for one in measured(pieces, more, head).cautions}


@pytest.mark.parametrize(
    ("caution", "pieces", "more", "notions"),
    [
        ("cords", CLOTH + CORD, "", ""),
        ("cords", CLOTH, "", notion("1 m of thin cord")),
        ("cords", CLOTH, "finishing:\n  - text: Tie it on with a 40 cm cord.\n", ""),
        ("cords", CLOTH, "finishing:\n  - text: Hang it over the cot with a cord of 60 cm.\n", ""),
        ("cords", CLOTH, "summary: Mittens on a string.\n", ""),
        ("cords", CLOTH, "finishing:\n  - text: Join the mittens with a string through the sleeves.\n", ""),
        ("cords", CLOTH, "notes: [Make two drawstrings of 50 cm.]\n", ""),
        ("cords", CLOTH, "finishing:\n  - {text: Close it., note: A cord of 30 cm will do.}\n", ""),
        ("long-straps", CLOTH, "tags: [strap]\n", ""),
        ("cot", CLOTH, "notes: [Not only for babies.]\n", ""),
        ("cot", CLOTH, "summary: Baby blanket.\n", ""),
        ("cot", CLOTH, "summary: A blanket for a baby.\n", ""),
        ("cot", CLOTH, "summary: Blankets for babies.\n", ""),
        ("holes-and-fringes", LACE, "tags: [newborn]\n", ""),
        ("holes-and-fringes", CLOTH, "summary: A scarf for children, with a fringe.\n", ""),
        ("safety-eyes", CLOTH, "", notion("two safety eyes")),
        ("safety-eyes", CLOTH, EYES.format("place"), ""),
        ("small-parts", CLOTH, "", notion("two safety eyes")),
        ("small-parts", CLOTH, "", notion("3 buttons")),
        ("small-parts", CLOTH + SMALL, SEWN, ""),
        ("stuffing", CLOTH, "finishing:\n  - stuff: Fill it.\n", ""),
        ("stuffing", CLOTH, "", notion("toy filling")),
        ("heat", CLOTH, "summary: A trivet for the table.\n", ""),
        ("pets", CLOTH, "summary: A mouse for the cat.\n", ""),
        ("hands", CLOTH.replace("worked: rows", "make: 3000\n  worked: rows"), "", ""),
    ],
)
def test_a_pattern_that_earns_it(caution: str, pieces: str, more: str, notions: str):
    assert caution in earned(pieces, more, notions)


@pytest.mark.parametrize(
    ("caution", "pieces", "more", "notions"),
    [
        ("cords", CLOTH, "summary: A record of corduroy.\n", ""),
        ("cords", CLOTH, "notes: [Work the last round in cord stitch.]\n", ""),
        ("cords", CLOTH, "notes: [The edge lies there like a cord.]\n", ""),
        ("cords", CLOTH, "notes: [A cord-like edge.]\n", ""),
        ("cords", CLOTH, "notes: [It has no cords.]\n", ""),
        ("cords", CLOTH, "finishing:\n  - text: Sew on a loop instead of a cord.\n", ""),
        ("cords", CLOTH, "finishing:\n  - text: String the beads.\n", ""),
        ("cords", CLOTH, "notes: [It shines like pearls on a string of beads.]\n", ""),
        ("cords", CLOTH, "notes: [Work over the cord.]\n", ""),
        ("long-straps", CLOTH, "summary: A tray with a handle.\n", ""),
        ("cot", CLOTH, "summary: A flower called Baby Breath.\n", ""),
        ("cot", CLOTH, "summary: A sprig of baby's breath.\n", ""),
        ("cot", CLOTH, "notes: [Any baby weight yarn will do.]\n", ""),
        ("cot", CLOTH, "notes: [Not meant for babies or small children.]\n", ""),
        ("cot", CLOTH, "notes: [It isn't suitable for babies.]\n", ""),
        ("cot", CLOTH, "summary: A cotton cloth.\n", ""),
        ("holes-and-fringes", LACE, "", ""),
        ("holes-and-fringes", CLOSE_MESH, "tags: [baby]\n", ""),
        ("safety-eyes", CLOTH, "notes: [Embroider the eyes.]\n", ""),
        ("safety-eyes", CLOTH, EYES.format("embroider"), ""),
        ("small-parts", CLOTH, "summary: A cloth as bright as a button.\n", ""),
        ("small-parts", CLOTH + BIG, SEWN, ""),
        ("small-parts", CLOTH + SMALL, "", ""),
        ("stuffing", CLOTH, "notes: [No stuffiness.]\n", ""),
        ("heat", CLOTH, "summary: A warm hat.\n", ""),
        ("pets", CLOTH, "summary: A catalogue of dogmas.\n", ""),
        ("pets", CLOTH, "notes: [Hang it where no small child and no cat can pull it down.]\n", ""),
        ("cot", CLOTH, "notes: [Keep it out of reach of a baby.]\n", ""),
        ("holes-and-fringes", LACE, "notes: [Keep it away from small children.]\n", ""),
        ("hands", CLOTH, "", ""),
    ],
)
def test_a_near_miss(caution: str, pieces: str, more: str, notions: str):
    assert caution not in earned(pieces, more, notions)


def test_the_reasons_say_where():
    assert earned(CLOTH + CORD)["cords"] == ("a cord (Drawstring)",)
    assert earned(CLOTH + SMALL, SEWN)["small-parts"] == ("a small piece sewn on (Moon)",)
    assert earned(LACE, "tags: [newborn]\n")["holes-and-fringes"] == (
        "chain spaces (cloth)",
        "made for a baby (newborn)",
    )


def test_long_work_is_long():
    found = measured(CLOTH.replace("worked: rows", "make: 3000\n  worked: rows"))
    assert found.hours[0].practised.high >= LONG_WORK_HOURS


def test_every_caution_is_earned_by_a_case_above():
    cases = {case[0] for case in _cases(test_a_pattern_that_earns_it)}
    misses = {case[0] for case in _cases(test_a_near_miss)}
    assert cases == misses == {row.key for row in trade.cautions()}


def _cases(test: object) -> list[tuple[str, ...]]:
    (mark,) = test.pytestmark  # type: ignore[attr-defined]
    cases: list[tuple[str, ...]] = mark.args[1]
    return cases
