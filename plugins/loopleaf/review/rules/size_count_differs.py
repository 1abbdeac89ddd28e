"""A list of numbers has more or fewer entries than the pattern has sizes.

What: `40 (48, 56)` gives one number a size; with three sizes there must be three, or a single one that serves all.

Why it matters: From that place on a maker reads the numbers of another size.

Wrong:

    sizes: [S, M, L]
    rounds:
      - {round: 1, work: "ch 1, 8 (10) sc in ring, join"}

Right:

    sizes: [S, M, L]
    rounds:
      - {round: 1, work: "ch 1, 8 (10, 12) sc in ring, join"}

When to ignore: Never; write `-` where a size has none.
"""

from ...pattern import Suggestion
from ..names import number_of
from ..rule import Words, fit_rule
from ..subject import Met


def words(met: Met) -> Words:
    sizes, numbers = met.facts["sizes"], met.facts["numbers"]
    count = sizes if isinstance(sizes, int) else len(sizes)
    given = numbers if isinstance(numbers, int) else len(numbers)
    return Words(
        message=f"{met.quoted} gives {number_of(given, 'number')} for {number_of(count, 'size')}.",
        working=f"The sizes are {', '.join(met.subject.sizes)}." if met.subject.sizes else "The pattern has no sizes.",
        suggestion=Suggestion("Give one number a size, with “-” where a size has none.", None, "fill-in"),
    )


RULE = fit_rule(__name__, __doc__, "error", words)
