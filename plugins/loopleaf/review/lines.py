"""Looking through instruction lines for steps and stitches of a kind."""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from functools import cache, lru_cache
from typing import Any, TypeVar

from ..notation.tree import Amount, FastenOff, JoinYarn, Line, Span, Stitch, Yarn

Found = TypeVar("Found")

_PLAIN = ("span", "number", "word", "star", "unclear", "through", "chains", "space", "skipped")
"""Fields of the tree that never hold another part of it."""


def within(node: Any, kind: type[Found]) -> Iterator[Found]:
    """Every part of that kind in a line or step, in the order written."""
    parts = _of_line(_Same(node)) if isinstance(node, Line) else tuple(_walk(node))
    return (part for part in parts if isinstance(part, kind))


class _Same:
    """A line by its identity: comparing two lines part by part costs more than walking one."""

    __slots__ = ("line",)

    def __init__(self, line: Line) -> None:
        self.line = line

    def __hash__(self) -> int:
        return id(self.line)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and other.line is self.line


@lru_cache(maxsize=4_096)
def _of_line(same: _Same) -> tuple[Any, ...]:
    return tuple(_walk(same.line))


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


def yarns_named(line: Line) -> Iterator[tuple[str, Span | None]]:
    """The yarns that a line takes up or fastens off, each with the stretch that names it."""
    for step in within(line, Yarn):
        yield step.yarn, step.span
    for joined in within(line, JoinYarn):
        if joined.yarn:
            yield joined.yarn, joined.span
    for ended in within(line, FastenOff):
        if ended.yarn:
            yield ended.yarn, ended.span


def special_stitches(line: Line) -> Iterator[str]:
    """The author's own stitches that a line works, by name."""
    for stitch in within(line, Stitch):
        if stitch.kind == "special":
            yield stitch.name
