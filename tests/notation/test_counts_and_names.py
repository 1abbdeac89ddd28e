"""Counts as authors state them, and what stitches are called."""

import pytest

from loopleaf.notation import kind_names, parse_count, stitch_name, write_count, write_step
from loopleaf.notation.tree import Amount, Chain, Stitch, Tally, Target

from .trees import SPECIALS, UK, US

DOUBLE, SHELL = Stitch("double"), Stitch("special", name="shell")


def n(number):
    return Amount((number,))


@pytest.mark.parametrize(
    ("text", "tally"),
    [
        ("48", Tally(n(48))),
        ("48 sts", Tally(n(48))),
        ("40 (48, 56)", Tally(Amount((40, 48, 56)))),
        ("40 (48, 56) sts", Tally(Amount((40, 48, 56)))),
        ("- (48, 56)", Tally(Amount((None, 48, 56)))),
        ("24 dc, 24 ch-1 sps", Tally(None, ((n(24), DOUBLE), (n(24), Target("space", length=1))))),
        ("24 dc and 4 ch-sps", Tally(None, ((n(24), DOUBLE), (n(4), Target("space"))))),
        ("8 sc, 8 sh", Tally(None, ((n(8), Stitch("single")), (n(8), SHELL)))),
        ("8 sc, 8 shells", Tally(None, ((n(8), Stitch("single")), (n(8), SHELL)))),
        (
            "6 picots, 6 5-dc bobbles",
            Tally(None, ((n(6), Target("picot")), (n(6), Stitch("double", "bobble", 5)))),
        ),
        ("12 clusters, 12 ch", Tally(None, ((n(12), Stitch("", "cluster")), (n(12), Stitch("chain"))))),
    ],
)
def test_a_count_is_read(text, tally):
    assert parse_count(text, US) == (tally, ())


@pytest.mark.parametrize(
    ("text", "words", "message"),
    [
        ("", "", "Nothing is written here; expected “48”, “24 dc, 24 ch-1 sps” or “40 (48, 56)”."),
        (
            "about 24",
            "about 24",
            "“about 24” can't be read here; expected “48”, “24 dc, 24 ch-1 sps” or “40 (48, 56)”.",
        ),
        ("24 blobs", "blobs", "“blobs” can't be read here; expected “2 sts”, “st”, “ch” or “ch-sp”."),
        ("24 dc 12", "24 dc 12", "“24 dc 12” breaks off; expected “sc”, “dc”, “sts” or “ch-2 sps” next."),
        ("24 htr", "htr", "“htr” is a UK name; this file is in US terms."),
    ],
)
def test_what_is_no_count_is_said(text, words, message):
    tally, problems = parse_count(text, US)
    assert tally is None
    assert [(text[p.span.start : p.span.end], p.message) for p in problems] == [(words, message)]


def test_a_count_in_four_styles():
    tally = parse_count("24 dc, 4 ch-2 sps, 8 sh", US)[0]
    assert tally is not None
    assert [write_count(tally, v.terms, full, v) for v in (US, UK) for full in (False, True)] == [
        "24 dc, 4 ch-2 sps, 8 sh",
        "24 double crochet, 4 chain-2 spaces, 8 shells",
        "24 tr, 4 2ch-sps, 8 sh",
        "24 trebles, 4 2-chain spaces, 8 shells",
    ]
    assert write_count(Tally(n(1)), "US") == "1 st"


@pytest.mark.parametrize(
    ("stitch", "names"),
    [
        (DOUBLE, ["dc", "double crochet", "tr", "treble"]),
        (Stitch("half", post="front"), ["FPhdc", "front post half double crochet", "RhtrF",
            "raised half treble front"]),
        (Stitch("double", "tog", 3), ["dc3tog", "double crochet 3 together", "tr3tog", "treble 3 together"]),
        (Stitch("double", "bobble", 5), ["5-dc bobble", "5-double crochet bobble", "5-tr bobble",
            "5-treble bobble"]),
        (Stitch("double", "v-stitch", 1), ["dc V-st", "double crochet V-stitch", "tr V-st",
            "treble V-stitch"]),
        (Stitch("double", "v-stitch", 2), ["ch-2 dc V-st", "chain-2 double crochet V-stitch",
            "2ch tr V-st", "2-chain treble V-stitch"]),
        (Stitch("chain", "picot", 3), ["ch-3 picot", "chain-3 picot", "3ch picot", "3-chain picot"]),
        (SHELL, ["sh", "shell", "sh", "shell"]),
        (Stitch("special", name="sea star"), ["sea star", "sea star", "sea star", "sea star"]),
        (Stitch("dec", invisible=True), ["invisible dec", "invisible decrease"] * 2),
    ],
)  # fmt: skip
def test_a_stitch_is_called(stitch, names):
    assert [
        stitch_name(stitch, v.terms, full, vocabulary=v) for v in (US, UK) for full in (False, True)
    ] == names


def test_several_of_a_stitch():
    assert stitch_name(DOUBLE, "US", True, plural=True) == "double crochet"
    assert stitch_name(DOUBLE, "UK", True, plural=True) == "trebles"
    assert stitch_name(SHELL, "US", True, True, US) == "shells"
    assert stitch_name(SHELL, "US") == "shell"


def test_kind_names_are_the_tables():
    assert kind_names("double", "US").short == "dc"
    assert kind_names("double", "UK").plural == "trebles"
    with pytest.raises(KeyError):
        kind_names("quintuple", "US")


def test_one_step_by_itself():
    assert write_step(Chain(n(3)), "UK") == "3ch"
    assert write_step(Chain(n(3)), "UK", True, UK) == "3 chain"


def test_vocabularies_that_hold_the_same_are_equal():
    from loopleaf.notation import Vocabulary

    twin = Vocabulary("US", dict(SPECIALS), frozenset(US.yarns), US.pieces)
    assert twin == US
    assert hash(twin) == hash(US)
    assert twin != UK
    assert twin != "US"
