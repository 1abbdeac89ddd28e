"""What a line, or the one after it, says of the things that are made: read before the hook moves."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from loopleaf.notation.tree import (
    ONE,
    Amount,
    Chain,
    ChainOf,
    Each,
    First,
    FreeLoops,
    Group,
    Here,
    JoinYarn,
    Last,
    Next,
    Over,
    Passage,
    Place,
    Repeat,
    Same,
    Skip,
    Step,
    Target,
    Until,
    Within,
    Work,
)

from .cells import CannotSay


def named_spaces(steps: Sequence[Step], first: Sequence[Step], foundation: bool) -> frozenset[int]:
    """Lengths of the spaces that a row names, without those that the row below makes of its own chains.

    steps: of the row that names them. first: of the row below. foundation: whether that one is the first;
    the blocks of later rows have chains as long as the skipped ones.
    """
    named = {target.length for target in targets(steps) if target.kind == "space" and target.length}
    if not foundation:
        return frozenset(named)
    made = {length for chain in chains_in(first) for length in chain.length.sizes if length}
    return frozenset(named - made)


def in_blocks(steps: Sequence[Step]) -> bool:
    """Whether a row goes from corner to corner: blocks fastened to spaces and begun there by a chain."""
    if chain_on_the_way(steps):
        return in_blocks(steps[1:])
    for at, step in enumerate(steps):
        follow = steps[at + 1 : at + 3]
        match step:
            case Group(steps=(Work() as slip, Chain(counts=None), Work(), *_)):
                if _is_slip_into(slip, Here) and _goes_into_spaces(step.places):
                    return True
            case Work() if _is_slip_into(step, Next) and _goes_into_spaces(step.places):
                chain = follow[0] if len(follow) == 2 else None
                if isinstance(chain, Chain) and chain.counts is None and chain.length != ONE:
                    return at > 0 or isinstance(follow[1], Work)
            case Repeat():
                if in_blocks(step.steps):
                    return True
    return False


def chain_on_the_way(steps: Sequence[Step]) -> bool:
    """`ch 1, sl st in first ch-3 sp, ch 1, sc in same sp`: the row begins with the second chain."""
    match steps:
        case (Chain(counts=None) as own, Work(places=(First() | Next() as place,)) as slip, Chain(), *rest):
            back = rest[0] if rest else None
            there = _is_slip_into(slip, type(place)) and place.target.kind == "space"
            if own.length == ONE and there and isinstance(back, Work):
                return all(isinstance(again, Same) for again in back.places)
    return False


def _is_slip_into(step: Work, place: type[Here | Next | First]) -> bool:
    return step.stitch.kind == "slip" and all(isinstance(one, place) for one in step.places)


def _goes_into_spaces(places: Sequence[Place]) -> bool:
    """Whether the last of these places is a space; what lies before it is gone over."""
    return all(target.kind == "space" for place in places[-1:] for target in of_place(place))


def free_loops(steps: Sequence[Step]) -> tuple[str, int] | None:
    """Which loops, of which round, a line goes into; None where it goes into an edge as ever, at least at
    first. 0: not said.
    """
    said = [(step.loop, step.round) for step in steps if isinstance(step, FreeLoops)]
    there = list(targets(steps))
    loops = [target for target in there if target.kind == "free-loop"]
    said += [(target.loop, target.round) for target in loops]
    if not said:
        return None
    if len({round for _, round in said}) > 1 or len({loop for loop, _ in said if loop}) > 1:
        raise CannotSay("loops left free of several rounds in the same line")
    if any(isinstance(step, FreeLoops) for step in steps):
        return max(said)
    of_steps = [{target.kind == "free-loop" for target in _of_an_edge((step,))} for step in steps]
    in_order = [kinds for kinds in of_steps if kinds]
    if in_order[0] == {True} == in_order[-1] and {False} not in in_order:
        return max(said)
    if in_order != sorted(in_order, key=lambda kinds: True in kinds) or {True, False} in in_order:
        raise CannotSay("loops left free, and then other places in the same line")
    return None


def _of_an_edge(steps: Sequence[Step]) -> Iterator[Target]:
    return (target for target in targets(steps) if target.kind != "chain")


def all_below(steps: Sequence[Step]) -> int:
    """How many rounds further down each stitch of a line goes; 0 where they don't all go so."""
    found = {below for step in steps for below in _belows(step)}
    return found.pop() if len(found) == 1 else 0


def _belows(step: Step) -> Iterator[int]:
    match step:
        case Work() | Group():
            yield from (place.below if isinstance(place, Next) else 0 for place in step.places)
        case Repeat():
            for one in (*step.steps, *step.ending):
                yield from _belows(one)


def targets(steps: Sequence[Step]) -> Iterator[Target]:
    """Every kind of place that some steps name."""
    for step in steps:
        match step:
            case Work():
                for place in step.places:
                    yield from of_place(place)
            case JoinYarn():
                if step.place is not None:
                    yield from of_place(step.place)
            case Group():
                for place in step.places:
                    yield from of_place(place)
                yield from (one for one in targets(step.steps))
            case Repeat():
                yield from targets(step.steps)
                yield from targets(step.ending)
            case Passage():
                yield from targets(step.steps)


def of_place(place: Place) -> tuple[Target, ...]:
    match place:
        case Each():
            return place.targets
        case Next() | First() | Last() | Over():
            return (place.target,)
        case Within():
            return (place.of,)
    return ()


def chains_in(steps: Sequence[Step]) -> Iterator[Chain]:
    for step in steps:
        match step:
            case Chain():
                yield step
            case Group() | Repeat() | Passage():
                yield from chains_in(step.steps)


def names_chains(steps: Sequence[Step]) -> bool:
    """Whether a line goes into single chains, or skips some: of an arch, of a turning chain, or of one that
    it makes.
    """
    return any(target.kind == "chain" for target in (*targets(steps), *_skipped(steps)))


def _skipped(steps: Sequence[Step]) -> Iterator[Target]:
    for step in steps:
        match step:
            case Skip():
                yield step.target
            case Repeat() | Passage():
                yield from _skipped(step.steps)


def leaves_the_chain(step: Step, rest: Sequence[Step]) -> bool:
    """`dc in each dc across, dc in top of tch`, `dc in last dc, dc in top of tch`: the chain is named, so it
    isn't among the stitches; nor is it where a row goes as far as just that last dc.
    """
    follow = rest[0] if rest else None
    kept = _kept_for_last(step)
    if kept is not None:
        return follow is not None and in_the_last(follow) == kept and leaves_the_chain(follow, rest[1:])
    up_to_it = isinstance(step, Work) and step.places != () and isinstance(step.places[-1], Each)
    if not up_to_it and in_the_last(step) is None:
        return False
    return isinstance(follow, Work) and follow.places != () and isinstance(follow.places[0], ChainOf)


def in_the_last(step: Step) -> tuple[Amount, Target] | None:
    """How many places at the row's end a step goes into, or skips, by the word `last`; None if it doesn't."""
    match step:
        case Work(places=(*_, Last(count=count, target=target))):
            return count, target
        case Work(places=(*_, Over(which="last", count=count, target=target))):
            return count, target
        case Skip(which="last", count=count, target=target):
            return count, target
    return None


def _kept_for_last(step: Step) -> tuple[Amount, Target] | None:
    match step:
        case Work(places=(*_, Each(until=Until(kind="to-last", count=count, target=target)))):
            return count, target
        case Repeat(until=Until(kind="to-last", count=count, target=target)):
            return count, target
    return None


def bridges(steps: Sequence[Step]) -> Iterator[tuple[Chain, Skip]]:
    """Chains with what they pass below them, `ch 2, sk 2 chs`, in the repeats of a line."""
    for step in steps:
        if isinstance(step, Repeat):
            for chain, skip in pairwise(step.steps):
                if isinstance(chain, Chain) and isinstance(skip, Skip):
                    yield chain, skip


def in_one_place(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """`5 dc in next st` as a stitch of one's own goes where the stitch is told to go."""
    if len(steps) == 1 and isinstance(steps[0], Work | Group) and steps[0].places == (Next(),):
        return (replace(steps[0], places=(Same(),)),)
    return steps


def picots_in(steps: Sequence[Step]) -> Iterator[int]:
    """The chains of every picot of a line."""
    for step in steps:
        match step:
            case Work():
                if step.stitch.form == "picot":
                    yield step.stitch.number
            case Group() | Repeat() | Passage():
                yield from picots_in(step.steps)


def named_in(steps: Sequence[Step]) -> Iterator[str]:
    """The author's own stitches that some steps name."""
    for step in steps:
        match step:
            case Work():
                if step.stitch.kind == "special":
                    yield step.stitch.name
            case Group() | Repeat():
                yield from named_in(step.steps)
