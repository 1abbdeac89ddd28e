"""Spreading a number of increases, decreases or rounds evenly: Bresenham's line, drawn in stitches.

J. E. Bresenham, "Algorithm for computer control of a digital plotter", IBM Systems Journal 4 (1965): of n
points along a line of m steps each lies as near as whole steps allow, so that neighbours are m ÷ n apart,
rounded down or up, and no two gaps differ by more than one.
"""

from collections.abc import Sequence
from itertools import groupby


def gaps(parts: int, whole: int) -> tuple[int, ...]:
    """A whole number shared out evenly over so many parts, the sum kept; the shares differ by one at most.

    Raises ValueError for no parts, or for less than nothing to share.
    """
    if parts < 1 or whole < 0:
        raise ValueError(f"{whole} can't be shared out over {parts} parts")
    return tuple((turn + 1) * whole // parts - turn * whole // parts for turn in range(parts))


def spread(increases: int, stitches: int) -> tuple[int, ...]:
    """Plain stitches before each increase, where so many increases are spread evenly over so many stitches.

    Every increase takes one of the stitches: `spread(4, 56)` is four times 13. Raises ValueError where there
    are more increases than stitches, or none.
    """
    if not 0 < increases <= stitches:
        raise ValueError(f"{increases} increases don't go into {stitches} stitches")
    return tuple(each - 1 for each in gaps(increases, stitches))


def as_written(
    increases: int, stitches: int, stitch: str, increase: str, first: bool = False, chain: str = ""
) -> str:
    """The round's middle as patterns write it: `(hdc in next 13 sts, inc) x 4`.

    Where the spread repeats itself in short, so it is written (`(sc in next 3 sts, inc, sc in next 4 sts,
    inc) x 2`); else the longer shares are gathered before the shorter ones. stitch: `hdc`. increase: `inc`,
    or `2 hdc in next st`. first: each increase stands before its plain stitches, not behind them. chain: what
    counts as the round's first stitch; its pass is then written out (`ch 3 (counts as dc), dc in same st,
    dc in next 2 sts, (2 dc in next st, dc in next 2 sts) x 11`).
    """
    plain = spread(increases, stitches)
    period = next(n for n in range(1, increases + 1) if plain == plain[:n] * (increases // n))
    if period <= _IN_SHORT:
        runs = [(plain[:period], increases // period)]
    else:
        runs = [((share,), len(list(run))) for share, run in groupby(sorted(plain, reverse=True))]
    written = []
    if chain:
        (shares, times), *others = runs
        written.append(_from_chain(shares, stitch, increase, first, chain))
        runs = [(shares, times - 1), *others] if times > 1 else others
    written += [_repeat(shares, times, stitch, increase, first) for shares, times in runs]
    return ", ".join(written)


_IN_SHORT = 3
"""Shares in one repeat that a reader still keeps in mind (chosen here)."""


def _from_chain(plain: Sequence[int], stitch: str, increase: str, first: bool, chain: str) -> str:
    """One pass whose first stitch is a chain."""
    share, *others = plain
    words = [chain]
    if first or not share:
        words += [f"{stitch} in same st", *_even(share, stitch)]
    else:
        words += [*_even(share - 1, stitch), increase]
    return ", ".join([*words, *(_repeat([one], 1, stitch, increase, first) for one in others)])


def _even(share: int, stitch: str) -> list[str]:
    return [stitch + (" in next st" if share == 1 else f" in next {share} sts")] if share else []


def _repeat(plain: Sequence[int], times: int, stitch: str, increase: str, first: bool) -> str:
    words: list[str] = []
    for share in plain:
        even = _even(share, stitch)
        words += [increase, *even] if first else [*even, increase]
    once = ", ".join(words)
    return once if times == 1 else f"({once}) x {times}"
