"""Yarn weights, hooks, papers and licences against the lists that they come from."""

import pytest

from loopleaf import trade


@pytest.mark.parametrize(
    ("number", "stitches", "hook_mm"),
    [
        (1, (21, 32), (2.25, 3.5)),
        (2, (16, 20), (3.5, 4.5)),
        (3, (12, 17), (4.5, 5.5)),
        (4, (11, 14), (5.5, 6.5)),
        (5, (8, 11), (6.5, 9)),
        (6, (6, 9), (9, 16)),
        (7, (None, 5), (16, None)),
    ],
)
def test_yarn_weights(
    number: int, stitches: tuple[float | None, float], hook_mm: tuple[float, float | None]
) -> None:
    """Craft Yarn Council guidelines, as reprinted: single crochet in 4 inches, and hooks."""
    row = trade.yarn_weights()[number]
    assert (row.number, row.gauge_stitch, row.stitches, row.hook_mm) == (number, "single", stitches, hook_mm)


def test_lace_is_given_in_double_crochet() -> None:
    """Craft Yarn Council guidelines, as reprinted: 32 to 42 double crochet in 4 inches."""
    lace = trade.yarn_weights()[0]
    assert (lace.gauge_stitch, lace.stitches) == ("double", (32, 42))


@pytest.mark.parametrize(
    ("mm", "us", "old_uk"),
    [
        (2.25, "B-1", "13"),
        (3.25, "D-3", "10"),
        (3.5, "E-4", "9"),
        (4.0, "G-6", "8"),
        (5.0, "H-8", "6"),
        (5.5, "I-9", "5"),
        (6.0, "J-10", "4"),
        (6.5, "K-10½", "3"),
        (8.0, "L-11", "0"),
    ],
)
def test_hooks(mm: float, us: str, old_uk: str) -> None:
    """A conversion chart read on the web for 2.25 and 3.25 to 10 mm."""
    (row,) = [row for row in trade.hooks() if row.mm == mm]
    assert (row.us, row.old_uk) == (us, old_uk)


def test_steel_numbers_run_the_other_way() -> None:
    """Craft Yarn Council: a higher number is finer. A chart on the web: 00 is 3.5 mm, 14 is 0.75 mm."""
    steel = trade.steel_hooks()
    assert (steel[0].us, steel[0].mm, steel[-1].us, steel[-1].mm) == ("00", 3.5, "14", 0.75)
    assert [row.mm for row in steel] == sorted((row.mm for row in steel), reverse=True)


def test_papers() -> None:
    """ISO 216 for A4 and A5; Letter is 8.5 × 11 in (from memory)."""
    sizes = {row.key: (row.width_mm, row.height_mm) for row in trade.papers()}
    assert sizes["a4"] == (210, 297)
    assert sizes["a5"] == (148, 210)
    assert sizes["letter"] == pytest.approx((8.5 * 25.4, 11 * 25.4))
    assert sizes["half-letter"] == pytest.approx((5.5 * 25.4, 8.5 * 25.4))


def test_levels() -> None:
    """Craft Yarn Council project levels, as quoted on the web."""
    assert [row.key for row in trade.levels()] == ["basic", "easy", "intermediate", "complex"]


def test_licences() -> None:
    """SPDX identifiers, from memory: only CC0 asks for no name, NC ones forbid earning."""
    for row in trade.licences():
        assert row.needs_name == (row.spdx != "CC0-1.0")
        assert row.sells == ("-NC" not in row.spdx)


def test_the_small_parts_cylinder() -> None:
    """16 CFR 1501.4, whose inch sizes rule: 1.25 in across, 1 to 2.25 in deep."""
    (row,) = [row for row in trade.cautions() if row.key == "small-parts"]
    assert "1.25 in (31.7 mm) across and 1 to 2.25 in (25.4 to 57.1 mm) deep" in row.standards[0].says
