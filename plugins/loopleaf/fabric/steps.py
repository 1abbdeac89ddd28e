"""Performing an instruction, step by step."""

from collections.abc import Callable
from typing import Any

from ..notation.tree import (
    ONE,
    Again,
    Chain,
    Corresponding,
    Evenly,
    Facing,
    FastenOff,
    FreeLoops,
    FromHook,
    Group,
    Join,
    JoinYarn,
    JustMade,
    Leave,
    Lying,
    Marker,
    Next,
    OtherSide,
    Passage,
    Repeat,
    RowEnds,
    Skip,
    Step,
    Stitch,
    Tally,
    Target,
    Together,
    Turn,
    Work,
    WorkingOver,
    Yarn,
)
from . import beginning, closing, passing_over, repeats
from .added_chains import begins_on_foundation, lengthen
from .arch import closing_arch
from .caught import caught_in
from .closed_arch import around_the_closing
from .every import as_below, with_plain_between
from .free import working_in
from .hand import Hand, Leaf
from .into_ring import into_the_ring, repeated_in_the_ring
from .kept import before_the_last, kept
from .levelling import past_the_marker
from .markers import to_mark
from .one_walk import each_apart, one_walk
from .own_side import goes_on_below
from .own_stitches import own_stitch, written_out
from .pass_begun import each_pass_anew
from .petals import is_a_petal
from .picots import stands_on
from .places import resolve
from .seek import Into, number
from .shaped import shape
from .standing import where_it_stands
from .stitches import make
from .together import together
from .worked import Made, Space


def perform(hand: Hand, steps: tuple[Step, ...]) -> None:
    """Work steps in order; raises Stuck where the hand can't go on."""
    walked = 0
    for at, step in enumerate(steps):
        if walked > 1:
            walked -= 1
            continue
        if isinstance(step, Work):
            spaced = with_plain_between(hand, step)
            plain = as_below(hand, step) if spaced is None else spaced
            if plain is not step:
                hand.settled[id(step)] = step = plain
        if isinstance(step, Repeat):
            passes = each_pass_anew(hand, repeated_in_the_ring(hand, step))
            repeats.repeat(hand, passes, perform, steps[at + 1 :])
            continue
        if isinstance(step, Work) and step.stitch.kind == "slip":
            joining = closing.joining(hand, step, steps[at + 1 :])
            if joining is not None:
                closing.join(hand, joining)
                hand.settled[id(step)] = joining
                continue
        arch = closing_arch(hand, step, steps[at + 1 :])
        if arch is not None:
            hand.settled[id(step)] = step = arch
        follow = steps[at + 1] if at + 1 < len(steps) else None
        split = each_apart(step, follow)
        if split is not None:
            _work(hand, split[0], split[1])
            step = split[1]
        walked = one_walk(hand, (step, *steps[at + 1 :]), _in_one_place)
        if walked:
            continue
        shorter = before_the_last(hand, step, follow)
        if shorter is not step:
            hand.settled[id(step)] = step = shorter
        left = kept(hand, step, steps[0] if follow is None and hand.depth else follow)
        hand.edge.limit -= left
        _PERFORM[type(step)](hand, step, follow)
        hand.edge.limit += left


# ---- stitches ------------------------------------------------------------------------------------


def _work(hand: Hand, step: Work, follow: Step | None) -> None:
    founded = any(isinstance(place, FromHook) for place in step.places)
    slips = step.stitch.kind == "slip" and hand.travels and not founded
    if slips and hand.here is None and beginning.begins(hand):
        beginning.travel(hand, step)
        return
    _still_going(hand, step)
    beginning.past_the_slips(hand, step)
    hand.begun = True
    hand.both_layers = hand.both_layers or bool(step.through)
    step = around_the_closing(hand, where_it_stands(hand, step))
    into_ring = into_the_ring(hand, step)
    if into_ring is not None:
        hand.settled[id(step)] = step = into_ring
    each = number(hand, step.each)
    if not each:
        return
    if (arch := caught_in(hand, step)) is not None:
        hand.joining.append(hand.put(step.stitch, (arch,), step.span, role="travel"))
    elif step.stitch.kind == "slip" and _joins_pieces(hand, step):
        for into in resolve(hand, step.places[0], step.span):
            hand.joining.append(hand.put(step.stitch, into, step.span, role="travel"))
    elif step.stitch.kind == "special" and hand.setting.specials.get(step.stitch.name) is not None:
        own_stitch(hand, step, each, perform)
    elif not step.places or (step.stitch.form == "picot" and isinstance(step.places[0], Next | JustMade)):
        if step.places and isinstance(step.places[0], JustMade):
            stands_on(hand, step.places[0])
        for _ in range(each):
            make(hand, step.stitch, (), step.span)
    elif step.counts is not None and step.counts.space and not step.counts.skipped:
        closing.close_with_stitch(hand, step)
    else:
        for place in step.places:
            if isinstance(place, FromHook) and hand.leaf is None:
                beginning.skipped_chains(hand, step, place)
            intos = past_the_marker(hand, step) or resolve(hand, place, step.span)
            if step.shaping is not None and place is step.places[-1]:
                shape(hand, step, step.shaping, intos)
            elif isinstance(place, Evenly):
                _spread(hand, step, intos, each)
            elif isinstance(place, RowEnds) and place.per > 1:
                _spread(hand, step, intos, each * len(intos) // place.per)
            else:
                _make_all(hand, step, intos, each)
        hand.levelling = False
        if step.counts is not None and step.counts.stitch is not None and not step.counts.skipped:
            _name_last(hand, step.counts.stitch)


def _joins_pieces(hand: Hand, step: Work) -> bool:
    """A slip stitch that joins to another piece as it goes is drawn, and no stitch of the round; so is one
    in `any ch-5 sp of motif 1`, between chains of the round."""
    match step.places:
        case (Corresponding(),):
            return True
        case (Next(count=count, target=Target(kind="space" | "corner" | "loop"), piece=piece),) if piece:
            chained = bool(hand.made) and isinstance(hand.made[-1], Space)
            return count == ONE and chained and piece != hand.setting.begun_on
    return False


def _still_going(hand: Hand, step: Work | Group) -> None:
    """Stitches need a yarn that wasn't fastened off in this line, and come before the turn at its end."""
    if hand.fastened:
        raise hand.stuck("yarn-not-joined", step.span, yarn=hand.yarn)
    if hand.turned and hand.turned_after:
        hand.trouble("turn-not-expected", step.span)
        hand.turned = False


def _make_all(hand: Hand, step: Work, intos: list[Into], each: int) -> None:
    stitch, span = step.stitch, step.span
    if each == 1 and not stitch.form and stitch.kind not in ("inc", "dec", "special", "slip"):
        hand.put_all(stitch, intos, span)
        return
    for into in intos:
        for _ in range(each):
            make(hand, stitch, into, span)


def _spread(hand: Hand, step: Work, intos: list[Into], total: int) -> None:
    """So many stitches evenly along a stretch: the places as evenly as whole numbers allow."""
    places = len(intos)
    for i in range(total):
        make(hand, step.stitch, intos[i * places // total], step.span)


def _name_last(hand: Hand, stitch: Stitch) -> None:
    """`(counts as cl)`: the stitch just made goes by that name."""
    for made in reversed(hand.made):
        if isinstance(made, Made) and made.number:
            if stitch.kind == "special":
                made.special = stitch.name
            else:
                made.kind, made.form, made.legs = (
                    stitch.kind,
                    stitch.form or made.form,
                    stitch.number or made.legs,
                )
            return


def _group(hand: Hand, step: Group, follow: Step | None) -> None:
    _still_going(hand, step)
    beginning.past_the_slips(hand, step)
    for place in where_it_stands(hand, step).places:
        if isinstance(place, FromHook) and hand.leaf is None:
            beginning.skipped_chains(hand, step, place)
        for into in resolve(hand, place, step.span):
            _in_one_place(hand, step, into)
    hand.begun = True


def _in_one_place(hand: Hand, step: Work | Group, into: Into) -> None:
    if isinstance(step, Work):
        _make_all(hand, step, [into], number(hand, step.each))
        return
    outer, opening = hand.here, hand.opening
    hand.here = into[0]
    hand.last = into[0]
    hand.opening = opening if opening[1] else written_out(hand, step)
    hand.petal = beginning.begins(hand) and is_a_petal(step.steps)
    try:
        perform(hand, step.steps)
    finally:
        hand.here, hand.opening = outer, opening
    hand.last = into[0]


# ---- chains --------------------------------------------------------------------------------------


def _chain(hand: Hand, step: Chain, follow: Step | None) -> None:
    length = number(hand, step.length)
    if not length:
        return
    back = isinstance(follow, Work) and follow.places and isinstance(follow.places[0], FromHook)
    if back and begins_on_foundation(hand):
        lengthen(hand, length, step.span)
    elif back:
        hand.open_leaf(length, step.span)
        hand.begun = True
    elif beginning.begins(hand):
        beginning.begin_chain(hand, step, follow)
    elif step.counts is not None and step.counts.stitch is not None:
        into: Into = () if hand.last is None else (hand.last,)
        whole = length - step.counts.chains
        hand.put(Stitch(step.counts.stitch.kind, number=length), into, step.span, "turning", chains=whole)
        if step.counts.chains:
            hand.put_space(step.counts.chains, step.span)
    else:
        hand.leaf = None
        hand.put_space(length, step.span)


def _skip(hand: Hand, step: Skip, follow: Step | None) -> None:
    if hand.slipped and hand.edge.pos == 0 and step.which == "next":
        hand.edge.pos = 1  # the slip stitches have used up the stitch that they end on
    passing_over.skip(hand, step)


def _leave(hand: Hand, step: Leave, follow: Step | None) -> None:
    passing_over.leave(hand, step)


def _working_over(hand: Hand, step: WorkingOver, follow: Step | None) -> None:
    passing_over.work_over(hand, step)


AROUND_A_TIP = 3
"""So many stitches in the chain begun with go around its end: the other side stops before it."""


def _other_side(hand: Hand, step: OtherSide, follow: Step | None) -> None:
    if step.of == "chain" and hand.leaf is not None:
        leaf = hand.leaf
        first = max(leaf.first, 0)
        hand.leaf = Leaf(list(reversed(leaf.loops[first : leaf.pos - 1])), span=step.span)
        return
    edge = hand.edge
    if goes_on_below(hand):
        return
    if not hand.other_side:
        raise hand.stuck("no-such-place", step.span, what="other side", there=edge.describe())
    if edge.pos < edge.limit:
        raise hand.stuck("stitches-left-over", step.span, left=edge.rest(), target="chain")
    at_the_tip = [one for one in hand.new if isinstance(one, Made) and one.into == (edge.places[-1],)]
    hand.tip_open = len(at_the_tip) == 1
    behind = hand.other_side[max(hand.first_worked, 0) :][::-1]
    edge.places = edge.places + behind[not (hand.setting.reading.tip and hand.tip_open) :]
    begun_in = edge.places[max(hand.first_worked, 0)]
    into_first = sum(1 for one in hand.made if isinstance(one, Made) and one.into == (begun_in,))
    hand.turned_tip = edge.places[-1] if len(behind) > 1 and into_first >= AROUND_A_TIP else None
    edge.limit = len(edge.places)
    hand.turned_at = edge.pos
    hand.other_side = []


# ---- yarn, markers, ends -----------------------------------------------------------------------------


def _yarn(hand: Hand, step: Yarn, follow: Step | None) -> None:
    if step.how in ("carrying", "dropping"):
        return
    hand.yarn = step.yarn
    hand.fastened = False


def _fasten_off(hand: Hand, step: FastenOff, follow: Step | None) -> None:
    if hand.yarn and step.yarn not in ("", hand.yarn) and step.yarn not in _yarns(hand):
        hand.trouble("yarn-not-joined", step.span, yarn=step.yarn, never=True)
    hand.fastened = not step.yarn or step.yarn == hand.yarn


def _yarns(hand: Hand) -> set[str]:
    """The yarns that the piece was worked in so far."""
    before = [one.sizes[hand.setting.size] for one in hand.earlier]
    return {made.yarn for work in before if work for made in work.made} | {made.yarn for made in hand.made}


def _marker(hand: Hand, step: Marker, follow: Step | None) -> None:
    if step.action == "remove":
        hand.markers.clear()
        return
    if step.action == "move":
        closing.move_marker(hand)
        marked_here = [one for one in hand.edge.places if one in hand.markers]
        hand.markers = [one for one in hand.markers if marked_here and one is not marked_here[0]]
    if (marked := to_mark(hand, step)) is not None:
        hand.markers.append(marked)


def _join_yarn(hand: Hand, step: JoinYarn, follow: Step | None) -> None:
    beginning.join_yarn(hand, step)


def _turn(hand: Hand, step: Turn, follow: Step | None) -> None:
    hand.turned = step.turns
    only_stood = hand.stood and hand.numbered == 1  # `ch 3 (counts as dc), turn, dc in next st`
    hand.turned_after = 0 if only_stood else hand.numbered


def _passage(hand: Hand, step: Passage, follow: Step | None) -> None:
    repeats.passage(hand, step, perform)


def _again(hand: Hand, step: Again, follow: Step | None) -> None:
    repeats.again(hand, step, perform)


def _together(hand: Hand, step: Together, follow: Step | None) -> None:
    together(hand, step, perform)


def _free_loops(hand: Hand, step: FreeLoops, follow: Step | None) -> None:
    working_in(hand, step)


def _join(hand: Hand, step: Join, follow: Step | None) -> None:
    closing.join(hand, step)


def _nothing(hand: Hand, step: Tally | Facing | Lying, follow: Step | None) -> None:
    """A count at the line's end, and the side that faces, or how it lies, say nothing to the hook."""


_PERFORM: dict[type, Callable[[Hand, Any, Step | None], None]] = {
    Work: _work,
    Group: _group,
    Chain: _chain,
    Skip: _skip,
    Leave: _leave,
    WorkingOver: _working_over,
    OtherSide: _other_side,
    Passage: _passage,
    Again: _again,
    Join: _join,
    Turn: _turn,
    FastenOff: _fasten_off,
    Marker: _marker,
    Yarn: _yarn,
    JoinYarn: _join_yarn,
    Tally: _nothing,
    Facing: _nothing,
    Lying: _nothing,
    Together: _together,
    FreeLoops: _free_loops,
}
