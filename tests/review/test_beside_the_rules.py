"""What stands beside the rules: names that are nearly right, page addresses, counts changed since they were
published, how bad a rule's finding is.
"""

import pytest

from loopleaf.pattern import load
from loopleaf.review import RULES, Shelf, check, nearest_rules, rule_named, slug
from loopleaf.review.rules.changed_without_version import Published, changed
from loopleaf.review.subject import quote
from tests.review.frame import framed


def test_every_rule_says_how_bad_it_is_and_has_its_name_and_page() -> None:
    assert {one.severity for one in RULES} == {"error", "warning", "note"}
    for one in RULES:
        assert rule_named(one.name) is one
        assert one.name == one.name.lower().replace("_", "-")
        assert one.address == f"rules/#{one.name}"
        assert one.page.what


@pytest.mark.parametrize(
    ("said", "first"),
    [
        ("count-difers", "count-differs"),
        ("will-rufle", "will-ruffle"),
        ("turn-mising", "turn-missing"),
        ("stiches-left-over", "stitches-left-over"),
    ],
)
def test_a_misspelt_rule_has_its_nearest_first(said: str, first: str) -> None:
    near = nearest_rules(said)
    assert near[0] == first
    assert 1 <= len(near) <= 4


def test_a_name_like_no_rule_gets_the_first_four() -> None:
    assert nearest_rules("0000") == [one.name for one in RULES[:4]]


@pytest.mark.parametrize(
    ("file", "address"),
    [
        ("Tide Cloth.yml", "tide-cloth"),
        ("patterns/--Tide__Cloth--.yaml", "tide-cloth"),
        ("Ärmel & Öse 2.yml", "armel-ose-2"),
        ("!!!.yml", "pattern"),
        ("海.yml", "pattern"),
    ],
)
def test_the_address_of_a_file(file: str, address: str) -> None:
    assert slug(file) == address


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ('desinger: "The library"', ["unknown-field"]),
        ('notes: !!python/object:x ["y"]', ["wrong-type"]),
        ('notes: "' + "so long " * 4_000 + '"', ["too-large"]),
        ('care: "Wash it, {by hand', ["not-yaml"]),
    ],
)
def test_a_slip_in_the_file_is_one_finding(line: str, told: list[str]) -> None:
    text = framed("").replace("designer: ", "# ") if line.startswith("desinger") else framed("")
    assert [one.rule for one in check(f"{text}{line}\n".encode(), "f.yml").findings] == told


def test_two_files_for_one_address_and_the_same_file_twice() -> None:
    shelf = Shelf()
    one, other = (load(framed("").encode(), name) for name in ("tide cloth.yml", "Tide-Cloth.yml"))
    assert shelf.place(one) == []
    assert shelf.place(one) == []
    (found,) = shelf.place(other)
    assert found.file == "Tide-Cloth.yml"
    assert found.severity == "error"
    assert found.message == "This file would make the same page as tide cloth.yml."
    assert found.working == "Both names give the address “tide-cloth”."


OLD = Published("1.0.0", {"base": {"round 1": "8", "round 2": "16"}, "ear": {"round 1": "6"}})


@pytest.mark.parametrize(
    ("counts", "piece", "working"),
    [
        (
            {**OLD.counts, "base": {"round 1": "8", "round 2": "18"}},
            "base",
            "“base”, round 2 had 16, and has 18",
        ),
        ({**OLD.counts, "base": {"round 1": "8"}}, "base", "“base”, round 2 had 16, and has none"),
        (
            {**OLD.counts, "ear": {"round 1": "6", "round 2": "6"}},
            "ear",
            "“ear”, round 2 had no count, and has 6",
        ),
        ({"base": OLD.counts["base"]}, "ear", "“ear”, round 1 had 6, and has none"),
        ({**OLD.counts, "tail": {"round 1": "5"}}, "tail", "“tail”, round 1 had no count, and has 5"),
    ],
)
def test_a_count_changed_under_the_same_version(
    counts: dict[str, dict[str, str]], piece: str, working: str
) -> None:
    source = load(framed("version: 1.0.0").encode(), "case.yml")
    (found,) = changed(source, OLD, Published("1.0.0", counts))
    assert (found.rule, found.severity, found.piece) == ("changed-without-version", "warning", piece)
    assert found.message == "Counts have changed since version 1.0.0 was published, and the version hasn't."
    assert found.working == f"In {working} now."
    assert found.location == source.locate(("version",))
    assert found.suggestion is not None
    assert (found.suggestion.applies, found.suggestion.replacement) == ("fill-in", None)
    assert "Raise “version”" in found.suggestion.text


@pytest.mark.parametrize(
    "now", [OLD, Published("1.0.1", {"base": {"round 1": "9"}}), Published("", {"base": {"round 1": "9"}})]
)
def test_the_same_counts_or_another_version_are_no_matter(now: Published) -> None:
    source = load(framed("version: 1.0.0").encode(), "case.yml")
    assert list(changed(source, OLD, now)) == []


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("*sc in next st; rep from * around", "*sc in next st; rep from * around"),
        (
            "*dc in next st, ch 3, sk next 3 stitches, dc in next st, ch 1, **sk next st; rep from * across",
            "*dc in next st, ch 3, … **sk next st; rep from * across",
        ),
        (
            "Work all the stitches of the sleeve that the yoke has left over into the other sleeve",
            "Work all the stitches of the sleeve … has left over into the other sleeve",
        ),
        ("x" * 80, "x" * 36 + " … " + "x" * 36),
    ],
)
def test_a_long_quotation_is_cut_at_commas_or_between_words(text: str, shown: str) -> None:
    assert quote(text) == f"“{shown}”"
