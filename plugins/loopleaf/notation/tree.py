"""The instruction tree: what a written line tells the hook to do, without terminology.

A tree holds kinds (`single`, `double`), never `sc` or `dc`: the parser reads US or UK into it and the writer
gives back either. Two trees are equal when they tell the hook the same, wherever the text stood (`span`)."""

from dataclasses import dataclass, field
from typing import Literal

from .tree_places import (
    Between,
    ChainOf,
    Corresponding,
    Each,
    Evenly,
    First,
    FromHook,
    Here,
    JustMade,
    Last,
    Marked,
    Next,
    Over,
    Place,
    Ring,
    RowEnds,
    Same,
    Skipped,
    Within,
)
from .tree_words import ONE, STITCH, Amount, Shaping, Span, Stitch, Target, TargetKind, Until, no_span

__all__ = [
    "ONE",
    "STITCH",
    "Again",
    "Amount",
    "Between",
    "Chain",
    "ChainOf",
    "Corresponding",
    "CountsAs",
    "Each",
    "Evenly",
    "Facing",
    "FastenOff",
    "First",
    "FreeLoops",
    "FromHook",
    "Group",
    "Here",
    "Join",
    "JoinYarn",
    "JustMade",
    "Last",
    "Leave",
    "Line",
    "Lying",
    "Marked",
    "Marker",
    "Next",
    "OtherSide",
    "Over",
    "Passage",
    "Place",
    "Repeat",
    "Ring",
    "RowEnds",
    "Same",
    "Shaping",
    "Skip",
    "Skipped",
    "Span",
    "Step",
    "Stitch",
    "Tally",
    "Target",
    "TargetKind",
    "Together",
    "Turn",
    "Until",
    "Within",
    "Work",
    "WorkingOver",
    "Yarn",
]


@dataclass(frozen=True, slots=True)
class CountsAs:
    """`(counts as dc, ch 1)`, `(does not count)`, `(skipped chs count as dc, ch 2)`, `(counts as ch-5 sp)`.

    stitch None, chains 0, space 0: does not count. throughout: in all rounds from here on. said: how many
    chains `(skipped 3 ch count as dc)` tells of, else 0.
    """

    stitch: Stitch | None = None
    chains: int = 0
    space: int = 0
    skipped: bool = False
    span: Span | None = no_span()
    throughout: bool = False
    said: int = field(default=0, compare=False, repr=False)

    @property
    def nothing(self) -> bool:
        return self.stitch is None and not self.chains and not self.space


@dataclass(frozen=True, slots=True)
class Work:
    """Stitches into places: `each` of them in every place that `places` names, in order.

    `3 hdc` and `hdc in next 3 sts` are both each=1, places=(Next(3),); `2 hdc in next st` is each=2,
    places=(Next(1),); `dc in 5th ch from hook and in each ch across` has two places.
    For Evenly, RowEnds without a rate, and Ring, `each` is the number made.
    through: `both layers`, where said. shaping: `…, increasing 6 sts evenly`. tension: `loosely`.
    """

    stitch: Stitch
    each: Amount = ONE
    places: tuple[Place, ...] = (Next(),)
    counts: CountsAs | None = None
    through: str = ""
    span: Span | None = no_span()
    shaping: Shaping | None = None
    tension: str = ""


@dataclass(frozen=True, slots=True)
class Chain:
    """`ch 3`, `ch 3 (counts as dc)`, `ch 4 for handle` (purpose: the author's words)."""

    length: Amount
    counts: CountsAs | None = None
    span: Span | None = no_span()
    purpose: str = ""
    tension: str = ""


@dataclass(frozen=True, slots=True)
class Group:
    """Several things in one place (or in each of several): `(2 dc, ch 2, 2 dc) in next ch-2 sp`."""

    steps: tuple["Step", ...]
    places: tuple[Place, ...] = (Next(),)
    counts: CountsAs | None = None
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Together:
    """Stitches gathered into one at their tops, not all of one kind or not side by side.

    `(dc in next st, tr in next st) tog`, `(dc, 2 tr, dc) tog in same sp`.
    place: the one place that all of them go into, where they name none themselves.
    """

    steps: tuple["Step", ...]
    place: Place | None = None
    counts: CountsAs | None = None
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Facing:
    """`with RS facing`: the side that looks at the maker while the line is worked."""

    side: Literal["RS", "WS"]
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Lying:
    """`with WS together`, `keeping ch behind petals`: how the work is held, in the author's words."""

    what: str
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class FreeLoops:
    """`working in free front loops of round 5`: what follows goes into the loops that a round's stitches left
    free. loop: `front`, `back`, "" where print says only that they are free.
    """

    loop: str = ""
    round: int = 0
    rows: bool = field(default=False, compare=False)
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Repeat:
    """Steps worked again: a number of passes in all (`times`) or up to somewhere (`until`).

    unclear: `rep from * 3 times`, not said whether more or in all; then `times` holds the bare
        number, and the fabric settles it (`settled` gives the clear tree).
    stop_at: the last pass ends before this step of `steps` (`ending last rep at **`).
    ending: `ending with dc in last 2 sts`: worked once when the passes are done.
    omitting: the last pass leaves these out at its end (`omitting last ch 2`).
    star: written with an asterisk. sides: `rep from * on 2nd and 3rd sides`. Both for writing back only.
    """

    steps: tuple["Step", ...]
    times: Amount | None = None
    until: Until | None = None
    unclear: bool = False
    stop_at: int | None = None
    ending: tuple["Step", ...] = ()
    omitting: tuple["Step", ...] = ()
    star: bool = field(default=False, compare=False)
    sides: tuple[int, ...] = field(default=(), compare=False)
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Passage:
    """Steps between two asterisks, worked here and called on later by Again: `*…*, …, rep from * to *`."""

    steps: tuple["Step", ...]
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Again:
    """`rep from * to *`, `… twice more`, `… on 2nd side`: the line's Passage worked so many times."""

    times: Amount = ONE
    sides: tuple[int, ...] = field(default=(), compare=False)
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Skip:
    """`sk 2 sts`, `sk next ch-sp`, `sk first st`, `sk last 2 sts` (which: `first`, `last`), `sk st behind it`
    (`behind`: the one that the stitch just made, worked further down, stands in front of), `sk all picots`.

    purpose: `sk 4 sts for thumb`, the author's words. until: `sk all dc to next ch-2 sp`. piece: `of leg 1`.
    bare: `sk 1 st`, not `next`: behind a chain that counts print may mean the stitch below the chain."""

    count: Amount = ONE
    target: Target = STITCH
    which: Literal["next", "first", "last", "behind", "all"] = "next"
    span: Span | None = no_span()
    purpose: str = ""
    bare: bool = field(default=False, compare=False, repr=False)
    until: Until | None = None
    piece: str = ""


@dataclass(frozen=True, slots=True)
class Leave:
    """`leave last 4 sts unworked`; count None: `leave remaining sts unworked`; purpose: `for right front`.
    but: `working over next 16 sts only`, which leaves all but those."""

    count: Amount | None = None
    target: Target = STITCH
    span: Span | None = no_span()
    purpose: str = ""
    but: Amount | None = None


@dataclass(frozen=True, slots=True)
class WorkingOver:
    """`working behind next ch-sp`, `in front of next 2 sts`, `over` it: the next stitch lies there.

    what: the author's own name for something that isn't a place (`petals of round 2`); made: those just made
    (count None: `sts`, without a number), that a crossing lies behind or before. Neither passes a place.
    """

    side: Literal["behind", "front", "over"]
    count: Amount | None = ONE
    target: Target = STITCH
    span: Span | None = no_span()
    what: str = ""
    made: bool = False


@dataclass(frozen=True, slots=True)
class Join:
    """Closes a round: bare `join` (place None), or `join with sl st to first hdc`, `join to 3rd ch of
    ch-4`.

    how: `not` for `do not join`; `invisibly` for a join sewn with the yarn's end.
    """

    place: Place | None = None
    stitch: Stitch = Stitch("slip")
    how: Literal["", "not", "invisibly"] = ""
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Turn:
    """`turn`; turns False: `do not turn`."""

    turns: bool = True
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class FastenOff:
    """`fasten off`, `fasten off A`, `fasten off invisibly`, `fasten off, leaving a 20 cm tail`.

    tail: what is left, as print says it (`20 cm`, `long`; `any` for `a tail`), what_for: `for sewing`;
    "" where unsaid. ends: `and weave in ends`. closing: `close hole`, in the author's words.
    """

    yarn: str = ""
    tail: str = ""
    invisibly: bool = False
    ends: bool = False
    span: Span | None = no_span()
    closing: str = ""
    what_for: str = ""


@dataclass(frozen=True, slots=True)
class Marker:
    """`place marker`, `place marker in last st`, `move marker`, `remove marker`."""

    action: Literal["place", "move", "remove"] = "place"
    place: Place | None = None
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Yarn:
    """`with B`, `change to A`, `changing to B on last yo`, `carrying A`, `dropping A`."""

    yarn: str
    how: Literal["with", "change", "changing", "carrying", "dropping"] = "with"
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class JoinYarn:
    """`join B with sl st in any corner sp`; standing: `join B with standing dc in next sp`. yarn "" : `join
    yarn with …`. spot: `at lower corner`, in the author's words for where the edge begins.
    """

    yarn: str = ""
    stitch: Stitch = Stitch("slip")
    standing: bool = False
    place: Place | None = None
    span: Span | None = no_span()
    spot: str = ""


@dataclass(frozen=True, slots=True)
class OtherSide:
    """`working along other side of foundation ch` / `along other side of ch` (the leaf's own chain)."""

    of: Literal["foundation", "chain"] = "foundation"
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Tally:
    """A count: `48`, `24 dc, 24 ch-1 sps`, `8 sc, 8 sh`, also as an aside at a line's end.

    total is set for a plain number; else entries, each an amount of a stitch or a Target (`space`, `picot`).
    """

    total: Amount | None = None
    entries: tuple[tuple[Amount, Stitch | Target], ...] = ()
    span: Span | None = no_span()


Step = (
    Work
    | Chain
    | Group
    | Together
    | Facing
    | Lying
    | FreeLoops
    | Repeat
    | Passage
    | Again
    | Skip
    | Leave
    | WorkingOver
    | Join
    | Turn
    | FastenOff
    | Marker
    | Yarn
    | JoinYarn
    | OtherSide
    | Tally
)


@dataclass(frozen=True, slots=True)
class Line:
    """One instruction line: a round's or a row's `work`."""

    steps: tuple[Step, ...]
