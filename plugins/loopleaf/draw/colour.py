"""Yarn colours in light and shade."""

from functools import lru_cache

UNDYED = "#9a948a"
"""For a yarn whose colour the pattern doesn't give."""

WORDS, WORDS_ON_DARK = "#22282b", "#e9e4d9"
"""The ink of words on light paper and on dark."""

OUTLINES = (0.135, 0.27)
"""Edges as luminous as this have 3 : 1 against light paper (0.94) and dark (0.009): WCAG 2.2, 1.4.11."""

ON_LIGHT = (0.04, 0.09)
"""Thin lines as luminous as this have 6.9 : 1 and more on light paper, drawn lighter still 3 : 1. Light and
dark yarns are spread over it, so that they keep apart."""

ON_DARK = (0.38, 0.65)
"""Thin lines as luminous as this have 7 : 1 and more on dark paper, drawn lighter still 3 : 1."""

FAINT = 0.66
"""How strongly a repeat is drawn that was drawn before: as light as 3 : 1 lets it be (WCAG 2.2, 1.4.11)."""

FAINT_ON_DARK = 0.78
"""The same on dark paper, where thin light lines look thinner: 4.5 : 1."""


@lru_cache(maxsize=1_024)
def shaded(colour: str, light: float) -> str:
    """A colour `#rrggbb` under more (above 1) or less light (below 1), as another `#rrggbb`."""
    parts = _parts(colour)
    if light <= 1:
        lit = [part * light for part in parts]
    else:
        lit = [part + (255 - part) * min(light - 1, 1) for part in parts]
    return "#" + "".join(f"{round(part):02x}" for part in lit)


def level(light: float) -> float:
    """Light in steps of 0.05, so that neighbours can share a path."""
    return round(light * 20) / 20


@lru_cache(maxsize=1_024)
def outline_of(colour: str) -> str:
    """The yarn's colour, no darker and no lighter than an edge that shows on light paper and on dark."""
    return _as_luminous(colour, *OUTLINES)


@lru_cache(maxsize=1_024)
def ink_on_light(colour: str) -> str:
    """The yarn's colour, dark enough for thin lines on light paper."""
    darkest, lightest = ON_LIGHT
    wanted = darkest + (lightest - darkest) * luminance(colour)
    return _as_luminous(colour, wanted, wanted)


@lru_cache(maxsize=1_024)
def ink_on_dark(colour: str) -> str:
    """The yarn's colour, light enough for thin lines on dark paper."""
    return _as_luminous(colour, *ON_DARK)


def _as_luminous(colour: str, darkest: float, lightest: float) -> str:
    wanted = min(max(luminance(colour), darkest), lightest)
    low, high = 0.0, 2.0
    for _ in range(12):
        middle = (low + high) / 2
        low, high = (middle, high) if luminance(shaded(colour, middle)) < wanted else (low, middle)
    return shaded(colour, (low + high) / 2)


def luminance(colour: str) -> float:
    """Relative luminance of `#rrggbb`, 0 to 1 (WCAG 2.2)."""
    red, green, blue = (_linear(part / 255) for part in _parts(colour))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(colour: str, other: str) -> float:
    """The contrast of two colours `#rrggbb`, from 1 (as light as each other) to 21 (WCAG 2.2)."""
    dark, light = sorted((luminance(colour), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def _parts(colour: str) -> list[int]:
    return [int(colour[i : i + 2], 16) for i in (1, 3, 5)]


def _linear(value: float) -> float:
    return value / 12.92 if value <= 0.04045 else float(((value + 0.055) / 1.055) ** 2.4)
