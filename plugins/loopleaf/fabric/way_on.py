"""How the next round goes on, where that isn't the piece's own way: around behind a row that was joined, and
back and forth behind a round that was turned short of its end."""

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
    A round that turns back before its end begins a flap of rows (a heel), until a round is joined again or
    goes on along the flap's side.
    """
    hand = attempt.hand
    turned = hand.turned or (attempt.stuck and survey.turns_at_its_end(steps))
    joined = hand.joined or (attempt.stuck and survey.joins(steps))
    if own == "rows":
        closed = joined and not all(one.joined for one in done)
        return "joined rounds" if not turned and (closed or now != own) else own
    if now == "rows":
        return own if joined or hand.way_round is not None else now
    return "rows" if turned and not joined and hand.left_places else own
