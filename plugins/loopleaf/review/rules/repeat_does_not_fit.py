"""A repeat that goes on to the end of the round or row doesn't come out even.

What: A repeat without a number (`around`, `across`, `to last 2 sts`) is worked pass after pass. The places
it has must be used up by whole passes.

Why it matters: The maker reaches the end in the middle of a repeat, and can't tell whether the mistake is
theirs, in an earlier round, or in the pattern.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 10 sc in ring, join", count: 10}
      - {round: 2, work: "ch 1, *sc in next st, ch 2, sk 2 sts; rep from * around, join"}

Right:

    rounds:
      - {round: 1, work: "ch 1, 9 sc in ring, join", count: 9}
      - {round: 2, work: "ch 1, *sc in next st, ch 2, sk 2 sts; rep from * around, join"}

When to ignore: Never; say what happens with the stitches that are left (`ending with sc in last st`, `to
last 2 sts`, `leave last st unworked`).
"""

from ...pattern import Related, Suggestion
from ..names import listed, number_of
from ..rule import Words, fit_rule
from ..subject import Met

_NEAR = 3
"""So many places a slip in a repeat may make too many or too few."""


def words(met: Met) -> Words:
    facts = met.facts
    left, each, passes, available = facts["left"], facts["each"], facts["passes"], facts["available"]
    at = met.below_at
    return Words(
        message=f"The repeat {met.quoted} in {met.where} doesn't come out even.",
        working=_working(left, each, passes, available),
        suggestion=_suggestion(met, left, each, passes, available),
        related=(Related(at, f"{met.where} is worked into this"),) if at else (),
    )


def _is_by_number(left: int, each: int, passes: int, available: int) -> bool:
    """Whether too few places are left for a pass, so that figures say what is wrong."""
    return left < each and passes * each + left == available


def _working(left: int, each: int, passes: int, available: int) -> str:
    if not left and passes:
        whole = number_of(passes, "whole pass", "whole passes")
        return f"{whole} would use all that is there, and the last one is said to stop at **."
    if not _is_by_number(left, each, passes, available):
        which = "The first pass" if not passes else f"Pass {passes + 1}"
        return f"{which} doesn't find a place that it names, though places are left."
    if not passes:
        return f"The repeat has {number_of(available, 'place')}, and one pass needs {each}."
    return (
        f"The repeat has {number_of(available, 'place')}, and each pass uses {each}: "
        f"{passes} × {each} = {passes * each}, which leaves {left}; "
        f"{passes + 1} passes would need {(passes + 1) * each}."
    )


def _look_again(met: Met) -> Suggestion:
    text = f"Look at each place in the repeat: {met.below} must have it in every pass."
    return Suggestion(text, None, "fill-in")


def _suggestion(met: Met, left: int, each: int, passes: int, available: int) -> Suggestion:
    if not left and passes:
        return Suggestion("Leave out “ending last rep at **”, or look at the count below.", None, "fill-in")
    if not _is_by_number(left, each, passes, available):
        return _look_again(met)
    ways = [f"{left} fewer" if available > left else "", f"{each - left} more"]
    text = f"It would fit with {listed([way for way in ways if way], 'or')} in {met.below}"
    near = range(max(2, each - _NEAR), each + _NEAR + 1)
    fits = [size for size in near if size != each and available % size == 0]
    if fits:
        text += f", or with a repeat that uses {listed(map(str, fits), 'or')} places"
    return Suggestion(
        f"{text}, or say what happens with the {number_of(left, 'place')} left.", None, "fill-in"
    )


RULE = fit_rule(__name__, __doc__, "error", words)
