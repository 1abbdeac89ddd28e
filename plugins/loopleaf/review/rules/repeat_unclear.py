"""`rep from * 3 times` can be read as three more or as three in all, and the round doesn't settle it.

What: Both readings are worked. The one that uses up the round and makes the stated count is taken; where
both do, or neither does, a reader can't know which was meant.

Why it matters: Books use the words both ways; the maker is one repeat out and finds it at the end.

Wrong:

    worked: rows
    start: chain 20
    rows:
      - row: 1
        work: "sc in 2nd ch from hook, *ch 1, sk next ch, sc in next ch; rep from * 3 times,
          leave remaining chs unworked, turn"

Right:

    worked: rows
    start: chain 20
    rows:
      - row: 1
        work: "sc in 2nd ch from hook, *ch 1, sk next ch, sc in next ch; rep from * 3 more times,
          leave remaining chs unworked, turn"

When to ignore: Never; write `3 more times`, or brackets with the number in all: `(…) x 4`.
"""

from ...notation.tree import Repeat
from ...pattern import Suggestion
from ..lines import within
from ..names import number_of
from ..rule import Words, fit_rule
from ..subject import Met


def words(met: Met) -> Words:
    times = _times(met)
    more, in_all = met.facts["more_fits"], met.facts["in_all_fits"]
    if more and in_all:
        why = "Both readings work out here"
    elif more or in_all:
        why = f"Only {'more' if more else 'in all'} works out here"
    else:
        why = "Neither reading works out here"
    return Words(
        message=f"{met.quoted} in {met.where} can mean {times} more times or {times} in all.",
        working=f"{times} more makes {times + 1} with the first one, {times} in all makes {times}. {why}.",
        suggestion=Suggestion(
            f"Write “{times} more times” for {times + 1} in all, "
            f"“{number_of(times - 1, 'more time')}” for {times} in all.",
            None,
            "fill-in",
        ),
    )


def _times(met: Met) -> int:
    """The number as written."""
    span = met.troubles[0].span
    line = met.round.line if met.round else None
    repeats = [step for step in within(line, Repeat) if step.unclear and step.span == span]
    return repeats[0].times.of(met.troubles[0].size) or 0 if repeats and repeats[0].times else 0


RULE = fit_rule(__name__, __doc__, "error", words)
