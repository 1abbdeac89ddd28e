"""From a file's text to its values with their places, built from the YAML reader's events without recursion.

Nothing is ever made from a tag, and no alias is opened out here: so a hostile file costs little.
"""

import re
from dataclasses import dataclass, field, replace
from typing import Any

import yaml

from .finding import Suggestion
from .limits import DEEPEST, MOST_ALIASES, MOST_FINDINGS, MOST_VALUES
from .no_colon import named_and_valued
from .nodes import Flaw, Lines, Node
from .not_yaml import explain, too_deep
from .quoting import in_quotes, quote, value_on_line

_READER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_PLAIN_TAGS = re.compile(r"^(!|tag:yaml\.org,2002:(str|int|float|bool|null|timestamp|map|seq))$")
_NOTHING = ("", "~", "null", "Null", "NULL")
_MOST_REPAIRS = 50
_MOST_READ_AGAIN = 5_000_000  # characters read in all while looking for further errors: a few seconds


def _at(mark: Any) -> int:
    """A mark's offset; the two readers' marks have different types."""
    return int(mark.index)


class _TooMuchError(Exception):
    """The file is past a limit; the flaw that says so is already noted."""


@dataclass(slots=True)
class _Open:
    """A list or fields whose end hasn't come yet; waiting is the field name that has no value so far."""

    node: Node
    anchor: str | None
    flow: bool
    waiting: Node | None = None


@dataclass(slots=True)
class _Composer:
    text: str
    lines: Lines
    flaws: list[Flaw] = field(default_factory=list)
    stack: list[_Open] = field(default_factory=list)
    anchors: dict[str, Node] = field(default_factory=dict)
    aliases: int = 0
    root: Node | None = None

    def take(self, event: yaml.Event) -> None:
        """One event of the reader. Raises `_TooMuchError` past a limit."""
        if len(self.flaws) > MOST_FINDINGS:
            raise _TooMuchError
        if isinstance(event, yaml.DocumentStartEvent) and self.root is not None:
            self._second_document(_at(event.start_mark))
            raise _TooMuchError
        if isinstance(event, yaml.AliasEvent):
            self._alias(event)
        elif isinstance(event, yaml.ScalarEvent):
            self._scalar(event)
        elif isinstance(event, yaml.CollectionStartEvent):
            self._open(event)
        elif isinstance(event, yaml.CollectionEndEvent):
            self._close(event)

    def _second_document(self, at: int) -> None:
        self.flaws.append(
            Flaw(
                "not-yaml",
                at,
                at + 3,
                "A second document begins here.",
                "A line of three dashes begins a new document; a pattern's file holds one.",
                Suggestion("Take the line out, or put what follows into a file of its own.", None, "fill-in"),
            )
        )

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        kept = event.style if event.style in ("'", '"', "|", ">") else ""
        nothing = not kept and event.value in _NOTHING
        node = Node(
            "nothing" if nothing else "text", _at(event.start_mark), _at(event.end_mark), event.value, kept
        )
        if kept in ("|", ">"):
            node.end = node.start + len(self.text[node.start : node.end].rstrip())
        self._tag(event.tag, node)
        if event.anchor:
            self.anchors[event.anchor] = node
        self._add(node)

    def _tag(self, tag: str | None, node: Node) -> None:
        if tag is None or _PLAIN_TAGS.match(tag):
            return
        begin = self.text.find("!", *self.lines.around(node.start))
        start = begin if 0 <= begin <= node.start else node.start
        self.flaws.append(
            Flaw(
                "wrong-type",
                start,
                max(node.end, start + 1),
                "This value begins with an instruction for programs.",
                "A value with `!` before it asks a program to make something of it; a pattern holds text, "
                "numbers, lists and fields only.",
                Suggestion(
                    "Take out the `!` and the word behind it; if it is meant as text, put it in quotes.",
                    None,
                    "fill-in",
                ),
            )
        )

    def _alias(self, event: yaml.AliasEvent) -> None:
        start, end = _at(event.start_mark), _at(event.end_mark)
        target = self.anchors.get(event.anchor or "")
        if target is None:
            value = value_on_line(self.text, start, self.lines.around(start))
            begin, stop = (value[0], value[1]) if value and value[0] == start else (start, end)
            self.flaws.append(
                Flaw(
                    "not-yaml",
                    begin,
                    stop,
                    "This value begins with `*` and isn't in quotes.",
                    "YAML keeps an asterisk at the beginning of a value for itself: it takes "
                    f"`{event.anchor}` for the name of another value, and there is none.",
                    quote(self.text[begin:stop]),
                    stops=True,
                )
            )
            self._add(Node("text", begin, stop, self.text[begin:stop]))
            return
        self.aliases += 1
        if any(one.node is target for one in self.stack):
            self.flaws.append(
                Flaw(
                    "too-deep",
                    start,
                    end,
                    f"`*{event.anchor}` stands for the very value that it stands in.",
                    "Opened out, that value would hold itself without end.",
                    Suggestion("Write out what is meant.", None, "fill-in"),
                )
            )
            raise _TooMuchError
        if self.aliases > MOST_ALIASES:
            self._too_many(
                start,
                end,
                f"The file uses `*` names {self.aliases} times so far; {MOST_ALIASES} is the limit.",
            )
        self._add(target, (start, end))

    def _too_many(self, start: int, end: int, working: str) -> None:
        self.flaws.append(
            Flaw(
                "too-many-aliases",
                start,
                end,
                "Too much is borrowed from other places of the file by `*` names.",
                working,
                Suggestion("Write rounds that are alike as `rounds: 4-6` or with `as:`.", None, "fill-in"),
            )
        )
        raise _TooMuchError

    def _too_many_values(self, start: int, end: int) -> None:
        if self.aliases:
            self._too_many(start, end, f"Opened out, the file holds more than {MOST_VALUES:,} values.")
        self.flaws.append(
            Flaw(
                "too-large",
                start,
                end,
                f"The file holds more than {MOST_VALUES:,} values.",
                "A blanket with 2,000 rows written out one by one holds about 20,000.",
                Suggestion("Write rounds that are alike as `rounds: 4-6` or with `as:`.", None, "fill-in"),
            )
        )
        raise _TooMuchError

    def _open(self, event: yaml.CollectionStartEvent) -> None:
        start = _at(event.start_mark)
        fields = isinstance(event, yaml.MappingStartEvent)
        node = Node("fields" if fields else "list", start, start)
        self._tag(event.tag, node)
        if len(self.stack) >= DEEPEST:
            self.flaws.append(too_deep(start, start + 1))
            raise _TooMuchError
        flow = self.text[start : start + 1] in ("{", "[") and bool(event.flow_style)
        if event.anchor:
            self.anchors[event.anchor] = node
        self.stack.append(_Open(node, event.anchor, flow))

    def _close(self, event: yaml.CollectionEndEvent) -> None:
        done = self.stack.pop()
        node = done.node
        node.end = _at(event.end_mark) if done.flow else max(node.end, node.start)
        if node.kind == "fields" and done.flow:
            self._mend_commas(node)
        self._add(node)

    def _add(self, node: Node, alias: tuple[int, int] | None = None) -> None:
        if not self.stack:
            self.root = node
            return
        into = self.stack[-1]
        parent = into.node
        parent.size += node.size
        parent.depth = max(parent.depth, node.depth + 1)
        place = alias or (node.start, node.end)
        parent.end = max(parent.end, place[1])
        if parent.size > MOST_VALUES:
            self._too_many_values(*place)
        if alias and len(self.stack) + node.depth > DEEPEST:
            self.flaws.append(too_deep(*place))
            raise _TooMuchError
        if parent.kind == "list":
            parent.items.append(node)
        elif into.waiting is None:
            into.waiting = node
        else:
            parent.fields.append((into.waiting, node))
            into.waiting = None

    def _mend_commas(self, node: Node) -> None:
        """Put values in braces together again that an unquoted comma cut in two, and note the flaw."""
        kept: list[tuple[Node, Node]] = []
        cut: list[Node] = []
        parted: list[Node] = []
        for key, value in node.fields:
            no_colon = value.kind == "nothing" and value.start == value.end and value.start <= key.end
            before = kept[-1][1] if kept else None
            named = named_and_valued(key.text) if no_colon and not key.style else None
            if named is not None and all(one.text != named[0] for one, _ in node.fields):
                kept.append(self._parted(key, *named))
                parted.append(kept[-1][1])
            elif no_colon and before is not None and before.kind == "text" and not before.style:
                before.end = key.end
                before.text = self.text[before.start : before.end]
                if all(before is not one for one in (*cut[-1:], *parted[-1:])):
                    cut.append(before)
            else:
                kept.append((key, value))
        node.fields = kept
        for value in parted:
            if value.text[0] in "\"'" and value.text[-1] == value.text[0]:
                value.style, value.text = value.text[0], value.text[1:-1]
        for value in cut:
            first = value.text.split(",")[0]
            self.flaws.append(
                Flaw(
                    "comma-in-braces",
                    value.start,
                    value.end,
                    "A comma inside `{ }` cuts this value in two.",
                    "Inside `{ }` a comma ends a value, unless the value is in quotes: "
                    f"only `{first}` is left of it.",
                    Suggestion("Put the whole value in quotes.", in_quotes(value.text), "safe"),
                )
            )

    def _parted(self, key: Node, name: str, value: str) -> tuple[Node, Node]:
        """`round 1` in braces, told as a field without its colon, and read as one."""
        start = key.start + self.text[key.start : key.end].index(name)
        self.flaws.append(
            Flaw(
                "unknown-field",
                start,
                start + len(name),
                f"The field `{name}` lacks its colon.",
                "A field's name ends with a colon, and a space follows before its value.",
                Suggestion(f"Write `{name}: …`.", f"{name}:", "safe"),
            )
        )
        at = key.end - len(value)
        return Node("text", start, start + len(name), name), Node("text", at, key.end, value)


def compose(text: str) -> tuple[Node | None, list[Flaw]]:
    """The file's outermost value (None: it holds none) and what is wrong with it as YAML.

    After an error that lies in one value, that value is passed over and the rest is read, so that all errors
    of a file are found at once.
    """
    flaws: list[Flaw] = []
    readable = text
    for _ in range(min(_MOST_REPAIRS, 1 + _MOST_READ_AGAIN // (len(text) + 1))):
        composer = _Composer(readable, Lines(readable))
        try:
            for event in yaml.parse(readable, Loader=_READER):
                composer.take(event)
        except _TooMuchError:
            return composer.root, flaws + composer.flaws
        except yaml.YAMLError as error:
            cause = explain(readable, error)
            if any(flaw.start <= cause.flaw.start <= flaw.end for flaw in flaws):
                return None, flaws
            flaws.append(replace(cause.flaw, stops=True))
            if cause.mended is None:
                return None, flaws
            readable = cause.mended
            continue
        return composer.root, flaws + composer.flaws
    return None, flaws
