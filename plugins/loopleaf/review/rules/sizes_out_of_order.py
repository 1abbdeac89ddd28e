"""A larger size is stated smaller than the one before it.

What: Sizes are listed from small to large. Finished sizes, the bodies they are to fit, and the yarn weighed
grow (or stay) from size to size, as the sizes are listed. Where no width is stated, the widest round or row
that the stitches make does.

Why it matters: Two figures that changed places send one maker a garment that doesn't fit.

Wrong:

    sizes: [S, M, L]
    finished size: {around: "40 (48, 44) cm"}

Right:

    sizes: [S, M, L]
    finished size: {around: "40 (44, 48) cm"}

When to ignore: When a larger size is meant to be smaller in this one measure.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from ...fabric import PieceWork, RoundWork
from ...measure.amounts import as_typed, length
from ...pattern import Finding, FinishedSize, Length, Lengths, Location, Path, Suggestion, Weight
from ..rule import Words, rule, told
from ..size_names import first_out_of_order
from ..subject import Subject

Row = tuple[Path, str, Sequence[Length | Weight | None]]
"""Where it stands, what it is, one value a size."""


_WORDS = {
    "around": "way around",
    "across": "way across",
    "width": "width",
    "length": "length",
    "height": "height",
}


def find(subject: Subject) -> Iterator[Finding]:
    if len(subject.sizes) < 2:
        return
    listed = _names(subject)
    if listed is not None:
        yield listed
        return
    stated = list(_of_stated(subject))
    yield from stated or _of_worked(subject)


def _of_stated(subject: Subject) -> Iterator[Finding]:
    for path, what, values in _stated(subject):
        for size in range(1, len(values)):
            before, here = values[size - 1], values[size]
            if before is None or here is None or _amount(here) >= _amount(before):
                continue
            words = Words(
                message=f"{what} is {_said(here)} in size {subject.sizes[size]}, and {_said(before)} in size "
                f"{subject.sizes[size - 1]}, which is listed before it.",
            )
            yield told(__name__, "warning", subject, subject.source.locate(path), words)
            break


def _of_worked(subject: Subject) -> Iterator[Finding]:
    """The first piece that gets narrower from one size to the next; once, as one slip makes many narrower.

    Heights aren't held: a sleeve set in where a wider body ends may be shorter in a larger size.
    """
    for piece in subject.work.pieces:
        if piece.troubles or any(round.troubles or not round.sound for round in piece.rounds):
            continue
        if _width_is_stated(subject, piece.name):
            continue
        for before, here in pairwise(range(len(subject.sizes))):
            was, now = _widest(piece, before), _widest(piece, here)
            if was is not None and now is not None and now[1] < was[1]:
                yield _narrower(subject, piece, (before, *was), (here, *now))
                return


def _width_is_stated(subject: Subject, piece: str) -> bool:
    """Then its author's own figures are held in order, and against the stitches (`size-differs`)."""
    pattern = subject.pattern
    own = [pattern.pieces[piece].finished_size]
    if piece == next(iter(pattern.pieces)):
        own.append(pattern.finished_size)
    return any(getattr(one, what, None) is not None for one in own for what in ("around", "across", "width"))


def _widest(piece: PieceWork, size: int) -> tuple[RoundWork, int] | None:
    """The round or row with most stitches, and how many; None where the size works none."""
    found = [(round, made.count) for round in piece.rounds if (made := round.sizes[size]) is not None]
    return max(found, key=lambda one: one[1], default=None)


def _narrower(
    subject: Subject, piece: PieceWork, was: tuple[int, RoundWork, int], now: tuple[int, RoundWork, int]
) -> Finding:
    """was, now: size, its widest round, the stitches of that."""
    title = subject.pattern.pieces[piece.name].title or piece.name
    said = []
    for size, round, stitches in (now, was):
        mm = _mm(subject, piece.name, size, round.plan.label)
        about = f", about {length(mm)}" if mm is not None else ""
        said.append(f"{stitches} stitches{about}")
    before, here = subject.sizes[was[0]], subject.sizes[now[0]]
    word = now[1].plan.word
    words = Words(
        message=f"“{title}” is narrower in size {here} than in size {before}, which is listed before it.",
        working=f"In size {here} its widest {word} holds {said[0]}; in size {before} {said[1]}.",
    )
    return told(__name__, "warning", subject, _where(subject, piece, was[0], now[0]), words, piece.name)


def _mm(subject: Subject, piece: str, size: int, label: str) -> float | None:
    found = subject.measured.piece(piece)
    rounds = found.known_rounds(size) if found is not None and found.rounds else []
    return next((one.length_mm for one in rounds if one.label == label), None)


def _where(subject: Subject, piece: PieceWork, before: int, here: int) -> Location:
    """The chain that it begins on, where that shrinks; else the first round that does."""
    start = subject.pattern.pieces[piece.name].start
    if start is not None and start.chain is not None:
        was, now = start.chain.of(before), start.chain.of(here)
        if was and now and now < was:
            return subject.source.locate((*piece.path, "start"))
    for round in piece.rounds:
        made, other = round.sizes[before], round.sizes[here]
        if made is not None and other is not None and other.count < made.count:
            return subject.stretch(round)
    return subject.source.locate(piece.path)


def _names(subject: Subject) -> Finding | None:
    """The names themselves out of order: what the values are doesn't say more then."""
    astray = first_out_of_order(subject.sizes)
    if astray is None:
        return None
    here, before = subject.sizes[astray], subject.sizes[astray - 1]
    words = Words(
        message=f"Size {here} is listed after size {before}, which is larger.",
        working="In print the smallest size stands first, and the others follow in brackets.",
        suggestion=Suggestion(
            "List the sizes from small to large, and each list of numbers with them.", None, "fill-in"
        ),
    )
    return told(__name__, "warning", subject, subject.source.locate(("sizes", astray)), words)


def _stated(subject: Subject) -> Iterator[Row]:
    pattern = subject.pattern
    yield from _finished(("finished size",), pattern.finished_size, "", len(subject.sizes))
    yield from _bodies(("to fit",), pattern.to_fit, len(subject.sizes))
    for name, piece in pattern.pieces.items():
        at = ("pieces", name)
        yield from _finished((*at, "finished size"), piece.finished_size, f" of “{name}”", len(subject.sizes))
        yield from _bodies((*at, "to fit"), piece.to_fit, len(subject.sizes))
    for letter, yarn in pattern.materials.yarns.items():
        weights = [amount if isinstance(amount, Weight) else None for amount in yarn.weighed]
        yield ("materials", "yarns", letter, "weighed"), f"Yarn {letter}", weights


def _finished(path: Path, size: FinishedSize | None, of: str, sizes: int) -> Iterator[Row]:
    for name, said in _WORDS.items():
        lengths: Lengths | None = getattr(size, name, None)
        if lengths is not None:
            yield (*path, name), f"The {said}{of}", _values(lengths, sizes)


def _bodies(path: Path, bodies: dict[str, Lengths | str], sizes: int) -> Iterator[Row]:
    for name, lengths in bodies.items():
        if isinstance(lengths, Lengths):
            yield (
                (*path, name) if name else path,
                f"The {name or 'body'} to fit",
                _values(lengths, sizes),
            )


def _values(lengths: Lengths, sizes: int) -> list[Length | Weight | None]:
    return [lengths.of(size) for size in range(sizes)]


def _amount(one: Length | Weight) -> float:
    return one.grams if isinstance(one, Weight) else one.mm


def _said(one: Length | Weight) -> str:
    return str(one) if isinstance(one, Weight) else as_typed(one)


RULE = rule(__name__, __doc__, "warning", find)
