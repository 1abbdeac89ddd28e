import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopleaf.pattern.composing import compose
from loopleaf.pattern.nodes import Node
from loopleaf.pattern.scalars import offsets


def value(text: str) -> Node:
    root, flaws = compose(text)
    assert not flaws
    assert root is not None
    return root.fields[0][1]


@pytest.mark.parametrize(
    "text",
    [
        "a: ch 1, hdc in next st\n",
        'a: "ch 1, hdc in next st"\n',
        "a: 'ch 1, don''t turn'\n",
        'a: "say \\"next\\" and \\u00bd \\x41"\n',
        "a: ch 1,\n  hdc in\n\n\n  next st\n",
        'a: "ch 1,   \n  hdc\n\n  in"\n',
        'a: "ch 1, \\\n   hdc in"\n',
        "a: 'ch 1,\n\n  hdc'\n",
        "a: >\n  ch 1,\n  hdc in next st\n\n",
        "a: |\n  ch 1,\n  hdc\n",
        "a: |-\n    ch 1,\n      further in\n",
        "a: ch 1,\r\n  hdc\r\n",
        "a: |\r\n  ch 1,\r\n  hdc\r\n",
        "a: 😀 ½ x\n",
        "a: ''\n",
    ],
)
def test_each_character_is_found_again(text: str) -> None:
    """Following the map gives the value again: spaces may stand for a fold."""
    node = value(text)
    places = offsets(text, node)
    assert places is not None
    assert len(places) == len(node.text) + 1
    assert places == sorted(places)
    for sign, at in zip(node.text, places, strict=False):
        assert (
            text[at] == sign or (sign in " \n" and text[at] in " \r\n") or text[at] == "\\" or text[at] == "'"
        )


@pytest.mark.parametrize(
    ("text", "word", "column"),
    [
        ("a: ch 1, hdc\n", "hdc", 9),
        ('a: "ch 1, hdc"\n', "hdc", 10),
        ("a: 'don''t, hdc'\n", "hdc", 12),
        ('a: "say \\"x\\", hdc"\n', "hdc", 15),
        ('a: "\\u00bd hdc"\n', "hdc", 11),
    ],
)
def test_a_word_inside_a_value(text: str, word: str, column: int) -> None:
    node = value(text)
    places = offsets(text, node)
    assert places is not None
    assert places[node.text.index(word)] == column == text.index(word)


@pytest.mark.parametrize("text", ["a: >\n  one\n\n  two\n\n    further\n  in\n", "a: >2\n   x\n  y\n"])
def test_where_it_cannot_be_told_there_is_no_map(text: str) -> None:
    node = value(text)
    places = offsets(text, node)
    assert places is None or all(
        text[at] == sign or sign in " \n" for sign, at in zip(node.text, places, strict=False)
    )


@given(st.text(st.sampled_from("ab ,'\"\\é😀½:#*"), min_size=1, max_size=30))
def test_any_text_in_double_quotes(words: str) -> None:
    escaped = words.replace("\\", "\\\\").replace('"', '\\"')
    text = f'a: "{escaped}"\n'
    node = value(text)
    assert node.text == words
    places = offsets(text, node)
    assert places is not None
    assert [text[at] if text[at] != "\\" else text[at + 1] for at in places[:-1]] == list(words)


@given(st.text(st.sampled_from("ab ,'\"\\é😀½:#*"), min_size=1, max_size=30))
def test_any_text_in_single_quotes(words: str) -> None:
    escaped = words.replace("'", "''")
    text = f"a: '{escaped}'\n"
    node = value(text)
    assert node.text == words
    places = offsets(text, node)
    assert places is not None
    assert [text[at] for at in places[:-1]] == list(words)
