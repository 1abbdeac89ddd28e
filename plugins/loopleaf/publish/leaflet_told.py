"""What a chart shows in words, for who can't see: its rounds as they are written, as far as one listens."""

import re
from collections.abc import Sequence
from dataclasses import replace
from html import escape

from ..fabric import PatternWork
from .drawing import Drawing
from .leaflet_parts import Round, Terms
from .leaflet_rounds import Item, items
from .leaflet_voice import Voice, voice
from .picture_told import picture_told

LISTENED_TO = 800
"""The rounds of an alternative have so many letters at most: a minute of a voice that reads them out. All of
them, one by one, are in the text.
"""


def told(voice: Voice, drawing: Drawing, items: Sequence[Item]) -> Drawing:
    """A chart or a picture in squares with its rounds in its alternative; any other drawing as it is."""
    rounds = [one for one in items if isinstance(one, Round) and _shows(drawing, one)]
    if drawing.kind not in ("chart", "squares") or not rounds:
        return drawing
    alt = " ".join([drawing.alt, *_heard(voice, rounds)])
    return replace(
        drawing,
        alt=alt,
        svg=_described(drawing.svg, alt),
        left=_described(drawing.left, alt),
        printed=tuple(_described(svg, alt) for svg in drawing.printed),
    )


def told_alone(work: PatternWork, kind: str, piece: str, terms: Terms, svg: str) -> str:
    """A chart or a picture that stands by itself, with what it shows in its own `desc`: of a chart the rounds
    of the piece, or of all pieces one after the other; any other drawing as it is.
    """
    said = voice(work, terms)
    if kind == "picture":
        return _described(svg, said.title(piece) if piece else picture_told(said, work))
    if kind != "chart":
        return svg
    words: list[str] = []
    for one in work.pieces:
        if piece not in ("", one.name):
            continue
        rounds = [r for r in items(said, one, work.pattern.pieces[one.name], "") if isinstance(r, Round)]
        if rounds:
            words += [f"{said.title(one.name)}.", *_heard(said, rounds)]
    return _described(svg, " ".join(words))


def _heard(voice: Voice, rounds: Sequence[Round]) -> list[str]:
    """As many of the rounds as one listens to, the first at least, and how many they are."""
    words: list[str] = []
    long = 0
    for one in rounds:
        line = _line(one)
        long += len(line)
        if long > LISTENED_TO and words:
            break
        words.append(line)
    which = "all" if len(words) == len(rounds) else "first"
    return [*words, voice.words[f"told_{which}_{rounds[0].word}s"]]


def _shows(drawing: Drawing, one: Round) -> bool:
    labels = [anchor.rsplit("-", 1)[-1] for anchor in one.anchors]
    return not drawing.rounds or any(label in drawing.rounds for label in labels)


def _line(one: Round) -> str:
    """`Round 2: ch 1, 2 sc in each st around, join (12).`"""
    count = f" ({one.count})" if one.count else ""
    return f"{one.label}: {one.text.rstrip('.')}{count}."


def _described(svg: str, alt: str) -> str:
    """The drawing with what it shows in its own `desc`, for where it is opened by itself."""
    bare = re.sub("<desc>.*?</desc>", "", svg, count=1)
    return bare.replace("</title>", f"</title><desc>{escape(alt, quote=False)}</desc>", 1)
