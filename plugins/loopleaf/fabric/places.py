"""Finding the places that an instruction names, and using them up."""

from collections.abc import Callable
from itertools import takewhile
from typing import Any

from ..notation.tree import (
    STITCH,
    Amount,
    Between,
    ChainOf,
    Corresponding,
    Each,
    Evenly,
    First,
    FromHook,
    Here,
    Last,
    Marked,
    Next,
    Over,
    RowEnds,
    Ring as InRing,
    Same,
    Skipped,
    Span,
    Target,
    Until,
    Within,
)
from ..notation.tree import Place as NamedPlace
from .edge import Edge, Found, loops_of
from .hand import Hand
from .worked import Made, Place, Space

Into = tuple[Place, ...]
"""What one stitch goes into: one place, or one for each of its legs."""


def resolve(hand: Hand, place: NamedPlace, span: Span | None) -> list[Into]:
    """The places that `place` names from where the hook is, used up in order."""
    where = getattr(place, "span", None) or span
    return _FINDERS[type(place)](hand, place, where)


def number(hand: Hand, amount: Amount) -> int:
    """The amount for the size in work; 0 where the size skips it."""
    return amount.of(hand.setting.size) or 0


def find_next(hand: Hand, target: Target, count: int, span: Span | None) -> list[Found]:
    """The next `count` places of a kind, not yet used; what doesn't fit is works-past-the-end or no-such-place."""
    edge = hand.edge
    found: list[Found] = []
    at = edge.pos
    while len(found) < count:
        one = edge.find(target, at)
        if one is None:
            raise missing(hand, target, count, len(found), span)
        found.append(one)
        at = one.after
    return found


def missing(hand: Hand, target: Target, needed: int, available: int, span: Span | None) -> Exception:
    """The trouble of a place that isn't there: the edge has none of the kind, or no more of it."""
    whole = Edge(hand.edge.places)
    whole.counted = hand.edge.counted
    if whole.find(target, 0) is None and not (target == STITCH and hand.edge.places):
        return hand.stuck("no-such-place", span, what=describe(target), there=hand.edge.describe())
    return hand.stuck("works-past-the-end", span, needed=needed, available=available, what=describe(target))


def describe(target: Target) -> str:
    """A target as a neutral key: `stitch`, `space 2`, `corner`, `double`, `special shell`."""
    if target.stitch is not None:
        name = target.stitch.name or target.stitch.kind
        return f"special {name}" if target.stitch.kind == "special" else name
    return f"{target.kind} {target.length}" if target.length else target.kind


def bound(hand: Hand, until: Until, span: Span | None) -> int:
    """Where on the edge an `until` stops: an index, at most the limit."""
    edge = hand.edge
    if until.kind == "end":
        return edge.limit
    if until.kind == "to-last":
        wanted = number(hand, until.count)
        at = edge.limit
        while wanted and at > edge.pos:
            at -= 1
            if edge.matches(edge.places[at], until.target):
                wanted -= 1
        if wanted:
            raise missing(hand, until.target, number(hand, until.count), 0, span)
        return at
    if until.kind == "marker":
        for at in range(edge.pos, edge.limit):
            if edge.places[at] in hand.markers:
                return at
        raise hand.stuck("no-such-place", span, what="marker", there=edge.describe())
    corner = edge.find(Target("corner"), edge.pos)
    return edge.limit if corner is None else corner.at


def _take(hand: Hand, found: list[Found]) -> list[Into]:
    for one in found:
        hand.use(one.at, one.after, one.place)
    return [(one.place,) for one in found]


def _next(hand: Hand, place: Next, span: Span | None) -> list[Into]:
    count = number(hand, place.count)
    if place.piece:
        return _of_piece(hand, place, count, span)
    if hand.leaf is not None:
        if place.target.kind == "chain" and place.target.stitch is None:
            if len(hand.leaf.loops) - hand.leaf.pos >= count:
                return [(p,) for p in hand.next_leaf(count, span)]
            if hand.edge.find(Target("chain"), hand.edge.pos) is None:
                return [(p,) for p in hand.next_leaf(count, span)]
        hand.leaf = None
    if place.below > 1:
        return _below(hand, place, count, span)
    edge = hand.edge
    if edge.plain and place.target == STITCH:
        if count > edge.limit - edge.pos:
            raise missing(hand, place.target, count, edge.limit - edge.pos, span)
        stretch = edge.places[edge.pos : edge.pos + count]
        edge.pos += count
        hand.uses += count
        if stretch:
            hand.last = stretch[-1]
        return [(p,) for p in stretch]
    if place.any and hand.edge.circle and not hand.begun:
        found = find_next(hand, place.target, count, span)
        hand.edge.rotate(found[0].at)
    return _take(hand, find_next(hand, place.target, count, span))


def _below(hand: Hand, place: Next, count: int, span: Span | None) -> list[Into]:
    """Stitches worked into a round further down; each uses up the stitch that it stands in front of."""
    found: list[Into] = []
    for into in _take(hand, find_next(hand, place.target, count, span)):
        deep = into[0]
        for _ in range(place.below - 1):
            if not isinstance(deep, Made) or not deep.into:
                raise hand.stuck("no-such-place", span, what="rounds below", there=[])
            deep = deep.into[0]
        found.append((deep,))
    return found


def _of_piece(hand: Hand, place: Next, count: int, span: Span | None) -> list[Into]:
    name = place.piece
    places = hand.setting.others.get(name)
    if places is None and " " in name:
        places = hand.setting.others.get(name.rsplit(" ", 1)[0])
    if places is None:
        raise hand.stuck("no-such-place", span, what="piece", there=sorted(hand.setting.others))
    other = Edge(places)
    at = hand.other_pos.get(name, 0)
    found: list[Into] = []
    for _ in range(count):
        one = other.find(place.target, at)
        if one is None:
            raise hand.stuck("works-past-the-end", span, needed=count, available=len(found), what="piece")
        found.append((one.place,))
        at = one.after
    hand.other_pos[name] = at
    hand.last = found[-1][0] if found else hand.last
    return found


def _first(hand: Hand, place: First, span: Span | None) -> list[Into]:
    count = number(hand, place.count)
    edge = hand.edge
    if edge.pos == 0:
        return _take(hand, find_next(hand, place.target, count, span))
    if hand.stood and edge.pos == 1 and count == 1:
        hand.last = edge.places[0]
        return [(edge.places[0],)]
    own = Edge(list(hand.new))
    found = own.find(place.target, 0)
    if found is None:
        raise missing(hand, place.target, count, 0, span)
    return [(found.place,)]


def _last(hand: Hand, place: Last, span: Span | None) -> list[Into]:
    count = number(hand, place.count)
    if hand.leaf is not None and place.target.kind == "chain":
        left = len(hand.leaf.loops) - hand.leaf.pos
        if left == count:
            return [(p,) for p in hand.next_leaf(count, span)]
    edge = hand.edge
    at = edge.limit
    wanted = count
    while wanted and at > edge.pos:
        at -= 1
        if edge.matches(edge.places[at], place.target):
            wanted -= 1
    if wanted:
        raise missing(hand, place.target, count, count - wanted, span)
    between = edge.count(edge.pos, at)
    if between:
        raise hand.stuck("stitches-left-over", span, left=between, target="stitch")
    found = []
    for _ in range(count):
        one = edge.find(place.target, at)
        assert one is not None
        found.append(one)
        at = one.after
    return _take(hand, found)


def _same(hand: Hand, place: Same, span: Span | None) -> list[Into]:
    edge = hand.edge
    if hand.last is None and hand.standing is None and edge.places and edge.pos == 0:
        hand.standing = edge.places[0]
    same = hand.last if hand.last is not None else hand.standing
    if same is None:
        raise hand.stuck("no-such-place", span, what="same", there=edge.describe())
    if edge.pos == 0 and edge.places and same is edge.places[0]:
        hand.use(0, 1, same)
    elif edge.pos == 0 and edge.counted and isinstance(same, Space):
        one = edge.find(Target("space"), 0)
        if one is not None and one.place is same:
            hand.use(one.at, one.after, same)
    hand.last = same
    return [(same,)]


def _each(hand: Hand, place: Each, span: Span | None) -> list[Into]:
    if hand.leaf is not None:
        if place.targets[0].kind == "chain" and len(hand.leaf.loops) > hand.leaf.pos:
            return [(p,) for p in hand.next_leaf(len(hand.leaf.loops) - hand.leaf.pos, span)]
        hand.leaf = None
    edge = hand.edge
    end = bound(hand, place.until, span)
    if edge.plain and place.targets == (STITCH,) and place.every == 1:
        stretch = edge.places[edge.pos : end]
        edge.pos = end
        hand.uses += len(stretch)
        if stretch:
            hand.last = stretch[-1]
        return [(p,) for p in stretch]
    found: list[Found] = []
    at = edge.pos
    while at < end:
        ones = [one for t in place.targets if (one := edge.find(t, at, end)) is not None]
        if not ones:
            break
        nearest = min(ones, key=lambda one: one.at)
        found.append(nearest)
        at = nearest.after
    if not found:
        raise missing(hand, place.targets[0], 1, 0, span)
    if place.every > 1:
        hand.uses += len(found) - len(found[:: place.every])
        skipped, found = found, found[:: place.every]
        taken = _take(hand, found)
        edge.pos = max(edge.pos, skipped[-1].after)
        return taken
    taken = _take(hand, found)
    if edge.count(edge.pos, end) == 0:
        edge.pos = end
    return taken


def _here(hand: Hand, place: Here, span: Span | None) -> list[Into]:
    if hand.here is None:
        return _next(hand, Next(), span)
    return [(hand.here,)]


def _ring(hand: Hand, place: InRing, span: Span | None) -> list[Into]:
    ring = hand.ring()
    if ring is None:
        raise hand.stuck("no-such-place", span, what="ring", there=hand.edge.describe())
    if hand.edge.pos == 0:
        hand.use(0, 1, ring)
    hand.last = ring
    return [(ring,)]


def _from_hook(hand: Hand, place: FromHook, span: Span | None) -> list[Into]:
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


def _chain_of(hand: Hand, place: ChainOf, span: Span | None) -> list[Into]:
    """A beginning chain of the round below that stands for a stitch, by its top or by the number of that chain."""
    edge = hand.edge
    for at in range(edge.pos, edge.limit):
        made = edge.places[at]
        if isinstance(made, Made) and made.role == "turning":
            whole = made.legs or made.chains
            if place.length and place.length not in (whole, made.chains):
                continue
            if place.number and place.number != made.chains:
                raise hand.stuck("no-such-place", span, what=f"chain {place.number} of {whole}",
                                 there=[f"chain {made.chains}"])
            hand.use(at, at + 1, made)
            return [(made,)]
    spaces = edge.find(Target("space", length=place.length), edge.pos)
    if place.number and spaces is not None and isinstance(spaces.place, Space):
        if place.number > spaces.place.chains:
            raise hand.stuck("no-such-place", span, what=f"chain {place.number} of {spaces.place.chains}",
                             there=[f"chain {spaces.place.chains}"])
        hand.use(spaces.at, spaces.after, spaces.place)
        return [(loops_of(spaces.place)[place.number - 1],)]
    raise hand.stuck("no-such-place", span, what="turning chain", there=edge.describe())


def _within(hand: Hand, place: Within, span: Span | None) -> list[Into]:
    if place.of.kind in ("space", "chain"):
        return _in_arch(hand, place, span)
    edge = hand.edge
    start, group = _next_group(hand, place.of, span)
    inner = [i for i, p in enumerate(group) if edge.matches(p, place.inner) or place.inner == STITCH]
    if not inner:
        raise hand.stuck("no-such-place", span, what=describe(place.inner), there=[])
    if place.part == "each":
        picks = inner
    elif place.part == "centre":
        if len(inner) % 2 == 0:
            raise hand.stuck("no-such-place", span, what="centre", there=[f"{len(inner)}"])
        picks = [inner[len(inner) // 2]]
    elif place.part == "nth" and place.number > len(inner):
        raise hand.stuck("no-such-place", span, what=f"stitch {place.number}", there=[f"{len(inner)}"])
    else:
        picks = [inner[{"first": 0, "last": -1}.get(place.part, place.number - 1)]]
    taken = []
    for i in picks:
        hand.use(start + i, start + i + 1, group[i])
        taken.append((group[i],))
    return [tuple(into) for into in taken]


def _in_arch(hand: Hand, place: Within, span: Span | None) -> list[Into]:
    target = Target("space", length=place.of.length)
    if place.same and isinstance(hand.last, Made) and hand.last.role == "loop":
        space = hand.last.into[0]
    else:
        space = _take(hand, find_next(hand, target, 1, span))[0][0]
    assert isinstance(space, Space)
    loops = loops_of(space)
    if place.part == "each":
        picks = loops
    else:
        at = {"first": 1, "last": len(loops), "centre": (len(loops) + 1) // 2}.get(place.part, place.number)
        if at > len(loops):
            raise hand.stuck("no-such-place", span, what=f"chain {at} of {len(loops)}", there=[f"chain {len(loops)}"])
        picks = [loops[at - 1]]
    hand.last = picks[-1]
    return [(loop,) for loop in picks]


def _next_group(hand: Hand, target: Target, span: Span | None) -> tuple[int, list[Place]]:
    """The next group: a special stitch's stitches, or several stitches in one place."""
    edge = hand.edge
    at = edge.pos
    while at < edge.limit:
        group = _group_at(edge, at, target)
        if group:
            return at, group
        at += 1
    raise missing(hand, target, 1, 0, span)


def _group_at(edge: Edge, at: int, target: Target) -> list[Place]:
    first = edge.places[at]
    if not isinstance(first, Made):
        return []
    if first.unit and (target.stitch is None or is_unit(first, target)):
        end = at
        while end < edge.limit and getattr(edge.places[end], "unit", 0) == first.unit:
            end += 1
        return edge.places[at:end]
    if first.unit or (target.stitch is not None and target.stitch.kind == "special"):
        return []
    end = at + 1
    while end < edge.limit and getattr(edge.places[end], "into", None) == first.into:
        end += 1
    return edge.places[at:end] if end - at > 1 else []


def is_unit(made: Made, target: Target) -> bool:
    """Whether a stitch belongs to the group that a target names."""
    stitch = target.stitch
    assert stitch is not None
    if stitch.kind == "special":
        return made.special == stitch.name
    return made.kind == stitch.kind or stitch.form in ("shell", "v-stitch")


def _between(hand: Hand, place: Between, span: Span | None) -> list[Into]:
    """Between two neighbours: the hook goes past the first and stays before the second."""
    edge = hand.edge
    hand.gaps = True
    if place.target.kind == "group" or place.target.stitch is not None:
        start, group = _next_group(hand, place.target, span)
        end = start + len(group)
        after = edge.places[end % len(edge.places)] if end < edge.limit or edge.circle else None
        if after is None:
            raise hand.stuck("works-past-the-end", span, needed=2, available=1, what="group")
        hand.use(end - 1, end, group[-1])
        return [(group[-1], after)]
    first = find_next(hand, place.target, 1, span)[0]
    second = edge.find(place.target, first.after)
    beyond = second.place if second else (edge.places[0] if edge.circle else None)
    if beyond is None:
        raise hand.stuck("works-past-the-end", span, needed=2, available=1, what="stitch")
    hand.use(first.at, first.after, first.place)
    return [(first.place, beyond)]


def _marked(hand: Hand, place: Marked, span: Span | None) -> list[Into]:
    edge = hand.edge
    for at in range(edge.pos, edge.limit):
        if edge.places[at] in hand.markers:
            hand.use(at, at + 1, edge.places[at])
            return [(edge.places[at],)]
    raise hand.stuck("no-such-place", span, what="marker", there=edge.describe())


def _skipped(hand: Hand, place: Skipped, span: Span | None) -> list[Into]:
    if not hand.skipped:
        raise hand.stuck("no-such-place", span, what="skipped stitch", there=[])
    return [(hand.skipped[0],)]


def _over(hand: Hand, place: Over, span: Span | None) -> list[Into]:
    count = number(hand, place.count)
    if hand.leaf is not None:
        if len(hand.leaf.loops) - hand.leaf.pos >= count:
            return [tuple(hand.next_leaf(count, span))]
        hand.leaf = None
    legs = _take(hand, find_next(hand, place.target, count, span))
    return [tuple(leg[0] for leg in legs)]


def _row_ends(hand: Hand, place: RowEnds, span: Span | None) -> list[Into]:
    edge = hand.edge
    target = Target("row-end", stitch=place.stitch)
    if place.count is not None:
        return _take(hand, find_next(hand, target, number(hand, place.count), span))
    end = bound(hand, place.until, span)
    found = []
    at = edge.pos
    while at < end:
        made = edge.places[at]
        fits = isinstance(made, Made) and made.role == "row-end"
        if not fits:
            if found:
                break
        elif place.stitch is None or (isinstance(made, Made) and made.kind == place.stitch.kind):
            found.append(Found(made, at, at + 1))
        at += 1
    if not found:
        raise missing(hand, target, 1, 0, span)
    return _take(hand, found)


def _evenly(hand: Hand, place: Evenly, span: Span | None) -> list[Into]:
    """All that is left to the corner or the end, as one stretch; the caller spreads its stitches over it."""
    edge = hand.edge
    end = bound(hand, place.until, span)
    stretch = edge.places[edge.pos : end]
    if not stretch:
        raise missing(hand, STITCH, 1, 0, span)
    hand.uses += len(stretch)
    edge.pos = end
    hand.last = stretch[-1]
    return [(p,) for p in stretch]


def _corresponding(hand: Hand, place: Corresponding, span: Span | None) -> list[Into]:
    return _of_piece(hand, Next(target=place.target, piece=place.piece), 1, span)


_FINDERS: dict[type, Callable[[Hand, Any, Span | None], list[Into]]] = {
    Next: _next,
    First: _first,
    Last: _last,
    Same: _same,
    Each: _each,
    Here: _here,
    InRing: _ring,
    FromHook: _from_hook,
    ChainOf: _chain_of,
    Within: _within,
    Between: _between,
    Marked: _marked,
    Skipped: _skipped,
    Over: _over,
    RowEnds: _row_ends,
    Evenly: _evenly,
    Corresponding: _corresponding,
}
