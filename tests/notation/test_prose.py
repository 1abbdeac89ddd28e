"""Free text in the other terminology: one pass, longest phrase first, and what can't be told apart."""

import pytest

from loopleaf.notation import Vocabulary, translate_prose
from loopleaf.notation.vocabulary import SpecialStitch

from .trees import UK, US

BOTH_WAYS = [
    ("Skip the first dc, then sc in each.", "Miss the first tr, then dc in each."),
    ("Each half double crochet leans.", "Each half treble leans."),
    ("Work the treble crochet loosely.", "Work the double treble loosely."),
    ("Five dc in one stitch; dc2tog ends the row.", "Five tr in one stitch; tr2tog ends the row."),
    ("FPdc around the post, 2dc, 5-dc bobble.", "RtrF around the post, 2tr, 5-tr bobble."),
    ("The ch-2 sp, then ch 3, join to top of ch-3.", "The 2ch-sp, then 3ch, join to top of 3ch."),
    ("The chain-2 spaces lie flat.", "The 2-chain spaces lie flat."),
    ("Gauge matters: check the gauge.", "Tension matters: check the tension."),
    ("Yarn over, colors A and B, worsted weight.", "Yarn round hook, colours A and B, aran weight."),
    ("SC only.", "DC only."),
    ("The shell and the sea stars.", "The shell and the sea stars."),
    ("The crab stitch is a reverse single crochet.", "The crab stitch is a reverse double crochet."),
    ("Hold the yarn double. Fold it in half.", "Hold the yarn double. Fold it in half."),
]


@pytest.mark.parametrize(("us", "uk"), BOTH_WAYS)
def test_there_and_back(us, uk):
    assert translate_prose(us, "US", "UK", US) == (uk, ())
    assert translate_prose(uk, "UK", "US", UK) == (us, ())


def test_a_translated_word_is_not_translated_again():
    assert translate_prose("sc, dc, tr, dtr", "US", "UK", US)[0] == "dc, tr, dtr, trtr"


def test_miss_smith_is_not_skipped():
    assert (
        translate_prose("Miss Smith lent it. Miss 2 sts.", "UK", "US", UK)[0]
        == "Miss Smith lent it. Skip 2 sts."
    )


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("Make a double in each stitch.", "double"),
        ("Two doubles and a chain.", "doubles"),
        ("Work htr all round.", "htr"),
        ("A half treble in each.", "half treble"),
        ("Here dc (UK: treble) is meant.", "treble"),
    ],
)
def test_what_cannot_be_told_apart_is_left_and_said(text, words):
    new, problems = translate_prose(text, "US", "UK", US)
    assert words in new
    assert [(p.rule, p.severity, text[p.span.start : p.span.end]) for p in problems] == [
        ("prose-term-unclear", "warning", words)
    ]


def test_text_in_its_own_terms_stays_and_is_still_looked_at():
    text = "Skip a double in each htr."
    new, problems = translate_prose(text, "US", "US", US)
    assert new == text
    assert len(problems) == 2


def test_an_authors_own_name_stays_in_any_terms():
    own = Vocabulary("US", {"treble wave": SpecialStitch("treble wave", "", "3 tr in same st")})
    said = "Work a treble wave, then a treble crochet."
    assert translate_prose(said, "US", "UK", own)[0] == "Work a treble wave, then a double treble."
    assert translate_prose(said, "US", "UK")[0] != translate_prose(said, "US", "UK", own)[0]
