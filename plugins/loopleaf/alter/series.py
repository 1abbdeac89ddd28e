"""Rounds written one by one that differ by the same step: how the next of them is written."""

import re
from dataclasses import dataclass

_NUMBER = re.compile(r"\d+")


@dataclass(frozen=True, slots=True)
class Series:
    """Two texts that are alike but for their numbers (`(3 dc in next sp, ch 1) x 2`, then `… x 3`).

    between: the words before, between and behind the numbers. last: the second text's. steps: what each of
    them is more than in the first.
    """

    between: tuple[str, ...]
    last: tuple[int, ...]
    steps: tuple[int, ...]

    def after(self, turn: int) -> str:
        """The text that follows the second so many times over."""
        numbers = (one + turn * step for one, step in zip(self.last, self.steps, strict=True))
        return "".join(f"{words}{number}" for words, number in zip(self.between, (*numbers, ""), strict=True))


def series(first: str, second: str) -> Series | None:
    """What two texts make likely to come next; None where they differ by more than numbers, or by none."""
    words = tuple(_NUMBER.split(first))
    if words != tuple(_NUMBER.split(second)):
        return None
    numbers = [[int(one) for one in _NUMBER.findall(text)] for text in (first, second)]
    steps = tuple(there - here for here, there in zip(*numbers, strict=True))
    return Series(words, tuple(numbers[1]), steps) if any(steps) else None
