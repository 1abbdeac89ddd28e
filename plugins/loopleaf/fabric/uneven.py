"""Lists of numbers that have more or fewer entries than the pattern has sizes."""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from typing import Any

from ..notation.tree import Amount, Span


def uneven(node: Any, size_count: int, span: Span | None = None) -> Iterator[tuple[Span | None, int]]:
    """How many numbers each such list has, with the smallest stretch of the text around it."""
    if isinstance(node, Amount):
        if len(node.sizes) not in (1, size_count):
            yield span, len(node.sizes)
    elif isinstance(node, tuple):
        for part in node:
            yield from uneven(part, size_count, span)
    elif is_dataclass(node) and not isinstance(node, Span):
        span = getattr(node, "span", None) or span
        for one in fields(node):
            yield from uneven(getattr(node, one.name), size_count, span)
