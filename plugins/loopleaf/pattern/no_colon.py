"""A field's name without its colon: YAML gives up in the line below it, and the author has to look above."""

import re
from collections.abc import Iterator
from functools import cache

import yaml

from .finding import Suggestion
from .known_fields import PARTS, fields_of
from .nodes import Flaw, Lines

_READER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)

_BLOCK = re.compile(r"[ ]*(?:-[ ]+)*([A-Za-z_][\w -]*?)[ \t]*(?:#.*)?$")
"""A line that is nothing but words: a name that has lost its colon, if what follows stands further in."""

_BEFORE_BRACKET = re.compile(r"[ ]*(?:-[ ]+)*([A-Za-z_][\w -]*?)(?=[ \t]+[\[{])")
_NO_SPACE = re.compile(r"[ ]*(?:-[ ]+)*([A-Za-z_][\w ]*:)(?=[^\s:/])")
_NUMBERS = re.compile(r"\d+(?:-\d+)?")
_QUOTED = re.compile(r"\"[^\"]*\"?|'[^']*'?")
_FOLLOWS = re.compile(r"(?:\s*(?:#[^\r\n]*)?[\r\n])+([ ]*)(\S)")
_ABOVE = 2
"""So many lines are looked at: the one in which YAML gives up, and the one above it."""


@cache
def _names() -> re.Pattern[str]:
    """Every field of the format, the longest name first."""
    names = {name for part in PARTS for name in fields_of(part)}
    longest_first = "|".join(re.escape(name) for name in sorted(names, key=len, reverse=True))
    return re.compile(rf"[ ]*(?:-[ ]+)*({longest_first})(?=[ \t]+\S)(?![^\"'{{\[]*:(?:\s|$))")


def no_colon(text: str, at: int, lines: Lines) -> Flaw | None:
    """The line, here or above, with whose colon put in YAML reads on; None where there is none."""
    for begin, stop in _lines_above(text, at, lines):
        for found, has_colon in _candidates(text, begin, stop):
            start, end = found.span(1)
            if not _reads_on(f"{text[:end]}{' ' if has_colon else ':'}{text[end:]}", at):
                continue
            name = found[1].removesuffix(":")
            what = "the space behind its colon" if has_colon else "its colon"
            return Flaw(
                "not-yaml",
                start,
                end,
                f"The field `{name}` lacks {what}.",
                "A field's name ends with a colon, and a space follows before its value.",
                Suggestion(
                    f"Write `{name}: …`.", f"{name}: " if has_colon else f"{name}:", "likely"
                ),
            )  # fmt: skip
    return None


def _lines_above(text: str, at: int, lines: Lines) -> Iterator[tuple[int, int]]:
    """The line at an offset and the nearest one above it that holds anything, the upper one first."""
    kept: list[tuple[int, int]] = []
    begin, stop = lines.around(at)
    while len(kept) < _ABOVE:
        row = text[begin:stop].strip()
        if row and not row.startswith("#"):
            kept.append((begin, stop))
        if not begin:
            break
        begin, stop = lines.around(begin - 1)
    return reversed(kept)


def _candidates(text: str, begin: int, stop: int) -> Iterator[tuple[re.Match[str], bool]]:
    """Names in a line that may lack their colon; whether only the space behind it is lacking."""
    for pattern in (_names(), _BEFORE_BRACKET, _BLOCK):
        found = pattern.match(text, begin, stop)
        if found is not None and (pattern is not _BLOCK or _holds_more(text, begin, stop)):
            yield found, False
    found = _NO_SPACE.match(text, begin, stop)
    if found is not None:
        yield found, True


def _holds_more(text: str, begin: int, stop: int) -> bool:
    """Whether the next line is set in further, or is a list's: it belongs to this one."""
    below = _FOLLOWS.match(text, stop)
    row = text[begin:stop]
    return below is not None and (below[2] == "-" or len(below[1]) > len(row) - len(row.lstrip(" ")))


def _reads_on(mended: str, at: int) -> bool:
    """Whether YAML gets past the place where it gave up before."""
    try:
        for _ in yaml.parse(mended, Loader=_READER):
            pass
    except yaml.MarkedYAMLError as error:
        return error.problem_mark is not None and error.problem_mark.line > mended.count("\n", 0, at)
    except yaml.YAMLError:
        return False
    return True


def named_and_valued(text: str) -> tuple[str, str] | None:
    """`round 1` in braces as `round` and `1`, `work "ch 1` as `work` and what stands behind it."""
    found = _names().match(text)
    if found is None or text[: found.start(1)].strip():
        return None
    value = text[found.end(1) :].strip()
    return (found[1], value) if _NUMBERS.fullmatch(value) or _QUOTED.fullmatch(value) else None
