"""One mistake, one finding: what only says the same again is folded into the first."""

from collections.abc import Iterable
from dataclasses import replace

from ..pattern import Finding, Location, Related

_ALIKE = "term-of-the-other-system"
"""A name of the other system usually goes through a whole file: one finding a name, with all its places."""

_HERE_TOO = "it stands here too"


def everywhere(finding: Finding) -> tuple[Location, ...]:
    """Every stretch that a finding's suggestion is for: its own, and those that were folded into it."""
    others = {other.location: None for other in finding.related if other.message == _HERE_TOO}
    return (finding.location, *others)


def said_once(findings: Iterable[Finding]) -> list[Finding]:
    """The findings without those that repeat one: a stretch in a later round, a name in another place."""
    kept: dict[object, Finding] = {}
    others: dict[object, list[Related]] = {}
    for finding in findings:
        key: object = (finding.rule, finding.location) if finding.round else finding
        if finding.rule == _ALIKE:
            key = (finding.rule, finding.message)
        if key not in kept:
            kept[key] = finding
        elif finding.location != kept[key].location:
            others.setdefault(key, []).append(Related(finding.location, _HERE_TOO))
    return [replace(one, related=(*one.related, *others.get(key, ()))) for key, one in kept.items()]
