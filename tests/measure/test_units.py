"""Bands add, scale and hold."""

from loopleaf.measure.units import Band


def test_about_is_a_share_either_way():
    assert Band.about(100, 0.25) == Band(75, 125)


def test_bands_add_and_scale():
    assert Band(1, 2) + Band(3, 5) == Band(4, 7)
    assert Band(1, 2) * 3 == Band(3, 6)


def test_a_band_holds_its_ends_and_its_middle():
    band = Band(2, 4)
    assert 2 in band
    assert band.middle in band
    assert 4.1 not in band
