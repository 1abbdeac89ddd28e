"""An edging along the ends of rows is as long as the rows are high (common practice, no source).

Stitches are 5 mm wide and high; sums by hand.
"""

import pytest

from .worked_patterns import measured, rows

FIRST = "sc in 2nd ch from hook and in each ch across, turn"
PLAIN = "ch 1, sc in each st across, turn"
CLOTH = rows(FIRST, *[PLAIN] * 39)
"""200 mm high."""


@pytest.mark.parametrize(
    ("first", "more", "length", "is_eased"),
    [
        ("32 sc evenly along edge, turn", (PLAIN,), 200, True),
        ("50 sc evenly along edge, turn", (PLAIN,), 200, True),
        ("sc in end of each row, turn", (PLAIN,), 200, True),
        # Twelve rows are 60 mm, more than a quarter of the edge: the piece is as wide as its stitches.
        ("32 sc evenly along edge, turn", (PLAIN,) * 11, 160, False),
        # 62 stitches are 310 mm: nobody eases that in. 26 are 130 mm.
        ("62 sc evenly along edge, turn", (PLAIN,), 310, False),
        ("26 sc evenly along edge, turn", (PLAIN,), 130, False),
    ],
)
def test_a_narrow_piece_along_row_ends_is_as_long_as_they_are(
    first: str, more: tuple[str, ...], length: float, is_eased: bool
) -> None:
    band = rows(first, *more, name="band").replace("chain 11", "{edge: cloth, row ends: true}")
    piece = measured(CLOTH + band).piece("band")
    assert piece is not None
    assert piece.size[0]["width"].middle == pytest.approx(length)
    known = piece.known_rounds(0)
    assert [one.length_mm for one in known] == pytest.approx([length] * len(known))
    assert {one.eased for one in known} == {is_eased}


def test_what_follows_the_first_row_keeps_its_share() -> None:
    """42 stitches along 200 mm; three fewer are 39 of 42 parts of it."""
    shorter = "ch 1, sc2tog over next 2 sts, sc in next 36 sts, (sc2tog over next 2 sts) x 2, turn"
    band = rows("42 sc evenly along edge, turn", shorter, name="band")
    piece = measured(CLOTH + band.replace("chain 11", "{edge: cloth, row ends: true}")).piece("band")
    assert piece is not None
    assert [one.length_mm for one in piece.known_rounds(0)] == pytest.approx([200, 200 * 39 / 42])


def test_a_piece_on_the_top_of_another_is_not_eased() -> None:
    band = rows("sc in each st across, turn", name="band").replace("chain 11", "{edge: cloth}")
    piece = measured(CLOTH + band).piece("band")
    assert piece is not None
    assert [one.eased for one in piece.known_rounds(0)] == [False]
