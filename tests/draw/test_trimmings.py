"""What the finishing tells in words to be put on is in the picture: fringe and pompons."""

from xml.etree import ElementTree

import pytest

from loopleaf.draw import first_picture
from loopleaf.draw.trimmings import Fringe, Pompon, fringe_of, pompon_of
from loopleaf.fabric import PatternWork
from tests.measure.worked_patterns import rounds, rows, worked

from .pieces import tree

CLOTH = rows("sc in 2nd ch from hook and in each ch across, turn", *["ch 1, sc in each st across, turn"] * 9)
PLAIN = "ch 1, sc in each st around, join"
CAP = rounds("ch 1, 12 sc in ring, join", "ch 1, 2 sc in each st around, join", *[PLAIN] * 6)


def told(text: str, pieces: str = CLOTH, more: str = "") -> PatternWork:
    return worked(pieces, f'{more}finishing: [{{text: "{text}"}}]\n')


def box(work: PatternWork) -> tuple[float, float]:
    """Width and height of the picture in mm."""
    root: ElementTree.Element = tree(first_picture(work))
    wide, high = (float(n) for n in str(root.get("viewBox")).split()[2:])
    return wide, high


@pytest.mark.parametrize(
    ("text", "fringe"),
    [
        ("Fringe: cut strands 20 cm long and knot one into each st of both short ends.",
         Fringe(("first", "last"), 100.0, 1, "")),
        ("A fringe 8 cm long in B in every other stitch of the last row.", Fringe(("last",), 80.0, 2, "B")),
        ("Cut 4 strands of C 30 cm long for each tassel, trim to 12 cm. Attach along the foundation edge.",
         Fringe(("first",), 120.0, 1, "C")),
        ("Add a fringe.", Fringe((), 0.0, 1, "")),
        ("Leave it plain, without a fringe.", None),
        ("Sew a tassel to each corner.", None),
        ("Weave in both ends.", None),
    ],
)  # fmt: skip
def test_the_words_of_a_fringe(text: str, fringe: Fringe | None) -> None:
    """A strand that is cut is folded in half; what it is trimmed to it has in the end."""
    assert fringe_of(told(text).pattern) == fringe


@pytest.mark.parametrize(
    ("text", "pompon"),
    [
        ("Make a pompon 6 cm across in B and sew it to the crown.", Pompon(60.0, "B")),
        ("Sew a pom-pom on top.", Pompon(0.0, "")),
        ("If you like, sew a pompon on top.", None),
        ("Weave in the ends.", None),
    ],
)
def test_the_words_of_a_pompon(text: str, pompon: Pompon | None) -> None:
    assert pompon_of(told(text).pattern) == pompon


def test_a_fringe_hangs_from_both_ends_of_a_scarf() -> None:
    bare, fringed = box(told("Weave in.")), box(told("Add a fringe 10 mm long at both ends."))
    assert fringed[1] - bare[1] == pytest.approx(20.0, abs=2.0)
    assert fringed[0] - bare[0] < 3.0
    one = box(told("Add a fringe 10 mm long to the last row."))
    assert one[1] - bare[1] == pytest.approx(10.0, abs=1.5)


def test_a_fringe_is_no_longer_than_its_piece_can_show() -> None:
    bare, fringed = box(told("Weave in.")), box(told("Add a fringe 90 cm long at both ends."))
    assert fringed[1] < 2 * bare[1]


def test_a_pompon_sits_on_the_crown_of_a_cap_and_on_nothing_else() -> None:
    step, head = "Sew a pompon 30 mm across to the crown.", "to fit: {head: 56 cm}\n"
    bare, worn = box(told("Weave in.", CAP, head)), box(told(step, CAP, head))
    assert 15.0 < worn[1] - bare[1] < 32.0
    assert box(told(step, CAP)) == box(told("Weave in.", CAP))
