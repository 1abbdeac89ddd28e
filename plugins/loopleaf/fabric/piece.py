"""Working a piece: round upon round, in every size, going on after an error."""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace

from ..notation.tree import Line, Step, Stitch, Tally
from ..pattern.rounds import Path, RoundPlan
from . import survey
from .round import FIT, Attempt, Task, work
from .settle import settle
from .starts import foundation
from .worked import Made, Place, Ring, RoundWork, Space, Trouble, WorkedRound

OPEN = ("repeat-unclear", "turning-chain-unclear", "turning-chain-contradicted", "inc-unclear")
"""Troubles of reading: over an edge in doubt they say nothing of the line itself."""


OFTEN_ENOUGH = 4
"""A line that got stuck so often in one piece is not worked again: it says nothing new, and costs more."""


@dataclass(frozen=True, slots=True)
class Ways:
    """How the pattern works, the same for all rounds of a piece."""

    worked: str
    yarn: str
    chains: str | None
    conventions: Mapping[str, bool]
    heights: Mapping[str, int]
    specials: Mapping[str, Line]
    size_count: int


@dataclass(slots=True)
class Thread:
    """One size of a piece in work: the places for the next round, and how far they can be trusted.

    unworked: what rows left at their ends, for the even and the odd rows. instead: the edge that the last
    erring round's stated count would have made. muted: a repeat didn't fit and no
    count was stated, so nothing about the fit can be said until the next stated count. guessed: the places
    are such as the stated count describes, without their corners and groups.
    """

    places: list[Place]
    yarn: str
    other_side: list[Place] = field(default_factory=list)
    markers: list[Place] = field(default_factory=list)
    unworked: tuple[list[Place], list[Place]] = field(default_factory=lambda: ([], []))
    instead: list[Place] | None = None
    muted: bool = False
    guessed: bool = False
    fastened: bool = False
    circle: bool = False
    before: tuple[Step, ...] = ()


class PieceHand:
    """Works the rounds of one piece in order, a thread a size."""

    def __init__(self, ways: Ways, threads: list[Thread], others: list[Mapping[str, list[Place]]]) -> None:
        self.ways = ways
        self.threads = threads
        self.others = others
        self.index = 0
        self.side = ""
        self.turned = False
        self.wrong: set[Path] = set()
        self.failed: Counter[Path] = Counter()
        self.convention_before: Mapping[str, bool] | None = None
        self.unturned: Trouble | None = None

    def round(self, plan: RoundPlan, line: Line | None, stated: Tally | None, last: bool) -> RoundWork:
        """Work one round in every size that has it."""
        result = RoundWork(plan, line, line, stated)
        result.turned = self.turned or (line is not None and survey.leading_turn(line.steps))
        self._side(result)
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
            attempt = self._attempt(thread, plan, steps, stated, size)
            result.sizes.append(attempt.worked)
            self._report(result, attempt, thread, stated)
            self._go_on(thread, attempt, stated, size, after)
            chosen = chosen or attempt
            self.failed[plan.work_path] += attempt.stuck
        if line is None:
            self.turned = self.ways.worked == "rows"
        if chosen is not None and line is not None:
            more = chosen.reading.more
            if any(t.rule == "repeat-unclear" for t in result.troubles):
                more = None
            result.settled = settle(line, chosen.hand.settled, more)
            result.joined = chosen.hand.joined
            self._turn(result, chosen, steps, bool(after), last)
        if any(trouble.rule in (*FIT, *OPEN, "count-differs") for trouble in result.troubles):
            self.wrong.add(plan.work_path)
        self.index += 1
        return result

    def _open_ring(self, steps: tuple[Step, ...]) -> None:
        """A chain joined into a ring: a first round that doesn't go into the ring goes into its chains."""
        for thread in self.threads:
            match thread.places:
                case [Ring(kind="chain", chains=chains)] if not survey.into_ring(steps):
                    thread.places = list(foundation(chains, thread.yarn))
                    thread.circle = True

    @property
    def _direction(self) -> int:
        """0 for rows that go the first row's way, 1 for those that come back."""
        return self.index % 2 if self.ways.worked == "rows" else 0

    # -- one size ---------------------------------------------------------------------------------

    def _attempt(
        self, thread: Thread, plan: RoundPlan, steps: tuple[Step, ...], stated: Tally | None, size: int
    ) -> Attempt:
        ways = self.ways
        task = Task(
            steps=steps,
            before=thread.before,
            places=thread.places,
            circle=thread.circle,
            worked=ways.worked,
            index=self.index,
            size=size,
            yarn=plan.yarn if plan.yarn and plan.yarn != ways.yarn else thread.yarn,
            chains=ways.chains,
            conventions=ways.conventions,
            heights=ways.heights,
            specials=ways.specials,
            others=self.others[size],
            other_side=thread.other_side,
            markers=thread.markers,
            unworked=thread.unworked[self._direction],
            stated=stated,
        )
        attempt = work(task)
        if attempt.fits or plan.work_path in self.wrong:
            return attempt
        for other in self._other_ways(task, thread):
            again = work(other)
            if again.fits:
                self.ways = replace(self.ways, conventions=other.conventions)
                return again
        return attempt

    def _other_ways(self, task: Task, thread: Thread) -> Iterator[Task]:
        """How else a round that doesn't fit may be meant, after an error before it: over the edge that the
        stated
        count would have made, or by the convention that the erring round spoke against."""
        if thread.instead is not None:
            yield replace(task, places=thread.instead)
        if self.convention_before is not None:
            yield replace(task, conventions=self.convention_before)

    def _report(self, result: RoundWork, attempt: Attempt, thread: Thread, stated: Tally | None) -> None:
        steps = result.line.steps if result.line is not None else ()
        if thread.fastened and not survey.brings_yarn(steps) and not result.plan.yarn:
            _add(result, Trouble("yarn-not-joined", None, {"yarn": thread.yarn}, attempt.hand.setting.size))
        same_line = result.plan.work_path in self.wrong
        doubtful = thread.guessed or thread.instead is not None
        for trouble in attempt.troubles:
            if thread.muted and trouble.rule in (*FIT, "count-differs"):
                continue
            if same_line or (thread.guessed and trouble.rule in FIT) or (doubtful and trouble.rule in OPEN):
                continue
            if trouble.rule == "turning-chain-contradicted" and trouble.facts["by"] == "convention":
                kind, said = trouble.facts["stitch"], trouble.facts["said"]
                self.convention_before = self.ways.conventions
                self.ways = replace(self.ways, conventions={**self.ways.conventions, kind: not said})
            if trouble.rule == "count-differs" and stated is not None:
                trouble.facts.setdefault("stated_text", result.plan.stated or "")
            _add(result, trouble)

    def _go_on(
        self, thread: Thread, attempt: Attempt, stated: Tally | None, size: int, after: tuple[Step, ...]
    ) -> None:
        """Where the next round begins, after a right round or a wrong one."""
        hand = attempt.hand
        thread.before = after
        thread.yarn = hand.yarn
        thread.fastened = hand.fastened
        thread.markers = list(hand.markers)
        thread.other_side = hand.other_side
        way = thread.unworked[self._direction]
        way[:] = hand.left_places + way[hand.taken_up :]
        kind = hand.setting.first_kind or hand.setting.only_kind or "single"
        wrong = not attempt.fits
        by_count = (
            edge_of(stated, kind, size, self.index, hand.yarn) if wrong and stated is not None else None
        )
        if thread.muted and wrong:
            if by_count is not None:
                thread.places, thread.instead, thread.muted, thread.guessed = by_count, None, False, True
            else:
                thread.places = attempt.worked.edge
            self._shape(thread, attempt)
            return
        thread.muted = thread.guessed = False
        thread.places = attempt.worked.edge
        thread.instead = attempt.otherwise
        if wrong and attempt.otherwise is None:
            if attempt.stuck:
                thread.muted = by_count is None
                thread.guessed = by_count is not None
                thread.places = by_count if by_count is not None else thread.places
            else:
                thread.instead = by_count
        self._shape(thread, attempt)

    def _shape(self, thread: Thread, attempt: Attempt) -> None:
        """Turn the new edge the way the next round meets it."""
        worked = self.ways.worked
        places = thread.places
        thread.circle = not worked.startswith("rows") and bool(places)
        if worked == "rows":
            thread.places = places[::-1]
            if thread.instead is not None:
                thread.instead = thread.instead[::-1]
        elif thread.circle and attempt.hand.turned and attempt.hand.joined:
            thread.places = places[:1] + places[:0:-1]

    def _unread(self, thread: Thread, stated: Tally | None, size: int) -> WorkedRound:
        """A round whose line can't be read: go on from its stated count, or say nothing of the fit until
        the next."""
        thread.before = ()
        made = None if stated is None else edge_of(stated, "single", size, self.index, thread.yarn)
        thread.muted = made is None
        thread.places = made if made is not None else thread.places
        thread.circle = not self.ways.worked.startswith("rows")
        return WorkedRound(edge=thread.places)

    # -- sides and turns ------------------------------------------------------------------------------

    def _side(self, result: RoundWork) -> None:
        said = result.plan.side
        if self.ways.worked == "rows, right side only":
            self.side = "RS"
        elif not self.side:
            self.side = said or "RS"
        elif result.turned:
            self.side = "WS" if self.side == "RS" else "RS"
        if said and said != self.side:
            result.troubles.append(Trouble("side-differs", None, {"said": said, "worked": self.side}))
            self.side = said
        result.side = self.side

    def _turn(
        self, result: RoundWork, attempt: Attempt, steps: tuple[Step, ...], chained: bool, last: bool
    ) -> None:
        worked = self.ways.worked
        turned = attempt.hand.turned or chained or (attempt.stuck and survey.turns_at_its_end(steps))
        if worked == "rows":
            self.turned = True
            if not (turned or last or attempt.hand.fastened or (attempt.stuck and survey.fastens_off(steps))):
                edge = attempt.worked.edge
                same = [getattr(p, "kind", "") for p in edge] == [getattr(p, "kind", "") for p in edge[::-1]]
                self._turn_missing(result, not same)
            return
        self.turned = turned and worked == "joined rounds"
        if turned and worked in ("spiral rounds", "rows, right side only"):
            result.troubles.append(Trouble("turn-not-expected", None, {"worked": worked, "matters": True}))

    def _turn_missing(self, result: RoundWork, matters: bool) -> None:
        """Said once a piece, however many rows lack their turn."""
        if self.unturned is None:
            self.unturned = Trouble("turn-missing", None, {"matters": matters, "others": []})
            result.troubles.append(self.unturned)
        else:
            self.unturned.facts["others"].append(result.plan.label)


def _add(result: RoundWork, trouble: Trouble) -> None:
    """Keep a trouble once in each size that meets it."""
    for other in result.troubles:
        if (other.rule, other.span, other.size) == (trouble.rule, trouble.span, trouble.size):
            return
    result.troubles.append(trouble)


def edge_of(stated: Tally, kind: str, size: int, index: int, yarn: str) -> list[Place] | None:
    """An edge such as a stated count describes: its stitches, with its spaces spread evenly between them."""
    if stated.total is not None:
        number = stated.total.of(size)
        return (
            None if number is None else [Made(kind, (), index, yarn, "stitch", i + 1) for i in range(number)]
        )
    stitches: list[Place] = []
    spaces: list[Place] = []
    for amount, named in stated.entries:
        number = amount.of(size) or 0
        if isinstance(named, Stitch):
            stitches += [
                Made(named.kind, (), index, yarn, "stitch", len(stitches) + i + 1, special=named.name)
                for i in range(number)
            ]
        elif named.kind == "space":
            spaces += [Space(named.length or 1, index, yarn, i + 1) for i in range(number)]
    if not spaces:
        return stitches
    edge: list[Place] = []
    done = 0
    for i, stitch in enumerate(stitches):
        edge.append(stitch)
        due = (i + 1) * len(spaces) // len(stitches)
        edge += spaces[done:due]
        done = due
    return edge


def is_circle(worked: str, places: list[Place]) -> bool:
    """Whether round 1 goes round: over another piece's edge it does, into a ring or along a chain it
    doesn't."""
    return (
        not worked.startswith("rows")
        and bool(places)
        and not isinstance(places[0], Ring)
        and not (isinstance(places[0], Made) and places[0].role == "foundation")
    )
