"""The glossary holds what the collection uses, and where."""

from dataclasses import replace

from loopleaf.publish.glossary import Use, glossary
from loopleaf.publish.leaflet_parts import Abbreviation
from tests.publish.lantern import lantern


def test_an_entry_names_every_pattern_that_uses_it() -> None:
    one = lantern()
    other = replace(
        one,
        slug="moth",
        title="Moth",
        abbreviations=(Abbreviation("hdc", "half double crochet", "", "stitch-half", "Two loops."),),
    )
    first = replace(
        one, abbreviations=(Abbreviation("hdc", "half double crochet", "", "stitch-half", "Two loops."),)
    )
    stitches = glossary([first, other])[0]
    assert [(entry.term, entry.meaning) for entry in stitches.entries] == [
        ("hdc", "half double crochet. Two loops.")
    ]
    assert stitches.entries[0].uses == (
        Use("lantern-pouch", "Lantern pouch", "abbreviations"),
        Use("moth", "Moth", "abbreviations"),
    )


def _short(*forms: tuple[str, str]) -> list[tuple[str, str]]:
    """The glossary's own forms of an abbreviation that each pattern has in others."""
    leaflets = [
        replace(lantern(), slug=f"p{i}", abbreviations=(Abbreviation(short, name, "", "abbr-x", "Said."),))
        for i, (short, name) in enumerate(forms)
    ]
    return [(one.term, one.meaning) for one in glossary(leaflets)[0].entries]


def test_an_entry_has_the_forms_of_the_whole_collection() -> None:
    assert _short(("ch", "chain"), ("ch, chs", "chain, chains")) == [("ch, chs", "chain, chains. Said.")]
    assert _short(("dc3tog", "three together"), ("dc2tog", "two together")) == [
        ("dc2tog, dc3tog", "two together, three together. Said.")
    ]


def test_many_lengths_stay_short_in_the_glossary_too() -> None:
    spaces = [(f"ch-{n} sp", f"chain-{n} space") for n in (4, 12, 1, 2)]
    assert _short(*spaces) == [("ch-1 sp, ch-2 sp …", "chain-1 space, chain-2 space. Said.")]
    many = ("ch-3 sp, ch-5 sp …", "chain-3 space, chain-5 space …")
    assert _short(many, ("ch-1 sp", "chain-1 space"))[0][0] == "ch-1 sp, ch-3 sp …"


def test_levels_that_no_pattern_has_are_left_out() -> None:
    levels = next(part for part in glossary([lantern()]) if part.anchor == "levels")
    assert [entry.term for entry in levels.entries] == ["Easy"]


def test_the_lowest_level_stands_first() -> None:
    easy = lantern()
    basic = replace(easy, level=replace(easy.level, name="basic", anchor="level-basic"))
    levels = glossary([easy, basic])[-1]
    assert [entry.term for entry in levels.entries] == ["Basic", "Easy"]


def test_stitches_and_other_words_stand_apart_each_in_alphabetical_order() -> None:
    short = (
        Abbreviation("st", "stitch", "", "abbr-stitch"),
        Abbreviation("rep", "repeat", "", "abbr-repeat"),
        Abbreviation("sc", "single crochet", "", "stitch-single"),
    )
    parts = glossary([replace(lantern(), abbreviations=short)])
    assert [part.anchor for part in parts] == ["stitches", "abbreviations", "levels"]
    assert [entry.term for entry in parts[1].entries] == ["rep", "st"]


def test_the_words_follow_the_terms() -> None:
    assert glossary([]) == ()
    assert glossary([lantern("UK")])[-1].title == "Levels"
