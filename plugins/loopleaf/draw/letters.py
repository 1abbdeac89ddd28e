"""How wide words are, in our own typeface and in whatever stands in where a drawing is opened by itself."""

NARROW, SLIM, SPACE, USUAL, CAPITAL, BROAD, BROADEST = 0.34, 0.42, 0.32, 0.64, 0.78, 0.84, 1.0
"""Letters by their width in a wide sans serif (of their height): no less than those of DejaVu Sans, which
Linux shows where no other is installed (measured in its file).
"""

_WIDTHS = {
    **dict.fromkeys("ijl.,:;'|!’‘", NARROW),
    **dict.fromkeys("frtI()[]-/", SLIM),
    **dict.fromkeys("CDGHKNOQRUABEPSVXZY&", CAPITAL),
    **dict.fromkeys("w×+–=≈", BROAD),
    **dict.fromkeys("mMW%@½¼¾⅛⅜⅝⅞—…", BROADEST),
    " ": SPACE,
}

BOLDER = 1.12
"""Bold letters are so many times as wide."""


def width_of(text: str, size: float) -> float:
    """About how wide words are set in our own typeface: half their height a letter."""
    return 0.5 * size * len(text)


def room_for(text: str, size: float, bold: bool = False) -> float:
    """How wide words are at most, in any usual typeface."""
    wide = sum(_WIDTHS.get(letter, USUAL) for letter in text) * size
    return max(wide * (BOLDER if bold else 1.0), width_of(text, size))
