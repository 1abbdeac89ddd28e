"""Cloth that grows and shrinks in every row waves, in the picture as on the table."""

from loopleaf.draw import first_picture
from loopleaf.draw.wave import wave_of
from tests.measure.worked_patterns import worked

from .pieces import demo, rows, subject, tree


def test_the_scarf_waves_three_times() -> None:
    work, measured = demo("ebb-scarf")
    wave = wave_of(subject(work, "scarf"))
    heights = [wave.at(at / 100) for at in range(101)]
    crests = [at for at in range(1, 100) if heights[at - 1] < heights[at] >= heights[at + 1]]
    troughs = [at for at in range(1, 100) if heights[at - 1] > heights[at] <= heights[at + 1]]
    assert len(crests) == 2
    assert len(troughs) == 3
    assert 5.0 < max(heights) - min(heights) < 30.0
    assert all(abs(a - b) < 1.0 for a, b in zip(heights, reversed(heights), strict=True))
    drawn = first_picture(work, measured)
    assert len(drawn) < 150_000
    assert len([use for use in tree(drawn).iter() if use.tag.endswith("use")]) > 100


def test_it_is_as_high_between_its_knots() -> None:
    wave = wave_of(subject(demo("ebb-scarf")[0], "scarf"))
    (a, low), (b, high) = wave.knots[:2]
    assert wave.at((a + b) / 2) == (low + high) / 2
    assert wave.at(-1.0) == low
    assert wave.at(2.0) == wave.knots[-1][1]


def test_other_rows_lie_straight() -> None:
    plain = rows("sc in 2nd ch from hook and in each ch across, turn", "ch 1, sc in each st across, turn")
    assert not wave_of(subject(worked(plain))).knots
    for name, piece in (("tide-cloth", "cloth"), ("gull-collar", "collar"), ("lantern-pouch", "pouch")):
        assert not wave_of(subject(demo(name)[0], piece)).knots


def test_both_long_sides_of_the_scarf_have_their_edge() -> None:
    work, measured = demo("ebb-scarf")
    drawn = first_picture(work, measured)
    box = [float(n) for n in drawn.partition('viewBox="')[2].partition('"')[0].split()]
    assert abs(box[0] + box[2] / 2) < 2.0
