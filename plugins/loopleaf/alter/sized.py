"""A pattern that is written in several sizes: the one to alter, chosen by name or by how near it comes."""

from ..measure.amounts import centimetres
from ..review import Checked
from .around import Fitted, fit_around, way_around
from .draft import CannotAlter
from .only import only, size_named


def in_size(checked: Checked, name: str) -> Checked:
    """The pattern in the size of that name alone. Raises CannotAlter where it has none."""
    pattern = checked.source.pattern
    if pattern is None:
        raise CannotAlter("The pattern can't be worked as it stands.")
    return only(checked, size_named(pattern, name))


def fit_sized(checked: Checked, wanted_mm: float, piece: str = "") -> tuple[Checked, Fitted]:
    """The size that comes nearest to so many millimetres around, alone, and the nearest pattern made of it.

    Raises CannotAlter where none can be altered so far, with what each size is around.
    """
    pattern, measured = checked.source.pattern, checked.measured
    if pattern is None or measured is None:
        raise CannotAlter("The pattern can't be worked as it stands.")
    name = piece or next(iter(pattern.pieces))
    ways = {
        size: way_mm
        for size in range(pattern.size_count)
        if (way_mm := way_around(checked, name, size)) is not None
    }
    if not ways:
        raise CannotAlter(f"Without a gauge the way around “{name}” can't be told.")
    alone = only(checked, min(ways, key=lambda size: abs(ways[size] - wanted_mm)))
    try:
        return alone, fit_around(alone, alone, wanted_mm, piece)
    except CannotAlter as no:
        told = ", ".join(f"{pattern.sizes[size]} {centimetres(mm)}" for size, mm in ways.items())
        raise CannotAlter(f"Its sizes are {told}; it was tried with the nearest.", *no.reasons) from None
