from loopleaf.pattern.composing import compose
from loopleaf.pattern.finding import Location
from loopleaf.pattern.nodes import Lines, Node, find, first_line, key_span


def root(text: str) -> Node:
    node, flaws = compose(text)
    assert node is not None
    assert not flaws
    return node


def test_lines_count_as_editors_do() -> None:
    lines = Lines("ab\ncd\r\ne\rf")
    assert [lines.position(offset) for offset in (0, 2, 3, 7, 9, 10)] == [
        (1, 1), (1, 3), (2, 1), (3, 1), (4, 1), (4, 2),
    ]  # fmt: skip
    assert lines.location(0, 99) == Location(1, 1, 4, 2)
    assert lines.around(4) == (3, 5)


def test_columns_count_code_points() -> None:
    assert Lines("😀é x").position(3) == (1, 4)


def test_values_opened_to_plain_ones() -> None:
    assert root("a: {b: [1, yes, ~]}\nc:\n").plain() == {"a": {"b": ["1", "yes", None]}, "c": None}


def test_of_a_field_written_twice_the_first_counts() -> None:
    assert root("a: 1\na: 2\n").plain() == {"a": "1"}


def test_following_a_path() -> None:
    node = root("finished size: {around: 3 cm}\nhook: 5 mm\nlist: [x, y]\n")
    assert find(node, ("finished_size", "around"))[0].text == "3 cm"
    assert find(node, ("hook", 0, "size"))[0].text == "5 mm"
    assert find(node, ("list", 1))[0].text == "y"
    assert find(node, ("list", 7)) == (find(node, ("list",))[0], False)


def test_where_a_name_stands() -> None:
    text = "a: 1\nlist:\n  - {round: 1}\n"
    node = root(text)
    start, end = key_span(node, ("list",))
    assert text[start:end] == "list"
    start, end = key_span(node, ("list", 0))
    assert text[start:end] == "round"
    assert key_span(node, ("a", "b")) == (3, 4)


def test_the_first_line_of_a_long_value() -> None:
    text = "a:\n  - one\n  - two\n"
    start, end = first_line(find(root(text), ("a",))[0], text)
    assert text[start:end] == "- one"
