"""Where pieces are sewn on and cords threaded: the places must be there."""

from .bench import Bench, Wrong
from .cells import Misfit
from .rounds import RoundDone, last_made


def placements(bench: Bench, wrong: list[Wrong]) -> None:
    """Sewing and threading that name places past an edge, rounds and pieces that aren't there."""
    for name, piece in bench.pattern.pieces.items():
        numbers = [run.last or run.first for entry in piece.entries if (run := entry.run)]
        for run in piece.lies_flat:
            if numbers and (run.last or run.first) > max(numbers):
                wrong.append(Wrong(name, "", "numbers", f"there is no round {run.last} to lie flat"))
    for step in bench.pattern.finishing:
        thread, sew, out = step.thread, step.sew, step.lay_out
        try:
            if thread is not None:
                _known(bench, thread.piece)
                there = _round(bench, thread.through, thread.round or thread.row)
                number = sum(cell.top for cell in there.made) if there else 0
                if there and any(not 1 <= gap <= number for gap in thread.from_):
                    raise Misfit("numbers", f"there are {number} posts to thread past")
                passed = thread.under + thread.over
                if there and passed and number % passed:
                    raise Misfit("fit", f"{number} posts don't go into passes of {passed}")
            if sew is not None:
                _known(bench, sew.piece)
                there = _round(bench, sew.to, sew.round or sew.row)
                number = sum(cell.top for cell in there.made) if there else 0
                for run in sew.stitches:
                    last = run.last if run.last is not None else run.first
                    if there and not 1 <= run.first <= last <= number:
                        raise Misfit("numbers", f"there are {number} stitches to sew to")
            if out is not None:
                _known(bench, out.piece)
                made = bench.pattern.pieces[out.piece].make
                if out.across * out.down != made:
                    raise Misfit("numbers", f"{out.across} by {out.down} of {made}")
        except Misfit as misfit:
            wrong.append(Wrong("", "", misfit.what, misfit.why))


def _known(bench: Bench, piece: str) -> None:
    if piece and piece not in bench.pattern.pieces:
        raise Misfit("place", f"no piece {piece}")


def _round(bench: Bench, piece: str, number: int | None) -> RoundDone | None:
    """The round that is meant; None where the piece stopped short of it at a contradiction of its own."""
    _known(bench, piece)
    done = bench.done.get(piece)
    rounds = done.sizes[0] if done and done.sizes else []
    if number is None:
        return last_made(rounds) if rounds else None
    found = [one for one in rounds if one.label == str(number)]
    if found:
        return found[-1]
    numbers = [run.last or run.first for entry in bench.pattern.pieces[piece].entries if (run := entry.run)]
    if numbers and number > max(numbers):
        raise Misfit("place", f"{piece} has no round {number}")
    return None
