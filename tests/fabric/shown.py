"""Worked rounds as text: each stitch, what it was worked into, the edge left, and the words it came from."""

from collections.abc import Iterator
from itertools import groupby

from loopleaf.fabric import Made, PatternWork, Ring, RoundWork, Space
from loopleaf.fabric.worked import Place, WorkedRound
from loopleaf.notation.tree import Span


def shown(work: PatternWork) -> str:
    """All pieces of a pattern, round by round, in every size."""
    lines = []
    for piece in work.pieces:
        for start in piece.starts[:1]:
            lines.append(f"start: {_row(start)}")
        for round in piece.rounds:
            lines += _round(round)
    return "\n".join(lines) + "\n"


def _round(round: RoundWork) -> Iterator[str]:
    said = [round.side, "turned" if round.turned else "", "joined" if round.joined else ""]
    yield f"{round.plan.label}: {round.plan.work}" + "".join(f" · {one}" for one in said if one)
    for worked in round.sizes:
        if worked is None:
            yield "    not in this size"
            continue
        yield from _size(worked, round.plan.work)
    for trouble in round.troubles:
        facts = ", ".join(f"{name} {value}" for name, value in trouble.facts.items())
        yield f"    {trouble.rule} {_words(trouble.span, round.plan.work)}: {facts}"


def _size(worked: WorkedRound, work: str) -> Iterator[str]:
    makes = ", ".join(f"{number} {kind}" for kind, number in worked.makes.items())
    yield f"    uses {worked.uses}, makes {makes or 'nothing'}; counts {worked.count}"
    for span, group in groupby(worked.made, key=lambda one: one.span):
        made = (f"{_what(one)} in {_row(one.into)}" if one.into else _what(one) for one in group)
        yield f"      {_words(span, work)}: {'; '.join(_runs(made))}"
    yield f"      leaves {_row(worked.edge)}"


def _what(one: Made | Space) -> str:
    """`double front post`, `chain turning 3`, `space#1 of 2`; numbers of stitches only where missing."""
    unit = f" {one.special or 'unit'}{one.unit}" if one.unit or one.special else ""
    yarn = "" if one.yarn == "A" else f" yarn {one.yarn}"
    if isinstance(one, Space):
        corner = " corner" if one.corner else ""
        return f"space#{one.number} of {one.chains}{corner}{' back' if one.back else ''}{unit}{yarn}"
    role = "" if one.role == "stitch" else f" {one.role}"
    uncounted = " uncounted" if one.role == "stitch" and not one.number else ""
    form = f" {one.form}{one.legs or ''}" if one.form or one.legs else ""
    chains = f" {one.chains} chains" if one.chains else ""
    loop = f" {one.loop} loop" if one.loop else ""
    post = f" {one.post} post" if one.post else ""
    return f"{one.kind}{role}{uncounted}{form}{chains}{loop}{post}{unit}{yarn}"


def _row(places: "tuple[Place, ...] | list[Place]") -> str:
    """Places by round and number: `0.1 0.2 0.s1`, the ring by its kind."""
    return " ".join(map(_name, places)) or "nothing"


def _name(place: Place) -> str:
    if isinstance(place, Ring):
        return f"{place.kind} ring"
    if isinstance(place, Space):
        return f"{place.round}.s{place.number}"
    return f"{place.round}.{place.number or place.role}"


def _runs(said: Iterator[str]) -> Iterator[str]:
    for text, same in groupby(said):
        number = len(list(same))
        yield text if number == 1 else f"{number} times {text}"


def _words(span: Span | None, work: str) -> str:
    return f"“{work[span.start : span.end]}”" if span else "(no words)"
