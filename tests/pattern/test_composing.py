"""What the reader builds from a file, and what it refuses before it costs time or memory."""

import time

import pytest
import yaml

from loopleaf.pattern import composing
from loopleaf.pattern.composing import compose
from loopleaf.pattern.limits import DEEPEST, MOST_ALIASES


def rules(text: str) -> list[str]:
    return [flaw.rule for flaw in compose(text)[1]]


def bomb(levels: int) -> str:
    lines = ["a0: &a0 [x, x, x, x, x, x, x, x, x]"]
    lines += [f"a{i}: &a{i} [{', '.join([f'*a{i - 1}'] * 9)}]" for i in range(1, levels)]
    return "\n".join(lines) + "\n"


def test_an_alias_bomb_is_refused_at_once() -> None:
    began = time.perf_counter()
    assert rules(bomb(10)) == ["too-many-aliases"]
    assert time.perf_counter() - began < 1


def test_a_small_tower_of_aliases_is_no_bomb() -> None:
    root, flaws = compose(bomb(3))
    assert root is not None
    assert not flaws
    assert root.size > 9**3


def test_aliases_are_counted() -> None:
    uses = "".join(f"k{i}: *x\n" for i in range(MOST_ALIASES))
    assert rules("a: &x b\n" + uses) == []
    assert rules("a: &x b\n" + uses + "more: *x\n") == ["too-many-aliases"]


def test_too_many_values_without_aliases() -> None:
    assert rules("[" + "x, " * 200_001 + "]") == ["too-large"]


def test_an_alias_inside_its_own_value() -> None:
    text = "x: &a [b, *a]\n"
    (flaw,) = compose(text)[1]
    assert flaw.rule == "too-deep"
    assert text[flaw.start : flaw.end] == "*a"


@pytest.mark.parametrize("deep", [DEEPEST + 1, 900, 5000, 100_000])
@pytest.mark.parametrize("opening", ["[", "{a: "])
def test_too_deep(deep: int, opening: str) -> None:
    assert rules(opening * deep) == ["too-deep"]


def test_too_deep_by_lines() -> None:
    assert rules("".join(f"{' ' * i}a:\n" for i in range(200))) == ["too-deep"]


def test_too_deep_through_aliases() -> None:
    halves = "[" * (DEEPEST - 2) + "x" + "]" * (DEEPEST - 2)
    assert rules(f"a: &h {halves}\n") == []
    assert rules(f"a: &h {halves}\nb: [[[*h]]]\n") == ["too-deep"]


def test_just_not_too_deep() -> None:
    assert rules("[" * DEEPEST + "]" * DEEPEST) == []


@pytest.mark.parametrize("tag", ["!!python/object/apply:os.system [ls]", "!thing x", "!<x> y"])
def test_instructions_for_programs_are_refused(tag: str) -> None:
    assert rules(f"a: {tag}\n") == ["wrong-type"]


@pytest.mark.parametrize("tag", ["!!str 40", "! 40", "!!int 40", "plain!"])
def test_plain_kinds_are_not(tag: str) -> None:
    assert rules(f"a: {tag}\n") == []


@pytest.mark.parametrize(
    "value", ["6:10", "yes", "no", "on", "1.10", "010", "1e3", "2026-10-02", "0x1F", "1_000"]
)
def test_values_keep_their_own_text(value: str) -> None:
    """YAML 1.1 (its tag repository) makes numbers, dates and truths of these; here they stay words."""
    root, _ = compose(f"a: {value}\n")
    assert root is not None
    assert root.plain() == {"a": value}


@pytest.mark.parametrize("value", ["", "~", "null"])
def test_nothing(value: str) -> None:
    root, _ = compose(f"a: {value}\nb: '{value}'\n")
    assert root is not None
    assert root.plain() == {"a": None, "b": value}


@pytest.mark.parametrize(
    ("text", "cut", "value"),
    [
        ("a: {count: 40 (48, 56), n: 1}\n", "40 (48, 56)", "40 (48, 56)"),
        ("a: {n: 1, count: 24 dc, 4 ch-2 sps}\n", "24 dc, 4 ch-2 sps", "24 dc, 4 ch-2 sps"),
        ("a: {count: 1, 2, 3, 4}\n", "1, 2, 3, 4", "1, 2, 3, 4"),
    ],
)
def test_comma_in_braces(text: str, cut: str, value: str) -> None:
    root, (flaw,) = compose(text)
    assert root is not None
    assert flaw.rule == "comma-in-braces"
    assert text[flaw.start : flaw.end] == cut
    assert root.plain()["a"]["count"] == value
    assert flaw.suggestion is not None
    assert flaw.suggestion.replacement == f'"{cut}"'


@pytest.mark.parametrize(
    "text",
    ['a: {count: "40 (48, 56)"}\n', "a: {b: [1, 2], c: 3}\n", "a: {b: , c: 3}\n", "count: 40 (48, 56)\n"],
)
def test_commas_that_cut_nothing(text: str) -> None:
    assert rules(text) == []


def test_no_values_no_root() -> None:
    assert compose("# only a remark\n") == (None, [])


def test_both_readers_say_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where libyaml isn't there, PyYAML's own reader gives the same values at the same places."""
    text = 'a: {x: "é😀", b: 40 (48, 56)}\nb: |\n  hey\n  you\n\nc:\n  - d\n  - *x y\n'
    first = compose(text)
    monkeypatch.setattr(composing, "_READER", yaml.SafeLoader)
    assert compose(text) == first
