"""The file as it stands: every value with the place where it is written, and flaws found on the way."""

import bisect
import re
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Literal

from .finding import Location, Suggestion

KEY = "\0key"
"""Put at the end of a path, it means the field's name itself and not its value."""


@dataclass(slots=True)
class Node:
    """One value as it is written: `text`, `fields`, `list`, or `nothing` (a field with nothing after it).

    style: "" plain, `'`, `"`, `|`, `>`. start, end: offsets in the file's text, end exclusive.
    size, depth: how many values it holds with every alias opened out, and how deep they lie.
    """

    kind: Literal["text", "fields", "list", "nothing"]
    start: int
    end: int
    text: str = ""
    style: str = ""
    fields: list[tuple["Node", "Node"]] = field(default_factory=list)
    items: list["Node"] = field(default_factory=list)
    size: int = 1
    depth: int = 1
    _names: dict[str, "tuple[Node, Node]"] | None = field(default=None, repr=False, compare=False)

    def child(self, step: str | int) -> "Node | None":
        """The value one step down. A list written as its one item, or a part in short, is its own child."""
        if isinstance(step, int):
            if self.kind == "list":
                return self.items[step] if 0 <= step < len(self.items) else None
            return self if step == 0 else None
        pair = self.pair(step)
        return pair[1] if pair else None

    def pair(self, name: str) -> "tuple[Node, Node] | None":
        """A field's name and value; underscores stand for spaces where no field is called so."""
        if self.kind != "fields":
            return None
        if self._names is None:
            self._names = {key.text: (key, value) for key, value in reversed(self.fields)}
        return self._names.get(name) or self._names.get(name.rstrip("_").replace("_", " "))

    def plain(self) -> Any:
        """The value as dictionaries, lists, texts and None; of a field written twice the first counts."""
        if self.kind == "fields":
            opened: dict[str, Any] = {}
            for key, value in self.fields:
                if key.kind == "text" and key.text not in opened:
                    opened[key.text] = value.plain()
            return opened
        if self.kind == "list":
            return [item.plain() for item in self.items]
        return self.text if self.kind == "text" else None


@dataclass(frozen=True, slots=True)
class Flaw:
    """A finding before it has lines and columns: it still stands at offsets in the file's text.

    stops: the YAML reader can't read past it. harmless: the rounds can be worked in spite of it.
    also: another stretch that matters, with its words.
    """

    rule: str
    start: int
    end: int
    message: str
    working: str = ""
    suggestion: Suggestion | None = None
    stops: bool = False
    harmless: bool = False
    also: tuple[int, int, str] | None = None


@dataclass(frozen=True)
class Lines:
    """Offsets in a text turned into lines and columns, counted from 1 as editors do."""

    text: str

    @cached_property
    def _starts(self) -> list[int]:
        return [0, *(found.end() for found in re.finditer(r"\r\n|\n|\r", self.text))]

    def position(self, offset: int) -> tuple[int, int]:
        """Line and column of an offset."""
        offset = max(0, min(offset, len(self.text)))
        line = bisect.bisect_right(self._starts, offset)
        return line, offset - self._starts[line - 1] + 1

    def location(self, start: int, end: int) -> Location:
        """The stretch between two offsets."""
        return Location(*self.position(start), *self.position(max(start, end)))

    def offsets(self, at: Location) -> tuple[int, int]:
        """The two offsets between which a stretch stands."""
        return self._starts[at.line - 1] + at.column - 1, self._starts[at.end_line - 1] + at.end_column - 1

    def around(self, offset: int) -> tuple[int, int]:
        """Where the line that holds an offset begins and ends (without its line break)."""
        line, _ = self.position(offset)
        start = self._starts[line - 1]
        end = self._starts[line] if line < len(self._starts) else len(self.text)
        while end > start and self.text[end - 1] in "\r\n":
            end -= 1
        return start, end


def find(root: Node, path: tuple[str | int, ...]) -> tuple[Node, bool]:
    """The node at a path, or the nearest above it; and whether the whole path was followed."""
    node = root
    for step in path:
        below = node.child(step)
        if below is None:
            return node, False
        node = below
    return node, True


def key_span(root: Node, path: tuple[str | int, ...]) -> tuple[int, int]:
    """Where the name of the field at a path stands; of a list's item, its first field's name."""
    above, whole = find(root, path[:-1])
    last = path[-1] if path else ""
    pair = above.pair(last) if whole and isinstance(last, str) else None
    if pair:
        return pair[0].start, pair[0].end
    node, _ = find(root, path)
    if node.kind == "fields" and node.fields:
        return node.fields[0][0].start, node.fields[0][0].end
    return node.start, node.end


def first_line(node: Node, text: str) -> tuple[int, int]:
    """A list's or fields' own stretch, cut to its first line where it runs over several."""
    stop = re.compile(r"[\r\n]").search(text, node.start, max(node.end, node.start))
    return node.start, stop.start() if stop else max(node.end, node.start)
