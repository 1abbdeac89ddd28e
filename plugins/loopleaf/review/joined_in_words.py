"""Pieces that a finishing step joins without naming each: `Sew the fronts together.`, `Sew all the pieces
together.`, `Sew the shoulder seams.`
"""

import re
from collections.abc import Mapping

from ..pattern import Piece

_JOINS = r"\b(?:sew|seam|join|stitch|whip ?stitch|slip stitch|graft|crochet|assemble)\b"
_NUMBERS = ("two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_PARTS = r"(?:pieces|parts)(?! of\b)"
_MANY = rf"\d+|{'|'.join(_NUMBERS)}|both"
_ALL = re.compile(
    rf"{_JOINS}(?: up)?(?: all)?(?: of)?(?: the)?(?: (?P<number>{_MANY}))?(?: the)? {_PARTS}", re.I
)
_SEAMS = re.compile(
    rf"{_JOINS}[^.;]*\b(?:sides|(?:side|shoulder|edge) (?:and \w+ )?(?:seams?|edges))\b", re.I
)
_SEAMED = frozenset({"front", "back", "side", "panel", "half", "body"})
"""The pieces whose sides or shoulders are sewn, by a word of their name."""


def joined_in_words(pieces: Mapping[str, Piece], prose: str) -> set[str]:
    """The names of the pieces that the finishing's words join so."""
    if any(_means_all(found["number"], pieces) for found in _ALL.finditer(prose)):
        return set(pieces)
    named = {name for name, piece in pieces.items() if _names_its_kind(name, piece.title, prose)}
    seamed = [name for name, piece in pieces.items() if _words(name, piece.title) & _SEAMED]
    return named | set(seamed if _SEAMS.search(prose) and len(seamed) > 1 else ())


def _means_all(number: str | None, pieces: Mapping[str, Piece]) -> bool:
    """Whether so many pieces are all that there are, each by itself or with its copies."""
    if number is None:
        return True
    said = number.lower()
    amount = 2 if said == "both" else _NUMBERS.index(said) + 2 if said in _NUMBERS else int(said)
    return amount in (len(pieces), sum(piece.make for piece in pieces.values()))


def _names_its_kind(name: str, title: str, prose: str) -> bool:
    """Whether the pieces of its kind are named together: `the fronts` for `left front`."""
    ends = {call.lower().rstrip("0123456789 ").split(" ")[-1] for call in (name, title)} - {""}
    return any(re.search(rf"\b{re.escape(_plural(end))}\b", prose, re.I) for end in ends)


def _plural(word: str) -> str:
    if word.endswith(("s", "x", "ch", "sh")):
        return word + "es"
    if word.endswith(("lf", "af")):
        return word[:-1] + "ves"
    return word[:-1] + "ies" if re.search(r"[^aeiou]y$", word) else word + "s"


def _words(name: str, title: str) -> set[str]:
    return set(re.findall(r"[a-z]+", f"{name} {title}".lower()))
