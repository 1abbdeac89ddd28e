"""Reads what a repeat's last pass leaves out, or has instead: `omitting last 2 dc`, `2 dc instead of 3`."""

from dataclasses import replace

from .cursor import Cursor, UnreadableError
from .names import starts_stitch
from .tree import ONE, Amount, Group, Next, Repeat, Skip, Step, Work


def read_omitted(cursor: Cursor, inside: tuple[Step, ...]) -> tuple[tuple[Step, ...], tuple[Step, ...]]:
    """What stands behind `omitting`: the repeat's steps, and those of them that its last pass leaves out.

    A run that is left out in part stands there as two: `dc in next dc, dc in next 2 dc`.
    """
    first = cursor.at
    left_out = _last_ones(cursor)
    inside = _parted(inside, left_out)
    omitting = _named_at_the_end(inside, left_out)
    if not omitting:
        raise UnreadableError(first, "omitted", cursor.at - 1)
    return inside, omitting


def without_the_last(cursor: Cursor, made: Repeat, first: int) -> Repeat:
    """`(…) 4 times, omitting last ch 2`: printed with an asterisk, as what it leaves out has to be."""
    at = cursor.at
    cursor.take(",")
    if not cursor.take("omitting"):
        cursor.at = at
        return made
    inside, omitting = read_omitted(cursor, made.steps)
    return replace(made, steps=inside, omitting=omitting, star=True, span=cursor.span(first))


def _last_ones(cursor: Cursor) -> tuple[Step, ...]:
    """The step or steps after `omitting last`, joined by `and` or `then`; `and ending ss in first dc` is what
    comes behind the repeat."""
    steps: list[Step] = []
    group = _bare_group(cursor)
    if group is not None:
        return (group,)
    cursor.read_step(cursor, steps)
    while cursor.means in ("and", "then") and cursor.ahead() not in ("ending-with", "join"):
        cursor.at += 1
        cursor.read_step(cursor, steps)
    return tuple(steps)


def _bare_group(cursor: Cursor) -> Group | None:
    """`omitting (3tr, 3ch, 3tr)`: a group without its place; None (and nothing passed) where more follows."""
    if cursor.means != "(":
        return None
    first, close = cursor.at, cursor.words[cursor.at].value
    if cursor.words[close + 1].means not in _CLOSES:
        return None
    here, cursor.here = cursor.here, True
    cursor.at = first + 1
    inside = cursor.read_block(cursor, "")
    cursor.here = here
    cursor.at = close + 1
    return Group(tuple(inside), (), span=cursor.span(first))


_CLOSES = frozenset({",", "end", ")"})


def _parted(inside: tuple[Step, ...], left_out: tuple[Step, ...]) -> tuple[Step, ...]:
    """`dc in each of next 3 dc`, of which the last pass omits the `last 2 dc`: one, and two."""
    match inside[-1:], left_out:
        case (
            (Work(each=each, places=(Next(count=Amount(sizes=(int() as several,))) as run,)) as work,),
            (
                Work(
                    stitch=stitch,
                    each=named,
                    places=(Next(count=Amount(sizes=(int() as fewer,)), span=None),),
                ),
            ),
        ) if stitch == work.stitch and each == named == ONE and 0 < fewer < several:
            before = replace(work, places=(replace(run, count=Amount((several - fewer,))),))
            after = replace(work, places=(replace(run, count=Amount((fewer,))),))
            return (*inside[:-1], before, after)
    return inside


def _named_at_the_end(inside: tuple[Step, ...], left_out: tuple[Step, ...]) -> tuple[Step, ...]:
    """`omitting last dc` names the repeat's last step without its place, and what is skipped behind it goes
    with it; () where that isn't its last.
    """
    end = len(inside)
    while end and isinstance(inside[end - 1], Skip) and inside[end - 1 : end] != left_out[-1:]:
        end -= 1
    own = inside[max(end - len(left_out), 0) : end]
    if len(own) != len(left_out) or not all(map(is_short_for, left_out, own)):
        return ()
    return inside[end - len(left_out) :]


def is_short_for(said: Step, step: Step) -> bool:
    """Whether a step is named without its place, or a group without its own."""
    match said, step:
        case Group(steps=steps, places=()), Group(steps=own):
            return steps == own
        case Work(stitch, each, (Next(count=count, span=None),)), Work(own, number, (place,)) if (
            own == stitch
        ):
            several = getattr(place, "count", ONE)
            return (each, count) in ((number, several), (ONE, number), (number, ONE))
    return said == step


def starts_instead(cursor: Cursor, at: int) -> bool:
    """Whether `2 dc instead of 3 dc` stands at a word."""
    words = cursor.words
    if words[at].means != "num" or not starts_stitch(cursor, at + 1) or at + 6 > len(words):
        return False
    said = cursor.said(at + 2, at + 3).lower()
    return said == "instead" and words[at + 3].means == "of" and words[at + 4].means == "num"


def pass_instead(cursor: Cursor) -> None:
    """`2 dc instead of 3 dc in last st` is `2 dc in last st`: the finger goes to where that stands."""
    words, at = cursor.words, cursor.at
    named = starts_stitch(cursor, at + 5)
    words[at + 3 + named], words[at + 4 + named] = words[at], words[at + 1]
    cursor.at = at + 3 + named
