"""How many rows an entry's words say it is for, against how many it has."""

import pytest

from loopleaf.pattern import load, set_out

FILE = """\
title: Scarf
terms: US
materials: {{yarns: {{A: {{name: lichen}}}}}}
pieces:
  scarf:
    title: Scarf
    yarn: A
    worked: rows
    start: chain 6
    rows:
      - {{row: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: 5}}
      - {{{run}, work: "{work}"}}
"""


def found(run: str, work: str) -> list[tuple[str, str | None]]:
    pattern = load(FILE.format(run=run, work=work).encode(), "scarf.yml").pattern
    assert pattern is not None
    _, problems = set_out(pattern, "scarf")
    assert {one.rule for one in problems} <= {"rounds-out-of-order"}
    return [(one.message, one.suggestion[1] if one.suggestion else None) for one in problems]


@pytest.mark.parametrize(
    ("run", "work"),
    [
        ("rows: 2-5", "Work 4 rows straight."),
        ("rows: 2-5", "ch 1, work 4 more rows in sc, turn"),
        ("row: 2", "ch 1, work 1 row even, turn"),
        ("rows: 2-5", "ch 1, work even, turn"),
    ],
)
def test_as_many_as_the_entry_has(run: str, work: str) -> None:
    assert found(run, work) == []


def test_one_too_many() -> None:
    assert found("rows: 2-5", "Work 5 rows straight.") == [("“Work 5 rows” stands for rows 2-5.", "2-6")]


def test_several_in_one() -> None:
    assert found("row: 2", "work 4 rows even") == [("“work 4 rows” stands for row 2.", "2-5")]
