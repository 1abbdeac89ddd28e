"""What a maker holds the work against, printed where it is needed.

How big the work is where its shaping ends, where a ball is widest, and what to leave when the yarn is cut:
all stand as notes under their rounds.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from ..measure import Checkpoint, Measured, PieceMeasure, amounts
from .leaflet_parts import Piece, Round
from .leaflet_rounds import labelled
from .leaflet_voice import Voice


def marked(voice: Voice, measured: Measured, pieces: Sequence[Piece]) -> tuple[Piece, ...]:
    """The pieces with these notes put to their rounds."""
    return tuple(_marked(voice, measured, piece) for piece in pieces)


def _marked(voice: Voice, measured: Measured, piece: Piece) -> Piece:
    prefix = piece.anchor.removeprefix("piece-")
    notes: dict[str, list[str]] = {}
    for one in measured.checkpoints:
        if one.piece == piece.name:
            worked = _sizes_that_work(measured.piece(piece.name), one.label)
            notes.setdefault(f"{prefix}-{one.label}", []).append(checkpoint(voice, one, worked))
    measure = measured.piece(piece.name)
    for label, said in balls(voice, measure) if measure is not None else ():
        notes.setdefault(f"{prefix}-{label}", []).append(said)
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


def _sizes_that_work(piece: PieceMeasure | None, label: str) -> list[int]:
    """The sizes that have the round of that label."""
    rounds = piece.rounds if piece is not None else ()
    return [size for size, own in enumerate(rounds) if any(one and one.label == label for one in own)]


def checkpoint(voice: Voice, one: Checkpoint, worked: Sequence[int] = ()) -> str:
    """`The base is now about 11 cm (4¼ in) across.`; where only some of the sizes that work the round end
    their shaping here, they are named. worked: those sizes, all of them where none is given.
    """
    sizes = [at for at, mm in enumerate(one.length_mm) if mm is not None]
    length = amounts.lengths(tuple(one.length_mm[at] for at in sizes))
    wide = amounts.lengths(tuple(one.wide_mm[at] for at in sizes)) if one.wide_mm else ""
    said = voice.say(f"checkpoint_{one.what}", length=length, wide=wide)
    return said if sizes == list(worked) else _of_sizes(voice, sizes, said)


def balls(voice: Voice, piece: PieceMeasure) -> Iterator[tuple[str, str]]:
    """Of a piece that makes a ball, the label of its last widest round, and `Rounds 4–8 are the widest part
    of a ball, about 4 cm (1½ in) across. It draws in from round 9 on.`; one a way that the sizes turn.
    """
    for ball in dict.fromkeys(one for one in piece.ball if one is not None):
        sizes = [at for at, one in enumerate(piece.ball) if one == ball]
        said = voice.say(
            "ball_one" if ball.first == ball.last else "ball",
            widest=labelled(voice, "round", ball.first, ball.last),
            across=amounts.lengths(tuple(piece.ball_across_mm(at) for at in sizes)),
            turns=labelled(voice, "round", ball.turns, ball.turns).lower(),
        )
        yield ball.last, _of_sizes(voice, sizes, said)


def _of_sizes(voice: Voice, sizes: Sequence[int], said: str) -> str:
    """The sentence; where it is of some sizes only, they are named."""
    if len(sizes) == voice.pattern.size_count:
        return said
    named = ", ".join(voice.pattern.sizes[at] for at in sizes)
    return voice.say(
        "in_sizes" if len(sizes) > 1 else "in_size", sizes=named, said=said[0].lower() + said[1:]
    )


def tail(voice: Voice, measured: Measured, piece: str) -> Iterator[str]:
    """`Leave a tail of about 25 cm (9¾ in) for sewing.`, where the piece has one; where it needs one
    that nobody states, what is usual, marked as worked out.
    """
    tails = [one for size in measured.tails for one in size if one.piece == piece and not one.told]
    if tails:
        yield voice.say("tail", length=amounts.lengths(tuple(one.length_mm for one in tails)))
    unsaid = [next((one for one in size if one.piece == piece), None) for size in measured.unsaid_tails]
    if any(unsaid):
        key = "tail_unsaid_short" if all(one is None or one.short for one in unsaid) else "tail_unsaid"
        around = [one.usual_around if one else None for one in unsaid]
        yield voice.say(
            "tail_unsaid_rows" if any(around) else key,
            length=amounts.spans(tuple(one.usual if one else None for one in unsaid)),
            around=amounts.spans(tuple(around)) if any(around) else "",
        )
