"""The kinds of drawing that can be asked for by name."""

from collections.abc import Mapping
from typing import Literal

from ..fabric import PatternWork
from ..measure import Measured
from ..trade import Terms
from .diagram import diagram
from .picture import first_picture, piece_picture
from .profile_figure import profile
from .schematic import schematic
from .sketch import stacked

Kind = Literal["chart", "schematic", "profile", "picture"]

NOTHING: Mapping[Kind, str] = {
    "chart": "it has no rounds that could be worked",
    "schematic": "it has no rounds that could be worked, or no gauge to measure by",
    "profile": "nothing in it is worked in rounds",
    "picture": "it has no rounds that could be worked",
}
"""Why there may be nothing to draw of a kind."""


def drawing(
    work: PatternWork, kind: Kind, piece: str, terms: Terms, left_handed: bool, measured: Measured | None
) -> str:
    """A drawing of one piece, or of all where none is named (the picture: of the first one, finished).

    terms: of the words in a chart. "" where there is nothing to draw.
    """
    if kind == "chart":
        return diagram(work, piece, terms, left_handed, measured)
    if kind == "picture":
        whole = piece_picture(work, piece, measured, left_handed) if piece else None
        return first_picture(work, measured, left_handed) if whole is None else whole
    draw = schematic if kind == "schematic" else profile
    names = [piece] if piece else [one.name for one in work.pieces]
    found = [
        (work.pattern.pieces[name].title or name, figure)
        for name in names
        if (figure := draw(work, name, measured, left_handed)) is not None
    ]
    together = stacked(found, work.pattern.title)
    return together.svg if together is not None else ""
