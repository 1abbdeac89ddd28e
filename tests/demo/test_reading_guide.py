"""The guide for makers: what it shows in US and in UK terms tells the hook the same."""

import pytest

from loopleaf import notation
from loopleaf.notation.tree import Line

from . import guide

PAIRS = [
    (guide.codes(row[0])[0], guide.codes(row[1])[0])
    for table in guide.tables(guide.READING)
    for row in table
    if len(row) == 3
]


def _tree(text: str, terms: notation.Terms) -> Line:
    parsed = notation.parse(text, notation.Vocabulary(terms, {}, frozenset(), frozenset()))
    assert [problem.message for problem in parsed.problems] == []
    assert parsed.line is not None
    return parsed.line


def test_there_are_pairs() -> None:
    assert len(PAIRS) > 8


@pytest.mark.parametrize(("us", "uk"), PAIRS)
def test_both_terms_tell_the_hook_the_same(us: str, uk: str) -> None:
    assert _tree(us, "US") == _tree(uk, "UK")
