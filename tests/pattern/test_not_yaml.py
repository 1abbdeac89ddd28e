"""Files that aren't YAML: each with the stretch that is marked, and whether the cure cures it."""

from collections.abc import Callable

import pytest

from loopleaf.pattern import Finding, load
from loopleaf.pattern.composing import compose

CURED = [
    # name, text, marked, words in the message
    (
        "asterisk",
        "w: *sc in next st; rep from * around\n",
        "*sc in next st; rep from * around",
        "begins with `*`",
    ),
    ("lone asterisk", "w: *sc\n", "*sc", "begins with `*`"),
    ("asterisk in braces", "a: {w: *sc in next st, c: 3}\n", "*sc in next st", "begins with `*`"),
    ("asterisk in a list", "a:\n  - *sc in next st\n", "*sc in next st", "begins with `*`"),
    ("at sign", "w: @help\n", "@help", "begins with `@`"),
    ("per cent", "w: %50\n", "%50", "begins with `%`"),
    ("ampersand", "w: & then\n", "& then", "begins with `&`"),
    ("backtick", "w: `x`\n", "`x`", "begins with ```"),
    ("upright stroke", "w: |x\n", "|x", "begins with `|`"),
    ("square bracket", "w: [sc, inc] x 6\n", "[sc, inc] x 6", "goes on after its closing `]`"),
    ("bracket in braces", "a: {w: [sc] x 6, c: 3}\n", "[sc] x 6", "goes on after its closing `]`"),
    ("after a quote", 'w: "sh" in next st\n', '"sh" in next st', 'goes on after its closing `"`'),
    ("curly bracket", "w: {sc, inc} x 6\n", "{sc, inc} x 6", "goes on after its closing `}`"),
    ("colon", "w: note: work loosely\n", "note: work loosely", "holds a colon"),
    ("colon in braces", "a: {w: sc in sp: x}\n", "sc in sp: x", "holds a colon"),
    ("colon before a remark", "w: one: two # why\n", "one: two", "holds a colon"),
    ("comma and asterisk", "a: {w: ch 1, *sc in next st}\n", "ch 1, *sc in next st", "A comma inside `{ }`"),
    ("strange escape", 'w: "\\q"\n', "\\q", "no meaning inside double quotes"),
    ("unprintable", "w: a\x01b\n", "\x01", "unprintable character here (U+0001)"),
    ("no colon, value behind it", "a: b\nwork sc in st\nc: d\n", "work", "The field `work` lacks its colon"),
    ("no colon, fields below it", "a:\n  pouch\n    b: c\n", "pouch", "`pouch` lacks its colon"),
    (
        "no colon, list below it",
        "a:\n  rounds\n  - {b: c}\n  - {b: d}\n",
        "rounds",
        "`rounds` lacks its colon",
    ),
    ("no colon, braces behind it", "a:\n  A {b: c, d: e}\n", "A", "`A` lacks its colon"),
    ("no colon, a remark between", "a: b\nhook 5 mm\n# why\nc: d\n", "hook", "`hook` lacks its colon"),
    ("no space", "a: b\nterms:US\nc: d\n", "terms:", "lacks the space behind its colon"),
    ("remark in braces", "a: {w: #3b6e6a, c: 3}\n", "#3b6e6a", "hides the rest of its line"),
]
FOUND = [
    ("tab", "a:\n\tb: c\n", "\t", "Line 2 has a tab"),
    ("open quote", 'a: "abc\nb: c\n', '"abc', "The quote that opens here is never closed"),
    ("open brace", "a: {b: c\nd: e\n", "{b: c", "The curly bracket that opens here is never closed"),
    (
        "open quote in braces",
        'a: {b: "c d, e: 12}\nf: "g"\n',
        '{b: "c d, e: 12}',
        "The quote before “c d, e: 12}…” is never closed",
    ),
    ("open bracket", "a: [b, c\nd: e\n", "[b, c", "The square bracket that opens here is never closed"),
    ("set in too far", "a: b\n c: d\n", "c: d", "Line 2 doesn't fit the lines around it"),
    ("set in too far, below words", "a: work it\n c: d\n", "c: d", "Line 2 doesn't fit the lines around"),
    ("list among fields", "a: b\n- c\n", "- c", "Line 2 doesn't fit the lines around it"),
    ("two documents", "pieces: b\n---\nc: d\n", "---", "A second document begins here"),
]
FINE = [
    "w: First work around\n  and count the rest\n",
    "a: {w: sc, 'count 12': b}\n",
    "w: sc in next st; rep from * around\n",
    'w: "*sc in next st; rep from * around"\n',
    "w: mail me@example.org\n",
    "w: 50% wool\n",
    "w: (sc, inc) x 6\n",
    "w: [sc, inc]\n",
    "w: 6:10\n",
    "w: ch 1,\tsc\n",
    "a: {w: 'ch 1, *sc in next st'}\n",
    "a: &x one\nb: *x\n",
    "---\na: b\n",
    "a: one # with a remark\n",
]


def finding(text: str) -> Finding:
    """The one finding of a file."""
    findings = load(text.encode(), "f.yml").findings
    assert len(findings) == 1, findings
    return findings[0]


@pytest.mark.parametrize(("text", "mark", "words"), [row[1:] for row in CURED], ids=[row[0] for row in CURED])
def test_cause_and_cure(
    text: str,
    mark: str,
    words: str,
    marked: Callable[[str, Finding], str],
    mended: Callable[[str, Finding], str],
) -> None:
    said = finding(text)
    assert said.rule in ("not-yaml", "comma-in-braces")
    assert said.severity == "error"
    assert words in said.message
    assert marked(text, said) == mark
    root, flaws = compose(mended(text, said))
    assert root is not None
    assert not flaws


@pytest.mark.parametrize(("text", "mark", "words"), [row[1:] for row in FOUND], ids=[row[0] for row in FOUND])
def test_cause(text: str, mark: str, words: str, marked: Callable[[str, Finding], str]) -> None:
    said = next(one for one in load(text.encode(), "f.yml").findings if one.rule == "not-yaml")
    assert words in said.message
    assert marked(text, said) == mark
    assert said.working
    assert said.suggestion is not None


@pytest.mark.parametrize("text", FINE)
def test_near_misses(text: str) -> None:
    assert compose(text)[1] == []


def test_all_at_once() -> None:
    text = "a: *sc in next st\nb: fine\nc: @x y\nd: one: two\ne: {f: 40 (48, 56)}\npieces: {p: {worked: chain}}\n"
    found = [(one.rule, one.location.line) for one in load(text.encode(), "f.yml").findings]
    assert [one for one in found if one[0] != "unknown-field" and one[0] != "field-missing"] == [
        ("not-yaml", 1),
        ("not-yaml", 3),
        ("not-yaml", 4),
        ("comma-in-braces", 5),
    ]


def test_the_other_tabs_are_counted_not_repeated() -> None:
    said = finding("a:\n\tb: c\n\td: e\n\tf: g\n")
    assert "2 more lines begin with a tab" in said.working


def test_columns_after_letters_beyond_ascii(marked: Callable[[str, Finding], str]) -> None:
    text = "t: {a: 😀é, w: [sc] x 6}\n"
    said = finding(text)
    assert marked(text, said) == "[sc] x 6"
    assert said.location.column == 15


def test_crlf_files(marked: Callable[[str, Finding], str]) -> None:
    text = "a: b\r\nw: *sc in next st\r\n"
    said = finding(text)
    assert (said.location.line, said.location.column, said.location.end_column) == (2, 4, 18)


IN_BRACES = [
    ("a: {round 1, work: b}\n", "round", ("round", "1")),
    (
        'a: {b: 1, work "ch 1, 12 sc in ring, join", count: 12}\n',
        "work",
        ("work", "ch 1, 12 sc in ring, join"),
    ),
    ("a: {b: c, count 12}\n", "count", ("count", "12")),
]


@pytest.mark.parametrize(("text", "mark", "read"), IN_BRACES)
def test_a_field_in_braces_without_its_colon(text: str, mark: str, read: tuple[str, str]) -> None:
    root, (flaw,) = compose(text)
    assert (flaw.rule, text[flaw.start : flaw.end]) == ("unknown-field", mark)
    assert flaw.message == f"The field `{mark}` lacks its colon."
    assert flaw.suggestion is not None
    assert root is not None
    field = root.child("a")
    assert field is not None
    assert read in [(key.text, value.text) for key, value in field.fields]
    mended = f"{text[: flaw.start]}{flaw.suggestion.replacement}{text[flaw.end :]}"
    assert compose(mended)[1] == []


@pytest.mark.parametrize(
    "text", ["a: {note: Turn, row 2 follows}\n", "a: {row: 2, note: First, row 2, and on}\n"]
)
def test_words_of_a_cut_value_are_no_field(text: str) -> None:
    assert [flaw.rule for flaw in compose(text)[1]] == ["comma-in-braces"]
