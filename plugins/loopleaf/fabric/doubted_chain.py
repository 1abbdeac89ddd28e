"""Whether a round's beginning chain may be the cause of what doesn't work out."""

from ..notation.tree import Tally
from .hand import Hand
from .worked import Made, Space, Trouble

FIT = ("repeat-does-not-fit", "works-past-the-end", "stitches-left-over", "no-such-place", "join-misses")
"""Troubles of the fit, which a different reading of the beginning chain may mend."""


def may_be_the_cause(hand: Hand, trouble: Trouble, stated: Tally | None) -> bool:
    """Whether the beginning chain may be the cause of a trouble.

    A lone ch 1 that doesn't count is what everyone takes it for: it is doubted only where fit and
    stated count are both mended by it. A centre or corner missed by one says nothing of it.
    """
    question = hand.chain_question
    if trouble.facts.get("on_the_way") or _is_said_to_open_an_arch(hand):
        return False
    if question is None or question.chains > 1 or question.counts:
        return True
    return stated is not None and trouble.rule in FIT


def _is_said_to_open_an_arch(hand: Hand) -> bool:
    """Whether the line says itself that its first chain is a stitch and a space: `ch 5 (counts as dc, ch 2)`
    is never meant to count for nothing."""
    question = hand.chain_question
    match hand.made[:2]:
        case [Made(role="turning"), Space()]:
            return question is not None and question.by == "said"
    return False


def is_by_one_stitch(trouble: Trouble) -> bool:
    """Whether a round is out by no more than a stitch."""
    difference = trouble.facts.get("difference", trouble.facts.get("left", 1))
    return trouble.rule in (*FIT, "count-differs") and isinstance(difference, int) and abs(difference) <= 1
