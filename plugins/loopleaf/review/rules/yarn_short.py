"""The stitches take more yarn than the pattern says.

What: From the counts, the gauge and how much yarn a stitch takes, the least that each yarn needs is worked
out, and set beside the amount weighed.

Why it matters: A maker who buys what the pattern says runs out before the last round.

Wrong:

    materials:
      yarns: {A: {weight: 4, name: lichen, ball: {grams: 50, metres: 85}, weighed: 6 g}}
      hook: 5.5 mm
    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
    finished size: {width: 21.5 cm, height: 20 cm}
    worked: rows
    start: chain 31
    rows:
      - {row: 1, work: "hdc in 2nd ch from hook and in each ch across, turn", count: 30}
      - {rows: 2-20, work: "ch 1, hdc in each st across, turn", count: 30}

Right:

    materials:
      yarns: {A: {weight: 4, name: lichen, ball: {grams: 50, metres: 85}, weighed: 36 g}}
      hook: 5.5 mm
    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
    finished size: {width: 21.5 cm, height: 20 cm}
    worked: rows
    start: chain 31
    rows:
      - {row: 1, work: "hdc in 2nd ch from hook and in each ch across, turn", count: 30}
      - {rows: 2-20, work: "ch 1, hdc in each st across, turn", count: 30}

When to ignore: When you have weighed the finished piece on a good scale, and it is whole.
"""

from collections.abc import Iterator

from ...measure import amounts
from ...pattern import Finding
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    for at, first in enumerate(subject.measured.yarn[0]):
        for size in range(subject.pattern.size_count):
            need = subject.measured.yarn[size][at]
            if not need.weighed or need.metres is None or need.model_metres is None:
                continue
            if need.model_metres.low <= need.metres.high:
                continue
            of_size = f" in size {subject.sizes[size]}" if len(subject.sizes) > 1 else ""
            stated, least = need.metres.middle, need.model_metres.low
            words = Words(
                message=f"Yarn {first.yarn} is stated as about {amounts.metres(stated)}{of_size}, and the "
                f"stitches take {amounts.metres(least)} at least.",
                working=f"By stitches and gauge it is {amounts.metres(need.model_metres.middle)}, "
                "give or take a quarter.",
            )
            place = subject.source.locate(("materials", "yarns", first.yarn, "weighed"))
            yield told(__name__, "warning", subject, place, words)
            break


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
