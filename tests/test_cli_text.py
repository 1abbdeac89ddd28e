"""Findings as text: the line with its stretch marked, working, mending, colour, and how many are shown."""

from collections.abc import Callable

import pytest

from loopleaf.pattern import Finding, Location
from loopleaf.publish.terminal import coloured, report
from loopleaf.review import Checked, check
from tests.review.frame import framed

BAD = framed('rounds:\n  - {round: 1, work: "ch 1, 8 hdc in ring, join, fasten off", count: 9}')


def marked(text: str, start: tuple[int, int], end: tuple[int, int]) -> list[str]:
    """The lines that show a stretch of a text, with the marks below it."""
    source = check(text.encode(), "case.yml").source
    finding = Finding("not-yaml", "error", "case.yml", Location(*start, *end), "Something.")
    shown = report([Checked(source, None, None, [finding])]).split("\n")
    return shown[2:4]


def test_the_stretch_is_marked() -> None:
    assert marked("title: Coaster\npieces: {}\n", (1, 8), (1, 15)) == [
        "  1 | title: Coaster",
        "    |        ^^^^^^^",
    ]


def test_a_stretch_over_several_lines_is_marked_to_its_first_ones_end() -> None:
    assert marked("notes:\n  - one\n  - two\npieces: {}\n", (2, 3), (3, 8)) == [
        "  2 |   - one",
        "    |   ^^^^^",
    ]


def test_an_empty_stretch_has_one_mark() -> None:
    assert marked("title:\npieces: {}\n", (1, 7), (1, 7)) == ["  1 | title:", "    |       ^"]


def test_wide_letters_and_tabs_keep_the_marks_in_place() -> None:
    assert marked("title: 編み物 x\npieces: {}\n", (1, 12), (1, 13))[1] == "    |               ^"
    assert marked("a:\tx\npieces: {}\n", (1, 4), (1, 5)) == ["  1 | a:    x", "    |       ^"]


def test_a_control_character_never_reaches_the_terminal() -> None:
    shown = "\n".join(marked('title: "a\x1b[2Jb"\npieces: {}\n', (1, 8), (1, 15)))
    assert "\x1b" not in shown


def test_a_long_line_is_cut_around_its_stretch() -> None:
    line, marks = marked(f"title: {'a ' * 100}here{' b' * 100}\npieces: {{}}\n", (1, 208), (1, 212))
    assert len(line) < 120
    start = marks.index("^")
    assert line[start : start + 4] == "here"
    assert marks.count("^") == 4


def test_colour_is_never_the_only_sign(golden: Callable[[str, str], None]) -> None:
    checked = [check(BAD.encode(), "case.yml")]
    plain, bright = report(checked), report(checked, coloured)
    assert "\x1b[1;31m" in bright
    for code in ("\x1b[1;31m", "\x1b[1;33m", "\x1b[1m", "\x1b[2m", "\x1b[0m"):
        bright = bright.replace(code, "")
    assert bright == plain
    golden("text-report.txt", plain)


def test_twenty_a_file_and_the_rest_is_counted() -> None:
    rounds = "".join(f'  - {{round: {n}, work: "ch 1, nonsense", count: 8}}\n' for n in range(1, 31))
    shown = report([check(framed(f"rounds:\n{rounds}").encode(), "case.yml")])
    assert shown.count("unknown-instruction:") == 20
    assert "10 more findings not shown" in shown
    assert "30 errors" in shown


@pytest.mark.parametrize(
    ("terminal", "no_color", "bright"), [(True, "", True), (True, "1", False), (False, "", False)]
)
def test_when_there_is_colour(
    monkeypatch: pytest.MonkeyPatch, terminal: bool, no_color: str, bright: bool
) -> None:
    """Only on a terminal, and not where NO_COLOR is set (no-color.org: set, and not empty)."""
    from loopleaf import cli

    monkeypatch.setattr("sys.stdout.isatty", lambda: terminal, raising=False)
    monkeypatch.setenv("NO_COLOR", no_color)
    said = cli._report([check(BAD.encode(), "case.yml")], "text", "")
    assert ("\x1b[" in said) is bright
