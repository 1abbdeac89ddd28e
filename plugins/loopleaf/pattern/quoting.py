"""One value on one line: where it begins and ends as its author meant it, and how it reads in quotes."""

import re

from .finding import Suggestion
from .limits import LONGEST_TEXT

_FIELD = re.compile(r"(?:^[ ]*(?:-[ ]+)*|[{,][ \t]*)([A-Za-z_][\w \t-]*|\"[^\"]*\"|'[^']*'):[ \t]+")
_ITEM = re.compile(r"^[ ]*(?:-[ ]+)+")
_NEXT_FIELD = re.compile(r",[ \t]*[A-Za-z_][\w \t-]*:(?=[ \t]|$)")
_SPECIAL = re.compile(r"[][{},:#\\\"']|^[-?&*!|>%@`]|^\s|\s$")
"""What may mean something else in a value without quotes."""
_CURLY = re.compile(r"[“”„‘’]([^“”„‘’]*)[“”‘’]")
_FAR = LONGEST_TEXT  # further away on one line nothing is looked for


def in_quotes(value: str) -> str:
    """A value in the quotes that need least change; a typesetter's quotes around it give way to those."""
    curly = _CURLY.fullmatch(value)
    value = curly[1] if curly is not None else value
    if '"' not in value and "\\" not in value:
        return f'"{value}"'
    return "'" + value.replace("'", "''") + "'"


def inside(style: str, words: str) -> str | None:
    """Words as they are written inside a value of a style; None where they would end or change the value.

    style: as a node's: "" plain, `'`, `"`, `|`, `>`.
    """
    if style == "'":
        return words.replace("'", "''")
    if style == '"':
        return words.replace("\\", "\\\\").replace('"', '\\"')
    if "\n" in words or (not style and _SPECIAL.search(words)):
        return None
    return words


def quote(value: str) -> Suggestion:
    """The advice to put a value in quotes."""
    return Suggestion("Put the whole value in quotes.", in_quotes(value), "safe")


def value_on_line(text: str, at: int, line: tuple[int, int]) -> tuple[int, int, bool] | None:
    """The value on one line that reaches to an offset or lies last before it: start, end, if in braces."""
    begin, stop = max(line[0], at - _FAR), min(line[1], at + _FAR)
    row = text[begin:stop]
    starts = [found.end() for found in _FIELD.finditer(row) if begin + found.end() <= at]
    item = _ITEM.match(row)
    if item and (not starts or item.end() > starts[-1]):
        starts.append(item.end())
    if not starts:
        return None
    start = starts[-1]
    braces = row.count("{", 0, start) > row.count("}", 0, start)
    end = len(row.rstrip())
    if braces:
        after = _NEXT_FIELD.search(row, start)
        if after:
            end = after.start()
        else:
            closing = row.rfind("}", start)
            end = closing if closing > start else end
    else:
        remark = re.search(r"[ \t]#", row[start:])
        end = start + remark.start() if remark else end
    while end > start and row[end - 1] in " \t":
        end -= 1
    return (begin + start, begin + end, braces) if end > start else None
