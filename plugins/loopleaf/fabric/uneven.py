"""Numbers that a line leaves open: more or fewer than the pattern has sizes, and an `n` without any."""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from functools import cache
from typing import Any

from ..notation.once_a_line import once_a_line
from ..notation.tree import Amount, Line, Span, Tally

Uneven = tuple[Span | None, int]


@once_a_line
def uneven(line: Line | Tally | None, size_count: int) -> tuple[Uneven, ...]:
    """How many numbers each such list has, with the smallest stretch of the text around it."""
    return tuple(
        (span, len(amount.sizes))
        for span, amount in _amounts(line, None)
        if len(amount.sizes) not in (1, size_count)
    )


@once_a_line
def with_n(line: Line) -> Span | None:
    """The smallest stretch around the first `n` of a line; None where it has none."""
    return next((span for span, amount in _amounts(line, None) if amount.variable), None)


def _amounts(node: Any, span: Span | None) -> Iterator[tuple[Span | None, Amount]]:
    if isinstance(node, Amount):
        yield span, node
    elif isinstance(node, tuple):
        for part in node:
            yield from _amounts(part, span)
    else:
        kind: Any = type(node)
        parts = _parts(kind)
        if "span" in parts:
            span = node.span or span
        for name in parts:
            yield from _amounts(getattr(node, name), span)


@cache
def _parts(kind: Any) -> tuple[str, ...]:
    """The names of a part's own parts; none where it is a plain value."""
    return tuple(one.name for one in fields(kind)) if is_dataclass(kind) and kind is not Span else ()
