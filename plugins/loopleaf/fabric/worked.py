"""What working a pattern gives: stitches, spaces, edges, rounds, pieces.

The stitches of a round are plain objects with slots: there may be hundreds of thousands. Each
knows its kind, loop, post, yarn, the places that it was worked into, and its number in the round,
so that drawings, measures and sizes are read from the graph and never from the text.
"""

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from operator import attrgetter
from typing import Any, Literal

from ..notation.tree import Line, Span, Tally
from ..pattern.rounds import Path, RoundPlan

Role = Literal[
    "stitch", "turning", "chain", "travel", "join", "foundation", "picot", "back", "loop", "row-end"
]
"""`stitch`: a counted stitch. `turning`: a chain that counts as a stitch. `chain`: one that doesn't count.
`travel`: a slip stitch that only moves on, levels a spiral, or joins to another piece as it goes. `join`: the
joining slip stitch.
`foundation`: a chain of the foundation. `picot`: sits on the stitch before it. `back`: worked back on a chain
made inside the round (a leaf or point): part of drawing and yarn, not counted, no place. `loop`: one chain
of a
chain space (`into` is the space). `row-end`: the end of a row, worked into along an edge."""

NUMBERED: tuple[Role, ...] = ("stitch", "turning")
"""The roles that a round counts: each such stitch has a number in its round."""


class Made:
    """One stitch as made.

    kind: a key of trade/stitches.yml (`single`, `double`, `chain`, `slip` …). form, legs: `tog`, `cluster`,
    `bobble`, `puff`, `popcorn` and the number gathered. loop, post: as in notation.tree.Stitch.
    into: the places it was worked into (one a leg where it leans on several; () for a chain on the hook).
    below: places it uses up although it was worked lower down (posts, spikes).
    number: 1-based among the round's counted stitches, 0 where it isn't counted. round: index of the round in
    the piece, -1 for the foundation. special, unit: the author's special stitch (its key in the file) and
    which
    one of the round's groups it belongs to (0: none). chains: how many chains stand for it (role `turning`,
    where
    `legs` is the whole beginning chain), or how many make it (role `chain`, `picot`). previous: the thing
    made just before it, None at the very start.
    """

    __slots__ = (
        "kind",
        "form",
        "legs",
        "loop",
        "post",
        "yarn",
        "into",
        "number",
        "round",
        "role",
        "special",
        "unit",
        "chains",
        "previous",
        "span",
    )

    def __init__(
        self,
        kind: str,
        into: "tuple[Place, ...]",
        round: int,
        yarn: str,
        role: Role = "stitch",
        number: int = 0,
        form: str = "",
        legs: int = 0,
        loop: str = "",
        post: str = "",
        special: str = "",
        unit: int = 0,
        chains: int = 0,
        span: Span | None = None,
    ) -> None:
        self.kind = kind
        self.into = into
        self.round = round
        self.yarn = yarn
        self.role = role
        self.number = number
        self.form = form
        self.legs = legs
        self.loop = loop
        self.post = post
        self.special = special
        self.unit = unit
        self.chains = chains
        self.previous: Place | None = None
        self.span = span


class Space:
    """A chain space: so many chains between two stitches. One place; its chains have numbers from 1.

    corner: it stands in a corner (a group with a space in its middle, worked in one place). number: 1-based
    among
    the round's spaces. into: the places passed beneath it (for arches), () where nothing was passed. back:
    a chain worked back on (a leaf), no space.
    block: the chains that a block of corner to corner begins with.
    before is the thing made before it; unit as in Made.
    """

    __slots__ = (
        "chains",
        "round",
        "yarn",
        "corner",
        "back",
        "block",
        "number",
        "into",
        "unit",
        "special",
        "previous",
        "span",
    )

    def __init__(
        self,
        chains: int,
        round: int,
        yarn: str,
        number: int = 0,
        unit: int = 0,
        special: str = "",
        span: Span | None = None,
    ) -> None:
        self.chains = chains
        self.round = round
        self.yarn = yarn
        self.number = number
        self.unit = unit
        self.special = special
        self.span = span
        self.corner = False
        self.back = False
        self.block = False
        self.into: tuple[Place, ...] = ()
        self.previous: Place | None = None


class Ring:
    """A ring to work into: `magic`, `chain` (of `chains` chains joined), or `ring` (wire, cord, a real
    ring)."""

    __slots__ = ("kind", "chains")

    round = -1
    """Like the foundation, older than round 1."""

    def __init__(self, kind: Literal["magic", "chain", "ring"], chains: int = 0) -> None:
        self.kind = kind
        self.chains = chains


Place = Made | Space | Ring


SortKey = tuple[str, str, int, str, str, Role, int, str]
"""Kind, form, legs, loop, post, role, chains, yarn."""

sort_of: Callable[[Made], SortKey] = attrgetter(
    "kind", "form", "legs", "loop", "post", "role", "chains", "yarn"
)
"""What a stitch is, without its places: the same for stitches that a count or a measure takes alike."""


@dataclass(frozen=True, slots=True)
class Trouble:
    """Something that doesn't work out, as facts; the rule of the same name in review/rules turns it into
    words.

    span: the stretch of the line's text it is about (the repeat, the step), None for the whole line.
    facts: plain values by name, listed in the rule's docstring.
    size: index of the size it was met in.
    """

    rule: str
    span: Span | None
    facts: dict[str, Any] = field(default_factory=dict)
    size: int = 0


@dataclass(slots=True)
class WorkedRound:
    """One round of one size, worked.

    made: everything in the order it was made: stitches, chains, spaces, joins. edge: the places that the next
    round can go into, in the order made (a row that turns goes through them backwards).
    uses: places of the edge below worked into or skipped by word. makes: neutral kind, `("space", n)` or
    `"picot"` -> number, without what isn't counted. count: stitches as a plain stated number would count them
    (with each chain between stitches where the pattern counts those). leads: see `count_up`. specials: the
    author's own stitches, worked out. joining: ids of the slip stitches into other pieces.
    """

    made: list[Made | Space] = field(default_factory=list)
    edge: list[Place] = field(default_factory=list)
    uses: int = 0
    makes: dict[str | tuple[str, int], int] = field(default_factory=dict)
    count: int = 0
    leads: Mapping[str, str] = field(default_factory=dict, repr=False, compare=False)
    specials: Mapping[str, Line] = field(default_factory=dict, repr=False, compare=False)
    joining: frozenset[int] = field(default=frozenset(), repr=False, compare=False)
    _sorts: Counter[SortKey] | None = field(default=None, repr=False, compare=False)

    @property
    def sorts(self) -> Counter[SortKey]:
        """The stitches by all that they are but their places, see `sort_of`; chain spaces aren't in it.

        Counted when first asked for: the round must be worked by then.
        """
        if self._sorts is None:
            self._sorts = Counter(map(sort_of, [one for one in self.made if type(one) is Made]))
        return self._sorts


@dataclass(slots=True)
class RoundWork:
    """One round in all its sizes: the plan, its tree, and what each size made (None where a size has no
    such round).

    line: the tree as parsed (None if it doesn't parse). settled: the tree as published: a bare join names its
    place, `rep from * 3 times` says which, `n` is its number. stated: the author's count, parsed.
    side: `RS` or `WS` as worked out ("" for the round lines where it has no meaning). turned: the work was
    turned
    before it. joined: it was closed with a join. troubles: of every size, in the order met. sound: no error,
    here or before it, leaves open what it makes.
    """

    plan: RoundPlan
    line: Line | None = None
    settled: Line | None = None
    stated: Tally | None = None
    sizes: list[WorkedRound | None] = field(default_factory=list)
    side: str = ""
    turned: bool = False
    joined: bool = False
    sound: bool = True
    troubles: list[Trouble] = field(default_factory=list)


@dataclass(slots=True)
class PieceWork:
    """A piece worked: its start (places before round 1, one list a size) and its rounds."""

    name: str
    path: Path
    starts: list[list[Place]] = field(default_factory=list)
    rounds: list[RoundWork] = field(default_factory=list)
    troubles: list[Trouble] = field(default_factory=list)
