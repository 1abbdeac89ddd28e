"""Values that don't fit the model: what is said, what is marked, what is advised."""

from collections.abc import Callable

import pytest

from loopleaf.pattern import Finding, Source

Read = Callable[[str], Source]
Change = Callable[[str, str], str]
Marked = Callable[[str, Finding], str]

# changed from, to, rule, marked, message, replacement (None: words only)
TOLD = [
    (
        "hook: 5.5 mm",
        "hook: 5.5e999 mm",
        "wrong-type",
        "5.5e999 mm",
        "`hook` is `5.5e999 mm`, which isn't a hook's size in millimetres.",
        None,
    ),
    (
        "designer:",
        "desinger:",
        "unknown-field",
        "desinger",
        "`desinger` isn't a field of a pattern.",
        "designer",
    ),
    ("licence:", "license:", "unknown-field", "license", "`license` isn't a field of a pattern.", "licence"),
    ("gauge:", "tension:", "unknown-field", "tension", "`tension` isn't a field of a pattern.", "gauge"),
    (
        "finished size:",
        "finished_size:",
        "unknown-field",
        "finished_size",
        "`finished_size` isn't a field of a pattern.",
        "finished size",
    ),
    ('colour: "#3', 'color: "#3', "unknown-field", "color", "`color` isn't a field of a yarn.", "colour"),
    ("count: 8}", "cuont: 8}", "unknown-field", "cuont", "`cuont` isn't a field of a round or row.", "count"),
    (
        "work: 5 dc",
        "wrok: 5 dc",
        "unknown-field",
        "wrok",
        "`wrok` isn't a field of a special stitch.",
        "work",
    ),
    ("    make: 1", "    count: 1", "unknown-field", "count", "`count` isn't a field of a piece.", None),
    ("title: Lantern pouch\n", "", "field-missing", "designer", "The pattern has no `title`.", None),
    ("terms: US\n", "", "field-missing", "title", "The pattern has no `terms`.", None),
    ("    worked: joined rounds\n", "", "field-missing", "pouch", "This piece has no `worked`.", None),
    (', work: "ch 1, 8 hdc in ring, join"', "", "field-missing", "round", "This entry has no `work`.", None),
    ("{round: 1, side", "{side", "field-missing", "side", "This entry has no `round`.", None),
    (
        "    length: {times: 2, around: pouch, round: 4}\n",
        "",
        "field-missing",
        "cord",
        "This piece has no `length`.",
        None,
    ),
    ("times: 2, around: pouch, ", "times: 2, ", "field-missing", "length", "This has no `around`.", None),
    ("title: Lantern pouch", "title:", "wrong-type", "", "`title` has nothing after it.", None),
    (
        "title: Lantern pouch",
        "title: [a]",
        "wrong-type",
        "[a]",
        "`title` holds a list where text should stand.",
        None,
    ),
    ("title: Lantern pouch", "title: ''", "wrong-type", "''", "`title` is empty.", None),
    ("make: 1\n", "make: one\n", "wrong-type", "one", "`make` is `one`, which isn't a whole number.", None),
    ("terms: US", "terms: AU", "wrong-type", "AU", "`terms` is `AU`, which isn't `US` or `UK`.", None),
    (
        "level: easy",
        "level: eazy",
        "wrong-type",
        "eazy",
        "`level` is `eazy`, which isn't `basic`, `easy`, `intermediate` or `complex`.",
        "easy",
    ),
    (
        "joined rounds",
        "joined round",
        "wrong-type",
        "joined round",
        "`worked` is `joined round`, which isn't",
        "joined rounds",
    ),
    ("2026-10-02", "2. 10. 2026", "wrong-type", "2. 10. 2026", "which isn't a day, year first.", None),
    (
        "2026-10-02",
        "2026-02-30",
        "wrong-type",
        "2026-02-30",
        "which isn't a day that is in the calendar",
        None,
    ),
    ('"12:30"', "long", "wrong-type", "long", "`length` is `long`, which isn't minutes and seconds.", None),
    (
        "blocked: no",
        "blocked: maybe",
        "wrong-type",
        "maybe",
        "`blocked` is `maybe`, which isn't yes or no.",
        None,
    ),
    ('"#e6d9bd"', "oat", "wrong-type", "oat", "`colour` is `oat`, which isn't a colour", None),
    (
        "weight: 4, name: lichen",
        "weight: 9, name: lichen",
        "wrong-type",
        "9",
        "which isn't the yarn weight's number",
        None,
    ),
    (
        "hdc: does not count",
        "hdc: perhaps",
        "wrong-type",
        "perhaps",
        "which isn't `counts` or `does not count`.",
        None,
    ),
    ("hook: 5.5 mm", "hook: five", "wrong-type", "five", "which isn't a hook's size in millimetres.", None),
    (
        "start: magic ring",
        "start: slip knot",
        "wrong-type",
        "slip knot",
        "`start` is `slip knot`, which isn't a way to begin",
        None,
    ),
    (
        "start: magic ring",
        "start: {multiple: 4}",
        "wrong-type",
        "multiple",
        "This start has neither a chain nor the edge",
        None,
    ),
    ("over: 10 cm, ", "", "wrong-type", "stitch", "This gauge doesn't say over what length", None),
    (
        "rounds: 2-3",
        "rounds: 3-2",
        "wrong-type",
        "3-2",
        "which isn't a run with its smaller number first.",
        None,
    ),
    (
        "- heading: Base",
        "- heading: Base\n        text: Fold.",
        "wrong-type",
        "heading",
        "This entry is more than one thing",
        None,
    ),
    ("{round: 4,", "{round: 4, as: 2,", "wrong-type", "round", "`work` stands here beside", None),
    (
        "{round: 4, work:",
        "{round: 4, as: 2, repeat: 2-3, note:",
        "wrong-type",
        "round",
        "stand here together",
        None,
    ),
    ("{round: 4,", "{rounds: 4 on,", "field-missing", "rounds", "This entry has no `until`.", None),
    ("{round: 4,", "{round: 4, until: 3 cm,", "wrong-type", "round", "`until` stands beside", None),
    ("{round: 4,", "{round: 4, every: 0,", "wrong-type", "round", "`every: 0` would work none", None),
    (
        "- text: Weave in the ends.",
        "- text: Weave.\n    knot: Tie.",
        "wrong-type",
        "text",
        "more than one step",
        None,
    ),
    ("- text: Weave in the ends.", "- note: Weave.", "field-missing", "note", "This has no `text`.", None),
    (
        "pieces:\n",
        "pieces: all\nold:\n",
        "wrong-type",
        "all",
        "`pieces` is `all`, where fields of its own should stand.",
        None,
    ),
]


@pytest.mark.parametrize(("old", "new", "rule", "mark", "message", "replacement"), TOLD)
def test_told(
    old: str,
    new: str,
    rule: str,
    mark: str,
    message: str,
    replacement: str | None,
    changed: Change,
    read: Read,
    marked: Marked,
) -> None:
    text = changed(old, new)
    said = read(text).findings[0]
    assert (said.rule, marked(text, said)) == (rule, mark)
    assert message in said.message
    assert said.suggestion is not None
    assert said.suggestion.replacement == replacement
    assert said.suggestion.applies == ("likely" if replacement else "fill-in")


@pytest.mark.parametrize("row", [row for row in TOLD if row[5]])
def test_the_cure_cures(
    row: tuple[str, ...], changed: Change, read: Read, mended: Callable[[str, Finding], str]
) -> None:
    text = changed(row[0], row[1])
    (said,) = read(text).findings
    assert read(mended(text, said)).findings == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("make: 1\n", "make: '1'\n"),
        ("terms: US", "terms: us"),
        ("level: easy", "level: Easy"),
        ("blocked: no", "blocked: 'Yes'"),
        ("hook: 5.5 mm", "hook: [5.5 mm, {size: 4 mm, for: ribs}, 3 mm for the cord]"),
        ("notions: [tapestry needle, stitch marker]", "notions: tapestry needle"),
        ("gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm, blocked: no}", "gauge: not critical"),
        ("tags: [pouch, home]", "tags: [no, 6:10]"),
        ("start: magic ring", "start: Magic circle"),
        ("work: 5 dc in same st", "yarn overs: 6"),
        ("rounds: 2-3", "rounds: 2 – 3"),
        ("turning chains: {hdc: does not count, sc: counts as sc}", "turning chains: do not count"),
        ("length: {times: 2, around: pouch, round: 4}", "length: 80 cm"),
        (
            'video: {url: "https://example.org/lantern-pouch", length: "12:30"}',
            "video: https://example.org/x",
        ),
        ("version: 1.10", "version: 2"),
    ],
)
def test_near_misses(old: str, new: str, changed: Change, read: Read) -> None:
    source = read(changed(old, new))
    assert source.findings == []
    assert source.pattern is not None


def test_the_nearest_field_first_and_where_the_name_belongs(changed: Change, read: Read) -> None:
    (said,) = read(changed("    make: 1", "    count: 1")).findings
    assert "`count` is a field of a round or row." in said.working


def test_a_misspelt_field_is_not_missing_too(changed: Change, read: Read) -> None:
    for old, new in (("title: Lantern", "titel: Lantern"), ('work: "ch 1, 8', 'wokr: "ch 1, 8')):
        assert [one.rule for one in read(changed(old, new)).findings] == ["unknown-field"]


def test_a_hash_without_quotes(
    changed: Change, read: Read, marked: Marked, mended: Callable[[str, Finding], str]
) -> None:
    text = changed('    B: {weight: 4, name: oat, colour: "#e6d9bd"}', "    B:\n      colour: #e6d9bd")
    (said,) = read(text).findings
    assert (said.rule, marked(text, said)) == ("wrong-type", "#e6d9bd")
    assert "only a remark" in said.message
    assert read(mended(text, said)).findings == []


def test_the_very_number_is_marked(changed: Change, read: Read, marked: Marked) -> None:
    text = changed("{from: 16, step: 8}", '"40 (48, 1000000000)"').replace(
        "rounds: 2-3", "rounds: 2-1000000000"
    )
    (said,) = read(text).findings
    assert (said.rule, marked(text, said)) == ("number-too-large", "1000000000")
    assert "10,000" in said.working


def test_what_only_shows_once_the_rest_is_mended(changed: Change, read: Read) -> None:
    text = changed("designer:", "desinger:").replace("{round: 4, work", "{round: 4, as: 2, work")
    assert [one.rule for one in read(text).findings] == ["unknown-field", "wrong-type"]


@pytest.mark.parametrize(
    ("grid", "message"),
    [
        ("{rows: ['#.', '.'], key: {'#': A, '.': B}}", "Row 2 of the grid has 1 square, and the first has 2"),
        ("{rows: ['#.'], key: {'#': A}}", "The key of the grid doesn't say what `.` means."),
        ("{rows: ['#.'], key: {'#': A, dot: B}}", "a name of more than one sign"),
    ],
)
def test_grids_that_do_not_read(grid: str, message: str, changed: Change, read: Read) -> None:
    (said,) = read(changed("    make: 1\n", f"    make: 1\n    grid: {grid}\n")).findings
    assert said.rule == "wrong-type"
    assert message in said.message


def test_rounds_and_rows(changed: Change, read: Read) -> None:
    text = changed("    make: 1\n", '    make: 1\n    rows: [{row: 1, work: "sc in each ch across"}]\n')
    (said,) = read(text).findings
    assert "`rounds` and `rows` stand here together" in said.message
