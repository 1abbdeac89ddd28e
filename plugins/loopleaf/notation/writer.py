"""Writes the tree as print: US or UK, short or in full. What is written reads back to the same tree."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from .group_loops import post_said_once, said_once
from .leaning import leaning
from .place_writer import write_place, write_until
from .shaping import write_shaping
from .step_writer import WRITERS, write_counts, write_sides, write_tally
from .straight import AS_BELOW
from .style import Style, is_one, written
from .tree import (
    ONE,
    Amount,
    Each,
    Evenly,
    Group,
    Here,
    Line,
    Next,
    Over,
    Passage,
    Repeat,
    Step,
    Stitch,
    Tally,
    Together,
    Until,
    Work,
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
    return write_tally(tally, Style(terms, full, vocabulary))


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
        loop, steps = said_once(step.steps)
        post, steps = post_said_once(steps)
        inside = bracketed(write_steps(steps, style, True))
        where = _with_loop(_places(step.places, style, False), Stitch("", loop=loop), style)
        where = _with_post(where, Stitch("", post=post))
        return f"{inside} {where}{write_counts(step.counts, style)}"
    if isinstance(step, Together):
        whole = leaning(step)
        if whole is not None:
            return _work(whole, style, here)
        alone = [
            one for one in step.steps if isinstance(one, Work) and one.each == ONE and one.places == (Next(),)
        ]
        in_turn = len(alone) == len(step.steps)
        legs = [replace(one, places=(Here(),)) for one in alone] if in_turn else step.steps
        inside = bracketed(write_steps(legs, style, in_turn or step.place is not None))
        place = Over(Amount((len(alone),))) if in_turn else step.place
        where = f" {write_place(place, style)}" if place is not None else ""
        return f"{inside} {style.word('together')}{where}{write_counts(step.counts, style)}"
    if isinstance(step, Passage):
        mark = _MARKS[depth]
        return f"{mark}{write_steps(step.steps, style, here, depth + 1)}{mark}"
    return WRITERS[type(step)](step, style)


# ---- stitches -------------------------------------------------------------------------------------


def _work(work: Work, style: Style, here: bool) -> str:
    stitch, each = work.stitch, work.each
    pulled = f" {work.tension}" if work.tension else ""
    match work.places:
        case (Each(until=until),) if stitch == AS_BELOW and work.shaping is not None:
            told = write_shaping(work.shaping, style, alone=True)
            if work.shaping.spot and until.word == "across":
                return f"{told}{pulled}"
            return f"{told} {write_until(until, style)}{pulled}"
        case (Each(until=until),) if stitch == AS_BELOW:
            return f"work even{pulled} {write_until(until, style)}"
    if not here and _chooses_its_places(work, style):
        return _by_its_name(work, style) + pulled
    places = _said_places(work, here)
    name = style.stitch(stitch, not is_one(each))
    if not is_one(each) or any(isinstance(p, Evenly) for p in places):
        text = style.counted(each, name)
    elif style.terms == "UK" and _wears_a_one(stitch):
        text = f"1 {name}"
    else:
        text = name
    # Around two posts at once is another thing: `FPdc around each of next 2 sts`.
    each_of = style.terms == "UK" or not is_one(each) or _gathered(stitch) or bool(stitch.post)
    where = _places(places, style, each_of)
    where = _with_post(_with_loop(where, stitch, style), stitch)
    through = f" through {work.through}" if work.through else ""
    shaping = f", {write_shaping(work.shaping, style)}" if work.shaping is not None else ""
    return f"{text}{pulled}{' ' + where if where else ''}{through}{write_counts(work.counts, style)}{shaping}"


def _chooses_its_places(work: Work, style: Style) -> bool:
    """Whether it is a stitch of the author's own, called by its name alone: where it goes its definition says
    (`cdc × 6` over twelve stitches, `picot` on the stitch before it).
    """
    stitch = work.stitch
    special = style.vocabulary.specials.get(stitch.name) if style.vocabulary is not None else None
    plain = stitch == Stitch("special", name=stitch.name) and is_one(work.each)
    if special is None or not special.work or not plain or work.through or work.shaping is not None:
        return False
    match work.places:
        case (Next(count=count, span=None) as place,):
            return place == Next(count) and (is_one(count) or work.counts is None)
        case (Each(until=until, span=None) as place,):
            return place == Each(until=until)
    return False


def _by_its_name(work: Work, style: Style) -> str:
    name, place = style.stitch(work.stitch), work.places[0]
    if isinstance(place, Each):
        name = f"{name} {write_until(place.until, style)}"
    elif isinstance(place, Next) and not is_one(place.count):
        name = f"{name} × {written(place.count)}"
    return f"{name}{write_counts(work.counts, style)}"


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
        loop = style.word("split-of") if stitch.loop == "split" else loop
        return f"in {loop} of {where[3:]}"
    return f"in {loop} {where}".rstrip()


def _with_post(where: str, stitch: Stitch) -> str:
    if stitch.post in ("front", "back"):
        return "around " + where[3:] if where.startswith("in ") else where
    if stitch.post == "around":
        return f"around post of {where[3:]}" if where.startswith("in ") else f"around post {where}".rstrip()
    return where


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
        text += f", omitting last {_last(repeat.omitting, style, here, depth, ' and ')}"
    return text


def _last(steps: Sequence[Step], style: Style, here: bool, depth: int, link: str = " then ") -> str:
    return link.join(_step(step, style, here, depth + 1) for step in steps)


def _how_far(repeat: Repeat, style: Style) -> str:
    times = repeat.times
    if times is None:
        return write_until(repeat.until or Until(), style)
    if repeat.sides:
        return write_sides(repeat.sides)
    if repeat.unclear:
        return f"{written(times)} times"
    if times.variable:
        return f"{times.variable.removesuffix('+1')} more times"
    more = Amount(tuple(None if size is None else size - 1 for size in times.sizes))
    if is_one(more):
        return "once more"
    return "twice more" if more == Amount((2,)) else f"{written(more)} more times"
