"""A larger size is stated smaller than the one before it.

What: Sizes are listed from small to large. Finished sizes, the bodies they are to fit, and the yarn weighed
grow (or stay) from size to size, as the sizes are listed.

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

from ...measure.amounts import as_typed
from ...pattern import Finding, FinishedSize, Length, Lengths, Path, Suggestion, Weight
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
