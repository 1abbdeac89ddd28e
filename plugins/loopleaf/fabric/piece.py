"""Working a piece: round upon round, in every size, going on after an error."""

from collections import Counter
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, field, replace

from ..notation.tree import Line, Step, Tally
from ..pattern import LayOut
from ..pattern.rounds import Path, RoundPlan
from . import survey
from .along import begun_on_stitches
from .around import corners
from .flaps import Flap
from .markers import carried_up
from .openings import left_open
from .round import Attempt, Task, work
from .settle import settle
from .sides import Sides
from .starts import foundation
from .stitches import said_at
from .thread import Thread, Trust, edge_of, trust_in
from .troubles import OPEN, WRONG, add
from .way_on import worked_next
from .worked import Made, Place, Ring, RoundWork, Trouble, WorkedRound

OFTEN_ENOUGH = 4
"""A line that got stuck so often in one piece is not worked again: it says nothing new, and costs more."""


@dataclass(frozen=True, slots=True)
class Ways:
    """How the pattern works, the same for all rounds of a piece. name: the piece's own; begun_on: that of the
    piece whose edge it is begun on. leaving: indexes of rows whose last stitches a later row takes up.
    led_in: those whose first slip stitches the next row takes otherwise than their own counts say.
    leads: see `count_up`. laid_out: how the finishing lays pieces out, by their names."""

    worked: str
    yarn: str
    chains: str | None
    conventions: Mapping[str, bool]
    heights: Mapping[str, int]
    specials: Mapping[str, Line]
    size_count: int
    begun_on: str = ""
    name: str = ""
    leaving: frozenset[int] = frozenset()
    led_in: frozenset[int] = frozenset()
    leads: Mapping[str, str] = field(default_factory=dict)
    laid_out: Mapping[str, LayOut] = field(default_factory=dict)


class PieceHand:
    """Works the rounds of one piece in order, a thread a size."""

    def __init__(
        self,
        ways: Ways,
        threads: list[Thread],
        others: list[Mapping[str, list[Place]]],
        unsound: Collection[str] = (),
    ) -> None:
        """unsound: the other pieces whose edges an error leaves in doubt. worked: how the next round is
        worked, see `worked_next`. way: 0 for rows that go the first row's way, 1 for those that come back."""
        self.ways = ways
        self.threads = threads
        self.others = others
        self.unsound = unsound
        self.worked = ways.worked
        self.index = 0
        self.way = 0
        self.done: list[RoundWork] = []
        self.sides = Sides(ways.worked, threads)
        self.wrong: set[Path] = set()
        self.cleared: set[Path] = set()
        self.ended: set[Path] = set()
        self.failed: Counter[Path] = Counter()
        self.convention_before: Mapping[str, bool] | None = None

    def lose_track(self) -> None:
        """Rounds are missing or out of order here: what the next one is worked into isn't known."""
        self.sides.lose_track()
        for thread in self.threads:
            thread.trust, thread.fastened = Trust.NOTHING, None

    def round(self, plan: RoundPlan, line: Line | None, stated: Tally | None, last: bool) -> RoundWork:
        """Work one round in every size that has it."""
        result = RoundWork(plan, line, line, stated)
        self.sides.begin(result, self.done)
        if self.worked == "rows" and self.index and result.turned:
            self.way = 1 - self.way
        steps, after = ((), ()) if line is None else survey.part_turning_chain(line)
        if not self.index:
            self._open_ring(steps)
        chosen: Attempt | None = None
        for size, thread in enumerate(self.threads):
            if plan.sizes is not None and size not in plan.sizes:
                result.sizes.append(None)
                continue
            if line is None or self.failed[plan.work_path] >= OFTEN_ENOUGH:
                result.sizes.append(self._unread(thread, stated, size))
                continue
            fitting = self._attempt(thread, result, steps, stated, size)
            attempt = fitting[0]
            result.sizes.append(attempt.worked)
            self._report(result, attempt, thread, steps, stated)
            self._go_on(thread, plan, fitting, stated, size)
            self._shape(thread, attempt, steps)
            self._begin_next(result, thread, after, size)
            chosen = chosen or attempt
            self.failed[plan.work_path] += attempt.stuck
        if line is None:
            self.sides.pass_by()
        if chosen is not None and line is not None:
            more = chosen.reading.more
            if any(t.rule == "repeat-unclear" for t in result.troubles):
                more = None
            result.settled = settle(line, chosen.hand.settled, more)
            result.joined = chosen.hand.joined
            self.worked = self.sides.worked = self._worked_next(chosen, steps)
            self.sides.end(result, chosen, steps, last)
        if any(trouble.rule in WRONG for trouble in result.troubles):
            self.wrong.update(path for path in (plan.work_path, plan.stated_path) if path)
        result.sound = all(
            thread.trust is Trust.SURE
            for thread, worked in zip(self.threads, result.sizes, strict=True)
            if worked is not None
        )
        self.index += 1
        return result

    def _open_ring(self, steps: tuple[Step, ...]) -> None:
        """A chain joined into a ring: a first round that doesn't go into the ring goes into its chains."""
        for thread in self.threads:
            match thread.places:
                case [Ring(kind="chain", chains=chains)] if not survey.into_ring(steps):
                    thread.places = list(foundation(chains, thread.yarn))
                    thread.circle = True

    # -- one size ---------------------------------------------------------------------------------

    def _attempt(
        self, thread: Thread, result: RoundWork, steps: tuple[Step, ...], stated: Tally | None, size: int
    ) -> list[Attempt]:
        """The ways in which the round fits over what may be below it; else the one way it doesn't."""
        ways = self.ways
        task = self._task(thread, result, steps, stated, size)
        attempts = []
        for other in self._ways_of_working(task, result.plan, thread):
            attempts.append(work(other))
            if attempts[-1].fits and other.conventions is not ways.conventions:
                self.ways = replace(ways, conventions=other.conventions)
            if attempts[-1].fits and stated is not None:
                break
        fitting = [one for one in attempts if one.fits]
        if fitting == attempts[:1] and thread.further and thread.erring is not None:
            self.cleared.add(thread.erring)
        return fitting or [self._nearest(attempts)]

    def _nearest(self, attempts: list[Attempt]) -> Attempt:
        """The attempt to be told of where none fits: a piece's first round may go around more than its own
        stitches, and comes nearest to its count along the right ones; so may one around an opening."""
        counted = [one for one in attempts if one.troubles[0].rule == "count-differs"]
        there = [one for one in attempts if one.troubles[0].rule != "no-such-place"]
        if len(attempts) < 2 or (self.index and not any(begun_on_stitches(one.hand) for one in attempts)):
            return attempts[0]
        if len(counted) < 2:
            return max(there or attempts, key=lambda one: (not one.stuck, one.hand.uses))
        return min(counted, key=lambda one: abs(one.troubles[0].facts.get("difference", 0)))

    def _task(
        self, thread: Thread, result: RoundWork, steps: tuple[Step, ...], stated: Tally | None, size: int
    ) -> Task:
        ways, plan = self.ways, result.plan
        return Task(
            steps=steps,
            before=thread.before,
            places=thread.places,
            circle=thread.circle,
            worked=self.worked,
            index=self.index,
            size=size,
            yarn=plan.yarn or thread.yarn,
            chains=ways.chains,
            conventions=ways.conventions,
            heights=ways.heights,
            specials=ways.specials,
            others=self.others[size],
            other_side=thread.other_side,
            markers=thread.markers,
            unworked=thread.unworked[self.way],
            stated=stated,
            earlier=self.done,
            corners=thread.corners,
            begun_on=ways.name if self.index else ways.begun_on,
            several=any(len(one.places) > len(thread.places) for one in self.threads),
            unworked_back=thread.unworked[1 - self.way],
            other_way=self.index in ways.led_in,
            leaves=self.index in ways.leaving,
            turned=result.turned,
            flap=thread.flap,
            leads=ways.leads,
            tip_last=thread.turned,
        )

    def _ways_of_working(self, task: Task, plan: RoundPlan, thread: Thread) -> Iterator[Task]:
        """How a round may be meant, after an error before it: over what was worked, over what the stated
        count would have made, or by the convention that the erring round spoke against."""
        yield task
        if plan.work_path in self.wrong:
            return
        for places in thread.further:
            marked = thread.corners or (frozenset() if self.index else corners(places))
            yield replace(task, places=places, corners=marked)
        if thread.fastened is not None and task.circle and survey.goes_into_an_opening(task.steps):
            for places in left_open(self.done, task.size, survey.goes_into_a_space(task.steps)):
                yield replace(task, places=places, corners=corners(places))
        if self.convention_before is not None:
            for places in (thread.places, *thread.further):
                yield replace(task, places=places, conventions=self.convention_before)

    def _doubts(self, thread: Thread, plan: RoundPlan, steps: tuple[Step, ...]) -> bool:
        """Whether a round that doesn't fit may only show the mistake before it."""
        if any(name in self.unsound for name in survey.other_pieces(steps)):
            return True
        if thread.trust is Trust.NUMBER:
            return not survey.asks_for_stitches_alone(steps)
        return thread.trust is Trust.NOTHING

    def _report(
        self,
        result: RoundWork,
        attempt: Attempt,
        thread: Thread,
        steps: tuple[Step, ...],
        stated: Tally | None,
    ) -> None:
        plan = result.plan
        ended = thread.fastened if not survey.brings_yarn(steps) and not plan.yarn else None
        if ended is not None and ended not in self.ended:
            self.ended.add(ended)
            add(result, Trouble("yarn-not-joined", None, {"yarn": thread.yarn}, attempt.hand.setting.size))
        doubts = self._doubts(thread, plan, steps) or ended is not None
        doubts = doubts or any(one.rule == "side-differs" for one in result.troubles)
        for trouble in attempt.troubles:
            if self._said_before(plan, trouble) or (doubts and trouble.rule in WRONG):
                continue
            if trouble.rule in OPEN and thread.trust is not Trust.SURE:
                continue
            if trouble.rule == "turning-chain-contradicted" and trouble.facts["by"] == "convention":
                kind, said = trouble.facts["stitch"], trouble.facts["said"]
                self.convention_before = self.ways.conventions
                self.ways = replace(self.ways, conventions={**self.ways.conventions, kind: not said})
            if trouble.rule == "count-differs" and stated is not None:
                trouble.facts.setdefault("stated_text", plan.stated or "")
            add(result, trouble)

    def _said_before(self, plan: RoundPlan, trouble: Trouble) -> bool:
        """Whether an earlier round has met this line's mistake, or this count's."""
        if trouble.rule == "count-differs" and plan.stated_path in self.wrong:
            return True
        return plan.work_path in self.wrong and plan.work_path not in self.cleared

    def _go_on(
        self,
        thread: Thread,
        plan: RoundPlan,
        fitting: list[Attempt],
        stated: Tally | None,
        size: int,
    ) -> None:
        """Where the next round begins, after a right round or a wrong one."""
        attempt = fitting[0]
        hand = attempt.hand
        thread.yarn = hand.yarn
        thread.fastened = plan.work_path if hand.fastened else None
        thread.markers = carried_up(hand.markers, hand.made)
        thread.other_side = hand.other_side
        way = thread.unworked[self.way]
        way[:] = hand.left_places + hand.unworked[hand.taken_up :]
        thread.unworked[1 - self.way][:] = hand.unworked_back
        if attempt.fits:
            thread.erring = None
            if plan.work_path in self.wrong - self.cleared:
                thread.trust = Trust.NOTHING
            thread.after_fit(fitting, stated is not None)
        else:
            kind = hand.setting.first_kind or hand.setting.only_kind or "single"
            by_count = edge_of(stated, kind, size, self.index, hand.yarn) if stated is not None else None
            by_its_count = thread.trust is not Trust.NOTHING and attempt.troubles[0].rule == "count-differs"
            thread.erring = plan.work_path if by_its_count else None
            thread.after_mistake(attempt, by_count, self._trust_in(stated))

    def _begin_next(self, result: RoundWork, thread: Thread, after: tuple[Step, ...], size: int) -> None:
        """The chain and the slip stitches that the line makes for the next round; those that go astray do so
        here."""
        if not after:
            thread.before = ()
            return
        slips = tuple(step for step in after if survey.slips(step))
        if slips and thread.trust is Trust.SURE:
            tried = work(replace(self._task(thread, result, slips, None, size), before=()))
            if tried.stuck:
                add(result, tried.troubles[-1])
                after = tuple(step for step in after if not survey.slips(step))
                thread.trust = Trust.NOTHING
        thread.before = said_at(Line(after), None).steps

    def _trust_in(self, stated: Tally | None) -> Trust:
        return trust_in(stated, self.ways.chains == "counted")

    def _shape(self, thread: Thread, attempt: Attempt, steps: tuple[Step, ...]) -> None:
        """Turn the new edge the way the next round meets it."""
        worked = self._worked_next(attempt, steps)
        places = thread.places
        if worked != "rows":
            thread.flap = None
        elif self.worked != "rows" and self.ways.worked != "rows":
            thread.flap = Flap(self.index, list(attempt.hand.left_places))
        thread.circle = not worked.startswith("rows") and bool(places)
        if worked == "rows":
            thread.places = places[::-1]
            thread.further = [edge[::-1] for edge in thread.further]
        thread.turned = thread.circle and attempt.hand.turned and attempt.hand.joined
        if thread.turned:
            thread.places = places[:1] + places[:0:-1]

    def _worked_next(self, attempt: Attempt, steps: tuple[Step, ...]) -> str:
        return worked_next(self.ways.worked, self.worked, attempt, steps, self.done)

    def _unread(self, thread: Thread, stated: Tally | None, size: int) -> WorkedRound:
        """A round whose line can't be read: go on from its stated count, or say nothing of the fit until
        the next."""
        thread.before = ()
        thread.fastened = None
        made = None if stated is None else edge_of(stated, "single", size, self.index, thread.yarn)
        thread.go_on_from((made,), self._trust_in(stated))
        thread.circle = not self.worked.startswith("rows")
        return WorkedRound(edge=thread.places)


def is_circle(worked: str, places: list[Place]) -> bool:
    """Whether round 1 goes round: over another piece's edge it does, into a ring or along a chain it
    doesn't."""
    return (
        not worked.startswith("rows")
        and bool(places)
        and not isinstance(places[0], Ring)
        and not (isinstance(places[0], Made) and places[0].role == "foundation")
    )
