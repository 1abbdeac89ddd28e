"""Several of a piece. Common English, no source."""

import pytest

from loopleaf.publish.plurals import plural


@pytest.mark.parametrize(
    ("one", "several"),
    [
        ("square", "squares"),
        ("edge", "edges"),
        ("sash", "sashes"),
        ("pouch", "pouches"),
        ("berry", "berries"),
        ("toy", "toys"),
        ("large leaf", "large leaves"),
        ("half", "halves"),
        ("fore flipper", "fore flippers"),
        ("foot", "feet"),
        ("dress", "dresses"),
        ("trellis", "trellises"),
        ("cactus", "cacti"),
        ("box", "boxes"),
        ("leaf with stem", "leaves with stem"),
        ("row of shells", "rows of shells"),
        ("Leaf", "Leaves"),
        ("half-square", "half-squares"),
        ("sheep", "sheep"),
        ("petal 1", "petal 1"),
    ],
)
def test_several(one: str, several: str) -> None:
    assert plural(one) == several


@pytest.mark.parametrize("several", ["squares", "leaves", "feet", "ears and tail", "side edges", "children"])
def test_a_plural_stays(several: str) -> None:
    assert plural(several) == several
