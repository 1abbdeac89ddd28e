"""The instruction tree: what a written line tells the hook to do, without terminology.

A tree holds kinds (`single`, `double`), never `sc` or `dc`: the parser reads US or UK into it
and the writer gives back either. Two trees are equal when they tell the hook the same; where a
piece of text stood (`span`) and which brackets it wore don't take part in the comparison.
"""

from dataclasses import dataclass, field
from typing import Literal


@dataclass(frozen=True, slots=True)
class Span:
    """Where a node stands in the line's text: offsets in code points, end exclusive."""

    start: int
    end: int


def _span() -> Span | None:
    return field(default=None, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Amount:
    """A number as written: `8`, one a size `8 (10, 12)` (None for `-`), or the `n` of rounds that grow."""

    sizes: tuple[int | None, ...] = (1,)
    variable: str = ""

    def of(self, size: int) -> int | None:
        """The number for one size (0-based); a single number serves every size. None where it has none."""
        if len(self.sizes) == 1:
            return self.sizes[0]
        return self.sizes[size] if size < len(self.sizes) else None

    @property
    def varies(self) -> bool:
        return len(self.sizes) > 1


ONE = Amount((1,))


@dataclass(frozen=True, slots=True)
class Stitch:
    """One stitch or stitch group as it is named.

    kind: a key of `trade/stitches.yml` (`single`, `double`, …); `inc` or `dec`, whose kind the
        round settles; or `special`, with the author's own stitch in `name`.
    form: "" plain; `tog` (sc2tog, dc3tog: legs gathered at the top), `cluster`, `bobble`, `puff`,
        `popcorn`, `shell` (several in one place), `v-stitch` (two with a chain between), `picot`.
    number: legs of a tog, cluster, bobble, puff, popcorn, shell; chains of a picot or V-stitch.
    loop: "" both loops, `front`, `back`, `third`, `bump` (back bump of a chain).
    post: "" not a post stitch, `front`, `back`, `around` (the side isn't said).
    """

    kind: str
    form: str = ""
    number: int = 0
    loop: str = ""
    post: str = ""
    invisible: bool = False
    name: str = ""


TargetKind = Literal["stitch", "chain", "space", "corner", "picot", "group", "edge", "loop", "row-end"]


@dataclass(frozen=True, slots=True)
class Target:
    """What kind of place is meant.

    `stitch` alone is any stitch top; with `stitch` set, tops of that kind (`next dc`), or the
    group of that special stitch or shell (`next sh`). `space` with `length` is a ch-N space,
    without it any space. `edge` is a place of another piece's edge (`next 2 sts of edge`).
    word: how print said it (`sp` for a bare space, `st` for `corner st`); for writing back only.
    """

    kind: TargetKind = "stitch"
    stitch: Stitch | None = None
    length: int = 0
    word: str = field(default="", compare=False, repr=False)


STITCH = Target()


@dataclass(frozen=True, slots=True)
class Until:
    """Where a repeat or an `each` ends: the `end` of the edge, so many places before it, a marker, a corner.

    word: how print said it (`around`, `across`, `end`); kept, for it is written back.
    """

    kind: Literal["end", "to-last", "marker", "corner"] = "end"
    word: str = "around"
    count: Amount = ONE
    target: Target = STITCH


# ---- places -------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Next:
    """The next so many places of a kind; `in next st`, `in next 3 sts`, `in next ch-2 sp`, `in next dc`.

    below: rounds below (`in st 2 rounds below` is 2). piece: `of leg 2`. any: `in any corner sp`.
    rows: print said `rows below`; for writing back only.
    """

    count: Amount = ONE
    target: Target = STITCH
    below: int = 0
    piece: str = ""
    any: bool = False
    rows: bool = field(default=False, compare=False, repr=False)
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class First:
    """`in first st`, `in first 2 sts`."""

    count: Amount = ONE
    target: Target = STITCH
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Last:
    """`in last st`, `in last 2 sts`, `in last ch`."""

    count: Amount = ONE
    target: Target = STITCH
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Same:
    """`in same st`, `in same sp`, `in same place`."""

    target: Target = STITCH
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Each:
    """`in each st around`, `in each st and ch-sp around`, `in each remaining st`, `in each ch across`, `in
    each st to last 2 sts`.

    every: 2 for `in every other st`.
    """

    targets: tuple[Target, ...] = (STITCH,)
    until: Until = Until()
    remaining: bool = False
    every: int = 1
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Here:
    """The one place of the group that the stitch stands in: the `2 dc` of `(2 dc, ch 2, 2 dc) in next sp`."""

    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Ring:
    """`in ring`."""

    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class FromHook:
    """`in 2nd ch from hook`."""

    number: int = 2
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class ChainOf:
    """A chain of a turning or beginning chain of this or the round below: `top of ch-3`, `3rd ch of ch-5`,
    `beg ch-3`, `top of tch`.

    number: which chain, counted from its foot; 0 is its top (the last that stands for the stitch).
    chain: `ch` (named by its length), `tch`, `beg`. length: chains, 0 where not said.
    """

    number: int = 0
    chain: Literal["ch", "tch", "beg"] = "ch"
    length: int = 0
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Within:
    """A place inside the next group or arch: `centre st of next sh`, `3rd ch of next ch-5`, `each ch of next
    ch-7`.

    part: `centre`, `nth` (with number), `first`, `last`, `each`. `next` alone says which group; `same` True
    for `of same sh`.
    """

    part: Literal["centre", "nth", "first", "last", "each"]
    inner: Target
    of: Target
    number: int = 0
    same: bool = False
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Between:
    """`between next 2 sts`, `in sp between next 2 groups`."""

    target: Target = STITCH
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Marked:
    """`in marked st`."""

    target: Target = STITCH
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Skipped:
    """`in skipped st`: back to the stitch last passed over (crossed stitches)."""

    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Over:
    """The legs of one gathered stitch, each in a place of its own: `sc2tog`, `dc3tog over next 5 sts`.

    count: how many places it leans over. A plain `sc2tog` has Over(2); the writer leaves it unsaid
    where it equals the legs.
    """

    count: Amount
    target: Target = STITCH
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class RowEnds:
    """`in end of each row`, `in end of each dc row`, `in end of next 4 rows` (count)."""

    stitch: Stitch | None = None
    count: Amount | None = None
    until: Until = Until(word="across")
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Evenly:
    """`66 sc evenly along edge`: the stitches that the Work makes are spread along what is left to the end
    or a corner.
    """

    along: str = "edge"
    until: Until = Until(word="across")
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Corresponding:
    """`in corresponding ch-sp of square 1`: a place of a finished piece, opposite the one now worked."""

    target: Target
    piece: str
    span: Span | None = _span()


Place = (
    Next
    | First
    | Last
    | Same
    | Each
    | Here
    | Ring
    | FromHook
    | ChainOf
    | Within
    | Between
    | Marked
    | Skipped
    | Over
    | RowEnds
    | Evenly
    | Corresponding
)


# ---- steps --------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class CountsAs:
    """The aside `(counts as dc, ch 1)`, `(does not count)`, `(skipped chs count as dc, ch 2)`, `(counts as
    ch-5 sp)`.

    stitch None and chains 0 and space 0: does not count.
    """

    stitch: Stitch | None = None
    chains: int = 0
    space: int = 0
    skipped: bool = False
    span: Span | None = _span()

    @property
    def nothing(self) -> bool:
        return self.stitch is None and not self.chains and not self.space


@dataclass(frozen=True, slots=True)
class Work:
    """Stitches into places: `each` of them in every place that `places` names, in order.

    `3 hdc` and `hdc in next 3 sts` are both each=1, places=(Next(3),); `2 hdc in next st` is each=2,
    places=(Next(1),); `dc in 5th ch from hook and in each ch across` has two places.
    For Evenly, RowEnds without a rate, and Ring, `each` is the number made.
    through: `both layers`, where said.
    """

    stitch: Stitch
    each: Amount = ONE
    places: tuple[Place, ...] = (Next(),)
    counts: CountsAs | None = None
    through: str = ""
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Chain:
    """`ch 3`, `ch 3 (counts as dc)`."""

    length: Amount
    counts: CountsAs | None = None
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Group:
    """Several things in one place (or in each of several): `(2 dc, ch 2, 2 dc) in next ch-2 sp`."""

    steps: tuple["Step", ...]
    places: tuple[Place, ...] = (Next(),)
    counts: CountsAs | None = None
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Repeat:
    """Steps worked again: a number of passes in all (`times`) or up to somewhere (`until`).

    unclear: `rep from * 3 times`, not said whether more or in all; then `times` holds the bare
        number, and the fabric settles it (`settled` gives the clear tree).
    stop_at: the last pass ends before this step of `steps` (`ending last rep at **`).
    ending: `ending with dc in last 2 sts`: worked once when the passes are done.
    omitting: the last pass leaves these out at its end (`omitting last ch 2`).
    star: written with an asterisk; more: print said `4 more times`. Both for writing back only.
    """

    steps: tuple["Step", ...]
    times: Amount | None = None
    until: Until | None = None
    unclear: bool = False
    stop_at: int | None = None
    ending: tuple["Step", ...] = ()
    omitting: tuple["Step", ...] = ()
    star: bool = field(default=False, compare=False)
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Passage:
    """Steps between two asterisks, worked once here and called on later by Again: `*…*, …, rep from * to
    *`.
    """

    steps: tuple["Step", ...]
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Again:
    """`rep from * to *`, `… twice more`: the line's Passage worked so many times."""

    times: Amount = ONE
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Skip:
    """`sk 2 sts`, `sk next ch-sp`, `sk first st` (which: `first`)."""

    count: Amount = ONE
    target: Target = STITCH
    which: Literal["next", "first"] = "next"
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Leave:
    """`leave last 4 sts unworked`; count None: `leave remaining sts unworked`."""

    count: Amount | None = None
    target: Target = STITCH
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class WorkingOver:
    """`working behind next ch-sp`, `working in front of next 2 sts`: passed, and the next stitch lies
    behind or before it.
    """

    side: Literal["behind", "front"]
    count: Amount = ONE
    target: Target = STITCH
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Join:
    """Closes a round: bare `join` (place None), or `join with sl st to first hdc`, `join to 3rd ch of
    ch-4`.
    """

    place: Place | None = None
    stitch: Stitch = Stitch("slip")
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Turn:
    """`turn`; turns False: `do not turn`."""

    turns: bool = True
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class FastenOff:
    """`fasten off`, `fasten off A`."""

    yarn: str = ""
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Marker:
    """`place marker`, `place marker in last st`, `move marker`, `remove marker`."""

    action: Literal["place", "move", "remove"] = "place"
    place: Place | None = None
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Yarn:
    """`with B`, `change to A`, `changing to B on last yo`, `carrying A`."""

    yarn: str
    how: Literal["with", "change", "changing", "carrying"] = "with"
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class JoinYarn:
    """`join B with sl st in any corner sp`; standing: `join B with standing dc in next sp`. yarn "" : `join
    yarn with …`.
    """

    yarn: str = ""
    stitch: Stitch = Stitch("slip")
    standing: bool = False
    place: Place | None = None
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class OtherSide:
    """`working along other side of foundation ch` / `along other side of ch` (the leaf's own chain)."""

    of: Literal["foundation", "chain"] = "foundation"
    span: Span | None = _span()


@dataclass(frozen=True, slots=True)
class Tally:
    """A count: `48`, `24 dc, 24 ch-1 sps`, `8 sc, 8 sh`, also as an aside at a line's end.

    total is set for a plain number; else entries, each an amount of a stitch or a Target (`space`, `picot`).
    """

    total: Amount | None = None
    entries: tuple[tuple[Amount, Stitch | Target], ...] = ()
    span: Span | None = _span()


Step = (
    Work
    | Chain
    | Group
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
