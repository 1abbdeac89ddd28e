"""A pair is placed unevenly.

What: The two of a pair cover as many stitches each. On a row both stand as far from its ends; on a round,
pairs have one middle, and what is sewn between the two lies halfway. Side by side, the two lie on one round.

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

_MOST = 2.0
"""Stitches off the middle; what is off by more is taken to be meant so (chosen here)."""
_LEAST_AROUND = 1.0
"""Stitches off another middle of a round: half a stitch can't be helped."""


@dataclass(frozen=True, slots=True)
class _Placed:
    """Something sewn on, put on or embroidered.

    belongs: the piece that it is; "" for what is none. runs: the stitches that each copy covers.

    round: the one that it lies on.
    """

    path: Path
    name: str
    belongs: str
    runs: tuple[Run, ...]
    round: RoundWork

    @property
    def one(self) -> str:
        """`One “ear”`; `One of “eyes”`, which are told as several."""
        return f"One “{self.name}”" if self.belongs else f"One of “{self.name}”"

    @property
    def middle(self) -> float:
        """The stitch, or the gap between two, that lies halfway."""
        return sum(_middle(run) for run in self.runs) / len(self.runs)


def find(subject: Subject) -> Iterator[Finding]:
    single = [*_placed(subject)]
    placed = _in_pairs(single)
    for one in placed:
        here = [other for other in placed if other.round is one.round]
        words = _uneven(one, here, subject) or _a_round_apart(one, single)
        if words:
            yield told(__name__, "warning", subject, subject.source.locate(one.path), words, one.belongs)


def _placed(subject: Subject) -> Iterator[_Placed]:
    for number, step in enumerate(subject.pattern.finishing):
        part = step.sew or step.mark
        work = subject.work.piece(part.to) if part and part.to else None
        if part is None or work is None or not part.stitches:
            continue
        round = round_numbered(work, part.number)
        if round is not None and all(run.last is not None for run in part.stitches):
            path = ("finishing", number, step.kind, "stitches")
            piece = step.sew.piece if step.sew else ""
            yield _Placed(path, piece or (step.mark.what if step.mark else ""), piece, part.stitches, round)


def _in_pairs(placed: list[_Placed]) -> list[_Placed]:
    """What is sewn on by two steps, a copy each, as the pair that it is; the rest as it was."""
    pairs: list[_Placed] = []
    for one in placed:
        alike = [other for other in placed if other.name == one.name and other.round is one.round]
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
        return Words(f"{one.one} covers {covers[0]} and the other {covers[1]}.")
    most = min((second.first - first.first) / 4, _MOST)
    if one.round.plan.word == "row":
        stitches = {posts(one.round, size) for size in range(len(one.round.sizes))}
        # One number can't stand evenly in every size.
        if len(stitches) > 1 or not 0 < abs((max(stitches) + 1) / 2 - one.middle) <= most:
            return None
        return Words(
            f"{one.one} stands {number_of(first.first - 1, 'stitch')} from the row's first stitch, "
            f"and the other {max(stitches) - (second.last or second.first)} from its last."
        )
    others = [other for other in here if _says_the_middle(other, one, first, second)]
    return next((words for other in others if (words := _off_by(one, other, most, subject))), None)


def _says_the_middle(other: _Placed, one: _Placed, first: Run, second: Run) -> bool:
    """Whether it is another pair, told before, or a single one that lies between the two."""
    if len(other.runs) == 2:
        return other.path < one.path
    return len(other.runs) == 1 and other is not one and first.first < other.runs[0].first < second.first


def _off_by(one: _Placed, other: _Placed, most: float, subject: Subject) -> Words | None:
    off = abs(other.middle - one.middle)
    if len(other.runs) == 2:
        half = max(posts(one.round, 0) / 2, 1)
        off = min(off % half, half - off % half)
    if not _LEAST_AROUND <= off <= most:
        return None
    return Words(
        message=f"The middle of the pair of “{one.name}” is {_stitch(one.middle)}, and that of "
        f"“{other.name}” is {_stitch(other.middle)}.",
        related=(Related(subject.source.locate(other.path), f"“{other.name}” is placed here"),),
    )


def _a_round_apart(one: _Placed, single: list[_Placed]) -> Words | None:
    """Of two that are placed by a step each, side by side, the second a round above or below the first."""
    alike = [other for other in single if other.name == one.name]
    if len(alike) != 2 or one is not alike[1] or any(len(each.runs) != 1 for each in alike):
        return None
    (first,), (second,) = alike[0].runs, one.runs
    numbers = [each.round.plan.number for each in alike]
    one_above_the_other = first.first <= (second.last or 0) and second.first <= (first.last or 0)
    if abs(numbers[0] - numbers[1]) != 1 or one_above_the_other:
        return None
    word = one.round.plan.word
    return Words(f"{one.one} lies on {word} {numbers[0]} and the other on {word} {numbers[1]}.")


def _middle(run: Run) -> float:
    return (run.first + (run.last or run.first)) / 2


def _length(run: Run) -> int:
    return (run.last or run.first) - run.first + 1


def _stitch(number: float) -> str:
    """`stitch 9`, `between stitches 9 and 10`."""
    whole = int(number)
    return f"stitch {whole}" if number == whole else f"between stitches {whole} and {whole + 1}"


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
