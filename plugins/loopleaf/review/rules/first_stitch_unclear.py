"""After a chain that doesn't count, the first stitch could be taken for the second.

What: A round begins with as many chains as its stitch is tall, the chains don't count though the file doesn't
say so, and the first stitch goes “in next st”. Many makers know such a chain as a stitch, and would take the
one after it as the next.

Why it matters: Each round would lose a stitch at the seam, or gain one at its end.

Wrong:

    rounds:
      - {round: 1, work: "ch 2, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 2, (hdc in next st, 2 hdc in next st) x 4, join", count: 12}

Right:

    rounds:
      - {round: 1, work: "ch 2, 8 hdc in ring, join", count: 8}
      - round: 2
        work: "ch 2, hdc in same st, 2 hdc in next st, (hdc in next st, 2 hdc in next st) x 3, join"
        count: 12

When to ignore: When your readers know your way. `turning chains: {hdc: does not count}`, or
`(does not count)` behind the chains, settles it: the page then says so.
"""

from collections.abc import Iterator, Sequence

from ... import notation, trade
from ...fabric import WorkedRound
from ...notation.tree import Chain, Next, Repeat, Step, Stitch, Work
from ...pattern import Finding, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    told_entries: set[tuple[str, int]] = set()
    for piece in subject.work.pieces:
        if subject.pattern.pieces[piece.name].worked != "joined rounds":
            continue
        for round in piece.rounds[1:]:
            steps = round.line.steps if round.line else ()
            if len(steps) < 2 or not isinstance(steps[0], Chain) or steps[0].counts is not None:
                continue
            first = _first(steps[1])
            chains = steps[0].length.of(0)
            if first is None or chains is None or (piece.name, round.plan.entry) in told_entries:
                continue
            if (
                _settled(subject, first.stitch)
                or _counts(round.sizes)
                or chains != _usual_chain(first.stitch.kind)
            ):
                continue
            told_entries.add((piece.name, round.plan.entry))
            words = Words(
                message=f"In round {round.plan.label} “in next st” follows a chain that doesn't count.",
                working=f"{chains} chains usually stand for this stitch; a reader may count them as one.",
                suggestion=Suggestion(
                    "Write “in same st” or “in first st” for the first stitch.", None, "fill-in"
                ),
            )
            at = subject.stretch(round, first.span)
            yield told(__name__, "note", subject, at, words, piece.name, round.plan.label)


def _first(step: Step) -> Work | None:
    """The step's first stitches, where they go “in next st”."""
    while isinstance(step, Repeat) and step.steps:
        step = step.steps[0]
    return step if isinstance(step, Work) and step.places and isinstance(step.places[0], Next) else None


def _settled(subject: Subject, stitch: Stitch) -> bool:
    """Whether `turning chains` says that the chain of that stitch doesn't count."""
    for name, counts in subject.pattern.turning_chains.items():
        tally, _ = notation.parse_count(f"1 {name}", subject.work.vocabulary) if name else (None, ())
        named = tally.entries[0][1] if tally is not None and tally.entries else None
        said = not name or (
            isinstance(named, Stitch) and (named.kind, named.name) == (stitch.kind, stitch.name)
        )
        if said and not counts:
            return True
    return False


def _usual_chain(kind: str) -> int | None:
    return next(
        (row.turning_chain for row in trade.stitches() if row.key == kind and row.turning_chain != 1), None
    )


def _counts(sizes: Sequence[WorkedRound | None]) -> bool:
    """Whether the chain was counted as a stitch when the round was worked."""
    return any(getattr(made, "role", "") == "turning" for size in sizes if size for made in size.made[:1])


RULE = rule(__name__, __doc__, "note", find)
