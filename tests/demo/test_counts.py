"""Every count that the demo patterns state, against stitches counted by hand."""

import math
from itertools import pairwise
from typing import Any

import pytest

from . import stated
from .by_hand import Edge, by_kind, stitches
from .count_scarf import yarn_of_each_row
from .count_square import along_the_border
from .counts import PATTERNS

ROUNDS = [(name, piece) for name, work in PATTERNS.items() for piece in work()]


def _as_stated_by_kind(edge: Edge, stated_kinds: set[str], fan: str = "fans") -> dict[str, int]:
    """The edge by kind, with fans gathered where the author counts fans."""
    found = by_kind(edge)
    if fan in stated_kinds:
        fans = found.pop("1ch sp")
        found["tr"] -= 4 * fans
        found[fan] = fans
    return {kind: number for kind, number in found.items() if number}


@pytest.mark.parametrize(("name", "piece"), ROUNDS)
def test_stated_counts_are_what_the_stitches_make(name: str, piece: str) -> None:
    worked = PATTERNS[name]()[piece]
    file = stated.pattern(name)
    written = stated.rounds(file["pieces"][piece])
    assert sorted(written) == sorted(worked), "the pattern and the count by hand have the same rounds"
    for number, edges in worked.items():
        text = written[number]
        assert text is not None, f"round {number} of {piece} states no count"
        assert len(edges) in (1, len(file.get("sizes", [1])))
        for edge, one_size in zip(edges, stated.by_size(text, len(edges)), strict=True):
            if one_size == "-":
                assert edge == [], f"{name}, {piece}, round {number}"
            elif one_size.isdigit():
                assert int(one_size) == stitches(edge), f"{name}, {piece}, round {number}"
            else:
                wanted = stated.kinds(one_size)
                assert _as_stated_by_kind(edge, set(wanted)) == dict(wanted), (
                    f"{name}, {piece}, round {number}"
                )


def test_every_pattern_of_the_collection_is_counted() -> None:
    files = {path.stem for path in stated.COLLECTION.glob("*.yml")}
    assert files == set(PATTERNS)


def test_the_border_of_the_blanket_is_exact() -> None:
    note = stated.pattern("harbour-square")["pieces"]["border"]["rounds"][0]["note"]
    short, long = along_the_border(PATTERNS["harbour-square"]()["border"][1][0])
    assert f"{short} stitches on a short side and {long} on a long one" in note


def test_handles_of_the_tray_lie_in_the_middle_of_its_ends() -> None:
    """Round 11 has an end of 33 stitches, its middle third first: the seam lies a third into that end."""
    straight, third = 10, 11
    end = 3 * third
    first_middle = (end + 1) // 2 - third
    second_middle = 2 * third + straight + (end + 1) // 2
    first_handle = range(2, 11)
    second_handle = range(1 + 9 + 34 + 1, 1 + 9 + 34 + 9 + 1)
    assert first_handle[4] == first_middle
    assert second_handle[4] == second_middle
    assert second_middle - first_middle == 86 // 2


def test_cords_of_the_pouch_begin_opposite_each_other_and_end_on_the_face_they_began_on() -> None:
    thread = next(step["thread"] for step in stated.pattern("lantern-pouch")["finishing"] if "thread" in step)
    posts = by_kind(PATTERNS["lantern-pouch"]()["pouch"][17][0])["dc"]
    first, second = thread["from"]
    assert second - first == posts / 2
    assert posts % (thread["under"] + thread["over"]) == 0


def test_buttons_match_loops() -> None:
    loops = by_kind(PATTERNS["gull-collar"]()["loop band"][2][0])["ch-4 sp"]
    assert any(
        notion.startswith(f"{loops} buttons")
        for notion in stated.pattern("gull-collar")["materials"]["notions"]
    )


def test_rows_of_the_scarf_are_in_the_yarns_that_wait_at_the_same_edge() -> None:
    """Each yarn is left and taken up after an even number of rows; the rows that say `changing to` agree."""
    yarns = yarn_of_each_row()
    rows = stated.pattern("ebb-scarf")["pieces"]["scarf"]["rows"]
    changes = {entry["row"]: entry["work"] for entry in rows if "changing to" in entry.get("work", "")}
    for number, work in changes.items():
        assert f"changing to {yarns[number]} on last yo" in work
        assert number % 2 == 0
    in_eight = {number for number in range(2, 10) if yarns[number] != yarns[number - 1]}
    assert set(changes) == in_eight
    assert len(yarns) == 140


def _middles(step: dict[str, Any]) -> list[float]:
    """The middle of each run of stitches that a `sew` step names."""
    ends = [run.split("-") for run in str(step["stitches"]).split(", ")]
    return [(int(first) + int(last)) / 2 for first, last in ends]


def _sewn(name: str) -> dict[str, dict[str, Any]]:
    return {step["sew"]["piece"]: step["sew"] for step in stated.pattern(name)["finishing"] if "sew" in step}


def test_leaves_hang_evenly_large_and_small_by_turns() -> None:
    sewn = _sewn("purslane-garland")
    large, small = _middles(sewn["leaf"]), _middles(sewn["small leaf"])
    pieces = stated.pattern("purslane-garland")["pieces"]
    assert (len(large), len(small)) == (pieces["leaf"]["make"], pieces["small leaf"]["make"])
    along = sorted(large + small)
    assert along[::2] == large
    assert {after - before for before, after in pairwise(along)} == {10}
    string = stitches(PATTERNS["purslane-garland"]()["string"][1][0])
    assert along[0] - 0.5 == string + 0.5 - along[-1]


def test_the_seal_has_seven_pieces_each_pair_alike_on_both_sides() -> None:
    pieces = stated.pattern("sandbank-seal")["pieces"]
    assert sum(piece["make"] for piece in pieces.values()) == 7
    work = PATTERNS["sandbank-seal"]()
    for piece, step in _sewn("sandbank-seal").items():
        onto = stitches(work[step["to"]][step["round"]][0])
        middles = _middles(step)
        assert len(middles) == pieces[piece]["make"]
        assert sorted(onto + 1 - middle for middle in middles) == sorted(middles), piece
    for flipper in ("fore flipper", "hind flipper"):
        edge = stitches(work[flipper][max(work[flipper])][0])
        first, last = _sewn("sandbank-seal")[flipper]["stitches"].split(", ")[0].split("-")
        assert int(last) - int(first) + 1 == edge // 2, (
            "pressed flat, half its stitches lie on the other half"
        )


def test_the_seals_face_is_even_and_embroidered() -> None:
    """Embroidered eyes are usual for children under three (EN 71-1 takes soft toys as meant for them)."""
    file = stated.pattern("sandbank-seal")
    eyes = next(step["embroider"] for step in file["finishing"] if "eyes" in str(step.get("embroider")))
    first, second = map(int, eyes["stitches"].split(", "))
    head = PATTERNS["sandbank-seal"]()["head"]
    assert first + second == stitches(head[5][0]) + 1
    assert not any("eye" in notion for notion in file["materials"]["notions"])


def test_the_neck_of_the_seal_is_as_wide_as_the_place_that_it_is_sewn_over() -> None:
    neck = stitches(PATTERNS["sandbank-seal"]()["head"][12][0])
    first, last = map(int, _sewn("sandbank-seal")["head"]["stitches"].split("-"))
    assert last - first + 1 == round(neck / math.pi)


def test_the_lighthouse_stands_in_a_frame_and_shines_one_way() -> None:
    picture = stated.pattern("lighthouse-bookmark")["pieces"]["bookmark"]["grid"]["rows"]
    assert {len(row) for row in picture} == {9}
    assert {row[0] + row[-1] for row in picture} == {"##"}
    lantern = picture[3:6]
    assert [row for row in lantern if row == row[::-1]] == []
    tower = picture[:3] + picture[6:20]
    assert [row for row in tower if row != row[::-1]] == []


def _empty(value: object, path: str) -> list[str]:
    """Fields that hold nothing: what an unquoted comma inside braces leaves behind."""
    if isinstance(value, dict):
        return [found for key, inner in value.items() for found in _empty(inner, f"{path}: {key}")]
    if isinstance(value, list):
        return [found for inner in value for found in _empty(inner, path)]
    return [path] if value is None else []


@pytest.mark.parametrize("name", list(PATTERNS))
def test_no_value_is_cut_in_two_by_a_comma(name: str) -> None:
    assert _empty(stated.pattern(name), name) == []
