"""Repeats of nothing but plain stitches into the next stitches: worked all passes at once.

Most rounds of most patterns are such repeats; a pass at a time they cost many times as much.
Anything unusual, and anything that doesn't fit, is left to the ordinary way, which also says what is wrong.
"""

from ..notation.tree import STITCH, Next, Over, Repeat, Stitch, Work
from .hand import Hand
from .seek import number
from .worked import Made

Part = tuple[Stitch, tuple[int, ...], Work]
"""One stitch of a pass: what it is, the places it goes into, counted from the pass's first, and its step."""


def repeat_plainly(hand: Hand, step: Repeat) -> bool:
    """Work the whole repeat if it is plain and fits; False, and nothing done, where it isn't or doesn't."""
    edge = hand.edge
    if step.unclear or step.stop_at is not None or step.ending or step.omitting:
        return False
    if not edge.plain or hand.leaf is not None or hand.levelling or hand.here is not None or hand.opening[1]:
        return False
    if hand.setting.spiral and hand.moves_marker:
        return False
    parts, used = _one_pass(hand, step)
    if not used:
        return False
    there = edge.limit - edge.pos
    if step.times is not None:
        passes = number(hand, step.times)
        if not passes or passes * used > there:
            return False
    else:
        if step.until is None or step.until.kind != "end" or there % used or not there:
            return False
        passes = there // used
    _work(hand, parts, used, passes)
    return True


def _one_pass(hand: Hand, step: Repeat) -> tuple[list[Part], int]:
    """The stitches of one pass and the places that it uses; no places where a pass isn't plain."""
    parts: list[Part] = []
    used = 0
    for one in step.steps:
        if not isinstance(one, Work) or one.counts is not None or one.through or len(one.places) != 1:
            return [], 0
        place = one.places[0]
        each = number(hand, one.each)
        if isinstance(place, Next):
            if (
                place.target != STITCH
                or place.below
                or place.piece
                or place.any
                or place.far
                or place.skipped
            ):
                return [], 0
            stitches = _plain(hand, one.stitch)
            for _ in range(number(hand, place.count)):
                parts += [(stitch, (used,), one) for _ in range(each) for stitch in stitches]
                used += 1
        elif isinstance(place, Over):
            legs = number(hand, place.count)
            if place.target != STITCH or place.which != "next" or each != 1 or not legs:
                return [], 0
            stitches = _gathered(hand, one.stitch)
            parts += [(stitch, tuple(range(used, used + legs)), one) for stitch in stitches]
            used += legs
        else:
            return [], 0
        if not stitches:
            return [], 0
    return parts, used


def _plain(hand: Hand, stitch: Stitch) -> tuple[Stitch, ...]:
    """A plain stitch as it is made, an increase in the round's only kind as two; () for anything else."""
    if stitch.kind == "inc":
        only = hand.setting.only_kind
        return (Stitch(only, loop=stitch.loop),) * max(stitch.number, 2) if only else ()
    if stitch.form or stitch.kind in ("dec", "special", "slip"):
        return ()
    return (stitch,)


def _gathered(hand: Hand, stitch: Stitch) -> tuple[Stitch, ...]:
    """A decrease as it is made; () where its kind isn't settled by the round alone."""
    if stitch.kind == "dec":
        only = hand.setting.only_kind
        return (Stitch(only, "tog", 2, stitch.loop, invisible=stitch.invisible),) if only else ()
    return (stitch,) if stitch.form == "tog" and stitch.kind != "special" else ()


def _work(hand: Hand, parts: list[Part], used: int, passes: int) -> None:
    edge = hand.edge
    places = edge.places
    index, yarn, numbered = hand.setting.index, hand.yarn, hand.numbered
    pattern = [
        (stitch.kind, stitch.form, stitch.number, stitch.loop, stitch.post, step.span, places)
        for stitch, places, step in parts
    ]
    made: list[Made] = []
    for start in range(edge.pos, edge.pos + passes * used, used):
        for kind, form, legs, loop, post, span, offsets in pattern:
            numbered += 1
            into = tuple([places[start + at] for at in offsets])
            made.append(
                Made(kind, into, index, yarn, "stitch", numbered, form, legs, loop, post, "", 0, 0, span)
            )
    hand.numbered = numbered
    hand.made += made
    hand.new += made
    edge.pos += passes * used
    hand.uses += passes * used
    hand.since = 0
    hand.begun = True
    hand.last = places[edge.pos - 1]
