"""What a worked round says of itself."""

from loopleaf.fabric.worked import Made, Space, WorkedRound


def test_stitches_are_sorted_by_what_they_are_and_not_by_where() -> None:
    below = Made("single", (), 0, "A", number=1)
    made: list[Made | Space] = [
        Made("double", (below,), 1, "A", number=1),
        Made("double", (), 1, "A", number=2),
        Made("double", (), 1, "B", number=3),
        Space(2, 1, "A"),
    ]
    sorts = WorkedRound(made=made).sorts
    assert sorts.total() == 3
    assert sorted((key[0], key[-1], number) for key, number in sorts.items()) == [
        ("double", "A", 2),
        ("double", "B", 1),
    ]
