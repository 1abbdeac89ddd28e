"""The increase rounds of a base written anew: more of them, fewer, or one more with fewer increases."""

from ..pattern import Path, Pattern, Piece
from .base import Base
from .candidates import Candidate
from .draft import CannotAlter, Draft
from .numbers import Renumber, renumber


def write_rounds(draft: Draft, pattern: Pattern, model: Piece, base: Base, candidate: Candidate) -> Renumber:
    """Base rounds more or fewer, and behind them one with the rest of the increases."""
    at: Path = ("pieces", base.piece, model.entries_field)
    last, added = base.last, candidate.more + (1 if candidate.rest else 0)
    done = {
        index
        for index, entry in enumerate(model.entries)
        if entry.run is not None and entry.run.first <= last
    }
    counts = list(base.counts[: last + min(candidate.more, 0)])
    if candidate.more < 0:
        _fewer(draft, at, model, last + candidate.more, last)
    new = []
    if candidate.more > 0 and base.growing:
        entry = model.entries[base.entry]
        assert entry.run is not None
        name = next(one for one in ("rounds", "rows", "round", "row") if draft.node((*at, base.entry, one)))
        draft.value((*at, base.entry, name), f"{entry.run.first}-{last + candidate.more}")
        counts += [base.stitches + base.grows * turn for turn in range(1, candidate.more + 1)]
    else:
        for _ in range(candidate.more):
            new.append((base.grows, counts[-1]))
            counts.append(counts[-1] + base.grows)
    if candidate.rest:
        new.append((candidate.rest, counts[-1]))
        counts.append(counts[-1] + candidate.rest)
    first = len(counts) - len(new) + 1
    behind = max(index for index in done if (run := model.entries[index].run) and run.first < first)
    lines = []
    for turn, (increases, stitches) in enumerate(new):
        work, count = base.written(increases, stitches, flip=turn % 2 == 0), str(stitches + increases)
        if work is None and candidate.more > 0 and (gone_on := base.gone_on(turn + 1)) is not None:
            work, count = gone_on
        if work is None:
            raise CannotAlter("Its increase rounds aren't written so that another could follow them.")
        work += base.ending if turn == len(new) - 1 else ""
        count = count if count.isdigit() else f'"{count}"'
        lines.append(f'{{round: {first + turn}, work: "{work}", count: {count}}}')
    draft.after((*at, behind), lines)
    if base.ending:
        _ends_elsewhere(draft, at, model, base, behind, added_after=bool(lines))

    def to(number: int) -> int:
        """The base's last round is the last that grows in full, a kept one stays, later ones move along."""
        flat = last + candidate.more
        return number + added if number > last else flat if number == last else min(number, flat)

    renumber(draft, pattern, base.piece, to, frozenset(done))
    return to


def _ends_elsewhere(
    draft: Draft, at: Path, model: Piece, base: Base, behind: int, *, added_after: bool
) -> None:
    """The words that end the piece go from its old last round; to the last that stays, if none is added.

    behind: index of the last entry that stays.
    """
    path: Path = (*at, behind, "work")
    node, entry = draft.node(path), model.entries[behind]
    if node is None or node.kind != "text" or entry.run is None:
        return
    if added_after and behind == base.entry:
        draft.value(path, node.text.removesuffix(base.ending))
    elif not added_after and behind != base.entry and entry.run.first == entry.run.last:
        draft.value(path, node.text + base.ending)


def _fewer(draft: Draft, at: Path, model: Piece, keep: int, last: int) -> None:
    """The base up to round `keep` of `last`: later entries go, one that reaches over it is cut."""
    for index, entry in enumerate(model.entries):
        run = entry.run
        if run is None or run.last is None or run.first > last or run.last <= keep:
            continue
        if run.first > keep:
            draft.drop((*at, index))
            continue
        name = next(one for one in ("rounds", "rows", "round", "row") if draft.node((*at, index, one)))
        draft.value((*at, index, name), str(run.first) if run.first == keep else f"{run.first}-{keep}")
