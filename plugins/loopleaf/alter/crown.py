"""A cap from the brim up: a ring of chains, plain rounds of as many stitches, rounds that draw in to the top.

It becomes wider by as many stitches as one of those rounds draws in, and then has one more of them before the
first; or narrower, and the first is left out. So the top is worked as it was.
"""

from dataclasses import dataclass
from itertools import pairwise

from ..fabric import PatternWork, PieceWork
from ..pattern import Path, Pattern, Piece
from .base import Words, draws_in, words_of
from .draft import CannotAlter, Draft
from .numbers import Renumber, renumber

_AROUND = ("joined rounds", "spiral rounds")


@dataclass(frozen=True, slots=True)
class Crown:
    """falls: number of the first round that draws in. step: stitches that it takes. stitches: of the plain
    rounds. entry: index of its entry. by_rule: whether several rounds that draw in are written once there.

    spare: how many rounds may be left out, so that one at least still draws in as the first did. words: how
    it is written, None where that can't be told.
    """

    piece: str
    falls: int
    step: int
    stitches: int
    entry: int
    by_rule: bool
    spare: int
    words: Words | None


def crown_of(work: PatternWork, piece: PieceWork, model: Piece) -> Crown | None:
    """The crown that a piece in the round ends with; None where it isn't a tube that is then drawn in.

    Of a pattern in one size.
    """
    start = model.start
    if model.worked not in _AROUND or start is None or start.kind != "chain ring" or start.chain is None:
        return None
    counts = [one.sizes[0].count if one.sizes and one.sizes[0] is not None else 0 for one in piece.rounds]
    numbers = [one.plan.number for one in piece.rounds]
    if numbers != list(range(1, len(counts) + 1)) or start.chain.of(0) != counts[0]:
        return None
    falls = next((at for at, (below, here) in enumerate(pairwise(counts), 1) if here != below), 0)
    if not falls or any(here > below for below, here in pairwise(counts)):
        return None
    step = counts[falls - 1] - counts[falls]
    entries = [one.plan.entry for one in piece.rounds]
    first = entries[falls]
    by_rule = entries.count(first) > 1
    if by_rule:
        spare = entries.count(first) - 1
    else:  # left out one by one: each stands alone, and draws in as much as the first
        spare = 0
        while (
            falls + spare + 1 < len(counts)
            and entries.count(entries[falls + spare + 1]) == 1
            and counts[falls + spare] - counts[falls + spare + 1] == step
        ):
            spare += 1
    words = words_of(work, piece.rounds[falls], draws_in)
    return Crown(
        piece.name,
        falls + 1,
        step,
        counts[0],
        first,
        by_rule,
        spare,
        words if words is not None and words.bare else None,
    )


def write_crown(draft: Draft, pattern: Pattern, crown: Crown, more: int) -> Renumber:
    """So many rounds more that draw in (below 0 fewer); each old round's new number.

    Raises CannotAlter where they aren't written so that another could follow.
    """
    model = pattern.pieces[crown.piece]
    at: Path = ("pieces", crown.piece, model.entries_field)
    done: set[int] = set()
    if crown.by_rule:
        _by_rule(draft, (*at, crown.entry), model, crown, more)
        done.add(crown.entry)
    elif more > 0:
        draft.after((*at, crown.entry - 1), _lines(crown, more))
    else:
        for index in range(crown.entry, crown.entry - more):
            draft.drop((*at, index))
            done.add(index)

    def to(number: int) -> int:
        """A round left out gives its number to the first that is kept."""
        return number if number < crown.falls else max(number + more, crown.falls)

    renumber(draft, pattern, crown.piece, to, frozenset(done))
    return to


def _by_rule(draft: Draft, path: Path, model: Piece, crown: Crown, more: int) -> None:
    entry = model.entries[crown.entry]
    run, n = entry.run, entry.n
    if run is None or run.last is None or n is None or n.step.of(0) != -1:
        raise CannotAlter("Its rounds that draw in follow no rule that another could keep to.")
    draft.value((*path, "n", "from"), str((n.from_.of(0) or 0) + more))
    node = draft.node((*path, "count", "from"))
    if node is not None:
        draft.value((*path, "count", "from"), str(int(node.text) + crown.step * more))
    name = next(one for one in ("rounds", "round") if draft.node((*path, one)))
    last = run.last + more
    draft.value((*path, name), str(run.first) if last == run.first else f"{run.first}-{last}")


def _lines(crown: Crown, more: int) -> list[str]:
    """The rounds before the first, each leaving what the next one draws in from."""
    words = crown.words
    if words is None:
        raise CannotAlter("Its rounds that draw in aren't written so that another could be like them.")
    lines = []
    for turn in range(more):
        left = crown.stitches + crown.step * (more - turn - 1)
        work = f"{words.before}{words.middle(crown.step, left)}{words.behind}"
        lines.append(f'{{round: {crown.falls + turn}, work: "{work}", count: {left}}}')
    return lines
