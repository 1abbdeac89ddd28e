"""A pair is placed unevenly.

What: The two of a pair cover as many stitches each. On a row both stand as far from its ends; on a round,
pairs have one middle, and what is sewn between the two lies halfway.

Why it matters: A stitch to one side is seen at once in a face.

Wrong:

    worked: joined rounds
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}
    finishing:
      - sew: {piece: ear, to: piece, round: 2, stitches: "2-4, 9-12"}
    pieces:
      ear:
        title: Ear
        make: 2
        yarn: A
        worked: joined rounds
        start: magic ring
        rounds: [{round: 1, work: "ch 1, 7 sc in ring, join, fasten off", count: 7}]

Right:

    worked: joined rounds
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}
    finishing:
      - sew: {piece: ear, to: piece, round: 2, stitches: "2-4, 10-12"}
    pieces:
      ear:
        title: Ear
        make: 2
        yarn: A
        worked: joined rounds
        start: magic ring
        rounds: [{round: 1, work: "ch 1, 7 sc in ring, join, fasten off", count: 7}]

When to ignore: When it is meant to sit askew, or the count was given for a stitch that leans.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from ...fabric import RoundWork
from ...pattern import Finding, Path, Related, Run
from ..names import number_of
from ..placing import posts, round_numbered
from ..rule import Words, rule, told
from ..subject import Subject

_SLIP = (1.0, 2.0)
"""Stitches. Half a stitch can't be helped, and what is off by more is taken to be meant so (chosen here)."""


@dataclass(frozen=True, slots=True)
class _Placed:
    """Something sewn on. runs: the stitches that each copy covers. round: the one that it lies on."""

    path: Path
    piece: str
    runs: tuple[Run, ...]
    round: RoundWork

    @property
    def middle(self) -> float:
        """The stitch, or the gap between two, that lies halfway."""
        return sum(_middle(run) for run in self.runs) / len(self.runs)


def find(subject: Subject) -> Iterator[Finding]:
    placed = _in_pairs([*_placed(subject)])
    for one in placed:
        words = _uneven(one, [other for other in placed if other.round is one.round], subject)
        if words:
            yield told(__name__, "warning", subject, subject.source.locate(one.path), words, one.piece)


def _placed(subject: Subject) -> Iterator[_Placed]:
    for number, step in enumerate(subject.pattern.finishing):
        work = subject.work.piece(step.sew.to) if step.sew and step.sew.to else None
        if step.sew is None or work is None or not step.sew.stitches:
            continue
        round = round_numbered(work, step.sew.round or step.sew.row)
        if round is not None and all(run.last is not None for run in step.sew.stitches):
            path = ("finishing", number, "sew", "stitches")
            yield _Placed(path, step.sew.piece, step.sew.stitches, round)


def _in_pairs(placed: list[_Placed]) -> list[_Placed]:
    """What is sewn on by two steps, a copy each, as the pair that it is; the rest as it was."""
    pairs: list[_Placed] = []
    for one in placed:
        alike = [other for other in placed if other.piece == one.piece and other.round is one.round]
        if len(alike) != 2 or any(len(other.runs) != 1 for other in alike):
            pairs.append(one)
        elif one is alike[1]:
            pairs.append(replace(one, runs=alike[0].runs + one.runs))
    return pairs


def _uneven(one: _Placed, here: list[_Placed], subject: Subject) -> Words | None:
    """What is uneven about a pair; None for what is no pair, or stands evenly."""
    if len(one.runs) != 2:
        return None
    first, second = sorted(one.runs, key=lambda run: run.first)
    if _length(first) != _length(second):
        covers = number_of(_length(first), "stitch"), str(_length(second))
        return Words(f"One “{one.piece}” covers {covers[0]} and the other {covers[1]}.")
    most = min((second.first - first.first) / 4, _SLIP[1])
    if one.round.plan.word == "row":
        stitches = {posts(one.round, size) for size in range(len(one.round.sizes))}
        # One number can't stand evenly in every size.
        if len(stitches) > 1 or not _SLIP[0] <= abs((max(stitches) + 1) / 2 - one.middle) <= most:
            return None
        return Words(
            f"One “{one.piece}” stands {number_of(first.first - 1, 'stitch')} from the row's first stitch, "
            f"and the other {max(stitches) - (second.last or second.first)} from its last."
        )
    for other in here:
        if other is one or len(other.runs) > 2 or (len(other.runs) == 2 and one.path < other.path):
            continue
        off = abs(other.middle - one.middle)
        if len(other.runs) == 2:
            half = max(posts(one.round, 0) / 2, 1)
            off = min(off % half, half - off % half)
        elif not first.first < other.runs[0].first < second.first:
            continue
        if _SLIP[0] <= off <= most:
            return Words(
                message=f"The middle of the pair of “{one.piece}” is {_stitch(one.middle)}, and that of "
                f"“{other.piece}” is {_stitch(other.middle)}.",
                related=(Related(subject.source.locate(other.path), f"“{other.piece}” is placed here"),),
            )
    return None


def _middle(run: Run) -> float:
    return (run.first + (run.last or run.first)) / 2


def _length(run: Run) -> int:
    return (run.last or run.first) - run.first + 1


def _stitch(number: float) -> str:
    """`stitch 9`, `between stitches 9 and 10`."""
    whole = int(number)
    return f"stitch {whole}" if number == whole else f"between stitches {whole} and {whole + 1}"


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
