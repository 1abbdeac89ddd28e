"""A larger size is stated smaller than the one before it.

What: Finished sizes, the bodies they are to fit, and the yarn weighed grow (or stay) from size to size, as
the sizes are listed.

Why it matters: Two figures that changed places send one maker a garment that doesn't fit.

Wrong:

    sizes: [S, M, L]
    finished size: {around: "40 (48, 44) cm"}

Right:

    sizes: [S, M, L]
    finished size: {around: "40 (44, 48) cm"}

When to ignore: When the sizes aren't listed from small to large; list them so, and this is silent.
"""

from collections.abc import Iterator, Sequence

from ...measure.amounts import length, weight
from ...pattern import Finding, FinishedSize, Lengths, Path
from ..rule import Words, rule, told
from ..subject import Subject

Row = tuple[Path, str, Sequence[float | None], bool]
"""Where it stands, what it is, one value a size in mm or grams, whether it is a weight."""


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
    for path, what, values, is_weight in _stated(subject):
        for size in range(1, len(values)):
            before, here = values[size - 1], values[size]
            if before is None or here is None or here >= before:
                continue
            said = weight if is_weight else length
            words = Words(
                message=f"{what} is {said(here)} in size {subject.sizes[size]}, and {said(before)} in size "
                f"{subject.sizes[size - 1]}, which is listed before it.",
            )
            yield told(__name__, "warning", subject, subject.source.locate(path), words)
            break


def _stated(subject: Subject) -> Iterator[Row]:
    pattern = subject.pattern
    yield from _finished(("finished size",), pattern.finished_size, "", len(subject.sizes))
    yield from _bodies(("to fit",), pattern.to_fit, len(subject.sizes))
    for name, piece in pattern.pieces.items():
        at = ("pieces", name)
        yield from _finished((*at, "finished size"), piece.finished_size, f" of “{name}”", len(subject.sizes))
        yield from _bodies((*at, "to fit"), piece.to_fit, len(subject.sizes))
    for letter, yarn in pattern.materials.yarns.items():
        grams = [amount.grams if hasattr(amount, "grams") else None for amount in yarn.weighed]
        yield ("materials", "yarns", letter, "weighed"), f"Yarn {letter}", grams, True


def _finished(path: Path, size: FinishedSize | None, of: str, sizes: int) -> Iterator[Row]:
    for name, said in _WORDS.items():
        lengths: Lengths | None = getattr(size, name, None)
        if lengths is not None:
            yield (*path, name), f"The {said}{of}", _values(lengths, sizes), False


def _bodies(path: Path, bodies: dict[str, Lengths | str], sizes: int) -> Iterator[Row]:
    for name, lengths in bodies.items():
        if isinstance(lengths, Lengths):
            yield (
                (*path, name) if name else path,
                f"The {name or 'body'} to fit",
                _values(lengths, sizes),
                False,
            )


def _values(lengths: Lengths, sizes: int) -> list[float | None]:
    found = (lengths.of(size) for size in range(sizes))
    return [one.mm if one is not None else None for one in found]


RULE = rule(__name__, __doc__, "warning", find)
