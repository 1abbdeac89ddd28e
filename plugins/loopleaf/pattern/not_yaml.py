"""Why a file doesn't read as YAML, in an author's words: the place, the likely cause, the cure.

The YAML reader only knows where it gave up. What the author meant shows in the line itself: a value
that begins with a sign that YAML keeps for itself, a colon inside a value, a tab.
"""

import re
from dataclasses import dataclass

import yaml

from .finding import Suggestion
from .limits import DEEPEST
from .no_colon import no_colon
from .nodes import Flaw, Lines
from .quoting import in_quotes, quote, value_on_line

_LONE_QUOTE = re.compile(r'[^"\n]*(?:(?<=[\s:,\[{])"[^"\n]*"[^"\n]*)*(?<=[\s:,\[{])(")[^"\n]*$')
"""The last of an odd number of quotes in a line: it opens a value and nothing closes it."""
_SHOWN = 24
"""So many characters show which quote is meant."""

_REMARK = re.compile(r"^[^\n#]*[{,][\w \t-]+:[ \t]+(#[^,}\]\s]+)", re.M)
_KEPT = {
    "*": "an asterisk",
    "&": "an ampersand",
    "@": "an at sign",
    "%": "a per cent sign",
    "`": "a backtick",
    "!": "an exclamation mark",
    "|": "an upright stroke",
    ">": "an angle bracket",
}


@dataclass(frozen=True, slots=True)
class Cause:
    """A flaw, and the file with the flawed stretch made harmless (same length); None: no way on."""

    flaw: Flaw
    mended: str | None


def _blank(text: str, start: int, end: int) -> str:
    return text[:start] + re.sub(r"[^\r\n]", "x", text[start:end]) + text[end:]


def _goes_on_after(value: str) -> str:
    """The closing sign that a value goes on after (`[sc] x 6` goes on after `]`), or ""."""
    if value[0] in "\"'":
        closing = value.find(value[0], 1)
        return value[0] if 0 < closing < len(value) - 1 else ""
    pairs = {"[": "]", "{": "}"}
    if value[0] not in pairs:
        return ""
    depth = 0
    for at, sign in enumerate(value):
        depth += (sign == value[0]) - (sign == pairs[value[0]])
        if depth == 0:
            return pairs[value[0]] if value[at + 1 :].strip(" ,") else ""
    return ""


def _with_comma(value: str) -> Suggestion:
    """`"sc in each st, turn" count: 20`: the comma before the next field; else the whole put in quotes."""
    found = _NEXT.match(value)
    if found is None:
        return quote(value)
    return Suggestion("Put a comma behind the closing quote.", f"{found[1]},{value[found.end(1) :]}", "safe")


_NEXT = re.compile(r"""("[^"]*"|'[^']*')\s+[A-Za-z_][\w ]*:(?=\s)""")


def _in_the_value(text: str, at: int, line: tuple[int, int]) -> Cause | None:
    """A cause that lies in one field's value: a sign it begins with, a colon in it, a comma in braces."""
    found = value_on_line(text, at, line)
    if found is None:
        return None
    start, end, braces = found
    value = text[start:end]
    mended = _blank(text, start, end)
    if value[0] in _KEPT:
        return Cause(
            Flaw(
                "not-yaml",
                start,
                end,
                f"This value begins with `{value[0]}` and isn't in quotes.",
                f"YAML keeps {_KEPT[value[0]]} at the beginning of a value for itself.",
                quote(value),
            ),
            mended,
        )
    closing = _goes_on_after(value)
    if closing:
        return Cause(
            Flaw(
                "not-yaml",
                start,
                end,
                f"This value begins with `{value[0]}` and goes on after its closing `{closing}`.",
                f"A value that begins with `{value[0]}` ends for YAML at the closing `{closing}`.",
                _with_comma(value) if braces else quote(value),
            ),
            mended,
        )
    if braces and re.search(r",\s*[*&@%`!|>\[{\"']", value) and value[0] not in "[{\"'":
        return Cause(
            Flaw(
                "comma-in-braces",
                start,
                end,
                "A comma inside `{ }` cuts this value in two.",
                "Inside `{ }` a comma ends a value, unless the value is in quotes.",
                quote(value),
            ),
            mended,
        )
    colon = re.search(r":(?=\s|$)", value)
    if colon and value[0] not in "[{\"'" and start <= at <= end:
        return Cause(
            Flaw(
                "not-yaml",
                start,
                end,
                "This value holds a colon with a space after it, and isn't in quotes.",
                "To YAML a colon and a space end a field's name, so what stands before them reads as a name.",
                quote(value),
            ),
            mended,
        )
    return None


def _tab(text: str, at: int, line: tuple[int, int], lines: Lines) -> Cause | None:
    begin, stop = line
    margin = re.match(r"[ \t]*", text[begin:stop])
    width = margin.end() if margin else 0
    if "\t" not in text[begin : begin + width] and text[at : at + 1] != "\t":
        return None
    start = begin + text[begin:stop].find("\t")
    mended = re.sub(r"^[ \t]+", lambda found: found[0].replace("\t", " "), text, flags=re.M)
    others = len(re.findall(r"^[ ]*\t", text, flags=re.M)) - 1
    working = "YAML sets lines in with spaces only, since a tab is a different width for every reader."
    if others > 0:
        working += f" {others} more {'line begins' if others == 1 else 'lines begin'} with a tab."
    return Cause(
        Flaw(
            "not-yaml",
            start,
            start + 1,
            f"Line {lines.position(at)[0]} has a tab where spaces belong.",
            working,
            Suggestion("Put spaces in its place, as many as the lines beside it have.", "  ", "likely"),
        ),
        mended if mended != text else None,
    )


def _remark(text: str, at: int, error: yaml.MarkedYAMLError) -> Cause | None:
    """A value in braces that begins with `#` (a colour): the closing brace is hidden with it."""
    if "flow" not in (error.context or ""):
        return None
    for found in reversed(list(_REMARK.finditer(text, 0, at))):
        before = found[0][: found.start(1) - found.start()]
        if before.count("{") <= before.count("}"):
            continue
        start, end = found.span(1)
        return Cause(
            Flaw(
                "not-yaml",
                start,
                end,
                f"`{found[1]}` hides the rest of its line.",
                "To YAML, a `#` after a space begins a remark, and the rest of the line isn't read.",
                Suggestion("Put it in quotes.", in_quotes(found[1]), "safe"),
            ),
            _blank(text, start, end),
        )
    return None


def _not_closed(text: str, error: yaml.MarkedYAMLError, lines: Lines) -> Cause | None:
    mark = error.context_mark
    if mark is None or mark.index >= len(text):
        return None
    sign = text[mark.index]
    if sign not in "{[\"'":
        return None
    begin_line = lines.position(mark.index)[0]
    stopped = error.problem_mark.index if error.problem_mark else len(text)
    if lines.position(stopped)[0] == begin_line and stopped < len(text):
        return None
    end = lines.around(mark.index)[1]
    closing = {"{": "}", "[": "]"}.get(sign, sign)
    name = {"{": "curly bracket", "[": "square bracket"}.get(sign, "quote")
    message = f"The {name} that opens here is never closed."
    lone = _LONE_QUOTE.match(text, mark.index, end) if sign in "{[" else None
    if lone is not None:  # it hides the bracket that would close this one
        sign = closing = '"'
        behind = text[lone.end(1) : min(lone.end(1) + _SHOWN, end)].rstrip()
        message = f"The quote before “{behind}…” is never closed."
    return Cause(
        Flaw(
            "not-yaml",
            mark.index,
            end,
            message,
            f"A `{sign}` needs its `{closing}`; without it YAML reads on into the lines below.",
            Suggestion(f"Put `{closing}` where the value ends.", None, "fill-in"),
        ),
        _blank(text, mark.index, end),
    )


def _strange_sign(text: str, error: yaml.reader.ReaderError) -> Cause:
    at = min(int(error.position), max(len(text) - 1, 0))
    return Cause(
        Flaw(
            "not-yaml",
            at,
            at + 1,
            f"There is an unprintable character here (U+{ord(text[at]):04X}).",
            "A pattern's file holds printable text only; such a character often comes in by copying.",
            Suggestion("Take it out.", "", "safe"),
        ),
        text[:at] + " " + text[at + 1 :],
    )


def _escape(text: str, at: int) -> Cause | None:
    start = text.rfind("\\", 0, at + 2)
    if start < 0:
        return None
    return Cause(
        Flaw(
            "not-yaml",
            start,
            start + 2,
            f"`{text[start : start + 2]}` has no meaning inside double quotes.",
            "Between double quotes a backslash begins a special sign; between single quotes it is itself.",
            Suggestion(
                "Write two backslashes, or put the value in single quotes.",
                "\\" + text[start : start + 2],
                "safe",
            ),
        ),
        text[:start] + "xx" + text[start + 2 :],
    )


def _indent(text: str, line: tuple[int, int], lines: Lines) -> Flaw:
    begin, stop = line
    row = text[begin:stop]
    start = begin + len(row) - len(row.lstrip())
    number = lines.position(begin)[0]
    return Flaw(
        "not-yaml",
        start,
        max(stop, start),
        f"Line {number} doesn't fit the lines around it.",
        "Fields that belong together begin in the same column; what belongs to a field stands further in.",
        Suggestion(
            "Set it in exactly as far as its neighbours, and look at the line above it too.", None, "fill-in"
        ),
    )


def explain(text: str, error: yaml.YAMLError) -> Cause:
    """The flaw behind a YAML reader's error, and the file made readable past it where that can be done."""
    if isinstance(error, yaml.reader.ReaderError):
        return _strange_sign(text, error)
    lines = Lines(text)
    if not isinstance(error, yaml.MarkedYAMLError) or error.problem_mark is None:
        return Cause(Flaw("not-yaml", 0, 0, "This file doesn't read as YAML."), None)
    problem = error.problem or ""
    at = min(error.problem_mark.index, len(text))
    if "nesting" in problem:
        return Cause(too_deep(at, at + 1), None)
    line = lines.around(at)
    if "escape" in problem:
        escaped = _escape(text, at)
        if escaped:
            return escaped
    return (
        _tab(text, at, line, lines)
        or _remark(text, at, error)
        or _not_closed(text, error, lines)
        or _in_the_value(text, at, line)
        or Cause(no_colon(text, at, lines) or _indent(text, line, lines), None)
    )


def too_deep(start: int, end: int) -> Flaw:
    """The flaw of values that lie too deep within each other."""
    return Flaw(
        "too-deep",
        start,
        end,
        "The values here lie too deep within each other.",
        f"A pattern needs no more than 6 fields within fields; {DEEPEST} is the limit.",
        Suggestion("Take out the brackets that aren't needed.", None, "fill-in"),
    )
