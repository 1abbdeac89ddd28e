"""Reads what is worked again: brackets with a number of times, asterisks with `rep from *`, and groups in
one place.

Round brackets are told apart by what stands behind them: a number of times or an end (`x 8`, `around`) makes
a repeat, a place (`in next sp`) a group; a count inside, at the line's end, is an aside. Sizes and `counts
as` asides never get here: they are read with the number or the step before them.
"""

from dataclasses import replace

from .all_in_one import pass_all
from .asides import is_tally, read_tally
from .called_again import pass_between_stars, read_sides
from .cursor import Cursor, UnreadableError, read_amount
from .ending_places import ending_place
from .gathering import read_bracketed
from .group_loops import in_loop, in_post
from .names import starts_stitch
from .nth_space import pass_to_the_nth
from .omitting import is_short_for, pass_instead, read_omitted, starts_instead, without_the_last
from .places import read_places, starts_place
from .so_many_groups import read_so_many_groups
from .tree import ONE, Again, Amount, Group, Passage, Repeat, Step, Until
from .untils import read_until, starts_until


def read_times(cursor: Cursor) -> Amount | None:
    """`x 8`, `8 times`, `twice`; None (and nothing passed) where no number of times stands."""
    first = cursor.at
    if cursor.means == "times-word":
        cursor.at += 1
        return Amount((cursor.words[first].value,))
    if cursor.take("x") or _pass_a_star(cursor):
        amount = read_amount(cursor)
        if amount is None:
            raise cursor.fail("times")
        cursor.take("times")
        return amount
    if cursor.means in ("num", "-"):
        amount = read_amount(cursor)
        if amount is not None and (cursor.take("times") or _x_behind(cursor)):
            return amount
        cursor.at = first
    return None


def _pass_a_star(cursor: Cursor) -> bool:
    """`(sc, inc)*6`: the asterisk is a times sign where a number and nothing else follows the bracket."""
    behind = cursor.words[cursor.at - 1].means == ")"
    alone = cursor.ahead() == "num" and cursor.ahead(2) in ("end", ",", "(", "times")
    return behind and alone and cursor.take("*")


def _x_behind(cursor: Cursor) -> bool:
    """`4x` behind what is repeated."""
    counted = cursor.ahead() == "(" and is_tally(cursor, cursor.at + 1)  # `[sc 3, inc] 6x [30]`
    return (cursor.ahead() not in ("num", "(") or counted) and cursor.take("x")


def read_bracket(cursor: Cursor, steps: list[Step]) -> None:
    """What begins with a bracket: a repeat, a group in one place, or a count. Raises UnreadableError where
    it can't be told.
    """
    first = cursor.at
    close: int = cursor.words[first].value
    if cursor.words[close + 1].means == "tog":
        cursor.at = close + 1
        read_bracketed(cursor, first, steps)
        return
    if is_tally(cursor, first):
        cursor.at += 1
        steps.append(read_tally(cursor, close))
        cursor.at = close + 1
        return
    cursor.at = close + 1
    times = read_times(cursor)
    pass_to_the_nth(cursor, steps)
    pass_all(cursor)
    grouped = starts_place(cursor, cursor.at)
    after = cursor.at
    unread = len(cursor.unread)
    alone = times is None and not grouped and _is_a_definition(cursor, first, close)
    inside = inside_of(cursor, first + 1, cursor.here or grouped or alone)
    if not inside and len(cursor.unread) == unread:
        raise UnreadableError(first, "step", close)
    cursor.at = after
    made: Step
    if grouped:
        if times is not None:
            inside = (Repeat(inside, times, span=cursor.span(first)),)
        where = read_places(cursor)
        if where.loop:
            inside = in_loop(inside, where.loop)
        if where.post:
            inside = in_post(inside, where.post)
        made = Group(inside, where.places, span=cursor.span(first))
        if where.through:
            raise UnreadableError(after, "group-place", cursor.at - 1)
        again = read_times(cursor)
        if again is not None:
            made = Repeat((made,), again, span=cursor.span(first))
    elif times is not None:
        made = without_the_last(cursor, Repeat(inside, times, span=cursor.span(first)), first)
    elif starts_until(cursor, after):
        made = Repeat(inside, until=read_until(cursor), span=cursor.span(first))
        made = _working_last(cursor, without_the_last(cursor, made, first), first)
    elif alone:
        made = Group(inside, span=cursor.span(first))
    elif len(cursor.unread) == unread and _is_numbered_elsewhere(cursor, first, close):
        steps.extend(inside)
        return
    elif len(cursor.unread) == unread:
        made = _repeated_in_words(cursor, inside, first, close)
    else:
        return
    steps.append(made)


def _working_last(cursor: Cursor, made: Repeat, first: int) -> Repeat:
    """`(…) across, working last dc in top of tch`: printed with an asterisk, as an ending has to be."""
    at = cursor.at
    cursor.take(",")
    if cursor.means != "working" or not _starts_ending(cursor):
        cursor.at = at
        return made
    return replace(made, ending=_last_steps(cursor), star=True, span=cursor.span(first))


def _is_a_definition(cursor: Cursor, first: int, close: int) -> bool:
    """Whether the bracket is all that a stitch of the author's own is told by: rounds say where."""
    whole = first == 0 and cursor.words[close + 1].means == "end"
    return whole and any(one.work == cursor.text for one in cursor.vocabulary.specials.values())


def _is_numbered_elsewhere(cursor: Cursor, first: int, close: int) -> bool:
    """`(1 sc, inc), sc in next 4, (1 sc, inc) x 3`: without its number the same bracket is worked once."""
    words, said = cursor.words, cursor.said(first, close + 1).lower()
    if words[close + 1].means not in (",", "end", "("):
        return False
    others = [(at, word.value) for at, word in enumerate(words) if word.means == "(" and at != first]
    return any(
        words[end + 1].means in ("x", "times-word", "num") and cursor.said(at, end + 1).lower() == said
        for at, end in others
    )


def read_times_first(cursor: Cursor, steps: list[Step], times: Amount, first: int) -> None:
    """`4 x (…)`: what `(…) x 4` says. The finger is on the x."""
    opening = cursor.at + 1
    close: int = cursor.words[opening].value
    inside = inside_of(cursor, opening + 1, cursor.here)
    cursor.at = close + 1
    if inside:
        steps.append(Repeat(inside, times, span=cursor.span(first)))


def inside_of(cursor: Cursor, start: int, here: bool) -> tuple[Step, ...]:
    """The steps between two brackets, read with surroundings of their own."""
    keep = cursor.here, cursor.stars, cursor.stop_at, cursor.loop, cursor.through
    cursor.here, cursor.stars, cursor.stop_at = here, [], None
    cursor.at = start
    inside = cursor.read_block(cursor, "")
    cursor.here, cursor.stars, cursor.stop_at, cursor.loop, cursor.through = keep
    return tuple(inside)


def _repeated_in_words(cursor: Cursor, inside: tuple[Step, ...], first: int, close: int) -> Step:
    """`(…), repeat around`, `(…), rep 5 more times`: the bracket is what is repeated."""
    at = cursor.at
    cursor.take(",")
    if cursor.means == "rep" and cursor.ahead() != "from":
        cursor.at += 1
        return read_tail(cursor, inside, first, False)
    cursor.at = at
    raise UnreadableError(first, "bracket-tail", close)


# ---- asterisks -------------------------------------------------------------------------------------


def read_star(cursor: Cursor, steps: list[Step]) -> None:
    """`*…; rep from * around`, or a stretch between two asterisks that is called on later."""
    first = cursor.at
    mark: str = cursor.words[first].value
    if mark in cursor.stars:
        raise UnreadableError(first, "star-again", first)
    cursor.at += 1
    keep = cursor.stop_at
    cursor.stop_at = None
    cursor.stars.append(mark)
    inside = tuple(cursor.read_block(cursor, mark))
    cursor.stars.pop()
    stop_at = cursor.stop_at
    cursor.stop_at = keep
    if not inside and not cursor.unread and cursor.means in ("rep", "*"):
        cursor.unread.append(UnreadableError(first, "star-empty", first))
    if cursor.means == "rep":
        _need_from(cursor)
        steps.append(read_tail(cursor, inside, first, True, stop_at))
    elif cursor.means == "*" and cursor.words[cursor.at].value == mark:
        cursor.at += 1
        cursor.passages[mark] = first
        steps.append(_after_second_star(cursor, inside, first))
    else:
        steps.extend(inside)
        cursor.unread.append(UnreadableError(first, "rep-from", first))


def _need_from(cursor: Cursor) -> bool:
    """`rep from *`, `rep from * to *`, or a bare `rep`, which can only mean the asterisk that is open.

    Gives whether the second asterisk is named.
    """
    if pass_between_stars(cursor):
        return True
    cursor.at += 1
    if cursor.take("from") or cursor.means == "*":
        cursor.need("*", "star")
        if cursor.means == "to" and cursor.ahead() == "*":
            cursor.at += 2
            return True
    return False


def _after_second_star(cursor: Cursor, inside: tuple[Step, ...], first: int) -> Step:
    at = cursor.at
    times = read_times(cursor)
    if times is not None:
        return Repeat(inside, times, star=True, span=cursor.span(first))
    if starts_until(cursor, cursor.at):
        return Repeat(inside, until=read_until(cursor), star=True, span=cursor.span(first))
    while cursor.take(","):
        pass
    if cursor.means == "rep":
        to_star = _need_from(cursor)
        if starts_until(cursor, cursor.at) or (
            cursor.means in ("num", "times-word") and not (to_star and _says_more(cursor))
        ):
            return read_tail(cursor, inside, first, True)
    cursor.at = at
    cursor.passage = True
    return Passage(inside, cursor.span(first))


def _says_more(cursor: Cursor) -> bool:
    at = cursor.at
    if read_times(cursor) is None:
        read_amount(cursor)
    more = cursor.means == "more" or cursor.words[at].value == 1
    cursor.at = at
    return more


def read_again(cursor: Cursor) -> Step:
    """`rep from * to *`, `rep from * to * twice more`."""
    first = cursor.at
    if not pass_between_stars(cursor):
        cursor.at += 1
        cursor.need("from", "rep-from")
        cursor.need("*", "star")
        cursor.need("to", "to-star")
        cursor.need("*", "to-star")
    more = read_sides(cursor)
    if more is not None:
        return Again(Amount((more[0],)), more[1], cursor.span(first))
    times = read_times(cursor)
    if times is None and cursor.means in ("num", "-"):
        times = read_amount(cursor)
        if cursor.means != "more":
            raise cursor.fail("how-often")
    cursor.take("more")
    cursor.take("times")
    return Again(times or ONE, span=cursor.span(first))


_TAILS = frozenset({"ending-at", "ending-after", "ending-with", ",", "end"})


def read_tail(
    cursor: Cursor, inside: tuple[Step, ...], first: int, star: bool, stop_at: int | None = None
) -> Repeat:
    """What follows `rep from *`: how often or how far, and how the last pass differs."""
    more = read_sides(cursor)
    until = read_until(cursor) if more is None else None
    times: Amount | None = Amount((more[0] + 1,)) if more is not None else None
    unclear = False
    if until is None and more is None and cursor.means in _TAILS and star:
        until = Until()  # `rep from *`, `rep from *, ending with …`: as far as it goes
    elif until is None and more is None and cursor.means == "working" and cursor.ahead() == "last" and star:
        until = Until()  # `rep from * working last dc in top of tch`
    elif until is None and more is None:
        times, unclear = _how_often(cursor)
    stops = False
    ending: tuple[Step, ...] = ()
    omitting: tuple[Step, ...] = ()
    while True:
        at = cursor.at
        while cursor.means in (",", "and"):
            cursor.at += 1
        if cursor.take("ending-at"):
            if cursor.means != "*" or stop_at is None:
                raise cursor.fail("stop-mark")
            cursor.at += 1
            stops = True
        elif cursor.take("ending-after"):
            stop_at = _behind(cursor, inside)
            stops = True
        elif omitting and cursor.means == "ending-with":
            cursor.at = at  # `omitting last dc and ending ss in first dc`: that comes behind the repeat
            break
        elif _starts_ending(cursor):
            ending = ending_place(cursor, inside) if cursor.means == "in" else _last_steps(cursor)
        elif cursor.take("omitting"):
            inside, omitting = read_omitted(cursor, inside)
        else:
            cursor.at = at
            break
    return Repeat(
        inside, times, until, unclear, stop_at if stops else None, ending, omitting, star,
        more[1] if more is not None else (), cursor.span(first),
    )  # fmt: skip


def _behind(cursor: Cursor, inside: tuple[Step, ...]) -> int:
    """Where the last pass stops that is said to end `after 3 dc in next ch-1 sp`: behind that step."""
    first = cursor.at
    named = _last_steps(cursor)
    ends = [at + 1 for at, step in enumerate(inside) if len(named) == 1 and is_short_for(named[0], step)]
    if not ends or ends[-1] == len(inside):
        raise UnreadableError(first, "omitted", cursor.at - 1)
    return ends[-1]


def _starts_ending(cursor: Cursor) -> bool:
    """Passes `ending with` or a bare `end`, `working last` of `working last dc in tch`, and the `last` of
    either; also the `working` of `working 2 dc instead of 3 dc`.
    """
    if cursor.means == "working" and starts_instead(cursor, cursor.at + 1):
        cursor.at += 1
        pass_instead(cursor)
        return True
    of_last = cursor.ahead() == "last" and starts_stitch(cursor, cursor.at + 2)
    if cursor.means == "ending" and cursor.ahead() in ("ch", "num", "stitch", "special"):
        cursor.at += 1  # `rep from * around, end ch 1, dc in first sc`
        return True
    if cursor.means != "ending-with" and not (cursor.means == "working" and of_last):
        return False
    cursor.at += 1 + of_last
    return True


def _how_often(cursor: Cursor) -> tuple[Amount, bool]:
    """`4 more times` (five in all), `3 times in all`, and the unclear `3 times`."""
    at = cursor.at
    groups = read_so_many_groups(cursor)
    if groups is not None:
        return groups
    if cursor.take("of-all"):
        times = read_times(cursor)
        if times is None:
            raise cursor.fail("times")
        return times, False
    times = read_times(cursor)
    if times is None and cursor.means in ("num", "-"):
        times = read_amount(cursor)
        if cursor.means not in ("more", "in-all"):
            raise cursor.fail("how-often")
    if times is None:
        raise cursor.fail("rep-tail")
    if cursor.take("more"):
        cursor.take("times")
        return _one_more(times), False
    if cursor.take("in-all"):
        return times, False
    if cursor.words[at].means == "times-word" and cursor.words[at].value == 1:
        return _one_more(times), False
    return times, True


def _one_more(times: Amount) -> Amount:
    if times.variable:
        return Amount(variable=times.variable + "+1")
    return Amount(tuple(None if size is None else size + 1 for size in times.sizes))


def _last_steps(cursor: Cursor) -> tuple[Step, ...]:
    """The step or steps after `ending with` or `omitting last`, joined by `and` or `then`."""
    steps: list[Step] = []
    cursor.read_step(cursor, steps)
    while cursor.means in ("and", "then"):
        cursor.at += 1
        cursor.read_step(cursor, steps)
    return tuple(steps)
