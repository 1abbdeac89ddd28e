"""A beginning chain has another length than any that stands for its stitch, or makes a space nobody uses.

What: A chain that counts as a stitch is more than two chains longer or shorter than the one that usually
stands for it (single 1, half 2, double 3, treble 4, in US terms). Or a longer chain begins a round or row,
counts as nothing, and the space that it makes is the only one of its size, isn't in the count, and isn't
worked into.

Why it matters: One digit struck twice turns `ch 3` into `ch 33`, and every count still comes out.

Wrong:

    turning chains: {dc: counts}
    rounds:
      - {round: 1, work: "ch 33 (counts as dc), 11 dc in ring, join", count: 12}
      - {round: 2, work: "ch 3 (counts as dc), dc in same st, 2 dc in each st around, join", count: 24}

Right:

    turning chains: {dc: counts}
    rounds:
      - {round: 1, work: "ch 3 (counts as dc), 11 dc in ring, join", count: 12}
      - {round: 2, work: "ch 3 (counts as dc), dc in same st, 2 dc in each st around, join", count: 24}

When to ignore: Where the long chain is meant to hang, as a loop to sew on by.
"""

from collections.abc import Iterator

from ... import trade
from ...fabric import Made, RoundWork, Space
from ...notation.tree import Target
from ...pattern import Finding, Suggestion
from ..names import number_of
from ..rule import Words, rule, told
from ..subject import Subject

_MAY_DIFFER = 2
"""Chains more or fewer than usual that are met in print (common practice, no source)."""


_AN_ARCH = 6
"""A last round isn't worked into: so long an arch at its beginning is met (common practice, no source)."""


def find(subject: Subject) -> Iterator[Finding]:
    used: set[int] | None = None
    lines = set()
    for piece, round in subject.rounds():
        begun = _beginning(round)
        if begun is None or round.plan.work_path in lines:
            continue
        first, usual = begun
        if abs(first.chains - usual) <= _MAY_DIFFER:
            continue
        if isinstance(first, Space):
            used = _worked_into(subject) if used is None else used
            if first.chains < usual or id(first) in used or not _is_alone(round, first):
                continue
            if round is piece.rounds[-1] and first.chains - usual <= _AN_ARCH:
                continue
        lines.add(round.plan.work_path)
        word = f"{round.plan.word} {round.plan.label}"
        working = (
            "It makes a space that is in no count and that nothing is worked into"
            if isinstance(first, Space)
            else f"It is to count as one stitch, for which {number_of(usual, 'chain')} would be usual"
        )
        words = Words(
            message=f"{word.capitalize()} begins with {number_of(first.chains, 'chain')}.",
            working=f"{working}.",
            suggestion=Suggestion("Look whether a digit is struck twice.", None, "fill-in"),
        )
        at = subject.stretch(round, first.span)
        yield told(__name__, "warning", subject, at, words, piece.name, round.plan.label)


def _beginning(round: RoundWork) -> tuple[Made | Space, int] | None:
    """What a round begins with, where that is made of chains, and the chains usual for its stitch."""
    made = next((size.made for size in round.sizes if size is not None), [])
    if not made:
        return None
    first = made[0]
    if isinstance(first, Space):
        kind = next((one.kind for one in made if isinstance(one, Made) and one.role == "stitch"), "")
        usual = _usual(kind)
        return (first, usual) if usual is not None and not first.back else None
    usual = _usual(first.kind) if first.role == "turning" and not first.form else None
    return (first, usual) if usual is not None else None


def _usual(kind: str) -> int | None:
    return next((row.turning_chain for row in trade.stitches() if row.key == kind), None)


def _worked_into(subject: Subject) -> set[int]:
    """Everything that a stitch (and not just the join) is worked into, or into one of whose chains."""
    found: set[int] = set()
    for _, round in subject.rounds():
        for size in round.sizes:
            for one in size.made if size is not None else ():
                if isinstance(one, Made) and one.role not in ("join", "travel"):
                    found.update(map(id, one.into))
                    found.update(id(under) for place in one.into for under in getattr(place, "into", ()))
    return found


def _is_alone(round: RoundWork, first: Space) -> bool:
    """Whether no other space of the round is like it, and its count names no spaces."""
    worked = next(size for size in round.sizes if size is not None)
    alike = [one for one in worked.made if isinstance(one, Space) and one.chains == first.chains]
    named = round.stated is not None and any(isinstance(what, Target) for _, what in round.stated.entries)
    return len(alike) == 1 and not named


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
