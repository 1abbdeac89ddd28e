"""Places that aren't simply along the edge: the ring, a chain by number, a group's middle, gaps, marked
stitches."""

from dataclasses import replace
from itertools import takewhile

from ..notation.tree import (
    STITCH,
    Amount,
    Between,
    ChainOf,
    Corresponding,
    Each,
    FromHook,
    Here,
    Marked,
    Next,
    Skipped,
    Span,
    Target,
    Within,
)
from ..notation.tree import Place as NamedPlace
from ..notation.tree import Ring as InRing
from .along import begun_on_stitches, each_place, next_places
from .edge import Edge, Stuck, loops_of
from .grouped import group_at, has_groups
from .groups import Group, last_group, next_group, this_group
from .hand import Hand
from .passed import passed_before
from .seek import Into, describe, find_next, take
from .worked import Made, Place, Space


def here(hand: Hand, place: Here, span: Span | None) -> list[Into]:
    """The one place of the group now worked."""
    if hand.here is None:
        return next_places(hand, Next(), span)
    return [(hand.here,)]


def in_ring(hand: Hand, place: InRing, span: Span | None) -> list[Into]:
    """`in ring`: the ring takes any number of stitches."""
    ring = hand.ring()
    if ring is None:
        raise hand.stuck("no-such-place", span, what="ring", there=hand.edge.describe())
    if hand.edge.pos == 0:
        hand.use(0, 1, ring)
    hand.last = ring
    return [(ring,)]


def from_hook(hand: Hand, place: FromHook, span: Span | None) -> list[Into]:
    """`in 2nd ch from hook`: on the chain just made, or on the foundation."""
    if hand.leaf is not None:
        leaf = hand.leaf
        if leaf.pos == 0:
            leaf.pos = place.number - 1
        return [(p,) for p in hand.next_leaf(1, span)]
    edge = hand.edge
    chains = list(takewhile(lambda p: isinstance(p, Made) and p.role == "foundation", edge.places))
    if edge.pos or not chains:
        raise hand.stuck("no-such-place", span, what="chain from hook", there=edge.describe())
    if place.number > len(chains):
        raise hand.stuck("works-past-the-end", span, needed=place.number, available=len(chains), what="chain")
    at = place.number - 1
    edge.pos = at
    if hand.first_worked < 0:
        hand.first_worked = at
    hand.use(at, at + 1, edge.places[at])
    return [(edge.places[at],)]


def in_chain_of(hand: Hand, place: ChainOf, span: Span | None) -> list[Into]:
    """A beginning chain of the round below that stands for a stitch, by its top or by the number of that
    chain."""
    edge = hand.edge
    hand.set_apart(0)
    for at in range(edge.pos, edge.limit):
        made = edge.places[at]
        if isinstance(made, Made) and made.role == "turning":
            whole = made.legs or made.chains
            tall = hand.setting.heights.get(made.kind, 0)  # behind `3 dc in 5th ch`, one more was passed
            below = _top_from_below(edge, at, made)
            if place.length and place.length not in (whole, made.chains, tall, below):
                continue
            if place.number and place.number not in (made.chains, below):
                raise hand.stuck(
                    "no-such-place",
                    span,
                    what=f"chain {place.number} of {whole}",
                    there=[f"chain {made.chains}"],
                )
            left = passed_before(hand, at)
            if left:
                hand.trouble("stitches-left-over", span, left=left, target="stitch")
            hand.use(at, at + 1, made)
            return [(made,)]
    spaces = edge.find(Target("space", length=place.length), edge.pos)
    if place.number and spaces is not None and isinstance(spaces.place, Space):
        if place.number > spaces.place.chains:
            raise hand.stuck(
                "no-such-place",
                span,
                what=f"chain {place.number} of {spaces.place.chains}",
                there=[f"chain {spaces.place.chains}"],
            )
        hand.use(spaces.at, spaces.after, spaces.place)
        return [(loops_of(spaces.place)[place.number - 1],)]
    raise hand.stuck("no-such-place", span, what="turning chain", there=edge.describe())


def _top_from_below(edge: Edge, at: int, made: Made) -> int:
    """Which of the chains skipped in a foundation is the stitch's top, counted from the chain worked into.

    The space that they also make lies half along the foundation and half above it. 0 for a chain made to
    turn.
    """
    beside = [one for p in edge.places[max(at - 1, 0) : at + 2] for one in (p, *getattr(p, "into", ()))]
    space = next((one for one in beside if isinstance(one, Space)), None)
    return 0 if made.into or space is None else made.legs - space.chains


def within(hand: Hand, place: Within, span: Span | None) -> list[Into]:
    """`in centre st of next sh`, `in 3rd ch of next ch-5`: a place inside the next group or arch."""
    if place.of.kind in ("space", "chain"):
        return _in_arch(hand, place, span)
    edge = hand.edge
    find = this_group if place.same else next_group
    whole = place.inner.kind == "space"
    try:
        start, group = find(hand, place.of, span, whole)
    except Stuck:
        whole = True  # a fan of stitches with chains between them
        start, group = find(hand, place.of, span, whole)
    if place.last:
        start, group = last_group(hand, place.of, start, group, whole)
    inner = [i for i, p in enumerate(group) if edge.matches(p, place.inner) or place.inner == STITCH]
    if not inner:
        raise hand.stuck("no-such-place", span, what=describe(place.inner), there=[])
    if place.part == "each":
        picks = inner
    elif place.part == "centre":
        if len(inner) % 2 == 0:
            raise hand.stuck("no-such-place", span, what="centre", there=[f"{len(inner)}"])
        hand.into_centres = True
        picks = [inner[len(inner) // 2]]
    elif place.part == "nth" and place.number > len(inner):
        raise hand.stuck("no-such-place", span, what=f"stitch {place.number}", there=[f"{len(inner)}"])
    else:
        picks = [inner[{"first": 0, "last": -1}.get(place.part, place.number - 1)]]
    taken = []
    for i in picks:
        if start + i < edge.pos:  # worked into before, or passed over: the hand doesn't go back
            hand.last = group[i]
        else:
            hand.use(start + i, start + i + 1, group[i])
        taken.append((group[i],))
    return [tuple(into) for into in taken]


def _in_arch(hand: Hand, place: Within, span: Span | None) -> list[Into]:
    target = Target("space", length=place.of.length)
    if place.same and isinstance(hand.last, Made) and hand.last.role == "loop":
        space = hand.last.into[0]
    else:
        space = take(hand, find_next(hand, target, 1, span))[0][0]
    assert isinstance(space, Space)
    loops = loops_of(space)
    if place.part == "each":
        picks = loops
    else:
        at = {"first": 1, "last": len(loops), "centre": (len(loops) + 1) // 2}.get(place.part, place.number)
        if at > len(loops):
            raise hand.stuck(
                "no-such-place", span, what=f"chain {at} of {len(loops)}", there=[f"chain {len(loops)}"]
            )
        picks = [loops[at - 1]]
    hand.last = picks[-1]
    return [(loop,) for loop in picks]


def between(hand: Hand, place: Between, span: Span | None) -> list[Into]:
    """Between two neighbours: the hook goes past the first and stays before the second."""
    edge = hand.edge
    hand.gaps = True
    stitch = place.target.stitch
    named = stitch is not None and (stitch.kind == "special" or (has_groups(edge) and not place.first))
    if place.target.kind == "group" or named:
        start, group = _group_begun_on(hand, place.target) or next_group(hand, place.target, span)
        end = start + len(group)
        after = edge.places[end % len(edge.places)] if end < edge.limit or edge.circle else None
        if after is None:
            raise hand.stuck("works-past-the-end", span, needed=2, available=1, what="group")
        if isinstance(after, Space) and after.corner is False:
            hand.use(end, end + 1, after)
            return [(after,)]
        hand.use(end - 1, end, group[-1])
        hand.gap = (group[-1], after)
        return [hand.gap]
    one = edge.pos == 1 and hand.numbered == 1 and len(edge.places) > 1
    beside = one and (hand.stood or (not edge.circle and hand.made[-1].into == (edge.places[0],)))
    hand.gap_open = hand.gap_open or (beside and not place.first)
    if beside and (place.first or hand.setting.reading.gap):
        hand.uses += 1
        hand.last = edge.places[0]
        hand.gap = (edge.places[0], edge.places[1])
        return [hand.gap]
    if place.first and edge.pos:
        raise hand.stuck("no-such-place", span, what="first", there=edge.describe())
    first = find_next(hand, place.target, 1, span)[0]
    second = edge.find(
        place.target, first.after, len(edge.places)
    )  # one kept for the next step bounds the gap
    beyond = second.place if second else (edge.places[0] if edge.circle else None)
    if beyond is None:
        raise hand.stuck("works-past-the-end", span, needed=2, available=1, what="stitch")
    hand.use(first.at, first.after, first.place)
    hand.gap = (first.place, beyond)
    return [hand.gap]


def _group_begun_on(hand: Hand, target: Target) -> Group | None:
    """The group that the beginning chain stands on: a row's half group is the first of `next 2 groups`."""
    if not hand.stood or hand.edge.pos != 1 or hand.numbered != 1:
        return None
    group = group_at(hand.edge, 0, target)
    return (0, group) if len(group) > 1 else None


def marked(hand: Hand, place: Marked, span: Span | None) -> list[Into]:
    """`in marked st`: the stitch that carries the marker."""
    edge = hand.edge
    for at in range(edge.pos, edge.limit):
        if edge.places[at] in hand.markers:
            hand.use(at, at + 1, edge.places[at])
            return [(edge.places[at],)]
    raise hand.stuck("no-such-place", span, what="marker", there=edge.describe())


def in_skipped(hand: Hand, place: Skipped, span: Span | None) -> list[Into]:
    """`in skipped st`: back to the stitch last passed over, or to those that the chains now worked behind
    stand over."""
    _skipped_below(hand)
    if not hand.skipped and begun_on_stitches(hand):
        left = replace(STITCH, unworked=True)
        every = place.which == "all" and not place.number
        one = Amount((max(place.number, 1),))
        return each_place(hand, Each((left,)), span) if every else next_places(hand, Next(one, left), span)
    if not hand.skipped:
        raise hand.stuck("no-such-place", span, what="skipped stitch", there=[])
    there = hand.skipped
    if place.which == "all" and place.number in (0, len(there)):
        return [(one,) for one in there]
    at = {"nth": place.number - 1, "all": place.number - 1, "next": _after_the_last(hand)}.get(place.which, 0)
    if at >= len(there):
        raise hand.stuck("no-such-place", span, what="skipped stitch", there=[])
    return [(one,) for one in there[: at + 1]] if place.which == "all" else [(there[at],)]


def _skipped_below(hand: Hand) -> None:
    """`working behind next ch-3 sp, dc in skipped st`: where nothing was passed over in this round that the
    hand didn't come back to, it is what the round below passed over beneath those chains; without a word of
    them, beneath the chains that come next."""
    over: list[Place] = hand.over
    worked = {id(one) for made in hand.made if isinstance(made, Made) for one in made.into}
    if any(id(one) not in worked for one in hand.skipped):
        return
    if not over and all(id(one) in hand.beneath for one in hand.skipped):
        over = hand.edge.places[hand.edge.pos : min(hand.edge.pos + 1, hand.edge.limit)]
    beneath = [one for space in over if isinstance(space, Space) for one in space.into]
    if not beneath:
        return
    if not hand.over:
        hand.use(hand.edge.pos, hand.edge.pos + 1, over[0])
    hand.beneath |= {id(one) for one in beneath}
    hand.skipped, hand.over = beneath, []


def _after_the_last(hand: Hand) -> int:
    """Which of the skipped stitches follows the one last gone back to."""
    last = hand.made[-1].into if hand.made else ()
    return next((at + 1 for at, one in enumerate(hand.skipped) if one in last), 0)


def corresponding(hand: Hand, place: Corresponding, span: Span | None) -> list[Into]:
    """`in corresponding ch-sp of square 1`: the next such place of the finished piece."""
    return next_places(hand, Next(target=place.target, piece=place.piece), span)


def loop_of_opening(hand: Hand, place: NamedPlace) -> Place | None:
    """`join yarn in 3rd ch of underarm`: the chain of an opening that is meant, counted the way the round
    goes; of an even number either of the middle two is called the centre. None for any other place."""
    loops = [one for one in hand.edge.places if isinstance(one, Made) and one.role == "loop"]
    if not isinstance(place, Within) or not loops or not begun_on_stitches(hand):
        return None
    middle = (len(loops) + 1) // 2
    if place.part == "centre" and len(loops) % 2 == 0:
        hand.centre_open = True
        middle += hand.setting.reading.beyond
    at = {"first": 1, "last": len(loops), "centre": middle}.get(place.part, place.number)
    return loops[at - 1] if 0 < at <= len(loops) else None
