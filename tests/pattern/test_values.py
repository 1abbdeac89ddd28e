import pytest

from loopleaf.pattern import Length, Lengths, Numbers, Run, Weight


@pytest.mark.parametrize(
    ("length", "mm"),
    [
        (Length(34.5, "cm"), 345),
        (Length(4, "in"), 101.6),
        (Length(2, "ft"), 609.6),
        (Length(50, "yd"), 45720),
        (Length(1.5, "m"), 1500),
        (Length(5.5, "mm"), 5.5),
    ],
)
def test_lengths_in_millimetres(length: Length, mm: float) -> None:
    """Inch, foot and yard: international yard and pound agreement, 1959."""
    assert length.mm == pytest.approx(mm)


def test_an_ounce_in_grams() -> None:
    """International yard and pound agreement, 1959: 0.45359237 kg a pound of 16 ounces."""
    assert Weight(16, "oz").grams == pytest.approx(453.59237)
    assert str(Weight(52, "g")) == "52 g"


def test_one_value_serves_every_size() -> None:
    one, three = Numbers((40,)), Numbers((40, None, 56))
    assert [one.of(size) for size in range(3)] == [40, 40, 40]
    assert [three.of(size) for size in range(3)] == [40, None, 56]
    assert (str(one), str(three)) == ("40", "40 (-, 56)")


def test_lengths_share_their_unit_in_print() -> None:
    cm = Lengths((Length(90, "cm"), Length(100, "cm"), Length(110, "cm")))
    mixed = Lengths((None, Length(1, "m"), Length(40, "in")))
    assert str(cm) == "90 (100, 110) cm"
    assert str(mixed) == "- (1 m, 40 in)"
    assert mixed.one == Length(1, "m")
    assert mixed.of(0) is None


def test_a_run_holds_its_numbers() -> None:
    run, on = Run(4, 6), Run(4, None)
    assert list(run) == [4, 5, 6]
    assert [number in run for number in (3, 4, 6, 7)] == [False, True, True, False]
    assert list(on) == [4]
    assert 4000 in on
    assert 3 not in on
    assert [str(one) for one in (run, on, Run(5, 5))] == ["4-6", "4 on", "5"]
