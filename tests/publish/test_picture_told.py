"""What the picture of the finished piece says for who can't see it."""

import pytest

from loopleaf.publish.leaflet_voice import voice
from loopleaf.publish.picture_told import picture_told
from tests.demo.leaflets import leaf_of
from tests.measure.worked_patterns import worked

MAT = """
mat:
  title: Mat
  worked: spiral rounds
  start: magic ring
  rounds: [{round: 1, work: "6 sc in ring"}]
dot:
  title: Dot
  make: 3
  worked: spiral rounds
  start: magic ring
  rounds: [{round: 1, work: "6 sc in ring"}]
"""


@pytest.mark.parametrize("terms", ["US", "UK"])
def test_it_names_the_yarns_and_what_is_added(terms) -> None:
    alt = leaf_of("lantern-pouch", terms).picture.alt
    assert alt == (
        "Lantern pouch, drawn from its stitches, in lichen and oat. Sewn on: moon. "
        "Threaded through: drawstring × 2."
    )
    assert leaf_of("sandbank-seal", terms).picture.alt.endswith(
        "fore flipper × 2, hind flipper × 2. Put on: eyes, nose."
    )


def test_what_is_not_sewn_on_is_not_named() -> None:
    told = picture_told(voice(worked(MAT), "US"))
    assert "Sewn" not in told
    assert "Dot" not in told
    sewn = worked(MAT, "finishing:\n  - sew: {piece: dot, to: mat, round: 1, stitches: 2}\n")
    assert picture_told(voice(sewn, "US")).endswith("Sewn on: dot × 3.")


def test_what_is_worked_onto_it_is_named() -> None:
    begun = MAT + "".join(
        f"{name}:\n  worked: spiral rounds\n  start: {{edge: {on}, round: 1}}\n"
        '  rounds: [{round: 1, work: "2 sc in each st around"}]\n'
        for name, on in (("rim", "mat"), ("brim", "rim"), ("petals", "dot"))
    )
    assert picture_told(voice(worked(begun), "US")).endswith("Worked onto it: rim, brim.")
    assert "Worked onto" not in picture_told(voice(worked(MAT), "US"))
