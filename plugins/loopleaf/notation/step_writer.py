"""Writes the steps that hold no other steps: chains, passing over, joins, yarn, markers, counts."""

from collections.abc import Callable
from typing import Any

from .lying import write_lying
from .place_writer import write_place, write_until
from .style import Style, is_one, ordinal, written
from .tree import (
    STITCH,
    Again,
    Amount,
    Chain,
    CountsAs,
    Facing,
    FastenOff,
    FreeLoops,
    Join,
    JoinYarn,
    Leave,
    Lying,
    Marker,
    OtherSide,
    Skip,
    Stitch,
    Tally,
    Target,
    Turn,
    WorkingOver,
    Yarn,
)


def write_counts(counts: CountsAs | None, style: Style) -> str:
    """` (counts as dc, ch 1)` with the space before it; "" where nothing is said."""
    if counts is None:
        return ""
    chains = f"{style.word('skipped')} {style.word('chain', True)} " if counts.skipped else ""
    always = " throughout" if counts.throughout else ""
    if counts.nothing:
        return f" ({chains}{'do' if chains else 'does'} not count{always})"
    parts = [style.stitch(counts.stitch)] if counts.stitch is not None else []
    if counts.chains:
        parts.append(style.word("chains", n=counts.chains))
    if counts.space:
        parts.append(style.word("chain-n-space", n=counts.space))
    return f" ({chains}count{'' if chains else 's'} as {', '.join(parts)}{always})"


def _chain(chain: Chain, style: Style) -> str:
    length = chain.length
    if (length.varies or length.variable) and style.terms == "UK":
        text = f"{written(length)} {style.word('chain')}"
    else:
        text = style.word("chains", n=written(length))
    pulled = f" {chain.tension}" if chain.tension else ""
    return text + pulled + _purpose(chain.purpose) + write_counts(chain.counts, style)


def _purpose(purpose: str) -> str:
    return f" for {purpose}" if purpose else ""


def _again(again: Again, style: Style) -> str:
    times = again.times
    if again.sides:
        return f"{style.word('rep')} from * to * {write_sides(again.sides)}"
    if is_one(times):
        return f"{style.word('rep')} from * to *"
    often = "twice more" if times == Amount((2,)) else f"{written(times)} more times"
    return f"{style.word('rep')} from * to * {often}"


def write_sides(sides: tuple[int, ...]) -> str:
    """`on 2nd side`, `on 2nd and 3rd sides`, `on 2nd, 3rd and 4th sides`."""
    *others, last = map(ordinal, sides)
    return f"on {', '.join(others)} and {last} sides" if others else f"on {last} side"


def _facing(step: Facing, style: Style) -> str:
    said = {"RS": "right side", "WS": "wrong side"}[step.side] if style.full else step.side
    return f"with {said} facing"


def _lying(step: Lying, style: Style) -> str:
    return write_lying(step, style.full)


def _free_loops(step: FreeLoops, style: Style) -> str:
    loops = style.target(Target("free-loop", loop=step.loop), True)
    of = f" of {style.word('row' if step.rows else 'round')} {step.round}" if step.round else ""
    return f"working in {loops}{of}"


def _several(count: Amount, target: Any, style: Style) -> str:
    return style.target(target) if is_one(count) else style.counted(count, style.target(target, True))


def _skip(skip: Skip, style: Style) -> str:
    if skip.which == "behind":
        behind = "behind it" if is_one(skip.count) else "behind them"
        return f"{style.word('skip')} {_several(skip.count, skip.target, style)} {behind}"
    if skip.which == "all":
        return f"{style.word('skip')} all {style.target(skip.target, True)}"
    if skip.until is not None:
        end = write_until(skip.until, style)
        return f"{style.word('skip')} all {style.target(skip.target, True)} {end}{_purpose(skip.purpose)}"
    which = f"{skip.which} " if skip.which != "next" or is_one(skip.count) else ""
    of = f" of {skip.piece}" if skip.piece else ""
    places = f"{which}{_several(skip.count, skip.target, style)}{of}"
    return f"{style.word('skip')} {places}{_purpose(skip.purpose)}"


def _leave(leave: Leave, style: Style) -> str:
    if leave.but is not None:
        return f"working over next {_several(leave.but, leave.target, style)} only"
    which = "remaining" if leave.count is None else "last"
    places = (
        style.target(leave.target, True)
        if leave.count is None
        else _several(leave.count, leave.target, style)
    )
    return f"leave {which} {places} unworked{_purpose(leave.purpose)}"


def _working_over(step: WorkingOver, style: Style) -> str:
    side = "in front of" if step.side == "front" else step.side
    if step.what:
        return f"working {side} {step.what}"
    several = style.target(step.target, True)
    what = several if step.count is None else _several(step.count, step.target, style)
    return f"working {side} {what} just made" if step.made else f"working {side} next {what}"


def _to(place: Any, style: Style) -> str:
    text = write_place(place, style)
    return " to " + text[3:] if text.startswith("in ") else " " + text


def _join(join: Join, style: Style) -> str:
    if join.how == "not":
        return "do not join"
    if join.how == "invisibly":
        return "join invisibly" + (_to(join.place, style) if join.place is not None else "")
    if join.place is None:
        return "join" if join.stitch == Stitch("slip") else f"join with {style.stitch(join.stitch)}"
    return f"join with {style.stitch(join.stitch)}{_to(join.place, style)}"


def _join_yarn(join: JoinYarn, style: Style) -> str:
    standing = "standing " if join.standing else ""
    place = f" {write_place(join.place, style)}" if join.place is not None else ""
    spot = f" at {join.spot}" if join.spot else ""
    return f"join {join.yarn or 'yarn'} with {standing}{style.stitch(join.stitch)}{place}{spot}"


def _turn(turn: Turn, style: Style) -> str:
    return "turn" if turn.turns else "do not turn"


def _fasten_off(step: FastenOff, style: Style) -> str:
    text = f"fasten off {step.yarn}".rstrip()
    if step.invisibly:
        text += " invisibly"
    if step.tail:
        article = "an" if step.tail.startswith(("8", "11 ", "18 ", "80", "a")) else "a"
        tail = "tail" if step.tail == "any" else f"{step.tail} tail"
        text += f", leaving {article} {tail} {step.what_for}".rstrip()
    if step.closing:
        text += f", {step.closing}"
    return text + (" and weave in ends" if step.ends else "")


def _marker(marker: Marker, style: Style) -> str:
    place = f" {write_place(marker.place, style)}" if marker.place is not None else ""
    return f"{marker.action} marker{place}"


def _yarn(yarn: Yarn, style: Style) -> str:
    if yarn.how == "changing":
        return f"changing to {yarn.yarn} on last {style.word('yarn-over')}"
    return f"{'change to' if yarn.how == 'change' else yarn.how} {yarn.yarn}"


def _other_side(step: OtherSide, style: Style) -> str:
    which = "foundation " if step.of == "foundation" else ""
    return f"working along other side of {which}{style.word('chain')}"


def _tally(tally: Tally, style: Style) -> str:
    return f"({write_tally(tally, style)})"


def write_tally(tally: Tally, style: Style) -> str:
    """`48 sts`, `24 dc, 24 ch-1 sps`."""
    parts = []
    if tally.total is not None:
        parts.append(f"{written(tally.total)} {style.target(STITCH, not is_one(tally.total))}")
    for amount, what in tally.entries:
        several = not is_one(amount)
        noun = style.stitch(what, several) if isinstance(what, Stitch) else style.target(what, several)
        parts.append(f"{written(amount)} {noun}")
    return ", ".join(parts)


WRITERS: dict[type, Callable[[Any, Style], str]] = {
    Chain: _chain, Again: _again, Skip: _skip, Leave: _leave, WorkingOver: _working_over, Join: _join,
    Turn: _turn,
    FastenOff: _fasten_off, Marker: _marker, Yarn: _yarn, JoinYarn: _join_yarn, OtherSide: _other_side,
    Tally: _tally, FreeLoops: _free_loops, Facing: _facing, Lying: _lying,
}  # fmt: skip
"""How each of these steps is written."""
