"""Rounds that are meant to lie flat grow too fast, and will wave.

What: The growth of the rounds under `lies flat` is set beside 2π × height ÷ width of a stitch, the growth
of a flat circle (a polygon's for work with corners). Above about 1.25 times that the edge is too long for
its circle. Every size is judged; long arches hang in loops, and short ones are drawn straight.

Why it matters: A base that waves doesn't stand; the maker thinks that their tension is wrong.

Wrong:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
    finished size: {across: 6 cm}
    lies flat: 1-3
    rounds:
      - {round: 1, work: "ch 1, 12 hdc in ring, join", count: 12}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 24}
      - {round: 3, work: "ch 1, 2 hdc in each st around, join, fasten off", count: 48}

Right:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
    finished size: {across: 6 cm}
    lies flat: 1-3
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}
      - {round: 3, work: "ch 1, (hdc in next st, 2 hdc in next st) x 8, join, fasten off", count: 24}

When to ignore: When it is meant to wave: then take the rounds out of `lies flat`.
"""

from collections.abc import Iterator

from ...pattern import Finding
from ..flat import strays
from ..rule import rule
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    return strays(subject, "ruffles", "too fast to lie flat, and will wave", __name__)


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
