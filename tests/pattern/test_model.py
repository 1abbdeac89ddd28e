"""The typed pattern: every field, every form it may be written in, and the schema made from it."""

from collections.abc import Callable, Iterator
from datetime import date
from typing import Any

import pytest
from pydantic import ValidationError

from loopleaf.pattern import (
    Around,
    Growing,
    Length,
    Lengths,
    Numbers,
    Pattern,
    Piece,
    Run,
    Source,
    Weight,
    load,
    schema,
)


@pytest.fixture(scope="module")
def pattern(lantern: str) -> Pattern:
    made = load(lantern.encode(), "f.yml").pattern
    assert made is not None
    return made


def test_what_stands_on_the_file(pattern: Pattern) -> None:
    assert pattern.title == "Lantern pouch"
    assert pattern.terms == "US"
    assert pattern.level == "easy"
    assert pattern.version == "1.10"
    assert pattern.published == date(2026, 10, 2)
    assert pattern.changes[0].note == "Round 1 names the stitch to join to."
    assert pattern.tags == ("pouch", "home")
    assert pattern.turning_chains == {"hdc": False, "sc": True}
    assert pattern.chain_spaces == "not counted"
    assert pattern.special_stitches["shell"].work == "5 dc in same st"
    assert pattern.finished_size is not None
    assert pattern.finished_size.around == Lengths((Length(34.5, "cm"),))
    assert pattern.video is not None
    assert pattern.video.length == "12:30"
    assert pattern.size_count == 1


def test_materials(pattern: Pattern) -> None:
    yarn = pattern.materials.yarns["A"]
    assert (yarn.weight, yarn.name, yarn.colour) == (4, "lichen", "#3b6e6a")
    assert yarn.weighed == (Weight(52, "g"),)
    assert yarn.ball is not None
    assert (yarn.ball.weight_grams, yarn.ball.length_metres) == (50, 85)
    assert pattern.materials.hook[0].size == Length(5.5, "mm")
    assert pattern.materials.notions == ("tapestry needle", "stitch marker")


def test_gauge(pattern: Pattern) -> None:
    (gauge,) = pattern.gauge
    assert (gauge.stitch, gauge.stitches, gauge.rows, gauge.over, gauge.blocked) == (
        "hdc",
        14,
        10,
        Length(10, "cm"),
        False,
    )
    assert not pattern.gauge_not_critical


def test_pieces(pattern: Pattern) -> None:
    pouch, cord = pattern.pieces["pouch"], pattern.pieces["cord"]
    assert pouch.entries_field == "rounds"
    assert pouch.lies_flat == (Run(1, 3),)
    assert [entry.kind for entry in pouch.entries] == ["heading", "round", "round", "round"]
    assert pouch.entries[2].count == Growing.model_validate({"from": 16, "step": 8})
    assert pouch.entries[3].count == "24"
    assert pouch.entries[3].video == "6:10"
    assert cord.entries == ()
    assert cord.length == Around.model_validate({"times": 2, "around": "pouch", "round": 4})


def test_finishing(pattern: Pattern) -> None:
    thread, text = pattern.finishing
    assert (thread.kind, text.kind) == ("thread", "text")
    assert thread.thread is not None
    assert thread.thread.from_ == (1, 13)


def piece(**fields: Any) -> Piece:
    row = [{"row": "1", "work": "sc in each ch across"}]
    return Piece.model_validate(
        {"worked": "rows", "rows": row} | {k.replace("_", " "): v for k, v in fields.items()}
    )


def whole(**fields: Any) -> Pattern:
    sound = {"title": "t", "terms": "UK", "pieces": {"p": {"worked": "chain", "length": "80 cm"}}}
    return Pattern.model_validate(sound | {k.replace("_", " "): v for k, v in fields.items()})


def test_gauge_in_all_its_forms() -> None:
    flat = whole(gauge={"rounds": "1-4", "across": "8 cm"}).gauge[0]
    one = whole(gauge={"piece": "square", "across": "11 cm"}).gauge[0]
    several = whole(
        gauge=[{"stitch": "dc", "stitches": "13½", "over": "4 in"}, {"piece": "p", "across": "8 cm"}]
    ).gauge
    in_rounds = whole(gauge={"stitches": "14", "rounds": "15", "over": "10 cm"}).gauge[0]
    assert (flat.rounds, flat.across) == (Run(1, 4), Length(8, "cm"))
    assert (one.piece, one.across) == ("square", Length(11, "cm"))
    assert [gauge.stitches for gauge in several] == [13.5, None]
    assert (in_rounds.rows, in_rounds.rounds) == (15, None)
    assert whole(gauge="not critical").gauge_not_critical
    assert whole(gauge="Not critical").gauge == ()
    assert not whole().gauge_not_critical


def test_hooks_in_all_their_forms() -> None:
    hooks = whole(
        materials={"hook": ["5.5 mm", {"size": "4 mm", "for": "ribs"}, "3 mm for the cord", "6 mm (J-10)"]}
    )
    assert [(hook.size.amount, hook.for_) for hook in hooks.materials.hook] == [
        (5.5, ""), (4, "ribs"), (3, "the cord"), (6, ""),
    ]  # fmt: skip


def test_balls_in_ounces_and_yards() -> None:
    ball = (
        whole(materials={"yarns": {"A": {"ball": {"ounces": "3.5", "yards": "200"}}}})
        .materials.yarns["A"]
        .ball
    )
    assert ball is not None
    assert ball.weight_grams == pytest.approx(99.22, abs=0.01)
    assert ball.length_metres == pytest.approx(182.88)


def test_short_colours_are_spelt_out() -> None:
    assert whole(materials={"yarns": {"A": {"colour": "#ABC"}}}).materials.yarns["A"].colour == "#aabbcc"


def test_sizes_and_what_they_fit() -> None:
    made = whole(sizes=["S", "M", "L"], to_fit={"chest": "81 (86, 91) cm", "age": "2 (4, 6) years"})
    assert made.size_count == 3
    assert made.to_fit["chest"] == Lengths((Length(81, "cm"), Length(86, "cm"), Length(91, "cm")))
    assert made.to_fit["age"] == "2 (4, 6) years"
    assert whole(to_fit="54 cm").to_fit == {"": Lengths((Length(54, "cm"),))}


def test_turning_chains_in_one_word() -> None:
    assert whole(turning_chains="do not count").turning_chains == {"": False}
    assert whole(turning_chains={"dc": "counts as dc", "tr": "not counted", "sc": "no"}).turning_chains == {
        "dc": True, "tr": False, "sc": False,
    }  # fmt: skip


def test_pictures_and_steps_in_short() -> None:
    made = whole(
        pictures=["a.jpg", {"file": "b.png", "alt": "A pouch."}],
        finishing=[{"stuff": "Firmly."}, {"knot": "Tie."}],
    )
    assert [(one.file, one.alt) for one in made.pictures] == [("a.jpg", ""), ("b.png", "A pouch.")]
    assert made.finishing[0].stuff is not None
    assert made.finishing[0].stuff.text == "Firmly."
    assert made.finishing[1].knot is not None
    assert made.finishing[1].knot.text == "Tie."


def test_every_step_of_finishing() -> None:
    steps = [
        {"sew": {"piece": "moon", "to": "pouch", "round": "11", "stitches": "11-14"}},
        {"lay out": {"piece": "square", "across": "3", "down": "4", "join": "sc through both layers"}},
        {"stuff": {"piece": "ball", "text": "Firmly."}},
        {"heading": "Edging", "note": "Last of all."},
    ]
    sew, lay_out, stuff, heading = whole(finishing=steps).finishing
    assert [one.kind for one in (sew, lay_out, stuff, heading)] == ["sew", "lay out", "stuff", "heading"]
    assert sew.sew is not None
    assert sew.sew.stitches == (Run(11, 14),)
    assert lay_out.lay_out is not None
    assert (lay_out.lay_out.across, lay_out.lay_out.down) == (3, 4)


def test_what_is_put_on_is_placed_by_a_round_or_between_two() -> None:
    eyes = {"what": "eyes", "to": "head", "between": "5-6", "stitches": "11, 20", "across": "6 mm"}
    steps = [{"embroider": eyes}, {"place": {"what": "button", "to": "head", "row": "3"}}]
    embroidered, put = whole(finishing=steps).finishing
    assert [one.kind for one in (embroidered, put)] == ["embroider", "place"]
    assert embroidered.mark is not None
    assert (embroidered.mark.number, embroidered.mark.stitches) == (5, (Run(11, 11), Run(20, 20)))
    assert put.mark is not None
    assert put.mark.number == 3


@pytest.mark.parametrize("where", [{"between": "5-7"}, {"between": "5"}, {"between": "5-6", "round": "5"}])
def test_between_means_two_rounds_one_above_the_other(where: dict[str, str]) -> None:
    with pytest.raises(ValidationError):
        whole(finishing=[{"embroider": {"what": "eyes", "to": "head", **where}}])


def test_variations_and_tall_stitches() -> None:
    made = whole(
        variations={"plain": {"title": "Plain", "leave out": "moon"}},
        special_stitches={"tall": {"yarn overs": "6"}},
    )
    assert made.variations["plain"].leave_out == ("moon",)
    assert made.special_stitches["tall"].yarn_overs == 6
    assert made.special_stitches["tall"].work is None


def test_tails_and_lengths() -> None:
    around = piece(tail={"times": "2.5", "around": "self"}).tail
    assert isinstance(around, Around)
    assert (around.times, around.around, around.round) == (2.5, "self", None)
    assert piece(length="80 (90, 100) cm").length == Lengths(
        (Length(80, "cm"), Length(90, "cm"), Length(100, "cm"))
    )


def test_entries_of_every_kind() -> None:
    rows: list[dict[str, Any]] = [
        {"heading": "Body"},
        {"text": "Fold in half."},
        {"stuff": "Firmly."},
        {
            "row": "1",
            "side": "RS",
            "work": "x",
            "count": "24 dc, 4 ch-2 sps",
            "sizes": "M",
            "yarn": "B",
            "adjustable": "height",
        },
        {"rows": "2-3", "as": "1", "reversed": "true"},
        {"rows": "4 on", "repeat": "2-3", "until": "120 cm", "end": "WS"},
        {"rows": "60-62", "work": "y", "every": "2", "n": "3"},
        {"rows": "63-64", "from": "grid"},
    ]
    entries = piece(rows=rows).entries
    assert [entry.kind for entry in entries] == ["heading", "text", "stuff", *["round"] * 5]
    assert [entry.word for entry in entries[3:]] == ["row"] * 5
    assert [str(entry.run) for entry in entries[3:]] == ["1", "2-3", "4 on", "60-62", "63-64"]
    assert (entries[4].as_, entries[4].reversed) == (Run(1, 1), True)
    assert (entries[5].repeat, entries[5].until, entries[5].end) == (
        Run(2, 3),
        Lengths((Length(120, "cm"),)),
        "WS",
    )
    assert entries[6].n is not None
    assert entries[6].n.at(5) == Numbers((3,))
    assert entries[7].from_ == "grid"


def test_numbers_that_grow_in_every_size() -> None:
    growing = Growing.model_validate({"from": "32 (-, 48)", "step": "-8"})
    assert growing.at(0) == Numbers((32, None, 48))
    assert growing.at(2) == Numbers((16, None, 32))


def test_a_pattern_does_not_change(pattern: Pattern) -> None:
    with pytest.raises(ValidationError):
        pattern.title = "Other"  # type: ignore[misc]


def described(part: Any, at: str = "") -> Iterator[str]:
    """Fields of a schema that say nothing about themselves."""
    for name, field in part.get("properties", {}).items():
        if not field.get("description"):
            yield f"{at}.{name}"


def test_the_schema_describes_every_field() -> None:
    made = schema()
    assert not list(described(made))
    assert not [name for title, part in made["$defs"].items() for name in described(part, title)]
    assert {"title", "terms", "pieces"} == set(made["required"])
    assert "special stitches" in made["properties"]
    assert made["additionalProperties"] is False
    assert {"const": "not critical"} in made["properties"]["gauge"]["anyOf"]


def test_the_schema_offers_the_short_forms() -> None:
    parts = schema()["$defs"]
    assert {"type": "string"} in parts["Start"]["anyOf"]
    assert parts["Piece"]["properties"]["worked"]["enum"][0] == "joined rounds"
    assert [form["type"] for form in schema()["properties"]["notes"]["anyOf"]] == [
        ["string", "number"],
        "array",
    ]


def test_the_documented_example(read: Callable[[str], Source]) -> None:
    """Forms of one contract in one file: block and flow style, quotes, lists, and rows by rule."""
    text = """\
title: Tide cloth
terms: UK
gauge: {stitch: tr, stitches: 16, rows: 8, over: 10 cm}
pieces:
  cloth:
    worked: rows
    start: {chain: 30, multiple: 14, plus: 2}
    rows:
      - {row: 1, work: "1 tr in 4th ch from hook and in each ch across, turn"}
      - row: 2
        work: >
          3ch, miss first st,
          1 tr in each st across, turn
      - {rows: 3-9, as: 2}
"""
    source = read(text)
    assert source.findings == []
    assert source.pattern is not None
    assert source.pattern.pieces["cloth"].rows[1].work == "3ch, miss first st, 1 tr in each st across, turn"
