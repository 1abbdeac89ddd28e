"""Turns of phrase that say what other words of the shorthand say: `rotate`, `attach B`."""

import re
from collections.abc import Iterable, Iterator
from functools import cache
from itertools import chain, product

from .lexicon import Lexicon, split_words, words_file

Piece = tuple[str, str, int, int, bool]
"""The smallest piece of a line: (what, lower-case text, start, end, glued)."""


def put_instead(pieces: list[Piece], lexicon: Lexicon) -> list[Piece]:
    """The pieces with such phrases replaced; each new word stands where the whole phrase stood."""
    made: list[Piece] = []
    at = 0
    while at < len(pieces):
        said = _said_at(pieces, at)
        if said is None or _is_own(pieces, at, lexicon):
            made.append(pieces[at])
            at += 1
            continue
        length, words = said
        start, end = pieces[at][2], pieces[at + length - 1][3]
        numbers = iter([piece for piece in pieces[at : at + length] if piece[0] == "num"])
        made += [_put(word, numbers, start, end) for word in words]
        at += length
    return made


def _put(word: str, numbers: Iterator[Piece], start: int, end: int) -> Piece:
    """A word of what is read instead; `#` is the next number that was said."""
    if word == "#":
        return ("num", next(numbers)[1], start, end, False)
    if word.isdigit():
        return ("num", word, start, end, False)
    return ({"*": "mark", ",": "sign", "=": "sign"}.get(word, "word"), word, start, end, False)


def _said_at(pieces: list[Piece], at: int) -> tuple[int, tuple[str, ...]] | None:
    """The longest phrase that begins here: how many pieces it has, and what is read instead."""
    found = list(_found(_phrases(), pieces, at))
    for begun, _ in _found(_ways_to_turn(), pieces, at):  # `rotate and work along other side of ch`
        found += [(begun + length, words) for length, words in _found(_other_sides(), pieces, at + begun)]
    return max(found, key=lambda one: one[0], default=None)


def _found(table: "Phrases", pieces: list[Piece], at: int) -> Iterator[tuple[int, tuple[str, ...]]]:
    """The phrases of a table that begin at a piece: how many pieces each has, and what is read instead."""
    begun = table.get(pieces[at][1]) if at < len(pieces) else None
    if begun is None:
        return
    for _, words in begun.get("", _NONE)[:1]:
        yield 1, words
    if at + 1 < len(pieces):
        kind, second = pieces[at + 1][:2]
        for rows in (begun.get(second, _NONE), begun.get("#", _NONE) if kind == "num" else _NONE):
            for more, words in rows:
                if _goes_on(pieces, at + 1, more):
                    yield 1 + len(more), words


def _goes_on(pieces: list[Piece], at: int, more: tuple[str, ...]) -> bool:
    """Whether a phrase goes on so behind its first word; its second is known to fit."""
    if len(more) > len(pieces) - at:
        return False
    return all(_says(pieces[at + i], more[i]) for i in range(1, len(more)))


_AS_WELL = {
    "ch": ("chain", "chs", "chains"),
    "other": ("opposite",),
    "foundation": ("starting", "base", "beg", "beginning"),
    "loop": ("lp",),
    "loops": ("lps",),
}
"""What print may say for a word of a phrase: chains spelled out, `opposite side`, `base chain`."""


def _says(piece: Piece, word: str) -> bool:
    """Whether a piece says a phrase's word, or a number where the phrase has `#`."""
    return piece[1] == word or piece[1] in _AS_WELL.get(word, ()) or (word == "#" and piece[0] == "num")


def _is_own(pieces: list[Piece], at: int, lexicon: Lexicon) -> bool:
    """Whether the author has named a stitch so."""
    return any(
        entry.means == "special"
        and all(at + 1 + i < len(pieces) and pieces[at + 1 + i][1] == w for i, w in enumerate(entry.more))
        for entry in lexicon.get(pieces[at][1], ())
    )


Phrase = tuple[tuple[str, ...], tuple[str, ...]]
"""The words behind a phrase's first, and what is read instead of the whole."""
Phrases = dict[str, dict[str, tuple[Phrase, ...]]]
"""By first word, then by what may be said for the second ("" where it has only one), longest first."""

_NONE: tuple[Phrase, ...] = ()


@cache
def _phrases() -> Phrases:
    return _table(words_file()["instead"])


@cache
def _ways_to_turn() -> Phrases:
    return _table((begin, "") for begin in words_file()["other side"]["begin"])


@cache
def _other_sides() -> Phrases:
    return _table(words_file()["other side"]["side"])


def _table(rows: Iterable[Iterable[str]]) -> Phrases:
    table: dict[str, dict[str, list[Phrase]]] = {}
    for said, read in chain.from_iterable(_spelled_out(*row) for row in rows):
        first, *more = split_words(said)
        second = more[0] if more else ""
        for word in (second, *_AS_WELL.get(second, ())):
            same = table.setdefault(first, {}).setdefault(word, [])
            same.append((tuple(more), split_words(read)))
    return {
        first: {second: tuple(sorted(same, key=lambda row: -len(row[0]))) for second, same in begun.items()}
        for first, begun in table.items()
    }


_ONE_OF = re.compile(r"\{([^}]*\|[^}]*)\}")


def _spelled_out(said: str, read: str) -> Iterator[tuple[str, str]]:
    """Each phrase that `{sl st|ss} in …` stands for; `{1}` in what is read is the words chosen first."""
    plain, *parts = _ONE_OF.split(said)
    choices = [words.split("|") for words in parts[::2]]
    for chosen in product(*choices):
        text = plain + "".join(word + rest for word, rest in zip(chosen, parts[1::2], strict=True))
        becomes = read
        for number, word in enumerate(chosen, 1):
            becomes = becomes.replace(f"{{{number}}}", word)
        yield text, becomes
