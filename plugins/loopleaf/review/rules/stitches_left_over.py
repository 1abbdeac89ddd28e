"""A round or row ends before all of the one below is used, and nothing says to leave the rest.

What: Every place of the round below must be worked into, passed over by word, or left by word.

Why it matters: The maker stands before unworked stitches and doesn't know whether they miscounted.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in next 7 sts, join", count: 14}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in next 8 sts, join", count: 16}

When to ignore: Never; where stitches stay free on purpose, write `leave last 4 sts unworked`.
"""

from ...pattern import Related, Suggestion
from ..mends import mend_told
from ..names import number_of
from ..rule import Words, fit_rule
from ..subject import Met

_NAMES = {"stitch": ("stitch", "st", "sts"), "space": ("space", "sp", "sps"), "chain": ("chain", "ch", "chs")}


def words(met: Met) -> Words:
    left = met.facts["left"]
    if met.facts["target"] == "ring":
        return Words(
            message=f"{met.where.capitalize()} works nothing into the ring.",
            working="The piece begins with a ring, and its first round has to go into it.",
            suggestion=Suggestion("Say “in ring”.", None, "fill-in"),
        )
    name, one, many = _NAMES[met.facts["target"]]
    at = met.below_at
    related = (Related(at, f"{met.where} is worked into this"),) if at else ()
    if met.facts.get("on_the_way"):
        it, places = ("it", f"next {one}") if left == 1 else ("them", f"next {left} {many}")
        return Words(
            message=f"{met.quoted} in {met.where} passes over {number_of(left, name)} of {met.below}.",
            working=f"{number_of(left, name)} {'stands' if left == 1 else 'stand'} between the hook and that "
            f"place, and nothing says to skip {it}.",
            suggestion=Suggestion(f"Work into {it}, or write “sk {places}” before.", None, "fill-in"),
            related=related,
        )
    last = "last" if left == 1 else f"last {left}"
    it = "it" if left == 1 else "them"
    mend = met.only_mend
    leave = f"write “leave {last} {one if left == 1 else many} unworked”"
    return Words(
        message=f"{met.where.capitalize()} ends with {number_of(left, name)} of {met.below} not worked into.",
        working=f"After its last step {number_of(left, name)} of {met.below} "
        f"{'is' if left == 1 else 'are'} left, and nothing says to leave {it}.",
        suggestion=mend_told(met, mend, "" if met.stated_at else f", or {leave}")
        if mend
        else Suggestion(f"Work into {it}, or {leave}.", None, "fill-in"),
        location=met.at_mend(mend) if mend and met.stated_at else None,
        related=related,
    )


RULE = fit_rule(__name__, __doc__, "error", words)
