"""Whatever tree is written, in any of the four styles, reads back as the same tree."""

import pytest
from hypothesis import given, settings

from loopleaf.notation import parse, parse_count, write, write_count

from .trees import UK, US, lines, tallies

STYLES = [(US, False), (US, True), (UK, False), (UK, True)]


@pytest.mark.parametrize(("vocabulary", "full"), STYLES, ids=["US short", "US full", "UK short", "UK full"])
@settings(deadline=None, max_examples=150)
@given(line=lines())
def test_a_written_line_reads_back_as_the_same_tree(vocabulary, full, line):
    text = write(line, vocabulary.terms, full, vocabulary)
    read = parse(text, vocabulary)
    assert read.problems == (), text
    assert read.line == line, text


@pytest.mark.parametrize(("vocabulary", "full"), STYLES, ids=["US short", "US full", "UK short", "UK full"])
@settings(deadline=None, max_examples=100)
@given(tally=tallies)
def test_a_written_count_reads_back_as_the_same_count(vocabulary, full, tally):
    text = write_count(tally, vocabulary.terms, full, vocabulary)
    assert parse_count(text, vocabulary) == (tally, ()), text
