"""Writes places: `in next 3 sts`, `in each of next 3 sts`, `over next 5 sts`, `evenly along edge`."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from .style import Style, is_one, ordinal, written
from .tree import (
    STITCH,
    Amount,
    Between,
    ChainOf,
    Corresponding,
    Each,
    Evenly,
    First,
    FromHook,
    Here,
    JustMade,
    Last,
    Marked,
    Next,
    Over,
    Place,
    Ring,
    RowEnds,
    Same,
    Skipped,
    Target,
    Until,
    Within,
)


def write_place(place: Place, style: Style, each_of: bool = False) -> str:
    """One place, with its `in`; "" for Here. each_of: `in each of next 3 sts` where there are several."""
    return _WRITERS[type(place)](place, style, each_of)


def write_until(until: Until, style: Style) -> str:
    """`around`, `across`, `to end`, `to last 3 sts`, `to marker`, `to next corner`; "" where print left it
    unsaid.
    """
    if until.before is not None:
        end = write_until(replace(until, before=None), style)
        stitches = style.counted(until.before, style.target(STITCH, not is_one(until.before)))
        return f"to {stitches} before {end.removeprefix('to ')}"
    if until.kind == "end":
        return "to end" if until.word == "end" else until.word
    if until.kind == "to-last":
        return f"to last {_several(until.count, until.target, style)}"
    if until.kind == "next":
        return f"to next {style.target(until.target)}"
    if until.kind == "centre":
        of = f"{style.target(STITCH)} of next " if until.names_group else ""
        return f"to {style.word('centre')} {of}{style.target(until.target)}"
    if until.kind == "tch":
        return f"to {style.word('turning-chain')}"
    return "to marker" if until.kind == "marker" else "to next corner"


def _several(count: Amount, target: Target, style: Style) -> str:
    """`st` for one, `3 sts` for more."""
    if is_one(count):
        return style.target(target)
    return style.counted(count, style.target(target, True))


def _listed(word: str, count: Amount, target: Target, style: Style, each_of: bool) -> str:
    each = "each of " if each_of and not is_one(count) else ""
    return f"in {each}{word} {_several(count, target, style)}"


_BOTH = 2


def _next(place: Next, style: Style, each_of: bool) -> str:
    target = place.target
    if place.stacked:
        number = "both" if place.stacked == _BOTH else f"all {place.stacked}"
        return f"over {number} {style.target(target, True)}"
    if target.kind == "edge":
        text = _listed("next", place.count, STITCH, style, each_of) + " of edge"
    else:
        which = f"next {style.word('skipped')}" if place.skipped else "any" if place.any else "next"
        text = _listed(which, place.count, target, style, each_of)
    if place.far:
        text = f"in other side of {text.removeprefix('in ')}"
    if place.below:
        text += f" {place.below} {style.word('row' if place.rows else 'round', place.below > 1)} below"
    if place.piece:
        text += f" of {place.piece}"
    return text


def _first(place: First, style: Style, each_of: bool) -> str:
    return _listed("first", place.count, place.target, style, each_of)


def _last(place: Last, style: Style, each_of: bool) -> str:
    return _listed("last", place.count, place.target, style, each_of)


def _same(place: Same, style: Style, each_of: bool) -> str:
    by = {
        "join": " as join",
        "first": f" as first {style.target(STITCH)}",
        "chain": f" as {style.word('beginning')} {style.target(Target('chain'))}",
    }
    return f"in same {style.target(place.target)}{by.get(place.begun, '')}"


def _each(place: Each, style: Style, each_of: bool) -> str:
    every = {1: "each", 2: "every other"}.get(place.every, f"every {ordinal(place.every)}")
    remaining = " remaining" if place.remaining else ""
    targets = " and ".join(style.target(t) for t in place.targets)
    until = write_until(place.until, style)
    if place.piece:
        return f"in {every}{remaining} {targets} of {place.piece}"
    return f"in {every}{remaining} {targets}{' ' + until if until else ''}"


def _here(place: Here, style: Style, each_of: bool) -> str:
    return ""


def _ring(place: Ring, style: Style, each_of: bool) -> str:
    return "in ring"


def _from_hook(place: FromHook, style: Style, each_of: bool) -> str:
    return f"in {ordinal(place.number)} {style.word('chain')} from hook"


def _chain_of(place: ChainOf, style: Style, each_of: bool) -> str:
    arch = style.word("arch", n=place.length) if place.length else style.word("chain")
    if place.chain == "tch":
        name = f"turning {arch}" if place.length else style.word("turning-chain")
    elif place.chain == "beg":
        name = f"{style.word('beginning')} {arch}"
    else:
        name = arch
    which = f"{ordinal(place.number)} {style.word('chain')}" if place.number else "top"
    return f"in {which} of {name}"


def _within(place: Within, style: Style, each_of: bool) -> str:
    of = place.of
    name = style.word("arch", n=of.length) if of.kind == "space" and of.length else style.target(of)
    part = {"centre": style.word("centre"), "nth": ordinal(place.number)}.get(place.part, place.part)
    which = "last" if place.last else "same" if place.same else "next"
    return f"in {part} {style.target(place.inner)} of {which} {name}"


def _between(place: Between, style: Style, each_of: bool) -> str:
    which = "first" if place.first else "any" if place.any else "next"
    return f"between {which} {style.counted(Amount((2,)), style.target(place.target, True))}"


def _marked(place: Marked, style: Style, each_of: bool) -> str:
    return f"in marked {style.target(place.target)}"


def _just_made(place: JustMade, style: Style, each_of: bool) -> str:
    if place.among:
        made = style.counted(Amount((place.among,)), style.target(place.target, True))
        return f"in {ordinal(place.number)} of these {made}"
    which = ordinal(place.number) if place.number else "last"
    return f"in {which} {style.target(place.target)} made"


def _skipped(place: Skipped, style: Style, each_of: bool) -> str:
    skipped = style.word("skipped")
    if place.which == "all":
        number = f"{place.number} " if place.number else ""
        return f"in each of {number}{skipped} {style.word('stitch', True)}"
    which = {"next": "next ", "nth": f"{ordinal(place.number)} "}.get(place.which, "")
    return f"in {which}{skipped} {style.word('stitch')}"


def _over(place: Over, style: Style, each_of: bool) -> str:
    return f"over {place.which} {_several(place.count, place.target, style)}"


def _row_ends(place: RowEnds, style: Style, each_of: bool) -> str:
    if place.side:
        return f"in side of next {style.stitch(place.stitch) if place.stitch else style.word('stitch')}"
    kind = f"{style.stitch(place.stitch)} " if place.stitch else ""
    if place.count is not None:
        one = is_one(place.count)
        number = "" if one else f"{written(place.count)} "
        return f"in end of next {number}{kind}{style.word('row', not one)}"
    until = place.until
    ends = "" if until.kind == "end" and until.word == "across" else f" {write_until(until, style)}"
    if place.per > 1:
        return f"in every {place.per} {kind}{style.word('row-end', True)}{ends}"
    return f"in end of each {kind}{style.word('row')}{ends}"


def _evenly(place: Evenly, style: Style, each_of: bool) -> str:
    along = f" along {place.along}" if place.along else ""
    until = place.until
    ends = "" if along and until.kind == "end" and until.word == "across" else f" {write_until(until, style)}"
    return f"evenly{along}{ends}"


def _corresponding(place: Corresponding, style: Style, each_of: bool) -> str:
    return f"in corresponding {style.target(place.target)} of {place.piece}"


_WRITERS: dict[type, Callable[[Any, Style, bool], str]] = {
    Next: _next, First: _first, Last: _last, Same: _same, Each: _each, Here: _here, Ring: _ring,
    FromHook: _from_hook,
    ChainOf: _chain_of, Within: _within, Between: _between, Marked: _marked, JustMade: _just_made,
    Skipped: _skipped, Over: _over, RowEnds: _row_ends, Evenly: _evenly, Corresponding: _corresponding,
}  # fmt: skip
