"""Every published line reads back in every style; `make long` adds a hundred thousand generated trees.

The generated trees of the normal run are in tests/notation/test_round_trip.py.
"""

from dataclasses import replace

from tests.notation.trees import UK, US, tree_of
from tests.quality.written import of_generated, of_the_published, reads_otherwise, report


def test_every_published_line_reads_back_in_every_style() -> None:
    tried, wrong = of_the_published()
    assert wrong == []
    assert tried > 1_500


def test_generated_trees_are_counted_and_tried() -> None:
    tried, wrong = of_generated(40, seed=5)
    assert (tried, wrong) == (40, [])


def test_a_line_that_cannot_be_said_reads_otherwise() -> None:
    line = tree_of("sh in next st", US)
    assert reads_otherwise("shell", line, ("UK", False), US) is None
    other = reads_otherwise("shell", line, ("US", False), replace(UK, specials={}))
    assert other is not None
    assert "1 read otherwise" in report(1, 0, [other], seed=1)
