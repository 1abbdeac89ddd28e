"""Everything that can be measured of a worked pattern, at once."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from .. import trade
from ..fabric import PatternWork, PieceWork
from ..pattern import Pattern
from . import techniques
from .across import across_rounds
from .ball import Ball, ball_of
from .cautions import LONG_WORK_HOURS, OPEN_CHAINS, SMALL_MM, Earned, earned
from .checkpoints import Checkpoint, checkpoints
from .cords import Cord, cord_of, worked_cord
from .eased import eased
from .fan import Fan, fan_of
from .finished import (
    StatedSize,
    What,
    as_measured,
    is_lengthwise,
    lies_flat,
    rounds_size,
    rows_size,
    stated_sizes,
    use_of,
)
from .gauge import Scale, specials_of, start_mm
from .laid_out import is_around_laid_out, laid_out_size, with_the_whole
from .level import Level, level_of
from .made import Contents, start_contents
from .other_yarn import OtherYarn, other_yarns
from .pieces import counted, sizes_of
from .polygon import corners_of
from .scales import scale_of
from .shape import Stretch, stretches
from .size import RoundSize
from .tails import Tail, tail_of
from .threading import Threading, threadings
from .threads import Threads, threads_of
from .time import Hours
from .units import Band
from .unsaid_tails import UnsaidTail, unsaid_tail
from .work_needed import time_needed, yarn_needed
from .yarn import YarnNeed


@dataclass(frozen=True, slots=True)
class PieceMeasure:
    """A piece, measured; every tuple holds one a size.

    rounds: in the piece's order, None where a size lacks one; empty without a gauge. size: by what is
    measured. in_rounds: whether a round's length is the way around. start: foundation, as made. contents:
    of the rounds. ball: where it makes one; () without a gauge. across_mm: by round, of work in the round
    (`across`); () without a gauge and in rows. along_cloth: its height is measured along the cloth, lying
    folded, not as it stands. lengthwise: it is called long along its rows. fans: of rows that
    come out of a point and bend, None where they don't: as wide as from tip to tip, and as long as deep.
    threads: its yarns, cut or carried.
    """

    name: str
    make: int
    in_rounds: bool
    scale: Scale | None
    rounds: tuple[tuple[RoundSize | None, ...], ...]
    shape: tuple[tuple[Stretch, ...], ...]
    size: tuple[Mapping[What, Band], ...]
    start: tuple[Contents, ...]
    contents: tuple[tuple[Contents | None, ...], ...]
    ball: tuple[Ball | None, ...] = ()
    across_mm: tuple[tuple[float | None, ...], ...] = ()
    along_cloth: bool = False
    lengthwise: bool = False
    fans: tuple[Fan | None, ...] = ()
    threads: tuple[Threads, ...] = ()

    @property
    def from_a_point(self) -> bool:
        """Whether its rows fan out from a point."""
        return any(self.fans)

    @property
    def tip_to_tip(self) -> bool:
        """Whether its width is told from tip to tip; a square's is its side."""
        return any(fan is not None and fan.diagonal is None for fan in self.fans)

    def known_rounds(self, size: int) -> list[RoundSize]:
        """The rounds that a size has."""
        return [one for one in self.rounds[size] if one is not None]

    def ball_across_mm(self, size: int) -> float | None:
        """How far across its ball is: the way around its widest round ÷ π. None where it makes none."""
        ball = self.ball[size] if self.ball else None
        found = [one.length_mm for one in self.known_rounds(size) if ball and one.label == ball.last]
        return found[0] / math.pi if found else None


@dataclass(frozen=True, slots=True)
class Measured:
    """A pattern, measured. Where there are sizes, tuples hold one a size.

    stated: sizes as the author states them. laid_out: of pieces laid out and joined, None without.
    other_yarns: the first piece, or all of them laid out, in the weights next to its yarn's. unsaid_tails:
    what is usual where a seam needs a tail and the author states none.
    """

    pattern: Pattern
    pieces: tuple[PieceMeasure, ...]
    stated: tuple[StatedSize, ...]
    laid_out: Mapping[What, Band] | None
    yarn: tuple[tuple[YarnNeed, ...], ...]
    cords: tuple[tuple[Cord, ...], ...]
    tails: tuple[tuple[Tail, ...], ...]
    hours: tuple[Hours, ...]
    level: Level
    cautions: tuple[Earned, ...]
    checkpoints: tuple[Checkpoint, ...]
    threadings: tuple[tuple[Threading, ...], ...]
    other_yarns: tuple[OtherYarn, ...]
    unsaid_tails: tuple[tuple[UnsaidTail, ...], ...]

    def piece(self, name: str) -> PieceMeasure | None:
        """The piece of that name, None where there is none."""
        return next((piece for piece in self.pieces if piece.name == name), None)


def measure(work: PatternWork) -> Measured:
    """Measure a worked pattern. What the pattern gives no gauge for is left out, never guessed."""
    pattern = work.pattern
    sizes = range(pattern.size_count)
    pieces: tuple[PieceMeasure, ...] = ()
    for piece_work in work.pieces:
        pieces = (*pieces, _on_its_edge(pattern, _piece(pattern, piece_work, work.pieces), pieces))
    by_size = [{piece.name: piece.rounds[size] for piece in pieces} for size in sizes]
    offs = {piece.name: piece.scale.width_off for piece in pieces if piece.scale is not None}
    cords = tuple(_cords(pattern, pieces, by_size[size], size, offs) for size in sizes)
    tails = tuple(
        tuple(
            tail
            for piece in work.pieces
            if (tail := tail_of(pattern, piece, by_size[size], size, offs.get(piece.name, 0.0)))
        )
        for size in sizes
    )
    hours = tuple(time_needed(pattern, pieces, cords[size], size) for size in sizes)
    uses = _uses(pattern, work.pieces, pieces)
    laid_out = laid_out_size(pattern, pieces)
    pieces = with_the_whole(pattern, pieces, laid_out)
    return Measured(
        pattern,
        pieces,
        stated_sizes(pattern),
        laid_out,
        tuple(yarn_needed(pattern, pieces, cords[size], tails[size], size) for size in sizes),
        cords,
        tails,
        hours,
        level_of(uses),
        earned(pattern, _held(pattern, pieces, uses, hours)),
        tuple(
            found
            for piece, made in zip(work.pieces, pieces, strict=True)
            for found in checkpoints(
                piece, made.in_rounds, made.scale, made.rounds, made.shape, made.contents
            )
        ),
        tuple(threadings(work, pattern, cords[size], size) for size in sizes),
        other_yarns(pattern, (laid_out,) if laid_out else pieces[0].size) if pieces else (),
        tuple(
            tuple(
                unsaid
                for one in work.pieces
                if (unsaid := unsaid_tail(pattern, one, by_size[size][one.name]))
            )
            for size in sizes
        ),
    )


def _piece(pattern: Pattern, piece: PieceWork, pieces: Sequence[PieceWork]) -> PieceMeasure:
    model = pattern.pieces[piece.name]
    in_rounds = "rounds" in model.worked
    scale, use = scale_of(pattern, piece, pieces), use_of(pattern, piece.name)
    made: list[tuple[Contents | None, ...]] = []
    starts: list[Contents] = []
    rounds: list[tuple[RoundSize | None, ...]] = []
    shapes: list[tuple[Stretch, ...]] = []
    found: list[Mapping[What, Band]] = []
    balls: list[Ball | None] = []
    across: list[tuple[float | None, ...]] = []
    own = model.yarn or next(iter(pattern.materials.yarns), "")
    lengthwise = False
    fans: list[Fan | None] = []
    bordering = is_around_laid_out(pattern, piece.name)
    for size in range(pattern.size_count):
        made.append(counted(piece, size))
        starts.append(
            start_contents(piece.starts[size] if model.start and model.start.kind != "edge" else [])
        )
        if scale is None:
            rounds.append(())
            shapes.append(())
            found.append({})
            continue
        sizes = sizes_of(piece, size, made[-1], scale, in_rounds)
        known = [one for one in sizes if one is not None]
        begins_mm = start_mm(piece, size, scale)
        shapely = in_rounds and not bordering
        shape = stretches(known, begins_mm, scale.width_mm, use.lies_flat) if shapely else ()
        rounds.append(sizes)
        shapes.append(shape)
        balls.append(ball_of(known, begins_mm) if shapely else None)
        lengthwise = not in_rounds and is_lengthwise(pattern, piece.name, known)
        if bordering:
            found.append({"around": known[-1].length} if known else {})
            continue
        fan = None if in_rounds else fan_of(piece, size, sizes, scale)
        fans.append(fan)
        worked_out = (
            rounds_size(piece, size, known, shape, scale, begins_mm, use)
            if in_rounds
            else rows_size(known, lengthwise and fan is None, fan)
        )
        flat = in_rounds and lies_flat(known, shape, use, begins_mm)
        if in_rounds:
            across.append(across_rounds(piece, size, sizes, scale, flat))
        if made[-1] == made[0]:  # the gauge was measured in the first size
            corners = corners_of(known) if in_rounds else 0
            worked_out |= as_measured(pattern, piece, pieces, corners, flat)
        found.append(worked_out)
    return PieceMeasure(
        piece.name,
        model.make,
        in_rounds,
        scale,
        tuple(rounds),
        tuple(shapes),
        tuple(found),
        tuple(starts),
        tuple(made),
        tuple(balls),
        tuple(across),
        in_rounds and use.worn and any("height" in size for size in found),
        lengthwise and not any(fans),
        tuple(fans),
        tuple(
            threads_of(piece, size, own, in_rounds, model.worked == "rows, right side only")
            for size in range(pattern.size_count)
        ),
    )


def _on_its_edge(pattern: Pattern, piece: PieceMeasure, before: Sequence[PieceMeasure]) -> PieceMeasure:
    """A piece along the ends of another one's rows, as long as that edge makes it."""
    start = pattern.pieces[piece.name].start
    if start is None or not start.row_ends or piece.in_rounds:
        return piece
    edge = next((one for one in before if one.name == start.edge), None)
    if edge is None or piece.scale is None or not all("height" in size for size in edge.size):
        return piece
    rounds = tuple(eased(rows, size["height"]) for rows, size in zip(piece.rounds, edge.size, strict=True))
    known = [[one for one in rows if one is not None] for rows in rounds]
    return replace(piece, rounds=rounds, size=tuple(rows_size(rows, piece.lengthwise) for rows in known))


def _cords(
    pattern: Pattern,
    pieces: Sequence[PieceMeasure],
    rounds: dict[str, tuple[RoundSize | None, ...]],
    size: int,
    offs: Mapping[str, float],
) -> tuple[Cord, ...]:
    cords = []
    for piece in pieces:
        if pattern.pieces[piece.name].worked == "chain":
            width_mm = piece.scale.width_mm if piece.scale else None
            cord = cord_of(pattern, piece.name, rounds, size, width_mm, offs)
        else:
            cord = worked_cord(pattern, piece.name, piece.size[size], rounds, offs)
        if cord is not None:
            cords.append(cord)
    return tuple(cords)


def _uses(
    pattern: Pattern, works: Sequence[PieceWork], pieces: Sequence[PieceMeasure]
) -> tuple[techniques.Use, ...]:
    overs = specials_of(pattern)
    yarns = frozenset(pattern.materials.yarns)
    uses: list[techniques.Use] = []
    for work, piece in zip(works, pieces, strict=True):
        uses += techniques.of_a_piece(piece.name, pattern.pieces[piece.name], yarns)
        uses += techniques.in_rounds(work, piece.contents[0], overs)
    stuffed = {use.piece for use in uses if use.technique == "stuffing"}
    stuffed |= {step.stuff.piece for step in pattern.finishing if step.stuff is not None}
    standing = {
        piece.name
        for piece in pieces
        if piece.in_rounds
        and any(stretch.form in ("cups", "tube") for shape in piece.shape for stretch in shape)
    }
    shaped = [piece.name for piece in pieces if _changes(piece)]
    uses += techniques.of_the_finishing(pattern, frozenset(stuffed | standing))
    words = trade.technique("shaped-garment").words
    uses += techniques.shaped_garment(pattern, words, shaped)
    return tuple(uses)


def _changes(piece: PieceMeasure) -> bool:
    return len({made.counted for made in piece.contents[0] if made is not None}) > 1


def _held(
    pattern: Pattern,
    pieces: Sequence[PieceMeasure],
    uses: Sequence[techniques.Use],
    hours: Sequence[Hours],
) -> dict[str, str]:
    """The conditions for cautions that the work itself shows, with the piece's title or the hours."""

    def title(name: str) -> str:
        model = pattern.pieces.get(name)
        return (model.title or name) if model else name

    held: dict[str, str] = {}
    for name, model in pattern.pieces.items():
        if model.worked == "chain":
            held.setdefault("cord", title(name))
    for use in uses:
        condition = {"cords": "cord", "stuffing": "stuffed"}.get(use.technique)
        if condition:
            held.setdefault(condition, title(use.piece))
    for piece in pieces:
        made = [one for one in piece.contents[0] if one is not None]
        if any(sort.chains >= OPEN_CHAINS for one in made for sort in one.gaps):
            held.setdefault("open-work", title(piece.name))
    sewn = {step.sew.piece for step in pattern.finishing if step.sew is not None}
    for piece in pieces:
        if piece.name in sewn and _is_small(piece):
            held.setdefault("small-piece", title(piece.name))
    if max(one.practised.high for one in hours) >= LONG_WORK_HOURS:
        held["long-work"] = ""
    return held


def _is_small(piece: PieceMeasure) -> bool:
    """Whether a piece's longest side is within a small part's; without a gauge that can't be ruled out."""
    extents = [
        piece.size[0][what].middle
        for what in ("across", "width", "length", "height")
        if what in piece.size[0]
    ]
    return not extents or max(extents) <= SMALL_MM
