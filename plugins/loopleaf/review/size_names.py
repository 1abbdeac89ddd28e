"""Names of sizes that say themselves which is the larger: letters, words, ages, numbers."""

import re
from collections.abc import Sequence
from itertools import pairwise

_LETTERS = re.compile(r"(\d*)(x*)([sml])", re.I)
_IN_WORDS = re.compile(r"(extra |x-?)*(small|medium|large)", re.I)
_AGES = ("premature", "newborn", "baby", "toddler", "child", "teen", "adult")
_NUMBER = re.compile(r"\d+(?:\.\d+)?")


def first_out_of_order(names: Sequence[str]) -> int | None:
    """The index of the first size that is smaller than the one before it, by their names.

    None where none is, and where a name doesn't say how large it is: `teal`, or `6 months` beside `2 years`.
    """
    ranks = _of_all(names)
    if ranks is None:
        return None
    steps = enumerate(pairwise(ranks), 1)
    return next((at for at, (before, here) in steps if here < before), None)


def _of_all(names: Sequence[str]) -> list[float] | None:
    """How large each is, all on one scale."""
    for scale in (_by_letters, _by_age):
        ranks = [rank for name in names if (rank := scale(name)) is not None]
        if len(ranks) == len(names):
            return ranks
    alike = {_NUMBER.sub("1", name.strip().lower()) for name in names}
    numbers = [float(found[0]) for name in names if (found := _NUMBER.search(name))]
    return numbers if len(alike) == 1 and len(numbers) == len(names) else None


def _by_letters(name: str) -> float | None:
    """`XS` and `2XL`, `extra small`; of `S/M` the first."""
    first = re.split(r"[/–-]", name)[0].strip()
    letters, words = _LETTERS.fullmatch(first), _IN_WORDS.fullmatch(name.strip())
    if letters is not None:
        extra = int(letters[1] or 0) or len(letters[2])
        side = letters[3].lower()
    elif words is not None:
        extra, side = len(re.findall(r"extra|x", name, re.I)), words[2][0].lower()
    else:
        return None
    return {"s": -1 - extra, "m": 0, "l": 1 + extra}[side]


def _by_age(name: str) -> float | None:
    word = name.strip().lower()
    return _AGES.index(word) if word in _AGES else None
