"""How the next round goes on, where that isn't the piece's own way: around behind a row that was joined."""

from collections.abc import Sequence

from ..notation.tree import Step
from . import survey
from .round import Attempt
from .worked import RoundWork


def worked_next(
    own: str, now: str, attempt: Attempt, steps: tuple[Step, ...], done: Sequence[RoundWork]
) -> str:
    """How the round behind one is worked. own: the piece's way of working. now: that of the round itself.
    done: the rounds before it.

    A row that was joined is gone around from there, without a turn unless it says so (common practice, no
    source): the second round of a border. Where each row is joined, the piece isn't worked in rows at all.
    """
    hand = attempt.hand
    turned = hand.turned or (attempt.stuck and survey.turns_at_its_end(steps))
    joined = hand.joined or (attempt.stuck and survey.joins(steps))
    if own == "rows":
        closed = joined and not all(one.joined for one in done)
        return "joined rounds" if not turned and (closed or now != own) else own
    return own
