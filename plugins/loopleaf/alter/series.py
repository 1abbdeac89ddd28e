"""Rounds written one by one that differ by the same step: how the next of them is written."""

import re
from dataclasses import dataclass

_NUMBER = re.compile(r"\d+")
_TWICE = re.compile(r"(?<=[)\]]) twice\b")
_TWO_OF = re.compile(
    r"(?P<opens>[(\[])(?P<within>[^()\[\]]*)(?:(?P<by>[)\]] ?[x×] ?)2\b|(?P<closes>[)\]] )2 times\b)"
)


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
    """What two texts make likely to come next; None where they differ by more than numbers, or by none.

    What stands once in the first may stand in a bracket, worked twice, in the second.
    """
    first, second = (_TWICE.sub(" 2 times", text) for text in (first, second))
    if first == _TWO_OF.sub(r"\g<within>", second):
        first = _TWO_OF.sub(_once, second)
    words = tuple(_NUMBER.split(first))
    if words != tuple(_NUMBER.split(second)):
        return None
    numbers = [[int(one) for one in _NUMBER.findall(text)] for text in (first, second)]
    steps = tuple(there - here for here, there in zip(*numbers, strict=True))
    return Series(words, tuple(numbers[1]), steps) if any(steps) else None


def _once(found: re.Match[str]) -> str:
    ends = f"{found['by']}1" if found["by"] else f"{found['closes']}1 times"
    return f"{found['opens']}{found['within']}{ends}"
