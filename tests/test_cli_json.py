"""The JSON that other programs read: its fields, names and numbers."""

import json
from collections.abc import Callable
from typing import Any

from loopleaf.publish.json_report import report
from loopleaf.review import check
from tests.review.frame import framed

GAUGE = "gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}\n"
BASE = (
    "rounds:\n"
    '  - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}\n'
    '  - {rounds: 2-3, work: "ch 1, (inc, hdc in next n sts) x 8, join", n: {from: 0, step: 1}}\n'
)


def of(fragment: str) -> Any:
    """The object of one file."""
    (found,) = json.loads(report([check(framed(fragment).encode(), "patterns/case.yml")]))
    return found


def rounds(fragment: str) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = of(fragment)["pieces"][0]["rounds"]
    return found


def test_one_entry_for_each_round_worked() -> None:
    entries = rounds(BASE)
    assert [entry["label"] for entry in entries] == ["1", "2", "3"]
    assert [entry["count"] for entry in entries] == [8, 16, 24]
    assert [entry["uses"] for entry in entries][1:] == [8, 16]
    assert [entry["makes"] for entry in entries] == [{"hdc": 8}, {"hdc": 16}, {"hdc": 24}]
    assert [entry["stated"] for entry in entries] == ["8", None, None]


def test_kinds_are_in_the_files_own_terms() -> None:
    uk = 'terms: UK\nrounds:\n  - {round: 1, work: "1ch, 6dc in ring, join", count: 6}\n'
    uk += '  - {round: 2, work: "1ch, (dc in next st, 2ch, miss next st) x 3, join",\n'
    uk += '     count: "3 dc, 3 ch-2 sps"}\n'
    first, second = rounds(uk)
    assert first["makes"] == {"dc": 6}
    assert second["makes"] == {"dc": 3, "ch-2 sp": 3}
    assert second["count"] == 3
    assert second["stated"] == "3 dc, 3 ch-2 sps"


def test_special_stitches_are_opened() -> None:
    shell = "special stitches:\n  shell: {short: sh, work: 5 dc in same st}\n"
    shell += 'rounds:\n  - {round: 1, work: "ch 1, 12 sc in ring, join", count: 12}\n'
    shell += '  - {round: 2, work: "ch 1, (sc in next st, sk 2 sts, sh in next st, sk 2 sts) x 2, join"}\n'
    assert rounds(shell)[1]["makes"] == {"sc": 2, "dc": 10}


def test_a_number_is_a_list_where_there_are_sizes() -> None:
    (entry,) = rounds(
        'sizes: [S, M]\nrounds:\n  - {round: 1, work: "ch 1, 8 (10) hdc in ring, join", count: 8 (10)}'
    )
    assert entry["count"] == [8, 10]
    assert entry["makes"] == {"hdc": [8, 10]}
    assert entry["stated"] == "8 (10)"


def test_a_round_that_a_size_does_not_work_has_null() -> None:
    text = 'sizes: [S, M]\nrounds:\n  - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}\n'
    text += '  - {round: 2, sizes: [M], work: "ch 1, hdc in each st around, join", count: 8}'
    assert rounds(text)[1]["count"] == [None, 8]


def test_the_measures() -> None:
    found = of(GAUGE + BASE)
    first = found["pieces"][0]["rounds"][0]
    # 8 stitches of 100 ÷ 14 mm, one round of 100 ÷ 10 mm
    assert first["around_mm"] == 57.1
    assert first["height_mm"] == 10.0
    assert found["pieces"][0]["shape"] == [{"shape": "flat", "rounds": "1-3"}]
    assert set(found["size"]) >= {"around_mm", "across_mm"}
    (yarn,) = found["yarn"]
    assert yarn["yarn"] == "A"
    assert yarn["metres"][0] < yarn["metres"][1]
    assert found["cords"] == []
    assert len(found["hours"]) == 2
    assert found["level"] == {"stated": None, "worked_out": "basic", "because": []}


def test_without_a_gauge_nothing_is_guessed() -> None:
    found = of(BASE)
    assert "around_mm" not in found["pieces"][0]["rounds"][0]
    assert "shape" not in found["pieces"][0]
    assert found["size"] == {}
    assert found["yarn"][0]["metres"] is None


def test_a_row_has_a_width() -> None:
    rows = "worked: rows\nstart: chain 15\nrows:\n"
    rows += '  - {row: 1, work: "hdc in 2nd ch from hook and in each ch across, turn", count: 14}\n'
    (entry,) = rounds(GAUGE + rows)
    assert entry["width_mm"] == 100.0


def test_a_file_that_cannot_be_read_has_no_pieces() -> None:
    (found,) = json.loads(report([check(b"pieces: [", "broken.yml")]))
    assert found["pieces"] == []
    assert [finding["rule"] for finding in found["findings"]] == ["not-yaml"]
    assert set(found) == {"pattern", "pieces", "findings"}


def test_the_fields_of_a_finding() -> None:
    bad = framed('rounds:\n  - {round: 1, work: "ch 1, 8 hdc in ring, join, fasten off", count: 9}')
    (found,) = json.loads(report([check(bad.encode(), "patterns/case.yml")], "https://shelf.example/"))
    (finding,) = found["findings"]
    line = bad.split("\n")[finding["line"] - 1]
    assert line[finding["column"] - 1 : finding["end_column"] - 1] == "9"
    assert finding["end_line"] == finding["line"]
    assert (finding["rule"], finding["severity"], finding["file"]) == (
        "count-differs",
        "error",
        "patterns/case.yml",
    )
    assert (finding["piece"], finding["round"]) == ("piece", "1")
    assert set(finding["suggestion"]) == {"text", "replacement", "applies"}
    assert finding["suggestion"]["applies"] == "likely"
    assert finding["url"] == "https://shelf.example/rules/#count-differs"
    (other,) = finding["related"]
    assert (
        line[other["column"] - 1 : other["end_column"] - 1].strip('"')
        == "ch 1, 8 hdc in ring, join, fasten off"
    )


def test_the_same_input_gives_the_same_bytes(golden: Callable[[str, str], None]) -> None:
    checked = check(framed(GAUGE + BASE.replace("count: 8}", "count: 9}")).encode(), "case.yml")
    assert report([checked]) == report([checked])
    golden("report.json", report([checked]))
