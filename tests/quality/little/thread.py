"""What a line says of yarn, turns and sides, read beside the stitches."""

from collections.abc import Iterator, Sequence

from loopleaf import pattern
from loopleaf.notation.tree import (
    Amount,
    Chain,
    FastenOff,
    Group,
    JoinYarn,
    Line,
    Repeat,
    Skip,
    Step,
    Stitch,
    Turn,
    Work,
    Yarn,
)

from .bench import Bench, Wrong
from .cells import Misfit
from .sides import OTHER, facing, goes_backwards, joins_yarn, stays_unturned


def yarn_and_turns(bench: Bench, name: str, wrong: list[Wrong]) -> None:
    """Yarns that aren't listed or joined, rows that don't turn, sides that can't be, numbers one a size."""
    piece = bench.pattern.pieces[name]
    plans, _ = pattern.set_out(bench.pattern, name)
    seen: set[int] = set()
    thread = _Thread(bench, piece)
    for index, plan in enumerate(plans):
        try:
            line = bench.read(plan.work, plan.n)
        except Misfit:
            return  # said where the round is worked
        try:
            for amount in amounts(line.steps):
                bench.one_a_size(len(amount.sizes))
            if plan.number not in seen:
                after = plans[index + 1 :]
                turns_next = bool(after) and _needs_no_turn(bench, line, after[0])
                thread.follow(line, plan.side, plan.yarn, not after or turns_next)
            seen.add(plan.number)
        except Misfit as misfit:
            wrong.append(Wrong(name, plan.label, misfit.what, misfit.why))
            return


class _Thread:
    """The yarn on the hook and the side that faces, from round to round."""

    def __init__(self, bench: Bench, piece: pattern.Piece) -> None:
        yarns = bench.pattern.materials.yarns
        self.names = {*yarns, *(yarn.name for yarn in yarns.values() if yarn.name)}
        self.worked = piece.worked
        self.yarn = piece.yarn or (next(iter(yarns)) if len(yarns) == 1 else "")
        self.listed(piece.yarn)
        self.taken_up = {self.yarn}
        self.begun_on = piece.start is not None and piece.start.kind == "edge"
        self.off = False
        self.side = ""
        self.turned_before = False

    def listed(self, yarn: str) -> None:
        if yarn and self.names and yarn not in self.names:
            raise Misfit("yarn", f"yarn {yarn} is not listed")

    def follow(self, line: Line, side: str, yarn: str, last: bool) -> None:
        side = facing(line, side)
        anew = self.off and joins_yarn(line)
        if side and self.side and side != self.side and not anew:
            raise Misfit("turn", f"{side} can't face here")
        self.side = side or self.side
        if yarn:
            self.listed(yarn)
            self.yarn, self.off = yarn, False
            self.taken_up.add(yarn)
        turned, ended, begun, turned_first = False, False, False, False
        for step in flat(line.steps):
            match step:
                case Yarn() | JoinYarn():
                    self.listed(step.yarn)
                    self.yarn = step.yarn or self.yarn
                    self.taken_up.add(self.yarn)
                    if not (isinstance(step, Yarn) and step.how == "carrying"):
                        self.off = False
                case FastenOff():
                    self.listed(step.yarn)
                    if step.yarn and step.yarn not in self.taken_up and not self.begun_on:
                        raise Misfit("yarn", f"{step.yarn} was never taken up")
                    if self.off and len(line.steps) == 1:
                        raise Misfit("yarn", "the yarn was fastened off before")
                    if step.yarn in ("", self.yarn):
                        self.off = ended = True
                case Turn():
                    turned = step.turns
                    turned_first = turned_first or (turned and not begun)
                case Work() | Chain():
                    if turned and begun and self.worked == "rows" and isinstance(step, Work):
                        raise Misfit("turn", "stitches follow the row's turn")
                    begun = begun or isinstance(step, Work)
                    turned = turned and not begun
                    if self.off and self.worked != "rows, right side only":
                        raise Misfit("yarn", "the yarn was fastened off and none is joined")
        if self.worked == "rows":
            if not last and not turned and not ended:
                raise Misfit("turn", "the row isn't turned")
            if turned_first and self.turned_before:
                raise Misfit("turn", "the row is turned twice")
            self.turned_before = turned and begun
        if turned and self.worked in ("rows, right side only", "spiral rounds"):
            raise Misfit("turn", f"{self.worked} are never turned")
        if turned or (self.worked == "rows" and ended):
            self.side = OTHER[self.side]


def _needs_no_turn(bench: Bench, line: Line, plan: pattern.RoundPlan) -> bool:
    """Whether the next row says `turn` before its first stitch (print does either), or goes back with reverse
    stitches along a row that says `do not turn`.
    """
    try:
        after = bench.read(plan.work, plan.n)
    except Misfit:
        return False
    if stays_unturned(line) and goes_backwards(after):
        return True
    for step in after.steps:
        if isinstance(step, Turn):
            return step.turns
        if not isinstance(step, Chain | Yarn | FastenOff):
            return False
    return False


def flat(steps: Sequence[Step]) -> Iterator[Step]:
    """Every step, those of brackets too, in the order of print."""
    for step in steps:
        match step:
            case Group():
                yield from flat(step.steps)
                yield Work(Stitch("slip"))
            case Repeat():
                yield from flat(step.steps)
                yield from flat(step.ending)
            case _:
                yield step


def amounts(steps: Sequence[Step]) -> Iterator[Amount]:
    """Every number of a line that may differ from size to size."""
    for step in steps:
        match step:
            case Work():
                yield step.each
                yield from _of_places(step.places)
            case Chain():
                yield step.length
            case Group():
                yield from _of_places(step.places)
                yield from amounts(step.steps)
            case Repeat():
                if step.times is not None:
                    yield step.times
                if step.until is not None:
                    yield step.until.count
                yield from amounts(step.steps)
                yield from amounts(step.ending)
            case Skip():
                yield step.count


def _of_places(places: Sequence[object]) -> Iterator[Amount]:
    for place in places:
        count = getattr(place, "count", None)
        if isinstance(count, Amount):
            yield count
        until = getattr(place, "until", None)
        if until is not None:
            yield until.count
