import pytest

from loopleaf.pattern.quoting import in_quotes, value_on_line


@pytest.mark.parametrize(
    ("value", "quoted"),
    [("40 (48, 56)", '"40 (48, 56)"'), ('"sh" twice', "'\"sh\" twice'"), ("don't \\", "'don''t \\'")],
)
def test_in_quotes(value: str, quoted: str) -> None:
    assert in_quotes(value) == quoted


@pytest.mark.parametrize(
    ("row", "at", "value", "braces"),
    [
        ("work: ch 1, turn", 8, "ch 1, turn", False),
        ("  - work: ch 1 # why", 12, "ch 1", False),
        ("  - ch 1", 5, "ch 1", False),
        ("- {round: 3, work: ch 1, turn, count: 8}", 22, "ch 1, turn", True),
        ("- {round: 3, work: ch 1, turn}", 22, "ch 1, turn", True),
    ],
)
def test_value_on_line(row: str, at: int, value: str, braces: bool) -> None:
    found = value_on_line(row, at, (0, len(row)))
    assert found is not None
    assert (row[found[0] : found[1]], found[2]) == (value, braces)


def test_no_value_before_the_first_field() -> None:
    assert value_on_line("work: x", 0, (0, 7)) is None
    assert value_on_line("work:   ", 8, (0, 8)) is None
