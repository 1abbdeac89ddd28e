"""The one slip that explains an error, in an author's words."""

from ..pattern import Suggestion
from .names import number_of
from .subject import Met
from .trials import Mend


def mend_told(met: Met, mend: Mend, otherwise: str = "") -> Suggestion:
    """What to write in place of the slip. otherwise: what else may be done."""
    stated = met.round is not None and met.round.plan.stated is not None
    bears_out = "the round comes out as its count says" if stated else "all is used"
    if met.round is not None and met.round.plan.word == "row":
        bears_out = bears_out.replace("round", "row")
    text = f"Write “{mend.words}” for “{_slip(met, mend)}”: "
    if mend.passes is not None:
        text += f"with {number_of(mend.passes, 'pass')} {bears_out}"
    else:
        text += f"with it {bears_out}"
    return Suggestion(f"{text}{otherwise}.", mend.words if stated else None, "likely")


def put_right(met: Met, mend: Mend) -> str:
    """`the repeat is worked 7 times`, `it is “inc” and not “dec”`: if the count is right."""
    if mend.passes is not None:
        return f"the repeat has {number_of(mend.passes, 'pass')}"
    return f"it is “{mend.words}” and not “{_slip(met, mend)}”"


def _slip(met: Met, mend: Mend) -> str:
    return met.round.plan.work[mend.start : mend.end] if met.round else ""
