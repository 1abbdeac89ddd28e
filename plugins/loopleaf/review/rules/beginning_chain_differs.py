"""One round begins with another chain than all the others that begin with the same stitch.

What: A beginning chain that counts as nothing is longer or shorter than in every other round with that first
stitch, of which there are three or more.

Why it matters: A chain that doesn't count can't be counted. Read `ch 10` for `ch 1` and every number still
comes out; only the habit of the other rounds shows the slip.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}
      - {round: 3, work: "ch 2 (does not count), (hdc in next st, 2 hdc in next st) x 8, join", count: 24}
      - {round: 4, work: "ch 1, hdc in each st around, join", count: 24}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}
      - {round: 3, work: "ch 1, (hdc in next st, 2 hdc in next st) x 8, join", count: 24}
      - {round: 4, work: "ch 1, hdc in each st around, join", count: 24}

When to ignore: Where the chain is meant to be another one there.
"""

from collections import Counter
from collections.abc import Iterator

from ...fabric import Made, RoundWork
from ...pattern import Finding, Path, Suggestion
from ..names import number_of
from ..rule import Words, rule, told
from ..subject import Subject

_HABIT = 3
"""So many other rounds make a habit."""


def find(subject: Subject) -> Iterator[Finding]:
    begun: dict[str, dict[Path, tuple[int, str, RoundWork]]] = {}
    for piece, round in subject.rounds():
        beginning = _beginning(round)
        if beginning is not None:
            chains, kind = beginning
            begun.setdefault(kind, {}).setdefault(round.plan.work_path, (chains, piece.name, round))
    for rounds in begun.values():
        lengths = Counter(chains for chains, _, _ in rounds.values())
        (usual, often), *others = lengths.most_common()
        if often < _HABIT or sum(number for _, number in others) != 1:
            continue
        chains, name, round = next(one for one in rounds.values() if one[0] != usual)
        word = f"{round.plan.word} {round.plan.label}"
        words = Words(
            message=f"{word.capitalize()} begins with {number_of(chains, 'chain')}, and all others like it "
            f"with {usual}.",
            working=f"It doesn't count, so no number shows which is meant; {often} other lines begin with "
            f"{usual}.",
            suggestion=Suggestion("Look whether it is meant.", None, "fill-in"),
        )
        yield told(__name__, "note", subject, subject.stretch(round), words, name, round.plan.label)
        return


def _beginning(round: RoundWork) -> tuple[int, str] | None:
    """How many chains the round begins with that count as nothing, and the kind of the stitch behind them."""
    made = next((size.made for size in round.sizes if size is not None), [])
    if len(made) < 2 or not isinstance(made[0], Made) or made[0].role != "chain":
        return None
    first = made[1]
    return (made[0].chains, first.kind) if isinstance(first, Made) and first.role == "stitch" else None


RULE = rule(__name__, __doc__, "note", find, of_sound_work=True)
