"""A cord can't be threaded as written, or not evenly.

What: The cord goes under so many posts and over so many, gap by gap, all round. Its two ends must come out
on the same face to be knotted; the passes should be alike, and a second cord should have gaps of its own
face.

Why it matters: A drawstring whose ends come out on opposite faces can't be drawn.

Wrong:

    turning chains: {hdc: does not count}
    rounds:
      - {round: 1, work: "ch 1, 9 hdc in ring, join", count: 9}
    finishing:
      - thread: {piece: cord, through: piece, round: 1, under: 1, over: 1}
    pieces:
      cord: {title: Cord, yarn: A, worked: chain, length: 60 cm}

Right:

    turning chains: {hdc: does not count}
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
    finishing:
      - thread: {piece: cord, through: piece, round: 1, under: 1, over: 1}
    pieces:
      cord: {title: Cord, yarn: A, worked: chain, length: 60 cm}

When to ignore: A last pass that is longer or shorter by one post only shows as a warning; keep it if you
like the look.
"""

from collections.abc import Iterator

from ...fabric import RoundWork
from ...pattern import Finding, Suggestion, Thread
from ..names import number_of
from ..placing import posts, round_numbered
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    for number, step in enumerate(subject.pattern.finishing):
        thread = step.thread
        model = subject.pattern.pieces.get(thread.through) if thread else None
        work = subject.work.piece(thread.through) if thread else None
        if thread is None or model is None or work is None or not model.worked.endswith("rounds"):
            continue
        round = round_numbered(work, thread.round or thread.row)
        words = _words(thread, round) if round and round.line else None
        if words:
            at = subject.source.locate(("finishing", number, "thread"))
            yield told(__name__, "error", subject, at, words, thread.piece)


def _words(thread: Thread, round: RoundWork) -> Words | None:
    """What doesn't come out even, in the first size that shows it; the worst first."""
    each = thread.under + thread.over
    counts = [posts(round, size) for size, worked in enumerate(round.sizes) if worked]
    where = f"{round.plan.word} {round.plan.label}"
    for there in counts:
        left = there % each
        if left and left <= thread.under:
            return Words(
                message=f"The two ends of “{thread.piece}” come out on opposite faces of {where}.",
                working=f"{_sum(there, thread, left)} The last pass goes under, and its end stays inside.",
                suggestion=_suggestion(there, each),
            )
    for there in counts:
        left = there % each
        if left:
            return Words(
                message=f"The last pass of “{thread.piece}” through {where} is shorter than the others.",
                working=f"{_sum(there, thread, left)} The last pass goes over {left - thread.under}, not "
                f"{thread.over}.",
                suggestion=_suggestion(there, each),
                severity="warning",
            )
    for start in thread.from_[1:]:
        apart = abs(start - thread.from_[0])
        if apart % each:
            return Words(
                message=f"The cord from stitch {start} takes the same gaps of {where} on the other face.",
                working=f"It begins {number_of(apart, 'post')} from the first cord; under {thread.under} and "
                f"over {thread.over} comes again every {each}, and {apart} ÷ {each} leaves {apart % each}.",
                severity="warning",
            )
    return None


def _sum(there: int, thread: Thread, left: int) -> str:
    each = thread.under + thread.over
    return (
        f"{there} posts; under {thread.under} and over {thread.over} passes {each}: "
        f"{there // each} × {each} = {there - left}, which leaves {left}."
    )


def _suggestion(there: int, each: int) -> Suggestion:
    fits = [str(number) for number in (there - there % each, there - there % each + each) if number]
    return Suggestion(f"A round of {' or '.join(fits)} stitches would come out even.", None, "fill-in")


RULE = rule(__name__, __doc__, "error", find, of_sound_work=True)
