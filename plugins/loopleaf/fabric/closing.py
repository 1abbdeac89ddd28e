"""How a round ends: the join, the run that a last chain bridges, and what is left over."""

from dataclasses import replace
from functools import lru_cache

from ..notation.once_a_line import Same as AsOne
from ..notation.once_a_line import once_a_line
from ..notation.tree import (
    ONE,
    Amount,
    Chain,
    ChainOf,
    FastenOff,
    First,
    Join,
    Marker,
    Next,
    Same,
    Step,
    Stitch,
    Tally,
    Target,
    Turn,
    Work,
)
from ..notation.tree import Place as NamedPlace
from .closed_arch import on_the_closing
from .earlier import left_of_round
from .edge import Edge
from .gaps import ends_beside_the_start
from .hand import Hand
from .openings import left_gaps
from .own_side import left_of_flap
from .passed import gone_over_elsewhere, passed_elsewhere, rest_of_a_shell, spaces_left
from .places import resolve
from .seek import describe
from .worked import Made, Place, Space


def first_place(hand: Hand) -> Place | None:
    """The first stitch of the round (or space, where it begins with one); a picot before it is no place."""
    return next((one for one in hand.new if getattr(one, "role", "") != "picot"), None)


def named_first(first: Place | None) -> NamedPlace | None:
    """The name under which a bare join is published: `first hdc`, `top of ch-3`, `3rd ch of ch-4`."""
    if isinstance(first, Made):
        if first.role == "turning":
            whole = first.legs or first.chains
            return _top_of(first.chains if whole > first.chains else 0, whole)
        return _first_called(first.kind, first.form, first.legs, first.post, first.special)
    return None


@lru_cache
def _top_of(number: int, whole: int) -> ChainOf:
    return ChainOf(number, "ch", whole)


@lru_cache
def _first_called(kind: str, form: str, legs: int, post: str, special: str) -> First:
    form = form if form != "shell" else ""
    # The author's own: not made of plain ones, or gathered in it, so that the pattern calls it by its name.
    own = special if kind == special or form else ""
    form = "" if own else form
    post = post if post != "around" else ""  # `first sc` is its name all the same
    name = Stitch("special" if own else kind, form, legs if form else 0, post=post, name=own)
    return First(ONE, Target("stitch", name))


def join(hand: Hand, step: Join) -> None:
    """Close the round with a slip stitch; where it goes is where the next round begins."""
    if step.how == "not":
        return
    hand.joined = True
    first = first_place(hand)
    at: Place | None = first
    if (chain := _named_as_arch(step.place, first)) is not None:
        hand.settled[id(step)] = step = replace(step, place=chain)
    if step.place is None:
        named = named_first(first)
        if named is not None and not step.how:
            hand.settled[id(step)] = _said(step, AsOne(named))
    else:
        at = _joined_to(hand, step.place, first)
        if at is None:
            raise hand.stuck("join-misses", step.span, place=step.place, why=_why(hand, step.place, first))
    if at is not None and at is not hand.new[0]:
        hand.start_at = at
    into = () if at is None else (at,)
    hand.put(step.stitch, into, step.span, role="join")


@once_a_line
def _said(step: Join, place: AsOne[NamedPlace]) -> Join:
    return replace(step, place=place.node)


def joining(hand: Hand, step: Work, following: tuple[Step, ...]) -> Join | None:
    """The join that a joined round's last slip stitch is: `sl st to top of ch-3`, `ss in first dc`.

    None where the slip stitch isn't the last thing made, or its place isn't the round's own beginning.
    """
    setting = hand.setting
    if setting.worked != "joined rounds" or hand.depth or hand.joined or not hand.new:
        return None
    if step.each != ONE or not all(isinstance(one, Turn | FastenOff | Marker | Tally) for one in following):
        return None
    first = first_place(hand)
    if isinstance(first, Space) and (there := on_the_closing(hand, step.places[0])) is not None:
        return Join(there, span=step.span)
    match step.places:
        case (Next(target=target) as place,) if hand.edge.find(target, hand.edge.pos) is None and (
            chain := _named_as_arch(place, first)
        ):
            return Join(chain, span=step.span)
        case (ChainOf() as place,):
            if _joined_to(hand, place, first) is None and getattr(first, "role", "") != "turning":
                return None
            return Join(place, span=step.span)
        case (First(count=Amount((1,))) as place,):
            return None if _joined_to(hand, place, first) is None else Join(place, span=step.span)
        case (Next(count=Amount((1,)), target=target, below=0, piece="", unsaid=False),):
            named = target.stitch is not None and hand.edge.find(target, hand.edge.pos) is None
            at = _joined_to(hand, First(ONE, target), first) if named else None
            return None if at is None or at is not first else Join(First(ONE, target), span=step.span)
    return None


def _named_as_arch(named: NamedPlace | None, first: Place | None) -> ChainOf | None:
    """The top of the chain that the round begins with, where a join calls that `ch-3` and no more; None for
    any other place."""
    match named, first:
        case Next(count=Amount((1,)), below=0, piece="") as place, Made(role="turning") as made:
            target = place.target
            alike = target.kind == "space" and target.word == "ch" and target.length == made.chains
            return _top_of(0, made.chains) if alike and made.legs in (0, made.chains) else None
    return None


def joins_here(hand: Hand, named: NamedPlace) -> bool:
    """Whether a slip stitch into that place, the last of its round, goes into the round's own beginning."""
    return bool(hand.new) and _joined_to(hand, named, first_place(hand)) is not None


def _joined_to(hand: Hand, named: NamedPlace, first: Place | None) -> Place | None:
    """The place a join names, among the round's own; None where it misses."""
    if isinstance(named, ChainOf):
        return _joined_chain(hand, named, first)
    if isinstance(named, First | Next):
        target = named.target
        if target.stitch is None and target.kind in ("stitch", "loop"):
            return first
        if target.kind in ("chain", "row-end"):
            return first
        found = Edge(list(hand.new)).find(target, 0)
        if found is not None:
            return first if _is_first_of_kind(first, target) else found.place
        if target.stitch is not None and target.stitch.kind == "special":
            name = target.stitch.name
            own = next((p for p in hand.new if getattr(p, "special", "") == name), None)
            return first if own is None and _begins_a_round(hand, name) else own
        return None
    if isinstance(named, Same):
        return first
    return first


def _begins_a_round(hand: Hand, name: str) -> bool:
    """Whether one of the author's stitches begins with a chain, and so is made first in its round."""
    line = hand.setting.specials.get(name)
    return line is not None and bool(line.steps) and isinstance(line.steps[0], Chain)


def _is_first_of_kind(first: Place | None, target: Target) -> bool:
    return isinstance(first, Made) and target.stitch is not None and first.kind == target.stitch.kind


def _joined_chain(hand: Hand, named: ChainOf, first: Place | None) -> Place | None:
    if isinstance(first, Made) and first.role == "turning":
        whole = first.legs or first.chains
        if named.length and named.length != whole:
            return None
        if named.number and named.number != first.chains:
            return None
        if not named.number and whole > first.chains and named.length:
            return None
        return first
    if isinstance(first, Space):
        beginning = not named.length or named.length == first.chains
        return first if beginning and named.number <= first.chains else None
    if named.number == 1 and named.length <= 1:
        return first
    return None


def _why(hand: Hand, named: NamedPlace, first: Place | None) -> dict[str, object]:
    """Facts for the words: what the beginning chain is, and what the join names."""
    question = hand.chain_question
    chains = first.legs or first.chains if isinstance(first, Made) and first.role == "turning" else 0
    return {
        "number": named.number if isinstance(named, ChainOf) else 0,
        "length": named.length if isinstance(named, ChainOf) else 0,
        "target": describe(named.target) if isinstance(named, First | Next) else "",
        "chains": chains or (question.chains if question else 0),
        "stands": first.chains if isinstance(first, Made) and first.role == "turning" else 0,
        "counts": bool(question and question.counts),
        "first": describe_place(first),
    }


def describe_place(place: Place | None) -> str:
    """A place as a neutral key, for words."""
    if isinstance(place, Space):
        return f"space {place.chains}"
    return place.kind if isinstance(place, Made) else ""


def close_with_stitch(hand: Hand, step: Work) -> None:
    """`ch 2, dc in first sc (counts as ch-5 sp)`: the stitch closes the round and is the far end of its
    last space."""
    assert step.counts is not None
    first = first_place(hand)
    before = hand.made[-1] if hand.made else None
    if isinstance(before, Space):
        before.chains = step.counts.space
        space = before
    else:
        space = hand.put_space(step.counts.space, step.span)
    target = step.places[0]
    if isinstance(target, First | ChainOf) and _joined_to(hand, target, first) is None:
        raise hand.stuck("join-misses", step.span, place=target, why=_why(hand, target, first))
    if not isinstance(target, First | Same | ChainOf | Next):
        resolve(hand, target, step.span)
    hand.put(step.stitch, () if first is None else (first,), step.span, role="join")
    hand.joined = True
    hand.start_at = space


def move_marker(hand: Hand) -> None:
    """The spiral's start moves on: the first stitches of this round were covered again and belong to it no
    more."""
    for made in [p for p in hand.new if isinstance(p, Made)][: hand.moved]:
        made.role = "travel"
        made.number = 0
        hand.new.remove(made)
    hand.moved = 0


def next_edge(hand: Hand) -> list[Place]:
    """The places for the next round, beginning where this one was joined."""
    new = hand.new
    if hand.start_at is not None:
        for at, place in enumerate(new):
            if place is hand.start_at:
                return new[at:] + new[:at]
    return new


def left_over(hand: Hand) -> None:
    """Report what the round left unworked and didn't say so."""
    edge = hand.edge
    if hand.on_free:  # a frill needn't go all round
        return
    if hand.on_round is not None:
        left = left_of_round(hand)
        if left:
            hand.trouble("stitches-left-over", None, left=left, target="stitch")
        return
    left = edge.count(edge.pos, len(edge.places))
    aside = left_gaps(hand) or left_of_flap(hand)
    if aside:
        hand.trouble("stitches-left-over", None, left=left + aside, target="stitch")
        return
    if hand.ring() is not None and not hand.uses:
        hand.trouble("stitches-left-over", None, left=1, target="ring")
        return
    if gone_over_elsewhere(hand) and _ends_with_chains(hand):
        return
    if hand.into_spaces:
        spaces = spaces_left(hand)
        if spaces == 1 and _only_turns(hand):
            return
        if spaces and not edge.counted:
            hand.trouble("stitches-left-over", None, left=spaces, target="space", stitches=left)
            return
    if not left or (hand.gaps and left == 1) or ends_beside_the_start(hand) or rest_of_a_shell(hand):
        return
    if left == 1 and hand.turned_tip is not None and edge.places[-1] is hand.turned_tip:
        return
    hand.outer_open = left == 1 and not edge.circle and isinstance(hand.last, Space)
    if hand.outer_open and (hand.setting.reading.outer or _begins_in_a_space(hand)):
        return
    if hand.setting.leaves and not hand.left and (hand.turned or not edge.circle):
        hand.left_places += edge.places[edge.pos : edge.limit]
        return
    partly = hand.setting.index == 0 and bool(hand.setting.begun_on)  # a strap begun on another piece's edge
    hand.short_open = (left == hand.kept_back or partly) and not edge.circle
    if hand.short_open and hand.setting.reading.short:
        return
    passed = left + hand.since
    if edge.circle and passed_elsewhere(hand, passed):
        return
    if edge.circle and passed in hand.skips and _ends_with_chains(hand):
        return
    first = edge.places[edge.pos]
    target = "chain" if isinstance(first, Made) and first.role == "foundation" else "stitch"
    hand.trouble("stitches-left-over", None, left=left, target=target)


def _begins_in_a_space(hand: Hand) -> bool:
    """Whether the row has passed the stitch at its beginning as well, narrowing alike at both ends."""
    first = next((one for one in hand.made if isinstance(one, Made) and one.role == "stitch"), None)
    space = hand.edge.places[1]
    return isinstance(space, Space) and not hand.stood and first is not None and first.into[:1] == (space,)


def _only_turns(hand: Hand) -> bool:
    """Whether the space left at a row's end is the chain that the row below began with, and that row's count
    by kind names spaces but not this one: the lace tape's turning chain."""
    last = hand.edge.places[-1]
    if hand.edge.circle or not isinstance(last, Space) or not hand.earlier:
        return False
    below = hand.earlier[-1]
    worked = below.sizes[hand.setting.size]
    if worked is None or below.stated is None or not worked.made or worked.made[0] is not last:
        return False
    targets = [kind for _, kind in below.stated.entries if isinstance(kind, Target)]
    named = [target.length for target in targets if target.kind == "space"]
    if not below.stated.entries:  # a count of the stitches alone; all of the row goes into one space
        return hand.uses == 1
    return bool(named) and last.chains not in named


def _ends_with_chains(hand: Hand) -> bool:
    for made in reversed(hand.made):
        if isinstance(made, Space):
            return True
        if made.role != "join":
            return False
    return False
