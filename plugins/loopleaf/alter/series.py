"""Rounds written one by one that differ by the same step: how the next of them is written."""

import re
from dataclasses import dataclass
from itertools import product

_NUMBER = re.compile(r"\d+")
_TWICE = re.compile(r"(?<=[)\]]) twice\b")
_ONE = "\0"
"""Stands where the first text leaves out that something is worked once."""
_LEFT_OUT = (
    (re.compile(r"[(\[]([^()\[\]]*)[)\]] ?(?:[x×] ?2\b|2 times\b)"), rf"\1{_ONE}"),
    (re.compile(r"\bnext 2 (st|ch)s\b"), rf"next {_ONE}\1"),
)
"""What is worked twice, and how it is written where it is worked once."""


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

    What stands once in the first may stand in a bracket, worked twice, in the second; and `in next st` may be
    `in next 2 sts` there.
    """
    first, second = (_TWICE.sub(" 2 times", text) for text in (first, second))
    here, there = _numbers_as(first, second), [int(one) for one in _NUMBER.findall(second)]
    if here is None or here == there:
        return None
    steps = tuple(after - before for before, after in zip(here, there, strict=True))
    return Series(tuple(_NUMBER.split(second)), tuple(there), steps)


def _numbers_as(first: str, second: str) -> list[int] | None:
    """The first text's numbers, with a 1 where only the second has one; None where the words differ."""
    for chosen in product((False, True), repeat=len(_LEFT_OUT)):
        model = second
        for (twice, once), is_left_out in zip(_LEFT_OUT, chosen, strict=True):
            model = twice.sub(once, model) if is_left_out else model
        if _NUMBER.split(first) != _NUMBER.split(model.replace(_ONE, "")):
            continue
        own = iter(_NUMBER.findall(first))
        return [1 if one == _ONE else int(next(own)) for one in re.findall(rf"{_ONE}|\d+", model)]
    return None
