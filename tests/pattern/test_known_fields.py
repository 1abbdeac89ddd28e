import pytest

from loopleaf.pattern import Entry, Pattern, Piece
from loopleaf.pattern.entries import Growing
from loopleaf.pattern.known_fields import fields_at, nearest, part_at
from loopleaf.pattern.pieces import Around


@pytest.mark.parametrize(
    ("path", "part"),
    [
        ((), Pattern),
        (("pieces", "pouch"), Piece),
        (("pieces", "pouch", "rounds", 3), Entry),
        (("pieces", "pouch", "rounds", 3, "count"), Growing),
        (("pieces", "pouch", "tail"), Around),
        (("title",), None),
        (("nowhere", 1), None),
    ],
)
def test_the_part_at_a_path(path: tuple[str | int, ...], part: type | None) -> None:
    assert part_at(path) is part


def test_fields_are_named_as_in_the_file() -> None:
    assert "lies flat" in fields_at(("pieces", "pouch"))
    assert "from" in fields_at(("pieces", "pouch", "rounds", 0))
    assert fields_at(("title",)) == []


@pytest.mark.parametrize(
    ("name", "first"),
    [
        ("Titel", "title"),
        ("chain_spaces", "chain spaces"),
        ("license", "licence"),
        ("tension", "gauge"),
        ("size", "finished size"),
    ],
)
def test_the_nearest(name: str, first: str) -> None:
    assert nearest(name, fields_at(()))[0] == first


def test_nothing_near() -> None:
    assert nearest("qqqq", fields_at(())) == []


def test_another_word_only_where_its_field_is_known() -> None:
    assert nearest("tension", fields_at(("pieces", "p"))) == []
