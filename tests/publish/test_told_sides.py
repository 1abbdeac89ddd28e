"""Sides in an author's sentences, for the hand that a reader chooses; and what only sounds like one."""

import re

import pytest

from loopleaf.publish.told_sides import set_told
from loopleaf.publish.typesetting import set_amounts, set_line


@pytest.mark.parametrize(
    ("said", "turned"),
    [
        ("Join at the corner that lies on your right when you wear it.", "on your left"),
        ("Begin at the bottom left.", "bottom right"),
        ("Join A in the lower right corner.", "lower left"),
        ("Leave the end along the right-hand edge open.", "left-hand edge"),
        ("Begin on the left, 3 rows up.", "on the right"),
        ("On your left, sew on 2 buttons.", "On your right"),
    ],
)
def test_a_side_is_marked_with_the_other(said: str, turned: str) -> None:
    html = str(set_told(said, set_amounts))
    assert re.findall(r'data-other-hand="([^"]*)"', html) == [turned]
    assert re.sub("<[^>]*>", "", html) == said


@pytest.mark.parametrize(
    "said",
    [
        "With the right side facing, join A.",
        "Turn to the right side and work on.",
        "Work the loops that the first side left.",
        "Dry it over a bowl of the right size.",
        "Sew the sleeve to the left front.",
        "Weave in what is left over.",
        "Leave the last 4 sts unworked; 12 sts left.",
        "That is all right.",
        "Join at the upper left front.",
    ],
)
def test_what_only_sounds_like_one_stays(said: str) -> None:
    assert "data-other-hand" not in str(set_told(said, set_line))


def test_words_between_are_set_as_always() -> None:
    html = str(set_told("Sew 2 buttons <small> on the left, 5 cm (2 in) apart.", set_amounts))
    assert "&lt;small&gt;" in html
    assert '<span class="k">5 cm</span>' in html
