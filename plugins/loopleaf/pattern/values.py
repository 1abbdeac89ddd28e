"""Single values of a pattern: lengths, weights, numbers one a size, runs of rounds."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Literal, TypeVar

LengthUnit = Literal["mm", "cm", "m", "in", "ft", "yd"]
WeightUnit = Literal["g", "oz"]

# Exact by definition (international yard and pound, 1959): 1 in is 25.4 mm, 1 oz is 28.349523125 g.
_MM: dict[LengthUnit, float] = {"mm": 1, "cm": 10, "m": 1000, "in": 25.4, "ft": 304.8, "yd": 914.4}
_GRAMS: dict[WeightUnit, float] = {"g": 1, "oz": 28.349523125}


def _spoken(number: float) -> str:
    return f"{number:.4g}" if number < 1000 else f"{number:.0f}"


@dataclass(frozen=True, slots=True)
class Length:
    """A length with the unit that the author wrote."""

    amount: float
    unit: LengthUnit

    @property
    def mm(self) -> float:
        return self.amount * _MM[self.unit]

    def __str__(self) -> str:
        return f"{_spoken(self.amount)} {self.unit}"


@dataclass(frozen=True, slots=True)
class Weight:
    """A weight with the unit that the author wrote."""

    amount: float
    unit: WeightUnit

    @property
    def grams(self) -> float:
        return self.amount * _GRAMS[self.unit]

    def __str__(self) -> str:
        return f"{_spoken(self.amount)} {self.unit}"


Value = TypeVar("Value")


def _of(sizes: tuple[Value | None, ...], size: int) -> Value | None:
    if len(sizes) == 1:
        return sizes[0]
    return sizes[size] if size < len(sizes) else None


def _in_print(sizes: tuple[Any, ...]) -> str:
    first, *others = ["-" if one is None else str(one) for one in sizes]
    return f"{first} ({', '.join(others)})" if others else first


@dataclass(frozen=True, slots=True)
class Lengths:
    """Lengths one a size; a single one serves every size, None where a size has none."""

    sizes: tuple[Length | None, ...]

    def of(self, size: int) -> Length | None:
        """The length for one size (0-based)."""
        return _of(self.sizes, size)

    @property
    def one(self) -> Length:
        """The first size that has a length."""
        return next(length for length in self.sizes if length is not None)

    def __str__(self) -> str:
        units = {length.unit for length in self.sizes if length is not None}
        if len(units) > 1:
            return _in_print(self.sizes)
        amounts = tuple(None if length is None else _spoken(length.amount) for length in self.sizes)
        return f"{_in_print(amounts)} {units.pop()}"


@dataclass(frozen=True, slots=True)
class Numbers:
    """Whole numbers one a size; a single one serves every size, None for a size that skips it (`-`)."""

    sizes: tuple[int | None, ...]

    def of(self, size: int) -> int | None:
        """The number for one size (0-based)."""
        return _of(self.sizes, size)

    def __str__(self) -> str:
        return _in_print(self.sizes)


@dataclass(frozen=True, slots=True)
class Run:
    """Rounds, rows or stitches by number: `5`, `4-6`, `4 on` (last None: open at its end)."""

    first: int
    last: int | None

    @property
    def numbers(self) -> range:
        """The numbers in order; of an open run only the first."""
        return range(self.first, (self.first if self.last is None else self.last) + 1)

    def __contains__(self, number: int) -> bool:
        return number >= self.first and (self.last is None or number <= self.last)

    def __iter__(self) -> Iterator[int]:
        return iter(self.numbers)

    def __str__(self) -> str:
        if self.last is None:
            return f"{self.first} on"
        return str(self.first) if self.last == self.first else f"{self.first}-{self.last}"
