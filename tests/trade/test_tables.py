"""The reference tables: every row has its source, keys are unique, sentences can be said."""

import dataclasses
import re
from typing import Any

import pytest

from loopleaf import trade
from loopleaf.trade.rows import StitchNames

TABLES = {
    name: getattr(trade, name)()
    for name in (
        "stitches",
        "stitch_forms",
        "abbreviations",
        "phrases",
        "yarn_weights",
        "hooks",
        "steel_hooks",
        "levels",
        "techniques",
        "cautions",
        "conditions",
        "papers",
        "licences",
        "fabrics",
    )
}
ROWS = [
    pytest.param(row, id=f"{name}-{index}") for name, rows in TABLES.items() for index, row in enumerate(rows)
]


@pytest.mark.parametrize("row", ROWS)
def test_every_row_has_a_source(row: Any) -> None:
    assert len(row.source.strip()) >= len("ISO 216")


@pytest.mark.parametrize("row", ROWS)
def test_every_sentence_can_be_said_in_both_terms(row: Any) -> None:
    for field in ("how", "meaning", "text", "learn"):
        sentence = getattr(row, field, None)
        if sentence is None:
            continue
        for terms in ("US", "UK"):
            said = trade.say(sentence, terms)
            assert said
            assert "{" not in said


@pytest.mark.parametrize("row", ROWS)
def test_ranges_run_upward(row: Any) -> None:
    for field in dataclasses.fields(row):
        value = getattr(row, field.name)
        if isinstance(value, tuple) and len(value) == 2 and all(isinstance(v, float) for v in value):
            assert 0 < value[0] <= value[1]


@pytest.mark.parametrize("name", TABLES)
def test_no_key_stands_twice(name: str) -> None:
    def key(row: Any) -> Any:
        return next(
            getattr(row, field)
            for field in ("key", "number", "mm", "spdx")
            if getattr(row, field, None) is not None
        )

    keys = [key(row) for row in TABLES[name]]
    assert len(set(keys)) == len(keys)


def _all_names(names: StitchNames) -> set[str]:
    return {
        names.short,
        names.short_plural,
        names.name,
        names.plural,
        *names.alternatives,
        *names.other_names,
    }


@pytest.mark.parametrize("terms", ["US", "UK"])
def test_no_name_means_two_stitches_in_one_terminology(terms: trade.Terms) -> None:
    seen: dict[str, str] = {}
    for row in trade.stitches():
        for name in _all_names(row.names(terms)):
            assert seen.setdefault(name, row.key) == row.key, f"{name} is {seen[name]} and {row.key}"


@pytest.mark.parametrize("form", trade.stitch_forms(), ids=lambda form: form.key)
def test_a_form_is_filled_from_the_stitch(form: trade.FormRow) -> None:
    for terms in ("US", "UK"):
        for name in _all_names(form.names(terms)):
            filled = name.format(short="dc", name="double crochet", plural="double crochet", number=3)
            assert not re.search(r"[{}]", filled)


def test_a_key_that_the_table_lacks_is_refused() -> None:
    with pytest.raises(KeyError):
        trade.stitch("loop-the-loop")


def test_every_technique_and_condition_is_used_by_name() -> None:
    conditions = {row.key for row in trade.conditions()}
    asked = {key for row in trade.cautions() for key in (*row.earned_by, *row.only_with)}
    assert asked == conditions


def test_say_uses_each_terminologys_own_words() -> None:
    assert trade.say("{yarn over}, then {skip} a {double}.", "US") == "Yarn over, then skip a double crochet."
    assert trade.say("{yarn over}, then {skip} a {double}.", "UK") == "Yarn round hook, then miss a treble."
    assert trade.say("{treble plural}", "UK") == "double trebles"
    assert trade.say("3 {double short}", "UK") == "3 tr"


@pytest.mark.parametrize("row", trade.cautions(), ids=lambda row: row.key)
def test_cautions_that_touch_sold_goods_defer_to_the_place_of_sale(row: trade.CautionRow) -> None:
    if row.standards:
        assert "the tests that the place of sale requires" in row.text
    assert "must" not in row.text.split()


@pytest.mark.parametrize("row", trade.cautions(), ids=lambda row: row.key)
def test_a_standard_has_its_year(row: trade.CautionRow) -> None:
    """A standard is known by its year, a regulation (CFR) by the year that it was made; the page says besides
    that the edition in force decides. A year that no page that was read names is marked as from memory.
    """
    for standard in row.standards:
        by_year = r"\b(?:of|:) ?(?:19|20)\d\d\b" if "CFR" in standard.name else r":(?:19|20)\d\d\b"
        assert re.search(by_year, standard.name), standard.name


@pytest.mark.parametrize(
    ("name", "terms", "key", "post"),
    [
        ("sc", "US", "single", ""),
        ("dc", "US", "double", ""),
        ("dc", "UK", "single", ""),
        ("Half  Treble", "UK", "half", ""),
        ("trebles", "UK", "double", ""),
        ("FPdc", "US", "double", "front"),
        ("FPtr", "UK", "double", "front"),
        ("RtrB", "UK", "double", "back"),
        ("crab stitch", "US", "reverse-single", ""),
        ("fur stitch", "US", "loop-single", ""),
        ("lp sts", "UK", "loop-single", ""),
    ],
)
def test_a_stitch_is_found_by_any_of_its_names(name: str, terms: trade.Terms, key: str, post: str) -> None:
    found = trade.stitch_named(name, terms)
    assert found is not None
    assert (found[0].key, found[1]) == (key, post)


@pytest.mark.parametrize(("name", "terms"), [("htr", "US"), ("hdc", "UK"), ("wave", "US"), ("loop dc", "US")])
def test_a_name_of_the_other_side_is_none_here(name: str, terms: trade.Terms) -> None:
    assert trade.stitch_named(name, terms) is None


def test_rows_give_the_readers_words() -> None:
    medium = trade.yarn_weights()[4]
    assert (medium.names("US")[0], medium.names("UK")[0]) == ("worsted", "aran")
    (skip,) = [row for row in trade.abbreviations() if row.key == "skip"]
    assert (skip.word("US").short, skip.word("UK").short) == ("sk", "miss")


def test_a_technique_by_its_key() -> None:
    assert trade.technique("posts").level == "intermediate"
    with pytest.raises(KeyError):
        trade.technique("juggling")


def test_hooks_by_millimetres_and_weights_by_name() -> None:
    """Craft Yarn Council's table of hooks, as reprinted; names of weights from memory."""
    assert [trade.us_hook(mm) for mm in (5.5, 4.5, 3.5)] == ["I-9", "7", "E-4"]
    assert trade.us_hook(1.5) == next(row.us for row in trade.steel_hooks() if row.mm == 1.5)
    assert trade.us_hook(5.3) is None
    assert [row.number for row in trade.weights_named("dk")] == [3]
    assert [row.number for row in trade.weights_named("Super-Bulky")] == [6]
    assert [row.number for row in trade.weights_named("baby")] == [1, 2]
    assert trade.weights_named("string") == []
