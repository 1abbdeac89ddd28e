"""The words that a pattern's lines may hold: the trade's names in its terms, the pattern's own stitches, and
words.yml.

A lexicon knows phrases by their first word. The longest phrase that fits is taken, so `half double
crochet` is never read as a half and a double. Names that only the other terminology has are known
too, marked as foreign, so that a line can be understood and the slip be named.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import Any

from ..trade.data_files import data_file
from .stitch_words import own_names, plurals, posted, stitch_words
from .style import Style
from .tree import Stitch
from .vocabulary import Terms, Vocabulary

WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)*|\d+|[^\s\w]|_")
ORDINAL = re.compile(r"(?:st|nd|rd|th)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Entry:
    """One phrase. means: what it is to the grammar; value: what it stands for (a Stitch, a number, a loop).

    more: the phrase's further words after the first. foreign: the word to use in this file's terms, where the
    phrase belongs to the other terminology; travels: it is met on both sides all the same.
    """

    means: str
    value: Any = None
    more: tuple[str, ...] = ()
    foreign: str = ""
    travels: bool = False


Lexicon = dict[str, tuple[Entry, ...]]


def split_words(text: str) -> tuple[str, ...]:
    """A phrase as the lexer sees it: lower-case words and numbers, without hyphens and `the`."""
    found = [w.lower().replace("’", "'") for w in WORD.findall(text)]
    joined: list[str] = []
    for word in found:
        if joined and joined[-1].isdigit() and ORDINAL.fullmatch(word):
            joined[-1] += word
        elif word not in ("-", "the"):
            joined.append(word)
    return tuple(joined)


@cache
def words_file() -> dict[str, Any]:
    """The content of words.yml."""
    return data_file(__package__, "words.yml")


@cache
def form_words() -> dict[str, str]:
    """The single words for what stitches are made into (`bobbles`, `cl`), with the form that each means."""
    rows = [row for row in words_file()["words"] if row["means"] == "form"]
    return {
        phrase: row["value"] for row in rows for phrase in row["read"] if split_words(phrase) == (phrase,)
    }


@lru_cache(maxsize=64)
def lexicon_for(vocabulary: Vocabulary) -> Lexicon:
    """The lexicon of one pattern: the base of its terms with its own stitches before everything else."""
    base = base_lexicon(vocabulary.terms)
    if not vocabulary.specials:
        return base
    own: dict[tuple[str, ...], Entry] = {}
    for key, special in vocabulary.specials.items():
        stitch = Stitch("special", name=key)
        for name in (key, special.name, special.short):
            for phrase in (name, *plurals(name)):
                words = split_words(phrase)
                if words:
                    own.setdefault(words, Entry("special", stitch, words[1:]))
        if special.yarn_overs is not None:
            for word in posted(stitch, own_names(special), vocabulary.terms):
                words = split_words(word.name)
                own.setdefault(words, Entry("special", word.stitch, words[1:]))
    lexicon = dict(base)
    for words, entry in own.items():
        others = tuple(e for e in lexicon.get(words[0], ()) if e.more != entry.more)
        lexicon[words[0]] = _longest_first((entry, *others))
    return lexicon


@cache
def base_lexicon(terms: Terms) -> Lexicon:
    """The words of one terminology without any pattern's own."""
    phrases: dict[tuple[str, ...], Entry] = {}
    for word in stitch_words(terms):
        words = split_words(word.name)
        phrases.setdefault(words, Entry(_means(word.stitch), word.stitch, words[1:]))
    for words, entry in _plain_words(terms):
        phrases.setdefault(words, entry)
    other: Terms = "UK" if terms == "US" else "US"
    for word in stitch_words(other):
        words = split_words(word.name)
        own = Style(terms, word.full).stitch(word.stitch)
        phrases.setdefault(words, Entry(_means(word.stitch), word.stitch, words[1:], own))
    for us, uk in words_file()["travelling"]:
        mine, theirs = (us, uk) if terms == "US" else (uk, us)
        words = split_words(theirs)
        known = phrases[split_words(mine)]
        if words not in phrases or (phrases[words].value == known.value and not phrases[words].travels):
            phrases[words] = Entry(known.means, known.value, words[1:], mine, True)
    lexicon: dict[str, list[Entry]] = {}
    for words, entry in phrases.items():
        lexicon.setdefault(words[0], []).append(entry)
    return {first: _longest_first(entries) for first, entries in lexicon.items()}


def _longest_first(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    return tuple(sorted(entries, key=lambda e: -len(e.more)))


def _means(stitch: Stitch) -> str:
    return "ch" if stitch.kind == "chain" else "stitch"


def _plain_words(terms: Terms) -> Iterator[tuple[tuple[str, ...], Entry]]:
    content = words_file()
    for row in content["words"]:
        if row.get("terms", terms) == terms:
            for phrase in row["read"]:
                words = split_words(phrase)
                yield words, Entry(row["means"], row.get("value"), words[1:])
    for number, word in enumerate(content["numbers"], 1):
        yield (word,), Entry("num", number)
    for number, word in enumerate(content["ordinals"], 2):
        yield (word,), Entry("ord", number)
