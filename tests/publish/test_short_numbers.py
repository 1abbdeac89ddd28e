"""Abbreviations that hold a number, such as `dc3tog` and `ch-3 picot`, in a leaflet's list."""

import pytest

from loopleaf.publish.leaflet_parts import Terms
from loopleaf.publish.leaflet_short import _of_its_length
from tests.demo.leaflets import leaf_of


def _listed(slug: str, terms: Terms) -> dict[str, str]:
    found = leaf_of(slug, terms).abbreviations
    assert len({one.short for one in found}) == len(found), "each is listed once"
    return {one.short: one.name for one in found}


def test_a_picot_is_listed_once_with_its_chains() -> None:
    assert _listed("lighthouse-bookmark", "US")["ch-3 picot"] == "chain-3 picot"


def test_several_drawn_together_say_how_many() -> None:
    assert _listed("ebb-scarf", "US")["dc3tog"] == "double crochet 3 together"
    assert _listed("ebb-scarf", "UK")["tr3tog"] == "treble 3 together"


def test_a_name_of_the_authors_own_holds_no_other_abbreviation() -> None:
    """The doily has a `picot sh` of its own, and no shells."""
    assert "sh" not in _listed("sea-lavender-doily", "US")


@pytest.mark.parametrize(
    ("lengths", "listed"),
    [
        ("2 5 3", ("ch-2 sp, ch-3 sp, ch-5 sp", "chain-2 space, chain-3 space, chain-5 space")),
        ("6 2 5 3", ("ch-2 sp, ch-3 sp …", "chain-2 space, chain-3 space …")),
    ],
)
def test_many_lengths_of_chain_spaces_stay_short(lengths: str, listed: tuple[str, str]) -> None:
    forms = [f"ch-{length} sps" for length in lengths.split()]
    assert _of_its_length(forms, "chain-2 space") == listed


def test_the_together_of_a_stitch_drawn_together_is_no_word_of_its_own() -> None:
    assert "tog" not in _listed("ebb-scarf", "US")
