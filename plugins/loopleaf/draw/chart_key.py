"""The key of a chart: each sign that it uses, with its names on both sides of the Atlantic."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from html import escape

from ..fabric import Made, PatternWork, Ring, Space
from ..notation import stitch_name
from ..notation.tree import Stitch
from ..trade import Terms
from .canvas import number
from .drawn_together import drawn_together
from .pen import ink_name, picot_way
from .shapes import Shapes
from .signing import sign_of
from .signs import CHAIN, DOT, MAGIC_RING, Sign, height_of, lines
from .subject import Subject

PICOT, PICOT_CHAINS = "picot: chains in a ring", 3
LOOPS = {"front": ", front loop only", "back": ", back loop only", "third": ", in 3rd loop"}
LEGS_APART = 7.0
"""The feet of stitches drawn together, in the key."""


@dataclass(frozen=True, slots=True)
class KeyLine:
    """words: what the sign means, in US and in UK terms. way: the sign's path, "" for words alone. low, high:
    how far it reaches down and up. filled: whether it is filled, not stroked. dash: the pattern of its
    stroke; colour: its own, where it is a yarn.
    """

    words: Mapping[Terms, str]
    way: str = ""
    low: float = 0.0
    high: float = 0.0
    filled: bool = False
    dash: str = ""
    colour: str = ""


IN_WORDS = 1.5
"""A sign beside words of a page's size is so many pixels a unit large."""


@dataclass(frozen=True, slots=True)
class KeyEntry:
    """A line of the key as a page prints it. svg: its sign by itself, "" for words alone. left: the words as
    a left-hander needs them.
    """

    svg: str
    words: str
    left: str


def by_itself(line: KeyLine, dark: str) -> str:
    """A key's sign as a small SVG in the ink of the words, or in its yarn's on light and on `dark` paper."""
    if not line.way:
        return ""
    half, high = 10.0, line.high + line.low + 4
    ink, own = "currentColor", ""
    if line.colour:
        ink, own = "var(--yarn)", f' class="leaf-key__yarn" style="--light:{line.colour};--dark:{dark}"'
    paint = f'fill="{ink}"' if line.filled else f'fill="none" stroke="{ink}"'
    dash = f' stroke-dasharray="{line.dash}"' if line.dash else ""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="-{number(half)} {number(-line.high - 2)} '
        f'{number(2 * half)} {number(high)}" width="{number(2 * half * IN_WORDS)}" '
        f'height="{number(high * IN_WORDS)}" aria-hidden="true" stroke-width=".9" stroke-linecap="round" '
        f'stroke-linejoin="round"{own}><path {paint}{dash} d="{line.way}"/></svg>'
    )


def said(words: str) -> KeyLine:
    """Words that are the same in both terminologies."""
    return KeyLine({"US": words, "UK": words})


def key_lines(subject: Subject) -> list[KeyLine]:
    """The signs in the order met."""
    return list(_signs(subject))


def drawn_key(
    lines: Sequence[KeyLine], terms: Terms, colour: str, left: float, top: float, size: float, shapes: Shapes
) -> tuple[str, float, float]:
    """The key below a chart as SVG, with its width and height; each sign stands at the middle of its words.

    colour: of its signs. left, top: where it begins. size: of its words. shapes: takes up what its signs are
    made of.
    """
    parts: list[str] = []
    low, wide, scale = top + size, 0.0, size / 9
    for line in lines:
        tall = max((line.high + line.low) * scale, size * 1.2)
        middle = low + tall / 2
        if line.way:
            ink = line.colour or colour
            dash = f' stroke-dasharray="{line.dash}"' if line.dash else ""
            foot = middle + (line.high - line.low) / 2 * scale
            parts.append(
                f'<use href="#{shapes.name(line.way, line.filled)}" class="{ink_name(ink)}" stroke="{ink}" '
                f'fill="{ink}"{dash} '
                f'transform="translate({number(left + size * 1.5)} {number(foot)}) scale({number(scale)})"/>'
            )
        start = size * 3.4 if line.way else 0.0
        words = line.words[terms]
        parts.append(word(left + start, middle + size * 0.34, words, size, "start"))
        low += tall + size * 0.55
        wide = max(wide, start + size * 0.53 * len(words))
    return f'<g class="chart-key">{"".join(parts)}</g>', wide, low - top


def word(x: float, y: float, text: str, size: float, anchor: str) -> str:
    """Words in a chart, on their base line."""
    return (
        f'<text class="chart-words" x="{number(x)}" y="{number(y)}" font-size="{number(size)}" '
        f'text-anchor="{anchor}">{escape(text)}</text>'
    )


def _signs(subject: Subject) -> Iterator[KeyLine]:
    start = subject.piece.starts[0][:1] if subject.piece.starts else []
    if start and isinstance(start[0], Ring) and not start[0].chains:
        radius = MAGIC_RING - 2
        round_about = f"a{radius} {radius} 0 1 0"
        way = f"M-{radius} 0{round_about} {2 * radius} 0{round_about} -{2 * radius} 0z"
        words = "magic ring" if start[0].kind == "magic" else "ring"
        yield KeyLine({"US": words, "UK": words}, way, radius, radius)
    if _has_chains(subject):
        yield chain_line(subject.work)
    seen: set[tuple[str | Sign, int]] = set()
    for work, worked in zip(subject.piece.rounds, subject.worked, strict=True):
        for made in worked.made:
            if not isinstance(made, Made) or made.role in ("turning", "chain"):
                continue
            key: str | Sign = sign_of(made, work.side == "WS")
            if made.role == "picot":
                key = "picot"
            elif made.role in ("join", "travel") or made.kind == "slip":
                key = "slip"
            places = len(made.into) if isinstance(key, Sign) and key.form and not key.legs else 1
            if (key, places) not in seen:
                seen.add((key, places))
                yield _line(subject, key, places)


def chain_line(work: PatternWork) -> KeyLine:
    """The key's line of a chain."""
    return KeyLine(names_of(work, Stitch("chain")), CHAIN, 2, 2)


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


def _line(subject: Subject, sign: str | Sign, places: int) -> KeyLine:
    if isinstance(sign, str):
        if sign == "picot":
            return replace(said(PICOT), way=picot_way(PICOT_CHAINS), high=10.0)
        return KeyLine(names_of(subject.work, Stitch("slip")), DOT, 1.7, 1.7, filled=True)
    special = sign.kind in subject.work.pattern.special_stitches
    legs = sign.legs or (places if sign.form else 0)
    stitch = (
        Stitch("special", name=sign.kind)
        if special
        else Stitch(sign.kind, sign.form, legs, sign.loop, sign.post)
    )
    loop = LOOPS.get(sign.loop, "")
    words = {terms: name + loop for terms, name in names_of(subject.work, stitch).items()}
    tall = height_of(sign.kind)
    if sign.form and not sign.legs and places > 1:
        feet = [((leg - (places - 1) / 2) * LEGS_APART, tall) for leg in range(places)]
        return KeyLine(words, drawn_together(sign.kind, feet), tall, 0.0)
    return KeyLine(words, lines(sign), 2.0 if sign.loop or sign.post else 0.0, tall)


def names_of(work: PatternWork, stitch: Stitch) -> dict[Terms, str]:
    """`dc, double crochet (UK: tr, treble)`; once where both say the same."""
    names: dict[Terms, str] = {
        side: ", ".join(
            dict.fromkeys(
                stitch_name(stitch, side, full, vocabulary=work.vocabulary) for full in (False, True)
            )
        )
        for side in ("US", "UK")
    }
    if names["US"] == names["UK"]:
        return names
    return {
        "US": f"{names['US']} (UK: {names['UK']})",
        "UK": f"{names['UK']} (US: {names['US']})",
    }
