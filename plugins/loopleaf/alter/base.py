"""A base worked from its middle: which rounds grow, by how many stitches, how its last one is written."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from .. import notation
from ..fabric import PatternWork, PieceWork, RoundWork
from ..notation.tree import Chain, Each, FastenOff, Join, Next, Over, Repeat, Step, Stitch, Turn, Work, Yarn
from ..pattern import Entry, Piece
from .series import Series, series
from .spread import as_written

_AROUND = ("joined rounds", "spiral rounds")
_POINT = 6
"""Chains that rows may begin with and still grow from a point (chosen here)."""
_BEGINS = ("magic ring", "chain ring", "chain", "both sides")


@dataclass(frozen=True, slots=True)
class Base:
    """The growing rounds at a piece's beginning, with plain ones that lie singly between them.

    counts: stitches of each, from round 1. grows: what the last of them adds. entry: index of the last one's
    entry. growing: whether that entry is written once for several rounds that grow by rule. ending: the words
    of the last one that end the piece (`, fasten off`), "" where rounds follow or none are there. next_work,
    next_count: how the last two go on, where they differ by numbers alone.
    """

    piece: str
    counts: tuple[int, ...]
    grows: int
    entry: int
    growing: bool
    words: "Words | None"
    ending: str = ""
    next_work: Series | None = None
    next_count: Series | None = None

    @property
    def last(self) -> int:
        """Number of the last growing round."""
        return len(self.counts)

    @property
    def stitches(self) -> int:
        return self.counts[-1]

    @property
    def goes_on(self) -> bool:
        """Whether another round could follow the last one."""
        return self.growing or self.words is not None or self.gone_on(1) is not None

    def written(self, more: int, stitches: int, flip: bool) -> str | None:
        """A round with so many more stitches, spread evenly, written like the base's last round.

        flip: its increases stand where those of the last round don't. None where that can't be told.
        """
        if self.words is None:
            return None
        return f"{self.words.before}{self.words.middle(more, stitches, flip)}{self.words.behind}"

    def gone_on(self, turn: int) -> tuple[str, str] | None:
        """The round that follows the last so many times over, and its count, as the last two go on."""
        if self.next_work is None or self.next_count is None:
            return None
        return self.next_work.after(turn), self.next_count.after(turn)


@dataclass(frozen=True, slots=True)
class Words:
    """How a round that changes its number of stitches is written.

    before, behind: of the line. stitch: `hdc`. change: `inc`, `2 hdc in next st`, `invisible dec`. first: the
    change comes first. start, end: the stretch between before and behind. bare: no yarn changes in the line.
    chain: a beginning chain that is the first stitch (`ch 3 (counts as dc)`), "" without one.
    """

    before: str
    behind: str
    stitch: str
    change: str
    first: bool
    start: int
    end: int
    bare: bool
    chain: str = ""

    def middle(self, changes: int, stitches: int, flip: bool = False) -> str:
        """So many changes spread evenly. flip: they stand where those of the round itself don't."""
        return as_written(changes, stitches, self.stitch, self.change, self.first != flip, self.chain)


def base_of(work: PatternWork, piece: PieceWork, model: Piece) -> Base | None:
    """The base of a piece in the round that begins in its middle; None where it has none.

    Of a pattern in one size.
    """
    start = model.start
    if start is None or not (_from_a_point(model) or (model.worked in _AROUND and start.kind in _BEGINS)):
        return None
    counts = _growing(piece)
    if len(counts) < 2 or [one.plan.number for one in piece.rounds[: len(counts)]] != list(
        range(1, len(counts) + 1)
    ):
        return None
    whole = _of_counts(work, piece, model, counts)
    if whole.goes_on or any(here > after for here, after in pairwise(_counts(piece))):
        return whole
    # An edging may hold more stitches than the last round that grows by the design's own rule.
    within = (_of_counts(work, piece, model, counts[:last]) for last in range(len(counts) - 1, 2, -1))
    return next((one for one in within if one.growing), whole)


def _of_counts(work: PatternWork, piece: PieceWork, model: Piece, counts: Sequence[int]) -> Base:
    """The base whose rounds have so many stitches."""
    before, last = piece.rounds[len(counts) - 2 : len(counts)]
    entry = model.entries[last.plan.entry]
    ending = _ending(last) if last is piece.rounds[-1] and not _by_rule(entry) else ""
    words = words_of(work, last, increases)
    return Base(
        piece.name,
        tuple(counts),
        counts[-1] - counts[-2],
        last.plan.entry,
        _by_rule(entry),
        words if words is not None and words.bare else None,
        ending,
        series(before.plan.work, last.plan.work.removesuffix(ending)),
        series(before.plan.stated or "", last.plan.stated or ""),
    )


def _from_a_point(model: Piece) -> bool:
    """Whether rows grow from a few chains, as a shawl does from the middle of its upper edge."""
    start = model.start
    chain = start.chain.of(0) if start is not None and start.chain is not None else None
    return model.worked == "rows" and chain is not None and chain <= _POINT


def _ending(round: RoundWork) -> str:
    """The words of a line that end the piece, with the slip stitch that levels a spiral before them."""
    steps, closing = _parted(round.line.steps if round.line is not None else ())
    spans = [one.span for one in steps if one.span is not None]
    return round.plan.work[spans[-1].end :] if closing and spans else ""


def _parted(steps: Sequence[Step]) -> tuple[Sequence[Step], Sequence[Step]]:
    """What a round works, and what ends the piece behind it: `sl st in next st, fasten off`."""
    if not steps or not isinstance(steps[-1], FastenOff) or steps[-1].yarn:
        return steps, ()
    at = len(steps) - 1
    levels = steps[at - 1]
    if at > 1 and isinstance(levels, Work) and levels.stitch.kind == "slip":
        at -= 1
    return steps[:at], steps[at:]


def _counts(piece: PieceWork) -> list[int]:
    return [one.sizes[0].count if one.sizes and one.sizes[0] is not None else 0 for one in piece.rounds]


def _growing(piece: PieceWork) -> list[int]:
    """Stitches of the rounds to the last that grows; one plain round may lie between two that grow alike."""
    made = _counts(piece)
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
    """Whether one entry is several rounds that grow: by `n`, or since the same words find more stitches."""
    run = entry.run
    if run is None or run.last is None:
        return False
    return entry.n is not None or (run.last > run.first and not entry.repeat)


def words_of(work: PatternWork, round: RoundWork, changes: Callable[[Work], bool]) -> Words | None:
    """How the round is written: one thing that changes the number, between what begins and what ends rounds.

    changes: tells the step that does. None where it is written in another way.
    """
    line = round.settled or round.line  # settled: `ss in first htr` is known for the join
    if line is None:
        return None
    beside = (Chain, Join, Turn, Yarn, FastenOff)
    worked, closing = _parted(line.steps)
    chain, line_steps = _begins_with_a_stitch(round, worked) if changes is increases else (None, worked)
    steps = [one for one in line_steps if not isinstance(one, beside)]
    bare = not any(isinstance(one, Yarn | FastenOff) for one in worked)
    if len(steps) != 1 or steps[0].span is None:
        return None
    (step,) = steps
    text, span = round.plan.work, step.span
    assert span is not None
    begins = chain.span.start if chain is not None and chain.span is not None else span.start
    own = text[chain.span.start : chain.span.end] if chain is not None and chain.span is not None else ""
    before, behind = text[:begins], text[span.end :].removesuffix(_ending(round) if closing else "")
    if isinstance(step, Work) and increases(step) and changes(step) and isinstance(step.places[0], Each):
        kind = _kind(step, round)
        stitch = notation.stitch_name(kind, work.pattern.terms, vocabulary=work.vocabulary)
        increase = "inc" if step.stitch.kind == "inc" else f"2 {stitch} in next st"
        return Words(before, behind, stitch, increase, True, begins, span.end, bare, own)
    if not isinstance(step, Repeat) or len(step.steps) != 2 or not _goes_all_the_way(step):
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
    return Words(before, behind, stitch, said, changed is one, begins, span.end, bare, own)


def _begins_with_a_stitch(round: RoundWork, steps: Sequence[Step]) -> tuple[Chain | None, Sequence[Step]]:
    """The beginning chain that is the round's first stitch, and the steps without the pass that it begins.

    That pass is written out, the others behind it are alike. (None, all of them) where the round begins
    otherwise.
    """
    first = steps[0] if steps else None
    if not isinstance(first, Chain) or first.span is None or not _is_a_stitch(first, round):
        return None, steps
    last = next((at for at, one in enumerate(steps) if isinstance(one, Repeat)), 0)
    last = last or next((at for at, one in enumerate(steps) if isinstance(one, Work) and increases(one)), 0)
    one_pass = steps[1:last]
    if not one_pass or not all(isinstance(one, Work) for one in one_pass):
        return None, steps
    return first, steps[last:]


def _is_a_stitch(chain: Chain, round: RoundWork) -> bool:
    """Whether a beginning chain counts as one stitch and no more, as the line or the pattern says."""
    if chain.counts is not None:
        return not chain.counts.chains
    worked = round.sizes[0]
    made = worked.made[0] if worked is not None and worked.made else None
    return getattr(made, "role", "") == "turning" and bool(getattr(made, "number", 0))


def _goes_all_the_way(step: Repeat) -> bool:
    """`(…) x 6`, or `*…; rep from * to end` with every pass alike."""
    if step.ending or step.omitting or step.stop_at is not None:
        return False
    return step.times is not None or (step.until is not None and step.until.kind == "end")


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
