"""Corner to corner: so many blocks wide and high."""

import pytest

from loopleaf.measure import Measured
from tests.draw.test_blocks import square

from .worked_patterns import HEAD, measured

SC_GAUGE = "gauge: {stitch: sc, stitches: 20, rows: 20, over: 10 cm}"


def blocks(side: int, gauge: str = SC_GAUGE) -> Measured:
    return measured(square(side), head=HEAD.replace(SC_GAUGE, gauge))


def test_increase_rows_add_a_block_each_way() -> None:
    """Worked by hand: three dc of 5 mm lie 15 mm wide and stand 5 × 1.9 ÷ 0.925 = 10.3 mm high; with half a
    stitch for the chain a side is (17.5 + 10.3) ÷ 2 = 13.9 mm.
    """
    piece = blocks(4).pieces[0]
    sizes = [one.blocks for one in piece.known_rounds(0)]
    assert sizes == [(1, 1), (2, 2), (3, 3), (4, 4), (4, 4), (4, 4), (4, 4)]
    assert [one.length_mm for one in piece.known_rounds(0)][:4] == pytest.approx(
        [13.9, 27.8, 41.7, 55.6], abs=0.3
    )
    assert piece.size[0]["width"].middle == piece.size[0]["length"].middle == pytest.approx(55.6, abs=0.3)


def test_where_the_piece_stops_growing_its_size_is_told() -> None:
    (one,) = blocks(4).checkpoints
    assert (one.label, one.what) == ("4", "width")
    assert one.length_mm[0] == pytest.approx(55.6, abs=0.3)


@pytest.mark.parametrize(
    "gauge",
    ["gauge: {stitch: block, stitches: 5, rows: 5, over: 10 cm}", "gauge: {piece: cloth, across: 8 cm}"],
)
def test_a_gauge_in_blocks_or_across_the_piece(gauge: str) -> None:
    """Five blocks in 10 cm, or four in 8 cm, are 2 cm each."""
    piece = blocks(4, gauge).pieces[0]
    assert piece.size[0]["width"].middle == pytest.approx(80, rel=0.02)
    assert piece.scale is not None
    assert 2 * 20 / piece.scale.width_mm == pytest.approx(3 + 0.5 + 1.9)


def test_a_tile_in_worsted_yarn() -> None:
    """About an inch, or a little less, with a 5 mm hook (common practice, no source)."""
    piece = blocks(2, "gauge: {stitch: dc, stitches: 13, rows: 7, over: 10 cm}").pieces[0]
    assert 25.4 * 0.75 <= piece.size[0]["width"].middle / 2 <= 25.4


def test_a_square_has_as_many_blocks_as_two_triangles() -> None:
    """1 + 2 + … + n and back is n² (textbook arithmetic): rows of so many blocks fill n × n."""
    for side in (2, 5):
        piece = blocks(side).pieces[0]
        made = [one.stitches // 3 for one in piece.known_rounds(0)]
        wide, high = piece.known_rounds(0)[-1].blocks or (0, 0)
        assert sum(made) == wide * high == side**2
