"""A base worked from its middle: which rounds grow, by how many stitches, how its last one is written."""

from dataclasses import dataclass

from .. import notation
from ..fabric import PatternWork, PieceWork, RoundWork
from ..notation.tree import Chain, Each, Join, Next, Repeat, Stitch, Turn, Work
from ..pattern import Entry, Piece
from .spread import as_written

_AROUND = ("joined rounds", "spiral rounds")
_BEGINS = ("magic ring", "chain ring", "chain", "both sides")


@dataclass(frozen=True, slots=True)
class Base:
    """The growing rounds at a piece's beginning.

    counts: stitches of each, from round 1. grows: what the last of them adds. entry: index of the last one's
    entry. growing: whether that entry is written once for several rounds that grow by rule.
    """

    piece: str
    counts: tuple[int, ...]
    grows: int
    entry: int
    growing: bool
    words: "_Words | None"

    @property
    def last(self) -> int:
        """Number of the last growing round."""
        return len(self.counts)

    @property
    def stitches(self) -> int:
        return self.counts[-1]

    def written(self, increases: int, stitches: int, flip: bool) -> str | None:
        """A round that spreads so many increases over so many stitches, written like the base's last round.

        flip: its increases stand where those of the last round don't. None where that can't be told.
        """
        if self.words is None:
            return None
        first = self.words.first != flip
        middle = as_written(increases, stitches, self.words.stitch, self.words.increase, first)
        return f"{self.words.before}{middle}{self.words.behind}"


@dataclass(frozen=True, slots=True)
class _Words:
    """before, behind: of the line. stitch: `hdc`. increase: `inc`. first: the increase comes first."""

    before: str
    behind: str
    stitch: str
    increase: str
    first: bool


def base_of(work: PatternWork, piece: PieceWork, model: Piece) -> Base | None:
    """The base of a piece in the round that begins in its middle; None where it has none.

    Of a pattern in one size.
    """
    start = model.start
    if model.worked not in _AROUND or start is None or start.kind not in _BEGINS:
        return None
    counts: list[int] = []
    for round in piece.rounds:
        worked = round.sizes[0] if round.sizes else None
        if worked is None or (counts and worked.count <= counts[-1]):
            break
        counts.append(worked.count)
    if len(counts) < 2 or [one.plan.number for one in piece.rounds[: len(counts)]] != list(
        range(1, len(counts) + 1)
    ):
        return None
    last = piece.rounds[len(counts) - 1]
    entry = model.entries[last.plan.entry]
    return Base(
        piece.name,
        tuple(counts),
        counts[-1] - counts[-2],
        last.plan.entry,
        _by_rule(entry),
        _words(work, last),
    )


def _by_rule(entry: Entry) -> bool:
    return entry.n is not None and entry.run is not None and entry.run.last is not None


def _words(work: PatternWork, round: RoundWork) -> _Words | None:
    """How the round is written: one thing that increases, between what begins and what ends every round."""
    if round.line is None:
        return None
    steps = [one for one in round.line.steps if not isinstance(one, Chain | Join | Turn)]
    if len(steps) != 1 or steps[0].span is None:
        return None
    (step,) = steps
    text, span = round.plan.work, step.span
    assert span is not None
    before, behind = text[: span.start], text[span.end :]
    if isinstance(step, Work) and _increases(step) and isinstance(step.places[0], Each):
        kind = _kind(step, round)
        stitch = notation.stitch_name(kind, work.pattern.terms, vocabulary=work.vocabulary)
        increase = "inc" if step.stitch.kind == "inc" else f"2 {stitch} in next st"
        return _Words(before, behind, stitch, increase, True)
    if not isinstance(step, Repeat) or len(step.steps) != 2 or step.times is None:
        return None
    one, other = step.steps
    if not (isinstance(one, Work) and isinstance(other, Work)) or _increases(one) == _increases(other):
        return None
    grown, plain = (one, other) if _increases(one) else (other, one)
    if not all(isinstance(place, Next) for place in (*grown.places, *plain.places)) or grown.span is None:
        return None
    stitch = notation.stitch_name(plain.stitch, work.pattern.terms, vocabulary=work.vocabulary)
    return _Words(before, behind, stitch, text[grown.span.start : grown.span.end], grown is one)


def _increases(step: Work) -> bool:
    return step.stitch.kind == "inc" or step.each.of(0) == 2


def _kind(step: Work, round: RoundWork) -> Stitch:
    if step.stitch.kind != "inc":
        return step.stitch
    worked = round.sizes[0]
    made = next(one for one in worked.made if getattr(one, "number", 0)) if worked else None
    return Stitch(getattr(made, "kind", "single"))
