"""The cases of cases.yml stitch by stitch: what pictures, measures and findings read from the fabric."""

from collections.abc import Callable
from typing import Any

import pytest

from .shown import shown
from .test_cases import CASES, pattern_of


def named(case: dict[str, Any]) -> str:
    return "".join(letter if letter.isalnum() else "-" for letter in case["name"].lower())[:60].strip("-")


def test_names_are_apart() -> None:
    assert len({named(case) for case in CASES}) == len(CASES)


@pytest.mark.parametrize("case", CASES, ids=[case["name"] for case in CASES])
def test_every_stitch(case: dict[str, Any], golden: Callable[[str, str], None]) -> None:
    golden(f"{named(case)}.txt", shown(pattern_of(case)))
