"""The hand: where the hook is while one round of one size is worked, and everything made so far."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from ..notation.tree import Span, Step, Stitch, Target, Until
from .blocks import begins_block, into_block
from .edge import Edge, Stuck, loops_of
from .joined_arch import chains_of
from .setting import Setting
from .worked import Made, Place, Ring, Role, RoundWork, Space, Trouble

MOST_IN_A_ROUND = 10_000
"""Stitches, chains and spaces: the border of the largest blanket has about 3,000."""


@dataclass(slots=True)
class ChainQuestion:
    """The beginning chain, and who decided whether it counts: `said`, `convention`, `rule` (a lone ch 1, a
    space) or `open`."""

    span: Span | None
    chains: int
    stitch: str
    counts: bool
    by: str


@dataclass(slots=True)
class Leaf:
    """A chain made inside the round and worked back on. loops: its chains from the hook; pos: the next
    one."""

    loops: list[Made]
    pos: int = 0
    first: int = -1
    span: Span | None = None


class Hand:
    """State of one round in work. `mark` and `back_to` undo a pass of a repeat that didn't fit."""

    last: Place | None = None
    standing: Place | None = None
    slipped: bool = False
    here: Place | None = None
    laid: bool = False
    taken_up: int = 0
    earlier: Sequence[RoundWork] = ()
    on_free: bool = False
    on_round: int | None = None
    round_target: Target | None = None
    goes_deep: bool = False
    both_layers: bool = False
    outer_open: bool = False
    petal: bool = False
    petal_in_ring: bool = False
    mesh_open: bool = False
    passed_first: int = 0
    slid: int = 0
    kept_back: int = 0
    short_open: bool = False
    turned_at: int = -1
    leaf: Leaf | None = None
    begun: bool = False
    lock: Step | None = None
    pending: int = 0
    stood: bool = False
    depth: int = 0
    unit: int = 0
    numbered: int = 0
    spaced: int = 0
    uses: int = 0
    into_spaces: bool = False
    gaps: bool = False
    gap: tuple[Place, ...] = ()
    gap_open: bool = False
    arch_open: bool = False
    apart_open: bool = False
    last_open: bool = False
    leg_open: bool = False
    pair_open: bool = False
    ring_open: bool = False
    onward_open: bool = False
    tall_open: bool = False
    shared_open: bool = False
    none_open: bool = False
    apart: int = 0
    left: int = 0
    since: int = 0
    filled_to: tuple[int, Until] | None = None
    fastened: bool = False
    joined: bool = False
    turned: bool = False
    turned_after: int = 0
    levelling: bool = False
    chain_question: ChainQuestion | None = None
    in_brackets: bool = False
    skips_first: bool = False
    skips_behind: bool = False
    tip_open: bool = False
    turned_tip: Place | None = None
    passage: tuple[Any, ...] = ()
    first_worked: int = -1
    backs: int = 0
    opening: tuple[str, int] = ("", 0)
    travels: bool = False
    moves_marker: bool = False
    moved: int = 0
    start_at: Place | None = None
    way_round: list[list[Place]] | None = None
    end_open: bool = False
    told_open: bool = False
    centre_open: bool = False
    beneath_open: bool = False
    aside_open: bool = False
    gap_ahead: bool = False
    slips_open: bool = False
    leads_in: bool = False
    into_centres: bool = False

    def __init__(self, setting: Setting, edge: Edge, yarn: str) -> None:
        self.setting = setting
        self.edge = edge
        self.yarn = yarn
        self.made: list[Made | Space] = []
        self.new: list[Place] = []
        self.skipped: list[Place] = []
        self.over: list[Place] = []
        self.beneath: set[int] = set()
        self.joining: list[Made] = []
        self.unworked: list[Place] = []
        self.unworked_back: list[Place] = []
        self.left_places: list[Place] = []
        self.lengths_used: set[int] = set()
        self.lengths_passed: set[int] = set()
        self.runs: set[int] = set()
        self.gone_over: set[tuple[int, ...]] = set()
        self.skips: set[int] = set()
        self.unclear: list[Span | None] = []
        self.troubles: list[Trouble] = []
        self.other_pos: dict[str, int] = {}
        self.markers: list[Place] = []
        self.settled: dict[int, Any] = {}
        self.other_side: list[Place] = []

    # -- undoing ------------------------------------------------------------------------------

    def mark(self) -> tuple[Any, ...]:
        """All that a pass of a repeat may change."""
        leaf = self.leaf
        last = self.made[-1] if self.made else None
        bridged = (last.into, last.chains) if last is not None else ((), 0)
        return (
            self.edge.pos, len(self.made), len(self.new), self.last, self.skipped, leaf,
            leaf.pos if leaf else 0, self.begun, self.stood, self.unit, self.numbered, self.spaced,
            self.uses, self.yarn, self.into_spaces, len(self.troubles), dict(self.other_pos), self.gaps,
            len(self.edge.places), self.since, bridged, set(self.runs), set(self.skips), self.taken_up,
            set(self.lengths_used), set(self.lengths_passed), self.apart, self.joined, self.start_at,
        )  # fmt: skip

    def back_to(self, mark: tuple[Any, ...]) -> None:
        """Pull back to a mark, as a maker ravels back to where the repeat began."""
        (
            self.edge.pos, made, new, self.last, self.skipped, self.leaf, leaf_pos, self.begun, self.stood,
            self.unit, self.numbered, self.spaced, self.uses, self.yarn, self.into_spaces, troubles,
            self.other_pos, self.gaps, places, self.since, bridged, self.runs, self.skips, self.taken_up,
            self.lengths_used, self.lengths_passed, apart, self.joined, self.start_at,
        ) = mark  # fmt: skip
        self.set_apart(apart)
        del self.made[made:], self.new[new:], self.troubles[troubles:]
        if self.made:
            self.made[-1].into, self.made[-1].chains = bridged
        if len(self.edge.places) > places:
            grown = len(self.edge.places) - places
            del self.edge.places[places:]
            self.edge.limit -= grown
        if self.leaf is not None:
            self.leaf.pos = leaf_pos

    def set_apart(self, places: int) -> None:
        """Keep so many places at the edge's end out of reach: a turning chain worked into by its name."""
        self.edge.limit += self.apart - places
        self.apart = places

    # -- making -------------------------------------------------------------------------------

    def stuck(self, rule: str, span: Span | None, **facts: Any) -> Stuck:
        """An error to raise: the hand can't go on."""
        return Stuck(Trouble(rule, span, self._with_round(facts), self.setting.size))

    def trouble(self, rule: str, span: Span | None, **facts: Any) -> None:
        """Something to report without stopping."""
        self.troubles.append(Trouble(rule, span, self._with_round(facts), self.setting.size))

    def _with_round(self, facts: dict[str, Any]) -> dict[str, Any]:
        """The facts with the earlier round that the line goes along, where it does."""
        return facts if self.on_round is None else {**facts, "along": self.on_round}

    def put(
        self, stitch: Stitch, into: tuple[Place, ...], span: Span | None, role: Role = "stitch",
        special: str = "", unit: int = 0, chains: int = 0,
    ) -> Made:  # fmt: skip
        """One stitch off the hook: into the round, and, where it counts, onto the new edge."""
        if self.leaf is not None and role == "stitch":
            role = "back"
            self.backs += 1
        elif role == "stitch" and into_block(stitch.kind, into):
            role = "travel"
        if not unit:
            special, unit = special or self.opening[0], self.opening[1]
        made = Made(
            stitch.kind, into, self.setting.index, self.yarn, role, 0, stitch.form, stitch.number,
            stitch.loop, stitch.post, special, unit, chains, span,
        )  # fmt: skip
        if role in ("stitch", "turning"):
            if self.levelling:
                made.role = "travel"
            else:
                self.numbered += 1
                made.number = self.numbered
                self.new.append(made)
        elif role == "picot":
            self.new.append(made)
        self.made.append(made)
        self._keep_within(0, span)
        return made

    def _keep_within(self, more: int, span: Span | None) -> None:
        """Stop where a round, with so many more stitches, is larger than any round that is made by hand."""
        if len(self.made) + more > MOST_IN_A_ROUND:
            raise self.stuck("number-too-large", span, limit=MOST_IN_A_ROUND)

    def put_all(self, stitch: Stitch, intos: list[tuple[Place, ...]], span: Span | None) -> None:
        """One plain stitch into each of many places, as `put` would, not asking anew each time."""
        self._keep_within(len(intos), span)
        if self.levelling:
            for into in intos:
                self.put(stitch, into, span)
            return
        index, yarn, number = self.setting.index, self.yarn, self.numbered
        special, unit = self.opening
        kind, loop, post = stitch.kind, stitch.loop, stitch.post
        if self.leaf is not None:
            self.backs += len(intos)
            self.made += [
                Made(kind, into, index, yarn, "back", 0, "", 0, loop, post, special, unit, 0, span)
                for into in intos
            ]
            return
        stitches = [
            Made(kind, into, index, yarn, "stitch", at, "", 0, loop, post, special, unit, 0, span)
            for at, into in enumerate(intos, number + 1)
        ]
        self.numbered += len(stitches)
        self.made += stitches
        self.new += stitches

    def put_space(self, chains: int, span: Span | None, special: str = "", unit: int = 0) -> Space:
        """A chain space after the last thing made; chains with no stitch between them are one chain."""
        if not unit:
            special, unit = self.opening
        last = self.made[-1] if self.made else None
        level = self.here is not None
        if self.joined:  # a chain behind the join locks the yarn, and nothing goes into it
            self.put_chain(chains, span)
            return Space(chains, self.setting.index, self.yarn, 0, unit, special, span)
        if isinstance(last, Space) and not last.back and last.unit == unit and last.corner == level:
            last.chains += chains
            return last
        arch = self._joined_arch(unit, level)
        if arch is not None:
            arch.chains = chains_of(arch, self.joining[-1:], chains)
            return arch
        self.spaced += 1
        space = Space(chains, self.setting.index, self.yarn, self.spaced, unit, special, span)
        space.into = tuple(self.skipped) if self.since and self.skipped else ()
        space.corner = level
        space.block = begins_block(last)
        self.made.append(space)
        self.new.append(space)
        self._keep_within(0, span)
        return space

    def _joined_arch(self, unit: int, level: bool) -> Space | None:
        """The arch begun before a slip stitch into another piece."""
        if len(self.made) < 2:
            return None
        before, slip = self.made[-2:]
        joins = isinstance(slip, Made) and slip.kind == "slip" and slip.role == "travel"
        if joins and isinstance(before, Space) and before.unit == unit and before.corner == level:
            return before
        return None

    def put_chain(self, length: int, span: Span | None) -> Made:
        """A beginning chain that doesn't count: drawn, paid for in yarn, no stitch."""
        made = Made("chain", (), self.setting.index, self.yarn, "chain", chains=length, span=span)
        self.made.append(made)
        return made

    # -- using up places ------------------------------------------------------------------------

    def use(self, at: int, after: int, place: Place) -> None:
        """Move the cursor past a place; what lies before it is passed over."""
        edge = self.edge
        if edge.circle and not self.uses and not edge.pos:
            self.passed_first = edge.count(0, at)
        if at > edge.pos and not edge.plain:
            self.lengths_passed.update(p.chains for p in edge.places[edge.pos : at] if isinstance(p, Space))
        if at > edge.pos:
            self.bridge([p for p in edge.places[edge.pos : at] if isinstance(p, Made)])
        if at > edge.pos and not edge.plain:
            self.runs.add(edge.count(edge.pos, at))
            self.gone_over.add(edge.kinds_of(edge.pos, at))
        elif at > edge.pos:
            self.runs.add(at - edge.pos)
        edge.pos = after
        self.uses += 1
        self.since = 0
        self.last = place
        if isinstance(place, Space):
            self.into_spaces = True
            self.lengths_used.add(place.chains)

    def bridge(self, passed: list[Place]) -> None:
        """A chain just made spans what is passed now; one made next spans what was passed just before."""
        last = self.made[-1] if self.made else None
        if isinstance(last, Space):
            last.into += tuple(passed)

    def next_leaf(self, count: int, span: Span | None) -> list[Place]:
        """The next chains of the leaf now worked back on."""
        leaf = self.leaf
        assert leaf is not None
        left = len(leaf.loops) - leaf.pos
        if count > left:
            raise self.stuck("works-past-the-end", span, needed=count, available=left, what="leaf")
        if leaf.first < 0:
            leaf.first = leaf.pos
        places: list[Place] = list(leaf.loops[leaf.pos : leaf.pos + count])
        leaf.pos += count
        self.last = places[-1] if places else self.last
        return places

    def open_leaf(self, chains: int, span: Span | None) -> None:
        """Make a chain that the next stitches are worked back on."""
        base = Space(chains, self.setting.index, self.yarn, span=span)
        base.back = True
        self.made.append(base)
        self.leaf = Leaf(list(reversed(loops_of(base))), span=span)

    def ring(self) -> Ring | None:
        """The ring of the edge, if it has one."""
        if self.edge.plain:
            return None
        for place in self.edge.places:
            if isinstance(place, Ring):
                return place
        return None
