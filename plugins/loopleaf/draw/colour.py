"""Yarn colours in light and shade."""

UNDYED = "#9a948a"
"""For a yarn whose colour the pattern doesn't give."""


def shaded(colour: str, light: float) -> str:
    """A colour `#rrggbb` under more (above 1) or less light (below 1), as another `#rrggbb`."""
    parts = [int(colour[i : i + 2], 16) for i in (1, 3, 5)]
    if light <= 1:
        lit = [part * light for part in parts]
    else:
        lit = [part + (255 - part) * min(light - 1, 1) for part in parts]
    return "#" + "".join(f"{round(part):02x}" for part in lit)


def level(light: float) -> float:
    """Light in steps of 0.06, so that neighbours can share a path."""
    return round(light / 0.06) * 0.06
