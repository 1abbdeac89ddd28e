"""What a piece's first round is worked into: a ring, a foundation chain, or the edge of another piece."""

from collections.abc import Mapping
from typing import NamedTuple

from ..pattern import LayOut, Piece, Run, Start
from .around import around_rows, corners, row_ends
from .laid_out import around_laid_out
from .openings import unworked
from .worked import Made, PieceWork, Place, Ring, Trouble


class Begun(NamedTuple):
    """What lies before round 1. other_side: foundation chains whose other side can be worked later. corners:
    of a piece's own form, by identity (see `Edge`). further: what the places may be instead."""

    places: list[Place]
    other_side: list[Place]
    troubles: list[Trouble]
    corners: frozenset[int] = frozenset()
    further: tuple[list[Place], ...] = ()


def start_places(
    piece: Piece,
    size: int,
    others: Mapping[str, PieceWork],
    edges: Mapping[str, list[Place]],
    laid_out: Mapping[str, LayOut],
) -> Begun:
    """The places before round 1. laid_out: how the finishing lays pieces out, by their names."""
    start = piece.start
    if start is not None and start.laid_out and start.edge is not None and start.edge in others:
        return _laid_out(start.edge, size, others, edges, laid_out)
    begun = Begun(*_start_places(piece, size, others, edges))
    return begun._replace(corners=corners(begun.places))


def _laid_out(
    name: str,
    size: int,
    others: Mapping[str, PieceWork],
    edges: Mapping[str, list[Place]],
    laid_out: Mapping[str, LayOut],
) -> Begun:
    lay = laid_out.get(name)
    whole = around_laid_out(others[name], edges.get(name, []), size, lay) if lay is not None else None
    if whole is None:
        what = "laid out" if lay is None else "four corners"
        return Begun([], [], [Trouble("no-such-place", None, {"what": what, "there": []}, size)])
    return Begun(whole.places, [], [], whole.corners, (whole.from_next_corner(),))


def _start_places(
    piece: Piece, size: int, others: Mapping[str, PieceWork], edges: Mapping[str, list[Place]]
) -> tuple[list[Place], list[Place], list[Trouble]]:
    start = piece.start
    if start is None:
        return [], [], []
    yarn = piece.yarn
    if start.kind == "magic ring":
        return [Ring("magic")], [], []
    if start.kind == "ring":
        return [Ring("ring")], [], []
    chains = (start.chain.of(size) or 0) if start.chain is not None else 0
    if start.kind == "chain ring":
        return [Ring("chain", chains)], [], []
    if start.kind == "edge":
        return _edge_of(start, size, others, edges)
    made = foundation(chains, yarn)
    other: list[Place] = [Made("chain", (), -1, yarn, "foundation", m.number, chains=1) for m in made]
    troubles = []
    if start.multiple and (chains - start.plus) % start.multiple:
        low = (chains - start.plus) // start.multiple * start.multiple + start.plus
        nearest = [n for n in (low, low + start.multiple) if n > 0]
        facts = {"chains": chains, "multiple": start.multiple, "plus": start.plus, "nearest": nearest}
        troubles.append(Trouble("multiple-not-met", None, facts, size))
    return list(made), other, troubles


def foundation(chains: int, yarn: str) -> list[Made]:
    """A foundation chain, its chains numbered from the hook."""
    return [Made("chain", (), -1, yarn, "foundation", number, chains=1) for number in range(1, chains + 1)]


def _edge_of(
    start: Start, size: int, others: Mapping[str, PieceWork], edges: Mapping[str, list[Place]]
) -> tuple[list[Place], list[Place], list[Trouble]]:
    name = start.edge or ""
    other = others.get(name)
    if other is None:
        return [], [], [Trouble("no-such-place", None, {"what": "piece", "there": sorted(others)}, size)]
    if start.row_ends:
        return row_ends(other, size), [], []
    number = start.round if start.round is not None else start.row
    if number is not None:
        for at, work in enumerate(other.rounds):
            if work.plan.number == number:
                if start.stitches == "unworked":
                    return unworked(other.rounds, at, size), [], []
                worked = work.sizes[size]
                places = list(worked.edge) if worked is not None else []
                return _numbered(start.stitches, places, size)
        facts = {"what": f"{other.rounds[0].plan.word if other.rounds else 'round'} {number}", "there": []}
        return [], [], [Trouble("no-such-place", None, facts, size)]
    places = list(edges.get(name, []))
    if start.around and other.rounds and other.rounds[0].plan.word == "row":
        return around_rows(other, places, size), [], []
    return places, [], []


def _numbered(
    runs: tuple[Run, ...], places: list[Place], size: int
) -> tuple[list[Place], list[Place], list[Trouble]]:
    """The stitches of these numbers, with the spaces between them; all where no number is given."""
    if not runs:
        return places, [], []
    numbers = [p.number if isinstance(p, Made) else 0 for p in places]
    if any(max(run.numbers) > max(numbers, default=0) for run in runs):
        facts = {"what": f"stitch {max(max(run.numbers) for run in runs)}", "there": []}
        return [], [], [Trouble("no-such-place", None, facts, size)]
    chosen: list[Place] = []
    for run in runs:
        chosen += places[numbers.index(run.first) : numbers.index(max(run.numbers)) + 1]
    return chosen, [], []
