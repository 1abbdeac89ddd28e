"""A rule: a name, how serious it is, its page, and the function that finds it."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from ..pattern.finding import Finding, Location, Related, Severity, Suggestion
from .page import Page, read_page
from .subject import Met, Subject


@dataclass(frozen=True, slots=True)
class Words:
    """What a finding says. severity, location: None for the rule's own and for the place it was met in."""

    message: str
    working: str = ""
    suggestion: Suggestion | None = None
    related: tuple[Related, ...] = ()
    severity: Severity | None = None
    location: Location | None = None


Find = Callable[[Subject], Iterable[Finding]]


@dataclass(frozen=True, slots=True)
class Rule:
    """find: None where reading the file finds it: `pattern` and `notation` then bring the words.

    of_sound_work: it looks at what the stitches make as a whole, and is silent where an error leaves that in
    doubt.
    """

    name: str
    severity: Severity
    page: Page
    find: Find | None
    of_sound_work: bool = False

    @property
    def address(self) -> str:
        """Where its page stands on a collection's site, from the site's own address."""
        return f"rules/#{self.name}"


def rule(
    module: str, page: str | None, severity: Severity, find: Find | None = None, of_sound_work: bool = False
) -> Rule:
    """The rule of a module, named after it: `count_differs` is `count-differs`."""
    return Rule(name_of(module), severity, read_page(page or ""), find, of_sound_work)


def fit_rule(
    module: str, page: str | None, severity: Severity, words: Callable[[Met], Words], by_size: bool = True
) -> Rule:
    """A rule that puts into words what the fabric met while it worked the stitches.

    by_size: whether sizes can differ in it; then a finding says which of them met it.
    """
    name = name_of(module)

    def find(subject: Subject) -> Iterable[Finding]:
        for met in subject.met(name):
            yield finding(name, severity, met, words(met), by_size)

    return rule(module, page, severity, find)


def name_of(module: str) -> str:
    """`loopleaf.review.rules.count_differs` is `count-differs`."""
    return module.rpartition(".")[2].replace("_", "-")


def finding(name: str, severity: Severity, met: Met, words: Words, by_size: bool = True) -> Finding:
    """The finding for something met in the fabric."""
    return Finding(
        rule=name,
        severity=words.severity or severity,
        file=met.subject.source.file,
        location=words.location or met.location,
        message=met.in_size(words.message) if by_size else words.message,
        working=words.working,
        suggestion=words.suggestion,
        related=words.related,
        piece=met.piece_name,
        round=met.label,
    )


def told(
    module: str,
    severity: Severity,
    subject: Subject,
    location: Location,
    words: Words,
    piece: str = "",
    round: str = "",
) -> Finding:
    """A finding of a rule that looks at the pattern itself."""
    return Finding(
        rule=name_of(module),
        severity=words.severity or severity,
        file=subject.source.file,
        location=words.location or location,
        message=words.message,
        working=words.working,
        suggestion=words.suggestion,
        related=words.related,
        piece=piece,
        round=round,
    )
