"""What a line says as a whole, before a stitch of it is worked."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import dropwhile

from ..notation.once_a_line import once_a_line
from ..notation.tree import (
    ONE,
    STITCH,
    Again,
    Amount,
    Chain,
    ChainOf,
    Corresponding,
    CountsAs,
    Each,
    Evenly,
    Facing,
    FastenOff,
    First,
    Group,
    Here,
    Join,
    JoinYarn,
    Last,
    Leave,
    Line,
    Lying,
    Marker,
    Next,
    OtherSide,
    Over,
    Passage,
    Place,
    Repeat,
    Ring,
    RowEnds,
    Same,
    Skip,
    Skipped,
    Span,
    Step,
    Tally,
    Together,
    Turn,
    Work,
    WorkingOver,
    Yarn,
)

STANDS = 3
"""A chain of so many stands for a stitch whatever else the line makes."""

NOT_KINDS = ("", "slip", "chain", "inc", "dec", "special")


@dataclass(frozen=True, slots=True)
class Survey:
    """What a round must know of its line before it begins; see the functions of the same names.

    kinds: the plain kinds of its stitches.
    """

    kinds: tuple[str, ...]
    first_kind: str
    joined_chain: tuple[int, int] | None
    moves_marker: bool
    travels: bool


def survey(steps: tuple[Step, ...], specials: Mapping[str, Line]) -> Survey:
    """A line looked over as a whole. specials: the author's stitches."""
    return Survey(
        tuple(kinds(steps, specials)),
        first_kind(steps, specials),
        joined_chain(steps),
        moves_marker(steps),
        travels(steps),
    )


def walk(steps: tuple[Step, ...]) -> Iterator[Step]:
    """Every step, those inside repeats and groups too, in the order written."""
    for step in steps:
        yield step
        if isinstance(step, Repeat):
            yield from walk(step.steps)
            yield from walk(step.ending)
        elif isinstance(step, Group | Passage | Together):
            yield from walk(step.steps)


def kinds(steps: tuple[Step, ...], specials: Mapping[str, Line]) -> list[str]:
    """The plain kinds that the line's stitches have, each once, in order; the author's own stitches
    opened."""
    found: dict[str, None] = {}
    for step in walk(steps):
        if isinstance(step, JoinYarn) and step.stitch.kind not in NOT_KINDS:
            found[step.stitch.kind] = None
        elif isinstance(step, Work):
            stitch = step.stitch
            if stitch.kind == "special" and stitch.name in specials:
                inner = specials[stitch.name]
                if not any(isinstance(s, Work) and s.stitch.name == stitch.name for s in walk(inner.steps)):
                    found.update(dict.fromkeys(kinds(inner.steps, specials)))
            elif stitch.kind not in NOT_KINDS and stitch.form != "picot":
                found[stitch.kind] = None
    return list(found)


def first_kind(steps: tuple[Step, ...], specials: Mapping[str, Line]) -> str:
    """The kind of the first stitch that isn't a slip stitch; `inc` or `dec` where that comes first; "" for
    none."""
    for step in walk(steps):
        if isinstance(step, Work) and step.stitch.kind != "slip" and step.stitch.form != "picot":
            if step.stitch.kind == "special":
                inner = kinds((step,), specials)
                return inner[0] if inner else step.stitch.name
            return step.stitch.kind or "inc"  # `work even` is as what is below it, too
    return ""


def joined_chain(steps: tuple[Step, ...]) -> tuple[int, int] | None:
    """`join to 3rd ch of ch-4` as (3, 4): it says what the beginning chain stands for.

    A second chain says so only where the line makes the chain that is left over elsewhere too.
    """
    for step in reversed(steps):
        match step:
            case Join(place=ChainOf(number=number, length=length)) if number and length:
                rest = Amount((length - number,))
                chains = [one for one in walk(steps) if isinstance(one, Chain) and one.length == rest]
                return (number, length) if number >= STANDS or chains else None
    return None


def travels(steps: tuple[Step, ...]) -> bool:
    """Whether slip stitches at the start only move on: something taller follows them."""
    return any(
        (isinstance(step, Work) and step.stitch.kind != "slip") or isinstance(step, Group)
        for step in walk(steps)
    )


def slips_on(steps: tuple[Step, ...]) -> bool:
    """Whether the line begins with slip stitches and goes straight on with taller ones: a shaped row, whose
    first stitches they may be."""
    begun = False
    for step in steps:
        if slips(step):
            begun = True
        elif isinstance(step, Work | Group | Repeat):
            return begun
        elif not isinstance(step, Yarn | Facing | Lying):
            return False
    return False


def leads_in(steps: tuple[Step, ...]) -> bool:
    """Whether a row goes by slip stitches from its lone first chain to where it begins: `ch 1, sl st in next
    3 sts, sc in next 10 sts`. Where it has others further on, these may be stitches like those."""
    begun = tuple(dropwhile(lambda step: isinstance(step, Turn | Yarn | Facing | Lying), steps))
    match begun:
        case (Chain(length=length, counts=None), *rest) if length == ONE:
            further = tuple(dropwhile(slips, rest))
            onward = tuple(one for one in rest if not isinstance(one, Chain))
            return slips_on(onward) and slips(rest[0]) and not any(map(slips, walk(further)))
    return False


def said_throughout(lines: Iterable[Line | None], specials: Mapping[str, Line]) -> dict[str, bool]:
    """Whether the chain that rounds begin with counts, by stitch, where a line says it for all rounds."""
    found: dict[str, bool] = {}
    for line in lines:
        for step in line.steps if line is not None else ():
            counts = getattr(step, "counts", None)
            if not isinstance(counts, CountsAs) or not counts.throughout:
                continue
            stitch = counts.stitch
            kind = (stitch.name or stitch.kind) if stitch is not None else ""
            assert line is not None
            found.setdefault(kind or first_kind(line.steps, specials), stitch is not None)
    return found


def brings_yarn(steps: tuple[Step, ...]) -> bool:
    """Whether the line joins a yarn or goes on with another before its first stitch."""
    for step in steps:
        if isinstance(step, JoinYarn | Yarn):
            return True
        if isinstance(step, Work | Group | Repeat):
            return False
    return False


def moves_marker(steps: tuple[Step, ...]) -> bool:
    """Whether the line moves the round's marker on."""
    return any(isinstance(step, Marker) and step.action == "move" for step in steps)


def into_ring(steps: tuple[Step, ...]) -> bool:
    """Whether anything in the line goes into the ring."""
    return any(
        isinstance(step, Work | Group) and any(isinstance(place, Ring) for place in step.places)
        for step in walk(steps)
    )


@once_a_line
def part_turning_chain(line: Line) -> tuple[tuple[Step, ...], tuple[Step, ...]]:
    """The line's own steps, and what belongs to what follows: the chain before (or after) its last turn, or
    the slip stitches that move on behind its join, and the chain there."""
    steps = line.steps
    end = _behind_the_join(steps)
    if end < len(steps):
        return steps[:end], steps[end:]
    before = next((at for at in range(len(steps) - 2, 0, -1) if not isinstance(steps[at], Yarn)), 0)
    chain = steps[before] if before else None
    if isinstance(chain, Chain) and isinstance(steps[-1], Turn):
        return (*steps[:before], *steps[before + 1 :]), (chain,)
    if len(steps) >= 3 and isinstance(steps[-2], Turn) and isinstance(steps[-1], Chain):
        return steps[:-1], (steps[-1],)
    return steps, ()


def _behind_the_join(steps: tuple[Step, ...]) -> int:
    """Where the next round's beginning stands behind the line's last join; the line's end without one."""
    at = len(steps) - isinstance(steps[-1], Chain) if steps else 0
    while at and slips(steps[at - 1]):
        at -= 1
    return at if at > 1 and isinstance(steps[at - 1], Join) else len(steps)


def slips(step: Step) -> bool:
    """Whether a step is slip stitches."""
    return isinstance(step, Work) and step.stitch.kind == "slip"


def turns_at_its_end(steps: tuple[Step, ...]) -> bool:
    """Whether the line turns at its end, though the hand may not have come so far."""
    return any(isinstance(step, Turn) and step.turns for step in steps[-2:])


def decreases(steps: tuple[Step, ...]) -> bool:
    """Whether stitches are worked together somewhere in the line."""
    works = (step for step in walk(steps) if isinstance(step, Work))
    return any(step.stitch.form == "tog" or step.stitch.kind == "dec" for step in works)


def joins(steps: tuple[Step, ...]) -> bool:
    """Whether the line closes a round, though the hand may not have come so far."""
    return any(isinstance(step, Join) and step.how != "not" for step in steps)


def fastens_off(steps: tuple[Step, ...]) -> bool:
    """Whether the line ends the yarn, though the hand may not have come so far."""
    return any(isinstance(step, FastenOff) for step in steps)


def only_ends(steps: tuple[Step, ...]) -> bool:
    """Whether a line is a round by number alone: `fasten off, leaving a long tail`."""
    return bool(steps) and all(isinstance(step, FastenOff | Tally) for step in steps)


def turns_first(steps: tuple[Step, ...]) -> Turn | None:
    """The turn that the line begins with, before any stitch (print turns at a row's end or at the next one's
    start)."""
    for step in steps:
        if isinstance(step, Turn):
            return step if step.turns else None
        if not isinstance(step, Chain | Yarn | FastenOff | Facing | Lying):
            return None
    return None


def goes_back_unturned(steps: tuple[Step, ...]) -> bool:
    """Whether a row is worked from left to right, or along another edge: reverse single crochet, row ends."""
    first = next((step for step in steps if isinstance(step, Work | Group | Repeat)), None)
    if isinstance(first, Repeat | Group):
        return goes_back_unturned(first.steps)
    if any(isinstance(step, OtherSide) for step in steps):
        return True
    if not isinstance(first, Work):
        return False
    along = any(isinstance(place, RowEnds | Evenly) or _in_a_corner(place) for place in first.places)
    return along or first.stitch.kind.startswith("reverse-")


def _in_a_corner(place: Place) -> bool:
    """Whether a place is a corner, of no space that is named."""
    return isinstance(place, Next) and place.target.kind == "corner" and not place.target.length


def facing(steps: tuple[Step, ...]) -> tuple[str, Span | None]:
    """The side that the line says faces the maker, and the words that say so; "" where it doesn't."""
    return next(((step.side, step.span) for step in steps if isinstance(step, Facing)), ("", None))


@once_a_line
def asks_for_stitches_alone(steps: tuple[Step, ...]) -> bool:
    """Whether the line goes into stitch tops by number alone: no kind, space, chain or post is named."""
    for step in walk(steps):
        if isinstance(step, OtherSide | JoinYarn | Again):
            return False
        if isinstance(step, WorkingOver) and not step.made:
            return False
        if isinstance(step, Work | Group) and not all(_plain(place) for place in step.places):
            return False
        if isinstance(step, Skip | Leave) and step.target != STITCH:
            return False
        if isinstance(step, Repeat) and step.until is not None and step.until.target != STITCH:
            return False
    return True


def _plain(place: Place) -> bool:
    match place:
        case Next(target=target, below=below, piece=piece):
            return target == STITCH and not below and not piece
        case First(target=target) | Last(target=target) | Same(target=target) | Over(target=target):
            return target == STITCH
        case Each(targets=targets, piece=piece):
            return targets == (STITCH,) and not piece
        case _:
            return isinstance(place, Here)


def goes_into_spaces_alone(steps: tuple[Step, ...]) -> bool:
    """Whether nothing of a repeat goes into a stitch."""
    places = [one for step in walk(steps) if isinstance(step, Work | Group) for one in step.places]
    return bool(places) and all(
        isinstance(one, Same) or (isinstance(one, Next) and one.target.kind == "space") for one in places
    )


def goes_into_a_space(steps: tuple[Step, ...]) -> bool:
    """Whether the line names a space that it goes into."""
    places = (one for step in walk(steps) if isinstance(step, Work | Group) for one in step.places)
    return any(getattr(one, "target", STITCH).kind == "space" for one in places)


def goes_into_an_opening(steps: tuple[Step, ...]) -> bool:
    """Whether the yarn is joined for stitches that an earlier round passed over: a thumb, a sleeve."""
    joined_in = [step.place for step in steps if isinstance(step, JoinYarn)]
    places = [one for step in walk(steps) if isinstance(step, Work | Group) for one in step.places]
    return bool(joined_in) and any(
        isinstance(one, Skipped) or getattr(one, "target", STITCH).unworked for one in (*joined_in, *places)
    )


@once_a_line
def other_pieces(steps: tuple[Step, ...]) -> tuple[str, ...]:
    """The pieces whose places the line goes into, besides the edge that it is worked along."""
    found: list[str] = []
    for step in walk(steps):
        for place in step.places if isinstance(step, Work | Group) else ():
            if isinstance(place, Next | Each | Corresponding) and place.piece:
                found.append(place.piece.removeprefix("next "))
    return tuple(found)


@once_a_line
def specials(line: Line) -> tuple[str, ...]:
    """The author's own stitches that the line works, by name."""
    return tuple(
        step.stitch.name
        for step in walk(line.steps)
        if isinstance(step, Work) and step.stitch.kind == "special"
    )
