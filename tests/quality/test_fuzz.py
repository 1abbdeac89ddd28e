"""A few hundred broken files through the review; `make fuzz` tries two hundred thousand."""

import os

from tests.quality.broken import WAYS, broken
from tests.quality.fuzz import Batch, report, try_all

NUMBER = int(os.environ.get("LOOPLEAF_BROKEN", "300"))


def test_broken_files_are_answered() -> None:
    whole = Batch()
    for batch in try_all(NUMBER, seed=7, workers=1):
        whole.add(batch)
    # How long a file takes is a figure of `make fuzz`; here only one that never ends is a failure.
    assert [one for one in whole.troubles if one.what != "slow"] == []
    assert whole.tried == NUMBER
    assert set(whole.ways) == set(WAYS)
    assert len(whole.rules) >= 10, "files that no rule speaks of test nothing"


def test_a_broken_file_can_be_made_again() -> None:
    assert broken(12) == broken(12)
    assert len({broken(number)[1] for number in range(50)}) > 45


def test_the_figures_name_every_sort_of_trouble() -> None:
    text = report(Batch(tried=3), seed=1)
    for name in ("crash", "hang", "slow", "memory", "astray"):
        assert f"| {name} | 0 |" in text
