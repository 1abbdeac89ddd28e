"""Findings as MkDocs says them: one record each, on a logger that a strict build counts."""

from collections.abc import Sequence
from logging import ERROR, INFO, WARNING, LoggerAdapter
from typing import TYPE_CHECKING, Any

from .kept import Worked

if TYPE_CHECKING:
    from ..pattern.finding import Finding

SHOWN_PER_FILE = 20
_LEVELS = {"error": ERROR, "warning": WARNING, "note": INFO}


def told(log: "LoggerAdapter[Any]", patterns: Sequence[Worked], folder: str) -> None:
    """Says every finding; past twenty in one file the rest is counted, at the level of its worst.

    folder: of the collection, as the files are to be named from where the reader stands.
    """
    for worked in patterns:
        findings = worked.findings
        for finding in findings[:SHOWN_PER_FILE]:
            log.log(_LEVELS[finding.severity], "%s", _said(finding, folder))
        rest = findings[SHOWN_PER_FILE:]
        if rest:
            level = max(_LEVELS[finding.severity] for finding in rest)
            more = f"{len(rest)} more finding{'' if len(rest) == 1 else 's'}"
            log.log(level, "%s: %s; `loopleaf check` shows them.", f"{folder}/{findings[0].file}", more)


def _said(finding: "Finding", folder: str) -> str:
    at = finding.location
    lines = [f"{folder}/{finding.file}:{at.line}:{at.column}: {finding.message} ({finding.rule})"]
    if finding.working:
        lines.append(f"    {finding.working}")
    if finding.suggestion:
        lines.append(f"    {finding.suggestion.text}")
    return "\n".join(lines)
