"""Words one by one: misspelt in a line, in counts that can't be read, in free text put into other terms."""

from collections.abc import Callable

import pytest

from loopleaf.notation import Vocabulary, parse, parse_count, translate_prose

from .shown import shown
from .test_broken_lines import said
from .test_lines import CASES
from .trees import UK, US


def misspelt(terms: str) -> dict[str, str]:
    """Each word of three letters or more, once, and a line where its second and third are exchanged."""
    lines: dict[str, str] = {}
    for case in CASES:
        for style in (terms, f"{terms} full"):
            for word in case[style].split(" "):
                bare = word.strip("(),;*[]×")
                if len(bare) > 2 and bare.isalpha() and bare[1] != bare[2] and bare not in lines:
                    lines[bare] = case[style].replace(bare, bare[0] + bare[2] + bare[1] + bare[3:], 1)
    return lines


@pytest.mark.parametrize("vocabulary", [US, UK], ids=["US", "UK"])
def test_misspelt_words(vocabulary: Vocabulary, golden: Callable[[str, str], None]) -> None:
    texts = []
    for word, line in misspelt(vocabulary.terms.lower()).items():
        texts.append(f"{word}: {line}")
        texts += [said(line, problem) for problem in parse(line, vocabulary).problems]
    golden(f"misspelt-{vocabulary.terms}.txt", "\n".join(texts) + "\n")


COUNTS = [
    *(
        "48",
        "48 sts",
        "48 st",
        "24 dc",
        "24 dc, 24 ch-1 sps",
        "24 dc and 4 ch-2 sps",
        "8 sc, 8 sh",
        "12 picots",
        "4 corners",
    ),
    *(
        "8 (10, 12)",
        "8 (10, 12) sc",
        "8 (-, 12) sts",
        "24 dc, 8 ch",
        "6 FPdc, 6 BPdc",
        "6 3-dc cl, 6 sc",
        "n",
        "2n + 4",
    ),
    *(
        "12 sts in all",
        "24 dc, 4 ch-2 sps, 28 in all",
        "6 loops",
        "6 lps",
        "8 groups",
        "2 sl sts",
        "3 MC",
        "6 5-dc bobbles",
    ),
    *(
        "",
        "sc",
        "8 9",
        "8 9 sc",
        "8 sc 9",
        "8 sc,",
        "8 sc, 9",
        "8 sts, 9 sc",
        "8 sc, 9 sts",
        "24 dc, sc",
        "24 blub",
        "8 rows",
    ),
    *(
        "24 dc, 4",
        "(24)",
        "24 st 3",
        "about 24",
        "24 dc, 24 dc",
        "8 (10 sc",
        "twelve",
        "twelve sc",
        "0",
        "0 sc",
        "24 beg",
        "5 each",
    ),
]


@pytest.mark.parametrize("vocabulary", [US, UK], ids=["US", "UK"])
def test_counts(vocabulary: Vocabulary, golden: Callable[[str, str], None]) -> None:
    texts = []
    for count in COUNTS:
        tally, problems = parse_count(count, vocabulary)
        texts.append(f"{count}: {'not read' if tally is None else shown(tally, count)}")
        texts += [said(count, problem) for problem in problems]
        line = f"sc in next st ({count})"
        texts += [said(line, problem) for problem in parse(line, vocabulary).problems]
    golden(f"counts-{vocabulary.terms}.txt", "\n".join(texts) + "\n")


PROSE = [
    "Work a sc, then 2 scs and some dcs; a DC and a Dc too.",
    "Hdc-row, dc2tog-edge, sc-dc-sc, tr7 and dc3.",
    "A double crochet, double crochets, half-double crochet, half double crochets and a treble.",
    "Treble crochets, a triple, two triples, double trebles and a quadruple treble.",
    "Slip stitch, slip-stitches, sl sts, ss and sl st edges.",
    "Skip the first, miss the second; skipped, missed, skipping, missing.",
    "Miss Smith missed a stitch. So did Miss",
    "FPdc, a front post double crochet, BPtr; dc in the back loop only, BLO and FLO.",
    "A 3-dc cluster, 5-dc bobbles, hdc puffs, dc popcorns, V-stitches and shells of 5 dc.",
    "Fasten off, bind off, yarn over, yoh, yrh, gauge, tension, single, a single crochet stitch.",
    "Invisible decrease: sc2tog through the front loops. Inc and dec as before.",
    "Afghan hook; dtr, trtr, ttr, qtr, quadtr and htr.",
    "“dc” in quotes, (tr) in brackets, *dc*, dc/tr, dc.5 and dc!",
    "dc",
    "",
]


@pytest.mark.parametrize(("vocabulary", "target"), [(US, "UK"), (UK, "US")], ids=["US to UK", "UK to US"])
def test_free_text(vocabulary: Vocabulary, target: str, golden: Callable[[str, str], None]) -> None:
    own = vocabulary.terms.lower()
    texts = []
    for text in [*PROSE, *(case[style] for case in CASES for style in (own, f"{own} full"))]:
        new, problems = translate_prose(text, vocabulary.terms, target, vocabulary)
        if new != text or problems:
            texts += [text, f"    {new}", *(said(text, problem) for problem in problems)]
        assert translate_prose(text, vocabulary.terms, vocabulary.terms, vocabulary)[0] == text
    golden(f"free-text-{vocabulary.terms}.txt", "\n".join(texts) + "\n")
