"""Small rounds made by hand, for tests that need no pattern file."""

from collections.abc import Mapping

from loopleaf.fabric.worked import Made, PieceWork, Ring, RoundWork, Space, WorkedRound
from loopleaf.measure.gauge import Sample, Scale
from loopleaf.measure.made import Contents, contents
from loopleaf.pattern.rounds import RoundPlan


def scale(
    kind: str = "half", width_mm: float = 100 / 14, height_mm: float = 10.0, specials: Mapping[str, int] = {}
) -> Scale:
    return Scale({(kind, ""): Sample(width_mm, height_mm, 0.5 / 14, 0.05)}, specials)


def worked(*parts: tuple[str, int] | Space, round: int = 0, yarn: str = "A") -> WorkedRound:
    """`worked(("half", 8), Space(2, 0, "A"))`: so many counted stitches of a kind, and spaces, in order."""
    result = WorkedRound()
    number = 0
    for part in parts:
        if isinstance(part, Space):
            result.made.append(part)
            continue
        kind, amount = part
        for _ in range(amount):
            number += 1
            result.made.append(Made(kind, (), round, yarn, number=number))
    result.edge = list(result.made)
    result.count = number
    return result


def made(*parts: tuple[str, int] | Space, yarn: str = "A") -> Contents:
    return contents(worked(*parts, yarn=yarn))


def piece(*rounds: WorkedRound, ring_chains: int | None = None, name: str = "disc") -> PieceWork:
    start = [Ring("magic") if ring_chains is None else Ring("chain", ring_chains)]
    works = [
        RoundWork(RoundPlan(at, str(at), "round", "", (), at, ()), sizes=[one])
        for at, one in enumerate(rounds, start=1)
    ]
    return PieceWork(name, ("pieces", name), [list(start)], works)
