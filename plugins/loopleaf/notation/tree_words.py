"""The small parts of the instruction tree: numbers, stitches, kinds of places, where a repeat ends."""

from dataclasses import dataclass, field
from typing import Any, Literal


@dataclass(frozen=True, slots=True)
class Span:
    """Where a node stands in the line's text: offsets in code points, end exclusive."""

    start: int
    end: int


def no_span() -> Any:
    """A span that takes no part in comparing."""
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
class Shaping:
    """`increasing 6 sts evenly`, `decreasing evenly to 24 sts`: how a plain row or round changes its count.

    how: `inc`, or `dec`. count: by so many stitches; with `total`, to so many. spot: not spread evenly, but
    where the author's words say: `neck edge`, `center back`. first: the row begins there, and goes on with
    `…, work to end`.
    """

    how: Literal["inc", "dec"]
    count: Amount
    total: bool = False
    spot: str = ""
    first: bool = False


@dataclass(frozen=True, slots=True)
class Stitch:
    """One stitch or stitch group as it is named.

    kind: a key of `trade/stitches.yml` (`single`, `double`, …); `inc` or `dec`, whose kind the
        round settles; or `special`, with the author's own stitch in `name`.
    form: "" plain; `tog` (sc2tog, dc3tog: legs gathered at the top), `cluster`, `bobble`, `puff`,
        `popcorn`, `shell` (several in one place), `v-stitch` (two with a chain between), `picot`.
    number: legs of a tog, cluster, bobble, puff, popcorn, shell; chains of a picot or V-stitch.
    loop: "" both loops, `front`, `back`, `third`, `bump` (back bump of a chain), `split` (between the two
        legs below its top: `in center of V of each st`).
    post: "" not a post stitch, `front`, `back`, `around` (the side isn't said).
    """

    kind: str
    form: str = ""
    number: int = 0
    loop: str = ""
    post: str = ""
    invisible: bool = False
    name: str = ""


TargetKind = Literal[
    "stitch", "chain", "space", "gap", "corner", "picot", "group", "edge", "loop", "row-end", "free-loop",
    "block",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Target:
    """What kind of place is meant.

    `stitch` alone is any stitch top; with `stitch` set, tops of that kind (`next dc`), or the
    group of that special stitch or shell (`next sh`). `space` with `length` is a ch-N space,
    without it any space; `gap` is one between groups, with a chain there or without. `edge` is a place of
    another piece's edge (`next 2 sts of edge`). `block` is one of corner to corner, or of filet, in a count.
    unworked: those that an earlier row left (`in next 6 unworked sts`); with `free-loop` the loops that the
    stitches of `round` left free (0: where that isn't said), `loop` says which. round: an earlier round's own
    stitches (`next sc of round 1`); rows: print said `row`, for writing back only.
    word: how print said it (`sp` for a bare space, `ch` for chains without the word, `st` for `corner st`);
    for writing back only, and for what the join at a round's end may mean by `ch-3`.
    """

    kind: TargetKind = "stitch"
    stitch: Stitch | None = None
    length: int = 0
    unworked: bool = False
    loop: str = ""
    round: int = 0
    rows: bool = field(default=False, compare=False, repr=False)
    word: str = field(default="", compare=False, repr=False)


STITCH = Target()


@dataclass(frozen=True, slots=True)
class Until:
    """Where a repeat or an `each` ends: the `end` of the edge, so many places before it, a marker, a corner,
    the `next` place of the target's kind (`to next ch-1 sp`), the turning chain (`to tch`), the middle stitch
    (`to center sc`), the middle of the next group (`to center st of next 3-sc group`).

    word: how print said it (`around`, `across`, `end`); kept, for it is written back.
    before: so many stitches short of it (`to 1 st before marker`).
    """

    kind: Literal["end", "to-last", "marker", "corner", "next", "tch", "centre"] = "end"
    word: str = "around"
    count: Amount = ONE
    target: Target = STITCH
    before: Amount | None = None

    @property
    def names_group(self) -> bool:
        """Whether the target is several stitches: a group, a shell, one of the author's own."""
        stitch = self.target.stitch
        several = stitch is not None and (stitch.kind == "special" or stitch.form in ("shell", "v-stitch"))
        return self.target.kind == "group" or several
