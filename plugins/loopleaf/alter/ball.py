"""A ball, a head, a body: rounds that grow from a ring, plain rounds, rounds that draw in again.

More or fewer rounds grow before the widest, as many draw in behind it, and as many plain ones lie between
them as keep its proportions: its way from end to end stays the same share of its way around. What whole
rounds don't reach one further round adds, its increases spread evenly, and one takes back.
"""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

from ..fabric import PatternWork, PieceWork
from ..notation.tree import Work
from ..pattern import Entry, Path, Pattern, Piece
from .base import Base, Words, draws_in, increases, words_of
from .draft import CannotAlter, Draft
from .numbers import Renumber, moved, renumber

_OUT_OF_SHAPE = 0.1
"""A ball whose rounds are so much more or fewer than its proportions ask for is another design (chosen)."""


@dataclass(frozen=True, slots=True)
class Ball:
    """base: the rounds that grow. counts: of all rounds, from round 1. falls: the first round that draws in.

    near, far: how the last growing round and the first drawing in are written; plain, drawn: how one without
    any yarn change is, None where none is.
    """

    base: Base
    counts: tuple[int, ...]
    falls: int
    near: Words
    far: Words
    plain: Words | None
    drawn: Words | None

    @property
    def step(self) -> int:
        """Stitches by which the rounds next to the widest differ."""
        return self.base.grows


def ball_of(work: PatternWork, piece: PieceWork, base: Base | None) -> Ball | None:
    """The ball that begins with this base; None where it isn't closed again as it was begun."""
    if base is None:
        return None
    counts = tuple(
        one.sizes[0].count if one.sizes and one.sizes[0] is not None else 0 for one in piece.rounds
    )
    behind = counts[base.last :]
    falls = next((at for at, count in enumerate(behind, base.last + 1) if count != base.stitches), 0)
    if not falls or falls == base.last + 1:
        return None
    if counts[falls - 1] != base.stitches - base.grows or any(
        later > earlier for earlier, later in pairwise(behind)
    ):
        return None
    near = words_of(work, piece.rounds[base.last - 1], increases)
    far = words_of(work, piece.rounds[falls - 1], draws_in)
    if near is None or far is None:
        return None
    return Ball(
        base,
        counts,
        falls,
        near,
        far,
        _bare(work, piece, (base.last - 1, base.last - 2), increases),
        _bare(work, piece, (falls - 1, *range(falls, len(counts))), draws_in),
    )


def _bare(
    work: PatternWork, piece: PieceWork, rounds: tuple[int, ...], changes: Callable[[Work], bool]
) -> Words | None:
    """How the first of those rounds that changes no yarn is written."""
    found = (words_of(work, piece.rounds[at], changes) for at in rounds)
    return next((one for one in found if one is not None and one.bare), None)


@dataclass(frozen=True, slots=True)
class _Making:
    """A ball being written anew. at: its entries. more: growing rounds more (below 0 fewer), and as many that
    draw in. rest: stitches that one further round adds, and one takes back.

    shifts: by how much each old round's number moves along. done: entries whose rounds are settled: the first
    and the last.
    """

    draft: Draft
    at: Path
    model: Piece
    ball: Ball
    more: int
    rest: int
    shifts: list[Renumber]
    done: dict[int, tuple[int, int]]

    @property
    def widest(self) -> int:
        """Stitches of the widest rounds now."""
        return self.ball.base.stitches + self.more * self.ball.step + self.rest

    def to(self, number: int) -> int:
        """An old round's new number."""
        return number + sum(shift(number) for shift in self.shifts)

    def shift(self, first: int, by: int) -> None:
        """Rounds from this old one on move along."""
        self.shifts.append(_from(first, by))


def write_ball(draft: Draft, pattern: Pattern, ball: Ball, more: int, slim: float, rest: int = 0) -> Renumber:
    """So many growing rounds more (below 0 fewer), and what follows; each old round's new number.

    slim: by how much the stitches are relatively taller now than in the ball that its proportions come from.
    rest: stitches that one more round adds, spread evenly, and one behind the widest takes back.

    Raises CannotAlter where its rounds aren't written so that another could follow them.
    """
    model = pattern.pieces[ball.base.piece]
    making = _Making(draft, ("pieces", ball.base.piece, model.entries_field), model, ball, more, rest, [], {})
    _grow(making)
    _between(making, slim)
    _draw_in(making)
    for index, (first, last) in making.done.items():
        name = _run_name(draft, (*making.at, index))
        draft.value((*making.at, index, name), str(first) if first == last else f"{first}-{last}")
    renumber(draft, pattern, ball.base.piece, making.to, frozenset(making.done))
    return making.to


def _grow(one: _Making) -> None:
    """The round with the rest comes before the last that grows, which may change the yarn; where the growing
    rounds are written once, behind them.
    """
    ball, more = one.ball, one.more
    last, index = ball.base.last, ball.base.entry
    if ball.base.growing:
        first = _first(one.model.entries[index])
        if last + more < first:
            raise CannotAlter("There are no more growing rounds to leave out.")
        one.done[index] = (first, last + more)
        one.shift(last, more)
        if one.rest:
            line = _line(ball.plain, one.widest - one.rest, one.rest, last + more + 1)
            one.draft.after((*one.at, index), [line])
            one.shift(last + 1, 1)
        return
    before = ball.base.stitches - ball.step
    new = [
        _line(ball.plain, before + turn * ball.step, ball.step, last + turn) for turn in range(max(more, 0))
    ]
    if one.rest:
        new.append(_line(ball.plain, before + more * ball.step, one.rest, last + more))
    if new:
        one.draft.after((*one.at, _entry_at(one.model, last - 1 + min(more, 0))), new)
    for number in range(last + more, last):
        one.draft.drop((*one.at, _alone(one.model, ball, number, ball.base.counts[number - 2], ball.step)))
        one.shift(number, -1)
    one.shift(last, len(new))
    _rewrite(one.draft, (*one.at, index, "work"), ball.near, one.widest - ball.step, ball.step)


def _between(one: _Making, slim: float) -> None:
    """Plain rounds as its proportions ask for, changed where most of them stand together."""
    ball, more = one.ball, one.more
    rounds, plain = len(ball.counts), ball.falls - ball.base.last - 1
    whole = rounds * one.widest / ball.base.stitches / slim
    falling = more if more > 0 or _by_rule(one.model, ball) else -_lost(ball, more)
    others = rounds - plain + more + falling + (2 if one.rest else 0)
    wanted = round(whole) - others
    entries = [
        (index, entry.run.first, entry.run.last or entry.run.first)
        for index, entry in enumerate(one.model.entries)
        if entry.run is not None and ball.base.last < entry.run.first < ball.falls
    ]
    index, first, last = max(entries, key=lambda run: run[2] - run[1])
    change = max(wanted - plain, first - last)
    if abs(others + plain + change - whole) > max(_OUT_OF_SHAPE * whole, 1):
        raise CannotAlter("With rounds that grow as its last ones do it would become too long for its width.")
    one.done[index] = (one.to(first), one.to(last) + change)
    way = moved(first, last, change)
    one.shifts.append(lambda number: way(number) - number)


def _draw_in(one: _Making) -> None:
    """The round that takes back the rest stands where the one that adds it does, seen from the other end."""
    ball, more = one.ball, one.more
    index = _entry_at(one.model, ball.falls)
    entry = one.model.entries[index]
    before = one.to(ball.falls)
    if _by_rule(one.model, ball) and entry.n is not None and entry.run is not None:
        assert entry.run.last is not None
        length = entry.run.last - entry.run.first + 1 + more
        _from_value(one.draft, (*one.at, index, "n"), entry.n.from_.of(0), -(entry.n.step.of(0) or 0) * more)
        node = one.draft.node((*one.at, index, "count", "from"))
        _from_value(one.draft, (*one.at, index, "count"), int(node.text) if node else None, ball.step * more)
        if length < 1:
            raise CannotAlter("There are no more rounds that draw in to leave out.")
        if one.rest:
            line = _line(ball.drawn, one.widest - one.rest, one.rest, before, falling=True)
            one.draft.after((*one.at, index - 1), [line])
            one.shift(ball.falls, 1)
            before += 1
        one.done[index] = (before, before + length - 1)
        one.shift(ball.falls + 1, more)
        return
    left = one.widest - ball.step
    _rewrite(one.draft, (*one.at, index, "work"), ball.far, left, ball.step)
    falls = [*([ball.step] * max(more, 0)), *([one.rest] if one.rest else [])]
    lines = []
    for turn, change in enumerate(falls, start=1):
        left -= change
        lines.append(_line(ball.drawn, left, change, before + turn, falling=True))
    one.draft.after((*one.at, index), lines)
    one.shift(ball.falls + 1, len(lines))
    for number in _falling(ball)[: max(-more, 0)]:
        _alone(one.model, ball, number, ball.counts[number - 1], ball.step)
    for number in range(ball.falls + 1, ball.falls + 1 + _lost(ball, more)):
        one.draft.drop((*one.at, _entry_at(one.model, number)))
        one.shift(number, -1)


def _by_rule(model: Piece, ball: Ball) -> bool:
    """Whether the first round that draws in is one of several written once."""
    entry = model.entries[_entry_at(model, ball.falls)]
    return entry.n is not None and entry.run is not None and entry.run.last is not None


def _falling(ball: Ball) -> list[int]:
    """The rounds that draw in behind the first that does."""
    return [
        number
        for number in range(ball.falls + 1, len(ball.counts) + 1)
        if ball.counts[number - 1] < ball.counts[number - 2]
    ]


def _lost(ball: Ball, more: int) -> int:
    """Rounds left out behind the first that draws in: as many that draw in, and the plain ones between."""
    falling = _falling(ball)
    if more >= 0:
        return 0
    if len(falling) < -more:
        raise CannotAlter("There are no more rounds that draw in to leave out.")
    return falling[-more - 1] - ball.falls


def _alone(model: Piece, ball: Ball, number: int, fewer: int, step: int) -> int:
    """The entry of one round alone that differs from its neighbour by the same step; it can be left out."""
    index = _entry_at(model, number)
    run = model.entries[index].run
    other = ball.counts[number - 1] if number <= ball.base.last else ball.counts[number - 2]
    ends = number == len(ball.counts)
    if run is None or run.last not in (None, run.first) or other - fewer != step or ends:
        raise CannotAlter("Its rounds don't grow and draw in by steps that could be left out.")
    return index


def _entry_at(model: Piece, number: int) -> int:
    return next(index for index, one in enumerate(model.entries) if one.run is not None and number in one.run)


def _first(entry: Entry) -> int:
    assert entry.run is not None
    return entry.run.first


def _from(first: int, by: int) -> Renumber:
    return lambda number: by if number >= first else 0


def _from_value(draft: Draft, path: Path, was: int | None, by: int) -> None:
    if was is not None:
        draft.value((*path, "from"), str(was + by))


def _line(words: Words | None, stitches: int, change: int, number: int, falling: bool = False) -> str:
    """A round of its own. stitches: that it grows from, or (falling) that it leaves."""
    if words is None:
        raise CannotAlter("Its shaping isn't written so that another round could follow it.")
    work = f"{words.before}{words.middle(change, stitches)}{words.behind}"
    count = stitches if falling else stitches + change
    return f'{{round: {number}, work: "{work}", count: {count}}}'


def _rewrite(draft: Draft, path: Path, words: Words, stitches: int, change: int) -> None:
    draft.part(path, words.start, words.end, words.middle(change, stitches))


def _run_name(draft: Draft, path: Path) -> str:
    return next(one for one in ("rounds", "rows", "round", "row") if draft.node((*path, one)))
