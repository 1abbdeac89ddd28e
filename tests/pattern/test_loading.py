"""Whole files: what is a pattern, what can't be read, and that nothing a file holds raises."""

import time
from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopleaf.pattern import Finding, Source, load
from loopleaf.pattern.limits import LARGEST_FILE

from .conftest import LANTERN

Read = Callable[[str], Source]


def test_a_sound_file(lantern: str, read: Read) -> None:
    source = read(lantern)
    assert source.findings == []
    assert source.is_pattern
    assert source.pattern is not None
    assert source.file == "lantern.yml"
    assert source.text == lantern


@pytest.mark.parametrize(
    "text",
    ["", "# a remark\n", "a: 1\na: 2\n", "- pieces\n", "nav: {count: 4 (5, 6)}\n", "x: !!python/name:y\n"],
)
def test_other_yaml_is_left_alone(text: str, read: Read) -> None:
    source = read(text)
    assert (source.is_pattern, source.pattern, source.findings) == (False, None, [])


def test_a_file_that_is_not_yaml_may_be_a_pattern(read: Read) -> None:
    source = read("a: *b c\n")
    assert source.is_pattern
    assert [one.rule for one in source.findings] == ["not-yaml"]


def test_not_utf8() -> None:
    source = load("title: Café\npieces: {}\n".encode("latin-1"), "f.yml")
    (said,) = source.findings
    assert (said.rule, said.location.line, said.location.column) == ("not-utf8", 1, 11)
    assert "Latin 1" in said.working
    assert source.pattern is None


def test_utf16() -> None:
    (said,) = load("title: x\n".encode("utf-16"), "f.yml").findings
    assert said.rule == "not-utf8"
    assert "UTF-16" in said.working


def test_a_byte_order_mark_is_no_letter(lantern: str) -> None:
    source = load(b"\xef\xbb\xbf" + lantern.encode(), "f.yml")
    assert source.findings == []
    assert source.locate(("title",)).column == 8


def test_too_large_a_file() -> None:
    began = time.perf_counter()
    (said,) = load(b"a: b\n" * (LARGEST_FILE // 5 + 1), "f.yml").findings
    assert said.rule == "too-large"
    assert time.perf_counter() - began < 0.5


def test_just_not_too_large(lantern: str) -> None:
    padding = b"#" * (LARGEST_FILE - len(lantern.encode()))
    assert load(lantern.encode() + padding, "f.yml").findings == []


def test_a_field_written_twice(lantern: str, read: Read, marked: Callable[[str, Finding], str]) -> None:
    text = lantern.replace("    make: 1\n", "    make: 1\n    title: Bag\n")
    source = read(text)
    (said,) = source.findings
    assert (said.rule, marked(text, said), said.location.line) == ("key-twice", "title", 29)
    assert said.related[0].location.line == 27
    assert source.pattern is None


def test_a_field_of_the_same_name_elsewhere(lantern: str, read: Read) -> None:
    assert read(lantern.replace("    make: 2\n", "    make: 2\n    title: Cord\n")).findings == []


def test_a_name_that_is_a_list(lantern: str, read: Read) -> None:
    assert [one.rule for one in read(lantern + "? [a, b]\n: c\n").findings] == ["wrong-type"]


def test_all_at_once_in_the_order_of_the_file(lantern: str, read: Read) -> None:
    text = lantern.replace("designer:", "desinger:").replace("make: 1\n", "make: one\n")
    text = (
        text.replace("count: 8}", "count: 8, 9}").replace("Quiet.", "<b>Quiet</b>").replace('"6:10"', "soon")
    )
    found = [(one.rule, one.location.line) for one in read(text).findings]
    assert found == [
        ("unknown-field", 2),
        ("wrong-type", 28),
        ("comma-in-braces", 35),
        ("markup-in-text", 37),
        ("wrong-type", 37),
    ]


def test_one_value_one_finding(lantern: str, read: Read) -> None:
    text = lantern.replace("count: {from: 16, step: 8}", "count: *sixteen or more")
    assert [one.rule for one in read(text).findings] == ["not-yaml"]


@pytest.mark.parametrize(
    ("old", "new", "kept"),
    [
        ("level: easy", "level: eazy", True),
        ("designer:", "desinger:", True),
        ("contact: https", "contact: javascript", True),
        ("count: 8}", "count: []}", True),
        ("tags: [pouch, home]", "tags: {a: b}", True),
        ("date: 2026-11-05", "date: soon", True),
        ("start: magic ring", "start: slip knot", False),
        ("terms: US", "terms: EN", False),
        ("count: 8}", "count: 8, 9}", False),
    ],
)
def test_a_pattern_is_kept_where_its_rounds_are_not_in_doubt(
    old: str, new: str, kept: bool, lantern: str, read: Read
) -> None:
    source = read(lantern.replace(old, new, 1))
    assert len(source.findings) == 1
    assert (source.pattern is not None) == kept


@pytest.mark.parametrize("number", ["1000000000", "9" * 250])
@pytest.mark.parametrize(
    "entry",
    ["rounds: 4-{}, as: 3", "round: {}, work: x", "rounds: 4 on, as: 3, until: {} cm", "round: 4, as: {}"],
)
def test_a_thousand_million_rounds_are_refused_at_once(
    number: str, entry: str, lantern: str, read: Read
) -> None:
    began = time.perf_counter()
    source = read(
        lantern.replace('round: 4, work: "ch 1, hdc in each st around, join"', entry.format(number))
    )
    assert [one.rule for one in source.findings] == ["number-too-large"]
    assert source.pattern is None
    assert time.perf_counter() - began < 0.5


def test_a_flood_of_findings_is_cut() -> None:
    text = LANTERN + "".join(f"wrong{i}: x\n" for i in range(1000))
    assert len(load(text.encode(), "f.yml").findings) == 500


def test_two_thousand_rounds_are_read_in_no_time(lantern: str) -> None:
    rounds = "".join(
        f'      - {{round: {i}, work: "ch 1, hdc in each st around, join", count: 24}}\n'
        for i in range(5, 2005)
    )
    text = lantern.replace("  cord:\n", rounds + "  cord:\n", 1)
    began = time.perf_counter()
    assert load(text.encode(), "f.yml").findings == []
    assert time.perf_counter() - began < 5


@settings(max_examples=150, deadline=None)
@given(st.binary(max_size=200))
def test_no_bytes_raise(data: bytes) -> None:
    load(data, "f.yml")


@settings(max_examples=250, deadline=None)
@given(st.data())
def test_no_slip_of_the_keyboard_raises(data: st.DataObject) -> None:
    """A sound file with a stretch taken out and signs put in: every finding is complete and in the file."""
    start = data.draw(st.integers(0, len(LANTERN)))
    length = data.draw(st.integers(0, 40))
    signs = data.draw(st.text(st.sampled_from("{}[]:,*&!#|>'\"%@`- \n\tab1<\\😀"), max_size=6))
    text = LANTERN[:start] + signs + LANTERN[start + length :]
    source = load(text.encode(), "f.yml")
    lines = text.count("\n") + 1
    for one in source.findings:
        place = one.location
        assert 1 <= place.line <= place.end_line <= lines
        assert (place.line, place.column) <= (place.end_line, place.end_column)
        assert one.severity == "error"
        assert one.message
        assert one.suggestion is not None
