"""A leaflet's pictures: the author's, or what is drawn from the stitches where there are none."""

import re
from dataclasses import replace
from posixpath import dirname, join, normpath

from ..fabric import PatternWork
from ..measure import Measured
from ..pattern import Picture as OwnPicture
from .leaflet_parts import Picture
from .leaflet_voice import Voice
from .picture_told import picture_told


def folder_of(file: str) -> str:
    """The folder of a pattern's file, below the collection's."""
    return dirname(file)


def author_picture(voice: Voice, picture: OwnPicture | None, folder: str) -> Picture | None:
    """A picture of the author's, by its path below the collection's folder."""
    if picture is None:
        return None
    file = normpath(join(folder, picture.file))
    return Picture(voice.prose(picture.alt), file=file, credit=picture.credit)


def cover_picture(voice: Voice, work: PatternWork, measured: Measured, drawing: str, folder: str) -> Picture:
    """The author's first picture, or the first piece as drawn from its stitches (SVG text, in mm)."""
    own = author_picture(voice, next(iter(voice.pattern.pictures), None), folder)
    if own is not None:
        return replace(own, across_mm=_stated_mm(measured))
    return Picture(picture_told(voice, work), svg=drawing, across_mm=_drawn_mm(drawing))


def more_pictures(voice: Voice, folder: str) -> tuple[Picture, ...]:
    """The author's pictures after the first."""
    found = (author_picture(voice, one, folder) for one in voice.pattern.pictures[1:])
    return tuple(one for one in found if one is not None)


def _drawn_mm(drawing: str) -> float:
    """The larger side of a drawing in mm."""
    box = re.search(r'viewBox="[-\d.]+ [-\d.]+ ([\d.]+) ([\d.]+)"', drawing)
    return max(float(box[1]), float(box[2])) if box else 0.0


def _stated_mm(measured: Measured) -> float:
    """The largest side that the author states, in the first size; 0 where nothing is stated."""
    return max((one.mm(0) or 0.0 for one in measured.stated if one.what != "around"), default=0.0)
