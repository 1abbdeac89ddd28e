"""After a mistake a round may lie on several edges: alike ones are one, and a few are followed at most."""

from loopleaf.fabric.thread import MOST_EDGES, Thread, Trust
from loopleaf.fabric.worked import Made, Place


def _row(number: int, kind: str = "single") -> list[Place]:
    return [Made(kind, (), 0, "A", "stitch", at + 1) for at in range(number)]


def test_alike_edges_are_one() -> None:
    thread = Thread(_row(1), "A")
    thread.go_on_from([_row(3), _row(3), _row(4), None, _row(3, "double")], Trust.NOTHING)
    assert [len(thread.places), *map(len, thread.further)] == [3, 4, 3]


def test_a_few_are_followed_at_most() -> None:
    thread = Thread(_row(1), "A")
    thread.go_on_from([_row(number) for number in range(1, 20)], Trust.NOTHING)
    assert [len(thread.places), *map(len, thread.further)] == list(range(1, MOST_EDGES + 1))


def test_without_any_the_places_stay() -> None:
    thread = Thread(_row(2), "A", further=[_row(3)])
    thread.go_on_from([None], Trust.NUMBER)
    assert (len(thread.places), thread.further) == (2, [])
