"""The leaflet's table of yarn by piece: what goes into each, where several share a yarn."""

from collections.abc import Iterator
from dataclasses import dataclass

from ..measure import Band, Measured, YarnNeed, amounts
from .leaflet_parts import Table
from .leaflet_voice import Voice, sentence

_MATTERS = 0.05
"""From this share of a yarn on, a piece makes a difference to what is left over (chosen here)."""


@dataclass(frozen=True, slots=True)
class _Taken:
    """What all copies of a piece take of one yarn, one a size."""

    piece: str
    yarn: str
    grams: tuple[Band | None, ...]
    metres: tuple[Band | None, ...]


def yarn_by_piece(voice: Voice, measured: Measured) -> Iterator[Table]:
    """With one size by weight and by length; with several a column a size, by weight if that is known.

    None where no two pieces share a yarn so that it makes a difference, or where no amount is known.
    """
    rows = list(_taken(voice, measured))
    if not rows or not any(_is_shared(need) for size in measured.yarn for need in size):
        return
    sizes = voice.pattern.sizes if len(voice.pattern.sizes) > 1 else ()
    several = len({one.yarn for one in rows}) > 1
    units = [unit for unit in ("grams", "metres") if any(any(getattr(one, unit)) for one in rows)]
    head = [voice.words["piece"]]
    head += [voice.words["yarn"]] if several else []
    head += sizes or [voice.words[f"by_{unit}"] for unit in units]
    yield Table(
        "pieces",
        voice.words["yarn_pieces"],
        tuple(head),
        tuple(
            (
                _name(voice, one.piece),
                *((voice.yarn(one.yarn),) if several else ()),
                *(_by_size(one) if sizes else _by_unit(one, units)),
            )
            for one in rows
        ),
        voice.words["yarn_pieces_note"],
    )


def _taken(voice: Voice, measured: Measured) -> Iterator[_Taken]:
    for piece in voice.pattern.pieces:
        for at, need in enumerate(measured.yarn[0]):
            grams = tuple(size[at].grams_by_piece().get(piece) for size in measured.yarn)
            metres = tuple(size[at].metres_by_piece().get(piece) for size in measured.yarn)
            if any(grams) or any(metres):
                yield _Taken(piece, need.yarn, grams, metres)


def _is_shared(need: YarnNeed) -> bool:
    return sum(share >= _MATTERS for _, share in need.shares) > 1


def _name(voice: Voice, piece: str) -> str:
    """`Pouch`, `12 large leaves`."""
    made = voice.pattern.pieces[piece].make
    return voice.pieces(piece, made) if made > 1 else sentence(voice.title(piece))


def _by_unit(one: _Taken, units: list[str]) -> Iterator[str]:
    for unit in units:
        (band,) = getattr(one, unit)
        about = amounts.about_grams if unit == "grams" else amounts.about_metres
        yield about(band) if band is not None else "–"


def _by_size(one: _Taken) -> Iterator[str]:
    for grams, metres in zip(one.grams, one.metres, strict=True):
        if grams is not None:
            yield amounts.about_grams(grams)
        else:
            yield amounts.about_metres(metres) if metres is not None else "–"
