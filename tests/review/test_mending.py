"""What `mend` puts in, what it leaves alone, and that the rest of the file stays byte for byte."""

from dataclasses import replace
from importlib import import_module

import pytest

from loopleaf.notation import Vocabulary, parse
from loopleaf.notation.lexicon import lexicon_for
from loopleaf.pattern import Finding, Suggestion
from loopleaf.review import Checked, check, mend, rule_named
from loopleaf.review.rule import Words, told
from loopleaf.review.subject import Subject
from tests.review.frame import framed
from tests.review.test_rules import CASES, MADE

TWO = (
    "rounds:\n"
    "  - {round: 1, work: 'ch 1, 12 sc in ring, join', count: 12}   # the author's own remark\n"
    '  - {round: 2, work: "ch 1, (sc in next st, %s next st) x 6, join, fasten off",   count: 6}\n'
)


def rules(findings: tuple[Finding, ...] | list[Finding]) -> list[str]:
    return [finding.rule for finding in findings]


def mended(fragment: str) -> tuple[str, str, list[str]]:
    """The file before, after, and what is still said of it."""
    before = framed(fragment)
    done = mend(before.encode(), "case.yml")
    assert done.data.decode() == done.text
    assert check(done.data, "case.yml").findings == done.checked.findings
    return before, done.text, rules(done.checked.findings)


def test_only_the_word_changes() -> None:
    before, after, left = mended(TWO % "miss")
    assert after == before.replace("miss", "sk")
    assert left == []


def test_a_word_written_with_an_escape() -> None:
    before, after, left = mended(TWO % r"mi\x73s")
    assert after == before.replace(r"mi\x73s", "sk")
    assert left == []


def test_single_quotes_and_folded_lines() -> None:
    fragment = (
        "# the lines of a folded value stay where they are\n"
        "rounds:\n"
        "  - {round: 1, work: 'ch 1, 12 sc in ring, join', count: 12, note: 'It''s a ring.'}\n"
        "  - round: 2\n"
        "    work: >\n"
        "      ch 1, (sc in next st,\n"
        "      miss next st) x 6,\n"
        "      join, fasten off\n"
        "    count: 6\n"
    )
    before, after, left = mended(fragment)
    assert after == before.replace("miss", "sk")
    assert left == []


def test_every_place_of_a_word_at_once() -> None:
    fragment = TWO.replace(", fasten off", "") % "miss"
    fragment += (
        '  - {round: 3, work: "ch 1, (sc in next st, miss next st) x 3, join, fasten off", count: 3}\n'
    )
    before, after, left = mended(fragment)
    assert before.count("miss") == 2
    assert after == before.replace("miss", "sk")
    assert left == []


def test_what_is_only_likely_stays() -> None:
    fragment = (TWO % "miss").replace("count: 6", "count: 7")
    before, after, left = mended(fragment)
    assert after == before.replace("miss", "sk")
    assert left == ["count-differs"]


def test_windows_line_ends_and_a_mark_at_the_start_stay() -> None:
    text = framed(TWO % "miss").replace("\n", "\r\n")
    done = mend(b"\xef\xbb\xbf" + text.encode(), "case.yml")
    assert done.data == b"\xef\xbb\xbf" + text.replace("miss", "sk").encode()


def test_a_file_without_anything_certain_comes_back_as_it_was() -> None:
    for data in (framed(TWO % "sk").encode(), b"title: no pattern\n", b"\xff\xfe\x00", b""):
        done = mend(data, "case.yml")
        assert done.data == data
        assert (done.mended, done.refused) == ((), ())


def test_a_file_that_could_not_be_read() -> None:
    """The quotes make it readable; only then is the word of the other system met, and mended too."""
    fragment = (
        "rounds:\n"
        "  - {round: 1, work: ch 1, 12 sc in ring, join, count: 12}\n"
        '  - {round: 2, work: "ch 1, (sc in next st, miss next st) x 6, join, fasten off", count: 6}\n'
    )
    before = framed(fragment)
    done = mend(before.encode(), "case.yml")
    assert rules(done.mended) == ["comma-in-braces", "term-of-the-other-system"]
    expected = before.replace("ch 1, 12 sc in ring, join", '"ch 1, 12 sc in ring, join"', 1)
    assert done.text == expected.replace("miss", "sk")
    assert done.checked.findings == []


def test_a_colour_that_hides_its_line() -> None:
    fragment = "materials:\n  yarns: {A: {weight: 4, colour: #3b6e6a}}\n  hook: 5.5 mm\n"
    before, after, left = mended(fragment)
    assert after == before.replace("#3b6e6a", '"#3b6e6a"')
    assert left == []


def lines_with(words: str) -> list[str]:
    """Lines of a round that a word of either system can stand in; the lexicon says where it fits."""
    return [
        f"ch 1, ({{single}} in next st, {words} next st) x 6, join",
        f"ch 1, ({{single}} in next st, {words} 1 st) x 6, join",
        f"ch 1, {{single}} in {words} st, join",
        f"ch 1, {{single}} in next st, changing to B on last {words}, {{single}} in next st, join",
        f"{{double}} in 4th ch from hook ({words} chs count as {{double}})",
    ]


@pytest.mark.parametrize("terms", ["US", "UK"])
def test_a_travelling_word_and_its_own_give_the_same_tree(terms: str) -> None:
    vocabulary = Vocabulary(terms, {}, frozenset({"A", "B"}), frozenset())  # type: ignore[arg-type]
    names = {"single": "sc", "double": "dc"} if terms == "US" else {"single": "dc", "double": "tr"}
    tried = set()
    for first, entries in lexicon_for(vocabulary).items():
        for entry in (entry for entry in entries if entry.travels):
            words = " ".join((first, *entry.more))
            for line in lines_with("\0"):
                line = line.format(**names)
                theirs = parse(line.replace("\0", words), vocabulary)
                own = parse(line.replace("\0", entry.foreign), vocabulary)
                if theirs.line is None or not any(p.severity == "note" for p in theirs.problems):
                    continue
                assert theirs.line == own.line, (words, line)
                assert not own.problems
                tried.add(words)
    assert tried >= ({"miss", "missed", "yrh"} if terms == "US" else {"sk", "skip", "yo"})


CERTAIN = [
    (name, fragment)
    for name, case in CASES.items()
    if name not in MADE
    for fragment in [rule_named(name).page.wrong, *case.get("trips", []), *case["near misses"]]
]


def work_of(checked: Checked) -> object:
    return checked.work and [
        [(one.line, one.settled, [size and size.makes for size in one.sizes]) for one in piece.rounds]
        for piece in checked.work.pieces
    ]


@pytest.mark.parametrize(("name", "fragment"), CERTAIN)
def test_mending_keeps_every_tree_and_what_is_not_certain(name: str, fragment: str) -> None:
    """Over every case of every rule: nothing but the mended findings goes, and nothing new is said."""
    text = framed(fragment)
    before = check(text.encode(), "case.yml")
    done = mend(text.encode(), "case.yml")
    safe = [one for one in before.findings if one.suggestion and one.suggestion.applies == "safe"]
    assert done.refused == ()
    if before.work is not None:
        assert work_of(done.checked) == work_of(before)
        assert len(done.checked.findings) == len(before.findings) - len(done.mended)
        assert set(done.mended) == set(safe)
    if not safe:
        assert done.text == text


def wrongly(said: str, words: str) -> object:
    """A rule that calls a mending certain that isn't: it would change what the round makes."""

    def find(subject: Subject) -> list[Finding]:
        found = []
        for piece, round in subject.rounds():
            at = round.plan.work.find(said)
            if at >= 0:
                place = subject.source.locate(round.plan.work_path, at, at + len(said))
                wrong = Words("A word.", suggestion=Suggestion(f"Write {words}.", words, "safe"))
                found.append(told("inc_unclear", "note", subject, place, wrong, piece.name, round.plan.label))
        return found

    return find


@pytest.mark.parametrize("words", ["sc in", '", count: 6}   # ', "sk next 1 st, sk"])
def test_a_mending_that_changes_anything_else_is_refused(words: str, monkeypatch: pytest.MonkeyPatch) -> None:
    bad = replace(rule_named("inc-unclear"), find=wrongly("sk", words))  # type: ignore[arg-type]
    monkeypatch.setattr(import_module("loopleaf.review.check"), "RULES", (bad,))
    text = framed(TWO % "sk")
    done = mend(text.encode(), "case.yml")
    assert done.text == text
    assert done.mended == ()
    assert rules(done.refused) == ["inc-unclear"]


def test_one_that_is_refused_does_not_hold_up_the_others(monkeypatch: pytest.MonkeyPatch) -> None:
    bad = replace(rule_named("inc-unclear"), find=wrongly("x 3", "x 2"))  # type: ignore[arg-type]
    monkeypatch.setattr(import_module("loopleaf.review.check"), "RULES", (bad,))
    fragment = TWO.replace(", fasten off", "") % "miss"
    fragment += '  - {round: 3, work: "ch 1, (sc in next st, sk next st) x 3, join, fasten off", count: 3}\n'
    text = framed(fragment)
    done = mend(text.encode(), "case.yml")
    assert done.text == text.replace("miss", "sk")
    assert rules(done.mended) == ["term-of-the-other-system"]
    assert set(rules(done.refused)) == {"inc-unclear"}
