"""What is asked of a line once."""

from loopleaf.notation.once_a_line import Same, once_a_line
from loopleaf.notation.tree import Line


def test_a_line_is_asked_once_and_a_like_one_anew() -> None:
    asked: list[int] = []

    @once_a_line
    def length(line: Line, more: int) -> int:
        asked.append(more)
        return len(line.steps) + more

    one, like = Line(()), Line(())
    assert [length(one, 1), length(one, 1), length(one, 2), length(like, 1)] == [1, 1, 2, 1]
    assert asked == [1, 2, 1]


def test_the_same_is_that_very_part() -> None:
    one, like = (
        Line(
            (),
        ),
        Line(()),
    )
    assert one == like
    assert Same(one) == Same(one)
    assert Same(one) != Same(like)
    assert Same(one) != one
