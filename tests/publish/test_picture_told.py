"""What the picture of the finished piece says for who can't see it."""

import pytest

from loopleaf.fabric import PatternWork
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


def told_of(work: PatternWork) -> str:
    return picture_told(voice(work, "US"), work)


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
    told = told_of(worked(MAT))
    assert "Sewn" not in told
    assert "Dot" not in told
    sewn = worked(MAT, "finishing:\n  - sew: {piece: dot, to: mat, round: 1, stitches: 2}\n")
    assert told_of(sewn).endswith("Sewn on: dot × 3.")


PANEL = """
front:
  yarn: A
  worked: rows
  start: chain 5
  rows:
    - {row: 1, side: RS, work: "sc in 2nd ch from hook and in each ch across, turn"}
    - {row: 2, work: "ch 1, sc in each st across, turn"}
band:
  yarn: C
  worked: rows
  start: {edge: front, row ends: true}
  rows: [{row: 1, side: RS, work: "ch 1, sc in end of each row, fasten off"}]
sample:
  yarn: B
  worked: rows
  start: chain 5
  rows: [{row: 1, side: RS, work: "sc in 2nd ch from hook and in each ch across, fasten off"}]
"""


def test_it_names_the_yarns_that_the_picture_has() -> None:
    assert told_of(worked(PANEL)).endswith(", in A and C. Worked onto it: band.")
    assert told_of(worked(PANEL.replace("yarn: C", "yarn: A"))).endswith(", in A. Worked onto it: band.")


@pytest.mark.parametrize(
    "step",
    [
        "sew: {piece: sample, to: front, row: 2, stitches: 1-4}",
        "text: Knot a fringe in B along the last row.",
    ],
)
def test_yarns_of_what_is_put_on_belong_to_it(step) -> None:
    finished = f"finishing:\n  - {step}\n"
    assert ", in A, B and C" in told_of(worked(PANEL, finished))


def test_what_is_worked_onto_it_is_named() -> None:
    begun = MAT + "".join(
        f"{name}:\n  worked: spiral rounds\n  start: {{edge: {on}, round: 1}}\n"
        '  rounds: [{round: 1, work: "2 sc in each st around"}]\n'
        for name, on in (("rim", "mat"), ("brim", "rim"), ("petals", "dot"))
    )
    assert told_of(worked(begun)).endswith("Worked onto it: rim, brim.")
    assert "Worked onto" not in told_of(worked(MAT))
