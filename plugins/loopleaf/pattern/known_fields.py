"""Which fields there are where, and which of them an author may have meant."""

import difflib
import re
import types
import typing
from collections.abc import Iterator
from typing import Any, get_args, get_origin

from .entries import Entry
from .materials import Gauge, Materials, Yarn
from .model import Pattern, SpecialStitch, Variation
from .part import Part
from .pieces import Piece

PARTS: dict[type[Part], str] = {
    Pattern: "of a pattern",
    Materials: "of `materials`",
    Yarn: "of a yarn",
    Gauge: "of `gauge`",
    Piece: "of a piece",
    Entry: "of a round or row",
    SpecialStitch: "of a special stitch",
    Variation: "of a variation",
}
"""The parts that are spoken of by name, and how."""

# Other words that authors use for a field of ours.
_OTHER_WORDS = {
    "tension": "gauge", "author": "designer", "by": "designer", "name": "title", "description": "summary",
    "difficulty": "level", "skill": "level", "hooks": "hook", "instructions": "work", "instruction": "work",
    "pattern": "work", "stitches": "count", "sts": "count", "total": "count", "abbreviation": "short",
    "rnd": "round", "rnds": "rounds", "parts": "pieces", "assembly": "finishing", "size": "finished size",
    "dimensions": "finished size", "color": "colour", "fiber": "fibre", "license": "licence",
    "meters": "metres", "photo": "picture", "photos": "pictures", "image": "picture", "images": "pictures",
    "cast on": "start", "foundation": "start", "supplies": "notions",
}  # fmt: skip


def _parts(annotation: Any) -> Iterator[Any]:
    """An annotation's alternatives with `Annotated`, unions and `None` taken off."""
    origin = get_origin(annotation)
    if origin is typing.Annotated:
        yield from _parts(get_args(annotation)[0])
    elif origin in (typing.Union, types.UnionType):
        for one in get_args(annotation):
            yield from _parts(one)
    else:
        yield annotation


def part_at(path: tuple[str | int, ...]) -> type[Part] | None:
    """The part of the model that a path leads to; None where it leads to a single value or nowhere."""
    here: list[Any] = [Pattern]
    for step in path:
        below: list[Any] = []
        for one in here:
            if isinstance(one, type) and issubclass(one, Part):
                for info in one.model_fields.values():
                    if info.alias == step:
                        below += _parts(info.annotation)
            elif get_origin(one) in (tuple, dict):
                inner = [arg for arg in get_args(one) if arg is not Ellipsis][-1]
                below += _parts(inner)
        here = below
    return next((one for one in here if isinstance(one, type) and issubclass(one, Part)), None)


def fields_of(part: type[Part]) -> list[str]:
    """A part's fields as the file names them, in their order."""
    return [str(info.alias) for info in part.model_fields.values()]


def fields_at(path: tuple[str | int, ...]) -> list[str]:
    """The fields known at a path."""
    part = part_at(path)
    return fields_of(part) if part else []


def nearest(name: str, known: list[str]) -> list[str]:
    """Up to four known fields that resemble a name or mean the same, nearest first."""
    lower = " ".join(re.split(r"[\s_-]+", name.strip().lower()))
    near = difflib.get_close_matches(lower, known, n=4, cutoff=0.75)
    near = near or difflib.get_close_matches(lower, known, n=1, cutoff=0.6)
    other = _OTHER_WORDS.get(lower)
    if other in known and lower not in known:
        return [other, *(one for one in near if one != other)]
    return near
