"""Findings as text: the file's line with the stretch marked, the working, the mending."""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from unicodedata import combining, east_asian_width

from ..pattern.finding import Finding, Severity
from ..review import Checked

SHOWN_PER_FILE = 20

Paint = Callable[[str, str], str]
"""A text in one of the styles `error`, `warning`, `note`, `quiet`, `strong`, `added`, `removed`."""

_CODES = {
    "error": "1;31",
    "warning": "1;33",
    "note": "1;36",
    "quiet": "2",
    "strong": "1",
    "added": "32",
    "removed": "31",
}
_TAB = "    "
_RELATED_SHOWN = 3
_WIDEST = 100


def coloured(text: str, style: str) -> str:
    """The text in its style, by terminal codes."""
    return f"\x1b[{_CODES[style]}m{text}\x1b[0m" if text else text


def plain(text: str, style: str) -> str:
    """The text alone, for a pipe or where NO_COLOR is set."""
    return text


def report(
    checked: Iterable[Checked], paint: Paint = plain, before: Callable[[Checked, Paint], str] | None = None
) -> str:
    """All findings of all files, at most SHOWN_PER_FILE a file, and a closing line.

    before: what else is said of each file, above all the findings. Files are gone through once, and none is
    kept.
    """
    above: list[str] = []
    blocks: list[str] = []
    patterns = 0
    severities: Counter[Severity] = Counter()
    for one in checked:
        patterns += 1
        severities.update(finding.severity for finding in one.findings)
        above.append(before(one, paint) if before else "")
        blocks += [_block(finding, one, paint) for finding in one.findings[:SHOWN_PER_FILE]]
        more = len(one.findings) - SHOWN_PER_FILE
        if more > 0:
            blocks.append(f"{one.source.file}: {more} more finding{'s' if more > 1 else ''} not shown.\n")
    return "".join(above) + "\n".join([*blocks, _closing(patterns, severities, paint)])


def _block(finding: Finding, checked: Checked, paint: Paint) -> str:
    at = finding.location
    where = ", ".join(part for part in (finding.piece, _round(finding, checked)) if part)
    lines = [
        f"{paint(finding.severity, finding.severity)} {paint(finding.rule, 'strong')}: {finding.message}",
        paint(f"  {finding.file}:{at.line}:{at.column}" + (f"  ({where})" if where else ""), "quiet"),
        *_marked(finding, checked.source.text, paint),
    ]
    if finding.working:
        lines.append(f"  Working: {finding.working}")
    if finding.suggestion:
        lines.append(f"  Mending: {finding.suggestion.text}")
        if (finding.suggestion.replacement or "").strip():
            lines.append(f"           put: {finding.suggestion.replacement}")
    for other in finding.related[:_RELATED_SHOWN]:
        place = f"{finding.file}:{other.location.line}:{other.location.column}"
        lines.append(f"  See also {paint(place, 'quiet')}: {other.message}")
    more = len(finding.related) - _RELATED_SHOWN
    if more > 0:
        lines.append(f"  and {more} more place{'s' if more > 1 else ''}.")
    return "\n".join(lines) + "\n"


def _round(finding: Finding, checked: Checked) -> str:
    """`round 7`, or `row 7` where the piece is worked in rows."""
    if not finding.round:
        return ""
    piece = checked.work.piece(finding.piece) if checked.work else None
    word = piece.rounds[0].plan.word if piece and piece.rounds else "round"
    return f"{word} {finding.round}"


def _marked(finding: Finding, text: str, paint: Paint) -> Iterator[str]:
    """The file's line and, below it, marks under the stretch; the first line of a longer stretch."""
    lines = text.split("\n")
    at = finding.location
    if not text or at.line > len(lines):
        return
    line = lines[at.line - 1].rstrip("\r")
    end = at.end_column - 1 if at.end_line == at.line else len(line)
    start, end = min(at.column - 1, len(line)), min(end, len(line))
    before, marked, after = line[:start], line[start:end], line[end:]
    if len(before) + len(marked) > _WIDEST and len(before) > 40:
        before = "…" + before[-30:]
    room = max(_WIDEST - len(before), 20)
    if len(marked) > room:
        marked, after = marked[: room - 1] + "…", ""
    if len(before) + len(marked) + len(after) > _WIDEST + 10:
        after = after[: max(_WIDEST - len(before) - len(marked), 0)] + "…"
    number = str(at.line)
    gutter = " " * len(number)
    yield f"  {paint(number + ' |', 'quiet')} {_shown(before + marked + after)}"
    marks = "^" * max(_width(_shown(marked)), 1)
    yield f"  {paint(gutter + ' |', 'quiet')} {' ' * _width(_shown(before))}{paint(marks, finding.severity)}"


def _shown(text: str) -> str:
    """The text as a terminal can show it: tabs opened, control characters replaced."""
    return "".join(
        _TAB if letter == "\t" else letter if letter.isprintable() else "\N{REPLACEMENT CHARACTER}"
        for letter in text
    )


def _width(text: str) -> int:
    """How many columns the text takes in a terminal."""
    return sum(0 if combining(letter) else 2 if east_asian_width(letter) in "WF" else 1 for letter in text)


def _closing(number: int, severities: Counter[Severity], paint: Paint) -> str:
    patterns = f"{number} pattern{'' if number == 1 else 's'} checked"
    levels: tuple[Severity, ...] = ("error", "warning", "note")
    counts = [(level, severities[level]) for level in levels]
    told = [paint(f"{count} {level}{'' if count == 1 else 's'}", level) for level, count in counts if count]
    return f"{patterns}: {', '.join(told) if told else 'nothing to mend'}.\n"
