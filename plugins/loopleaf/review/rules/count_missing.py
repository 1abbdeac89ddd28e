"""A round has more or fewer stitches than the one before it, and doesn't say how many.

What: A round or row that increases or decreases states no `count`.

Why it matters: What isn't stated can't be checked: a repeat too many in such a round shows only later, or
never. And a maker who can't count at the end of the round doesn't know whether to go on.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join"}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}

When to ignore: Where the number doesn't matter. The page then gives the count that was worked out, marked as
such. It is said once a pattern, for the first such round.
"""

from collections.abc import Iterator

from ...pattern import Finding, Suggestion
from ..names import in_sizes
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    for piece in subject.work.pieces:
        before: list[int | None] | None = None
        for round in piece.rounds:
            counts = [size.count if size else None for size in round.sizes]
            changes = before is not None and counts != before
            before = counts
            if not changes or round.stated is not None or round.plan.by_rule or not any(counts):
                continue
            made = [count if count is not None else "-" for count in counts]
            text = str(made[0]) if len(set(made)) == 1 else in_sizes(made)
            words = Words(
                message=f"{round.plan.word.capitalize()} {round.plan.label} changes the number of stitches "
                "and doesn't say how many there are.",
                working="Without a count a mistake in this line has nothing to contradict.",
                suggestion=Suggestion(f"If the line is right, add `count: {text}`.", None, "fill-in"),
            )
            at = subject.stretch(round)
            yield told(__name__, "note", subject, at, words, piece.name, round.plan.label)
            return


RULE = rule(__name__, __doc__, "note", find, of_sound_work=True)
