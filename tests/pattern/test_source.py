"""Where values stand: by path, by offsets inside a value's text, and by a field's name."""

from collections.abc import Callable

import pytest

from loopleaf.pattern import KEY, Location, Source, load

Read = Callable[[str], Source]
WORK = ("pieces", "pouch", "rounds", 1, "work")


def cut(source: Source, place: Location) -> str:
    line = source.text.splitlines()[place.line - 1]
    assert place.line == place.end_line
    return line[place.column - 1 : place.end_column - 1]


@pytest.mark.parametrize(
    ("path", "stretch"),
    [
        (("title",), "Lantern pouch"),
        (("finished size", "around"), "34.5 cm"),
        (("finished_size", "around"), "34.5 cm"),
        (("materials", "yarns", "A", "colour"), '"#3b6e6a"'),
        (("materials", "hook", 0, "size"), "5.5 mm"),
        (("pieces", "pouch", "rounds", 2, "count", "from"), "16"),
        (("pieces", "pouch", "rounds", 2, "count"), "{from: 16, step: 8}"),
        (("finishing", 0, "thread", "from_", 1), "13"),
        (("finishing", 1, KEY), "text"),
        (("finishing", 1, "text", KEY), "text"),
        (("pieces", "pouch", KEY), "pouch"),
        (("chain spaces", "nowhere"), "not counted"),
    ],
)
def test_by_path(path: tuple[str | int, ...], stretch: str, lantern: str, read: Read) -> None:
    source = read(lantern)
    assert cut(source, source.locate(path)) == stretch


def test_by_offsets(lantern: str, read: Read) -> None:
    source = read(lantern)
    text = "ch 1, 8 hdc in ring, join"
    start = text.index("8 hdc")
    assert cut(source, source.locate(WORK, start, start + 5)) == "8 hdc"
    assert cut(source, source.locate(WORK, start)) == "8 hdc in ring, join"
    assert cut(source, source.locate(WORK, start, start)) == ""
    assert cut(source, source.locate(WORK, 0, 9999)) == text
    assert cut(source, source.locate(WORK, 9999, 9999)) == ""


def test_by_offsets_past_escapes_and_folds(lantern: str, read: Read) -> None:
    old = 'work: "ch 1, 8 hdc in ring, join"'
    source = read(lantern.replace(old, "work: 'ch 1, don''t turn, 8 hdc in ring'"))
    assert cut(source, source.locate(WORK, 6, 16)) == "don''t turn"
    assert cut(source, source.locate(WORK, 18, 23)) == "8 hdc"
    source = read(lantern.replace(old, 'work: "ch 1, \\"8\\" hdc in ring"'))
    assert cut(source, source.locate(WORK, 6, 9)) == '\\"8\\"'
    source = read(lantern.replace(old, 'work: "ch 1,\n         8 hdc in ring"'))
    assert cut(source, source.locate(WORK, 6, 11)) == "8 hdc"
    assert cut(source, source.locate(WORK, 0, 5)) == "ch 1,"


def test_the_whole_value_where_offsets_lead_nowhere(lantern: str, read: Read) -> None:
    source = read(lantern)
    path = ("pieces", "pouch", "rounds", 2, "count")
    assert source.locate(path, 1, 2) == source.locate(path)


def test_a_list_over_several_lines(lantern: str, read: Read) -> None:
    place = read(lantern).locate(("finishing",))
    assert (place.line, place.column, place.end_line) == (44, 3, 45)


def test_a_file_that_could_not_be_read() -> None:
    source = load(b"\xff", "f.yml")
    assert source.locate(("title",)) == source.locate_key(("title",)) == Location(1, 1, 1, 1)
