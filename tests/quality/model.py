"""The second opinion: a pattern file worked by the little model, and the first things that contradict it."""

from dataclasses import dataclass, field

from loopleaf import pattern

from .little.bench import Bench, PieceDone, Wrong
from .little.cells import CannotSay, Misfit
from .little.finishing import placements
from .little.piece import work_piece
from .little.thread import yarn_and_turns


@dataclass
class Verdict:
    """What the little model says of a file.

    wrong: contradictions, by piece and round in the order of the work; only the first of a piece and size is
    looked for. cannot_say: a construct that the model doesn't hold, "" where it held all.
    """

    wrong: list[Wrong] = field(default_factory=list)
    pieces: list[PieceDone] = field(default_factory=list)
    cannot_say: str = ""

    @property
    def right(self) -> bool:
        return not self.wrong and not self.cannot_say


def judge(data: bytes, file: str = "pattern.yml") -> Verdict:
    """Works a whole file; never raises for what a file may hold."""
    source = pattern.load(data, file)
    verdict = Verdict()
    errors = [one for one in source.findings if one.severity == "error"]
    if source.pattern is None or errors:
        verdict.wrong.append(Wrong("", "", "reading", errors[0].message if errors else "no pattern"))
        return verdict
    try:
        bench = Bench(source.pattern)
        for name in source.pattern.pieces:
            verdict.pieces.append(work_piece(bench, name, verdict.wrong))
            yarn_and_turns(bench, name, verdict.wrong)
        placements(bench, verdict.wrong)
    except Misfit as misfit:
        verdict.wrong.append(Wrong("", "", misfit.what, misfit.why))
    except CannotSay as beyond:
        verdict.cannot_say = str(beyond)
    return verdict
