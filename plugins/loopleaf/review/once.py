"""One mistake, one finding: what only says the same again is folded into the first."""

from collections.abc import Iterable
from dataclasses import replace

from ..pattern import Finding, Location, Related

_ALIKE = frozenset({"term-of-the-other-system", "special-stitch-undefined"})
"""A name of the other system, or one that nothing explains, usually goes through a whole file: one finding a
name, with all its places."""

_ONE_WITHIN = frozenset({"not-yaml", "too-large", "wrong-type"})
"""What is wrong with a value shows in what it stands in too: a quote that isn't closed hides its bracket."""

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
        if finding.rule in _ALIKE:
            key = (finding.rule, finding.message)
        if key not in kept:
            kept[key] = finding
        elif finding.location != kept[key].location:
            others.setdefault(key, []).append(Related(finding.location, _HERE_TOO))
    told = [replace(one, related=(*one.related, *others.get(key, ()))) for key, one in kept.items()]
    return [one for one in told if not any(_only_shows(one, other) for other in told)]


def _only_shows(outer: Finding, inner: Finding) -> bool:
    """Whether a finding is about a stretch in which another of its rule names a smaller one."""
    if outer.rule not in _ONE_WITHIN or inner.rule != outer.rule or inner.location == outer.location:
        return False
    a, b = outer.location, inner.location
    begins, ends = (
        (a.line, a.column) <= (b.line, b.column),
        (b.end_line, b.end_column) <= (a.end_line, a.end_column),
    )
    return outer.file == inner.file and begins and ends
