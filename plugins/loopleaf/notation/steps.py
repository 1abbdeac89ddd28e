"""Reads steps: which kind of step begins at a word, and a whole stretch of them with going on after
mistakes.
"""

from collections.abc import Callable
from dataclasses import replace

from .all_in_one import read_all_in
from .asides import is_counts_aside, read_counts_aside, read_tally
from .bare_counts import only_counts, where_counts_end
from .called_again import read_called
from .cursor import Cursor, UnreadableError, read_amount
from .directions import pass_direction, pass_where_aside
from .free_loops import read_working_in, starts_free_loops
from .gathering import read_draw, read_holding, read_so_many_together, starts_so_many_together
from .last_of_each import read_instead, read_last_of_each, read_where_it_ends, starts_last_of_each
from .lying import pass_lying
from .manner import (
    pass_side,
    read_behind,
    read_facing,
    read_loop_first,
    read_loops,
    read_side_aside,
    read_through,
    read_through_both,
    read_turn,
    starts_in_ring,
    starts_over,
)
from .names import starts_stitch
from .omitting import starts_instead
from .pair_said import named_a_pair
from .picot_said import named_a_picot, read_to_picot
from .piece_names import read_flattened, read_held
from .popcorns import read_dropped
from .purposes import pass_purpose_aside
from .repeat_all import read_repeat_of_all
from .repeats import read_again, read_bracket, read_star, read_times_first
from .shaping import read_shaping, starts_number_of_shapings, starts_shaping
from .skipped_chains import read_skipped_chains
from .skipping import read_leave, read_left_aside, read_only_over, read_skip, starts_only_over
from .starting import read_starting
from .stitching import read_chain, read_work
from .straight import read_at_ends, read_even, starts_at_ends
from .targets import CHAIN
from .tree import (
    ONE,
    Chain,
    Each,
    Group,
    Next,
    Repeat,
    Skip,
    Step,
    Until,
    Work,
)
from .whole_rounds import read_rows_even, read_whole_round, starts_rows_even, starts_whole_round
from .yarn_ends import read_closed
from .yarns import (
    is_listed,
    pass_yarn_label,
    read_change,
    read_fasten_off,
    read_in_yarn,
    read_join,
    read_marker,
    read_other_side,
    read_standing,
    read_unjoined,
    read_with,
)

_SIDE = ("other-side", "remaining", "free")
_BETWEEN = frozenset({",", "and", "then"})


def read_block(cursor: Cursor, mark: str) -> list[Step]:
    """Steps up to the end, a closing bracket, or, inside an asterisk's stretch, what closes that.

    What can't be read is reported, passed over up to the next comma, and the reading goes on there.
    """
    steps: list[Step] = []
    words = cursor.words
    while True:
        word = words[cursor.at]
        means = word.means
        if means in _BETWEEN:
            cursor.at += 1
            continue
        if means == "end" or means == ")":
            return steps
        if mark:
            if means == "rep" and _closes(cursor, mark):
                return steps
            if means == "*":
                if word.value == mark:
                    return steps
                if word.value == mark * 2 and not _opened_again(cursor, word.value):
                    cursor.stop_at = len(steps)
                    cursor.at += 1
                    continue
        began = cursor.at
        try:
            unread = len(cursor.unread)
            read_step(cursor, steps)
            cursor.astray = cursor.astray and len(cursor.unread) > unread
        except UnreadableError as error:
            error.began, error.follows = began, cursor.astray
            cursor.astray = True
            cursor.unread.append(error)
            _go_on(cursor, max(error.at, error.to + 1, began))


def _closes(cursor: Cursor, mark: str) -> bool:
    """Whether `rep` here belongs to the asterisk that is open (a bare `rep` does)."""
    if cursor.ahead() != "from":
        return True
    star = cursor.words[cursor.at + 2]
    return star.means != "*" or star.value == mark


def _opened_again(cursor: Cursor, mark: str) -> bool:
    """Whether `**` begins a repeat of its own: somewhere behind it stands `rep from **`."""
    words = cursor.words
    return any(
        words[i].means == "from" and words[i + 1].means == "*" and words[i + 1].value == mark
        for i in range(cursor.at, len(words) - 1)
    )


def _go_on(cursor: Cursor, at: int) -> None:
    """Pass over what belongs to the unreadable words: up to the next comma, or where the stretch closes."""
    words = cursor.words
    first = at
    while words[at].means not in ("end", ")"):
        means = words[at].means
        if at > first and means in (",", "rep", "*"):
            break
        at = words[at].value + 1 if means == "(" else at + 1
    cursor.at = at


def read_step(cursor: Cursor, steps: list[Step]) -> None:
    """One step, added to those before it. Raises UnreadableError where none can be read."""
    while cursor.means == "a" and not is_listed(cursor, cursor.at):
        if cursor.ahead() in (",", "end"):
            break
        cursor.at += 1
    means = cursor.means
    reader = _READERS.get(means)
    before = len(steps)
    cursor.each_group = None
    if pass_side(cursor, steps):
        return
    if pass_yarn_label(cursor, steps) or pass_lying(cursor, steps) or read_through_both(cursor, steps):
        return
    if means == "?" and read_closed(cursor, steps):
        return
    if reader is not None:
        reader(cursor, steps)
    elif means == "num" or means == "-":
        _number_first(cursor, steps)
    elif means == "ring" and starts_in_ring(cursor):
        pass
    elif means == "ring":
        raise UnreadableError(cursor.at, "ring-start", cursor.at)
    elif means == "stuffing":
        raise UnreadableError(cursor.at, "stuffing", cursor.at)
    else:
        raise cursor.fail("step")
    if cursor.each_group is not None and len(steps) > before and isinstance(steps[-1], Work | Group):
        steps[-1] = Repeat((steps[-1],), until=cursor.each_group, span=steps[-1].span)
        cursor.each_group = None
    if len(steps) == before + 1 and isinstance(steps[-1], Work | Group | Repeat):
        steps[before:before] = read_in_yarn(cursor)


def _number_first(cursor: Cursor, steps: list[Step]) -> None:
    """`3ch` or `2 tr in next st`; a dash at the end begins a stitch count (`— 24 sts`)."""
    first = cursor.at
    words = cursor.words
    dash = cursor.means == "-" and words[first + 1].means == "num"
    cursor.at += dash
    end = where_counts_end(cursor, steps, dash)
    if end:
        steps.append(read_tally(cursor, end))
        return
    amount = read_amount(cursor)
    if only_counts(cursor):
        end, cursor.at = cursor.at + 1, first
        steps.append(read_tally(cursor, end))
        cursor.at += cursor.means != "end"
        return
    if amount is not None and cursor.means == "x" and cursor.ahead() == "(":
        read_times_first(cursor, steps, amount, first)
        return
    cursor.take("more")
    chains = cursor.means == "ch" and not starts_stitch(cursor, cursor.at)
    cursor.at = first
    if chains and not _names_stitch(cursor, first):
        read_chain(cursor, steps)
    else:
        read_work(cursor, steps)


def _names_stitch(cursor: Cursor, at: int) -> bool:
    """`3ch picot`, `2ch tr V-st`: the chains are part of a stitch's name."""
    words = cursor.words
    after = words[at + 2].means
    return words[at + 1].means == "ch" and (
        after == "picot" or (after in ("stitch", "special") and words[at + 3].means == "form")
    )


def _chain(cursor: Cursor, steps: list[Step]) -> None:
    if starts_stitch(cursor, cursor.at):
        read_work(cursor, steps)
    else:
        read_chain(cursor, steps)


def _shape(cursor: Cursor, steps: list[Step]) -> None:
    """`inc`, `dec in next st`, `dec 1 st at each end`, `dec 6 sts evenly`."""
    if starts_at_ends(cursor):
        read_at_ends(cursor, steps)
    elif starts_shaping(cursor):
        read_shaping(cursor, steps)
    else:
        read_work(cursor, steps)


_LABELS = frozenset(
    {"centre", "of", "form", "picot", "group", "edge", "ending", "corner", "side", "beg", "a"}
)
"""Words that only name what was just worked: `(picot)`, `(center of shell)`, `(corner)`."""


def _says_what_was_made(cursor: Cursor) -> bool:
    """`(picot made)`, `(first corner made)`: a name for what was just worked, and nothing to do."""
    inside = cursor.words[cursor.at + 1 : cursor.words[cursor.at].value]
    if inside and all(word.means in _LABELS for word in inside) and inside[-1].means != "ring":
        return True
    if [word.means for word in inside] in (["centre", "st"], ["centre", "stitch"]):
        return True
    steps = any(word.means in ("in", ",", "(", "*") for word in inside)
    return len(inside) > 1 and inside[-1].means == "just-made" and not steps


def _bracket(cursor: Cursor, steps: list[Step]) -> None:
    first = cursor.at
    if _says_what_was_made(cursor):
        if any(word.means == "picot" for word in cursor.words[first : cursor.words[first].value]):
            named_a_picot(steps)
        named_a_pair(cursor, steps)
        cursor.at = cursor.words[first].value + 1
        return
    if cursor.ahead() == "no-turn" and cursor.ahead(2) == ")" and cursor.ahead(3) in (",", "end"):
        cursor.at += 1  # `3 sc in last ch (do not turn), …`
        read_turn(cursor, steps)
        cursor.at += 1
        return
    if pass_purpose_aside(cursor, steps) or pass_where_aside(cursor, steps):
        return
    if read_side_aside(cursor, steps) or read_left_aside(cursor, steps):
        return
    if is_counts_aside(cursor, first):
        if steps and isinstance(steps[-1], (Work, Chain, Group)):
            before = steps.pop()
            counts = read_counts_aside(cursor, int(isinstance(before, Chain)))
            assert isinstance(before, (Work, Chain, Group))
            steps.append(replace(before, counts=counts))
            return
        if steps and isinstance(steps[-1], Skip) and steps[-1].target == CHAIN:
            read_skipped_chains(cursor, steps)
            return
        raise UnreadableError(first, "counts-place", cursor.words[first].value)
    read_bracket(cursor, steps)
    if cursor.means == "(" and is_counts_aside(cursor, cursor.at) and isinstance(steps[-1], Group):
        _bracket(cursor, steps)


def _working(cursor: Cursor, steps: list[Step]) -> None:
    """`working behind next ch-sp`, `working along other side of …`, `working in BLO, …`; else only `work`
    before a stitch.
    """
    first = cursor.at
    cursor.at += 1
    means = cursor.means
    if means == "along" and pass_direction(cursor, steps):
        return
    if means in ("in", "along") and starts_free_loops(cursor, cursor.at + 1):
        cursor.at += 1
        read_working_in(cursor, steps, first)
    elif means in ("behind", "in-front"):
        read_behind(cursor, steps, first)
    elif means in ("along", "other-side") or (means in ("in", "over") and cursor.ahead() in _SIDE):
        read_other_side(cursor, steps)
    elif means == "in" and cursor.ahead() in ("loop-of", "ring"):
        read_loops(cursor, steps)
    elif means == "through":
        read_through(cursor, steps)
    elif starts_only_over(cursor, cursor.at):
        read_only_over(cursor, steps, first)
    elif means == "over" and starts_over(cursor):
        read_behind(cursor, steps, first)
    elif starts_so_many_together(cursor, cursor.at):
        read_so_many_together(cursor, steps)
    elif starts_last_of_each(cursor, cursor.at):
        read_last_of_each(cursor, steps)
    elif starts_rows_even(cursor, cursor.at):
        read_rows_even(cursor, steps)
    elif starts_whole_round(cursor, cursor.at):
        read_whole_round(cursor, steps, first)
    elif starts_instead(cursor, cursor.at):
        read_instead(cursor, steps)
    elif starts_number_of_shapings(cursor):
        read_shaping(cursor, steps)
    elif means == "in" and starts_stitch(cursor, cursor.at + 1):
        cursor.at += 1  # `work in sc across`
        read_step(cursor, steps)
    else:
        read_step(cursor, steps)
        _on_the_way(steps)


def _with(cursor: Cursor, steps: list[Step]) -> None:
    """`with B`, and `…, with 3 sc in each ch-1 sp`, which is worked on the way."""
    if cursor.ahead() == "num" and cursor.ahead(2) == "stitch":
        cursor.at += 1
        read_step(cursor, steps)
        _on_the_way(steps)
    else:
        read_with(cursor, steps)


def _on_the_way(steps: list[Step]) -> None:
    """`sc in each dc across, working 3 sc in ch-2 sp`: the walk turns aside where it comes to that space."""
    match steps[-2:]:
        case [
            Work(places=(*_, Each(until=Until(kind="end")))),
            (Work() | Group()) as aside,
        ] if len(aside.places) == 1:
            place = aside.places[0]
            if isinstance(place, Next) and place.unsaid and place.count == ONE:
                steps[-1] = replace(aside, places=(Each((place.target,), Until(word="")),))


def _ending(cursor: Cursor, steps: list[Step]) -> None:
    """`ending with dc in tch`, where no repeat is meant: a step like any other, or the last of the run."""
    cursor.at += 1
    if starts_last_of_each(cursor, cursor.at):
        read_last_of_each(cursor, steps)
    elif cursor.means == "in":
        read_where_it_ends(cursor, steps)
    else:
        read_step(cursor, steps)


def _again(cursor: Cursor, steps: list[Step]) -> None:
    """`rep from * to *` after a stretch between two asterisks, `repeat (…) around`; else there is nothing to
    go back to.
    """
    if cursor.ahead() == "(":
        cursor.at += 1
        read_bracket(cursor, steps)
        return
    called = read_called(cursor)
    if called is not None:
        steps.append(called)
        return
    if not cursor.passage:
        if read_repeat_of_all(cursor, steps):
            return
        last = cursor.at
        while cursor.words[last + 1].means not in (",", "end", ")"):
            last += 1
        raise UnreadableError(cursor.at, "open-star", last)
    steps.append(read_again(cursor))


_READERS: dict[str, Callable[[Cursor, list[Step]], None]] = {
    "ch": _chain, "stitch": read_work, "special": read_work, "inc": _shape, "dec": _shape,
    "even": read_even,
    "fp": read_work, "invisible": read_work, "form": read_work, "picot": read_work, "spike": read_work,
    "loop-of": read_loop_first, "(": _bracket, "*": read_star, "rep": _again, "skip": read_skip,
    "leave": read_leave, "working": _working, "behind": read_behind, "in-front": read_behind,
    "in": read_loops, "through": read_through, "ending-with": _ending, "foundation": read_starting,
    "beg": read_starting, "turn": read_turn, "no-turn": read_turn, "join": read_join,
    "no-join": read_unjoined, "fasten-off": read_fasten_off, "place-marker": read_marker,
    "move-marker": read_marker, "remove-marker": read_marker, "with": _with, "change": read_change,
    "changing": read_change, "carrying": read_change, "dropping": read_change,
    "standing": read_standing, "along": read_other_side,
    "other-side": read_other_side, "holding": read_holding, "draw": read_draw, "yarn-over": read_draw,
    "drop-loop": read_dropped, "held": read_held, "flatten": read_flattened,
    "all": read_all_in, "facing": read_facing, "last": read_last_of_each, "to-picot": read_to_picot,
}  # fmt: skip
