"""Mistakes made on purpose, and how many of them the review finds.

A mutant is a fault when the little model finds that it contradicts something that the file states, or when
the line can't be read any more. Every other mutant is valid, only different: another pattern. `make faults`
tries them all and writes the figures to README.md.
"""

import argparse
import json
import multiprocessing
import random
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import asdict, dataclass
from datetime import UTC, datetime
from functools import cache
from itertools import islice
from pathlib import Path

from loopleaf.pattern import Finding
from loopleaf.review import check

from .collected import right_patterns
from .figures import write_section
from .model import judge
from .mutants import Mutant, mutants
from .sites import read


@dataclass(frozen=True)
class Outcome:
    """What model and review say of one mutant.

    sort: `fault` (contradicts the file), `unreadable`, `different` (valid), `beyond` (the model can't say).
    why: the model's word for it. found: rules of the new errors and warnings; errors: how many are errors.
    in_round: one of them stands at the mistake's round or where it first contradicts, or the mistake is of
    no round.
    """

    kind: str
    file: str
    was: str
    now: str
    sort: str
    why: str
    at: str
    found: tuple[str, ...]
    places: tuple[str, ...]
    in_round: bool
    errors: int

    @property
    def said_once(self) -> bool:
        """One finding; two rounds exchanged are two rounds that are wrong."""
        return len(self.found) <= (2 if self.kind == "two rounds exchanged" else 1)

    @property
    def is_fault(self) -> bool:
        return self.sort in ("fault", "unreadable")


def all_mutants() -> Iterator[Mutant]:
    """Every mutant of every right pattern, in a fixed order."""
    for name, text in sorted(right_patterns().items()):
        yield from mutants(read(name, text))


def sample(number: int, seed: int) -> list[Mutant]:
    """So many of all mutants, drawn by the seed, in their order; all of them for 0."""
    mutants_ = list(all_mutants())
    if not number:
        return mutants_
    drawn = random.Random(seed).sample(range(len(mutants_)), number)
    return [mutants_[at] for at in sorted(drawn)]


def try_out(mutant: Mutant) -> Outcome:
    """One mutant through the model and through the review."""
    data = mutant.text.encode()
    verdict = judge(data, mutant.file)
    wrong = verdict.wrong
    sort = "beyond" if verdict.cannot_say else "different"
    if wrong:
        sort = "unreadable" if wrong[0].what == "reading" else "fault"
    new = list(_new(check(data, mutant.file).findings, mutant.file))
    where = {(mutant.piece, label) for label in mutant.rounds} | {(one.piece, one.round) for one in wrong}
    anywhere = not mutant.rounds and not any(one.round for one in wrong)
    hit = anywhere or any((one.piece, one.round) in where for one in new)
    return Outcome(
        *(mutant.kind, mutant.file, mutant.was, mutant.now, sort),
        why=wrong[0].why if wrong else verdict.cannot_say,
        at=f"{wrong[0].piece} {wrong[0].round}" if wrong else "",
        found=tuple(one.rule for one in new),
        places=tuple(f"{one.piece} {one.round}" for one in new),
        in_round=hit,
        errors=sum(one.severity == "error" for one in new),
    )


@cache
def _before(file: str) -> Counter[tuple[str, str]]:
    """What is said of the right pattern already."""
    findings = check(right_patterns()[file].encode(), file).findings
    return Counter((one.rule, one.message) for one in findings)


def _new(findings: Iterable[Finding], file: str) -> Iterator[Finding]:
    """Errors and warnings that weren't there before."""
    before = _before(file).copy()
    for one in findings:
        said = (one.rule, one.message)
        if before[said]:
            before[said] -= 1
        elif one.severity != "note":
            yield one


def outcomes(chosen: Iterable[Mutant], workers: int) -> Iterator[Outcome]:
    """Each mutant's outcome, in order, from worker processes (none for one worker)."""
    if workers <= 1:
        yield from map(try_out, chosen)
        return
    with ProcessPoolExecutor(workers, multiprocessing.get_context("spawn")) as pool:
        yield from pool.map(try_out, chosen, chunksize=32)


@dataclass
class Figures:
    """The tally over many outcomes."""

    tried: int
    faults: int
    found: int
    in_round: int
    just_one: int
    beyond: int
    different: Counter[str]
    disputed: list[Outcome]
    missed: list[Outcome]
    elsewhere: list[Outcome]
    several: list[Outcome]

    def share(self, number: int, of: int) -> float:
        return number / of if of else 1.0


def tally(tried: Sequence[Outcome]) -> Figures:
    faults = [one for one in tried if one.is_fault]
    found = [one for one in faults if one.found]
    return Figures(
        tried=len(tried),
        faults=len(faults),
        found=len(found),
        in_round=sum(one.in_round for one in found),
        just_one=sum(one.said_once for one in found),
        beyond=sum(one.sort == "beyond" for one in tried),
        different=Counter(one.kind for one in tried if one.sort == "different" and not one.errors),
        disputed=[one for one in tried if one.sort == "different" and one.errors],
        missed=[one for one in faults if not one.found],
        elsewhere=[one for one in found if not one.in_round],
        several=[one for one in found if not one.said_once],
    )


def report(figures: Figures, outcomes_: Sequence[Outcome], how: str) -> str:
    """The figures as a section of README.md. how: which of all mutants were tried, and when."""
    kinds = sorted({one.kind for one in outcomes_})
    share = figures.share
    lines = [
        f"{figures.tried} files, each with one mistake of {len(kinds)} kinds, made in "
        f"{len({one.file for one in outcomes_})} right patterns (`make faults`); {how}.",
        "",
        "| | number | share |",
        "|---|---|---|",
        f"| faults: the little model says that something contradicts | {figures.faults} | |",
        f"| of these found by the review | {figures.found} | {share(figures.found, figures.faults):.2%} |",
        f"| found in the right round | {figures.in_round} | {share(figures.in_round, figures.found):.2%} |",
        f"| found once (two rounds exchanged: once each) | {figures.just_one} "
        f"| {share(figures.just_one, figures.found):.2%} |",
        f"| valid but different | {sum(figures.different.values())} | |",
        f"| disputed: an error where the model sees none | {len(figures.disputed)} | |",
        f"| that the model can't judge | {figures.beyond} | |",
        "",
        "Kind by kind (a fault missed is a mistake that the review should have found):",
        "",
        "| kind | faults | missed | valid but different | disputed |",
        "|---|---|---|---|---|",
    ]
    missed = Counter(one.kind for one in figures.missed)
    disputed = Counter(one.kind for one in figures.disputed)
    faults = Counter(one.kind for one in outcomes_ if one.is_fault)
    for kind in kinds:
        numbers = (faults[kind], missed[kind], figures.different[kind], disputed[kind])
        lines.append(f"| {kind} | " + " | ".join(str(number) for number in numbers) + " |")
    return "\n".join(lines)


def listed(outcomes_: Iterable[Outcome], number: int) -> Iterator[str]:
    """A few outcomes in words, for reading."""
    for one in islice(outcomes_, number):
        said = ", ".join(f"{rule} ({place})" for rule, place in zip(one.found, one.places, strict=True))
        yield f"{one.file}: {one.kind}\n    was {one.was}\n    now {one.now}"
        yield f"    model {one.sort} {one.at}: {one.why}\n    review {said or 'nothing'}"


def kept(outcomes_: Iterable[Outcome], file: Path) -> Iterator[Outcome]:
    """The outcomes, each written to the file as it comes: a long run can be read while it goes on."""
    with file.open("w", encoding="utf-8") as lines:
        for one in outcomes_:
            lines.write(json.dumps(asdict(one), ensure_ascii=False) + "\n")
            yield one


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--sample", type=int, default=0, help="try so many mutants only, drawn by the seed")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--keep", type=Path, help="write each outcome to this file, one a line")
    parser.add_argument("--list", type=int, default=0, help="print so many of each sort that went wrong")
    parser.add_argument("--no-write", action="store_true", help="leave README.md as it is")
    given = parser.parse_args()
    trying = outcomes(sample(given.sample, given.seed), given.workers)
    tried = list(kept(trying, given.keep) if given.keep else trying)
    figures = tally(tried)
    drawn = f"a sample drawn with seed {given.seed}" if given.sample else "all that there are, no seed"
    text = report(figures, tried, f"{drawn}, {datetime.now(UTC).date()}")
    print(text.split("\n\nKind by kind")[0])
    for name in ("missed", "disputed", "elsewhere", "several"):
        if given.list:
            print(f"\n== {name}", *listed(getattr(figures, name), given.list), sep="\n")
    if not given.no_write:
        write_section("Faults", text)


if __name__ == "__main__":
    main()
