"""The tree as published: what the text left open is written out."""

from dataclasses import replace
from typing import Any

from ..notation.tree import Amount, Group, Line, Passage, Repeat, Step


def settle(line: Line, named: dict[int, Any], more: bool | None) -> Line:
    """The line with bare joins named (`named`: id of a step -> its clear form) and unclear repeats said
    clearly.

    more: how `rep from * 3 times` was read; None where it could not be settled.
    """
    return Line(tuple(_settle(step, named, more) for step in line.steps))


def _settle(step: Step, named: dict[int, Any], more: bool | None) -> Step:
    clear: Step = named.get(id(step), step)
    if isinstance(clear, Repeat):
        inner = tuple(_settle(s, named, more) for s in clear.steps)
        ending = tuple(_settle(s, named, more) for s in clear.ending)
        clear = replace(clear, steps=inner, ending=ending)
        if clear.unclear and more is not None and clear.times is not None:
            extra = 1 if more else 0
            times = Amount(
                tuple(n if n is None else n + extra for n in clear.times.sizes), clear.times.variable
            )
            clear = replace(clear, times=times, unclear=False)
    elif isinstance(clear, Group | Passage):
        clear = replace(clear, steps=tuple(_settle(s, named, more) for s in clear.steps))
    return clear
