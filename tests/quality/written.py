"""Written lines read back: every line that any pattern publishes, and generated trees.

`python -m tests.quality.written` (part of `make long`) tries 100,000 generated trees and writes the figures.
"""

import argparse
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from hypothesis import HealthCheck, given, settings
from hypothesis import seed as seeded

from loopleaf.notation import Vocabulary, parse, write
from loopleaf.notation.tree import Line
from loopleaf.review import check
from tests.notation.trees import UK, US, lines

from .collected import by_hand, right_patterns
from .figures import write_section

Style = tuple[Literal["US", "UK"], bool]
STYLES: tuple[Style, ...] = (("US", False), ("US", True), ("UK", False), ("UK", True))


@dataclass(frozen=True, slots=True)
class Otherwise:
    """A line that reads back as another: whose it is, in which style, and how it was written."""

    whose: str
    style: Style
    text: str


def reads_otherwise(whose: str, line: Line, style: Style, vocabulary: Vocabulary) -> Otherwise | None:
    """None where the line, written in that style, reads back as the same tree."""
    terms, full = style
    vocabulary = replace(vocabulary, terms=terms)
    text = write(line, terms, full, vocabulary)
    read = parse(text, vocabulary)
    return None if read.line == line and not read.problems else Otherwise(whose, style, text)


def published() -> Iterator[tuple[str, Line, Vocabulary]]:
    """Every different line that the right patterns publish, with whose it is."""
    files = [(name, text.encode()) for name, text in right_patterns().items()]
    files += [(name, data) for name, data, _ in by_hand()]
    for name, data in files:
        checked = check(data, f"{name}.yml")
        if checked.work is None:
            continue
        seen: set[Line] = set()
        for piece in checked.work.pieces:
            for round in piece.rounds:
                line = round.settled or round.line
                if line is not None and line not in seen:
                    seen.add(line)
                    yield f"{name} {piece.name} {round.plan.label}", line, checked.work.vocabulary


def of_the_published() -> tuple[int, list[Otherwise]]:
    """How many lines were written and read back (each style is one), and those that read otherwise."""
    tried = 0
    found: list[Otherwise] = []
    for whose, line, vocabulary in published():
        for style in STYLES:
            tried += 1
            other = reads_otherwise(whose, line, style, vocabulary)
            found += [other] if other else []
    return tried, found


def of_generated(number: int, seed: int) -> tuple[int, list[Otherwise]]:
    """The same of generated trees, a quarter of them in each style."""
    each = number // len(STYLES)
    found: list[Otherwise] = []
    for at, style in enumerate(STYLES):
        vocabulary = US if style[0] == "US" else UK
        for line in _generated(each, seed + at):
            other = reads_otherwise("generated", line, style, vocabulary)
            found += [other] if other else []
    return each * len(STYLES), found


def _generated(number: int, seed: int) -> list[Line]:
    made: list[Line] = []

    @seeded(seed)
    @settings(max_examples=number, deadline=None, database=None, suppress_health_check=list(HealthCheck))
    @given(line=lines())
    def make(line: Line) -> None:
        made.append(line)

    make()
    return made[:number]


def report(lines: int, trees: int, wrong: list[Otherwise], seed: int) -> str:
    """The figures as a section of README.md."""
    said = (
        f"{lines:,} lines (every different one of demo, of the published passages that agree in print and "
        f"of the rounds worked by hand, in US and UK terms, short and in full) and {trees:,} generated trees "
        f"(seed {seed}) were written and read back: {len(wrong)} read otherwise."
    )
    listed = [f"- {one.whose}, {one.style[0]}: `{one.text}`" for one in wrong[:20]]
    return "\n".join([said, *listed])


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--number", type=int, default=100_000)
    parser.add_argument("--seed", type=int, default=1)
    given_ = parser.parse_args()
    written, wrong = of_the_published()
    trees, otherwise = of_generated(given_.number, given_.seed)
    text = report(written, trees, wrong + otherwise, given_.seed)
    print(text)
    write_section("Written lines", text)
    raise SystemExit(bool(wrong or otherwise))


if __name__ == "__main__":
    main()
