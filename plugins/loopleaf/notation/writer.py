"""Writes the tree as print: US or UK, short or in full. What is written reads back to the same tree."""

from collections.abc import Callable, Sequence
from typing import Any

from .place_writer import write_place, write_until
from .style import Style, is_one, written
from .tree import (
    STITCH,
    Again,
    Amount,
    Chain,
    CountsAs,
    Evenly,
    FastenOff,
    Group,
    Join,
    JoinYarn,
    Leave,
    Line,
    Marker,
    Next,
    OtherSide,
    Over,
    Passage,
    Repeat,
    Skip,
    Step,
    Stitch,
    Tally,
    Turn,
    Until,
    Work,
    WorkingOver,
    Yarn,
)
from .vocabulary import Terms, Vocabulary

_MARKS = ("*", "†", "‡")


def write(line: Line, terms: Terms, full: bool = False, vocabulary: Vocabulary | None = None) -> str:
    """A line in one terminology, in abbreviations or in full words: lower case, commas between steps."""
    return write_steps(line.steps, Style(terms, full, vocabulary))


def write_step(step: Step, terms: Terms, full: bool = False, vocabulary: Vocabulary | None = None) -> str:
    """One step by itself."""
    return _step(step, Style(terms, full, vocabulary), False, 0)


def write_count(tally: Tally, terms: Terms, full: bool = False, vocabulary: Vocabulary | None = None) -> str:
    """A count: `48 sts`, `24 dc, 24 ch-1 sps`."""
    return _count(tally, Style(terms, full, vocabulary))


def stitch_name(
    stitch: Stitch,
    terms: Terms,
    full: bool = False,
    plural: bool = False,
    vocabulary: Vocabulary | None = None,
) -> str:
    """What a stitch is called: `hdc`, `half treble`, `dc3tog`, `5-tr bobble`; the author's own by the
    vocabulary.
    """
    return Style(terms, full, vocabulary).stitch(stitch, plural)


def write_steps(steps: Sequence[Step], style: Style, here: bool = False, depth: int = 0) -> str:
    """Steps with commas. here: inside a group in one place; depth: how many asterisks are open."""
    text = ""
    for step in steps:
        if text:
            text += " " if isinstance(step, Tally) else ", "
        text += _step(step, style, here, depth)
    return text


def _step(step: Step, style: Style, here: bool, depth: int) -> str:
    if isinstance(step, Work):
        return _work(step, style, here)
    if isinstance(step, Repeat):
        return _repeat(step, style, here, depth)
    if isinstance(step, Group):
        inside = bracketed(write_steps(step.steps, style, True))
        return f"{inside} {_places(step.places, style, False)}{_counts(step.counts, style)}"
    if isinstance(step, Passage):
        mark = _MARKS[depth]
        return f"{mark}{write_steps(step.steps, style, here, depth + 1)}{mark}"
    return _WRITERS[type(step)](step, style)


# ---- stitches -------------------------------------------------------------------------------------


def _work(work: Work, style: Style, here: bool) -> str:
    stitch, each = work.stitch, work.each
    places = _said_places(work, here)
    name = style.stitch(stitch, not is_one(each))
    if not is_one(each) or any(isinstance(p, Evenly) for p in places):
        text = style.counted(each, name)
    elif style.terms == "UK" and _wears_a_one(stitch):
        text = f"1 {name}"
    else:
        text = name
    where = _places(places, style, style.terms == "UK" or not is_one(each) or _gathered(stitch))
    where = _with_post(_with_loop(where, stitch, style), stitch)
    through = f" through {work.through}" if work.through else ""
    return f"{text}{' ' + where if where else ''}{through}{_counts(work.counts, style)}"


def _said_places(work: Work, here: bool) -> tuple[Any, ...]:
    """The places that must be said: a bare `inc` goes into the next stitch, a bare `sc2tog` over the next
    two.
    """
    if not here and len(work.places) == 1 and is_one(work.each):
        place = work.places[0]
        if work.stitch.kind == "inc" and place == Next():
            return ()
        if _is_own_legs(work):
            return ()
    return work.places


def _is_own_legs(work: Work) -> bool:
    place = work.places[0] if len(work.places) == 1 else None
    legs = work.stitch.number if work.stitch.form == "tog" else 2
    return _gathered(work.stitch) and place == Over(Amount((legs,)))


def _gathered(stitch: Stitch) -> bool:
    return stitch.form == "tog" or stitch.kind == "dec"


def _wears_a_one(stitch: Stitch) -> bool:
    """UK print says `1 dc`; not of slip stitches, increases, or what is named with a number of its own."""
    return not stitch.form and stitch.kind not in ("slip", "inc", "dec", "special") and not stitch.invisible


def _places(places: Sequence[Any], style: Style, each_of: bool) -> str:
    return " and ".join(write_place(p, style, each_of) for p in places if write_place(p, style, each_of))


def _with_loop(where: str, stitch: Stitch, style: Style) -> str:
    if not stitch.loop:
        return where
    loop = style.word(stitch.loop)
    if where.startswith("in "):
        return f"in {loop} of {where[3:]}"
    return f"in {loop} {where}".rstrip()


def _with_post(where: str, stitch: Stitch) -> str:
    if stitch.post in ("front", "back"):
        return "around " + where[3:] if where.startswith("in ") else where
    if stitch.post == "around":
        return f"around post of {where[3:]}" if where.startswith("in ") else f"around post {where}".rstrip()
    return where


def _counts(counts: CountsAs | None, style: Style) -> str:
    if counts is None:
        return ""
    chains = f"{style.word('skipped')} {style.word('chain', True)} " if counts.skipped else ""
    if counts.nothing:
        return f" ({chains}{'do' if chains else 'does'} not count)"
    parts = [style.stitch(counts.stitch)] if counts.stitch is not None else []
    if counts.chains:
        parts.append(style.word("chains", n=counts.chains))
    if counts.space:
        parts.append(style.word("chain-n-space", n=counts.space))
    return f" ({chains}count{'' if chains else 's'} as {', '.join(parts)})"


def _chain(chain: Chain, style: Style) -> str:
    length = chain.length
    if (length.varies or length.variable) and style.terms == "UK":
        text = f"{written(length)} {style.word('chain')}"
    else:
        text = style.word("chains", n=written(length))
    return text + _counts(chain.counts, style)


# ---- repeats ---------------------------------------------------------------------------------------


def bracketed(text: str) -> str:
    """Round brackets, square ones around round ones, curly ones around square ones."""
    if "[" in text:
        return f"{{{text}}}"
    return f"[{text}]" if "(" in text else f"({text})"


def _repeat(repeat: Repeat, style: Style, here: bool, depth: int) -> str:
    if _needs_star(repeat):
        return _starred(repeat, style, here, depth)
    only = repeat.steps[0] if len(repeat.steps) == 1 else None
    if (
        isinstance(only, Work)
        and not here
        and only.counts is None
        and is_one(only.each)
        and _is_own_legs(only)
    ):
        inside = _work(only, style, here)
    else:
        inside = bracketed(write_steps(repeat.steps, style, here))
    if repeat.times is not None:
        return f"{inside} × {written(repeat.times)}"
    return f"{inside} {write_until(repeat.until or Until(), style)}"


def _needs_star(repeat: Repeat) -> bool:
    if repeat.unclear or repeat.stop_at is not None or repeat.ending or repeat.omitting:
        return True
    times = repeat.times
    if times is None:
        return repeat.star
    if times.variable:
        return times.variable.endswith("+1")
    return repeat.star and all(size is not None and size > 1 for size in times.sizes)


def _starred(repeat: Repeat, style: Style, here: bool, depth: int) -> str:
    mark = _MARKS[depth]
    steps = repeat.steps
    if repeat.stop_at is None:
        inside = write_steps(steps, style, here, depth + 1)
    else:
        before = write_steps(steps[: repeat.stop_at], style, here, depth + 1)
        after = write_steps(steps[repeat.stop_at :], style, here, depth + 1)
        inside = f"{before}, {mark}{mark}{after}" if before else f" {mark}{mark}{after}"
    text = f"{mark}{inside}; {style.word('rep')} from {mark} {_how_far(repeat, style)}"
    if repeat.stop_at is not None:
        text += f", ending last {style.word('rep')} at {mark}{mark}"
    if repeat.ending:
        text += f", ending with {_last(repeat.ending, style, here, depth)}"
    if repeat.omitting:
        text += f", omitting last {_last(repeat.omitting, style, here, depth)}"
    return text


def _last(steps: Sequence[Step], style: Style, here: bool, depth: int) -> str:
    return " then ".join(_step(step, style, here, depth + 1) for step in steps)


def _how_far(repeat: Repeat, style: Style) -> str:
    times = repeat.times
    if times is None:
        return write_until(repeat.until or Until(), style)
    if repeat.unclear:
        return f"{written(times)} times"
    if times.variable:
        return f"{times.variable.removesuffix('+1')} more times"
    more = Amount(tuple(None if size is None else size - 1 for size in times.sizes))
    if is_one(more):
        return "once more"
    return "twice more" if more == Amount((2,)) else f"{written(more)} more times"


def _again(again: Again, style: Style) -> str:
    times = again.times
    if is_one(times):
        return f"{style.word('rep')} from * to *"
    often = "twice more" if times == Amount((2,)) else f"{written(times)} more times"
    return f"{style.word('rep')} from * to * {often}"


# ---- the rest --------------------------------------------------------------------------------------


def _several(count: Amount, target: Any, style: Style) -> str:
    return style.target(target) if is_one(count) else style.counted(count, style.target(target, True))


def _skip(skip: Skip, style: Style) -> str:
    which = f"{skip.which} " if skip.which == "first" or is_one(skip.count) else ""
    return f"{style.word('skip')} {which}{_several(skip.count, skip.target, style)}"


def _leave(leave: Leave, style: Style) -> str:
    if leave.count is None:
        return f"leave remaining {style.target(leave.target, True)} unworked"
    return f"leave last {_several(leave.count, leave.target, style)} unworked"


def _working_over(step: WorkingOver, style: Style) -> str:
    side = "behind" if step.side == "behind" else "in front of"
    return f"working {side} next {_several(step.count, step.target, style)}"


def _to(place: Any, style: Style) -> str:
    text = write_place(place, style)
    return " to " + text[3:] if text.startswith("in ") else " " + text


def _join(join: Join, style: Style) -> str:
    if join.place is None:
        return "join" if join.stitch == Stitch("slip") else f"join with {style.stitch(join.stitch)}"
    return f"join with {style.stitch(join.stitch)}{_to(join.place, style)}"


def _join_yarn(join: JoinYarn, style: Style) -> str:
    standing = "standing " if join.standing else ""
    place = f" {write_place(join.place, style)}" if join.place is not None else ""
    return f"join {join.yarn or 'yarn'} with {standing}{style.stitch(join.stitch)}{place}"


def _turn(turn: Turn, style: Style) -> str:
    return "turn" if turn.turns else "do not turn"


def _fasten_off(step: FastenOff, style: Style) -> str:
    return f"fasten off {step.yarn}".rstrip()


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
    return f"({_count(tally, style)})"


def _count(tally: Tally, style: Style) -> str:
    parts = []
    if tally.total is not None:
        parts.append(f"{written(tally.total)} {style.target(STITCH, not is_one(tally.total))}")
    for amount, what in tally.entries:
        several = not is_one(amount)
        noun = style.stitch(what, several) if isinstance(what, Stitch) else style.target(what, several)
        parts.append(f"{written(amount)} {noun}")
    return ", ".join(parts)


_WRITERS: dict[type, Callable[[Any, Style], str]] = {
    Chain: _chain, Again: _again, Skip: _skip, Leave: _leave, WorkingOver: _working_over, Join: _join,
    Turn: _turn,
    FastenOff: _fasten_off, Marker: _marker, Yarn: _yarn, JoinYarn: _join_yarn, OtherSide: _other_side,
    Tally: _tally,
}  # fmt: skip
