"""The troubles that a round meets, each kept once."""

from .doubted_chain import FIT
from .worked import RoundWork, Trouble

OPEN = ("repeat-unclear", "turning-chain-unclear", "turning-chain-contradicted", "inc-unclear")
"""Troubles of reading: over an edge in doubt they say nothing of the line itself."""

WRONG = (*FIT, *OPEN, "count-differs")
"""Troubles that may be due to what the round is worked into, and that leave open what it makes."""


def add(result: RoundWork, trouble: Trouble) -> None:
    """Keep a trouble once in each size that meets it; what is one mistake in a size shows otherwise in
    another."""
    for other in result.troubles:
        if other.size == trouble.size and (other.rule, other.span) == (trouble.rule, trouble.span):
            return
        if other.size == trouble.size and other.facts.get("on_the_way") and trouble.rule in WRONG:
            return  # the round is out by what was passed over
        if (
            other.size != trouble.size
            and other.rule != trouble.rule
            and {other.rule, trouble.rule} <= {*WRONG}
        ):
            return
    result.troubles.append(trouble)
