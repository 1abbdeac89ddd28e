"""Chains caught on their way to the arch of an earlier row: the loops of a lace tape."""

from ..notation.tree import Next, Step, Stitch, Work
from .edge import Edge
from .hand import Hand
from .worked import Space


def caught_in(hand: Hand, step: Step | None) -> Space | None:
    """The arch that `sl st in ch-5 sp of row 2` or `sl st in ch-5 loop 2 rows below` is made in; None for any
    other step.

    In rows alone, where the line goes on along its own edge. Of several such the next that isn't caught yet,
    from the edge that the row begins at.
    """
    match step:
        case Work(stitch=Stitch(kind="slip"), places=(Next(target=target, below=below) as place,)):
            pass
        case _:
            return None
    if not hand.setting.rows or hand.depth or hand.on_round is not None or place.skipped or place.piece:
        return None
    if target.kind not in ("space", "loop") or target.unworked or not (target.round or below > 1):
        return None
    now = hand.setting.index
    at = (
        now - below
        if below > 1
        else next((i for i, one in enumerate(hand.earlier) if one.plan.number == target.round), -1)
    )
    worked = hand.earlier[at].sizes[hand.setting.size] if 0 <= at < now - 1 else None
    if worked is None:
        return None
    edge = Edge(worked.edge[::-1] if (now - at) % 2 == 0 else list(worked.edge))
    taken = {id(slip.into[0]) for slip in hand.joining}
    there = [one for one in edge.places if isinstance(one, Space) and id(one) not in taken]
    return next((one for one in there if target.length in (0, one.chains)), None)
