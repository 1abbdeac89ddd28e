from collections.abc import Callable
from typing import Any

import pytest
from pydantic_core import PydanticCustomError

from loopleaf.pattern import Length, Lengths, Numbers, Run, Weight
from loopleaf.pattern import reading as r


@pytest.mark.parametrize(
    ("read", "text", "value"),
    [
        (r.read_length, "34.5 cm", Length(34.5, "cm")),
        (r.read_length, "34.5cm", Length(34.5, "cm")),
        (r.read_length, "8½ in", Length(8.5, "in")),
        (r.read_length, "8 1/2 inches", Length(8.5, "in")),
        (r.read_length, "3/4 in", Length(0.75, "in")),
        (r.read_length, '4"', Length(4, "in")),
        (r.read_length, "50 yds", Length(50, "yd")),
        (r.read_weight, "52 g", Weight(52, "g")),
        (r.read_weight, "1¾ oz", Weight(1.75, "oz")),
        (r.read_hook, "5.5 mm", Length(5.5, "mm")),
        (r.read_hook, "5.5 mm (I-9)", Length(5.5, "mm")),
        (r.read_lengths, "34.5 cm", Lengths((Length(34.5, "cm"),))),
        (r.read_lengths, "90 (-, 110) cm", Lengths((Length(90, "cm"), None, Length(110, "cm")))),
        (r.read_lengths, "90 cm (1 m)", Lengths((Length(90, "cm"), Length(1, "m")))),
        (r.read_lengths, ["90 cm", "1 m"], Lengths((Length(90, "cm"), Length(1, "m")))),
        (r.read_amounts, "52 g", (Weight(52, "g"),)),
        (r.read_amounts, "50 yd", (Length(50, "yd"),)),
        (r.read_amounts, "180 (210) g", (Weight(180, "g"), Weight(210, "g"))),
        (r.read_whole, "12", 12),
        (r.read_whole, "012", 12),
        (r.read_at_least_one, "1", 1),
        (r.read_steps, "-8", Numbers((-8,))),
        (r.read_steps, "+8", Numbers((8,))),
        (r.read_steps, "8 (9, -10)", Numbers((8, 9, -10))),
        (r.read_number, "13½", 13.5),
        (r.read_numbers, "40 (48, 56)", Numbers((40, 48, 56))),
        (r.read_numbers, "40 [-, 56]", Numbers((40, None, 56))),
        (r.read_numbers, 40, Numbers((40,))),
        (r.read_run, "5", Run(5, 5)),
        (r.read_run, "4-6", Run(4, 6)),
        (r.read_run, "4 – 6", Run(4, 6)),
        (r.read_run, "4 to 6", Run(4, 6)),
        (r.read_run, "4 on", Run(4, None)),
        (r.read_runs, "3-6, 12-15", (Run(3, 6), Run(12, 15))),
        (r.read_runs, ["1", "3-4"], (Run(1, 1), Run(3, 4))),
    ],
)
def test_read(read: Callable[[Any], Any], text: Any, value: Any) -> None:
    assert read(text) == value
    if isinstance(value, Length | Lengths | Weight | Numbers | Run):
        assert read(value) == value


@pytest.mark.parametrize(
    ("read", "text"),
    [
        (r.read_length, "34.5"),
        (r.read_length, "long"),
        (r.read_length, "5 g"),
        (r.read_length, "1/0 in"),
        (r.read_length, None),
        (r.read_length, ["5 cm"]),
        (r.read_weight, "52 cm"),
        (r.read_hook, "5.5 m"),
        (r.read_hook, "H-8"),
        (r.read_lengths, "- cm"),
        (r.read_lengths, "90 (100, ) cm"),
        (r.read_lengths, {}),
        (r.read_amounts, "52"),
        (r.read_amounts, "52 (-) g"),
        (r.read_whole, "-1"),
        (r.read_whole, "1_000"),
        (r.read_whole, "0x10"),
        (r.read_whole, "1e3"),
        (r.read_whole, True),
        (r.read_at_least_one, "0"),
        (r.read_number, "0"),
        (r.read_length, "0 cm"),
        (r.read_length, "0.0000001 mm"),
        (r.read_lengths, "90 (0, 100) cm"),
        (r.read_weight, "0 g"),
        (r.read_amounts, "0 g"),
        (r.read_steps, "eight"),
        (r.read_number, ".inf"),
        (r.read_numbers, "40 (48, many)"),
        (r.read_run, "6-4"),
        (r.read_run, "0"),
        (r.read_run, "four"),
        (r.read_runs, "1, two"),
    ],
)
def test_wrong_kind(read: Callable[[Any], Any], text: Any) -> None:
    with pytest.raises(PydanticCustomError) as raised:
        read(text)
    assert raised.value.type == "wrong-type"


@pytest.mark.parametrize(
    ("read", "text"),
    [
        (r.read_whole, "100001"),
        (r.read_whole, "9" * 5000),
        (r.read_steps, "-100001"),
        (r.read_run, "1-10001"),
        (r.read_run, "1000000000 on"),
        (r.read_length, "1000000000 cm"),
        (r.read_hook, "1000000000 mm"),
        (r.read_weight, "1000000000 g"),
        (r.read_amounts, "1000000000 g"),
        (r.read_numbers, "40 (1000000000)"),
        (r.read_number, "1000000000"),
    ],
)
def test_too_large(read: Callable[[Any], Any], text: str) -> None:
    with pytest.raises(PydanticCustomError) as raised:
        read(text)
    assert raised.value.type == "number-too-large"


def test_just_not_too_large() -> None:
    assert r.read_whole("100000") == 100000
    assert r.read_run("1-10000") == Run(1, 10000)


@pytest.mark.parametrize(("read", "text"), [(r.read_number, "-14"), (r.read_length, "-20 cm")])
def test_what_is_below_0_is_said_to_be(read: Callable[[Any], Any], text: str) -> None:
    with pytest.raises(PydanticCustomError) as found:
        read(text)
    assert "above 0" in found.value.message()
