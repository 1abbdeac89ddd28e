"""SARIF 2.1.0 (OASIS Standard, 27 March 2020, sections named below), as other tools read it."""

import json
from pathlib import PurePosixPath
from typing import Any

from loopleaf import __version__
from loopleaf.publish.sarif import report, uri
from loopleaf.review import RULES, check
from tests.review.frame import framed

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


def test_addresses_are_relative_to_the_folder() -> None:
    assert uri("/shelf/patterns/a.yml", PurePosixPath("/shelf")) == "patterns/a.yml"
    assert uri("/elsewhere/a.yml", PurePosixPath("/shelf")) == "file:///elsewhere/a.yml"
    assert uri("-") == "stdin"
