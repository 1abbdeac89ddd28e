"""The level that a pattern's techniques ask for, with the places where each first occurs.

The four project levels are the Craft Yarn Council's; which technique raises a pattern to which is chosen here
(`trade/levels.yml`). Three or more techniques of the third level in one piece make the fourth.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from .. import trade
from ..pattern import Pattern
from .techniques import Use

_AT_ONCE = 3


@dataclass(frozen=True, slots=True)
class Level:
    """The level worked out.

    because: the techniques of just that level, in the order met. uses: all above basic.
    """

    level: trade.LevelKey
    because: tuple[Use, ...]
    uses: tuple[Use, ...]


def level_of(uses: Iterable[Use]) -> Level:
    """The lowest level that covers every technique used; without any above it, basic."""
    first: dict[str, Use] = {}
    places: dict[str, set[str]] = {}
    for use in uses:
        first.setdefault(use.technique, use)
        if trade.technique(use.technique).level == "intermediate":
            places.setdefault(use.piece, set()).add(use.technique)
    crowded = next((piece for piece, keys in places.items() if len(keys) >= _AT_ONCE), None)
    if crowded is not None:
        first["three-at-once"] = Use("three-at-once", crowded)
    order = [row.key for row in trade.levels()]
    level = max((trade.technique(key).level for key in first), key=order.index, default=order[0])
    because = tuple(use for use in first.values() if trade.technique(use.technique).level == level)
    return Level(level, because, tuple(first.values()))


def reason(use: Use, pattern: Pattern, terms: trade.Terms) -> str:
    """One reason as it is printed: `chain spaces (round 17)`, `a cord (Drawstring)`.

    The first piece's rounds stand alone, those of others with the piece's title.
    """
    text = trade.say(trade.technique(use.technique).text, terms)
    model = pattern.pieces.get(use.piece)
    title = (model.title or use.piece) if model else use.piece
    at = f"{use.word} {use.round}" if use.round else ""
    if not at:
        return f"{text} ({title})" if title else text
    return f"{text} ({at})" if use.piece == next(iter(pattern.pieces)) else f"{text} ({title}, {at})"


def because(level: Level, pattern: Pattern, terms: trade.Terms) -> str:
    """The whole sentence.

    `easy, because chain spaces (round 17) and shells (round 19)`; `basic` alone needs no reason.
    """
    reasons = [reason(use, pattern, terms) for use in level.because]
    if not reasons:
        return level.level
    return f"{level.level}, because {_listed(reasons)}"


def to_learn(level: Level, terms: trade.Terms) -> tuple[str, ...]:
    """What to practise first, a sentence for each technique that makes the level."""
    rows = [trade.technique(use.technique) for use in level.because]
    return tuple(dict.fromkeys(trade.say(row.learn, terms) for row in rows if row.learn))


def _listed(texts: Sequence[str]) -> str:
    if len(texts) == 1:
        return texts[0]
    return f"{', '.join(texts[:-1])} and {texts[-1]}"
