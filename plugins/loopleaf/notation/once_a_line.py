"""Asking a line something once: the same few lines are worked, counted and reviewed many times."""

from collections.abc import Callable, Hashable
from functools import wraps
from typing import Any, Generic, TypeVar, cast

Node = TypeVar("Node")
Asking = TypeVar("Asking", bound=Callable[..., Any])

KEPT = 4_096
"""Answers kept for each question: many more than a pattern has lines."""


class Same(Generic[Node]):
    """A part of a tree by its identity: comparing two lines part by part costs more than walking one."""

    __slots__ = ("node",)

    def __init__(self, node: Node) -> None:
        self.node = node

    def __hash__(self) -> int:
        return id(self.node)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Same) and other.node is self.node


def once_a_line(ask: Asking) -> Asking:
    """A question about a line (or its steps) whose answer is kept; what else it asks with must be hashable.

    Only for answers that nobody changes: the same object is given every time.
    """

    kept: dict[Hashable, tuple[Any, Any]] = {}

    @wraps(ask)
    def asked(node: Any, *more: Hashable) -> Any:
        key: Hashable = (id(node), *more) if more else id(node)
        found = kept.get(key)
        if found is None:  # what is kept holds its line, so no other can have the same identity
            if len(kept) >= KEPT:
                kept.clear()
            found = kept[key] = node, ask(node, *more)
        return found[1]

    return cast(Asking, asked)
