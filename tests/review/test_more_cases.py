"""Whole fragments with several things the matter: every word, working, cure and place of what is said."""

from collections.abc import Callable
from pathlib import Path

import pytest

from loopleaf.publish.terminal import report
from loopleaf.review.check import check, with_pictures_seen
from loopleaf.review.names import in_sizes, listed, number_of, ordinal, signed
from tests.review.frame import framed
from tests.yaml_text import read_yaml

from .test_facts import facts
from .test_rules import checked

CASES: dict[str, str] = read_yaml((Path(__file__).parent / "more_cases.yml").read_text("utf-8"))


@pytest.mark.parametrize("name", CASES)
def test_all_that_is_said(name: str, golden: Callable[[str, str], None]) -> None:
    one = checked(CASES[name])
    said = [line for finding in one.findings for line in facts(finding, framed(CASES[name]))]
    golden(f"{name.replace(' ', '-').replace(',', '')}.txt", "\n".join([*said, "", report([one])]))


SECOND = (Path(__file__).parent / "second_rounds.txt").read_text("utf-8").splitlines()


@pytest.mark.parametrize("terms", ["counts", "does not count"])
def test_a_second_round_over_twelve_doubles(terms: str, golden: Callable[[str, str], None]) -> None:
    """Each line alone, with a count of twelve: what is said of it, as doubles' chains count or not."""
    said: list[str] = []
    for work in SECOND:
        first = "ch 3, 11 dc in ring, join" if terms == "counts" else "ch 3, 12 dc in ring, join"
        rows = [
            f"turning chains: {{dc: {terms}}}",
            "rounds:",
            f'  - {{round: 1, work: "{first}", count: 12}}',
            f'  - {{round: 2, work: "{work}", count: 12}}',
            '  - {round: 3, work: "ch 1, sc in each st around, join, fasten off", count: 12}',
        ]
        text = framed("\n".join(rows))
        said.append(work)
        for one in check(text.encode(), "case.yml").findings:
            said += [f"    {line}" for line in facts(one, text)]
            said += [f"        {words}" for words in (one.message, one.working) if words]
            said += [f"        {one.suggestion.text}"] if one.suggestion else []
    golden(f"second-rounds-{terms.replace(' ', '-')}.txt", "\n".join(said) + "\n")


def test_pictures_that_are_not_there_or_are_none(golden: Callable[[str, str], None]) -> None:
    text = framed(
        "pictures:\n  - {file: one.png, alt: A coaster.}\n  - {file: two.png, alt: Its back.}\n"
        "rounds:\n  - {round: 1, work: 'ch 1, 8 hdc in ring, join, fasten off', count: 8,"
        " picture: {file: three.png, alt: The first round.}}\n"
        "finishing:\n  - {text: Weave in the ends., picture: {file: four.png, alt: An end.}}\n"
    )
    files = {"two.png": b"\x89PNG\r\n\x1a\n" + bytes(16), "four.png": b"GIF, they say"}
    before = check(text.encode(), "case.yml")
    after = with_pictures_seen(before, files.get)
    new = [finding for finding in after.findings if finding not in before.findings]
    assert [(one.message.split()[2], one.severity, one.piece) for one in new] == [
        ("one.png", "error", ""),
        ("four.png", "error", ""),
        ("three.png", "error", "piece"),
    ]
    after.findings[:] = new
    golden(
        "pictures-not-there.txt",
        "\n".join([*(f for one in new for f in facts(one, text)), "", report([after])]),
    )


def test_nothing_is_said_of_the_pictures_of_what_is_no_pattern() -> None:
    broken = check(b"title: [", "case.yml")
    assert with_pictures_seen(broken, lambda name: None) is broken


def test_ordinals() -> None:
    said = (
        "1st 2nd 3rd 4th 9th 10th 11th 12th 13th 14th 20th 21st 22nd 23rd 100th 101st 111th 112th 113th 122nd"
    )
    numbers = [1, 2, 3, 4, 9, 10, 11, 12, 13, 14, 20, 21, 22, 23, 100, 101, 111, 112, 113, 122]
    assert [ordinal(number) for number in numbers] == said.split()


def test_numbers_and_lists_as_they_are_said() -> None:
    assert [number_of(n, "stitch") for n in (0, 1, 2)] == ["0 stitches", "1 stitch", "2 stitches"]
    assert [number_of(2, one) for one in ("place", "bush", "pass")] == ["2 places", "2 bushes", "2 passes"]
    assert number_of(2, "foot", "feet") == "2 feet"
    assert [signed(n) for n in (2, -3)] == ["2 too high", "3 too low"]
    assert [listed(names) for names in ("", "A", "AB", "ABC")] == ["", "A", "A and B", "A, B and C"]
    assert listed(["A", "B"], "or") == "A or B"
    assert [in_sizes(one) for one in ([8], [8, 10], [8, 10, 12])] == ["8", "8 (10)", "8 (10, 12)"]
