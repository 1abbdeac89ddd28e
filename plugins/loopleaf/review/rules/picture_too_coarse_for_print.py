"""A picture has too few pixels for the size at which the booklet prints it.

What: The picture's pixels are held against its printed width. For a sharp print about 300 pixels to the inch
are usual (common practice, no source); a tenth less is let pass.

Why it matters: On the screen the picture looks fine; on paper its stitches are a blur, just where the maker
looks for them.

Wrong:

    pictures: [{file: pouch-400-pixels-wide.jpg, alt: A teal pouch with a pale moon.}]

Right:

    pictures: [{file: pouch-2000-pixels-wide.jpg, alt: A teal pouch with a pale moon.}]

When to ignore: Where only the site matters and nobody prints.
"""

from collections.abc import Iterator

from ...pattern import Finding, Source, Suggestion
from ..pictures import Beginning, pictures
from ..pixels import pixels
from ..rule import name_of, rule

SHARP = 300
"""Pixels to the inch for a sharp print. Common practice, no source."""
LET_PASS = 0.9
"""Chosen here: a tenth less isn't seen."""
COVER_MM = (170.0, 128.0)
"""The largest that the first picture is printed: the width and height of its place on the cover, on A4."""
BESIDE_MM = (46.0, 46.0)
"""The same of a picture beside a round or a step."""
_INCH_MM = 25.4


def too_coarse(source: Source, beginning: Beginning) -> Iterator[Finding]:
    """A warning for each picture that the booklet would print too large for its pixels.

    beginning: as for the pictures that can't be shown; a picture whose size it doesn't tell is passed over.
    """
    pattern = source.pattern
    first = True
    for path, picture, piece in pictures(pattern) if pattern is not None else ():
        cover, first = first and path[0] == "pictures", False
        if path[0] == "pictures" and not cover:
            continue  # shown on the site alone
        size = pixels(beginning(picture.file) or b"")
        if size is None or not all(size):
            continue
        wide, high = size
        room_wide, room_high = COVER_MM if cover else BESIDE_MM
        printed_mm = min(room_wide, room_high * wide / high)
        needed = round(printed_mm / _INCH_MM * SHARP, -1)
        if wide >= LET_PASS * needed:
            continue
        there = round(wide / printed_mm * _INCH_MM)
        yield Finding(
            rule=name_of(__name__),
            severity="warning",
            file=source.file,
            location=source.locate((*path, "file")),
            message=f"The picture {picture.file} is {wide} pixels wide, too few for print.",
            working=f"It is printed up to {printed_mm:.0f} mm wide; at {SHARP} pixels to the inch that takes "
            f"about {needed:.0f}. With {wide} there are about {there} to the inch.",
            suggestion=Suggestion(
                f"Take the picture as it came from the camera, at least {needed:.0f} pixels wide.",
                None,
                "fill-in",
            ),
            piece=piece,
        )


RULE = rule(__name__, __doc__, "warning")
