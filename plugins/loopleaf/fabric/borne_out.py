"""Working a whole piece, in the reading of its turning chains that the rest of the piece bears out."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise, product

from ..notation.tree import Chain, CountsAs, Line, Stitch, Tally, Target, Work
from ..pattern import Piece, RoundPlan
from .blocks import chains_said, chains_skipped, counts_as_stitch
from .flaps import around_flap
from .later import comes_out_better, led_in_otherwise, left_to_later_rows
from .openings import around_openings
from .piece import PieceHand, Ways, is_circle
from .starts import start_places
from .survey import turns_first
from .thread import Thread, Trust
from .worked import PieceWork, Place, Trouble

MOST_IN_A_PIECE = 400_000
"""Stitches in all sizes: a blanket of 300 rows of 300 has 90,000. Past it, a file means harm."""

MOST_KINDS = 2
"""So many kinds of stitch may be left open at once; more readings than four would only confuse."""

NO_ERROR = ("count-unclear", "turn-missing")


@dataclass(frozen=True, slots=True)
class ReadRound:
    """A round set out and read: its tree, its stated count, and what keeps it from being worked.

    astray: its number, or one before it, is out of order, so what it is worked into isn't known.
    """

    plan: RoundPlan
    line: Line | None
    stated: Tally | None
    troubles: list[Trouble]
    astray: bool = False


def work_piece(
    name: str,
    piece: Piece,
    ways: Ways,
    lines: Sequence[ReadRound],
    others: Mapping[str, PieceWork],
    edges: Sequence[Mapping[str, list[Place]]],
) -> PieceWork:
    """Work a piece.

    Where a line names a space that isn't there, the chains that a row's first block skips may be it. Where no
    convention says whether a turning chain counts and one round alone can't tell, each reading is
    tried on the whole piece; the one that alone works out is taken.
    """
    result = _work(name, piece, ways, lines, others, edges)
    if any(_names_a_space(t) for r in result.rounds for t in r.troubles) or _counts_a_space(result):
        blocks = _in_blocks(name, piece, ways, lines, others, edges, _first_wrong(result))
        if blocks is not None:
            return blocks
    leaving = left_to_later_rows(result)
    if leaving:
        taken_up = _work(name, piece, replace(ways, leaving=leaving), lines, others, edges)
        result = taken_up if comes_out_better(taken_up, result) else result
    led_in = led_in_otherwise(result)
    if led_in:
        otherwise = _work(name, piece, replace(ways, led_in=led_in), lines, others, edges)
        result = otherwise if comes_out_better(otherwise, result) else result
    kinds = list(
        dict.fromkeys(
            t.facts["stitch"] for r in result.rounds for t in r.troubles if t.rule == "turning-chain-unclear"
        )
    )
    if not kinds or len(kinds) > MOST_KINDS:
        return result
    right: list[PieceWork] = []
    said = tuple(_said_elsewhere(lines).get(kind) for kind in kinds)
    as_said: PieceWork | None = None
    for counts in product((True, False), repeat=len(kinds)):
        conventions = {**ways.conventions, **dict(zip(kinds, counts, strict=True))}
        other = _work(name, piece, replace(ways, conventions=conventions), lines, others, edges)
        if _works_out(other):
            right.append(other)
            as_said = as_said or (other if counts == said else None)
    if not right:
        return _in_blocks(name, piece, ways, lines, others, edges) or result
    return right[0] if len(right) == 1 else as_said or result


def _said_elsewhere(lines: Sequence[ReadRound]) -> dict[str, bool]:
    """Whether the chain that a line begins with counts, by stitch, where a line of the piece says so."""
    found: dict[str, bool] = {}
    for one in lines:
        match one.line.steps if one.line is not None else ():
            case (Chain(counts=CountsAs(stitch=Stitch(kind=kind))), *_):
                found.setdefault(kind, True)
            case (Chain(counts=CountsAs(nothing=True)), Work(stitch=Stitch(kind=kind)), *_):
                found.setdefault(kind, False)
    return found


def _in_blocks(
    name: str,
    piece: Piece,
    ways: Ways,
    lines: Sequence[ReadRound],
    others: Mapping[str, PieceWork],
    edges: Sequence[Mapping[str, list[Place]]],
    wrong: int | None = None,
) -> PieceWork | None:
    """The piece with the chains that a row's first block skips as a space; None where it doesn't work out, or
    no further than to the row that is wrong otherwise."""
    said = [replace(one, line=chains_said(one.line)) if one.line else one for one in lines]
    blocks = _work(name, piece, ways, said, others, edges)
    for worked, read in zip(blocks.rounds, lines, strict=False):
        if read.line is not None and counts_as_stitch(read.line):
            worked.line = worked.settled = read.line  # said as a stitch, and so published
    later = wrong is not None and _first_wrong(blocks) > wrong
    return blocks if later or _works_out(blocks) else None


def _first_wrong(work: PieceWork) -> int:
    """The index of the first round with an error; the number of rounds where there is none."""
    wrong = (at for at, r in enumerate(work.rounds) if any(t.rule not in NO_ERROR for t in r.troubles))
    return next(wrong, len(work.rounds))


def _works_out(work: PieceWork) -> bool:
    return not any(t.rule not in NO_ERROR for r in work.rounds for t in r.troubles)


def _work(
    name: str,
    piece: Piece,
    ways: Ways,
    lines: Sequence[ReadRound],
    others: Mapping[str, PieceWork],
    edges: Sequence[Mapping[str, list[Place]]],
) -> PieceWork:
    result = PieceWork(name, ("pieces", name))
    threads: list[Thread] = []
    for size in range(ways.size_count):
        begun = start_places(piece, size, others, edges[size], ways.laid_out)
        places, troubles = begun.places, begun.troubles
        circle = is_circle(piece.worked, places)
        lost = bool(troubles) or _in_doubt(piece, others) or _is_unsaid(piece, size)
        trust = Trust.NOTHING if lost else Trust.SURE
        further = list(begun.further)
        if piece.start is not None:
            further += around_openings(piece.start, size, others)
            further += around_flap(piece.start, size, others, edges[size])
        threads.append(
            Thread(
                places,
                piece.yarn,
                begun.other_side,
                further=further,
                circle=circle,
                trust=trust,
                corners=begun.corners,
            )
        )
        result.starts.append(list(places))
        result.troubles += [t for t in troubles if all(t.rule != o.rule for o in result.troubles)]
    unsound = {other.name for other in others.values() if not all(one.sound for one in other.rounds)}
    hand = PieceHand(ways, threads, list(edges), unsound)
    hand.done = result.rounds
    made = 0
    for at, one in enumerate(lines):
        if made > MOST_IN_A_PIECE:
            facts = {"limit": MOST_IN_A_PIECE, "round": one.plan.label}
            result.troubles.append(Trouble("number-too-large", None, facts))
            break
        if one.astray:
            hand.lose_track()
        after = lines[at + 1].line if at + 1 < len(lines) else None
        ends = at + 1 == len(lines) or (after is not None and turns_first(after.steps) is not None)
        result.rounds.append(hand.round(one.plan, one.line, one.stated, ends))
        result.rounds[-1].troubles += one.troubles
        made += sum(len(size.made) for size in result.rounds[-1].sizes if size)
        if any(trouble.rule == "number-too-large" for trouble in result.rounds[-1].troubles):
            break
    return result


def _names_a_space(trouble: Trouble) -> bool:
    return trouble.rule == "no-such-place" and str(trouble.facts.get("what", "")).startswith("space")


def _counts_a_space(work: PieceWork) -> bool:
    """Whether the count of one of the first rows goes wrong, and names a space as long as what its first
    block skips; where row 1 says that of its own chains, row 2 may leave it unsaid."""
    for row in work.rounds[:2]:
        if row.stated is None or row.line is None or all(t.rule != "count-differs" for t in row.troubles):
            continue
        skipped = chains_skipped(row.line)
        spaces = [one for _, one in row.stated.entries if isinstance(one, Target) and one.kind == "space"]
        if any(one.length in (0, skipped) for one in spaces):
            return True
    return False


def _is_unsaid(piece: Piece, size: int) -> bool:
    """Whether the start gives numbers for fewer sizes than there are, and none for this one."""
    chain = piece.start.chain if piece.start is not None else None
    return chain is not None and 1 < len(chain.sizes) <= size


def _in_doubt(piece: Piece, others: Mapping[str, PieceWork]) -> bool:
    """Whether a piece begins on rounds of another that an error leaves open."""
    start = piece.start
    other = others.get(start.edge or "") if start is not None else None
    if start is None or other is None:
        return False
    number = start.round if start.round is not None else start.row
    begun_on = [one for one in other.rounds if number is None or one.plan.number == number]
    if number is None and not (start.row_ends or start.around or start.laid_out):
        begun_on = begun_on[-1:]
    gaps = any(after.plan.number > one.plan.number + 1 for one, after in pairwise(begun_on))
    return gaps or not all(one.sound for one in begun_on)
