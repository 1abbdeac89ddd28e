"""A leaflet's pictures: the author's, or what is drawn from the stitches where there are none."""

from posixpath import dirname, join, normpath

from ..draw import first_picture
from ..fabric import PatternWork
from ..measure import Measured
from ..pattern import Picture as OwnPicture
from .leaflet_parts import Picture
from .leaflet_voice import Voice


def folder_of(file: str) -> str:
    """The folder of a pattern's file, below the collection's."""
    return dirname(file)


def author_picture(voice: Voice, picture: OwnPicture | None, folder: str) -> Picture | None:
    """A picture of the author's, by its path below the collection's folder."""
    if picture is None:
        return None
    file = normpath(join(folder, picture.file))
    return Picture(voice.prose(picture.alt), file=file, credit=picture.credit)


def cover_picture(voice: Voice, work: PatternWork, measured: Measured, folder: str) -> Picture:
    """The author's first picture, or the first piece drawn from its stitches."""
    own = author_picture(voice, next(iter(work.pattern.pictures), None), folder)
    across = across_mm(measured)
    if own is not None:
        return Picture(own.alt, file=own.file, credit=own.credit, across_mm=across)
    alt = voice.say("drawn_alt", title=voice.prose(work.pattern.title))
    return Picture(alt, svg=first_picture(work), across_mm=across)


def across_mm(measured: Measured) -> float:
    """The larger side of the first piece in mm, in the first size; 0 where nothing says."""
    stated = [one.mm(0) or 0.0 for one in measured.stated if one.piece == "" and one.what != "around"]
    first = measured.pieces[0].size[0] if measured.pieces and measured.pieces[0].size else {}
    worked = [first[what].middle for what in ("across", "width", "length", "height") if what in first]
    return max(worked or stated or [0.0])
