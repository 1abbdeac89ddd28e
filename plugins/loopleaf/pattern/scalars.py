"""Where each character of a value stands in the file: quotes, escapes and folded lines undone.

The map is checked against the value itself: if following it doesn't give the value again, there is none,
and the whole value is pointed at.
"""

import re

from .nodes import Node

_ESCAPE = re.compile(r"\\(?:x[0-9a-fA-F]{2}|u[0-9a-fA-F]{4}|U[0-9a-fA-F]{8}|.)", re.S)
_FOLD = re.compile(r"[ \t]*(\r\n|\n|\r)((?:[ \t]*(?:\r\n|\n|\r))*)[ \t]*")
_BREAK = re.compile(r"\r\n|\n|\r")


def offsets(text: str, node: Node) -> list[int] | None:
    """For each character of the value its offset in the file, and one past the last; None: can't be told."""
    found = _in_a_block(text, node) if node.style in ("|", ">") else _in_a_line(text, node)
    return found if found is not None and len(found) == len(node.text) + 1 else None


def _in_a_line(text: str, node: Node) -> list[int] | None:
    """Plain and quoted values, which fold over lines in the same way."""
    at, end = node.start, node.end
    if node.style:
        at, end = at + 1, end - 1
    value = node.text
    places: list[int] = []
    while at < end and len(places) <= len(value):
        sign = text[at]
        if node.style == '"' and sign == "\\":
            escape = _ESCAPE.match(text, at, end)
            if escape is None:
                return None
            if escape[0][1] in "\r\n":
                fold = _FOLD.match(text, at + 1, end)
                at = fold.end() if fold else at + 2
                continue
            places.append(at)
            at = escape.end()
            continue
        fold = _FOLD.match(text, at, end) if sign in " \t\r\n" else None
        if fold:
            empty = len(_BREAK.findall(fold[2]))
            places.extend([at] * (empty or 1))
            at = fold.end()
            continue
        if node.style == "'" and sign == "'":
            at += 1  # the first of the two that stand for one
        if len(places) >= len(value) or text[at] != value[len(places)]:
            return None
        places.append(at)
        at += 1
    return [*places, end]


def _in_a_block(text: str, node: Node) -> list[int] | None:
    """Values under `|` and `>`, whose lines are set in and have no escapes."""
    value = node.text
    head = _BREAK.search(text, node.start, node.end)
    if head is None:
        return None
    places: list[int] = []
    at = head.end()
    indent = re.compile(r"[ ]*").match(text, at, node.end)
    width = len(indent[0]) if indent else 0
    at += width
    while at < node.end and len(places) < len(value):
        broken = _BREAK.match(text, at, node.end)
        if broken is None:
            if text[at] != value[len(places)]:
                return None
            places.append(at)
            at += 1
            continue
        if value[len(places)] not in "\n ":
            return None
        places.append(at)
        at = broken.end()
        if text[at : at + width].strip(" ") == "":
            at += width
    end = min(at, node.end)
    closing = value[len(places) :]
    if not closing.strip("\n"):  # the line breaks that end it lie behind the last letter
        places.extend([end] * len(closing))
    return [*places, end]
