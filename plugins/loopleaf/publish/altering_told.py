"""What an alteration changed in a file: one line a change, in a maker's words."""

import re

from ..alter import Change

_RUNS = ("round", "rounds", "row", "rows")
_NUMBERED = re.compile(r"(?:rounds?|rows?) [\d-]+$")
_ENTRY = re.compile(r'work: "(?P<work>[^"]*)"(?:.*?count: (?P<count>\d+))?')


def told(change: Change) -> str:
    """`line 48, round 7: “(sc in next 9 sts, inc) x 3”, before “(sc in next 10 sts, inc) x 3”`."""
    where = change.where if change.after else _NUMBERED.sub(r"old \g<0>", change.where)
    return f"{', '.join(one for one in (f'line {change.line}', where) if one)}: {_what(change)}"


def _what(change: Change) -> str:
    what, before, after = change.what, change.before, change.after
    if not before:
        return f"new, {_entry(after)}"
    if not after:
        if before.startswith("{"):
            return f"left out, {_entry(before)}"
        return " ".join(one for one in (what, before.strip("\"'"), "left out") if one)
    if what in _RUNS and change.where.endswith(f" {after}"):
        return f"was {what} {before}"
    if what == "count" and after.isdigit():
        return f"{after} stitches, before {before}"
    if what == "work" or not before[:1].isdigit():
        return f"{_called(what)}“{after}”, before “{before}”"
    return f"{what} {after}, before {before}"


def _called(what: str) -> str:
    return "" if what in ("work", "text", "note", "notes") else f"{what} "


def _entry(text: str) -> str:
    """A round as it is worked; anything else as it stands in the file."""
    found = _ENTRY.search(text)
    if found is None:
        return text
    count = f"; {found['count']} stitches" if found["count"] else ""
    return f"“{found['work']}”{count}"
