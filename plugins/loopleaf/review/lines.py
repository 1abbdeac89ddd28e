"""Looking through instruction lines for steps and stitches of a kind."""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from functools import cache
from typing import Any, TypeVar

from ..notation.once_a_line import once_a_line
from ..notation.tree import Amount, FastenOff, JoinYarn, Line, Span, Stitch, Yarn

Found = TypeVar("Found")

_PLAIN = ("span", "number", "word", "star", "unclear", "through", "chains", "space", "skipped")
"""Fields of the tree that never hold another part of it."""


def within(node: Any, kind: type[Found]) -> Iterator[Found]:
    """Every part of that kind in a line or step, in the order written."""
    if isinstance(node, Line):
        return iter(_of_kind(node, kind))
    return (part for part in _walk(node) if isinstance(part, kind))


@once_a_line
def _of_kind(line: Line, kind: type[Found]) -> tuple[Found, ...]:
    return tuple(part for part in _of_line(line) if isinstance(part, kind))


@once_a_line
def _of_line(line: Line) -> tuple[Any, ...]:
    return tuple(_walk(line))


def _walk(node: Any) -> Iterator[Any]:
    yield node
    if isinstance(node, tuple):
        for part in node:
            yield from _walk(part)
        return
    node_type: Any = type(node)
    for name in _parts(node_type):
        yield from _walk(getattr(node, name))


@cache
def _parts(kind: Any) -> tuple[str, ...]:
    """The fields of a tree's node that can hold further nodes."""
    if not is_dataclass(kind) or kind is Span or kind is Amount:
        return ()
    return tuple(each.name for each in fields(kind) if each.name not in _PLAIN)


@once_a_line
def yarns_named(line: Line) -> tuple[tuple[str, Span | None], ...]:
    """The yarns that a line takes up or fastens off, each with the stretch that names it."""
    taken = [(step.yarn, step.span) for step in within(line, Yarn)]
    joined = [(step.yarn, step.span) for step in within(line, JoinYarn) if step.yarn]
    ended = [(step.yarn, step.span) for step in within(line, FastenOff) if step.yarn]
    return (*taken, *joined, *ended)


@once_a_line
def special_stitches(line: Line) -> tuple[str, ...]:
    """The author's own stitches that a line works, by name."""
    return tuple(stitch.name for stitch in within(line, Stitch) if stitch.kind == "special")
