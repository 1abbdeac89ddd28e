"""Rounds of several kinds of stitch, or of stitches and spaces, are counted by one number.

What: A round that makes more than one kind states its count as a single number, and no round of the pattern
is counted by kind.

Why it matters: A number doesn't tell a double crochet from a treble. If a wrong name slips into such a line,
the count still comes out, and nobody notices before the maker does.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 12 sc in ring, join", count: 12}
      - {round: 2, work: "ch 1, *sc in next st, ch 2, dc in next st; rep from * around, join", count: 12}

Right:

    rounds:
      - {round: 1, work: "ch 1, 12 sc in ring, join", count: 12}
      - round: 2
        work: "ch 1, *sc in next st, ch 2, dc in next st; rep from * around, join"
        count: 6 sc, 6 dc, 6 ch-2 sps

When to ignore: Where you prefer short counts. Everything that is said without this note stays true; there is
just less that a slip could contradict. It is said once a pattern, and not where a count by kind, or a grid,
shows that you have thought of it.
"""

from collections.abc import Iterator

from ...fabric import RoundWork, WorkedRound
from ...pattern import Finding, Suggestion
from ..names import in_sizes, kind_name, kind_of, listed, tally
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    if any(round.stated is not None and round.stated.total is None for _, round in subject.rounds()):
        return
    for piece, round in subject.rounds():
        size = next((one for one in round.sizes if one is not None), None)
        if (
            size is None
            or _kinds_counted(subject, size) < 2
            or round.stated is None
            or round.plan.by_rule == "grid"
        ):
            continue
        if round.troubles:
            continue
        kinds = [kind_of(kind, subject, number) for kind, number in size.makes.items()]
        words = Words(
            message=f"A wrong stitch in {round.plan.word} {round.plan.label} wouldn't show in its count.",
            working=f"It makes {listed(kinds)}, and the count says {round.plan.stated}.",
            suggestion=_suggestion(subject, round),
        )
        at = subject.source.locate(round.plan.stated_path)
        yield told(__name__, "note", subject, at, words, piece.name, round.plan.label)
        return


def _kinds_counted(subject: Subject, size: WorkedRound) -> int:
    """How many kinds one number adds up; where chains are counted that they are is said already."""
    if subject.pattern.chain_spaces == "counted":
        return sum(1 for kind in size.makes if isinstance(kind, str))
    return len(size.makes)


def _suggestion(subject: Subject, round: RoundWork) -> Suggestion:
    """The count by kind; put in by itself where there is one size."""
    worked = [size for size in round.sizes if size is not None]
    at = subject.source.locate(round.plan.stated_path)
    by_size = {kind: in_sizes([one.makes.get(kind, 0) for one in worked]) for kind in worked[0].makes}
    kinds = ", ".join(f"{numbers} {kind_name(kind, subject, 2)}" for kind, numbers in by_size.items())
    one_size = len(round.sizes) == 1
    text = tally(worked[0].makes, subject) if one_size else kinds
    new = subject.replacement(at, round.plan.stated or "", text) if one_size else None
    return Suggestion(f"If the stitches are right, count them by kind: {text}.", new, "likely")


RULE = rule(__name__, __doc__, "note", find, of_sound_work=True)
