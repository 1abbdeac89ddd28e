"""The number of chains isn't the multiple that the pattern gives.

What: `start: {chain: 30, multiple: 14, plus: 2}` says that the chains come to so many times 14, and 2 more,
every chain counted.

Why it matters: The multiple is what a maker uses to make the piece wider; it has to hold for the piece as
written.

Wrong:

    worked: rows
    start: {chain: 31, multiple: 14, plus: 2}
    rows:
      - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn"}

Right:

    worked: rows
    start: {chain: 30, multiple: 14, plus: 2}
    rows:
      - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn"}

When to ignore: Never. A book's “multiple of 14 sts + 1 (add 1 for the base chain)” is `multiple: 14, plus:
2` here.
"""

from ...pattern import Suggestion
from ..names import listed
from ..rule import Words, fit_rule
from ..subject import Met


def words(met: Met) -> Words:
    facts = met.facts
    chains, multiple, plus = facts["chains"], facts["multiple"], facts["plus"]
    nearest = [str(number) for number in facts["nearest"]]
    also = f" plus {plus}" if plus else ""
    return Words(
        message=f"{chains} chains are not a multiple of {multiple}{also}.",
        working=f"{chains} − {plus} = {chains - plus}, and {chains - plus} ÷ {multiple} leaves "
        f"{(chains - plus) % multiple}.",
        suggestion=Suggestion(f"The nearest that fit are {listed(nearest)}.", None, "fill-in")
        if nearest
        else None,
    )


RULE = fit_rule(__name__, __doc__, "error", words)
