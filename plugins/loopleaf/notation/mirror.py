"""The same row from its other end: `reversed: true`, “reversing all shaping”.

The steps are worked in the opposite order, so that what stood at the row's beginning stands at its end. A
beginning chain that counts as a stitch becomes a plain last stitch, and the row's last stitch the chain.
"""

from collections.abc import Iterable
from dataclasses import replace
from typing import Literal

from .counting import NONE, minus_one, places_of, plus
from .tree import (
    ONE,
    STITCH,
    Amount,
    Chain,
    ChainOf,
    CountsAs,
    Each,
    FastenOff,
    First,
    Group,
    Here,
    Join,
    JoinYarn,
    Last,
    Line,
    Marker,
    Next,
    Over,
    Place,
    Repeat,
    Same,
    Skip,
    Step,
    Stitch,
    Tally,
    Turn,
    Until,
    Work,
    Yarn,
)

_BEFORE = (Turn, Yarn, JoinYarn, Marker)
_AFTER = (Turn, Join, FastenOff, Marker, Tally, Yarn)


class CannotMirrorError(Exception):
    """A row whose other end its words don't settle; `step` is the first step that leaves it open."""

    def __init__(self, step: Step | None) -> None:
        super().__init__("cannot be mirrored")
        self.step = step


def mirrored(line: Line, stands: Stitch | None) -> Line:
    """The line from its other end.

    stands: the stitch that an unsaid beginning chain is, None where it is none. Raises CannotMirrorError
    where the words don't settle what stands at the other end (crossed stitches, leaves, stitches left …).
    """
    steps = list(line.steps)
    before = _cut(steps, _BEFORE)
    after = _cut(steps[::-1], _AFTER)[::-1]
    steps = steps[len(before) : len(steps) - len(after)]
    if _is_even(steps):
        return line
    chain, whole = _with_its_first(steps, stands)
    if after and isinstance(after[0], Turn) and steps and isinstance(steps[-1], Chain):
        after.insert(0, whole.pop())
    turned = _turned(whole)
    if chain is not None:
        turned = _begun(chain, turned)
    return Line((*before, *_to_their_ends(turned), *after))


def _is_even(steps: list[Step]) -> bool:
    """Whether a row is one plain stitch all along, so that both its ends are alike."""
    kinds: set[Stitch] = set()
    for at, step in enumerate(steps):
        if isinstance(step, Chain) and at == 0:
            if step.counts is not None and step.counts.stitch is not None:
                kinds.add(step.counts.stitch)
            if step.counts is not None and (step.counts.chains or step.counts.space):
                return False
        elif isinstance(step, Work) and step.each == ONE and not step.stitch.form:
            kinds.add(step.stitch)
            if any(isinstance(place, Same | First) for place in step.places) or len(kinds) > 1:
                return False
            if step.counts is not None and (step.counts.chains or step.counts.stitch != step.stitch):
                return False
        else:
            return False
    return bool(kinds) and not any(stitch.kind in ("inc", "dec", "special") for stitch in kinds)


def _cut(steps: Iterable[Step], kinds: tuple[type, ...]) -> list[Step]:
    found: list[Step] = []
    for step in steps:
        if not isinstance(step, kinds):
            break
        found.append(step)
    return found


def _with_its_first(steps: list[Step], stands: Stitch | None) -> tuple[Chain | None, list[Step]]:
    """The beginning chain, and the steps with the stitch that it stands for written out."""
    if not steps or not isinstance(steps[0], Chain):
        return None, steps
    chain, rest = steps[0], steps[1:]
    counts = chain.counts or CountsAs(stands)
    if counts.space or (counts.stitch is None and counts.chains):
        raise CannotMirrorError(chain)
    if counts.stitch is None:
        return chain, rest
    stitch = counts.stitch
    if rest and isinstance(rest[0], Skip) and rest[0].which == "first":
        fewer = minus_one(rest[0].count)
        rest = rest[1:] if fewer == NONE else [replace(rest[0], count=fewer, which="next"), *rest[1:]]
    each = ONE
    match rest[:1]:
        case [Work(stitch=more, each=count, places=(First() | Same(),))] if more == stitch:
            each, rest = plus(ONE, count), rest[1:]
    between: list[Step] = [Chain(Amount((counts.chains,)))] if counts.chains else []
    return replace(chain, counts=counts), [Work(stitch, each), *between, *rest]


def _begun(chain: Chain, steps: list[Step]) -> list[Step]:
    """The beginning chain before the turned steps; where it counts it takes the first stitch's place."""
    counts = chain.counts
    if counts is None or counts.stitch is None:
        return [chain, *steps]
    plain = Amount(tuple(size and size - counts.chains for size in chain.length.sizes))
    rest = _without_first(steps, counts.stitch)
    made = Chain(plain, CountsAs(counts.stitch), chain.span)
    match rest[:1]:
        case [Chain(length=Amount(sizes=(int() as more,)), counts=None)] if not plain.varies:
            made = Chain(plus(plain, Amount((more,))), CountsAs(counts.stitch, more), chain.span)
            rest = rest[1:]
    return [made, *rest]


def _without_first(steps: list[Step], stitch: Stitch) -> list[Step]:
    """The steps without their first stitch, which has to be of that kind."""
    match steps[:1]:
        case [Work(stitch=one, each=each, places=(place,)) as work] if one == stitch:
            if isinstance(place, Each) and each == ONE:
                return steps
            if each != ONE and (place == Next() or place == First()):
                return [replace(work, each=minus_one(each), places=(Same(),)), *steps[1:]]
            if each == ONE and isinstance(place, Next | First) and place.target == STITCH:
                fewer = minus_one(place.count)
                kept = [] if fewer == NONE else [replace(work, places=(Next(fewer),))]
                return [*kept, *steps[1:]]
        case [Repeat(steps=inside, stop_at=None) as repeat]:
            first = _without_first(list(inside), stitch)
            if repeat.times is None:
                return [*first, repeat, *steps[1:]]
            fewer = minus_one(repeat.times)
            again = [] if fewer == NONE else [replace(repeat, times=fewer)]
            return [*first, *again, *steps[1:]]
    raise CannotMirrorError(steps[0] if steps else None)


# ---- turning the steps round -----------------------------------------------------------------------


def _turned(steps: Iterable[Step]) -> list[Step]:
    found: list[Step] = []
    run: list[Step] = []
    apart = [one for step in steps for one in _place_by_place(step)]
    for at, step in enumerate(apart):
        if run and not any(map(_in_same, apart[at : at + 1 + isinstance(step, Chain)])):
            found = [*_run_turned(run), *found]
            run = []
        run.append(step)
    return [*_run_turned(run), *found]


def _place_by_place(step: Step) -> list[Step]:
    if isinstance(step, Work) and step.counts is None and len(step.places) > 1:
        return [replace(step, places=(place,)) for place in step.places]
    return [step]


def _in_same(step: Step) -> bool:
    """Whether a step goes into the place of the one before it (chains between them don't part them)."""
    return isinstance(step, Work | Group) and step.places[:1] == (Same(),)


def _run_turned(run: list[Step]) -> list[Step]:
    """Steps into one place, turned: the last of them comes first and finds the place."""
    turned = [one for step in reversed(run) for one in _turn(step)]
    if len(run) > 1:
        first, last = turned[0], turned[-1]
        if not (isinstance(first, Work | Group) and isinstance(last, Work | Group)):
            raise CannotMirrorError(run[0])
        turned[0], turned[-1] = replace(first, places=last.places), replace(last, places=first.places)
    return turned


def _turn(step: Step) -> list[Step]:
    """One step turned round; several where its ending now stands before it."""
    if isinstance(step, Chain) and step.counts is None:
        return [step]
    if isinstance(step, Skip) and step.until is None:
        return [replace(step, which=_OTHER_END[step.which])]
    if isinstance(step, Work) and step.counts is None:
        shaping = step.shaping and replace(step.shaping, first=False)  # `dec 1 st at neck edge, work to end`
        return [replace(step, places=tuple(_place(place, step) for place in step.places), shaping=shaping)]
    if isinstance(step, Group) and step.counts is None and len(step.places) == 1:
        return [replace(step, steps=tuple(_turned(step.steps)), places=(_place(step.places[0], step),))]
    if isinstance(step, Repeat) and not step.unclear:
        inside = tuple(_turned(step.steps))
        stop_at = step.stop_at
        if step.omitting:
            stop_at = len(step.steps) - len(step.omitting)
        if stop_at is not None:
            first, second = _turned(step.steps[:stop_at]), _turned(step.steps[stop_at:])
            inside, stop_at = (*first, *second), len(first)
        body = replace(step, steps=inside, stop_at=stop_at, ending=(), omitting=())
        return [*_turned(step.ending), body]
    raise CannotMirrorError(step)


_OTHER_END: dict[str, Literal["next", "first", "last"]] = {"next": "next", "first": "last", "last": "first"}


def _place(place: Place, step: Step) -> Place:
    if isinstance(place, Here | Same):
        return place
    if (
        isinstance(place, Next)
        and not place.piece
        and not place.any
        and not place.far
        and not place.target.unworked
    ):
        return place
    if isinstance(place, First):
        return Last(place.count, place.target)
    if isinstance(place, Last):
        return First(place.count, place.target) if place.count == ONE else Next(place.count, place.target)
    if isinstance(place, ChainOf) and not place.number:
        return First()
    if isinstance(place, Over):
        return replace(place, which=_OTHER_END[place.which])
    if isinstance(place, Each) and place.every == 1 and place.until.kind in ("end", "to-last"):
        return place
    raise CannotMirrorError(step)


# ---- how far the open steps go now -----------------------------------------------------------------


def _to_their_ends(steps: list[Step]) -> list[Step]:
    """`in each st to end` goes as far as the steps behind it leave room for."""
    done: list[Step] = []
    behind: Amount | None = NONE
    for step in reversed(steps):
        until = _until(step)
        if until is None:
            takes = places_of(step)
            behind = None if takes is None or behind is None else plus(behind, takes)
        else:
            if behind is None:
                raise CannotMirrorError(step)
            end = Until(word=until.word if until.kind == "end" else "end")
            step = _ending(step, end if behind == NONE else Until("to-last", count=behind))
            behind = None
        done.append(step)
    return done[::-1]


def _until(step: Step) -> Until | None:
    """Where an open step ends; None for one with a number."""
    if isinstance(step, Repeat):
        return step.until if step.times is None else None
    if isinstance(step, Work | Group) and step.places and isinstance(step.places[-1], Each):
        return step.places[-1].until
    return None


def _ending(step: Step, until: Until) -> Step:
    if isinstance(step, Repeat):
        return replace(step, until=until)
    assert isinstance(step, Work | Group)
    last = step.places[-1]
    assert isinstance(last, Each)
    return replace(step, places=(*step.places[:-1], replace(last, until=until, remaining=False)))
