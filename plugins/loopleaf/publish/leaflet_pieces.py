"""The pieces of a leaflet: how each begins and is worked, and its rounds."""

from collections.abc import Iterator, Mapping, Sequence

from ..fabric import PatternWork, PieceWork
from ..measure import Measured, amounts
from ..pattern import Piece, Start
from .drawing import Drawing
from .leaflet_marks import tail
from .leaflet_parts import Piece as PrintedPiece
from .leaflet_rounds import anchor_of, items, labelled
from .leaflet_told import told
from .leaflet_voice import Voice, listed, over, per_size

_WORKED = {
    "joined rounds": "worked_joined",
    "spiral rounds": "worked_spiral",
    "rows": "worked_rows",
    "rows, right side only": "worked_right_side",
}


def pieces(
    voice: Voice, work: PatternWork, measured: Measured, folder: str, drawn: Mapping[str, Sequence[Drawing]]
) -> tuple[PrintedPiece, ...]:
    """All pieces, in the author's order. drawn: the drawings of each, by its name."""
    printed = []
    for name, model in voice.pattern.pieces.items():
        piece = work.piece(name)
        if piece is not None:
            about = tuple(_about(voice, name, model, measured))
            rounds = items(voice, piece, model, folder)
            start = _start(voice, model.start, piece) if model.start else _cord(voice, name, measured)
            title = voice.title(name)
            printed.append(
                PrintedPiece(
                    name,
                    title,
                    f"piece-{anchor_of(name)}",
                    model.make,
                    about,
                    start,
                    rounds,
                    drawings=tuple(told(voice, one, rounds) for one in drawn.get(name, ())),
                )
            )
    return tuple(printed)


def _about(voice: Voice, name: str, piece: Piece, measured: Measured) -> Iterator[str]:
    if piece.make > 1:
        yield voice.say("make_many", number=piece.make)
    if piece.yarn:
        yield voice.say("with_yarn", yarn=voice.yarn(piece.yarn))
    if piece.worked in _WORKED:
        yield voice.words[_WORKED[piece.worked]]
    if not piece.entries:  # else it stands where the yarn is cut
        yield from tail(voice, measured, name)


def _cord(voice: Voice, name: str, measured: Measured) -> str:
    """All that there is to do for a cord; "" for a piece that is none."""
    cords = [cord for size in measured.cords for cord in size if cord.piece == name and not cord.worked]
    if not cords:
        return ""
    length = amounts.lengths(tuple(cord.length_mm for cord in cords))
    chains = [str(cord.chains) for cord in cords if cord.chains]
    key = "cord" if chains else "cord_plain"
    return voice.say(key, length=length, chains=per_size(chains) if chains else "")


def _start(voice: Voice, start: Start, piece: PieceWork) -> str:
    if start.kind == "magic ring":
        return voice.words["start_magic_ring"]
    if start.kind == "ring":
        return voice.words["start_ring"]
    if start.kind == "edge":
        return _edge(voice, start)
    chains = str(start.chain)
    if start.multiple:
        return _multiple(voice, start, chains, piece)
    key = {"chain ring": "start_joined", "both sides": "start_both_sides"}.get(start.kind, "start_chain")
    return voice.say(key, chains=chains, slip=voice.stitch_short("slip"))


def _multiple(voice: Voice, start: Start, chains: str, piece: PieceWork) -> str:
    """Counted in chains, as the author does, and in stitches, as books do: the first row tells how they
    differ.
    """
    plus = voice.say("plus", number=start.plus) if start.plus else ""
    first = piece.rounds[0].sizes[0] if piece.rounds and piece.rounds[0].sizes else None
    made = start.chain.of(0) if start.chain is not None else None
    if first is None or made is None or not 0 < made - first.count <= 5:
        return voice.say("multiple_only", chains=chains, multiple=start.multiple, plus=plus)
    add = made - first.count
    rest = start.plus - add
    stitches = voice.say("plus", number=rest) if rest > 0 else f" − {-rest}" if rest else ""
    return voice.say(
        "multiple_chains", chains=chains, multiple=start.multiple, plus=plus, stitches=stitches, add=add
    )


def _edge(voice: Voice, start: Start) -> str:
    piece = voice.named(start.edge or "")
    number = start.round or start.row
    round = (
        labelled(voice, "row" if start.row else "round", str(number), str(number)).lower() if number else ""
    )
    if start.row_ends:
        key = "start_edge_rows"
    elif start.laid_out:
        pieces = voice.pieces(start.edge or "", voice.pattern.pieces[start.edge or ""].make)
        return voice.say("start_edge_laid_out", pieces=pieces, finishing=voice.words["finishing"])
    elif start.around:
        key = "start_edge_all"
    elif round and start.stitches and start.stitches != "unworked":
        key = "start_edge_stitches"
    elif round:
        key = "start_edge_unworked" if start.stitches else "start_edge_round"
    else:
        key = "start_edge"
    runs = () if start.stitches == "unworked" else start.stitches
    return voice.say(
        key, piece=piece, round=round, stitches=listed(voice, [over(voice, run) for run in runs])
    )
