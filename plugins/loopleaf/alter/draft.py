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
from .whereabouts import end_of, whereabouts


class CannotAlter(Exception):
    """The design doesn't allow the alteration. reasons: one sentence each, for the author."""

    def __init__(self, *reasons: str) -> None:
        super().__init__(" ".join(reasons))
        self.reasons = reasons


class NotUnderstood(CannotAlter):
    """What is asked for can't be read."""


@dataclass(frozen=True, slots=True)
class Change:
    """One value that is different now. line: where it stands in the new file. what: the field's name.

    where: what it belongs to, in a maker's words. before "": new; after "": left out.
    """

    line: int
    what: str
    before: str
    after: str
    where: str = ""

    @property
    def place(self) -> tuple[int, str]:
        """Line and field."""
        return self.line, self.what


@dataclass(frozen=True, slots=True)
class _Edit:
    start: int
    end: int
    words: str


@dataclass(frozen=True, slots=True)
class _Noted:
    """A change as it was noted. at: offset of its edit. change: by its line in the file before; of new lines,
    the line that they follow. turn: which of them it is.
    """

    at: int
    change: Change
    turn: int = 0


@dataclass(slots=True)
class Draft:
    """Edits gathered for one file. Of two that overlap the first stays."""

    source: Source
    _noted: list[_Noted] = field(default_factory=list)
    _edits: list[_Edit] = field(default_factory=list)

    @property
    def changes(self) -> list[Change]:
        """What is different, by its line in the new file; nothing within what is left out as a whole."""
        gone = [(one.start, one.end) for one in self._edits if not one.words]
        kept = [one for one in self._noted if not any(start < one.at < end for start, end in gone)]
        moved = self.moved([one.change for one in kept])
        return [replace(new, line=new.line + one.turn) for one, new in zip(kept, moved, strict=True)]

    def moved(self, changes: Sequence[Change]) -> list[Change]:
        """Changes by lines of the file before, by those of the new one."""
        text = self.source.text
        shifts = [
            (
                self.source.lines.position(max(one.start, one.end - 1))[0],
                one.words.count("\n") - text.count("\n", one.start, one.end),
            )
            for one in self._edits
        ]
        return [
            replace(one, line=one.line + sum(by for line, by in shifts if line < one.line)) for one in changes
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
        self._note(node.start, path, node.text, words)

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
        before, behind = _beside(node.text, start, end) if words.isdigit() else ("", "")
        self._note(places[start], path, f"{before}{node.text[start:end]}{behind}", f"{before}{words}{behind}")
        return True

    def drop(self, path: Path) -> None:
        """Leave out a field with its value, or an entry of a list with its line."""
        above, node = self.node(path[:-1]), self.node(path)
        if above is None or node is None:
            return
        pair = above.pair(str(path[-1])) if above.kind == "fields" else None
        start, end = pair[0].start if pair else node.start, end_of(node)
        words = " ".join(self.source.text[node.start : end].split())
        if self.source.text[above.start : above.start + 1] in ("{", "["):
            start, end = self._with_comma(start, end)
        else:
            start, end = self._whole_lines(start, end)
        self._put(start, end, "")
        self._note(start, path, words, "")

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
        stop = text.find("\n", end_of(node))
        stop = len(text) if stop < 0 else stop
        self._put(stop, stop, "".join(f"\n{head}{entry}" for entry in entries))
        for turn, entry in enumerate(entries, start=1):
            self._note(stop, path, "", entry, turn)

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

    def _note(self, at: int, path: Path, before: str, after: str, turn: int = 0) -> None:
        line = self.source.lines.position(at)[0]
        change = Change(line, _name(path), before, after, whereabouts(self.source, path))
        self._noted.append(_Noted(at, change, turn))

    def _put(self, start: int, end: int, words: str) -> None:
        self._edits.append(_Edit(start, end, words))

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


def _beside(text: str, start: int, end: int) -> tuple[str, str]:
    """The words beside a number, without which it says little: `next 10 chs`."""
    before, behind = re.search(r"(?:\w+ )?$", text[:start]), re.match(r"(?: \w+)?", text[end:])
    return (before[0] if before else ""), (behind[0] if behind else "")


def _name(path: Path) -> str:
    """The field's name; for where a rule begins, with the name of what it is the rule of (`count from`)."""
    names = [str(step) for step in path if isinstance(step, str)]
    return " ".join(names[-2:]) if names[-1:] == ["from"] else names[-1] if names else ""
