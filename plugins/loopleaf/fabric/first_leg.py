"""A first cluster whose first leg is the beginning chain: `ch 3, dc2tog, (ch 3, dc3tog) x 5` in a ring."""

from collections.abc import Iterator
from dataclasses import replace

from ..notation.tree import Chain, CountsAs, Group, Join, Next, Passage, Repeat, Step, Stitch, Work
from ..notation.tree import First as FirstPlace

FORMS = ("tog", "cluster")
SHORTEST = 2
"""A ch 1 is no leg."""


def with_first_leg(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """The steps, where the stitch behind the beginning chain has one leg fewer than another of its kind: said
    to count as that one. The same steps where there is none, or where they say what counts.
    """
    for at, step in enumerate(steps):
        match step:
            case Work(stitch=stitch) if stitch.kind == "slip":
                continue
            case Work() | Repeat() | Passage() | Join():
                return steps
            case Group(steps=inside):
                led = _led(inside, steps)
                return steps if led is None else (*steps[:at], replace(step, steps=led), *steps[at + 1 :])
            case Chain():
                led = _led(steps[at:], steps)
                return steps if led is None else _renamed((*steps[:at], *led), step, led)
    return steps


def with_first_pair(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """`ch 2, dc in next st, (ch 3, dc2tog) x 5`: the chain and the stitch behind it said to be one of the
    line's decreases. The same steps where they can't be.
    """
    match steps:
        case (Chain() as chain, Work(stitch=Stitch(form="", post="")), *_):
            led = _counting(steps, steps, "tog", 2)
            return steps if led is None else _renamed(led, chain, led)
    return steps


def _led(steps: tuple[Step, ...], line: tuple[Step, ...]) -> tuple[Step, ...] | None:
    """Steps that begin with the chain and the lesser stitch, that one said to be whole; else None."""
    match steps:
        case (Chain(), Work(stitch=lesser), *_) if lesser.form in FORMS:
            return _counting(steps, line, lesser.form, lesser.number + 1)
    return None


def _counting(
    steps: tuple[Step, ...], line: tuple[Step, ...], form: str, number: int
) -> tuple[Step, ...] | None:
    """Steps whose second is said to count as such a stitch; None where the line has none, or says what
    counts."""
    match steps:
        case (Chain(length=length, counts=None) as chain, Work(stitch=lesser, counts=counts) as work, *rest):
            if counts is not None and not _is_called_a_cluster(counts):
                return None
            whole = replace(lesser, form=form, number=number)
            if (length.of(0) or 0) >= SHORTEST and whole in _gathered(line):
                return (chain, replace(work, counts=CountsAs(stitch=whole)), *rest)
    return None


def _is_called_a_cluster(counts: CountsAs) -> bool:
    """`(counts as cluster)`: as one of the others, of so many legs as they have."""
    stitch = counts.stitch
    return stitch is not None and not stitch.kind and stitch.form in FORMS and not stitch.number


def _renamed(steps: tuple[Step, ...], chain: Chain, led: tuple[Step, ...]) -> tuple[Step, ...]:
    """A join to the lesser stitch by its name (`join to dc2tog`) goes to the whole one that it has become."""
    match led:
        case (_, Work(stitch=lesser, counts=CountsAs(stitch=Stitch() as whole)), *_):
            return tuple(_join(step, lesser, whole) for step in steps)
    return steps


def _join(step: Step, lesser: Stitch, whole: Stitch) -> Step:
    match step:
        case Join(place=FirstPlace(target=target) as place) if target.stitch == lesser:
            return replace(step, place=replace(place, target=replace(target, stitch=whole)))
        case Work(places=(Next(target=target) as place,)) if target.stitch == lesser:
            return replace(step, places=(replace(place, target=replace(target, stitch=whole)),))
    return step


def _gathered(steps: tuple[Step, ...]) -> Iterator[Stitch]:
    for step in steps:
        if isinstance(step, Work):
            yield step.stitch
        elif isinstance(step, Group | Repeat | Passage):
            yield from _gathered(step.steps)
            if isinstance(step, Repeat):
                yield from _gathered(step.ending)
