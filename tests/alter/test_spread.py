"""Spreading evenly: shares that differ by one at most, written as patterns write them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopleaf.alter.spread import as_written, gaps, spread


@given(st.integers(1, 200), st.integers(0, 2000))
def test_shares_differ_by_one_at_most_and_keep_the_sum(parts: int, whole: int) -> None:
    shares = gaps(parts, whole)
    assert len(shares) == parts
    assert sum(shares) == whole
    assert max(shares) - min(shares) <= 1


@given(st.integers(1, 150), st.integers(0, 400))
def test_increases_take_every_stitch_once(increases: int, more: int) -> None:
    stitches = increases + more
    plain = spread(increases, stitches)
    assert sum(plain) + increases == stitches
    assert max(plain) - min(plain) <= 1


@given(st.integers(1, 60), st.integers(0, 200))
def test_every_share_lies_where_the_line_is(increases: int, more: int) -> None:
    """Bresenham 1965: no point of the stepped line is a whole step away from the true one."""
    stitches = increases + more
    along = 0
    for turn, share in enumerate(gaps(increases, stitches), start=1):
        along += share
        assert abs(along - turn * stitches / increases) < 1


def test_what_isnt_possible_is_refused() -> None:
    with pytest.raises(ValueError, match="9 increases"):
        spread(9, 8)
    with pytest.raises(ValueError, match="0 increases"):
        spread(0, 8)


@pytest.mark.parametrize(
    ("increases", "stitches", "written"),
    [
        (8, 48, "(hdc in next 5 sts, inc) x 8"),  # what patterns print for the round after 48
        (8, 16, "(hdc in next st, inc) x 8"),
        (8, 8, "(inc) x 8"),
        (4, 56, "(hdc in next 13 sts, inc) x 4"),
        (1, 20, "hdc in next 19 sts, inc"),
        (2, 9, "hdc in next 3 sts, inc, hdc in next 4 sts, inc"),
        (4, 18, "(hdc in next 3 sts, inc, hdc in next 4 sts, inc) x 2"),
        (5, 23, "(hdc in next 4 sts, inc) x 3, (hdc in next 3 sts, inc) x 2"),
    ],
)
def test_written_as_patterns_write_it(increases: int, stitches: int, written: str) -> None:
    """Each is counted by hand: plain stitches and increases together use up the round."""
    assert as_written(increases, stitches, "hdc", "inc") == written


CH = "ch 3 (counts as dc)"


@pytest.mark.parametrize(
    ("increases", "stitches", "first", "line"),
    [
        (12, 36, True, f"{CH}, dc in same st, dc in next 2 sts, (2 dc in next st, dc in next 2 sts) x 11"),
        (12, 36, False, f"{CH}, dc in next st, 2 dc in next st, (dc in next 2 sts, 2 dc in next st) x 11"),
        (12, 24, False, f"{CH}, 2 dc in next st, (dc in next st, 2 dc in next st) x 11"),
        (12, 12, False, f"{CH}, dc in same st, (2 dc in next st) x 11"),
        (1, 12, True, f"{CH}, dc in same st, dc in next 11 sts"),
        (2, 24, True, f"{CH}, dc in same st, dc in next 11 sts, 2 dc in next st, dc in next 11 sts"),
    ],
)
def test_a_chain_that_is_the_first_stitch(increases: int, stitches: int, first: bool, line: str) -> None:
    """Worked out by hand: the chain is the first stitch, of an increase where one comes first."""
    assert as_written(increases, stitches, "dc", "2 dc in next st", first, CH) == line
