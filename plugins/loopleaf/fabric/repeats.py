"""Repeats: so many passes, or as many as fit."""

from collections.abc import Callable

from ..notation.tree import (
    STITCH,
    Again,
    Between,
    Chain,
    ChainOf,
    Each,
    First,
    Group,
    Last,
    Next,
    Over,
    Passage,
    Repeat,
    Same,
    Skip,
    Step,
    Target,
    Until,
    Work,
)
from ..notation.tree import Place as NamedPlace
from .bridged import left_to_the_closing, skip_is_all_that_is_left
from .closed_arch import ends_on_the_closing
from .edge import Stuck
from .gaps import ends_beside_the_start
from .grouped import has_groups
from .hand import Hand
from .kept import before_the_last_space
from .last_pass import before_the_ending, in_the_last_pass, without_join, without_what_is_told
from .onward import chains_of, ends_on_the_first, stays_on_the_last
from .passed import only_passed, spaces_left
from .plain_repeat import repeat_plainly
from .seek import bound, number
from .stitches import places_taken
from .survey import goes_into_spaces_alone
from .worked import Made, Place

Perform = Callable[[Hand, tuple[Step, ...]], None]

MOST_PASSES = 100_000
"""More passes than any round has stitches: a repeat that would never end stops here."""

_OUT_OF_PLACES = ("works-past-the-end", "no-such-place", "stitches-left-over")


def repeat(hand: Hand, step: Repeat, perform: Perform, following: tuple[Step, ...] = ()) -> None:
    """Work a repeat's passes, then its ending. following: the steps behind it, which may keep places."""
    step = without_what_is_told(hand, step)
    behind, closes = _before_the_closing(hand, following)
    reserved = _reserved(hand, step, _before_the_join(hand, behind)) if step.times is None else 0
    hand.shared_open = hand.shared_open or reserved > 0
    if not reserved and repeat_plainly(hand, step):
        return
    hand.depth += 1
    try:
        if step.times is not None:
            _times(hand, step, perform)
        else:
            hand.edge.limit -= closes
            try:
                _until(hand, step, perform, reserved, behind)
            finally:
                hand.edge.limit += closes
    finally:
        hand.depth -= 1


def passage(hand: Hand, step: Passage, perform: Perform) -> None:
    """Steps between two asterisks: worked once, and remembered."""
    hand.passage = step.steps
    _nested(hand, step.steps, perform)


def again(hand: Hand, step: Again, perform: Perform) -> None:
    """`rep from * to * twice more`."""
    for _ in range(number(hand, step.times)):
        _nested(hand, hand.passage, perform)


def _nested(hand: Hand, steps: tuple[Step, ...], perform: Perform) -> None:
    hand.depth += 1
    try:
        perform(hand, steps)
    finally:
        hand.depth -= 1


def last_pass(step: Repeat) -> int:
    """How many steps the last pass holds: all, or those before `**` or before what it omits."""
    if step.stop_at is not None:
        return step.stop_at
    tail = len(step.omitting)
    if tail and step.steps[-tail:] == step.omitting:
        return len(step.steps) - tail
    return len(step.steps)


def _times(hand: Hand, step: Repeat, perform: Perform) -> None:
    assert step.times is not None
    passes = number(hand, step.times)
    if step.unclear:
        hand.unclear.append(step.span)
        hand.in_brackets = not step.star
        passes += 1 if hand.setting.reading.more is not False else 0
    for done in range(passes):
        last = done == passes - 1
        before = hand.mark()
        try:
            perform(hand, step.steps[: last_pass(step)] if last else step.steps)
        except Stuck as stuck:
            if last and stuck.trouble.rule in _OUT_OF_PLACES:
                hand.back_to(before)
                if ends_on_the_first(hand, step, perform):
                    break
            facts = stuck.trouble.facts
            if facts.get("what") != "leaf":  # a chain made inside is as long in each pass
                facts.setdefault("passes", passes)
                facts.setdefault("done", done)
                facts.setdefault("repeat_span", step.span)
            raise
    perform(hand, step.ending)


def _before_the_join(hand: Hand, following: tuple[Step, ...]) -> tuple[Step, ...]:
    """Without the slip stitch to the beginning chain that joins a round: it takes none of the edge."""
    for at in range(1, len(following) + 1):
        worked = without_join(hand, following[:at], following[at:])
        if len(worked) < at:
            return worked
    return following


def _before_the_closing(hand: Hand, following: tuple[Step, ...]) -> tuple[tuple[Step, ...], bool]:
    """`…; rep from * around, ch 2, dc in top of dc`: without the stitch that closes the round where it began,
    and whether there is one: the rest of the arch that it began in is then no place of the repeat."""
    for at, one in enumerate(following):
        if isinstance(one, Work) and one.places and ends_on_the_closing(hand, one.places[0]):
            return following[:at], True
    return following, False


def _reserved(hand: Hand, step: Repeat, following: tuple[Step, ...]) -> int:
    """How many of the last places the steps behind a repeat need for themselves.

    `dc in last st` says so; where the last pass ends partway (`**`), all that follows it is meant.
    """
    if step.until is not None and step.until.kind != "end":
        return 0
    # `…, ending dc in next st, FPdc around next st, dc in top of ch-3`: a comma goes on with the ending
    longer = bool(step.ending) and any(isinstance(one, Work | Group) for one in following)
    partway = step.stop_at is not None or longer
    needed, passed = places_taken(step.ending) if longer else 0, 0
    for one in following:
        if isinstance(one, Skip) and one.which == "last" and one.target.kind != "stitch":
            break
        if isinstance(one, Skip) and one.target.kind == "chain" and hand.edge.opened:
            continue  # `sk 2 ch, dc in next ch`: of the chain at the end, no stitches
        if isinstance(one, Skip) and (partway or one.which == "last"):
            needed += one.count.of(0) or 0
        elif isinstance(one, Skip) and one.target == STITCH:
            passed += one.count.of(0) or 0  # kept too, if what follows goes into the last places
        elif isinstance(one, Chain):
            continue
        elif not isinstance(one, Work | Group):
            break
        for place in getattr(one, "places", ()):
            if _is_last(place) and hand.setting.reading.shared:
                continue
            if _is_last(place) or (partway and isinstance(place, Next | Over)):
                needed += passed + (place.count.of(0) or 0)
                passed = 0
            elif isinstance(place, ChainOf) or place == Between(Target("group")):
                needed += 1
            elif not isinstance(place, Same):
                return needed
    return needed


def _is_last(place: NamedPlace) -> bool:
    return isinstance(place, Last) or (isinstance(place, Over) and place.which == "last")


def _until(hand: Hand, step: Repeat, perform: Perform, reserved: int, following: tuple[Step, ...]) -> None:
    until = step.until or Until()
    edge = hand.edge
    outer = edge.limit
    tail = len(edge.places) - outer
    end = bound(hand, until, step.span)
    end = min(end, _ending_bound(hand, step))
    if reserved:
        spaces = before_the_last_space(hand, following)
        end = min(end, _before_the_last(hand, reserved) if spaces is None else spaces)
    edge.limit = end
    behind = len(edge.places) - end
    short = last_pass(step)
    available = edge.rest(hand.into_spaces)
    begun: tuple[Step, ...] = ()
    passes = 0
    each = 0
    rest_used = False
    before = hand.mark()
    try:
        while passes < MOST_PASSES:
            if _nothing_left(hand) and passes:
                if stays_on_the_last(step) and ends_on_the_first(hand, step, perform):
                    break
                if step.ending and hand.setting.reading.onward and edge.pos == end < outer:
                    begun = chains_of(step)  # `*ch 4, dc in next st; …, working last dc in first dc`
                elif step.ending and end == outer and places_taken(step.ending):
                    begun = in_the_last_pass(hand, step, perform, following, before)
                elif step.ending and end < outer:  # something is left before what the ending goes into
                    edge.limit = outer
                    begun = before_the_ending(hand, step, perform, following)
                elif short < len(step.steps) and not places_taken(step.steps[:short]):
                    perform(hand, step.steps[:short])  # `*ch 1**, dc in next 3 sts`: a last chain
                elif rest_used:  # whole passes to the end, though the last is said to stop at **
                    raise hand.stuck(
                        "repeat-does-not-fit",
                        step.span,
                        left=0,
                        each=each,
                        passes=passes,
                        available=available,
                    )
                break
            before = hand.mark()
            left = edge.rest(hand.into_spaces)
            used = hand.uses
            try:
                perform(hand, step.steps[:short])
                if short < len(step.steps):
                    if _nothing_left(hand) or _only_passed(hand, step, short, perform):
                        passes += 1
                        break
                    used_before = hand.uses
                    perform(hand, step.steps[short:])
                    rest_used = step.stop_at is not None and hand.uses > used_before
            except Stuck as stuck:
                hand.back_to(before)
                edge.limit = len(edge.places) - behind
                if stuck.trouble.rule not in _OUT_OF_PLACES or hand.leaf is not None:
                    raise
                if step.ending:
                    edge.limit = len(edge.places) - tail
                    begun = before_the_ending(hand, step, perform, following)
                    edge.limit = len(edge.places) - behind
                if passes and (
                    only_passed(hand)
                    or ends_beside_the_start(hand)
                    or _comes_to_its_end(hand, step, until, stuck)
                    or _none_of_its_kind_left(hand, until, stuck, following)
                ):
                    break
                if not passes and stuck.trouble.rule == "no-such-place":
                    raise
                if begun or (passes and (step.ending or left_to_the_closing(hand, following, perform))):
                    break
                if passes and skip_is_all_that_is_left(hand, step, following):
                    break
                if passes and ends_on_the_first(hand, step, perform):
                    break
                raise hand.stuck(
                    "repeat-does-not-fit", step.span, left=left, each=each or _places_used(step),
                    passes=passes, available=available,
                ) from stuck  # fmt: skip
            passes += 1
            each = hand.uses - used
            if edge.rest(hand.into_spaces) == left and hand.uses == used:
                break
    finally:
        edge.limit = len(edge.places) - tail
    _end(hand, begun, step, perform, following)


def _end(
    hand: Hand, begun: tuple[Step, ...], step: Repeat, perform: Perform, following: tuple[Step, ...]
) -> None:
    """The last pass's ending; the slip stitch at its end may be the round's join."""
    ending = step.ending if hand.depth > 1 else without_join(hand, step.ending, following)
    perform(hand, begun + ending)
    if ending is not step.ending:
        hand.depth -= 1
        perform(hand, step.ending[len(ending) :])
        hand.depth += 1


def _nothing_left(hand: Hand) -> bool:
    edge = hand.edge
    # the last stitch only bounds the last gap, unless one behind it does, kept for the next step
    bounds = hand.gaps and not edge.circle and (edge.limit == len(edge.places) or has_groups(edge))
    return edge.rest(hand.into_spaces) <= (1 if bounds else 0)


def _none_of_its_kind_left(hand: Hand, until: Until, stuck: Stuck, following: tuple[Step, ...]) -> bool:
    """A row's repeat into places of a kind is done when there are no more; what is left may follow it.

    So is a round's, where `sc in each st to end` follows. Not one that names the place where it ends: that
    has to be reached."""
    across = (hand.setting.rows or _takes_the_rest(following[:1])) and until.kind == "end"
    return across and stuck.trouble.facts.get("what") not in (None, "stitch", "chain")


def _comes_to_its_end(hand: Hand, step: Repeat, until: Until, stuck: Stuck) -> bool:
    """`*3 dc in next ch-1 sp, ch 1; rep from * to center ch-2 sp`: only stitches lie before that space, which
    going into the next space passes; `to last ch-3 sp`, where it goes into nothing but spaces; `to last
    group`: all gaps before it are used."""
    space = until.target.kind == "space" and hand.into_spaces and not spaces_left(hand)
    if until.kind == "to-last":
        groups = hand.gaps and stuck.trouble.facts.get("what") == "group"
        return groups or (space and goes_into_spaces_alone(step.steps))
    return space and until.kind in ("next", "centre")


def _takes_the_rest(steps: tuple[Step, ...]) -> bool:
    match steps:
        case (Work(places=(Each(targets=(target,), every=1, until=Until(kind="end")),)),):
            return target.kind == "stitch"
    return False


def _only_passed(hand: Hand, step: Repeat, short: int, perform: Perform) -> bool:
    """Before `**`: whether the rest of a pass can't be worked any more, and only a passed run is left."""
    if not only_passed(hand):
        return False
    before = hand.mark()
    try:
        perform(hand, step.steps[short:])
    except Stuck:
        return True
    finally:
        hand.back_to(before)
    return False


def _before_the_last(hand: Hand, reserved: int) -> int:
    """Where on the edge its last so many stitches begin."""
    edge = hand.edge
    at = edge.limit
    while reserved and at > edge.pos:
        at -= 1
        reserved -= edge.matches(edge.places[at], STITCH)
    return edge.limit if reserved else at


def _ending_bound(hand: Hand, step: Repeat) -> int:
    """`ending with dc in last 2 sts` keeps those two for the ending, `… in top of tch` the chain."""
    for one in step.ending:
        if isinstance(one, Work | Group):
            for place in one.places:
                if isinstance(place, ChainOf) and _is_a_turning_chain(hand.edge.places[-1:]):
                    return min(hand.edge.limit, len(hand.edge.places) - 1)
                onward = isinstance(place, First) and hand.setting.reading.onward
                if isinstance(place, First | Last | Over) and (onward or _is_last(place)):
                    return bound(hand, Until("to-last", count=place.count, target=place.target), step.span)
    return hand.edge.limit


def _is_a_turning_chain(places: list[Place]) -> bool:
    return any(isinstance(one, Made) and one.role == "turning" for one in places)


def _places_used(step: Repeat) -> int:
    """Places that one pass uses, where no whole pass was worked: from the steps' own numbers."""
    return places_taken(step.steps)
