"""What WeasyPrint has to say about a booklet, in sentences for the one whose pattern it is."""

import re

SIGN = re.compile(
    r'glyph rendered for Unicode string unsupported by fonts: "(.*)" \(U\+([0-9A-F]+)\)', re.DOTALL
)
PICTURE = re.compile(r"Failed to (?:load image at|render SVG image) '?(.*?)'?(?:: |$)", re.DOTALL)
NO_WORDS = re.compile(r'Image "(.*)" has no required alt description', re.DOTALL)


def remark(record: str) -> str:
    """One record of WeasyPrint's log (warning or worse) as a sentence on one line; its own words where they
    are none of those that a pattern can cause.
    """
    if found := SIGN.search(record):
        return (
            f"No font of the booklet has the sign “{found[1]}” (U+{found[2]}); it is printed as an empty box."
        )
    if found := PICTURE.search(record):
        return f"{_picture(found[1])} could not be read, and is missing in the booklet."
    if found := NO_WORDS.search(record):
        return f"{_picture(found[1])} has no words (`alt`) for readers who can't see it."
    return f"While the booklet was printed: {' '.join(record.split())}"


def _picture(address: str) -> str:
    """`The picture “steps/moon.png”`; a drawing has no name."""
    if address.startswith("data:"):
        return "A drawing"
    return f"The picture “{address.removeprefix('file:///').removeprefix('pictures/')}”"
