"""Worked examples out of crochet books printed before 1930, run through the check.

The passages, their books and their printed counts stand in worked_examples.yml. What agrees with itself
in print must come out, with the printed counts; what contradicts itself must be found, in the round where
it does.
"""

from functools import cache
from pathlib import Path
from typing import Any

import pytest

from loopleaf.fabric import RoundWork
from loopleaf.notation.tree import Repeat
from loopleaf.review import Checked, check
from tests.yaml_text import read_yaml, written_yaml

DATA: dict[str, Any] = read_yaml((Path(__file__).parent / "worked_examples.yml").read_text(encoding="utf-8"))
EXAMPLES: list[dict[str, Any]] = DATA["examples"]


def name_of(example: dict[str, Any]) -> str:
    return f"{example['passage']} {example['place']}"


RIGHT = [example for example in EXAMPLES if example["agrees"]]
WRONG = [example for example in EXAMPLES if not example["agrees"]]
SETTLED = [example for example in EXAMPLES if "settles" in example]


@cache
def worked(name: str) -> Checked:
    """The example as a pattern file in UK terms, checked."""
    example = next(example for example in EXAMPLES if name_of(example) == name)
    file: dict[str, Any] = {
        "title": example["place"],
        "designer": DATA["books"][example["book"]],
        "terms": "UK",
        "gauge": "not critical",
        **{
            key: example[key]
            for key in ("turning chains", "chain spaces", "special stitches")
            if key in example
        },
        "pieces": {"example": example["piece"]},
    }
    return check(written_yaml(file, allow_unicode=True).encode(), "example.yml")


def rounds_of(example: dict[str, Any]) -> list[RoundWork]:
    work = worked(name_of(example)).work
    assert work is not None
    return work.pieces[0].rounds


def errors(example: dict[str, Any]) -> list[tuple[str, str, str]]:
    """Rule, round and message of every error."""
    findings = worked(name_of(example)).findings
    return [(found.rule, found.round, found.message) for found in findings if found.severity == "error"]


def test_every_passage_names_its_book_and_its_words() -> None:
    for example in EXAMPLES:
        assert example["book"] in DATA["books"]
        assert example["says"]
        assert example["verdict"] in ("right", "wrong", "open")
    assert len({example["passage"] for example in EXAMPLES}) >= 20


@pytest.mark.parametrize("example", RIGHT, ids=name_of)
def test_what_agrees_in_print_comes_out(example: dict[str, Any]) -> None:
    assert errors(example) == []
    for one in rounds_of(example):
        stitches = one.sizes[0]
        assert stitches is not None
        stated = one.plan.stated
        if stated is not None and stated.isdigit():
            assert stitches.count == int(stated), one.plan.work


@pytest.mark.parametrize("example", WRONG, ids=name_of)
def test_what_contradicts_itself_in_print_is_found(example: dict[str, Any]) -> None:
    found = errors(example)
    wanted = example["finds"]
    assert len(found) == 1, "one mistake, one finding"
    rule, number, _ = found[0]
    assert number == str(wanted["round"])
    assert rule in wanted["rules"]


@pytest.mark.parametrize("example", SETTLED, ids=name_of)
def test_repeats_that_print_leaves_open_are_settled_by_what_fits(example: dict[str, Any]) -> None:
    """`rep from * N times` has meant N more and N in all, even on one page; the edge and the count decide."""
    wanted = example["settles"]
    line = next(r for r in rounds_of(example) if r.plan.number == wanted["round"]).settled
    assert line is not None
    repeat = next(step for step in line.steps if isinstance(step, Repeat) and step.star)
    assert not repeat.unclear
    assert repeat.times is not None
    assert repeat.times.of(0) == wanted["more"] + 1


def test_brackets_and_asterisks_that_the_book_calls_equivalent_are() -> None:
    """P08: “(Chain 3, miss 3, 1 treble in next) three times is equivalent to … repeat from * twice.”"""
    example = next(example for example in EXAMPLES if "same tree" in example)
    first, second = (rounds_of(example)[number - 1].settled for number in example["same tree"])
    assert first == second
