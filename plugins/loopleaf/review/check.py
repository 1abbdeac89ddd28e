"""Reading, working and reviewing pattern files: bytes in, findings out."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace

from ..fabric import PatternWork, work_pattern
from ..measure import Measured, measure
from ..notation.problem import Problem
from ..pattern import Finding, Path, Source, load
from .addresses import Shelf
from .once import said_once
from .pictures import Beginning, unshowable
from .rules import RULES
from .rules.picture_too_coarse_for_print import too_coarse
from .subject import Subject
from .told import from_plan, from_problem


@dataclass(frozen=True, slots=True)
class Checked:
    """A file, read, worked and measured. work, measured: None where the file can't be read as a pattern.

    findings: sorted by place, then by rule.
    """

    source: Source
    work: PatternWork | None
    measured: Measured | None = None
    findings: list[Finding] = field(default_factory=list)

    @property
    def has_errors(self) -> bool:
        """Whether the pattern can't be published as it stands."""
        return any(finding.severity == "error" for finding in self.findings)


def check(data: bytes, file: str) -> Checked:
    """Check one file. file: its path as it is to be named in findings."""
    return review(load(data, file))


def review(source: Source) -> Checked:
    """Work a file that has been read, and apply every rule."""
    findings = list(source.findings)
    if source.pattern is None:
        return Checked(source, None, None, in_order(findings))
    work = work_pattern(source)
    measured = measure(work)
    subject = Subject(source, work, measured)
    findings += (from_problem(source, *problem) for problem in _problems(work))
    findings += (from_plan(source, piece, problem) for piece, problem in work.plans)
    for rule in (rule for rule in RULES if not rule.of_sound_work):
        findings += rule.find(subject) if rule.find else ()
    if not any(finding.severity == "error" for finding in findings):
        for rule in (rule for rule in RULES if rule.of_sound_work):
            findings += rule.find(subject) if rule.find else ()
    return Checked(source, work, measured, in_order(findings))


def with_pictures_seen(checked: Checked, beginning: Beginning) -> Checked:
    """The same file with what can be seen only in its folder: pictures that aren't there, aren't any, or are
    too coarse for print."""
    found = [*unshowable(checked.source, beginning), *too_coarse(checked.source, beginning)]
    return replace(checked, findings=in_order([*checked.findings, *found])) if found else checked


def check_collection(files: Iterable[tuple[str, bytes]]) -> list[Checked]:
    """Check the files of one collection, and what can be seen only among them."""
    shelf = Shelf()
    return [on_the_shelf(check(data, file), shelf) for file, data in files]


def on_the_shelf(checked: Checked, shelf: Shelf) -> Checked:
    """The same file with what is seen only beside those before it: that it would make a page of theirs."""
    found = shelf.place(checked.source) if checked.source.pattern is not None else []
    return replace(checked, findings=in_order([*checked.findings, *found])) if found else checked


def in_order(findings: Iterable[Finding]) -> list[Finding]:
    """Findings by place, then by rule; each mistake once."""
    return sorted(
        said_once(findings), key=lambda found: (found.file, found.location, found.rule, found.message)
    )


def _problems(work: PatternWork) -> Iterator[tuple[Path, Problem, str, str]]:
    """What reading the instruction lines had to say; a line worked several times says it once."""
    told: set[tuple[Path, Problem]] = set()
    for one in work.problems:
        if (one.path, one.problem) not in told:
            told.add((one.path, one.problem))
            yield one.path, one.problem, one.piece, one.round
