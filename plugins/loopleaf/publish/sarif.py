"""Findings as SARIF 2.1.0, the exchange form of checking tools (OASIS, 2020)."""

import json
from collections import Counter
from collections.abc import Iterable
from hashlib import sha256
from pathlib import PurePath
from typing import Any
from urllib.parse import quote

from .. import __version__
from ..pattern.finding import Finding, Location
from ..review import RULES, Checked
from ..review.once import everywhere
from ..review.rule import Rule

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"


def report(checked: Iterable[Checked], site_url: str = "", folder: PurePath | None = None) -> str:
    """The SARIF text. Files are gone through once, and none is kept.

    site_url: the collection's address, where its page of rules stands, "" for none. folder: the folder that
    the files' addresses are relative to, for paths given from the root.
    """
    numbers = {rule.name: number for number, rule in enumerate(RULES)}
    driver: dict[str, Any] = {
        "name": "Loopleaf",
        "version": __version__,
        "rules": [_rule(rule, site_url) for rule in RULES],
    }
    if site_url:
        driver["informationUri"] = site_url
    found = [(one.source.file, one.findings) for one in checked]
    run = {
        "tool": {"driver": driver},
        "columnKind": "unicodeCodePoints",
        "artifacts": [{"location": {"uri": uri(file, folder)}} for file, _ in found],
        "results": _results([one for _, findings in found for one in findings], numbers, folder),
    }
    return (
        json.dumps({"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}, ensure_ascii=False, indent=2)
        + "\n"
    )


def uri(file: str, folder: PurePath | None = None) -> str:
    """A file's path as an address: `patterns/tide-cloth.yml`; `stdin` for standard input."""
    if file == "-":
        return "stdin"
    path = PurePath(file)
    if folder and path.is_relative_to(folder):
        path = path.relative_to(folder)
    return path.as_uri() if path.is_absolute() else quote(path.as_posix())


def _rule(rule: Rule, site_url: str) -> dict[str, Any]:
    page = rule.page
    entry: dict[str, Any] = {
        "id": rule.name,
        "shortDescription": {"text": page.summary},
        "fullDescription": {"text": f"{page.what} {page.why}"},
        "help": {"text": f"{page.what}\n\n{page.why}\n\nWrong:\n{page.wrong}\n\nRight:\n{page.right}"},
        "defaultConfiguration": {"level": rule.severity},
    }
    if site_url:
        entry["helpUri"] = site_url + rule.address
    return entry


def _results(
    findings: Iterable[Finding], numbers: dict[str, int], folder: PurePath | None
) -> list[dict[str, Any]]:
    """Every finding; of those that say the same of the same round each has a fingerprint of its own."""
    seen: Counter[str] = Counter()
    results = []
    for finding in findings:
        mark = _fingerprint(finding, folder)
        seen[mark] += 1
        results.append(_result(finding, numbers, folder, f"{mark}:{seen[mark]}"))
    return results


def _result(
    finding: Finding, numbers: dict[str, int], folder: PurePath | None, fingerprint: str
) -> dict[str, Any]:
    text = finding.message + (f" {finding.working}" if finding.working else "")
    result: dict[str, Any] = {
        "ruleId": finding.rule,
        "ruleIndex": numbers[finding.rule],
        "level": finding.severity,
        "message": {"text": text},
        "locations": [_place(uri(finding.file, folder), finding.location)],
        "partialFingerprints": {"loopleaf/v1": fingerprint},
    }
    if finding.related:
        result["relatedLocations"] = [
            {
                "id": number,
                **_place(uri(finding.file, folder), other.location),
                "message": {"text": other.message},
            }
            for number, other in enumerate(finding.related, 1)
        ]
    suggestion = finding.suggestion
    if suggestion and suggestion.replacement is not None:
        result["fixes"] = [
            {
                "description": {"text": suggestion.text},
                "artifactChanges": [
                    {
                        "artifactLocation": {"uri": uri(finding.file, folder)},
                        "replacements": [
                            {
                                "deletedRegion": _region(at),
                                "insertedContent": {"text": suggestion.replacement},
                            }
                            for at in everywhere(finding)
                        ],
                    }
                ],
            }
        ]
    return result


def _place(address: str, at: Location) -> dict[str, Any]:
    return {"physicalLocation": {"artifactLocation": {"uri": address}, "region": _region(at)}}


def _region(at: Location) -> dict[str, int]:
    return {
        "startLine": at.line,
        "startColumn": at.column,
        "endLine": at.end_line,
        "endColumn": at.end_column,
    }


def _fingerprint(finding: Finding, folder: PurePath | None) -> str:
    """The same finding in a file whose lines have moved: rule, piece, round and words, not the line."""
    parts = "\n".join(
        (uri(finding.file, folder), finding.rule, finding.piece, finding.round, finding.message)
    )
    return sha256(parts.encode()).hexdigest()[:32]
