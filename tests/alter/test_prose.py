"""What a file's sentences say in numbers is named after an alteration, and never changed."""

from loopleaf.alter import fit_around
from loopleaf.alter.prose import telling
from loopleaf.pattern import load
from tests.alter.patterns import checked

TEXT = """\
title: Crown
summary: A crown of 4 rounds.
designer: Saltmarsh Makers' Library
terms: US
licence: CC-BY-4.0
finished size: {around: 17 cm}
materials: {yarns: {A: {weight: 4, name: lichen}}, hook: 5.5 mm, notions: [needle]}
gauge: {stitch: sc, stitches: 14, rows: 14, over: 10 cm}
turning chains: {sc: does not count}
notes:
  - Increase 6 times in each round.
  - Keep the 2nd marker in the first stitch, 3 in all.
pieces:
  hat:
    title: Hat
    yarn: A
    worked: spiral rounds
    start: magic ring
    rounds:
      - {round: 1, work: "6 sc in ring", count: 6}
      - {round: 2, work: "inc x 6", count: 12, note: It has 12 stitches now.}
      - {round: 3, work: "(sc in next st, inc) x 6", count: 18}
      - {round: 4, work: "(sc in next 2 sts, inc) x 6", count: 24}
      - {round: 5, work: "sc in each st around, fasten off", count: 24}
finishing:
  - text: Fold up eight rows and pin them 2½ in above the edge, at 3.5 (4, 5) cm.
"""


def test_sentences_with_numbers_are_named() -> None:
    assert list(telling(load(TEXT.encode(), "crown.yml"))) == [
        "line 2 says “4 rounds”: look whether it still holds",
        "line 11 says “6 times”: look whether it still holds",
        "line 21 says “12 stitches”: look whether it still holds",
        "line 26 says “eight rows” and “2½ in” and “3.5 (4, 5) cm”: look whether it still holds",
    ]


def test_they_are_told_after_a_resize_and_stay_as_they_were() -> None:
    before = checked(TEXT)
    altered = fit_around(before, before, 215).altered
    assert altered is not None
    assert "line 2 says “4 rounds”: look whether it still holds" in altered.remarks
    assert "A crown of 4 rounds." in altered.text
    assert "Fold up eight rows" in altered.text
