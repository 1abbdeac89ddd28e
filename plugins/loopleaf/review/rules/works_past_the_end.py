"""An instruction needs more places than the round or row below has left.

What: A step with a number (`hdc in next 3 sts`, `(sc in next st, inc) x 8`) goes beyond the last place that
it could be worked into.

Why it matters: The maker runs out of stitches before the instruction ends.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, (hdc in next st, 2 hdc in next st) x 5, join"}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, (hdc in next st, 2 hdc in next st) x 4, join", count: 12}

When to ignore: Never. In a spiral that goes past its marker on purpose, say so (`3 more sc, move marker`).
"""

from ...pattern import Location, Related, Suggestion
from ..mends import mend_told
from ..names import number_of
from ..rule import Words, fit_rule
from ..subject import Met
from ..trials import Mend


def words(met: Met) -> Words:
    needed, available = met.facts["needed"], met.facts["available"]
    if "shaping" in met.facts:
        return _other_way(met, needed, available)
    at = met.below_at
    left = f"{'only ' if available else ''}{available or 'none'} {'are' if available > 1 else 'is'} left"
    passes, done = met.facts.get("passes"), met.facts.get("done")
    repeat = met.facts.get("repeat_span")
    fit = f"Passes 1 to {done} fit" if done and done > 1 else "Pass 1 fits"
    before = f"{fit}; pass {done + 1} of {passes}" if done else "It"
    on_a_chain = met.facts.get("what") == "leaf"
    whole = "the chain just made" if on_a_chain else met.below
    mend = met.only_mend if met.stated_at else None
    room = Suggestion(f"There is room for {number_of(done, 'pass')}.", None, "fill-in") if done else None
    return Words(
        message=f"{met.quoted_at(repeat) if repeat else met.quoted} in {met.where} goes past the end of "
        "what is there.",
        working=f"{before} needs {number_of(needed, 'place')}, and {left} of {whole}.",
        suggestion=mend_told(met, mend) if mend else room,
        location=_where(met, mend),
        related=(Related(at, f"{met.where} is worked into this"),) if at and not on_a_chain else (),
    )


def _other_way(met: Met, asked: int, there: int) -> Words:
    """A row that is to be increased to fewer stitches than it is worked into, or decreased to more."""
    how, other, fewer = ("in", "de", "more") if met.facts["shaping"] == "inc" else ("de", "in", "fewer")
    stitches = number_of(there, "stitch")
    return Words(
        message=f"{met.quoted} in {met.where} can't come to {number_of(asked, 'stitch')} by {how}creasing.",
        working=f"It goes into {stitches}, and {how}creasing gives {fewer} than that.",
        suggestion=Suggestion(f"Write “{other}creasing”, or state another number.", None, "fill-in"),
    )


def _where(met: Met, mend: Mend | None) -> Location | None:
    """At the slip that alone explains it, else at the repeat."""
    if mend is not None:
        return met.at_mend(mend)
    repeat = met.facts.get("repeat_span")
    return met.subject.stretch(met.round, repeat) if repeat and met.round else None


RULE = fit_rule(__name__, __doc__, "error", words)
