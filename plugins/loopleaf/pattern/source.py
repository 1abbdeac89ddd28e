"""A pattern file as read: its text, its typed pattern, what is wrong with it, and where everything stands."""

from dataclasses import dataclass, field

from .finding import Finding, Location
from .model import Pattern
from .nodes import KEY, Lines, Node, find, key_span
from .plans import Path
from .quoting import inside
from .scalars import offsets


@dataclass(frozen=True)
class Source:
    """One file, read.

    file: as it was given. pattern: None where it isn't one, or a mistake leaves its rounds in doubt.

    is_pattern: whether it is meant as one (it has `pieces:`, or can't be read at all).
    """

    file: str
    text: str
    pattern: Pattern | None
    findings: list[Finding] = field(default_factory=list)
    is_pattern: bool = True
    root: Node | None = field(default=None, repr=False)
    lines: Lines = field(default_factory=lambda: Lines(""), repr=False)

    def locate(self, path: Path, start: int | None = None, end: int | None = None) -> Location:
        """Where the value at a path stands; with offsets, the stretch of its text between them.

        A path that ends in `KEY` means the field's name. Where a step isn't there, the nearest value above
        it is meant; where offsets can't be followed into the file, the whole value.
        """
        if path and path[-1] == KEY:
            return self.locate_key(path[:-1])
        if self.root is None:
            return self.lines.location(0, 0)
        node, _ = find(self.root, path)
        if start is not None and node.kind == "text":
            places = offsets(self.text, node)
            if places is not None:
                begin = max(0, min(start, len(node.text)))
                stop = len(node.text) if end is None else max(begin, min(end, len(node.text)))
                last = places[begin] if stop == begin else self._after(places, stop - 1)
                return self.lines.location(places[begin], last)
        return self.lines.location(node.start, node.end)

    def written(self, path: Path, words: str) -> str | None:
        """Words as the file would hold them in place of a stretch of the value at a path.

        None where the value can't be followed letter by letter, or where they would need quotes.
        """
        if self.root is None:
            return None
        node, whole = find(self.root, path)
        if not whole or node.kind != "text" or offsets(self.text, node) is None:
            return None
        return inside(node.style, words)

    def _after(self, places: list[int], at: int) -> int:
        """The offset just behind a character; before a fold or an escape's next character, not after it."""
        if self.text[places[at] : places[at] + 1] == "\\":
            return places[at + 1]
        return places[at] + 1 if places[at + 1] > places[at] else places[at]

    def locate_key(self, path: Path) -> Location:
        """Where the name of the field at a path stands."""
        if self.root is None:
            return self.lines.location(0, 0)
        return self.lines.location(*key_span(self.root, path))
