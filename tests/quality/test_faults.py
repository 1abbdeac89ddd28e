"""A sample of the mistakes of `make faults`: the review must find nearly all that contradict the file."""

from functools import cache

import pytest

from loopleaf.review import check

from .collected import right_patterns
from .faults import Outcome, all_mutants, outcomes, report, tally
from .faults import sample as drawn
from .mistakes import IN_A_LINE
from .model import judge
from .mutants import Mutant, mutants
from .sites import read

NUMBER, SEED = 100, 7
"""So many mutants are tried here, about seventy of them faults; the figures of all are in README.md."""


@cache
def sample() -> tuple[Outcome, ...]:
    return tuple(outcomes(drawn(NUMBER, SEED), 1))


@cache
def everything() -> tuple[Mutant, ...]:
    return tuple(all_mutants())


def test_there_are_ten_thousand_mistakes_of_more_than_forty_kinds() -> None:
    assert len(everything()) >= 10_000
    assert len({mutant.kind for mutant in everything()}) >= 40


def test_every_kind_changes_the_text_and_is_made_once() -> None:
    texts = {(mutant.file, mutant.text) for mutant in everything()}
    assert len(texts) == len(everything())
    assert all(mutant.was != mutant.now for mutant in everything() if mutant.kind != "a round lost")


@pytest.mark.parametrize(
    ("kind", "line", "some"),
    [
        ("a repeat one more", "(sc, inc) x 6", "(sc, inc) x 7"),
        ("a skip lost", "*dc in next st, ch 1, sk next st; rep", "*dc in next st, ch 1; rep"),
        ("a joining chain one lower", "join to 3rd ch of ch-4", "join to 2nd ch of ch-4"),
        ("a closing bracket lost", "(sc in next st, inc) x 6", "(sc in next st, inc x 6"),
        ("sizes exchanged", "ch 8 (10, 12)", "ch 10 (8, 12)"),
        ("the other country's terms", "sc in next st, dc in next st", "dc in next st, tr in next st"),
        ("a bracket moved", "(sc in next 2 sts, inc) x 6", "(sc in next 2 sts) x 6, inc"),
    ],
)
def test_a_mistake_is_what_its_name_says(kind: str, line: str, some: str) -> None:
    assert some in list(IN_A_LINE[kind](line))


def test_places_of_a_file_are_found_and_put_back() -> None:
    row = '{row: 1, work: "sc in 2nd ch from hook", count: "8"}'
    text = f"pieces: {{p: {{worked: rows, start: chain 9, rows: [{row}]}}}}\n"
    file = read("one", text)
    work = next(site for site in file.sites if site.field == "work")
    assert text[work.start : work.end] == '"sc in 2nd ch from hook"'
    assert file.with_value(work, "dc, ch 1") == text.replace("sc in 2nd ch from hook", "dc, ch 1")
    assert {mutant.kind for mutant in mutants(file)} >= {"a count one more", "another chain from the hook"}


def test_the_model_can_judge_all_of_them() -> None:
    assert [one for one in sample() if one.sort == "beyond"] == []


def test_faults_are_found() -> None:
    figures = tally(sample())
    assert figures.faults > NUMBER / 2
    assert figures.found / figures.faults >= 0.985, [(one.kind, one.file, one.now) for one in figures.missed]


def test_faults_are_found_in_the_right_round() -> None:
    figures = tally(sample())
    assert figures.in_round / figures.found >= 0.97


def test_a_fault_is_said_once() -> None:
    figures = tally(sample())
    assert figures.just_one / figures.found >= 0.95, [
        (one.kind, one.file, one.found) for one in figures.several
    ]


def test_patterns_that_only_differ_raise_no_alarm() -> None:
    figures = tally(sample())
    assert len(figures.disputed) <= 0.02 * figures.tried, [
        (one.kind, one.file, one.now) for one in figures.disputed
    ]


@pytest.mark.parametrize("name", right_patterns())
def test_right_patterns_raise_no_alarm(name: str) -> None:
    data = right_patterns()[name].encode()
    assert judge(data, name).right
    assert [one for one in check(data, name).findings if one.severity == "error"] == []


def test_a_sample_is_drawn_by_its_seed() -> None:
    assert drawn(20, 1) == drawn(20, 1) != drawn(20, 2)
    assert len(drawn(0, 1)) == len(everything())


def test_the_report_gives_the_figures() -> None:
    tried = sample()
    text = report(tally(tried), tried, "a sample drawn with seed 7, 2026-11-25")
    assert text.startswith(f"{NUMBER} files, each with one mistake of ")
    assert "a sample drawn with seed 7, 2026-11-25." in text
    assert f"| found once (two rounds exchanged: once each) | {tally(tried).just_one} |" in text
