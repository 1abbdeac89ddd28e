"""Worked out once: what several drawings of one piece have in common."""

from collections import OrderedDict
from collections.abc import Callable
from functools import wraps
from typing import TypeVar, TypeVarTuple

Given = TypeVarTuple("Given")
Result = TypeVar("Result")

KEPT = 64
"""Of each function so many results are kept, those asked for last."""


def once(function: Callable[[*Given], Result]) -> Callable[[*Given], Result]:
    """The same pure function, but for the very same things (not equal ones) it answers from memory.

    What it gives is shared: nobody may change it. The things are kept as long as the answer, so that their
    ids stay theirs.
    """
    kept: OrderedDict[tuple[int, ...], tuple[tuple[*Given], Result]] = OrderedDict()

    @wraps(function)
    def answered(*given: *Given) -> Result:
        key = tuple(id(one) for one in given)
        if key in kept:
            kept.move_to_end(key)
        else:
            kept[key] = (given, function(*given))
            if len(kept) > KEPT:
                kept.popitem(last=False)
        return kept[key][1]

    return answered
