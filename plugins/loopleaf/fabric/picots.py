"""Picots in words: `ch 3, sl st in 3rd ch from hook`, `ch 3, sl st in last sc made`."""

from dataclasses import replace

from ..notation.tree import (
    ONE,
    STITCH,
    Amount,
    Chain,
    ChainOf,
    Each,
    First,
    FromHook,
    Group,
    Join,
    JustMade,
    Last,
    Line,
    Next,
    OtherSide,
    Passage,
    Repeat,
    Same,
    Step,
    Stitch,
    Target,
    Together,
    Work,
)
from .hand import Hand
from .seek import describe
from .stitches import plain_kinds
from .survey import into_ring
from .worked import Made

LONGEST_PICOT = 5
"""Chains: what is longer and not called a picot is a loop. From memory of edgings in print."""

_MAKES = Work | Group | Repeat | Passage | Together


def with_picots(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """The steps, each such ring within a round read as the picot that it is; the same steps where none is.

    A ring sits on the stitch before it. One that nothing stands before, or whose chains are worked into
    afterwards, stays a chain worked back on.
    """
    return _read(steps, False)


def as_defined(line: Line, name: str) -> Line:
    """A stitch of the author's own, each ring in it read as the picot that it is. name: what it is called.

    One that is nothing but a ring sits on whatever stands before it; closed in the `same st` it is a picot
    where it is called so or is no longer than picots are.
    """
    steps = _closed(line.steps)
    match steps:
        case (Group(steps=inner, places=(Next(span=None) as unsaid,)),) if unsaid == Next():
            picots = as_defined(Line(inner), name).steps
            if all(isinstance(one, Work) and one.stitch.form == "picot" for one in picots):
                return Line(picots)
        case (Chain(length=length, counts=None), Work(stitch=slip, each=each, places=(place,))):
            chains = length.of(0) or 0
            picot = _picot(steps[0], steps[1:], True)
            small = "picot" in name.lower() or chains <= LONGEST_PICOT
            if slip.kind == "slip" and each == ONE and chains > 1 and small and isinstance(place, Same):
                picot = Work(Stitch("chain", "picot", chains), places=(), span=steps[0].span)
            if picot is not None:
                return Line((replace(picot, places=()),))
    if into_ring(steps):  # the ring is what the rest goes into
        return line
    read = _read(steps, True, True)
    return line if read is line.steps else Line(read)


def _closed(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """`ch 3, join with sl st in first ch`, where no round is joined: the slip stitch that closes the ring."""
    if not any(isinstance(step, Join) for step in steps[1:]):
        return steps
    return tuple(
        Work(step.stitch, places=(step.place,), span=step.span)
        if isinstance(step, Join) and isinstance(before, Chain) and step.place is not None
        else step
        for before, step in zip((None, *steps), steps, strict=False)
    )


def _read(steps: tuple[Step, ...], begun: bool, inside: bool = False) -> tuple[Step, ...]:
    found: list[Step] = []
    at = 0
    while at < len(steps):
        step, behind = steps[at], steps[at + 1 : at + 3]
        picot = _ring(step, behind, inside) if begun else ()
        if picot:
            found += picot
            at += 2
            continue
        if isinstance(step, Repeat):
            if step.ending and (picot := _ring(step.ending[-1], behind, True)):
                step = replace(step, ending=(*step.ending[:-1], *picot))
                at += 1
            step = _repeat(step, begun)
        elif isinstance(step, Group | Passage):
            inner = _read(step.steps, begun or isinstance(step, Group), True)
            step = replace(step, steps=inner) if inner is not step.steps else step
        begun = begun or isinstance(step, _MAKES)
        found.append(step)
        at += 1
    return tuple(found) if _other(found, steps) else steps


def _repeat(step: Repeat, begun: bool) -> Repeat:
    stop = len(step.steps) if step.stop_at is None else step.stop_at
    before = _read(step.steps[:stop], begun, True)
    inner = before + _read(step.steps[stop:], True, True)
    ending, omitting = _read(step.ending, True, True), _read(step.omitting, True, True)
    if not _other(inner, step.steps) and ending is step.ending and omitting is step.omitting:
        return step
    stop_at = None if step.stop_at is None else len(before)
    return replace(step, steps=inner, stop_at=stop_at, ending=ending, omitting=omitting)


def _other(found: tuple[Step, ...] | list[Step], steps: tuple[Step, ...]) -> bool:
    return len(found) != len(steps) or any(one is not was for one, was in zip(found, steps, strict=True))


def _picot(step: Step, behind: tuple[Step, ...], inside: bool) -> Work | None:
    """The picot that a chain and the slip stitch behind it are; None for anything else."""
    match step, *behind:
        case [Chain(length=length, counts=None), Work(stitch=slip, each=each, places=(place,)), *after]:
            chains = length.of(0) or 0
            if slip.kind != "slip" or each != ONE or chains < 2 or (after and _into_chains(after[0])):
                return None
            closes = (
                place in (FromHook(chains), ChainOf(1, "ch", chains))
                or isinstance(place, JustMade)
                or ((inside or bool(after)) and place == First(ONE, Target("chain")))
                or (inside and isinstance(place, Last) and place.count == ONE)
            )
            on = (JustMade(place.target, span=place.span),) if isinstance(place, JustMade | Last) else ()
            return Work(Stitch("chain", "picot", chains), places=on, span=step.span) if closes else None
    return None


def _ring(step: Step, behind: tuple[Step, ...], inside: bool) -> tuple[Step, ...]:
    """What a chain and the slip stitch behind it are where they close a ring; () for anything else."""
    picot = _picot(step, behind, inside)
    return (picot,) if picot is not None else _on_the_way(step, behind)


def _on_the_way(step: Step, behind: tuple[Step, ...]) -> tuple[Step, ...]:
    """`ch 5, sl st in 3rd ch from hook, ch 2`: the last three chains are a picot on those before it; () for
    anything else."""
    match step, *behind:
        case [
            Chain(length=length, counts=None) as begun,
            Work(stitch=Stitch(kind="slip"), each=each, places=(FromHook(number=number),)) as slip,
            Chain() | Work() as after,
        ]:
            chains = length.of(0) or 0
            told = each == ONE and not length.varies and 2 < number < chains and number <= LONGEST_PICOT
            if told and not _into_chains(after):
                way = replace(begun, length=Amount((chains - number,)))
                return (way, Work(Stitch("chain", "picot", number), places=(), span=slip.span))
    return ()


def stands_on(hand: Hand, place: JustMade) -> None:
    """Whether the stitch that a picot is said to close on (`in last sc`) is the one just made."""
    named = place.target.stitch
    last = next((one for one in reversed(hand.made) if isinstance(one, Made) and one.number), None)
    if named is None or last is None or last.form or last.special or last.role != "stitch":
        return
    plain = plain_kinds()
    if named.form or named.kind not in plain or last.kind not in plain or named.kind == last.kind:
        return
    raise hand.stuck("no-such-place", place.span, what=describe(place.target), there=[], made=last.kind)


def _into_chains(step: Step) -> bool:
    """Whether a step goes on along the chain."""
    if isinstance(step, OtherSide):
        return True
    places = step.places if isinstance(step, Work | Group) else ()
    return any(
        (isinstance(place, Next) and place.target.kind == "chain")
        or (isinstance(place, Each) and place.targets != (STITCH,) and place.targets[0].kind == "chain")
        for place in places
    )
