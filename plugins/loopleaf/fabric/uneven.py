"""Lists of numbers that have more or fewer entries than the pattern has sizes."""

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
    return tuple(_within(line, size_count, None))


def _within(node: Any, size_count: int, span: Span | None) -> Iterator[Uneven]:
    if isinstance(node, Amount):
        if len(node.sizes) not in (1, size_count):
            yield span, len(node.sizes)
    elif isinstance(node, tuple):
        for part in node:
            yield from _within(part, size_count, span)
    else:
        kind: Any = type(node)
        parts = _parts(kind)
        if "span" in parts:
            span = node.span or span
        for name in parts:
            yield from _within(getattr(node, name), size_count, span)


@cache
def _parts(kind: Any) -> tuple[str, ...]:
    """The names of a part's own parts; none where it is a plain value."""
    return tuple(one.name for one in fields(kind)) if is_dataclass(kind) and kind is not Span else ()
