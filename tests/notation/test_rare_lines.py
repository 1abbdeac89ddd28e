"""The lines of rare_lines.txt: what each of them means, is printed as, or can't be read for."""

from collections.abc import Callable
from pathlib import Path

import pytest

from loopleaf.notation import Vocabulary, parse, write

from .shown import shown
from .test_broken_lines import said
from .trees import UK, US

LINES = [
    (UK, line.removeprefix("UK: ")) if line.startswith("UK: ") else (US, line)
    for line in (Path(__file__).parent / "rare_lines.txt").read_text("utf-8").splitlines()
    if line and not line.startswith("# ")
]


def test_what_they_mean(golden: Callable[[str, str], None]) -> None:
    texts = []
    for vocabulary, line in LINES:
        read = parse(line, vocabulary)
        texts.append(f"{vocabulary.terms}: {line}")
        texts += [said(line, problem) for problem in read.problems]
        if read.line is not None:
            texts.append(f"    {shown(read.line.steps, line)}")
            texts.append(f"    = {write(read.line, vocabulary.terms, False, vocabulary)}")
    golden("rare-lines.txt", "\n".join(texts) + "\n")


@pytest.mark.parametrize(
    "line", ["sh", "sh × 3", "sh around", "sh in next st", "sh in next 3 sts", "sh to last 2 sts"]
)
def test_a_place_that_nobody_wrote_is_not_printed(line: str) -> None:
    """The author's stitch over several places goes on where it stands: with a place it would be another."""
    tree = parse(line, US).line
    assert tree is not None
    assert write(tree, "US", False, US) == line


@pytest.mark.parametrize(("vocabulary", "line"), LINES, ids=lambda one: getattr(one, "terms", one))
def test_what_is_printed_means_the_same(vocabulary: Vocabulary, line: str) -> None:
    tree = parse(line, vocabulary).line
    for other, full in ((US, False), (US, True), (UK, False), (UK, True)):
        if tree is None:  # can't be read, so nothing is printed
            continue
        printed = write(tree, other.terms, full, other)
        read = parse(printed, other)
        assert read.line == tree, printed
        assert not any(problem.severity == "error" for problem in read.problems)
