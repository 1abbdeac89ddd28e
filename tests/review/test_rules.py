"""Every rule: its page's wrong example trips it, the right one is clean, so are near misses."""

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from loopleaf.notation import Vocabulary, write
from loopleaf.notation.tree import Line
from loopleaf.pattern import Finding
from loopleaf.publish.terminal import report
from loopleaf.review import RULES, Checked, Rule, check, check_collection, rule_named
from tests.review.frame import framed
from tests.yaml_text import read_yaml

HERE = Path(__file__).parent
CASES = {path.stem: read_yaml(path.read_text("utf-8")) for path in sorted((HERE / "cases").glob("*.yml"))}

# The names that reports and other programs know the rules by.
NAMES = [
    "not-yaml",
    "comma-in-braces",
    "not-utf8",
    "key-twice",
    "too-deep",
    "too-large",
    "too-many-aliases",
    "number-too-large",
    "unknown-field",
    "wrong-type",
    "field-missing",
    "markup-in-text",
    "path-leaves-collection",
    "not-a-picture",
    "link-not-http",
    "count-differs",
    "repeat-does-not-fit",
    "works-past-the-end",
    "stitches-left-over",
    "repeat-unclear",
    "no-such-place",
    "join-misses",
    "turn-missing",
    "turn-not-expected",
    "join-missing",
    "closed-twice",
    "more-legs-than-places",
    "turning-chain-unclear",
    "turning-chain-contradicted",
    "inc-unclear",
    "count-unclear",
    "multiple-not-met",
    "size-count-differs",
    "rounds-out-of-order",
    "row-repeat-stops-midway",
    "placement-off-the-edge",
    "threading-does-not-fit",
    "side-differs",
    "yarn-not-joined",
    "seam-lengths-differ",
    "count-missing",
    "kinds-not-counted",
    "side-missing",
    "unknown-instruction",
    "term-of-the-other-system",
    "special-stitch-undefined",
    "special-stitch-unused",
    "special-stitch-differs",
    "prose-term-unclear",
    "written-back-differs",
    "first-stitch-unclear",
    "beginning-chain-missing",
    "beginning-chain-differs",
    "beginning-chain-unlikely",
    "yarn-not-listed",
    "yarn-not-used",
    "notion-not-listed",
    "second-hook-not-listed",
    "made-but-not-joined",
    "copies-differ",
    "buttons-differ",
    "made-in-wrong-order",
    "not-symmetric",
    "level-below-techniques",
    "fasten-off-missing",
    "gauge-missing",
    "gauge-stitch-unknown",
    "size-missing",
    "licence-missing",
    "licence-unknown",
    "designer-missing",
    "picture-text-missing",
    "picture-too-coarse-for-print",
    "video-out-of-order",
    "versions-out-of-order",
    "changed-without-version",
    "address-taken",
    "size-differs",
    "will-ruffle",
    "will-cup",
    "cord-too-short",
    "tail-too-short",
    "yarn-short",
    "sizes-out-of-order",
    "opening-too-small",
    "gauge-outside-weight",
    "hook-outside-weight",
]

# Files that can't be shown on a page, made here.
MADE: dict[str, bytes] = {
    "not-utf8": framed("summary: A pouch in the colour of crème brûlée.").encode("latin-1"),
    "too-large": framed("summary: A pouch.").encode() + b"# and so on\n" * 100_000,
}
# These need more than one file, an earlier build, or a defect of ours.
ELSEWHERE = {
    "address-taken",
    "changed-without-version",
    "picture-too-coarse-for-print",
    "written-back-differs",
}


@cache
def _once(data: bytes) -> Checked:
    return check(data, "case.yml")


def of_file(data: bytes) -> Checked:
    """A file as it is checked; the same file is checked once for all tests, its findings are a test's own."""
    one = _once(data)
    return replace(one, findings=list(one.findings))


def checked(fragment: str) -> Checked:
    return of_file(framed(fragment).encode())


def wrong(rule: Rule) -> Checked:
    return of_file(MADE[rule.name]) if rule.name in MADE else checked(rule.page.wrong)


def found(one: Checked) -> list[str]:
    return [finding.rule for finding in one.findings]


ALONE = [rule for rule in RULES if rule.name not in ELSEWHERE]


def test_rules_names_and_cases_are_the_same() -> None:
    assert [rule.name for rule in RULES] == NAMES
    assert set(CASES) == set(NAMES) - ELSEWHERE


@pytest.mark.parametrize("rule", ALONE, ids=lambda rule: rule.name)
def test_the_wrong_example_trips_it(rule: Rule) -> None:
    tripped = [finding for finding in wrong(rule).findings if finding.rule == rule.name]
    assert tripped, found(wrong(rule))
    assert all(finding.severity == rule.severity for finding in tripped)


@pytest.mark.parametrize("rule", ALONE, ids=lambda rule: rule.name)
def test_the_wrong_example_is_said_once(rule: Rule) -> None:
    """One mistake, one finding: nothing else of its kind is said beside it."""
    severities = {"error"} if rule.severity == "error" else {"error", "warning"}
    said = wrong(rule)
    others = [one.rule for one in said.findings if one.severity in severities and one.rule != rule.name]
    assert others == CASES[rule.name].get("beside", []), report([said])


@pytest.mark.parametrize("rule", ALONE, ids=lambda rule: rule.name)
def test_the_right_example_is_clean(rule: Rule) -> None:
    one = checked(rule.page.right)
    assert one.work is not None
    assert rule.name not in found(one)
    assert not one.has_errors, report([one])


NEAR_MISSES = [(name, fragment) for name, case in CASES.items() for fragment in case["near misses"]]


@pytest.mark.parametrize(("name", "fragment"), NEAR_MISSES)
def test_a_near_miss_does_not_trip_it(name: str, fragment: str) -> None:
    one = checked(fragment)
    assert one.work is not None
    assert name not in found(one), report([one])


@pytest.mark.parametrize("name", CASES)
def test_its_words(name: str, golden: Callable[[str, str], None]) -> None:
    fragments = [checked(fragment) for fragment in CASES[name].get("trips", [])]
    cases = [wrong(rule_named(name)), *fragments]
    for one in cases:
        assert name in found(one), found(one)
        one.findings[:] = [finding for finding in one.findings if finding.rule == name]
    golden(f"{name}.txt", "\n".join(report([one]) for one in cases))


def test_two_files_for_one_page(golden: Callable[[str, str], None]) -> None:
    text = framed("title: Tide cloth").encode()
    apart = check_collection([("patterns/tide-cloth.yml", text), ("patterns/tide-cloth-2.yml", text)])
    assert not any("address-taken" in found(one) for one in apart)
    first, second = check_collection([("patterns/tide-cloth.yml", text), ("patterns/Tide cloth.yaml", text)])
    assert "address-taken" not in found(first)
    assert "address-taken" in found(second)
    second.findings[:] = [finding for finding in second.findings if finding.rule == "address-taken"]
    golden("address-taken.txt", report([second]))


def test_a_piece_that_never_ends(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("loopleaf.fabric.borne_out.MOST_IN_A_PIECE", 100)
    rounds = 'rounds:\n  - {round: 1, work: "ch 1, 8 sc in ring, join"}\n'
    fragment = rounds + '  - {rounds: 2-900, work: "ch 1, sc in each st around, join"}'
    one = check(framed(fragment).encode(), "case.yml")
    (finding,) = (finding for finding in one.findings if finding.severity == "error")
    assert finding.rule == "number-too-large"
    assert "before round 12" in finding.message  # a chain, 8 sc and a join make 10 a round


def test_every_page_is_whole() -> None:
    for rule in RULES:
        page = rule.page
        assert page.summary.endswith(".")
        assert "\n" not in page.summary
        assert page.wrong != page.right


def put(text: str, finding: Finding, replacement: str) -> str:
    """The file with a finding's stretch replaced."""
    lines = text.split("\n")
    at = finding.location
    before, after = lines[at.line - 1][: at.column - 1], lines[at.end_line - 1][at.end_column - 1 :]
    return "\n".join([*lines[: at.line - 1], before + replacement + after, *lines[at.end_line :]])


def suggestions() -> list[tuple[str, str, Finding]]:
    """Each finding of the pages' wrong examples and of the cases that brings its own replacement."""
    found = []
    for name, case in CASES.items():
        for fragment in [rule_named(name).page.wrong, *case.get("trips", [])]:
            for finding in [] if name in MADE else checked(fragment).findings:
                if finding.suggestion and finding.suggestion.replacement is not None:
                    found.append((name, fragment, finding))
    return found


@pytest.mark.parametrize(("name", "fragment", "finding"), suggestions())
def test_a_suggestion_mends_what_it_is_for(name: str, fragment: str, finding: Finding) -> None:
    assert finding.suggestion is not None
    mended = put(framed(fragment), finding, finding.suggestion.replacement or "")
    after = check(mended.encode(), "case.yml")
    assert (finding.rule, finding.location) not in [(one.rule, one.location) for one in after.findings], (
        mended
    )
    assert sum(one.severity == "error" for one in after.findings) <= sum(
        one.severity == "error" for one in checked(fragment).findings
    ), report([after])


def test_a_line_that_is_not_written_back_alike(
    monkeypatch: pytest.MonkeyPatch, golden: Callable[[str, str], None]
) -> None:
    """A defect of ours, made here: the UK page would say 9 where the author says 8."""
    fine = checked(rule_named("count-differs").page.right)
    assert "written-back-differs" not in found(fine)

    def slips(line: Line, terms: str, vocabulary: Vocabulary) -> str:
        written = write(line, terms, vocabulary=vocabulary)  # type: ignore[arg-type]
        return written.replace("8", "9") if terms == "UK" else written

    monkeypatch.setattr("loopleaf.review.rules.written_back_differs.write", slips)
    one = check(framed(rule_named("count-differs").page.right).encode(), "case.yml")
    assert [finding.round for finding in one.findings if finding.rule == "written-back-differs"] == ["1"]
    one.findings[:] = [finding for finding in one.findings if finding.rule == "written-back-differs"]
    golden("written-back-differs.txt", report([one]))
