"""Findings and worked rounds as JSON: the contract for other programs, one object a file."""

import json
from collections.abc import Iterable, Mapping, Sequence
from textwrap import indent
from typing import Any

from ..alter import settings
from ..alter.height import adjustables
from ..fabric import PieceWork, RoundWork
from ..pattern.finding import Finding
from ..review import Checked, rule_named
from ..review.names import Key, kind_name
from ..review.subject import Subject
from .json_measures import (
    adjustable,
    by_size,
    file_measures,
    heights,
    piece_ball,
    piece_marks,
    piece_shape,
    piece_size,
    piece_yarn,
    round_measures,
)


def report(checked: Iterable[Checked], site_url: str = "") -> str:
    """The JSON text; the same input gives the same bytes. Files are gone through once, and none is kept."""
    objects = (json.dumps(pattern_object(one, site_url), ensure_ascii=False, indent=2) for one in checked)
    listed = ",\n".join(indent(text, "  ") for text in objects)
    return f"[\n{listed}\n]\n" if listed else "[]\n"


def pattern_object(checked: Checked, site_url: str = "") -> dict[str, Any]:
    """One file's object: `pattern`, `pieces`, the measures where the file could be worked, `findings`."""
    found: dict[str, Any] = {"pattern": checked.source.file, "pieces": []}
    if checked.work is not None and checked.measured is not None:
        subject = Subject(checked.source, checked.work, checked.measured)
        parts = adjustables(checked)
        found["pieces"] = [
            _piece(piece, subject) | adjustable([one for one in parts if one.piece == piece.name])
            for piece in checked.work.pieces
        ]
        found |= file_measures(checked.measured) | heights(settings(checked))
    found["findings"] = [finding_object(finding, site_url) for finding in checked.findings]
    return found


def finding_object(finding: Finding, site_url: str = "") -> dict[str, Any]:
    """A finding with plain values only; `url` is its rule's page, null without a site."""
    at = finding.location
    suggestion = finding.suggestion
    return {
        "rule": finding.rule,
        "severity": finding.severity,
        "file": finding.file,
        "line": at.line,
        "column": at.column,
        "end_line": at.end_line,
        "end_column": at.end_column,
        "piece": finding.piece,
        "round": finding.round,
        "message": finding.message,
        "working": finding.working,
        "suggestion": suggestion
        and {"text": suggestion.text, "replacement": suggestion.replacement, "applies": suggestion.applies},
        "related": [
            {
                "file": finding.file,
                "line": other.location.line,
                "column": other.location.column,
                "end_line": other.location.end_line,
                "end_column": other.location.end_column,
                "message": other.message,
            }
            for other in finding.related
        ],
        "url": site_url + rule_named(finding.rule).address if site_url else None,
    }


def _piece(piece: PieceWork, subject: Subject) -> dict[str, Any]:
    measure = subject.measured.piece(piece.name)
    found: dict[str, Any] = {"name": piece.name}
    if measure is not None:
        found |= piece_size(measure)
    if measure is not None and any(measure.shape):
        found["shape"] = piece_shape(measure)
        found |= piece_ball(measure)
    found |= piece_marks(subject.measured, piece.name) | piece_yarn(subject.measured, piece.name)
    found["rounds"] = [
        _round(round, subject) | (round_measures(measure, at) if measure else {})
        for at, round in enumerate(piece.rounds)
    ]
    return found


def _round(round: RoundWork, subject: Subject) -> dict[str, Any]:
    # A line that can't be read makes nothing that could be counted, rather than nought stitches.
    sizes = round.sizes if round.line is not None else [None] * len(round.sizes)
    return {
        "label": round.plan.label,
        "uses": by_size([size and size.uses for size in sizes]),
        "makes": _makes([size.makes if size else {} for size in sizes], subject),
        "count": by_size([size and size.count for size in sizes]),
        "stated": round.plan.stated,
    }


def _makes(sizes: Sequence[Mapping[Key, int]], subject: Subject) -> dict[str, Any]:
    """Plain kinds by their short name in the file's terms, each with its number, or with one a size."""
    kinds = dict.fromkeys(kind for size in sizes for kind in size)
    return {_name(kind, subject): by_size([size.get(kind, 0) for size in sizes]) for kind in kinds}


def _name(kind: Key, subject: Subject) -> str:
    """`dc`; a space is `ch-2 sp` in either country's terms, and a picot `picot` whatever the author calls it,
    so that programs find them.
    """
    word, length = kind if isinstance(kind, tuple) else kind.partition(" ")[::2]
    if word == "picot":
        return word
    return f"ch-{length} sp" if word == "space" else kind_name(kind, subject)
