"""Tails that an author tells in words: `fasten off, leaving a 20 cm tail for sewing`, or a note that says so.

Only what is left for a seam counts: not the end to weave in, not what draws an opening closed, and not the
tail at the beginning, which lies at another edge.
"""

import re
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass

from ..fabric.worked import PieceWork
from ..notation.tree import FastenOff
from ..notation.tree_words import Span
from ..pattern import Path, Pattern, Sew
from ..pattern.reading import read_length

OTHER_YARN = re.compile(
    r"\bthreads?\b|\bstrands?\b|\b(?:new|separate|another|fresh) (?:yarn|length|piece)", re.IGNORECASE
)
"""What a seam is worked with where it isn't the tail."""
_LENGTH = re.compile(
    r"(\d+(?:\.\d+)?(?: ?[½¼¾])?|[½¼¾])[ -]?(mm|cm|inch(?:es)?|in|[\"″])(?![a-z])", re.IGNORECASE
)
_SENTENCES = re.compile(r"(?<!\d)[.;!](?=\s|$)|(?<=\d)[.;!](?=\s+[A-Z]|\s*$)")
_TAIL = re.compile(r"\b(?:tail|end)s?\b", re.IGNORECASE)
_LEFT = re.compile(r"\b(?:leav(?:e|es|ing)|left|cut)\b", re.IGNORECASE)
_FOR_SEWING = re.compile(
    r"\b(?:for|to) (?:sew|seam|stitch|attach|join)(?:ing)?\b|\bsewing (?:tail|end)\b", re.IGNORECASE
)
_NOT_THIS = re.compile(
    r"\b(?:begin\w*|start\w*|foundation|slip ?knot|first round|eyes?|nose|mouth|buttons?|beads?|sequins?)\b",
    re.IGNORECASE,
)
"""Of another tail, or of something else that it sews on."""


_POINT = 2
"""So many stitches are no seam around an edge (chosen here)."""


@dataclass(frozen=True, slots=True)
class ToldTail:
    """A tail in words: its length, and where the words stand in the file (span: within the value there)."""

    length_mm: float
    path: Path
    span: Span | None = None


def told_tail(pattern: Pattern, piece: PieceWork) -> ToldTail | None:
    """The tail for sewing that the last round's line or a note tells; None where nothing does, or where the
    seam is worked with other yarn or is one point, as of a leaf that hangs by its stem.
    """
    seams = [step.sew for step in pattern.finishing if step.sew is not None and step.sew.piece == piece.name]
    seams = [sew for sew in seams if sew.to not in ("", piece.name)]
    if any(OTHER_YARN.search(sew.text) or _is_point(sew, piece.name, pattern) for sew in seams):
        return None
    return _at_the_end(piece, sewn_on=bool(seams)) or next(_in_notes(pattern, piece.name), None)


def _is_point(sew: Sew, name: str, pattern: Pattern) -> bool:
    """Whether each copy is sewn to a stitch or two."""
    stitches = sum(len(run.numbers) for run in sew.stitches)
    return (
        all(run.last is not None for run in sew.stitches)
        and 0 < stitches <= _POINT * pattern.pieces[name].make
    )


def _at_the_end(piece: PieceWork, sewn_on: bool) -> ToldTail | None:
    """Of the last line's `fasten off`; a purpose may go unsaid where the piece is sewn on."""
    last = piece.rounds[-1] if piece.rounds else None
    steps = last.line.steps if last is not None and last.line is not None else ()
    off = next((step for step in reversed(steps) if isinstance(step, FastenOff)), None)
    if last is None or off is None or off.ends or off.closing:
        return None
    sews = bool(_FOR_SEWING.search(off.what_for)) or (sewn_on and not off.what_for)
    lengths = lengths_mm(off.tail)
    if not sews or not lengths or _NOT_THIS.search(off.what_for):
        return None
    return ToldTail(max(lengths), last.plan.work_path, off.span)


def _in_notes(pattern: Pattern, name: str) -> Iterator[ToldTail]:
    model = pattern.pieces[name]
    for at, entry in enumerate(model.entries):
        for field, text in (("note", entry.note), ("text", entry.text)):
            for sentence in _SENTENCES.split(text or ""):
                lengths = lengths_mm(sentence)
                told = _TAIL.search(sentence) and _LEFT.search(sentence) and _FOR_SEWING.search(sentence)
                if told and lengths and not _NOT_THIS.search(sentence):
                    yield ToldTail(max(lengths), ("pieces", name, model.entries_field, at, field))


def lengths_mm(text: str) -> list[float]:
    """The lengths that stand in a text, each with its unit; of a range the longer. None that no tail has."""
    found: list[float] = []
    for one in _LENGTH.finditer(text):
        with suppress(ValueError):
            found.append(read_length(f"{one[1]} {one[2]}").mm)
    return found
