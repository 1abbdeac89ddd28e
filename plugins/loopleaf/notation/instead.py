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
    for more, words in _phrases().get(pieces[at][1], ()):
        if len(more) < len(pieces) - at and all(_says(pieces[at + 1 + i], w) for i, w in enumerate(more)):
            return 1 + len(more), words
    return None


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


@cache
def _phrases() -> dict[str, tuple[tuple[tuple[str, ...], tuple[str, ...]], ...]]:
    """By first word: further words and what is read instead, longest first."""
    table: dict[str, list[tuple[tuple[str, ...], tuple[str, ...]]]] = {}
    side = words_file()["other side"]
    combined = [(f"{begin} {rest}", side["read"]) for begin in side["begin"] for rest in side["side"]]
    for said, read in (*words_file()["instead"], *combined):
        words = split_words(said)
        table.setdefault(words[0], []).append((words[1:], split_words(read)))
    return {first: tuple(sorted(rows, key=lambda row: -len(row[0]))) for first, rows in table.items()}
