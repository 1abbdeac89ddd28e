"""Turns of phrase that say what other words of the shorthand say: `rotate`, `attach B`."""

from functools import cache

from .lexicon import Lexicon, split_words, words_file

Piece = tuple[str, str, int, int, bool]
"""The smallest piece of a line: (what, lower-case text, start, end, glued)."""


def put_instead(pieces: list[Piece], lexicon: Lexicon) -> list[Piece]:
    """The pieces with such phrases replaced; each new word stands where the whole phrase stood."""
    table = _phrases()
    if not any(piece[1] in table for piece in pieces):
        return pieces
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
        made += [("word", word, start, end, False) for word in words]
        at += length
    return made


def _said_at(pieces: list[Piece], at: int) -> tuple[int, tuple[str, ...]] | None:
    """The longest phrase that begins here: how many pieces it has, and what is read instead."""
    begun = _phrases().get(pieces[at][1])
    if begun is None:
        return None
    found = begun.get("", _NONE)[:1]
    if at + 1 < len(pieces):
        kind, second = pieces[at + 1][:2]
        for rows in (begun.get(second, _NONE), begun.get("#", _NONE) if kind == "num" else _NONE):
            found += tuple([row for row in rows if _goes_on(pieces, at + 1, row[0])][:1])
    if not found:
        return None
    more, words = max(found, key=lambda row: len(row[0]))
    return 1 + len(more), words


def _goes_on(pieces: list[Piece], at: int, more: tuple[str, ...]) -> bool:
    """Whether a phrase goes on so behind its first word; its second is known to fit."""
    if len(more) > len(pieces) - at:
        return False
    return all(_says(pieces[at + i], more[i]) for i in range(1, len(more)))


_AS_WELL = {"ch": ("chain", "chs", "chains"), "other": ("opposite",), "foundation": ("starting", "base")}
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

_NONE: tuple[Phrase, ...] = ()


@cache
def _phrases() -> dict[str, dict[str, tuple[Phrase, ...]]]:
    """By first word, then by what may be said for the second ("" where it has only one), longest first."""
    table: dict[str, dict[str, list[Phrase]]] = {}
    side = words_file()["other side"]
    combined = [(f"{begin} {rest}", side["read"]) for begin in side["begin"] for rest in side["side"]]
    for said, read in (*words_file()["instead"], *combined):
        first, *more = split_words(said)
        second = more[0] if more else ""
        for word in (second, *_AS_WELL.get(second, ())):
            rows = table.setdefault(first, {}).setdefault(word, [])
            rows.append((tuple(more), split_words(read)))
    return {
        first: {second: tuple(sorted(rows, key=lambda row: -len(row[0]))) for second, rows in begun.items()}
        for first, begun in table.items()
    }
