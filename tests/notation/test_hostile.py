"""Lines that nobody means well by: bounded time, bounded words, never an exception."""

import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopleaf.notation import parse, parse_count, translate_prose

from .trees import UK, US

SHORTHAND = """
sc ch 3 ( ) [ ] { } * ** † , ; rep from * to * x 8 twice in next st each around last
- dc bobble sp of same join with B hdcc frob (counts as does not count
working along other side 2nd ch from hook n and
999999999 evenly edge over between turn sk leave unworked post FP inc dec tog picot V-st marker place
ring BLO through both layers corner any then omitting
"""
WORDS = [*SHORTHAND.split(), "ending with", "ending last rep at **"]


@settings(deadline=None, max_examples=300)
@given(st.lists(st.sampled_from(WORDS), max_size=60).map(" ".join))
def test_any_words_are_read_or_answered(line):
    for vocabulary in (US, UK):
        read = parse(line, vocabulary)
        assert (read.line is None) == any(p.severity == "error" for p in read.problems)
        for problem in read.problems:
            assert 0 <= problem.span.start <= problem.span.end <= len(line)
        parse_count(line, vocabulary)
        translate_prose(line, "US", "UK", vocabulary)


@settings(deadline=None, max_examples=200)
@given(st.text(max_size=80))
def test_any_text_is_read_or_answered(line):
    read = parse(line, US)
    assert read.line is not None or read.problems
    parse_count(line, US)
    assert translate_prose(line, "US", "US", US)[0] == line


@pytest.mark.parametrize(
    "line",
    [
        "* a ** " * 700,
        "*† ‡ ** †† ‡‡ " * 300,
        "(" * 3000,
        "(1 " * 1500,
        "*" * 4999,
        "hdcc, " * 800,
        "8 (1, " * 800,
        "(" * 12 + "*(" * 900,
    ],
    ids=lambda line: line[:12],
)
def test_a_long_hostile_line_is_answered_soon_and_briefly(line):
    begun = time.perf_counter()
    read = parse(line[:5000], US)
    assert time.perf_counter() - begun < 5
    assert read.line is None
    assert 1 <= len(read.problems) <= 20


def test_limits_are_named():
    assert [p.rule for p in parse("sc, " * 2000, US).problems] == ["too-large"]
    assert [p.rule for p in parse("(" * 13 + "sc" + ")" * 13 + " x 2", US).problems] == ["too-deep"]
    assert [p.rule for p in parse("(sc, inc) x 1000000000", US).problems] == ["number-too-large"]
    assert [p.rule for p in parse("[(sc) x 1000, ch 2] x 1000", US).problems] == ["number-too-large"]
    assert [p.rule for p in parse("(sc in next 400 sts, (2 dc) in next 9 sts) x 1000", US).problems] == [
        "number-too-large"
    ]
    assert parse("(sc in next 40 sts) x 100", US).problems == ()
    assert parse_count("9" * 6000, US)[1][0].rule == "too-large"
    assert parse_count("9" * 60, US)[1][0].rule == "number-too-large"
