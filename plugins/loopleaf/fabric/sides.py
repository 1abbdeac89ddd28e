"""Which side of a piece faces: its turns from round to round, and what the pattern says of them."""

from collections.abc import Sequence

from ..notation.tree import Line, Span, Step, Turn
from . import survey
from .later import targets_of
from .round import Attempt
from .thread import Thread, Trust
from .troubles import add
from .worked import RoundWork, Trouble


class Sides:
    """The side that the next round may be worked on: both, where a mistake leaves it open.

    turned: the work was turned after the last round. assumed: no round has named its side yet.
    """

    def __init__(self, worked: str, threads: Sequence[Thread]) -> None:
        self.worked = worked
        self.threads = threads
        self.sides: set[str] = set()
        self.other_sides: set[str] = set()
        self.assumed = False
        self.left_unturned: tuple[RoundWork, bool] | None = None
        self.turned = False
        self.ended_turned = False
        self.unturned: Trouble | None = None

    def lose_track(self) -> None:
        """Rounds are missing: either side may face."""
        self.sides = {"RS", "WS"} if self.sides else set()

    def pass_by(self) -> None:
        """A round that can't be read: rows are taken to turn at its end."""
        self.turned = self.worked == "rows"

    def begin(self, result: RoundWork, done: Sequence[RoundWork]) -> None:
        """Settle the round's side, and whether it was turned to; hold what is said against it."""
        self._left_unturned(result)
        self._begin_again(result, done)
        turns_first = result.line is not None and survey.turns_first(result.line.steps) is not None
        result.turned = self.turned or turns_first
        said, span = _said(result)
        if self.worked == "rows, right side only":
            self.sides = {"RS"}
        elif not self.sides:
            self.sides = {said or "RS"}
            self.assumed = not said
        elif result.turned:
            self.sides, self.other_sides = _turned(self.sides), _turned(self.other_sides)
        result.side = min(self.sides)
        if said and said not in self.sides and self.assumed and self.worked == "rows":
            self._call_the_first(done)
        elif said and said not in self.sides:
            if said not in self.other_sides:
                facts = {"said": said, "worked": result.side}
                result.troubles.append(Trouble("side-differs", span, facts))
            self.other_sides = self.sides
        if said:
            self.sides = {said}
            result.side = said
            self.assumed = False

    def _call_the_first(self, done: Sequence[RoundWork]) -> None:
        """`Row 2 (RS)` behind a row that names no side: that was a wrong-side row, and so on back."""
        for earlier in done:
            earlier.side = min(_turned({earlier.side}))

    def _begin_again(self, result: RoundWork, done: Sequence[RoundWork]) -> None:
        """A row whose yarn is joined anew on the side that the last row was worked on begins where that one
        did; one that takes up what an earlier row left goes that row's way."""
        if self.worked != "rows" or not done or result.line is None:
            return
        same = (_said(result)[0] or self._left_on(result.line, done)) == done[-1].side
        if same and survey.brings_yarn(result.line.steps) and all(one.fastened for one in self.threads):
            self.turned = False
            for thread in self.threads:
                thread.places = thread.places[::-1]
                thread.further = [edge[::-1] for edge in thread.further]

    def _left_on(self, line: Line, done: Sequence[RoundWork]) -> str:
        """The side of the row that left the stitches which a line takes up; "" for none."""
        targets = list(targets_of(line))
        left = [place for way in self.threads[0].unworked for place in way]
        if left and any(target.unworked for target in targets):
            after = left[0].round + 1
            return done[after].side if 0 < after < len(done) else ""
        below = next((target.round for target in targets if target.round), 0)
        return next((one.side for one in done if below and one.plan.number == below + 1), "")

    def end(self, result: RoundWork, attempt: Attempt, steps: tuple[Step, ...], last: bool) -> None:
        """The turn at the round's end: one that rows need, or that nothing else expects."""
        hand = attempt.hand
        turned = hand.turned or (attempt.stuck and survey.turns_at_its_end(steps))
        if self.worked == "rows":
            first = survey.turns_first(steps)
            if first is not None and self.ended_turned:
                add(result, Trouble("turn-not-expected", first.span))
            if first is not None and hand.numbered and hand.turned_after < hand.numbered:
                turned = False
            self.ended_turned = turned
            self.turned = True
            ended = last or hand.fastened or (attempt.stuck and survey.fastens_off(steps))
            astray = any(trouble.rule == "turn-not-expected" for trouble in result.troubles)
            if not (astray or turned or ended):
                kinds = [getattr(place, "kind", "") for place in attempt.worked.edge]
                matters = kinds != kinds[::-1]
                self.left_unturned = (result, matters)
            return
        self.turned = turned and self.worked == "joined rounds"
        if turned and self.worked in ("spiral rounds", "rows, right side only"):
            result.troubles.append(Trouble("turn-not-expected", None))

    def _left_unturned(self, result: RoundWork) -> None:
        """No turn is right before a row that goes back from left to right, and before one along another edge;
        before any other it is missing."""
        if self.left_unturned is None:
            return
        (before, matters), self.left_unturned = self.left_unturned, None
        told = before.line is not None and any(
            isinstance(step, Turn) and not step.turns for step in before.line.steps
        )
        if survey.goes_back_unturned(result.line.steps) if result.line is not None else told:
            self.turned = False
        else:
            self._turn_missing(before, matters)

    def _turn_missing(self, result: RoundWork, matters: bool) -> None:
        """Said once a piece, however many rows lack their turn."""
        for thread in self.threads:
            thread.trust = Trust.NOTHING
        if self.unturned is None:
            self.unturned = Trouble("turn-missing", None, {"matters": matters, "others": []})
            result.troubles.append(self.unturned)
        else:
            self.unturned.facts["others"].append(result.plan.label)


def _said(result: RoundWork) -> tuple[str, Span | None]:
    """The side that the round is said to be worked on, in its field or its line, and the line's words."""
    if result.plan.side or result.line is None:
        return result.plan.side or "", None
    return survey.facing(result.line.steps)


def _turned(sides: set[str]) -> set[str]:
    return {"WS" if side == "RS" else "RS" for side in sides}
