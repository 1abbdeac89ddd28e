"""What the notation says about a text, and the setting out about the rounds, as findings."""

from dataclasses import replace

from ..notation.problem import Problem
from ..pattern import Applies, Finding, Path, PlanProblem, Severity, Source, Suggestion

_SEVERITIES: dict[str, Severity] = {"error": "error", "warning": "warning", "note": "note"}
_APPLIES: dict[str, Applies] = {"safe": "safe", "likely": "likely", "fill-in": "fill-in"}


def from_problem(source: Source, path: Path, problem: Problem, piece: str = "", round: str = "") -> Finding:
    """The finding for a problem in the text at a path of the file."""
    return Finding(
        rule=problem.rule,
        severity=_SEVERITIES[problem.severity],
        file=source.file,
        location=source.locate(path, problem.span.start, problem.span.end),
        message=problem.message,
        working=problem.working,
        suggestion=_in_the_file(source, path, problem),
        piece=piece,
        round=round,
    )


def from_plan(source: Source, piece: str, problem: PlanProblem) -> Finding:
    """The finding for a problem of how a piece's rounds are numbered or derived."""
    return Finding(
        rule=problem.rule,
        severity=problem.severity,
        file=source.file,
        location=source.locate(problem.path),
        message=problem.message,
        working=problem.working,
        suggestion=_suggestion(problem.suggestion),
        piece=piece,
        round=problem.round,
    )


def _in_the_file(source: Source, path: Path, problem: Problem) -> Suggestion | None:
    """The suggestion, with its replacement as the file would hold it there."""
    told = _suggestion(problem.suggestion)
    if told is None or told.replacement is None:
        return told
    return replace(told, replacement=source.written(path, told.replacement))


def _suggestion(told: tuple[str, str | None, str] | None) -> Suggestion | None:
    return Suggestion(told[0], told[1], _APPLIES[told[2]]) if told else None
