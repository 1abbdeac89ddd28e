"""The gauge is far from what the yarn's weight usually gives.

What: Plain stitches over 10 cm or 4 in are set beside the published range of the yarn's weight, one weight to
either side included. Stuffed pieces, yarn held double, post stitches and patterns of stitches are left alone.

Why it matters: A slip in the gauge makes every size, amount and time wrong, and a slip in the weight sends
the maker home with the wrong yarn.

Wrong:

    materials:
      yarns: {A: {weight: 6, name: lichen}}
      hook: 10 mm
    gauge: {stitch: hdc, stitches: 18, rows: 12, over: 10 cm}
    finished size: {across: 1.5 cm}

Right:

    materials:
      yarns: {A: {weight: 3, name: lichen}}
      hook: 4.5 mm
    gauge: {stitch: hdc, stitches: 18, rows: 12, over: 10 cm}
    finished size: {across: 1.5 cm}

When to ignore: When the cloth is meant to be so open, or so firm. The published ranges are guidelines.
"""

from collections.abc import Iterator

from ... import trade
from ...notation import parse_count
from ...notation.tree import Stitch
from ...pattern import Finding, Gauge
from ..rule import Words, rule, told
from ..subject import Subject
from ..tricks import is_held_together, is_stuffed, weights_used

_PLAIN = ("single", "half", "double")
"""Stitches about as wide as each other: the ranges are given for single crochet (common practice)."""
_IMPERIAL = ("in", "ft", "yd")
_HALF_A_STITCH = 0.5


def find(subject: Subject) -> Iterator[Finding]:
    pattern = subject.pattern
    weights = set(weights_used(subject).values())
    if len(weights) != 1 or is_stuffed(pattern) or is_held_together(pattern):
        return
    (weight,) = weights
    rows = trade.yarn_weights()[max(weight - 1, 0) : weight + 2]
    low = None if any(row.stitches[0] is None for row in rows) else min(row.stitches[0] or 0 for row in rows)
    high = max(row.stitches[1] or 0 for row in rows)
    for number, gauge in enumerate(pattern.gauge):
        stitches = _over_the_usual_length(gauge, subject)
        if stitches is None:
            continue
        if stitches > high + _HALF_A_STITCH or (low is not None and stitches < low - _HALF_A_STITCH):
            from_, to = trade.yarn_weights()[weight].stitches
            usual = f"{from_:g} to {to:g}" if from_ and to else f"{to or from_:g} or fewer"
            words = Words(
                message=f"A gauge of {stitches:g} stitches is unusual for yarn of weight {weight} "
                f"({trade.yarn_weights()[weight].name}).",
                working=f"Usual for it are {usual} stitches over 10 cm or 4 in; one weight to either side "
                "passes too.",
            )
            place = subject.source.locate(("gauge", number, "stitches"))
            yield told(__name__, "note", subject, place, words)


def _over_the_usual_length(gauge: Gauge, subject: Subject) -> float | None:
    """Plain stitches over 10 cm, or over 4 in where the author measures in inches; None for other gauges."""
    if gauge.stitches is None or gauge.over is None:
        return None
    tally, _ = parse_count(f"2 {gauge.stitch}", subject.work.vocabulary)
    stitch = tally.entries[0][1] if tally is not None and tally.entries else None
    if not isinstance(stitch, Stitch) or stitch.kind not in _PLAIN or stitch.form or stitch.post:
        return None
    usual_mm = 101.6 if gauge.over.unit in _IMPERIAL else 100.0
    return gauge.stitches * usual_mm / gauge.over.mm


RULE = rule(__name__, __doc__, "note", find)
