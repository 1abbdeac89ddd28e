"""The pieces of a leaflet: how each begins and is worked, its rounds, and how the pieces come together."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from .. import notation
from ..fabric import PatternWork, PieceWork
from ..measure import Measured, amounts
from ..pattern import FinishingStep, Piece, Start, Thread
from .leaflet_parts import Drawing, Picture, Telling, Terms, Variation
from .leaflet_parts import Piece as PrintedPiece
from .leaflet_pictures import author_picture
from .leaflet_rounds import anchor_of, items, labelled
from .leaflet_voice import Voice, per_size

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
            start = _start(voice, model.start, piece) if model.start else ""
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
                    drawings=tuple(drawn.get(name, ())),
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
    cords = [cord for size in measured.cords for cord in size if cord.piece == name]
    if cords:
        length = amounts.lengths(tuple(cord.length_mm for cord in cords))
        chains = [str(cord.chains) for cord in cords if cord.chains]
        key = "cord" if chains else "cord_plain"
        yield voice.say(key, length=length, chains=per_size(chains) if chains else "")
    tails = [tail for size in measured.tails for tail in size if tail.piece == name]
    if tails:
        yield voice.say("tail", length=amounts.lengths(tuple(tail.length_mm for tail in tails)))


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
    elif start.around:
        key = "start_edge_all"
    elif round:
        key = "start_edge_unworked" if start.stitches == "unworked" else "start_edge_round"
    else:
        key = "start_edge"
    return voice.say(key, piece=piece, round=round)


# ---- finishing ----------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Place:
    """A round or row of a piece, in words."""

    voice: Voice
    round: int | None
    row: int | None

    def __str__(self) -> str:
        number = self.round or self.row
        return labelled(self.voice, "row" if self.row else "round", str(number), str(number)).lower()


def finishing(voice: Voice, folder: str, drawn: Mapping[int, Picture]) -> tuple[Telling, ...]:
    """The steps in words; a heading leads the step that follows it.

    drawn: figures by step, for those that the author shows no picture of.
    """
    told: list[Telling] = []
    heading = ""
    for at, step in enumerate(voice.pattern.finishing):
        if step.kind == "heading":
            heading = f"{voice.prose(step.heading or '')}: "
            continue
        for text in _steps(voice, step):
            note = f" {voice.told(step.note)}" if step.note else ""
            video = f" {voice.say('watch', time=step.video)}." if step.video else ""
            picture = author_picture(voice, step.picture, folder) or drawn.get(at)
            told.append(Telling(f"{heading}{text}{note}{video}", picture))
            heading = ""
    return tuple(told)


def _steps(voice: Voice, step: FinishingStep) -> Iterator[str]:
    if step.thread is not None:
        yield _thread(voice, step.thread)
    elif step.sew is not None:
        yield _sew(voice, step)
    elif step.lay_out is not None:
        lay = step.lay_out
        by_stitch = notation.parse(lay.join, voice.vocabulary).line is not None
        key = "lay_out" if not lay.join else "lay_out_join_with" if by_stitch else "lay_out_join"
        number = voice.pattern.pieces[lay.piece].make if lay.piece in voice.pattern.pieces else 1
        join = voice.prose(lay.join)
        said = voice.say(
            key, pieces=voice.pieces(lay.piece, number), across=lay.across, down=lay.down, join=join
        )
        yield _with(voice, said, lay.text)
    elif step.knot is not None:
        yield voice.told(step.knot.text)
    elif step.stuff is not None:
        yield voice.told(step.stuff.text)
    elif step.text is not None:
        yield voice.told(step.text)


def _thread(voice: Voice, thread: Thread) -> str:
    parts = {
        "piece": voice.named(thread.piece),
        "round": _Place(voice, thread.round, thread.row),
        "through": voice.named(thread.through),
        "under": thread.under,
        "over": thread.over,
    }
    if len(thread.from_) < 2:
        return voice.say("thread", **parts, first=thread.from_[0] if thread.from_ else 1)
    sentences = [voice.say("thread_first", **parts, first=thread.from_[0])]
    key = "thread_second" if len(thread.from_) == 2 else "thread_next"
    sentences += [voice.say(key, first=first) for first in thread.from_[1:]]
    return " ".join(sentences)


def _sew(voice: Voice, step: FinishingStep) -> str:
    sew = step.sew
    assert sew is not None
    placed = sew.round is not None or sew.row is not None
    if not sew.to:
        return voice.told(sew.text)
    key = "sew_stitches" if sew.stitches and placed else "sew_round" if placed else "sew"
    stitches = voice.words["and"].join(
        f"{run.first}–{run.last}" if run.last not in (None, run.first) else str(run.first)
        for run in sew.stitches
    )
    said = voice.say(
        key,
        piece=voice.named(sew.piece),
        to=voice.named(sew.to),
        round=_Place(voice, sew.round, sew.row),
        stitches=stitches,
    )
    return _with(voice, said, sew.text)


def _with(voice: Voice, said: str, text: str) -> str:
    return f"{said} {voice.told(text)}" if text else said


def variations(voice: Voice) -> tuple[Variation, ...]:
    """The variations: what is left out, and what else is different."""
    told = []
    for name, one in voice.pattern.variations.items():
        out = voice.words["and"].join(voice.named(piece) for piece in one.leave_out)
        lines = [voice.say("leave_out", pieces=out)] if out else []
        lines += [voice.told(one.text)] if one.text else []
        told.append(Variation(voice.prose(one.title) or name, tuple(lines)))
    return tuple(told)


__all__ = ["Terms", "finishing", "pieces", "variations"]
