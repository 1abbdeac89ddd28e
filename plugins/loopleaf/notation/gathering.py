"""Reads stitches gathered into one: `(dc, tr) tog over next 2 sts`, `sc next 2 sts together`.

Also the long way round, `dc in each of next 2 sts, leaving last loop of each on hook, yo and draw through
all 3 loops on hook`.
"""

from dataclasses import replace

from .cursor import Cursor, UnreadableError
from .places import read_places, starts_place
from .tree import (
    ONE,
    STITCH,
    Amount,
    First,
    Here,
    Last,
    Next,
    Over,
    Place,
    Repeat,
    Skip,
    Span,
    Step,
    Stitch,
    Target,
    Together,
    Work,
)

_SMALL = frozenset({",", "and", "then"})


def gathered(steps: tuple[Step, ...], place: Place | None, span: Span) -> Step:
    """The stitches as one: by its plain name (`dc2tog`) where they are of one kind and side by side."""
    legs = legs_of_all(steps)
    first = steps[0]
    alike = isinstance(first, Work) and all(
        isinstance(one, Work) and one.stitch == first.stitch and one.counts is None and not one.through
        for one in steps
    )
    if (
        alike
        and isinstance(first, Work)
        and not first.stitch.form
        and first.stitch.kind not in NEVER_GATHERED
    ):
        whole = replace(first.stitch, form="tog", number=legs)
        in_turn = all(isinstance(one, Work) and one.places == (Next(),) for one in steps)
        if place is not None:
            return Work(whole, ONE, (place,), span=span)
        if in_turn:
            return Work(whole, ONE, (Over(Amount((legs,))),), span=span)
    return Together(steps, place, span=span)


NEVER_GATHERED = frozenset({"inc", "dec", "special", "slip", "chain"})


def legs_of_all(steps: tuple[Step, ...]) -> int:
    """How many stitches are gathered. Raises UnreadableError where that isn't one number in every size."""
    return sum((one.each.sizes[0] or 0) for one in steps if isinstance(one, Work))


def apart(steps: list[Step]) -> tuple[Step, ...]:
    """Each stitch by itself: `dc in each of next 2 sts` and `(dc in next st) twice` are two."""
    found: list[Step] = []
    for step in steps:
        if isinstance(step, Repeat) and step.times is not None and not step.times.varies:
            found += apart(list(step.steps)) * (step.times.sizes[0] or 0)
        elif isinstance(step, Work) and len(step.places) == 1 and isinstance(step.places[0], Next):
            place = step.places[0]
            number = place.count.sizes[0] or 0
            found += [replace(step, places=(replace(place, count=ONE),))] * number
        else:
            found.append(step)
    return tuple(found)


def read_bracketed(cursor: Cursor, first: int, steps: list[Step]) -> None:
    """`(dc in next st, tr in next st) tog`, `(dc, tr) tog over next 2 sts`, `(dc, 2 tr) tog in same sp`; the
    hand stands on the `tog` behind the bracket.
    """
    from .repeats import inside_of, read_times

    tog = cursor.at
    cursor.at += 1
    place: Place | None = None
    if starts_place(cursor, cursor.at) or cursor.means in ("next", "first", "last", "same"):
        where = read_places(cursor)
        if len(where.places) != 1 or where.loop or where.post or where.through:
            raise UnreadableError(tog, "tog-place", cursor.at - 1)
        place = where.places[0]
    after = cursor.at
    unread = len(cursor.unread)
    inside = inside_of(cursor, first + 1, cursor.here if place is None else _is_one(place))
    cursor.at = after
    if len(cursor.unread) > unread:
        return
    legs = apart(list(inside))
    if not legs or not all(isinstance(one, Work | Skip) for one in legs):
        raise UnreadableError(first, "tog-what", tog)
    if place is not None and not _is_one(place):
        in_turn = isinstance(place, Next) or (isinstance(place, Over) and place.which == "next")
        several = any(one.each != ONE for one in legs if isinstance(one, Work))
        if not in_turn or several or _places_of(place) != legs_of_all(legs):
            raise UnreadableError(tog, "tog-place", after - 1)
        place = None
    made = gathered(legs, place, cursor.span(first))
    times = read_times(cursor)
    steps.append(made if times is None else Repeat((made,), times, span=cursor.span(first)))


def _is_one(place: Place | None) -> bool:
    """Whether all legs go into one place."""
    return place is not None and not (
        isinstance(place, Over | Next | First | Last) and (place.count != ONE or isinstance(place, Over))
    )


def _places_of(place: Place) -> int:
    plain = isinstance(place, Over | Next | First | Last) and place.target.kind == "stitch"
    return (place.count.sizes[0] or 0) if plain and isinstance(place, Over | Next | First | Last) else 0


def read_next_together(cursor: Cursor, work: Work) -> Work:
    """`sc next 2 sts together`: the same as sc2tog over them; the hand stands on the `together`."""
    place = work.places[0] if len(work.places) == 1 else None
    number = _places_of(place) if place is not None else 0
    if (
        number < 2
        or work.stitch.form
        or work.stitch.kind in NEVER_GATHERED
        or not isinstance(place, Next | First | Last)
    ):
        raise cursor.fail("step")
    cursor.at += 1
    which = {Next: "next", First: "first", Last: "last"}[type(place)]
    over = Over(place.count, place.target, which, place.span)  # type: ignore[arg-type]
    return replace(work, stitch=replace(work.stitch, form="tog", number=number), each=ONE, places=(over,))


def starts_so_many_together(cursor: Cursor, at: int) -> bool:
    """Whether `last 2 dc together`, `next 2 sts tog` stands at a word, behind `work`."""
    means = [word.means for word in cursor.words[at : at + 4]]
    return means[:2] in (["last", "num"], ["next", "num"], ["first", "num"]) and (
        means[2:] in (["st", "tog"], ["stitch", "tog"])
    )


def read_so_many_together(cursor: Cursor, steps: list[Step]) -> None:
    """`work last 2 dc together`: dc2tog over them; of `sts`, the decrease of the row's own kind."""
    first = cursor.at
    number: Amount = cursor.words[first + 1].value
    named: Stitch = cursor.words[first + 2].value
    kind = cursor.words[first + 2].means == "stitch"
    legs = 0 if number.variable or number.varies else number.sizes[0] or 0
    if legs < 2:
        raise UnreadableError(first, "step", first + 3)
    if not kind and number != Amount((2,)):
        raise UnreadableError(first, "step", first + 3)
    cursor.at += 4
    span = cursor.span(first)
    stitch = replace(named, form="tog", number=legs) if kind else Stitch("dec")
    target = Target("stitch", named) if kind else STITCH
    over = Over(number, target, cursor.words[first].means, span)  # type: ignore[arg-type]
    steps.append(Work(stitch, ONE, (over,), span=span))


# ---- the long way round ------------------------------------------------------------------------------------


def read_holding(cursor: Cursor, steps: list[Step]) -> None:
    """From `leaving last loop of each on hook` to `draw through all 3 loops on hook`."""
    first = cursor.at
    held: list[Step] = []
    if _belongs_to_the_last(cursor, steps):
        held.append(steps.pop())
    cursor.at += 1
    while cursor.means not in ("yarn-over", "draw"):
        if cursor.means == ")" and held:
            cursor.held = True
            steps += held
            return
        if cursor.means in ("end", ")", "rep", "*"):
            raise UnreadableError(first, "draw-through", cursor.at - 1)
        if cursor.means in _SMALL or cursor.means == "holding":
            cursor.at += 1
            continue
        cursor.read_step(cursor, held)
    legs = apart(held)
    start = min([first, *(_begins(cursor, one) for one in held[:1])])
    if not legs or not all(isinstance(one, Work | Skip) for one in legs):
        raise UnreadableError(first, "tog-what", cursor.at - 1)
    _draw_through(cursor, legs_of_all(legs))
    steps.append(gathered(legs, _the_one_place(legs), cursor.span(start)))


def read_draw(cursor: Cursor, steps: list[Step]) -> None:
    """`(dc in next st, leaving last loop on hook) twice, yo and draw through all 3 loops`."""
    first = cursor.at
    if not cursor.held or not steps or not isinstance(steps[-1], Repeat):
        raise cursor.fail("step")
    cursor.held = False
    legs = apart([steps.pop()])
    if not legs or not all(isinstance(one, Work | Skip) for one in legs):
        raise UnreadableError(first, "tog-what", cursor.at)
    _draw_through(cursor, legs_of_all(legs))
    steps.append(gathered(legs, _the_one_place(legs), cursor.span(first)))


def _belongs_to_the_last(cursor: Cursor, steps: list[Step]) -> bool:
    """Whether the words speak of the stitch before them; else of those that follow."""
    if not steps or not isinstance(steps[-1], Work | Repeat):
        return False
    words, at = cursor.words, cursor.at
    if words[at - 1].means != "," or words[at + 1].means == ")":
        return True
    ahead = [word.means for word in words[at + 1 :]]
    closes = next((i for i, means in enumerate(ahead) if means == "draw"), len(ahead))
    before = [means for means in ahead[:closes] if means not in _SMALL]
    return "holding" in before or before in ([], ["yarn-over"])


def _begins(cursor: Cursor, step: Step) -> int:
    span = step.span
    return next((i for i, word in enumerate(cursor.words) if span and word.start == span.start), cursor.at)


def _the_one_place(legs: tuple[Step, ...]) -> Place | None:
    """The place of all the legs, where they only stand in the group's own."""
    here = all(isinstance(one, Work) and one.places == (Here(),) for one in legs)
    return Here() if here else None


def _draw_through(cursor: Cursor, legs: int) -> None:
    """`yo and draw through all 3 loops on hook`: there is one loop more than there are stitches."""
    while cursor.means in _SMALL or cursor.means == "yarn-over":
        cursor.at += 1
    at = cursor.at
    if not (cursor.words[at - 1].means in ("yarn-over", *_SMALL) and cursor.take("through")):
        cursor.need("draw", "draw-through")  # `yo and through all loops on hook` leaves it out
    cursor.take("all")
    at = cursor.at
    if cursor.means == "num":
        if cursor.words[at].value.sizes[0] != legs + 1:
            raise UnreadableError(at, "loops-on-hook", at + 1)
        cursor.at += 1
    cursor.take("loop")
    if cursor.means == "in" and cursor.ahead() == "hook":
        cursor.at += 2
