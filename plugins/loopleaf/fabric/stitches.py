"""Making what a stitch's name says, in one place: plain stitches, increases, groups, and the author's own."""

from dataclasses import fields, replace
from functools import cache
from typing import Any

from .. import trade
from ..notation.once_a_line import once_a_line
from ..notation.tree import (
    ONE,
    Chain,
    Group,
    Here,
    Line,
    Next,
    Over,
    Repeat,
    Same,
    Skip,
    Span,
    Step,
    Stitch,
    Work,
)
from ..notation.tree import Each as EachPlace
from ..notation.tree import Place as NamedPlace
from .hand import Hand
from .seek import Into
from .worked import Made, Place

DEEPEST_OPENING = 12
"""Special stitches may be made of others; more steps down than this is one made of itself."""


def make(hand: Hand, stitch: Stitch, into: Into, span: Span | None) -> None:
    """One stitch (or group) of that name into one place (or, gathered, into several)."""
    if stitch.kind in ("inc", "dec"):
        kind = _kind_for(hand, stitch, into, span)
        if stitch.kind == "inc":
            for _ in range(max(stitch.number, 2)):
                hand.put(Stitch(kind, loop=stitch.loop), into, span)
        else:
            hand.put(Stitch(kind, "tog", 2, stitch.loop, invisible=stitch.invisible), into, span)
    elif stitch.form == "shell":
        unit = _new_unit(hand)
        for _ in range(stitch.number):
            hand.put(Stitch(own_kind(stitch), loop=stitch.loop), into, span, special=stitch.name, unit=unit)
    elif stitch.form == "v-stitch":
        unit = _new_unit(hand)
        hand.put(Stitch(own_kind(stitch)), into, span, special=stitch.name, unit=unit)
        hand.put_space(stitch.number or 1, span, unit=unit)
        hand.put(Stitch(own_kind(stitch)), into, span, special=stitch.name, unit=unit)
    elif stitch.form == "picot":
        under: tuple[Place, ...] = tuple(hand.made[-1:])
        hand.put(Stitch("chain", "picot"), under, span, role="picot", chains=stitch.number)
    elif stitch.kind == "special":
        hand.put(replace(stitch, kind=stitch.name, name=""), into, span, special=stitch.name)
    else:
        hand.put(stitch, into, span)


def own_kind(stitch: Stitch) -> str:
    """The kind that is made: the author's own stitches are kinds by their names."""
    return stitch.name if stitch.kind == "special" else stitch.kind


def by_kind(kind: str) -> Stitch:
    """The stitch of a kind, be it one of the trade's or the author's own."""
    return Stitch(kind) if not kind or kind in plain_kinds() else Stitch("special", name=kind)


@cache
def plain_kinds() -> frozenset[str]:
    """The kinds that the trade has names for."""
    return frozenset(row.key for row in trade.stitches())


def _new_unit(hand: Hand) -> int:
    hand.unit += 1
    return hand.unit


def _kind_for(hand: Hand, stitch: Stitch, into: Into, span: Span | None) -> str:
    """What `inc` increases in: the round's only kind, else the kind worked into."""
    if hand.setting.only_kind:
        return hand.setting.only_kind
    kinds = {p.kind for p in into if isinstance(p, Made) and p.kind not in ("chain", "slip")}
    if len(kinds) == 1 and len(into) == sum(isinstance(p, Made) for p in into):
        return kinds.pop()
    raise hand.stuck("inc-unclear", span, kinds=sorted(kinds), which=stitch.kind)


# ---- the author's own stitches -----------------------------------------------------------------


def needs(line: Line) -> str:
    """What a special stitch asks of the edge: `none` (a picot), `one` place, or `several` places of its own
    choosing."""
    takes = places_taken(line.steps)
    if takes == 0:
        return "one" if _stands(line.steps) else "none"
    return "one" if takes == 1 else "several"


def picot_chains(line: Line) -> int:
    """The chains of a stitch that is nothing but a picot; 0 for anything else."""
    match line.steps:
        case (Work(stitch=Stitch(form="picot", number=chains), each=each),) if each == ONE:
            return chains
        case _:
            return 0


def places_taken(steps: tuple[Step, ...]) -> int:
    """Places that steps use by their own numbers, each `each` counted as two."""
    taken = 0
    for step in steps:
        if isinstance(step, Skip):
            taken += 0 if step.which == "behind" else step.count.of(0) or 0
        elif isinstance(step, Work | Group):
            if isinstance(step, Work) and step.stitch.form == "picot":
                continue
            for place in step.places:
                if isinstance(place, Next | Over):
                    taken += place.count.of(0) or 0
                elif isinstance(place, EachPlace):
                    taken += 2
        elif isinstance(step, Repeat):
            taken += places_taken(step.steps) * (step.times.of(0) or 1 if step.times else 2)
    return taken


def _stands(steps: tuple[Step, ...]) -> bool:
    return any(
        (isinstance(step, Work | Group) and any(isinstance(p, Same | Here) for p in step.places))
        or (isinstance(step, Repeat) and _stands(step.steps))
        for step in steps
    )


@once_a_line
def said_at(line: Line, span: Span | None) -> Line:
    """A definition's steps as the words that call for it: whatever goes wrong in them stands there."""
    return Line(_said_at(line.steps, span))


_INNER = frozenset({"steps", "ending", "omitting", "places", "place"})


def _said_at(part: Any, span: Span | None) -> Any:
    """A step or place (or several) with another span, and those inside it."""
    if isinstance(part, tuple):
        return tuple(_said_at(one, span) for one in part)
    if part is None:
        return None
    inner = {one.name: _said_at(getattr(part, one.name), span) for one in fields(part) if one.name in _INNER}
    unsaid = isinstance(part, Next | Over | EachPlace) and part.span is None
    return replace(part, span=None if unsaid else span, **inner)


def names_no_place(steps: tuple[Step, ...]) -> bool:
    """Whether a definition is stitches and chains alone, and leaves it to the round where they go: `5 dc`,
    `2 dc, ch 2, 2 dc`, `dc3tog`; the last may be said to go into the `same st`, the `same sp`.
    """
    return all(
        isinstance(step, Chain)
        or (isinstance(step, Work) and (_is_same(step.places) or _is_unsaid(step.places)))
        or (isinstance(step, Repeat) and step.times is not None and names_no_place(step.steps))
        for step in steps
    )


def _is_same(places: tuple[NamedPlace, ...]) -> bool:
    return all(isinstance(one, Same) and not one.begun for one in places)


def _is_unsaid(places: tuple[NamedPlace, ...]) -> bool:
    """Whether print left the place out; a reader's `in next st` has a stretch of text of its own."""
    match places:
        case (Next(span=None, count=count) as next_ones,):
            return next_ones == Next(count)
        case (Over(span=None, count=count) as legs,):
            return legs == Over(count)
    return False


def all_in_one(line: Line) -> Line:
    """A definition that names no place, all of it in the one that the instruction names."""
    return Line(tuple(_in_one(step) for step in line.steps))


def _in_one(step: Step) -> Step:
    if isinstance(step, Repeat):
        return replace(step, steps=tuple(_in_one(one) for one in step.steps))
    match step:
        case Work(places=(Next(count=count),)):
            return replace(step, each=count, places=(Same(),))
        case Work(places=(Over(),)):
            return replace(step, places=(Same(),))
    return step


def given_place(line: Line) -> Line:
    """A definition whose one `in next st` means the place that the instruction names: read as `in same
    st`."""
    return Line(tuple(_given(step) for step in line.steps))


def _given(step: Step) -> Step:
    if isinstance(step, Work):
        places = tuple(Same() if isinstance(p, Next | Over) else p for p in step.places)
        return Work(step.stitch, step.each, places, step.counts, step.through, step.span)
    if isinstance(step, Group):
        places = tuple(Same() if isinstance(p, Next | Over) else p for p in step.places)
        return Group(step.steps, places, step.counts, step.span)
    return step
