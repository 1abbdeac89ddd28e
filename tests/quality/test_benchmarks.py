"""What `make bench` times are right patterns: a finding in one would be timed along, or stop it."""

import pytest

from loopleaf.review import check
from tests.benchmarks.rounds import PLAIN, basket


@pytest.mark.parametrize("number", range(25))
def test_every_timed_basket_is_right(number: int) -> None:
    assert not check(basket(number), "basket.yml").findings


def test_the_timed_plain_rounds_have_nothing_wrong_in_their_counts() -> None:
    rules = {finding.rule for finding in check(PLAIN.encode(), "plain.yml").findings}
    assert "count-differs" not in rules
    assert "works-past-the-end" not in rules
