"""The strokes that tell a chart's yarns apart in black: a pattern of dashes, and a weight."""

from typing import NamedTuple

from .canvas import number

STROKE = 0.9
"""Width of signs' strokes, in units: a quarter of a point where a sign is a millimetre wide in print."""

HEAVIER = (1.0, 1.9, 3.0)
"""Strokes past those of the first weight are so many times as wide: weights are told from each other."""

PATTERNS = (
    (),
    (3.4, 1.4),
    (1.2, 1.5),
    (4.0, 1.4, 0.1, 1.4),
    (0.1, 1.7),
    (6.0, 1.4, 1.2, 1.4),
    (3.0, 1.4, 0.1, 1.4, 0.1, 1.4),
)
"""Dashes and the gaps behind them, in units, of strokes with round ends."""


class Stroke(NamedTuple):
    """dash: its dashes and gaps as SVG has them, "" for a plain line. width: in units, 0 for a sign's own."""

    dash: str = ""
    width: float = 0.0

    @property
    def attributes(self) -> str:
        """As SVG text, with a space before."""
        dash = f' stroke-dasharray="{self.dash}"' if self.dash else ""
        return dash + (f' stroke-width="{number(self.width)}"' if self.width else "")


def _stroke(pattern: tuple[float, ...], times: float) -> Stroke:
    """A pattern in a weight: the ends of a wider stroke are longer, so its gaps are too."""
    wider = STROKE * (times - 1)
    lengths = (part + wider * (at % 2) for at, part in enumerate(pattern))
    return Stroke(" ".join(f"{part:g}" for part in lengths), STROKE * times if wider else 0.0)


STROKES = tuple(_stroke(pattern, times) for times in HEAVIER for pattern in PATTERNS)
"""Of a chart's first yarn and of each further one."""
