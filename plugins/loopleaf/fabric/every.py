"""Stitches whose kind the round or what is below settles: the plain ones of `inc in every 3rd st around`, and
`work even`."""

from dataclasses import replace

from ..notation.tree import STITCH, Amount, Each, Next, Repeat, Step, Stitch, Work
from .hand import Hand
from .stitches import plain_kinds
from .worked import Made


def with_plain_between(hand: Hand, step: Step) -> Repeat | None:
    """The repeat that such a step is short for, `(sc in next 2 sts, inc) around`; None for any other.

    None too where the kind of the plain stitches isn't settled.
    """
    match step:
        case Work(stitch=Stitch(kind="inc"), places=(Each(targets=(target,), every=every, until=until),)):
            kind = _kind(hand)
            if every < 2 or target != STITCH or not kind:
                return None
            plain = Work(
                Stitch(kind, loop=step.stitch.loop), places=(Next(Amount((every - 1,))),), span=step.span
            )
            whole = replace(until, word=until.word or ("across" if hand.setting.rows else "around"))
            return Repeat((plain, replace(step, places=(Next(),))), until=whole, span=step.span)
    return None


def as_below(hand: Hand, step: Step) -> Step:
    """`work even` with the kind of stitch that it means; any other step as it is."""
    if not isinstance(step, Work) or step.stitch.kind or step.stitch != Stitch(""):
        return step
    kind = _kind(hand)
    if not kind or kind not in plain_kinds() - {"chain", "slip"}:
        below = {place.kind for place in hand.edge.places if isinstance(place, Made)}
        raise hand.stuck("inc-unclear", step.span, kinds=sorted(below - {"chain", "slip"}), which="even")
    return replace(step, stitch=Stitch(kind))


def _kind(hand: Hand) -> str:
    """The round's only kind, else that of all stitches below."""
    below = {place.kind if isinstance(place, Made) else "" for place in hand.edge.places}
    return hand.setting.only_kind or (below.pop() if len(below) == 1 else "")
