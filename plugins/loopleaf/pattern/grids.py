"""A grid's rows as lines of shorthand: the squares in the order in which they are worked."""

import re
from itertools import groupby

from .. import trade
from .model import Pattern
from .pieces import Grid, Piece


def squares(grid: Grid, turn: int, turns: bool) -> str:
    """The signs of the row worked so many after the first (0-based), in working order.

    The first row begins at the grid's `from` corner; where the work turns, every other row goes back.
    """
    row = grid.rows[-1 - turn] if grid.from_.startswith("bottom") else grid.rows[turn]
    from_the_right = grid.from_.endswith("right")
    backwards = turns and turn % 2 == 1
    return row[::-1] if from_the_right != backwards else row


def grid_line(pattern: Pattern, piece: Piece, grid: Grid, turn: int, number: int, stitch: str) -> str:
    """One row of a grid as a line.

    A sign that means a yarn is worked in `stitch` (the entry's `work`), else in the first gauge's stitch,
    else in single crochet; any other meaning is shorthand, worked once a square, and there the entry's `work`
    is what each row begins with: `ch 3 (counts as dc)`. Chains that a foundation has beyond the squares are
    the first row's turning chain, as far as the stitch has one: it begins in the chain after them.
    """
    turns = piece.worked == "rows"
    plain = "dc" if pattern.terms == "UK" else "sc"
    of_yarns = any(is_yarn(pattern, meaning) for meaning in grid.key.values())
    opening = "ch 1" if number > 1 and turns else ""
    if stitch and not of_yarns:
        opening = stitch
    stitch = stitch or next((gauge.stitch for gauge in pattern.gauge if gauge.stitch), plain)
    steps: list[str] = [opening] if opening else []
    yarn = ""
    for sign, run in groupby(squares(grid, turn, turns)):
        times = len(list(run))
        meaning = grid.key[sign]
        if is_yarn(pattern, meaning):
            if meaning != yarn:
                steps.append(f"with {meaning}" if not yarn else f"change to {meaning}")
                yarn = meaning
            if (
                skipped := _turning_chain(pattern, piece, grid, stitch)
                if number == 1 and not steps[1:]
                else 0
            ):
                steps.append(f"{stitch} in {skipped + 1}{_ORDINALS.get(skipped + 1, 'th')} ch from hook")
                times -= 1
            if times:
                steps.append(f"{stitch} in next {times} sts" if times > 1 else f"{stitch} in next st")
        else:
            steps.append(_times_over(meaning, times))
    steps.append("turn" if turns else "join" if piece.worked == "joined rounds" else "")
    return ", ".join(step for step in steps if step)


_OVER_SEVERAL = re.compile(r"([^,;.]* next )(\d+)( (?:sts|stitches))")
"""One step over a number of stitches, such as a filled square: `dc in next 3 sts`."""


def _times_over(square: str, times: int) -> str:
    """The same square several times, as print says it: three of `dc in next 3 sts` are `dc in next 9 sts`."""
    if times == 1:
        return square
    if several := _OVER_SEVERAL.fullmatch(square):
        return f"{several[1]}{int(several[2]) * times}{several[3]}"
    return f"({square}) x {times}"


_ORDINALS = {2: "nd", 3: "rd"}


def is_yarn(pattern: Pattern, meaning: str) -> bool:
    """Whether a square's meaning is a yarn: one of the pattern's, or a letter that can be nothing else."""
    return meaning in pattern.materials.yarns or (len(meaning) == 1 and meaning.isupper())


def _turning_chain(pattern: Pattern, piece: Piece, grid: Grid, stitch: str) -> int:
    """How many chains the foundation has beyond a row's squares, at most those that the stitch turns with."""
    if piece.start is None or piece.start.kind != "chain" or piece.start.chain is None:
        return 0
    rows = trade.stitches()
    names = [(row, row.names(pattern.terms)) for row in rows]
    most = next((row.turning_chain or 1 for row, said in names if stitch in (said.short, said.name)), 1)
    return min(most, max(0, (piece.start.chain.of(0) or 0) - len(grid.rows[0])))
