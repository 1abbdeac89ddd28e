"""SARIF 2.1.0 (OASIS Standard, 27 March 2020, sections named below), as other tools read it."""

import json
from pathlib import PurePosixPath
from typing import Any

import pytest

from loopleaf import __version__
from loopleaf.publish.sarif import report, uri
from loopleaf.review import RULES, check, rule_named
from tests.review.frame import framed
from tests.review.test_rules import CASES

BAD = framed('rounds:\n  - {round: 1, work: "ch 1, 8 hdc in ring, join, fasten off", count: 9}')


def run(text: str, file: str = "patterns/tide cloth.yml", site: str = "https://shelf.example/") -> Any:
    found = json.loads(report([check(text.encode(), file)], site))
    assert found["version"] == "2.1.0"
    (only,) = found["runs"]
    return only


def test_the_driver_names_every_rule() -> None:
    driver = run(BAD)["tool"]["driver"]
    assert (driver["name"], driver["version"]) == ("Loopleaf", __version__)
    assert driver["informationUri"] == "https://shelf.example/"
    assert [rule["id"] for rule in driver["rules"]] == [rule.name for rule in RULES]
    for rule in driver["rules"]:
        assert rule["shortDescription"]["text"]
        assert rule["fullDescription"]["text"]
        assert rule["helpUri"] == f"https://shelf.example/rules/#{rule['id']}"
        assert rule["defaultConfiguration"]["level"] in {"error", "warning", "note"}  # section 3.50.3


def test_without_a_site_there_are_no_addresses() -> None:
    driver = run(BAD, site="")["tool"]["driver"]
    assert "informationUri" not in driver
    assert not any("helpUri" in rule for rule in driver["rules"])


def test_a_result_points_at_its_stretch() -> None:
    found = run(BAD)
    assert found["columnKind"] == "unicodeCodePoints"  # section 3.14.27
    (result,) = found["results"]
    assert found["tool"]["driver"]["rules"][result["ruleIndex"]]["id"] == result["ruleId"] == "count-differs"
    assert result["level"] == "error"
    place = result["locations"][0]["physicalLocation"]
    assert place["artifactLocation"]["uri"] == "patterns/tide%20cloth.yml"  # section 3.10.1: RFC 3986
    region = place["region"]
    line = BAD.split("\n")[region["startLine"] - 1]
    assert line[region["startColumn"] - 1 : region["endColumn"] - 1] == "9"
    assert result["relatedLocations"][0]["message"]["text"]


def test_a_fix_replaces_that_stretch() -> None:
    (result,) = run(BAD)["results"]
    (change,) = result["fixes"][0]["artifactChanges"]
    (replacement,) = change["replacements"]
    assert replacement["deletedRegion"] == result["locations"][0]["physicalLocation"]["region"]
    assert replacement["insertedContent"]["text"] == "8"


def test_fingerprints_stay_when_lines_move() -> None:
    moved = "# a remark above\n\n" + BAD
    (before,), (after,) = run(BAD)["results"], run(moved)["results"]
    assert before["locations"] != after["locations"]
    assert before["partialFingerprints"] == after["partialFingerprints"]
    other = BAD.replace("count: 9", "count: 7")
    assert run(other)["results"][0]["partialFingerprints"] != before["partialFingerprints"]


def mended(text: str, result: Any) -> str:
    """The file with a result's fix put in, as section 3.57 says: each region deleted, its text inserted."""
    starts = [0]
    for line in text.splitlines(keepends=True):
        starts.append(starts[-1] + len(line))
    (fix,) = result["fixes"]
    (change,) = fix["artifactChanges"]
    assert change["artifactLocation"] == result["locations"][0]["physicalLocation"]["artifactLocation"]
    for one in sorted(change["replacements"], key=lambda r: r["deletedRegion"]["startLine"], reverse=True):
        at = one["deletedRegion"]
        start = starts[at["startLine"] - 1] + at["startColumn"] - 1
        end = starts[at["endLine"] - 1] + at["endColumn"] - 1
        text = text[:start] + one["insertedContent"]["text"] + text[end:]
    return text


MISSED = framed(
    "rounds:\n"
    '  - {round: 1, work: "ch 1, 12 sc in ring, join", count: 12, note: Ein schöner Kreis 🧶}\n'
    '  - {round: 2, note: "🧶 mind", work: "ch 1, (sc in next st, miss next st) x 6, join", count: 6}\n'
    "  - {round: 3, work: 'ch 1, (sc in next st, miss next st) x 3, join, fasten off', count: 3}\n"
)


def test_a_fix_mends_every_place_of_a_word() -> None:
    """Columns count code points, also behind a sign that UTF-16 writes as two."""
    (result,) = run(MISSED)["results"]
    assert len(result["relatedLocations"]) == 1
    after = mended(MISSED, result)
    assert after == MISSED.replace("miss", "sk")
    assert run(after)["results"] == []


def test_a_suggestion_with_a_blank_is_no_fix() -> None:
    found = run(framed("# without licence"))
    assert [result["ruleId"] for result in found["results"]] == ["licence-missing"]
    assert "fixes" not in found["results"][0]


def test_findings_that_say_the_same_have_fingerprints_of_their_own() -> None:
    text = framed("pieces:\n  a: {worked: chain, length: 3 ells}\n  b: {worked: chain, length: 3 ells}\n")
    prints = [result["partialFingerprints"]["loopleaf/v1"] for result in run(text)["results"]]
    assert len(prints) >= 2
    assert len(set(prints)) == len(prints)
    here = json.loads(report([check(BAD.encode(), "/shelf/a.yml")], "", PurePosixPath("/shelf")))
    there = json.loads(report([check(BAD.encode(), "a.yml")]))
    assert (
        here["runs"][0]["results"][0]["partialFingerprints"]
        == (there["runs"][0]["results"][0]["partialFingerprints"])
    )


@pytest.mark.parametrize("name", sorted(CASES))
def test_every_rule_s_findings_are_well_formed(name: str) -> None:
    """The fields that the standard asks for, and no others than it knows, over every wrong example."""
    text = framed(rule_named(name).page.wrong)
    found = run(text)
    assert set(found) == {"tool", "columnKind", "artifacts", "results"}
    lines = text.split("\n")
    assert all(0 <= result["ruleIndex"] < len(RULES) for result in found["results"])
    for result in found["results"]:
        needed = {"ruleId", "ruleIndex", "level", "message", "locations", "partialFingerprints"}
        assert needed <= set(result) <= needed | {"relatedLocations", "fixes"}
        assert result["level"] in {"error", "warning", "note"}  # section 3.27.10
        assert result["message"]["text"].strip()  # section 3.11.8
        places = [*result["locations"], *result.get("relatedLocations", [])]
        for place in places:
            region = place["physicalLocation"]["region"]
            assert 1 <= region["startLine"] <= region["endLine"] <= len(lines)  # section 3.30
            assert region["startColumn"] >= 1
            if region["startLine"] == region["endLine"]:
                assert region["startColumn"] <= region["endColumn"]
            assert region["endColumn"] <= len(lines[region["endLine"] - 1]) + 1
        ids = [place["id"] for place in result.get("relatedLocations", [])]
        assert ids == list(range(1, len(ids) + 1))  # section 3.28.2


def test_addresses_are_relative_to_the_folder() -> None:
    assert uri("/shelf/patterns/a.yml", PurePosixPath("/shelf")) == "patterns/a.yml"
    assert uri("/elsewhere/a.yml", PurePosixPath("/shelf")) == "file:///elsewhere/a.yml"
    assert uri("-") == "stdin"
