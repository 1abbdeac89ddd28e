"""Which of the techniques that are drawn step by step a worked pattern uses."""

from collections import Counter
from collections.abc import Iterator

from ..fabric import Made, PatternWork, PieceWork, Ring, RoundWork, Space, WorkedRound
from ..fabric.survey import walk
from ..notation.tree import FastenOff, Next, Skipped, Work

_FAN, _GROUP = 4, 2
"""So many stitches in one place are a fan, fewer where they are one of the author's groups."""

_GATHERED = ("cluster", "bobble")

_DRAWN_AS = {
    "extended-single": "extended", "extended-half": "extended", "extended-double": "extended",
    "linked-double": "linked", "linked-treble": "linked", "reverse-single": "reverse",
    "quadruple-treble": "triple-treble", "foundation-single": "foundation", "foundation-half": "foundation",
    "foundation-double": "foundation",
}  # fmt: skip
"""Stitches that are drawn with others of their make."""

_RINGS = {"magic": "ring", "chain": "chain-ring"}


def drawn_as(stitch: str) -> str:
    """The key of the technique that shows a stitch, if any does. stitch: a key of trade/stitches.yml."""
    return _DRAWN_AS.get(stitch, stitch)


def uses(work: PatternWork) -> frozenset[str]:
    """The keys of `steps.yml` that the stitches, the rounds and the finishing call for, in any size."""
    found: set[str] = set()
    for piece in work.pieces:
        told = set(_told(piece))
        found |= set(_in_a_piece(work, piece)) - ({"decrease"} if "invisible-decrease" in told else set())
        found |= told
    for step in work.pattern.finishing:
        found |= {"cord"} if step.thread is not None else set()
        found |= {"sew"} if step.sew is not None else set()
    return frozenset(found)


def _in_a_piece(work: PatternWork, piece: PieceWork) -> Iterator[str]:
    model = work.pattern.pieces[piece.name]
    if model.worked == "chain" or (model.start is not None and model.start.chain is not None):
        yield from ("slip-knot", "chain")
    yarns: set[str] = set()
    for one in piece.rounds:
        if one.joined:
            yield "join"
        if _spikes(one):
            yield "spike"
        for worked in one.sizes:
            if worked is not None:
                yield from _in_a_round(worked)
                yarns |= {made.yarn for made in worked.made}
    if len(yarns) > 1:
        yield "change"


def _told(piece: PieceWork) -> Iterator[str]:
    """What the lines say and the stitches made don't show; `decrease` where one is of the plain kind."""
    for one in piece.rounds:
        for step in walk(one.settled.steps) if one.settled is not None else ():
            if isinstance(step, FastenOff):
                yield "fasten-off"
            if not isinstance(step, Work):
                continue
            if step.stitch.kind == "dec" or step.stitch.form == "tog":
                yield "invisible-decrease" if step.stitch.invisible else "decrease"
            if any(isinstance(place, Skipped) for place in step.places):
                yield "cross"


def _spikes(one: RoundWork) -> bool:
    """Whether it goes into stitches further down, as its line says; a loop left free there is no spike."""
    return one.settled is not None and any(
        isinstance(place, Next) and place.below > 1 and not step.stitch.post and not step.stitch.loop
        for step in walk(one.settled.steps)
        if isinstance(step, Work)
        for place in step.places
    )


def _in_a_round(worked: WorkedRound) -> Iterator[str]:
    shared: Counter[int] = Counter()
    fans: Counter[tuple[int, int]] = Counter()
    for made in worked.made:
        if isinstance(made, Space):
            yield "chain"
            continue
        yield from _in_a_stitch(made)
        if made.number and len(made.into) == 1 and isinstance(made.into[0], Made) and not made.unit:
            shared[id(made.into[0])] += 1
        elif made.unit and len(made.into) == 1:
            fans[made.unit, id(made.into[0])] += 1
    if any(number > 1 for number in shared.values()):
        yield "increase"
    if max(shared.values(), default=0) >= _FAN or max(fans.values(), default=0) >= _GROUP:
        yield "group"


def _in_a_stitch(made: Made) -> Iterator[str]:
    if made.role == "picot":
        yield "picot"
    if made.role in ("turning", "chain", "picot"):
        yield "chain"
        return
    if made.role != "join":
        yield drawn_as(made.kind)
    if made.form == "tog":
        yield "decrease"
    elif made.form in _GATHERED:
        yield "cluster"
    elif made.form in ("puff", "popcorn"):
        yield made.form
    if made.loop in ("front", "back"):
        yield f"{made.loop}-loop"
    if made.post:
        yield f"{made.post}-post"
    for place in made.into:
        if isinstance(place, Ring) and place.kind in _RINGS:
            yield _RINGS[place.kind]
        elif isinstance(place, Space):
            yield "space"
        elif isinstance(place, Made) and place.kind == "chain" and place.round < 0:
            yield "into-chain"
