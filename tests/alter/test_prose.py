"""What a file's sentences say in numbers is named after an alteration, and never changed."""

from loopleaf.alter import fit_around
from loopleaf.alter.draft import Change
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


def count(before: str, after: str, where: str = "hat, round 4", what: str = "count") -> Change:
    return Change(23, what, before, after, where)


def test_what_a_changed_number_is_now_is_told_with_it() -> None:
    changed = [count("12", "14"), count("4", "5", what="rounds")]
    said = list(telling(load(TEXT.encode(), "crown.yml"), changed))
    assert "line 21 says “12 stitches”, where 12 is now 14: look whether it still holds" in said
    assert "line 2 says “4 rounds”: look whether it still holds" in said  # a number of rounds, not round 4


def test_a_number_that_changed_to_two_others_is_left_open() -> None:
    said = list(telling(load(TEXT.encode(), "crown.yml"), [count("12", "14"), count("12", "16")]))
    assert "line 21 says “12 stitches”: look whether it still holds" in said


PROSE = TEXT.replace("Increase 6 times in each round.", "Part the 24 evenly, and mark the 24th, not 240.")


def test_a_length_is_no_count_that_changed() -> None:
    """The six stitches that became eight aren't the 6 in of the tail."""
    told = TEXT.replace("pin them 2½ in above", "pin them 6 in (15 cm) above")
    said = list(telling(load(told.encode(), "crown.yml"), [count("6", "8"), count("15", "20")]))
    assert any("“6 in” and “15 cm”" in one for one in said)
    assert not any("line 26" in one and "is now" in one for one in said)


def test_a_bare_number_that_changed_is_named() -> None:
    said = list(telling(load(PROSE.encode(), "crown.yml"), [count("24", "30")]))
    assert "line 11 says “24” and “24th”, where 24 is now 30: look whether it still holds" in said
    assert not any("line 11" in one for one in telling(load(PROSE.encode(), "crown.yml")))


def test_rounds_of_another_piece_that_file_texts_name() -> None:
    """What the file says of rounds is said of the first piece, and follows; of others a maker must look."""
    lid = TEXT.replace("Increase 6 times in each round.", "Sew the lid on at its round 5.")
    lid = lid.replace(
        "\nfinishing:",
        "\n  lid: {worked: spiral rounds, start: magic ring, rounds: [{round: 1, work: 6 sc in ring}]}"
        "\nfinishing:",
    )
    moved = [count("5", "6", "lid, round 6", "round")]
    own = [count("5", "6", "hat, round 6", "round")]
    said = "line 11 says “round 5”: look whether it still holds"
    assert said in list(telling(load(lid.encode(), "crown.yml"), moved))
    assert said not in list(telling(load(lid.encode(), "crown.yml"), own))


def test_titles_tell_numbers_too() -> None:
    said = list(telling(load(TEXT.replace("title: Crown", "title: A 48-stitch crown").encode(), "crown.yml")))
    assert said[0] == "line 1 says “48-stitch”: look whether it still holds"
