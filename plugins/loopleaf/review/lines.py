"""Looking through instruction lines for steps and stitches of a kind."""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from typing import Any, TypeVar

from ..notation.tree import JoinYarn, Line, Span, Stitch, Work, Yarn

Found = TypeVar("Found")


def within(node: Any, kind: type[Found]) -> Iterator[Found]:
    """Every part of that kind in a line or step, in the order written."""
    if isinstance(node, kind):
        yield node
    if isinstance(node, tuple):
        for part in node:
            yield from within(part, kind)
    elif is_dataclass(node) and not isinstance(node, Span):
        for each in fields(node):
            value = getattr(node, each.name)
            if isinstance(value, tuple) or is_dataclass(value):
                yield from within(value, kind)


def yarns_named(line: Line) -> Iterator[tuple[str, Span | None]]:
    """The yarns that a line takes up, each with the stretch that names it."""
    for step in within(line, Yarn):
        yield step.yarn, step.span
    for joined in within(line, JoinYarn):
        if joined.yarn:
            yield joined.yarn, joined.span


def special_stitches(line: Line) -> Iterator[str]:
    """The author's own stitches that a line works, by name."""
    for stitch in within(line, Stitch):
        if stitch.kind == "special":
            yield stitch.name


def first_stitches(line: Line) -> Work | None:
    """The first step that works stitches, passing over chains, turns and yarns; None where there is none."""
    for step in within(line, Work):
        if step.stitch.kind != "slip":
            return step
    return None

