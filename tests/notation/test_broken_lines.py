"""Right lines with a word lost, changed, misspelt or cut off: what is said, of which words, what is offered.

Whether a broken line still means something is the trade's affair (`sc in next` is nothing, `sc next st` is):
the kept texts show both.
"""

from collections.abc import Callable

import pytest

from loopleaf.notation import Problem, Vocabulary, parse

from .shown import shown
from .test_lines import CASES
from .trees import UK, US


def broken(line: str, turn: int) -> dict[str, list[str]]:
    """Ways of breaking it at words that go round with `turn`, some for each terms."""
    words = line.split(" ")
    at = turn % len(words)
    before, word, after = words[:at], words[at], words[at + 1 :]
    swapped = word[0] + word[2:3] + word[1:2] + word[3:]
    return {
        "US": [
            " ".join([*before, *after]),
            " ".join([*before, "blub", *after]),
            " ".join(words[: max(at, 1)]),
        ],
        "UK": [" ".join([*before, *after]), " ".join([*before, swapped, *after])],
    }


def said(line: str, problem: Problem) -> str:
    words = line[problem.span.start : problem.span.end]
    offered = ""
    if problem.suggestion:
        text, mend, applies = problem.suggestion
        offered = f" → {text} ({applies}{'' if mend is None else f', “{mend}”'})"
    return (
        f"    {problem.severity} {problem.rule} “{words}” at {problem.span.start}: {problem.message}{offered}"
    )


@pytest.mark.parametrize("vocabulary", [US, UK], ids=["US", "UK"])
def test_what_is_said(vocabulary: Vocabulary, golden: Callable[[str, str], None]) -> None:
    texts = []
    for turn, case in enumerate(CASES):
        for line in broken(case[vocabulary.terms.lower()], turn)[vocabulary.terms]:
            read = parse(line, vocabulary)
            texts.append(line)
            texts += [said(line, problem) for problem in read.problems]
            if read.line is not None:
                texts.append(f"    {shown(read.line.steps, line)}")
    golden(f"broken-{vocabulary.terms}.txt", "\n".join(texts) + "\n")
