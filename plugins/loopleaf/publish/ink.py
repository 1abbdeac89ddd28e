"""The second ink: a pattern's own yarn colour, made readable on paper.

Colours are moved in OKLCH (lightness, chroma, hue), a space where equal steps look equal, so that a
moved colour keeps its hue. Conversions: Björn Ottosson, "A perceptual color space for image
processing" (2020); contrast: WCAG 2.2, relative luminance and contrast ratio.
"""

from math import atan2, cbrt, cos, hypot, sin

PAPER = "#fbf8f2"
INK = "#22282b"
DARK_PAPER = "#15191b"
DARK_INK = "#e9e4d9"

CONTRAST = 4.5
"""What WCAG 2.2 (1.4.3) asks of text of the usual size."""

_CHROMA = 0.105
_LIGHTNESS = {PAPER: (0.38, 0.62), DARK_PAPER: (0.62, 0.86)}

Triple = tuple[float, float, float]


def second_ink(yarn: str, paper: str) -> str:
    """The ink for one paper: the yarn's hue, its chroma capped, as near its lightness as 4.5 : 1 allows.

    yarn, paper: `#rrggbb`. A yarn almost as dark as the ink (or as light as the dark scheme's) is moved
    towards the middle, so that the second ink can be told from the first.
    """
    lightness, chroma, hue = oklch(yarn)
    chroma = min(chroma, _CHROMA)
    low, high = _LIGHTNESS.get(paper, (0.0, 1.0))
    lightness = min(max(lightness, low), high)
    step = -0.005 if luminance(paper) > 0.18 else 0.005
    while contrast(ink := _within_gamut(lightness, chroma, hue), paper) < CONTRAST and 0 < lightness < 1:
        lightness += step
    return ink


def contrast(one: str, other: str) -> float:
    """The contrast ratio of two colours, from 1 to 21."""
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def luminance(colour: str) -> float:
    """Relative luminance, 0 (black) to 1 (white)."""
    red, green, blue = _linear(colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def oklch(colour: str) -> Triple:
    """Lightness (0 to 1), chroma (0 to about 0.32), hue (radians) of `#rrggbb`."""
    lightness, a, b = oklab(colour)
    return lightness, hypot(a, b), atan2(b, a)


def oklab(colour: str) -> Triple:
    """Lightness and the two opponent axes (green to red, blue to yellow) of `#rrggbb`."""
    red, green, blue = _linear(colour)
    long = cbrt(0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue)
    medium = cbrt(0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue)
    short = cbrt(0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue)
    return (
        0.2104542553 * long + 0.7936177850 * medium - 0.0040720468 * short,
        1.9779984951 * long - 2.4285922050 * medium + 0.4505937099 * short,
        0.0259040371 * long + 0.7827717662 * medium - 0.8086757660 * short,
    )


def _within_gamut(lightness: float, chroma: float, hue: float) -> str:
    """`#rrggbb` of the colour, its chroma lowered until a screen can show it."""
    while True:
        linear = _from_oklab(lightness, chroma * cos(hue), chroma * sin(hue))
        if chroma <= 0 or all(-1e-4 <= value <= 1 + 1e-4 for value in linear):
            return "#" + "".join(f"{_encoded(value):02x}" for value in linear)
        chroma -= 0.004


def _from_oklab(lightness: float, a: float, b: float) -> Triple:
    long = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3
    medium = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3
    short = (lightness - 0.0894841775 * a - 1.2914855480 * b) ** 3
    return (
        4.0767416621 * long - 3.3077115913 * medium + 0.2309699292 * short,
        -1.2684380046 * long + 2.6097574011 * medium - 0.3413193965 * short,
        -0.0041960863 * long - 0.7034186147 * medium + 1.7076147010 * short,
    )


def _linear(colour: str) -> Triple:
    """Linear light, 0 to 1, of `#rrggbb` (IEC 61966-2-1)."""
    red, green, blue = (int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5))
    return _decoded(red), _decoded(green), _decoded(blue)


def _decoded(value: float) -> float:
    return value / 12.92 if value <= 0.04045 else float(((value + 0.055) / 1.055) ** 2.4)


def _encoded(value: float) -> int:
    value = min(max(value, 0.0), 1.0)
    value = value * 12.92 if value <= 0.0031308 else 1.055 * value ** (1 / 2.4) - 0.055
    return round(value * 255)
