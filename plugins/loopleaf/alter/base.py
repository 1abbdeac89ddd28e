"""A base worked from its middle: which rounds grow, by how many stitches, how its last one is written."""

from collections.abc import Callable
from dataclasses import dataclass

from .. import notation
from ..fabric import PatternWork, PieceWork, RoundWork
from ..notation.tree import Chain, Each, FastenOff, Join, Next, Over, Repeat, Stitch, Turn, Work, Yarn
from ..pattern import Entry, Piece
from .spread import as_written

_AROUND = ("joined rounds", "spiral rounds")
_BEGINS = ("magic ring", "chain ring", "chain", "both sides")


@dataclass(frozen=True, slots=True)
class Base:
    """The growing rounds at a piece's beginning, with plain ones that lie singly between them.

    counts: stitches of each, from round 1. grows: what the last of them adds. entry: index of the last one's
    entry. growing: whether that entry is written once for several rounds that grow by rule.
    """

    piece: str
    counts: tuple[int, ...]
    grows: int
    entry: int
    growing: bool
    words: "Words | None"

    @property
    def last(self) -> int:
        """Number of the last growing round."""
        return len(self.counts)

    @property
    def stitches(self) -> int:
        return self.counts[-1]

    def written(self, more: int, stitches: int, flip: bool) -> str | None:
        """A round with so many more stitches, spread evenly, written like the base's last round.

        flip: its increases stand where those of the last round don't. None where that can't be told.
        """
        if self.words is None:
            return None
        return f"{self.words.before}{self.words.middle(more, stitches, flip)}{self.words.behind}"


@dataclass(frozen=True, slots=True)
class Words:
    """How a round that changes its number of stitches is written.

    before, behind: of the line. stitch: `hdc`. change: `inc`, `2 hdc in next st`, `invisible dec`. first: the
    change comes first. start, end: the stretch between before and behind. bare: no yarn changes in the line.
    """

    before: str
    behind: str
    stitch: str
    change: str
    first: bool
    start: int
    end: int
    bare: bool

    def middle(self, changes: int, stitches: int, flip: bool = False) -> str:
        """So many changes spread evenly. flip: they stand where those of the round itself don't."""
        return as_written(changes, stitches, self.stitch, self.change, self.first != flip)


def base_of(work: PatternWork, piece: PieceWork, model: Piece) -> Base | None:
    """The base of a piece in the round that begins in its middle; None where it has none.

    Of a pattern in one size.
    """
    start = model.start
    if model.worked not in _AROUND or start is None or start.kind not in _BEGINS:
        return None
    counts = _growing(piece)
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
        words if (words := words_of(work, last, increases)) is not None and words.bare else None,
    )


def _growing(piece: PieceWork) -> list[int]:
    """Stitches of the rounds to the last that grows; one plain round may lie between two that grow alike."""
    made = [one.sizes[0].count if one.sizes and one.sizes[0] is not None else 0 for one in piece.rounds]
    counts: list[int] = []
    while len(counts) < len(made) and made[len(counts)] > (counts[-1] if counts else 0):
        counts.append(made[len(counts)])
    grows = counts[-1] - counts[-2] if len(counts) > 1 else 0
    while grows and made[len(counts) : len(counts) + 2] == [counts[-1], counts[-1] + grows]:
        counts += [counts[-1], counts[-1] + grows]
        while made[len(counts) : len(counts) + 1] == [counts[-1] + grows]:
            counts.append(counts[-1] + grows)
    return counts


def _by_rule(entry: Entry) -> bool:
    return entry.n is not None and entry.run is not None and entry.run.last is not None


def words_of(work: PatternWork, round: RoundWork, changes: Callable[[Work], bool]) -> Words | None:
    """How the round is written: one thing that changes the number, between what begins and what ends rounds.

    changes: tells the step that does. None where it is written in another way.
    """
    if round.line is None:
        return None
    beside = (Chain, Join, Turn, Yarn, FastenOff)
    steps = [one for one in round.line.steps if not isinstance(one, beside)]
    bare = not any(isinstance(one, Yarn | FastenOff) for one in round.line.steps)
    if len(steps) != 1 or steps[0].span is None:
        return None
    (step,) = steps
    text, span = round.plan.work, step.span
    assert span is not None
    before, behind = text[: span.start], text[span.end :]
    if isinstance(step, Work) and increases(step) and changes(step) and isinstance(step.places[0], Each):
        kind = _kind(step, round)
        stitch = notation.stitch_name(kind, work.pattern.terms, vocabulary=work.vocabulary)
        increase = "inc" if step.stitch.kind == "inc" else f"2 {stitch} in next st"
        return Words(before, behind, stitch, increase, True, span.start, span.end, bare)
    if not isinstance(step, Repeat) or len(step.steps) != 2 or not _whole(step):
        return None
    one, other = step.steps
    if not (isinstance(one, Work) and isinstance(other, Work)) or changes(one) == changes(other):
        return None
    changed, plain = (one, other) if changes(one) else (other, one)
    if not all(isinstance(place, Next | Over) for place in (*changed.places, *plain.places)):
        return None
    if changed.span is None:
        return None
    stitch = notation.stitch_name(plain.stitch, work.pattern.terms, vocabulary=work.vocabulary)
    said = text[changed.span.start : changed.span.end]
    return Words(before, behind, stitch, said, changed is one, span.start, span.end, bare)


def _whole(step: Repeat) -> bool:
    """Whether it is worked so many times, or up to the round's end, and every pass in full."""
    cut = step.stop_at is not None or step.ending or step.omitting or step.sides
    return not cut and (step.times is not None or (step.until is not None and step.until.kind == "end"))


def increases(step: Work) -> bool:
    """Whether a step makes two stitches of one."""
    return step.stitch.kind == "inc" or step.each.of(0) == 2


def draws_in(step: Work) -> bool:
    """Whether a step makes one stitch of two."""
    return step.stitch.kind == "dec" or (step.stitch.form == "tog" and step.stitch.number == 2)


def _kind(step: Work, round: RoundWork) -> Stitch:
    if step.stitch.kind != "inc":
        return step.stitch
    worked = round.sizes[0]
    made = next(one for one in worked.made if getattr(one, "number", 0)) if worked else None
    return Stitch(getattr(made, "kind", "single"))
