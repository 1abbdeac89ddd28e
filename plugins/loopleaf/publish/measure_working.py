"""The working of a round's two figures, as a sum that can be done again on paper."""

import math
from collections import Counter
from collections.abc import Iterator, Sequence

from ..measure import RoundSize, Scale
from ..measure.made import Contents
from ..measure.size import space_widths


def working(run: Sequence[RoundSize], made: Contents | None, scale: Scale) -> str:
    """`48 × 7.1 mm; 60 + 10 × 10.0 mm`: the way around or across, and the height along the fabric.

    run: rounds that are alike, told in one line. made: what the last of them is made of.
    """
    one, before_mm = run[-1], run[0].height_mm - run[0].rise_mm
    if one.blocks:
        wide, high = one.blocks
        return f"{wide} × {high} blocks, {one.length_mm / wide:.1f} mm a side"
    below = f"on round {one.on}: " if one.on else ""
    times = f"{len(run)} × " if len(run) > 1 else ""
    mean = " on average" if made is not None and len(_heights(made, scale)) > 1 else ""
    along = " + ".join(_along(one, made, scale)) or "0 mm"
    along += ", eased to the edge" if one.eased else ""
    if one.aside is not None and not one.aside.top:
        return f"{along}; at the side, {times}{one.rise_mm:.1f} mm{mean} beside {one.height_mm:.0f} mm"
    return f"{along}; {below}{before_mm:.0f} + {times}{one.rise_mm:.1f} mm{mean}"


def _along(one: RoundSize, made: Contents | None, scale: Scale) -> Iterator[str]:
    """Stitches by their width, then spaces by theirs: `24 × 7.7 mm`, `4 ch-2 sps × 11.6 mm`."""
    if made is None or math.isclose(one.length_mm, one.stitches * scale.width_mm, rel_tol=1e-3):
        yield f"{one.stitches} × {scale.width_mm:.1f} mm"
        return
    stitches: Counter[float] = Counter()
    for sort, number in made.stitches.items():
        if sort.counted:
            stitches[round(scale.width_of(sort.kind, sort.post), 1)] += number
    yield from (f"{number} × {mm:.1f} mm" for mm, number in stitches.items())
    spaces: Counter[tuple[int, float]] = Counter()
    for gap, number in made.gaps.items():
        spaces[gap.chains, round(sum(space_widths(gap)) / 2 * scale.width_mm, 1)] += number
    for (chains, mm), number in sorted(spaces.items()):
        yield f"{number} ch-{chains} sp{'s' if number > 1 else ''} × {mm:.1f} mm"


def _heights(made: Contents, scale: Scale) -> set[float]:
    return {round(scale.height_of(sort.kind, sort.post), 1) for sort in made.standing}
