"""Small things that a line depends on: ordinals, plurals of an author's names, how long a line may be."""

import pytest

from loopleaf.notation import Vocabulary, parse, parse_count
from loopleaf.notation.style import ordinal
from loopleaf.notation.tree import Amount, Stitch, Tally
from loopleaf.notation.vocabulary import SpecialStitch

from .trees import US


@pytest.mark.parametrize(
    ("number", "said"),
    [(1, "1st"), (2, "2nd"), (3, "3rd"), (4, "4th"), (10, "10th"), (11, "11th"), (12, "12th"), (13, "13th"),
     (20, "20th"), (21, "21st"), (22, "22nd"), (23, "23rd"), (101, "101st"), (111, "111th"), (121, "121st")],
)  # fmt: skip
def test_ordinals(number: int, said: str) -> None:
    assert ordinal(number) == said


@pytest.mark.parametrize(
    ("name", "many"),
    [("shell", "shells"), ("cross", "crosses"), ("box", "boxes"), ("fizz", "fizzes"), ("brush", "brushes"),
     ("arch", "arches"), ("leg", "legs"), ("V stitch", "V stitches")],
)  # fmt: skip
def test_plurals_of_an_authors_names(name: str, many: str) -> None:
    special = SpecialStitch(name, "", "5 dc in same st")
    vocabulary = Vocabulary("US", {name: special})
    assert parse_count(f"8 {many}", vocabulary) == (
        Tally(None, ((Amount((8,)), Stitch("special", name=name)),)),
        (),
    )


def test_how_long_a_line_may_be() -> None:
    longest = ", ".join(["sc"] * 1250)[:4998] + "sc"
    assert len(longest) == 5000
    assert not any(problem.rule == "too-large" for problem in parse(longest, US).problems)
    assert any(problem.rule == "too-large" for problem in parse(longest + " ", US).problems)
