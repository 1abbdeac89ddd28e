"""Letters in a figure for measures that are too long to stand in it, with the list that says what they are.

A measure by size ("about 17 (19, 21, 21.5) cm, 6¾ (7½, 8¼, 8½) in") beside its line would make a drawing so
wide that its words come out small wherever it is fitted into a column. Without it the words of every figure
are at least 6.5 points high in a booklet and 11 pixels on a phone.
"""

from dataclasses import dataclass, field
from string import ascii_lowercase

from .letters import width_of
from .measuring import GAP, split
from .sketch import WORDS, Anchor, Sketch

BESIDE = 32.0
"""Words wider than so many units, each unit of measure on a line of its own, don't stand beside a figure."""

_INDENT = 2 * WORDS
_LEADING = 1.3 * WORDS


@dataclass(slots=True)
class Lettered:
    """The measures of one figure that letters stand for, in the order of the letters."""

    _listed: list[list[str]] = field(default_factory=list)

    def short(self, words: str, what: str) -> str:
        """The words themselves where they have room, else the letter that stands for them.

        what: where they are measured, said after them in the list: `around`.
        """
        if all(width_of(part, WORDS) <= BESIDE for part in split(words)):
            return words
        self._listed.append(split(f"{words} {what}"))
        return ascii_lowercase[len(self._listed) - 1]

    def write(self, sketch: Sketch) -> None:
        """The list below all that is drawn, and amid it; it reads from left to right for either hand."""
        if not self._listed:
            return
        left, _, right, low = sketch.box
        wide = max(width_of(part, WORDS) for parts in self._listed for part in parts) + _INDENT
        start: Anchor = "end" if sketch.mirrored else "start"
        side = -1 if sketch.mirrored else 1
        first = (left + right - side * wide) / 2
        at = low + GAP + WORDS
        for letter, parts in zip(ascii_lowercase, self._listed, strict=False):
            sketch.words((first, at), letter, start)
            for part in parts:
                sketch.words((first + side * _INDENT, at), part, start)
                at += _LEADING
            at += 0.4 * WORDS
