"""Working one round of one size, in the reading that the rest bears out."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import product

from ..notation.once_a_line import Same
from ..notation.tree import Chain, Line, Step, Tally, Target
from . import closing
from .doubted_chain import FIT, is_by_one_stitch, may_be_the_cause
from .edge import Edge, Stuck
from .flaps import Flap
from .hand import Hand
from .kept import ends_in_a_chain
from .levelling import only_levels
from .looked_over import look_over
from .setting import AS_IT_STANDS, LED_IN, Reading, Setting
from .single_chains import opens_spaces
from .steps import perform
from .survey import Survey, decreases, leads_in, other_pieces
from .taken_up import skips_to_a_new_yarn, take_up_behind
from .tally import compare, count_up
from .worked import Made, Place, Ring, RoundWork, Space, Trouble, WorkedRound


@dataclass(slots=True)
class Task:
    """One round to work: its steps, what it is worked into, and how the pattern works.

    before: the chain that the row below made for it (`ch 3, turn`). chains: the pattern's `chain spaces`.
    other_side: foundation chains, from the hook, whose far side can still be worked. unworked: stitches that
    earlier rows going the same way left, in the order met; unworked_back: those that went the other way.
    earlier: the rounds of the piece so far. corners: see `Edge`. begun_on: the piece whose edge the round is
    worked into: another one's in the first round, later its own. several: another size has more
    places here. other_way: whether its first slip stitches are taken otherwise than its count says, see
    `work`. leaves, turned, flap: see `Setting`. leads: see `count_up`.
    tip_last: the round below was joined and then turned, so that the stitch joined to may come last.
    """

    steps: tuple[Step, ...]
    before: tuple[Step, ...]
    places: list[Place]
    circle: bool
    worked: str
    index: int
    size: int
    yarn: str
    chains: str | None
    conventions: Mapping[str, bool]
    heights: Mapping[str, int]
    specials: Mapping[str, Line]
    others: Mapping[str, list[Place]]
    other_side: list[Place]
    markers: list[Place]
    unworked: list[Place]
    stated: Tally | None
    earlier: Sequence[RoundWork] = ()
    corners: frozenset[int] = frozenset()
    begun_on: str = ""
    several: bool = False
    unworked_back: Sequence[Place] = ()
    other_way: bool = False
    leaves: bool = False
    turned: bool = False
    flap: Flap | None = None
    leads: Mapping[str, str] = field(default_factory=dict)
    tip_last: bool = False


@dataclass(slots=True)
class Attempt:
    """One reading of a round, worked: the hand's end state, the figures, the troubles (the first decides).

    otherwise: where the beginning chain is contradicted, the edge that it makes as said.
    """

    hand: Hand
    worked: WorkedRound
    reading: Reading
    troubles: list[Trouble]
    stuck: bool
    otherwise: list[Place] | None = None

    @property
    def fits(self) -> bool:
        return not self.troubles or all(t.rule == "count-unclear" for t in self.troubles)


def work(task: Task) -> Attempt:
    """Work a round; where the text leaves something open, try each reading and take the one that alone is
    borne out.

    A row's first slip stitches may only lead to where it begins: so where its count leaves them out, or
    otherwise where the row above it asks for that.
    """
    plain = _work(task, AS_IT_STANDS)
    if not plain.hand.leads_in:
        return plain
    led = _work(task, LED_IN)
    if not plain.fits and not led.fits:
        plain.otherwise = plain.otherwise or (None if led.stuck else led.worked.edge)
        return led if led.hand.chain_question is not None else plain
    if not plain.fits or not led.fits:
        return led if led.fits else plain
    return led if (task.stated is not None) != task.other_way else plain


def _work(task: Task, read: Reading) -> Attempt:
    """Work a round, so read, and in the further readings that its text leaves open."""
    plain = _back_over_the_join(task) or _attempt(task, read)
    question = plain.hand.chain_question
    chain_open = question is not None and question.by == "open"
    repeat_open = bool(plain.hand.unclear)
    if chain_open or repeat_open:
        plain = _settle_readings(task, plain, chain_open, repeat_open)
    if plain.fits and plain.hand.mesh_open and (_counts_no_stitches(task.stated) or _said_before(task)):
        mesh = _attempt(task, replace(plain.reading, mesh=True))
        plain = mesh if mesh.fits else plain
    if not plain.fits:
        for met, said, by_count in _OPEN:
            if getattr(plain.hand, met) and (task.stated is not None or not by_count):
                other = _attempt(task, replace(plain.reading, **{said: True}))
                if other.fits or (not by_count and _is_better(other, plain)):
                    return other
    if chain_open or repeat_open or plain.fits or question is None:
        return plain
    cause = plain.troubles[0]
    if may_be_the_cause(plain.hand, cause, task.stated):
        other = _attempt(task, replace(read, chain=not question.counts))
        if other.fits and is_by_one_stitch(cause):
            return _contradicted(plain, other)
    return plain


def _back_over_the_join(task: Task) -> Attempt | None:
    """A turned round that begins in the chain space beside the join: the stitch joined to comes last in it.

    None where the line doesn't begin so, a beginning chain may stand on that stitch, or it doesn't fit so.
    """
    if not task.tip_last or not isinstance(task.places[1 % len(task.places)], Space):
        return None
    if not look_over(task.steps, Same(task.specials)).begins_in_a_space:
        return None
    attempt = _attempt(task, replace(AS_IT_STANDS, onward=True))
    question = attempt.hand.chain_question
    stands = question is not None and (question.counts or question.by == "open")
    return attempt if attempt.fits and not stands else None


def _counts_no_stitches(stated: Tally | None) -> bool:
    """Whether a count leaves open how many stitches a mesh has: its beginning chain is one, as a rule."""
    entries = stated.entries if stated is not None else ()
    return (stated is None or stated.total is None) and all(isinstance(one, Target) for _, one in entries)


def _said_before(task: Task) -> bool:
    """Whether an earlier row says that the chain it begins with, just as long, is a stitch and a space."""
    if not task.steps or not isinstance(task.steps[0], Chain):
        return False
    begun = [one.line.steps[0] for one in task.earlier if one.line is not None and one.line.steps]
    told = [one.counts for one in begun if isinstance(one, Chain) and one.length == task.steps[0].length]
    return any(counts is not None and counts.stitch is not None and counts.chains for counts in told)


_OPEN = (
    ("skips_first", "under", False),
    ("skips_behind", "behind", False),
    ("goes_deep", "deep", False),
    ("tip_open", "tip", False),
    ("mesh_open", "mesh", False),
    ("both_layers", "folded", False),
    ("outer_open", "outer", True),
    ("gap_open", "gap", True),
    ("arch_open", "arch", True),
    ("short_open", "short", True),
    ("apart_open", "apart", False),
    ("last_open", "last", True),
    ("leg_open", "alone", True),
    ("pair_open", "paired", True),
    ("ring_open", "ringed", True),
    ("onward_open", "onward", False),
    ("tall_open", "tall", True),
    ("shared_open", "shared", True),
    ("none_open", "none", True),
    ("end_open", "without_end", True),
    ("told_open", "told", True),
    ("centre_open", "beyond", True),
    ("beneath_open", "beneath", True),
    ("aside_open", "aside", True),
    ("slips_open", "slips", True),
    ("gap_ahead", "over_gap", True),
)
"""What the hand met that print may mean otherwise, that reading, and whether it needs a stated count."""


def _is_better(other: Attempt, plain: Attempt) -> bool:
    """Whether a reading fits, or only its count differs where the plain one doesn't even find its places."""
    rules = {trouble.rule for trouble in other.troubles}
    if plain.troubles[0].facts.get("what") == "turning chain" and other.reading.apart:
        return True  # it is there: the reading that took it for a stitch is the wrong one
    return other.fits or (rules == {"count-differs"} and plain.troubles[0].rule in FIT)


def _settle_readings(task: Task, plain: Attempt, chain_open: bool, repeat_open: bool) -> Attempt:
    chains = (True, False) if chain_open else (None,)
    mores = (True, False) if repeat_open else (None,)
    read = plain.reading
    attempts = [
        _attempt(task, replace(read, chain=chain, more=more)) for chain, more in product(chains, mores)
    ]
    fitting = [one for one in attempts if one.fits]
    if repeat_open:
        fitting = fitting or [one for one in attempts if _only_its_join_misses(task, one)]
        ways = {one.reading.more for one in fitting}
        if not ways and plain.hand.in_brackets:  # `(…), repeat 10 times`: ten in all, unless eleven fit
            return next(one for one in attempts if one.reading.more is False)
        if len(ways) != 1:
            chosen = fitting[0] if fitting else plain
            span = plain.hand.unclear[0]
            facts = {"more_fits": True in ways, "in_all_fits": False in ways}
            chosen.troubles = [Trouble("repeat-unclear", span, facts, task.size)]
            return chosen
    if chain_open and len(fitting) > 1 and task.stated is None:
        figures = {(one.worked.count, one.worked.uses) for one in fitting}
        if len({count for count, _ in figures}) > 1:
            return _unclear(plain, fitting)
    return fitting[0] if fitting else plain


def _only_its_join_misses(task: Task, one: Attempt) -> bool:
    """Whether it makes what is stated, and only the join goes wrong, which no repeat would mend."""
    if task.stated is None or any(trouble.rule != "join-misses" for trouble in one.troubles):
        return False
    return compare(task.stated, one.worked, task.size, task.chains) is None


def _unclear(plain: Attempt, fitting: list[Attempt]) -> Attempt:
    question = plain.hand.chain_question
    assert question is not None
    by = {one.reading.chain: one.worked.count for one in fitting}
    facts = {
        "chains": question.chains, "stitch": question.stitch,
        "count_if": by.get(True), "count_if_not": by.get(False),
    }  # fmt: skip
    plain.troubles = [Trouble("turning-chain-unclear", question.span, facts, plain.hand.setting.size)]
    return plain


def _contradicted(plain: Attempt, other: Attempt) -> Attempt:
    question = plain.hand.chain_question
    assert question is not None
    cause = plain.troubles[0]
    facts = {
        "chains": question.chains, "stitch": question.stitch, "said": question.counts, "by": question.by,
        "count_said": plain.worked.count, "count_other": other.worked.count, "cause": cause.rule,
        "needed": cause.facts.get("needed"), "available": cause.facts.get("available"),
        "left": cause.facts.get("left"),
    }  # fmt: skip
    span = question.span or cause.span
    other.troubles = [Trouble("turning-chain-contradicted", span, facts, plain.hand.setting.size)]
    other.otherwise = None if plain.stuck else plain.worked.edge
    return other


def _attempt(task: Task, reading: Reading) -> Attempt:
    line = look_over(task.steps, Same(task.specials))
    way = line.paired if reading.paired else line.plain if reading.alone else line.led
    way = line.ringed if reading.ringed else way
    steps, seen = way.steps, way.seen
    aside = skips_to_a_new_yarn(steps) if task.unworked or task.unworked_back else ()
    steps = aside if reading.aside else steps
    setting = _setting(task, reading, seen)
    counted = task.chains == "counted"
    opened = not counted and line.names_chains and opens_spaces(task.places)
    places = [] if _founded(task, setting) else list(task.places)
    own = len(places)
    if reading.over_gap:
        places += task.unworked
    if reading.folded:
        places = places[: (len(places) + 1) // 2]
    edge = Edge(places, task.circle, counted, task.corners, opened)
    hand = Hand(setting, edge, task.yarn)
    hand.other_side = list(task.other_side)
    hand.markers = list(task.markers)
    hand.unworked = list(task.unworked)
    hand.unworked_back = list(task.unworked_back)
    hand.earlier = task.earlier
    hand.aside_open = bool(aside)
    hand.moves_marker = seen.moves_marker
    hand.petal_in_ring = line.is_one_in_a_ring
    hand.leads_in = setting.rows and leads_in((*task.before, *steps))
    hand.slips_open = setting.rows and line.slips_on
    hand.gap_ahead = setting.rows and bool(task.unworked) and decreases(steps)
    hand.travels = not setting.spiral and seen.travels and not reading.slips
    if task.places and (task.circle or isinstance(task.places[0], Ring)) and not setting.spiral:
        hand.standing = task.places[0]
    hand.lock = task.before[-1] if task.before else None
    hand.leg_open = line.led is not line.plain
    hand.pair_open = line.paired is not line.plain
    hand.ring_open = line.ringed is not line.plain
    hand.onward_open = task.circle and bool(edge.places) and (line.begins_without_chain or edge.sided)
    if reading.onward:
        edge.rotate(1)
    hand.apart_open = setting.rows and line.into_chain and ends_in_a_chain(edge)
    if reading.apart:
        hand.set_apart(1)
    stuck = False
    try:
        perform(hand, task.before + steps)
    except Stuck as error:
        hand.troubles.append(error.trouble)
        stuck = True
    if reading.over_gap:
        take_up_behind(hand, own)
    if not stuck and not line.only_ends and not only_levels(hand, steps):
        closing.left_over(hand)
    for earlier, later in zip(hand.made, hand.made[1:], strict=False):
        later.previous = earlier
    worked = count_up(hand.made, closing.next_edge(hand), hand.uses, task.chains == "counted", task.leads)
    worked.specials = hand.setting.specials
    worked.joining = frozenset(map(id, hand.joining))
    troubles = list(hand.troubles)
    if not troubles and task.stated is not None:
        differs = compare(task.stated, worked, task.size, task.chains)
        if differs is not None:
            troubles.append(differs)
    return Attempt(hand, worked, reading, troubles, stuck)


def _founded(task: Task, setting: Setting) -> bool:
    """`ch 2, 20 fsc`: the chain is only what the first foundation stitch stands on."""
    return setting.first_kind.startswith("foundation-") and all(
        isinstance(place, Made) and place.role == "foundation" for place in task.places
    )


def _begun_on(task: Task) -> str:
    """The name under which the line may speak of the piece whose edge it is worked into."""
    if not task.begun_on:
        return ""
    names = {one for one in other_pieces(task.steps) if task.begun_on in (one, one.rsplit(" ", 1)[0])}
    copies = sorted(names - {task.begun_on})
    if task.begun_on in names or len(copies) < 2:
        return task.begun_on
    return copies[-1]  # of two legs the one with the yarn is the last made


def _setting(task: Task, reading: Reading, seen: Survey) -> Setting:
    only = seen.kinds[0] if len(seen.kinds) == 1 else ""
    first = seen.first_kind
    if first in ("inc", "dec"):
        below = task.places[0] if task.places else None
        first = only or (below.kind if isinstance(below, Made) else "")
    return Setting(
        size=task.size,
        index=task.index,
        worked=task.worked,
        counted=task.chains == "counted",
        conventions=task.conventions,
        heights=task.heights,
        specials=task.specials,
        only_kind=only,
        first_kind=first,
        closing=seen.joined_chain,
        others=task.others,
        begun_on=_begun_on(task),
        several=task.several,
        leaves=task.leaves,
        turned=task.turned,
        flap=task.flap,
        reading=reading,
    )
