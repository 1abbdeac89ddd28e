"""What several drawings have in common is worked out once."""

from loopleaf.draw.once import KEPT, once


def test_the_very_same_things_are_answered_from_memory_and_equal_ones_are_not() -> None:
    asked: list[list[int]] = []

    @once
    def total(numbers: list[int]) -> list[int]:
        asked.append(numbers)
        return [sum(numbers)]

    numbers = [1, 2]
    assert total(numbers) is total(numbers)
    assert total([1, 2]) == [3]
    assert len(asked) == 2


def test_what_was_asked_for_long_ago_is_worked_out_anew() -> None:
    asked: list[list[int]] = []

    @once
    def total(numbers: list[int]) -> int:
        asked.append(numbers)
        return sum(numbers)

    many = [[at] for at in range(KEPT + 1)]
    assert [total(one) for one in many] == list(range(KEPT + 1))
    total(many[0])
    total(many[-1])
    assert len(asked) == KEPT + 2
