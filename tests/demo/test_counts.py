"""Every count that the demo patterns state, against stitches counted by hand."""

import pytest

from . import stated
from .by_hand import Edge, by_kind, stitches
from .count_square import harbour_border
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
            if one_size.isdigit():
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
    text = next(
        step["text"]
        for step in stated.pattern("harbour-square")["finishing"]
        if "border" in step.get("text", "")
    )
    short, long, in_all = harbour_border()
    assert f"{short} stitches between the corners on a short side" in text
    assert f"{long} on a long one" in text
    assert f"{in_all} in all" in text


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
