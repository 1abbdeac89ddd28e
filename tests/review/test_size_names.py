"""Names of sizes: which say how large they are, and which is out of order."""

import pytest

from loopleaf.review.size_names import first_out_of_order


@pytest.mark.parametrize(
    ("names", "at"),
    [
        ("XXS XS S M L XL XXL 3XL 4XL", None),
        ("2XS XS", None),
        ("XS XXS", 1),
        ("2XL XL", 1),
        ("S L M", 2),
        ("s/m l/xl", None),
        ("l/xl s/m", 1),
        ("small large medium", 2),
        ("newborn baby toddler child teen adult", None),
        ("child baby", 1),
        ("38 40 36", 2),
        ("2T 3T 4T", None),
        ("4T 3T", 1),
        ("teal red", None),
        ("L teal S", None),
        ("40 S", None),
        ("40cm 16in", None),
    ],
)
def test_the_first_out_of_order(names: str, at: int | None) -> None:
    assert first_out_of_order(names.split()) == at


def test_names_of_several_words() -> None:
    assert first_out_of_order(["extra small", "small", "extra large", "large"]) == 3
    assert first_out_of_order(["0-3 months", "3-6 months", "6-12 months"]) is None
    assert first_out_of_order(["6-12 months", "3-6 months"]) == 1
    assert first_out_of_order(["12 months", "2 years"]) is None
