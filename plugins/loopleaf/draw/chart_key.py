"""The key of a diagram: each sign that it uses, with its names on both sides of the Atlantic."""

from collections.abc import Iterator
from dataclasses import dataclass
from html import escape

from ..fabric import Made, Ring, Space
from ..notation import stitch_name
from ..notation.tree import Stitch
from ..trade import Terms
from .canvas import number
from .colour import outline_of
from .pen import Shapes
from .signing import sign_of
from .signs import CHAIN, DOT, MAGIC_RING, Sign, height_of, lines
from .subject import Subject, main_colour


@dataclass(frozen=True, slots=True)
class KeyLine:
    """way: the sign's path, "" for words alone. tall: its height; sunk: how far above its lowest point it
    stands. filled: whether it is filled, not stroked.
    """

    words: str
    way: str = ""
    tall: float = 0.0
    sunk: float = 0.0
    filled: bool = False


def key_of(
    subject: Subject,
    terms: Terms,
    left_handed: bool,
    left: float,
    top: float,
    size: float,
    shapes: Shapes,
) -> tuple[str, float, float]:
    """The key below a diagram as SVG, with its width and height; signs in the order met, then what else must
    be said.

    left, top: where it begins. size: of its words. shapes: takes up what its signs are made of.
    """
    colour = outline_of(main_colour(subject))
    parts: list[str] = []
    low, wide, scale = top + size, 0.0, size / 9
    for line in (*_signs(subject, terms), *_said(subject, left_handed)):
        tall = max(line.tall * scale, size * 1.3)
        low += tall
        if line.way:
            place = f"translate({number(left + size * 1.5)} {number(low - line.sunk * scale)})"
            parts.append(
                f'<use href="#{shapes.name(line.way, line.filled)}" stroke="{colour}" fill="{colour}" '
                f'transform="{place}scale({number(scale)})"/>'
            )
        parts.append(word(left + size * 3.4, low - tall / 2 + size * 0.36, line.words, size, "start"))
        low += size * 0.5
        wide = max(wide, size * (3.6 + 0.52 * len(line.words)))
    return "".join(parts), wide, low - top


def word(x: float, y: float, text: str, size: float, anchor: str) -> str:
    """Words in a diagram, on their base line."""
    return (
        f'<text class="chart-words" x="{number(x)}" y="{number(y)}" font-size="{number(size)}" '
        f'text-anchor="{anchor}">{escape(text)}</text>'
    )


def _signs(subject: Subject, terms: Terms) -> Iterator[KeyLine]:
    start = subject.piece.starts[0][:1] if subject.piece.starts else []
    if start and isinstance(start[0], Ring) and not start[0].chains:
        radius = MAGIC_RING - 2
        round_about = f"a{radius} {radius} 0 1 0"
        way = f"M-{radius} 0{round_about} {2 * radius} 0{round_about} -{2 * radius} 0z"
        words = "magic ring" if start[0].kind == "magic" else "ring"
        yield KeyLine(words, way, 2 * radius, radius)
    if _has_chains(subject):
        yield KeyLine(_names(subject, Stitch("chain"), terms), CHAIN, 4, 2)
    seen: set[str | Sign] = set()
    for work, worked in zip(subject.piece.rounds, subject.worked, strict=True):
        for made in worked.made:
            key: str | Sign
            if not isinstance(made, Made) or made.role in ("turning", "chain"):
                continue
            if made.role == "picot":
                key, line = "picot", KeyLine("picot: chains in a ring")
            elif made.role in ("join", "travel"):
                key, line = "slip", KeyLine(_names(subject, Stitch("slip"), terms), DOT, 4, 2, filled=True)
            else:
                sign = sign_of(made, work.side == "WS")
                key, line = sign, _line(subject, sign, len(made.into), terms)
            if key not in seen:
                seen.add(key)
                yield line


def _has_chains(subject: Subject) -> bool:
    in_rounds = any(
        isinstance(made, Space) or made.role in ("chain", "turning")
        for one in subject.worked
        for made in one.made
    )
    start = subject.piece.starts[0] if subject.piece.starts else []
    return in_rounds or any(
        place.chains > 0
        if isinstance(place, Ring)
        else isinstance(place, Made) and place.role == "foundation"
        for place in start
    )


def _line(subject: Subject, sign: Sign, places: int, terms: Terms) -> KeyLine:
    special = sign.kind in subject.work.pattern.special_stitches
    legs = sign.legs or (places if sign.form else 0)
    stitch = (
        Stitch("special", name=sign.kind)
        if special
        else Stitch(sign.kind, sign.form, legs, sign.loop, sign.post)
    )
    loop = f", {sign.loop} loop only" if sign.loop in ("front", "back") else ""
    words = _names(subject, stitch, terms) + loop
    return KeyLine(words, lines(sign), height_of(sign.kind), 2.0 if sign.loop or sign.post else 0.0)


def _names(subject: Subject, stitch: Stitch, terms: Terms) -> str:
    """`dc, double crochet (UK: tr, treble)`; once where both say the same."""
    other: Terms = "UK" if terms == "US" else "US"
    here, there = (
        ", ".join(
            dict.fromkeys(
                stitch_name(stitch, side, full, vocabulary=subject.work.vocabulary) for full in (False, True)
            )
        )
        for side in (terms, other)
    )
    return here if here == there else f"{here} ({other}: {there})"


def _said(subject: Subject, left_handed: bool) -> Iterator[KeyLine]:
    posts = any(
        isinstance(made, Made) and (made.post in ("front", "back") or made.loop in ("front", "back"))
        for work, worked in zip(subject.piece.rounds, subject.worked, strict=True)
        if work.side == "WS"
        for made in worked.made
    )
    if posts:
        side = "right" if left_handed else "left"
        yield KeyLine("As the right side shows it.")
        yield KeyLine(f"On rows that begin at the {side}, front is worked as back and back as front.")
    if subject.work.pattern.size_count > 1:
        yield KeyLine(f"Drawn in size {subject.work.pattern.sizes[0]}.")
