"""A pattern file being altered: words put in place of others, so that its comments and layout stay.

Nothing is written anew that doesn't change; a value keeps its quotes, an entry its line.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from ..pattern import Path, Source
from ..pattern.nodes import Node, find
from ..pattern.quoting import in_quotes, inside
from ..pattern.scalars import offsets


class CannotAlter(Exception):
    """The design doesn't allow the alteration. reasons: one sentence each, for the author."""

    def __init__(self, *reasons: str) -> None:
        super().__init__(" ".join(reasons))
        self.reasons = reasons


class NotUnderstood(CannotAlter):
    """What is asked for can't be read."""


@dataclass(frozen=True, slots=True)
class Change:
    """One value that is different now. line: where it stands in the new file. what: the field's name."""

    line: int
    what: str
    before: str
    after: str

    @property
    def place(self) -> tuple[int, str]:
        """Line and field."""
        return self.line, self.what

    def __str__(self) -> str:
        if not self.before:
            return f"line {self.line}: new: {self.after}"
        return f"line {self.line}: {self.what}: {self.before} → {self.after or 'left out'}"


@dataclass(frozen=True, slots=True)
class _Edit:
    start: int
    end: int
    words: str


@dataclass(slots=True)
class Draft:
    """Edits gathered for one file. Of two that overlap the first stays."""

    source: Source
    _changes: list[Change] = field(default_factory=list)
    _edits: list[_Edit] = field(default_factory=list)

    @property
    def changes(self) -> list[Change]:
        """What is different, by its line in the new file."""
        text = self.source.text
        shifts = [
            (
                self.source.lines.position(one.end)[0],
                one.words.count("\n") - text.count("\n", one.start, one.end),
            )
            for one in self._edits
        ]
        return [
            replace(one, line=one.line + sum(by for line, by in shifts if line < one.line))
            for one in self._changes
        ]

    def node(self, path: Path) -> Node | None:
        """The value at a path, None where the file has none there."""
        if self.source.root is None:
            return None
        node, whole = find(self.source.root, path)
        return node if whole else None

    def value(self, path: Path, words: str) -> None:
        """Other words for a whole single value, in quotes where it has them or needs them."""
        node = self.node(path)
        if node is None or node.kind != "text" or node.text == words:
            return
        kept = inside(node.style, words)
        if node.style in ("'", '"') and kept is not None:
            written = f"{node.style}{kept}{node.style}"
        else:
            written = words if kept is not None and node.style == "" else in_quotes(words)
        self._put(node.start, node.end, written)
        self._changes.append(Change(self._line(node), _name(path), node.text, words))

    def part(self, path: Path, start: int, end: int, words: str) -> bool:
        """Other words for a stretch of a single value; False where the file can't be followed so far."""
        node = self.node(path)
        places = offsets(self.source.text, node) if node is not None and node.kind == "text" else None
        if node is None or places is None:
            return False
        kept = inside(node.style, words)
        if kept is None:
            text = node.text[:start] + words + node.text[end:]
            self.value(path, text)
            return True
        last = places[end - 1] + 1 if end > start else places[start]
        self._put(places[start], last, kept)
        line = self.source.lines.position(places[start])[0]
        self._changes.append(Change(line, _name(path), node.text[start:end], words))
        return True

    def drop(self, path: Path) -> None:
        """Leave out a field with its value, or an entry of a list with its line."""
        above, node = self.node(path[:-1]), self.node(path)
        if above is None or node is None:
            return
        pair = above.pair(str(path[-1])) if above.kind == "fields" else None
        start, end = pair[0].start if pair else node.start, _end(node)
        words = _short(self.source.text[node.start : end])
        self._changes.append(Change(self._line(node), _name(path), words, ""))
        if self.source.text[above.start : above.start + 1] in ("{", "["):
            start, end = self._with_comma(start, end)
        else:
            start, end = self._whole_lines(start, end)
        self._put(start, end, "")

    def after(self, path: Path, entries: Sequence[str]) -> None:
        """New entries of a list, each on a line of its own below another one's.

        Raises CannotAlter where the entries don't stand on lines of their own.
        """
        node = self.node(path)
        if node is None or not entries:
            return
        text = self.source.text
        line = text.rfind("\n", 0, node.start) + 1
        head = text[line : node.start]
        if head.strip() != "-":
            raise CannotAlter("Its rounds don't stand on lines of their own, so none can be put in between.")
        stop = text.find("\n", _end(node))
        stop = len(text) if stop < 0 else stop
        self._put(stop, stop, "".join(f"\n{head}{entry}" for entry in entries))
        line = self.source.lines.position(stop)[0]
        self._changes += [
            Change(line + turn, _name(path), "", entry) for turn, entry in enumerate(entries, start=1)
        ]

    def text(self) -> str:
        """The file with every edit put in."""
        parts: list[str] = []
        at = 0
        for edit in sorted(self._edits, key=lambda one: (one.start, one.end)):
            if edit.start < at:
                continue
            parts += [self.source.text[at : edit.start], edit.words]
            at = edit.end
        return "".join([*parts, self.source.text[at:]])

    def _put(self, start: int, end: int, words: str) -> None:
        self._edits.append(_Edit(start, end, words))

    def _line(self, node: Node) -> int:
        return self.source.lines.position(node.start)[0]

    def _with_comma(self, start: int, end: int) -> tuple[int, int]:
        """In braces: with the comma behind it, or the one before the last."""
        text = self.source.text
        behind = re.compile(r"\s*,\s*").match(text, end)
        if behind:
            return start, behind.end()
        before = re.search(r",\s*$", text[:start])
        return (before.start() if before else start), end

    def _whole_lines(self, start: int, end: int) -> tuple[int, int]:
        text = self.source.text
        stop = text.find("\n", end)
        return text.rfind("\n", 0, start) + 1, len(text) if stop < 0 else stop + 1


def _end(node: Node) -> int:
    """Where a value's last word ends; block lists and fields reach to the next line that isn't theirs."""
    below = [value for _, value in node.fields] + node.items
    if not below:
        return node.end
    last = max(_end(one) for one in below)
    return node.end if node.end - last <= 1 else last


def _name(path: Path) -> str:
    return next((str(step) for step in reversed(path) if isinstance(step, str)), "")


def _short(text: str) -> str:
    text = " ".join(text.split())
    return text if len(text) <= 80 else f"{text[:79]}…"
