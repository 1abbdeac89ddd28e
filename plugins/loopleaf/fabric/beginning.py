"""How a round begins: slip stitches that travel, yarn joined anew, and the beginning chain."""

from dataclasses import replace

from ..notation.tree import (
    Between,
    Chain,
    CountsAs,
    Each,
    First,
    FromHook,
    Group,
    JoinYarn,
    Next,
    Over,
    Same,
    Skip,
    Span,
    Step,
    Stitch,
    Target,
    Work,
)
from ..notation.tree import Ring as InRing
from .blocks import begins_block
from .caught import caught_in
from .earlier import along_round
from .edge import is_of
from .free import turn_to
from .hand import ChainQuestion, Hand
from .inside import loop_of_opening
from .meshes import above, of_space
from .own_side import begins_in_a_corner, lay_all_around
from .places import resolve
from .seek import find_next, number, use_first
from .standing import where_it_stands
from .stitches import by_kind, make, own_kind
from .taken_up import take_up_unworked, worked_now
from .worked import Made, Place, Ring, Space


def begins(hand: Hand) -> bool:
    """Whether nothing has been made yet that the round's start could still be moved by."""
    return not hand.begun and hand.depth == 0


# ---- travelling --------------------------------------------------------------------------------


def travel(hand: Hand, step: Work) -> None:
    """Slip stitches that only move on: not counted, no places. In a round what they pass comes round again
    at the end."""
    edge = hand.edge
    uses = hand.uses
    for named in where_it_stands(hand, step).places:
        onward = not isinstance(named, Same) if hand.slipped else edge.circle
        if onward and edge.pos == 0 and not isinstance(named, InRing | First | Between):
            edge.pos = 1
        for into in resolve(hand, named, step.span):
            hand.put(step.stitch, into, step.span, role="travel")
    hand.uses = uses
    hand.into_spaces = False
    hand.runs.clear()
    if hand.last is not None:
        _stand_at(hand, hand.last)
        hand.slipped = not edge.circle


def past_the_slips(hand: Hand, step: Work | Group) -> None:
    """In a row the slip stitches have used up the stitch that they end on, for all that doesn't name it."""
    if not hand.slipped or hand.edge.pos:
        return
    match step.places:
        case (Next(target=target, unsaid=True),) if hand.edge.matches(hand.edge.places[0], target):
            return  # `sl st in first ch-3 sp, ch 1, sc in sp`
    if all(isinstance(place, Next | Each) for place in step.places):
        hand.edge.pos = 1


def _stand_at(hand: Hand, place: Place) -> None:
    """Make a place the round's first: the circle turns there; in a row what lies before is behind us."""
    edge = hand.edge
    at = _index(hand, place)
    if edge.circle:
        hand.slid = edge.count(0, at)
        edge.rotate(at)
    else:
        edge.places = edge.places[at:]
        edge.limit -= at
        edge.pos = 0
    hand.standing = place
    hand.last = None


def _index(hand: Hand, place: Place) -> int:
    """Where on the edge a place is; a chain of a space that isn't there alone is where its space is."""
    places = hand.edge.places
    exact = next((at for at, other in enumerate(places) if other is place), None)
    if exact is not None:
        return exact
    whole = place.into[0] if isinstance(place, Made) and place.role == "loop" else place
    return next((at for at, other in enumerate(places) if is_of(other, whole)), 0)


def join_yarn(hand: Hand, step: JoinYarn) -> None:
    """`join B with sl st in any corner sp`: work goes on from there."""
    hand.yarn = step.yarn or hand.yarn
    hand.fastened = False
    edge = hand.edge
    stitch = step.standing or step.stitch.kind != "slip"
    if step.place is None:
        return
    if begins_in_a_corner(hand, step.place):
        lay_all_around(hand)
    target: Target = getattr(step.place, "target", Target())
    between = isinstance(step.place, InRing | Between) or target.kind == "gap"
    if begins(hand) and (edge.pos == 0 or hand.laid) and not between:
        if target.kind == "stitch" and target.unworked and hand.earlier and take_up_unworked(hand):
            target = worked_now(target)
        if target.kind == "free-loop":
            turn_to(hand, target.loop, target.round, step.span)
            target = Target()
        elif target.round:
            target = along_round(hand, step.place, step.span).target
        if getattr(step.place, "piece", ""):
            into = resolve(hand, step.place, step.span)[0]
            hand.last = into[0]
        else:
            count = number(hand, step.place.count) if isinstance(step.place, Next) else 1
            loop = loop_of_opening(hand, step.place)
            found = find_next(hand, target, max(count, 1), step.span) if loop is None else []
            _stand_at(hand, found[-1].place if loop is None else loop)
    elif isinstance(step.place, InRing):
        hand.standing = hand.ring()
    else:
        resolve(hand, step.place, step.span)
        hand.standing = hand.last
    if stitch:
        hand.begun = True
        place = hand.standing if hand.standing is not None else hand.last
        assert place is not None
        _use_standing(hand, place)
        make(hand, step.stitch, (place,), step.span)


def _use_standing(hand: Hand, place: Place) -> None:
    if hand.edge.pos or not hand.edge.places:
        return
    use_first(hand, place)
    hand.last = place


# ---- the beginning chain ------------------------------------------------------------------------


def begin_chain(hand: Hand, step: Chain, follow: Step | None) -> None:
    """The chain that a round or row begins with: a stitch, a stitch and a space, a space, or nothing that
    counts."""
    length = number(hand, step.length) + hand.pending
    if isinstance(follow, Chain) and step.counts is None and length == 1:
        if step is hand.lock or follow.counts is not None:
            hand.put_chain(length, step.span)
        else:
            hand.pending = length  # chains with nothing between them are one chain
        return
    if (
        length == 1
        and step.counts is None
        and hand.travels
        and hand.setting.rows
        and (_slips_to_a_space(follow) or hand.setting.reading.led_in)
    ):
        hand.put_chain(length, step.span)  # `ch 1, sl st in first ch-3 sp, ch 1, …`: the row begins there
        return
    hand.begun = True
    if isinstance(follow, Work) and follow.stitch.kind.startswith("foundation-"):
        hand.put_chain(length, step.span)  # what the first of them stands on
    elif step.counts is None and _is_a_space(hand, follow, length):
        if isinstance(follow, Skip) and hand.edge.circle and hand.edge.places[:1] == [hand.standing]:
            _stand_first(hand)
        hand.put_space(length, step.span)
    elif step.counts is not None:
        _as_said(hand, length, step.counts, step.span)
    elif isinstance(follow, Work | Group) and follow.counts is not None and not follow.counts.skipped:
        if isinstance(follow, Work) and _is_a_leg(hand, follow):
            _stand_first(hand)
        hand.put_chain(length, step.span)
    else:
        _unsaid(hand, length, step.span, follow)


def _slips_to_a_space(step: Step | None) -> bool:
    match step:
        case Work(stitch=Stitch(kind="slip"), places=(First(target=target) | Next(target=target),)):
            return target.kind in ("space", "loop")
    return False


def _is_a_space(hand: Hand, follow: Step | None, length: int) -> bool:
    """Whether the chain begins a block of corner to corner, arches over what is passed to a slip stitch, or
    leads to another piece: `ch 6, sk 2 sts, sl st in next st`, `ch 3, sc in next 12 sts of leg 1`.
    """
    petal = hand.petal_in_ring or (hand.petal and hand.here is not None)
    if petal or begins_block(hand.made[-1] if hand.made else None) or caught_in(hand, follow) is not None:
        return True
    if isinstance(follow, Skip) and hand.setting.spiral and number(hand, follow.count) > 1:
        return True  # a spiral has no turning chain: `ch 1, sk first 5 sts`
    if isinstance(follow, Skip) and not hand.setting.first_kind:  # slip stitches alone
        return length > 1
    if not isinstance(follow, Work) or not follow.places or not getattr(follow.places[0], "piece", ""):
        return False
    return length > max(hand.setting.heights.get(follow.stitch.kind, 0), 1)  # too long to turn with


def _is_a_leg(hand: Hand, follow: Work) -> bool:
    """`ch 2, dc2tog over next 2 sts (counts as dc3tog)`: the chain is the leg that is left."""
    whole = follow.counts.stitch if follow.counts is not None else None
    if whole is None or not whole.number or not all(isinstance(one, Next | Over) for one in follow.places):
        return False
    return (
        sum(number(hand, one.count) for one in follow.places if isinstance(one, Next | Over)) + 1
        == whole.number
    )


def _stand_first(hand: Hand) -> None:
    """The chain stands on the round's first place and uses it up."""
    place = hand.standing if hand.standing is not None else next(iter(hand.edge.places), None)
    if place is not None and not isinstance(place, Ring):
        _use_standing(hand, place)
        hand.standing = place
        hand.stood = True


def behind_the_chain(hand: Hand, step: Skip) -> bool:
    """Whether `sk 1 dc` comes just behind a chain that counts: print may mean the stitch it stands on. Or
    `sk 2 dc` behind `ch 4 (counts as dc, ch 1)`: that one, and what the chain goes over.
    """
    if not step.bare or step.target.kind != "stitch":
        return False
    if hand.depth or not hand.stood:
        return False
    *before, last = hand.made[-2:] or (None,)
    arch = last if isinstance(last, Space) else None
    stands = before[-1] if arch is not None and before else last
    told = number(hand, step.count) == (arch.chains if arch is not None else 0) + 1
    return hand.edge.pos == 1 and told and getattr(stands, "role", "") == "turning"


def _as_said(hand: Hand, length: int, counts: CountsAs, span: Span | None) -> None:
    if counts.stitch is not None and not counts.stitch.kind:  # `counts as st`: such as the round is made of
        counts = replace(counts, stitch=by_kind(hand.setting.only_kind or hand.setting.first_kind))
    otherwise = hand.setting.reading.chain
    if otherwise is False and counts.stitch is not None:
        hand.put_chain(length, span)
    elif otherwise is True and counts.nothing:
        stand(hand, by_kind(hand.setting.first_kind), length, length, span)
    elif counts.stitch is not None:
        _question(hand, span, length, own_kind(counts.stitch), True, "said")
        stand(hand, counts.stitch, length - counts.chains, length, span)
        if counts.chains:
            hand.put_space(counts.chains, span)
    elif counts.nothing:
        _question(hand, span, length, hand.setting.first_kind, False, "said")
        hand.put_chain(length, span)
    else:
        hand.put_space(counts.space or counts.chains, span)


def _unsaid(hand: Hand, length: int, span: Span | None, follow: Step | None) -> None:
    setting = hand.setting
    kind = setting.first_kind
    height = setting.heights.get(kind, 0)
    if setting.closing is not None and setting.closing[1] == length and 1 < setting.closing[0] < length:
        stood = setting.closing[0]
        _question(hand, span, length, kind, True, "said")
        stand(hand, by_kind(kind), stood, length, span)
        hand.put_space(length - stood, span)
        return
    tall = _taller(hand, kind, length)
    hand.tall_open = bool(tall)
    if tall and setting.reading.tall:
        stood = setting.heights[tall]
        stand(hand, by_kind(tall), stood, length, span)
        if length > stood:
            hand.put_space(length - stood, span)
        return
    if length > 1 and height and length > height and setting.reading.chain is None:
        counts = setting.conventions.get(kind)
        hand.mesh_open = counts is None and height > 1
        if counts or (counts is None and setting.reading.mesh):
            stand(hand, by_kind(kind), height, length, span)
            hand.put_space(above(hand, length - height, follow), span)
        else:
            hand.put_space(length, span)
        return
    counts, by = decide(hand, length, kind)
    _question(hand, span, length, kind, counts, by)
    if counts:
        stand(hand, by_kind(kind), length, length, span)
    else:
        hand.put_chain(length, span)


def _taller(hand: Hand, kind: str, length: int) -> str:
    """The tallest stitch that the chain may stand for by the pattern's own rule, `ch 3` counts as dc, though
    the row begins with a lower one; "" for none."""
    heights = hand.setting.heights
    counts = [one for one, yes in hand.setting.conventions.items() if yes and heights.get(one, 0) <= length]
    tallest = max(counts, key=lambda one: heights.get(one, 0), default="")
    return tallest if heights.get(tallest, 0) > max(heights.get(kind, 0), 1) else ""


TALLEST_OF_ONE = 2
"""A lone ch 1 may stand for a single or a half where the pattern says that their chains count; it is never
as tall as a double, so a rule about doubles and taller says nothing of it."""


def decide(hand: Hand, length: int, kind: str) -> tuple[bool, str]:
    """Whether an unsaid chain counts, and by what: this reading, the pattern's convention, the rule of ch
    1, or nothing."""
    setting = hand.setting
    convention = setting.conventions.get(kind)
    if length == 1 and setting.heights.get(kind, 0) > TALLEST_OF_ONE:
        convention = None
    by = "convention" if convention is not None else "rule" if length == 1 else "open"
    if setting.reading.chain is not None:
        return setting.reading.chain, by
    if convention is not None:
        return convention, by
    return (False, by) if length == 1 else (kind not in ("single", "half"), by)


def _question(hand: Hand, span: Span | None, chains: int, stitch: str, counts: bool, by: str) -> None:
    hand.chain_question = ChainQuestion(span, chains, stitch, counts, by)


def stand(hand: Hand, stitch: Stitch, chains: int, whole: int, span: Span | None) -> None:
    """A chain that counts stands on the first place and uses it up."""
    place: Place | None = hand.here
    if place is None:
        place = hand.standing
        if place is None and hand.edge.places and hand.edge.pos == 0:
            place = hand.edge.places[0]
        if place is not None:
            if isinstance(place, Ring):
                hand.edge.pos = 0
            _use_standing(hand, place)
            hand.standing = place
            hand.stood = True
    into = () if place is None else hand.gap if hand.gap and hand.gap[0] is place else (place,)
    special = stitch.name if stitch.kind == "special" else ""
    plain = Stitch(hand.setting.first_kind if special else stitch.kind, stitch.form, whole)
    hand.put(plain, into, span, role="turning", chains=chains, special=special)


# ---- the foundation chain ------------------------------------------------------------------------


def skipped_chains(hand: Hand, step: Work | Group, place: FromHook) -> None:
    """The chains passed by `dc in 4th ch from hook`: a stitch, a stitch and a space, a space, or nothing."""
    passed = place.number - 1
    if step.counts is not None and step.counts.skipped:
        counts = step.counts
        if counts.space:
            hand.put_space(counts.space, step.span).block = True
        if counts.stitch is not None:
            stood = counts.stitch.kind or hand.setting.only_kind or hand.setting.first_kind
            _question(hand, step.span, passed, stood, True, "said")
            height = hand.setting.heights.get(stood, passed)
            hand.put(Stitch(stood, number=passed), (), step.span, role="turning",
                     chains=min(height, passed))  # fmt: skip
            if counts.chains:
                hand.put_space(counts.chains, step.span)
        return
    plain = isinstance(step, Work) and step.stitch.kind != "special"
    kind = step.stitch.kind if isinstance(step, Work) and plain else hand.setting.first_kind
    height = hand.setting.heights.get(kind, 0)
    convention = hand.setting.conventions.get(kind)
    if passed < height or (passed < 2 and not convention):
        return
    long = height and passed > height + 1 and hand.setting.reading.chain is None and convention is not False
    hand.arch_open = hand.arch_open or bool(long and isinstance(step, Group))
    if long and (isinstance(step, Work) or hand.setting.reading.arch):
        hand.mesh_open = hand.mesh_open or (convention is None and height > 1)
        stands = convention or (convention is None and hand.setting.reading.mesh)
        if stands:
            hand.put(Stitch(kind, number=passed), (), step.span, role="turning", chains=height)
        hand.put_space(of_space(passed - height) if stands else passed, step.span)
        return
    counted, by = decide(hand, passed, kind)
    _question(hand, step.span, passed, kind, counted, by)
    if counted:  # behind the stitch's own chains those under the first group are only passed
        own = min(height, passed) if long else passed
        hand.put(Stitch(kind, number=passed), (), step.span, role="turning", chains=own)
