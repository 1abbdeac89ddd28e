"""The lines of mistakes.yml: what is said of them, of exactly which words, and that an offered mending
mends.
"""

from pathlib import Path

import pytest

from loopleaf.notation import parse
from tests.yaml_text import read_yaml

from .trees import UK, US

CASES = read_yaml((Path(__file__).parent / "mistakes.yml").read_text())


def _said(line, problem):
    said = {
        "rule": problem.rule,
        "words": line[problem.span.start : problem.span.end],
        "at": problem.span.start,
    }
    said["message"] = problem.message
    if problem.severity != "error":
        said["severity"] = problem.severity
    if problem.suggestion:
        text, mend, applies = problem.suggestion
        said |= {"suggestion": text, "applies": applies}
        if mend is not None:
            said["mend"] = mend
    return said


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["line"])
def test_what_is_said(case):
    line = case["line"]
    read = parse(line, UK if case.get("terms") == "UK" else US)
    assert [_said(line, p) for p in read.problems] == case["problems"]
    assert (read.line is None) == any(p.severity == "error" for p in read.problems)


MENDED = [(case, at) for case in CASES for at, p in enumerate(case["problems"]) if "mend" in p]


@pytest.mark.parametrize(("case", "at"), MENDED, ids=lambda v: v["line"] if isinstance(v, dict) else str(v))
def test_an_offered_mending_takes_its_mistake_away(case, at):
    vocabulary = UK if case.get("terms") == "UK" else US
    before = parse(case["line"], vocabulary)
    problem = before.problems[at]
    mended = case["line"][: problem.span.start] + problem.suggestion[1] + case["line"][problem.span.end :]
    after = parse(mended, vocabulary)
    assert len(after.problems) < len(before.problems)
    if problem.suggestion[2] == "safe":
        assert after.line == before.line


def test_two_mistakes_in_a_line_are_two_problems_and_what_follows_is_still_read():
    read = parse("hdcc in next st, sc in next st, blub, tr in nxt st", US)
    assert [p.span.start for p in read.problems] == [0, 32, 44]


def test_an_unclear_bracket_with_a_mistake_inside_is_said_once():
    assert [p.message for p in parse("(sc in nxt st, inc)", US).problems] == [
        "“nxt” can't be read here; expected “next st”, “next ch-2 sp”, “each st around” or “same st”."
    ]


def test_no_more_than_four_things_are_named_and_no_jargon():
    for case in CASES:
        for problem in case["problems"]:
            assert problem["message"].split("expected")[-1].count("“") <= 4 + problem["message"].count("“X")
            words = problem["message"].lower().split()
            assert not {"token", "parse", "node", "illegal", "invalid", "syntax"} & set(words)
