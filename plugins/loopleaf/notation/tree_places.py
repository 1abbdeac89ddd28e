"""The places of the instruction tree: where stitches are worked."""

from dataclasses import dataclass, field
from typing import Literal

from .tree_words import ONE, STITCH, Amount, Span, Stitch, Target, Until, no_span


@dataclass(frozen=True, slots=True)
class Next:
    """The next so many places of a kind; `in next st`, `in next 3 sts`, `in next ch-2 sp`, `in next dc`.

    below: rounds below (`in st 2 rounds below` is 2). piece: `leg 2`, `next flag`.
    skipped: with `below`, `in next skipped sc 3 rows below`, which a chain has stood over since.
    any: `in any corner sp`. far: `in other side of next 3 chs`. rows: print said `rows below`; for writing
    back only. unsaid: print left `next` out before a space. stacked: so many chains of rows above each other,
        `over both ch-5 sps`. centre: print said `centre st`, which the line has come to.
    """

    count: Amount = ONE
    target: Target = STITCH
    below: int = 0
    piece: str = ""
    any: bool = False
    far: bool = False
    skipped: bool = False
    stacked: int = 0
    rows: bool = field(default=False, compare=False, repr=False)
    unsaid: bool = field(default=False, compare=False, repr=False)
    centre: bool = field(default=False, compare=False, repr=False)
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class First:
    """`in first st`, `in first 2 sts`."""

    count: Amount = ONE
    target: Target = STITCH
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Last:
    """`in last st`, `in last 2 sts`, `in last ch`."""

    count: Amount = ONE
    target: Target = STITCH
    span: Span | None = no_span()


BegunBy = Literal["", "join", "first", "chain"]
"""What the place that a round began in is called by."""


@dataclass(frozen=True, slots=True)
class Same:
    """`in same st`, `in same sp`, `in same place`: the one last worked into.

    begun: or the one that the round began in, called so by the `join`, the `first` stitch or the beginning
    `chain` that stands in it (`in same sp as beg ch-3`).
    """

    target: Target = STITCH
    begun: BegunBy = ""
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Each:
    """`in each st around`, `in each st and ch-sp around`, `in each remaining st`, `in each ch across`, `in
    each st to last 2 sts`.

    every: 2 for `in every other st`. piece: `leg 1`, of `in each st around leg 1`. evenly: `sc evenly around`
        without a number, which is told of stitches alone.
    """

    targets: tuple[Target, ...] = (STITCH,)
    until: Until = Until()
    remaining: bool = False
    every: int = 1
    piece: str = ""
    evenly: bool = field(default=False, compare=False)
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Here:
    """The one place of the group that the stitch stands in: the `2 dc` of `(2 dc, ch 2, 2 dc) in next sp`."""

    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Ring:
    """`in ring`; magic: print said `magic ring`."""

    magic: bool = field(default=False, compare=False, repr=False)
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class FromHook:
    """`in 2nd ch from hook`."""

    number: int = 2
    span: Span | None = no_span()


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
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Within:
    """A place inside the next group or arch: `centre st of next sh`, `3rd ch of next ch-5`, `each ch of next
    ch-7`.

    part: `centre`, `nth` (with number), `first`, `last`, `each`. `next` alone says which group; `same` True
    for `of same sh`, `last` for `of last sh`. unsaid: print left out which, `centre sc of 3-sc group`.
    """

    part: Literal["centre", "nth", "first", "last", "each"]
    inner: Target
    of: Target
    number: int = 0
    same: bool = False
    last: bool = False
    span: Span | None = no_span()
    unsaid: bool = field(default=False, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Between:
    """`between next 2 sts`, `in sp between next 2 groups`; first: `between first 2 sts`; any: `between any 2
    sts`, for writing back only."""

    target: Target = STITCH
    first: bool = False
    any: bool = field(default=False, compare=False, repr=False)
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Marked:
    """`in marked st`."""

    target: Target = STITCH
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class JustMade:
    """`in last sc made`, `in st just made`: the top of the stitch made last.

    number: `6th sc made` of the row, counted from its beginning; 0 for the last one. among: `2nd of these 3
    tr`, counted in the last so many of them; 0 where not said.
    """

    target: Target = STITCH
    number: int = 0
    among: int = 0
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Skipped:
    """`in skipped st`: back to the stitch last passed over (crossed stitches).

    which: `all` for `skipped sts`, `next` for the one after that just worked into, `nth` with number.
    number: which one, or how many of all; 0 where not said.
    """

    which: Literal["", "all", "next", "nth"] = ""
    number: int = 0
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Over:
    """The legs of one gathered stitch, each in a place of its own: `sc2tog`, `dc3tog over next 5 sts`.

    count: how many places it leans over. A plain `sc2tog` has Over(2); the writer leaves it unsaid
    where it equals the legs. which: `over first 2 sts`, `over last 2 sts`.
    """

    count: Amount
    target: Target = STITCH
    which: Literal["next", "first", "last"] = "next"
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class RowEnds:
    """`in end of each row`, `in end of each dc row`, `in end of next 4 rows` (count), `3 sc in every 2 row
    ends` (per: the stitches are spread over so many). side: `in side of next st`, at an opening.
    """

    stitch: Stitch | None = None
    count: Amount | None = None
    until: Until = Until(word="across")
    per: int = 1
    side: bool = False
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Evenly:
    """`66 sc evenly along edge`: the stitches that the Work makes are spread along what is left to the end
    or a corner.
    """

    along: str = "edge"
    until: Until = Until(word="across")
    span: Span | None = no_span()


@dataclass(frozen=True, slots=True)
class Corresponding:
    """`in corresponding ch-sp of square 1`: a place of a finished piece, opposite the one now worked."""

    target: Target
    piece: str
    span: Span | None = no_span()


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
    | JustMade
    | Skipped
    | Over
    | RowEnds
    | Evenly
    | Corresponding
)
