"""The tree as published: what the text left open is written out."""

from dataclasses import replace
from typing import Any

from ..notation.tree import Amount, Group, Line, Passage, Repeat, Step, Together


def settle(line: Line, named: dict[int, Any], more: bool | None) -> Line:
    """The line with bare joins named (`named`: id of a step -> its clear form) and unclear repeats said
    clearly.

    more: how `rep from * 3 times` was read; None where it could not be settled.
    """
    return Line(_settle_all(line.steps, named, more))


def _settle_all(steps: tuple[Step, ...], named: dict[int, Any], more: bool | None) -> tuple[Step, ...]:
    return tuple([_settle(step, named, more) for step in steps])


def _settle(step: Step, named: dict[int, Any], more: bool | None) -> Step:
    clear: Step = named.get(id(step), step)
    if isinstance(clear, Repeat):
        inner = _settle_all(clear.steps, named, more)
        ending = _settle_all(clear.ending, named, more)
        if inner != clear.steps or ending != clear.ending:
            clear = replace(clear, steps=inner, ending=ending)
        if clear.unclear and more is not None and clear.times is not None:
            extra = 1 if more else 0
            times = Amount(
                tuple(n if n is None else n + extra for n in clear.times.sizes), clear.times.variable
            )
            clear = replace(clear, times=times, unclear=False)
    elif isinstance(clear, Group | Passage | Together):
        inner = _settle_all(clear.steps, named, more)
        clear = replace(clear, steps=inner) if inner != clear.steps else clear
    return clear
