"""The first edge of a piece: a ring, a chain, or an edge of another piece."""

import re

from loopleaf import pattern

from .bench import Bench
from .cells import CannotSay, Edge, Misfit, chains
from .others_edge import all_around, around_joined, by_number, row_end


def begin(bench: Bench, piece: pattern.Piece, size: int) -> Edge:
    """The first edge of a piece."""
    start = piece.start
    if start is None:
        return Edge([], "ring", ring=False)
    if start.kind in ("magic ring", "ring"):
        return Edge([], "ring", ring=True)
    if start.kind == "edge":
        return _edge_of(bench, piece, size)
    assert start.chain is not None
    bench.one_a_size(len(start.chain.sizes))
    number = start.chain.of(size) or 0
    if start.multiple and (number - start.plus) % start.multiple:
        raise Misfit("numbers", f"{number} is no multiple of {start.multiple} plus {start.plus}")
    cells = chains(number)
    if start.kind == "chain ring":
        return Edge(cells, "circle", ring=True, foundation=True)
    if start.kind == "both sides":
        return Edge(cells, "sides", foundation=True)
    return Edge(cells, "line", foundation=True)


def _edge_of(bench: Bench, piece: pattern.Piece, size: int) -> Edge:
    start = piece.start
    assert start is not None
    other = bench.done.get(start.edge or "")
    there = other.sizes[size] if other is not None and size < len(other.sizes) else []
    rounds = [one for one in there if one.made]  # behind them one may only fasten off
    if not rounds:
        raise Misfit("place", f"there is no piece {start.edge} to begin on")
    if start.row_ends:
        return Edge([row_end(one) for one in rounds])
    if start.around and bench.pattern.pieces[start.edge or ""].worked.startswith("rows"):
        return all_around(rounds)
    if start.laid_out:
        steps = [step.lay_out for step in bench.pattern.finishing if step.lay_out is not None]
        laid = next((step for step in steps if step.piece == start.edge), None)
        if laid is None:
            raise Misfit("place", f"{start.edge} isn't laid out")
        if bench.pattern.pieces[start.edge or ""].worked.startswith("rows"):
            raise CannotSay("around pieces in rows, laid out")
        return around_joined(rounds[-1].made, laid.across, laid.down)
    wanted = start.round or start.row
    chosen = rounds[-1]
    if wanted is not None:
        found = [one for one in rounds if one.label == str(wanted)]
        if not found:
            raise Misfit("place", f"{start.edge} has no round {wanted}")
        chosen = found[-1]
    if start.stitches == "unworked":
        later = rounds[rounds.index(chosen) + 1 :]
        cells = later[0].passed_under if later else chosen.made
        if not cells:
            raise Misfit("place", f"nothing of {start.edge} was left unworked")
        return Edge(list(cells))
    cells = by_number(chosen, start.stitches) if start.stitches else list(chosen.made)
    return Edge(cells, "line" if piece.worked.startswith("rows") else "circle")


def own_name(piece: pattern.Piece, work: str) -> str:
    """The name under which a piece's first round speaks of the piece that it is begun on. Of two legs it is
    the last: the yarn is there."""
    edge = (piece.start.edge or "") if piece.start is not None else ""
    named = re.findall(rf"\b{re.escape(edge)}(?: \d+)?\b", work) if edge else []
    return max(named, default="")
