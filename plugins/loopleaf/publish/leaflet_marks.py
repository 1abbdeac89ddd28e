"""What a maker holds the work against, printed where it is needed.

How big the work is where its shaping ends, and what to leave when the yarn is cut: both stand as notes under
their rounds.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from ..measure import Checkpoint, Measured, amounts
from .leaflet_parts import Piece, Round
from .leaflet_voice import Voice


def marked(voice: Voice, measured: Measured, pieces: Sequence[Piece]) -> tuple[Piece, ...]:
    """The pieces with these notes put to their rounds."""
    return tuple(_marked(voice, measured, piece) for piece in pieces)


def _marked(voice: Voice, measured: Measured, piece: Piece) -> Piece:
    prefix = piece.anchor.removeprefix("piece-")
    notes: dict[str, list[str]] = {}
    for one in measured.checkpoints:
        if one.piece == piece.name:
            notes.setdefault(f"{prefix}-{one.label}", []).append(checkpoint(voice, one))
    last = piece.rounds[-1] if piece.rounds else None
    if last is not None:
        notes.setdefault(last.anchors[-1], []).extend(tail(voice, measured, piece.name))
    if not any(notes.values()):
        return piece
    return replace(
        piece,
        items=tuple(
            replace(item, note=" ".join(filter(None, [item.note, *_of(item, notes)])))
            if isinstance(item, Round)
            else item
            for item in piece.items
        ),
    )


def _of(round: Round, notes: dict[str, list[str]]) -> Iterator[str]:
    for anchor in round.anchors:
        yield from notes.get(anchor, ())


def checkpoint(voice: Voice, one: Checkpoint) -> str:
    """`The base is now about 11 cm (4¼ in) across.`; where only some sizes end here, they are named."""
    sizes = [at for at, mm in enumerate(one.length_mm) if mm is not None]
    length = amounts.lengths(tuple(one.length_mm[at] for at in sizes))
    wide = amounts.lengths(tuple(one.wide_mm[at] for at in sizes)) if one.wide_mm else ""
    said = voice.say(f"checkpoint_{one.what}", length=length, wide=wide)
    if len(sizes) == len(one.length_mm):
        return said
    named = ", ".join(voice.pattern.sizes[at] for at in sizes)
    return voice.say(
        "in_sizes" if len(sizes) > 1 else "in_size", sizes=named, said=said[0].lower() + said[1:]
    )


def tail(voice: Voice, measured: Measured, piece: str) -> Iterator[str]:
    """`Leave a tail of about 25 cm (9¾ in) for sewing.`, where the piece has one."""
    tails = [one for size in measured.tails for one in size if one.piece == piece]
    if tails:
        yield voice.say("tail", length=amounts.lengths(tuple(one.length_mm for one in tails)))
