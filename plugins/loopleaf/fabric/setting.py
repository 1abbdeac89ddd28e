"""What stays the same while a round is worked, and how what its text leaves open is read."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from ..notation.tree import Line
from .flaps import Flap
from .worked import Place


@dataclass(frozen=True, slots=True)
class Reading:
    """How what the text leaves open is read.

    chain: whether an unsaid beginning chain counts as a stitch; None: by the pattern's convention.
    more: whether `rep from * 3 times` means three more; None: not yet asked.
    tip: whether the other side of the foundation begins in the chain at its tip, not behind it.
    under: whether `ch 3, sk 1 dc` names the stitch that the chain stands on, as `sk first dc` does.
    behind: whether `sk next st` after a stitch worked further down means the one that this stands in front
    of. deep: whether `2 rounds below` counts along that round's own stitches, not along those in front of
    them. folded: whether `through both layers` closes an opening, each stitch through two of it. outer:
    whether a row over arches leaves the stitch at its end. gap: whether the gap beside a beginning chain that
    counts is the first of a row into gaps. arch: whether the chains passed before a group are a stitch and a
    space. short: whether what `to last 2 sts` keeps stays unworked. mesh: whether a beginning chain longer
    than the stitch is tall is that stitch and a space. apart: whether the turning chain that a row ends in is
    none of its `last` stitches. last: whether `in each st across, 2 dc in last st` keeps it for the two.
    alone: whether a beginning chain before a cluster of one leg fewer is a stitch of its own.
    paired: whether a beginning chain and the stitch behind it are one of the line's decreases.
    ringed: whether a short chain with a slip stitch in the same stitch behind it is a picot.
    onward: whether a round that begins without a chain goes on from the stitch that it was joined to, and one
    around a piece in rows comes to the corner that it begins in at its end.
    tall: whether a beginning chain stands for the taller stitch that such chains count as in the pattern.
    shared: whether `in last st` is the stitch that the one before it has gone into as well.
    none: whether `in each st to end` is no stitch in this size.
    led_in: whether the slip stitches behind a row's lone first chain only lead to where it begins.
    slips: whether the slip stitches that a row begins with, no chain behind them, are its stitches.
    told: whether `working last dc in top of ch-3` only says where the last stitch of the last pass goes.
    without_end: whether a row that turns aside at its end leaves that end out of the `row ends`.
    aside: whether a line that skips to where the yarn is joined anew goes along what an earlier row left.
    beneath: whether half of the chains behind a row's first stitch lie beneath its first space.
    beyond: whether the centre of an even number of chains is the second of its middle two.
    over_gap: whether a row with decreases goes on into the stitches that an earlier one left at its end.
    """

    chain: bool | None = None
    more: bool | None = None
    under: bool = False
    tip: bool = False
    behind: bool = False
    deep: bool = False
    folded: bool = False
    outer: bool = False
    gap: bool = False
    arch: bool = False
    short: bool = False
    mesh: bool = False
    apart: bool = False
    last: bool = False
    alone: bool = False
    paired: bool = False
    ringed: bool = False
    onward: bool = False
    tall: bool = False
    shared: bool = False
    none: bool = False
    led_in: bool = False
    slips: bool = False
    without_end: bool = False
    told: bool = False
    beyond: bool = False
    beneath: bool = False
    aside: bool = False
    over_gap: bool = False


AS_IT_STANDS = Reading()
"""Nothing is left open."""

LED_IN = Reading(led_in=True)
"""The first slip stitches of a row only lead to where it begins."""


@dataclass(slots=True)
class Setting:
    """What stays the same while a round is worked.

    size, index: which size and which round of the piece (0-based). worked: the piece's way of working
    (`joined rounds`, `spiral rounds`, `rows` …). conventions: kind -> whether its turning chain counts.
    heights: kind -> its turning chain's length. specials: the author's stitches, parsed. only_kind: the one
    kind
    that the line names ("" where none or several). others: finished edges of other pieces, by name.
    closing: what the line joins to at its end names the third chain of four: (3, 4), else None.
    first_kind: kind of the first stitch after the beginning chain. begun_on: the name of the piece that the
    round's own edge belongs to, where the line speaks of it. leaves: a later row takes up what this leaves.
    turned: the work was turned before the round. flap: the one that the row belongs to, or comes behind.
    """

    size: int
    index: int
    worked: str
    counted: bool
    conventions: Mapping[str, bool]
    heights: Mapping[str, int]
    specials: Mapping[str, Line]
    only_kind: str
    first_kind: str
    closing: tuple[int, int] | None
    others: Mapping[str, list[Place]] = field(default_factory=dict)
    begun_on: str = ""
    several: bool = False
    leaves: bool = False
    turned: bool = False
    flap: Flap | None = None
    reading: Reading = AS_IT_STANDS
    rows: bool = field(init=False)
    spiral: bool = field(init=False)

    def __post_init__(self) -> None:
        self.rows = self.worked.startswith("rows")
        self.spiral = self.worked == "spiral rounds"
