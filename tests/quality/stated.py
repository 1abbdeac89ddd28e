"""The same right patterns with every count stated by kind: what a mistake could contradict then.

Each round that has a count gets the one that its stitches make, kind by kind; of the mistakes made in it that
contradicted nothing before, some do now. `python -m tests.quality.stated` writes the figures to README.md.
"""

import argparse
import random
from collections import Counter
from collections.abc import Iterator
from datetime import UTC, datetime

from loopleaf.fabric import RoundWork
from loopleaf.review import Checked, check
from loopleaf.review.names import tally as written
from loopleaf.review.subject import Subject

from . import faults
from .collected import right_patterns
from .figures import write_section
from .mutants import Mutant, mutants
from .sites import File, Site, read


def in_full(name: str, text: str) -> str:
    """A right pattern's text with the counts of its rounds by kind, where they were a plain number."""
    file = read(name, text)
    checked = check(text.encode(), name)
    counts = [site for site in file.sites if site.field == "count" and site.value.isdigit()]
    changes = [(site, by_kind) for site in counts if (by_kind := _by_kind(checked, site))]
    return file.with_values(*changes) if changes else text


def _by_kind(checked: Checked, site: Site) -> str:
    """The count by kind of the rounds that a count is for; "" where they differ, or by size."""
    assert checked.work is not None
    assert checked.measured is not None
    work = checked.work.piece(site.piece)
    subject = Subject(checked.source, checked.work, checked.measured)
    rounds = [one for one in work.rounds if one.plan.label in site.rounds] if work else []
    told = {_told(one, subject) for one in rounds}
    return told.pop() if len(told) == 1 else ""


def _told(round: RoundWork, subject: Subject) -> str:
    size = round.sizes[0] if len(round.sizes) == 1 else None
    return written(size.makes, subject) if size is not None and size.makes else ""


def pairs() -> Iterator[tuple[Mutant, Mutant]]:
    """The same mistake in a line, in the pattern as it is and in the one with all counts by kind."""
    for name, text in sorted(right_patterns().items()):
        full = in_full(name, text)
        if full == text:
            continue
        theirs = {_mark(one): one for one in _in_lines(read(name, full))}
        for one in _in_lines(read(name, text)):
            if _mark(one) in theirs:
                yield one, theirs[_mark(one)]


def _in_lines(file: File) -> Iterator[Mutant]:
    works = {site.value for site in file.sites if site.field == "work"}
    return (one for one in mutants(file) if one.was in works and one.kind != "two rounds exchanged")


def _mark(one: Mutant) -> tuple[str, str, tuple[str, ...], str]:
    return one.kind, one.piece, one.rounds, one.now


def report(number: int, seed: int) -> str:
    """How many of a seeded sample of mistakes contradict nothing, before and after, kind by kind."""
    every = list(pairs())
    chosen = random.Random(seed).sample(every, min(number, len(every)))
    before: Counter[str] = Counter()
    after: Counter[str] = Counter()
    for one, other in chosen:
        if faults.try_out(one).sort == "different":
            before[one.kind] += 1
            after[one.kind] += faults.try_out(other).sort == "different"
    lines = [
        f"{len(chosen)} mistakes in lines whose counts can be stated by kind, drawn with seed {seed}, "
        f"{datetime.now(UTC).date()} (`python -m tests.quality.stated`). {before.total()} of them contradict "
        f"nothing as the patterns stand; with all counts by kind {after.total()} still don't.",
        "",
        "| kind | contradict nothing | with counts by kind |",
        "|---|---|---|",
    ]
    lines += [f"| {kind} | {many} | {after[kind]} |" for kind, many in before.most_common() if many > 1]
    return "\n".join(lines)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--number", type=int, default=3000)
    parser.add_argument("--seed", type=int, default=1)
    given = parser.parse_args()
    text = report(given.number, given.seed)
    print(text)
    write_section("Faults that counts by kind would show", text)


if __name__ == "__main__":
    main()
