"""The key of a chart: each sign that it uses, with its names on both sides of the Atlantic."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from html import escape
from textwrap import wrap

from ..fabric import Made, PatternWork, Ring, Space
from ..notation import stitch_name
from ..notation.tree import Stitch
from ..trade import Terms
from .canvas import Point, number
from .drawn_together import drawn_together
from .pen import ink_name, picot_way
from .shapes import Shapes
from .signing import sign_of
from .signs import CHAIN, DOT, MAGIC_RING, Sign, height_of, lines
from .strokes import Stroke
from .subject import Subject

PICOT, PICOT_CHAINS = "picot: chains in a ring", 3
LOOPS = {"front": ", front loop only", "back": ", back loop only", "third": ", in 3rd loop"}
LEGS_APART, LEGS_IN_ALL = 7.0, 17.0
"""The feet of stitches drawn together, in the key; many are closer, within the room of a sign."""

SIGNS = 9.0
"""Words of this size, in units, stand beside signs as large as the chart's."""

ROW, LONGEST = 1.2, 44
"""Between rows of words of one line, of their size; the letters of a row at most, where there are columns."""

APART = 2.5
"""Between columns of the key, of the size of its words."""


@dataclass(frozen=True, slots=True)
class KeyLine:
    """words: what the sign means, in US and in UK terms. way: the sign's path, "" for words alone. low, high:
    how far it reaches down and up. filled: whether it is filled, not stroked. stroke, colour: its own, where
    it is a yarn.
    """

    words: Mapping[Terms, str]
    way: str = ""
    low: float = 0.0
    high: float = 0.0
    filled: bool = False
    stroke: Stroke = Stroke()
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
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="-{number(half)} {number(-line.high - 2)} '
        f'{number(2 * half)} {number(high)}" width="{number(2 * half * IN_WORDS)}" '
        f'height="{number(high * IN_WORDS)}" aria-hidden="true" stroke-width=".9" stroke-linecap="round" '
        f'stroke-linejoin="round"{own}><path {paint}{line.stroke.attributes} d="{line.way}"/></svg>'
    )


def said(words: str) -> KeyLine:
    """Words that are the same in both terminologies."""
    return KeyLine({"US": words, "UK": words})


def key_lines(subject: Subject) -> list[KeyLine]:
    """The signs in the order met."""
    return list(_signs(subject))


def drawn_key(
    lines: Sequence[KeyLine], terms: Terms, colour: str, left: float, top: float, size: float, shapes: Shapes,
    columns: int = 1,
) -> tuple[str, float, float]:  # fmt: skip
    """The key below a chart as SVG, with its width and height; each sign stands at the middle of its words.

    colour: of its signs. left, top: where it begins. size: of its words. shapes: takes up what its signs are
    made of. columns: of about one height, each read from its top.
    """
    parts: list[str] = []
    right, bottom = left, top
    for column in _columns([_set(line, terms, columns) for line in lines], size, columns):
        start, low = (right + APART * size if parts else left), top + size
        for line in column:
            middle = low + line.tall(size) / 2
            parts.append(line.drawn(colour, (start, middle), size, shapes))
            low += line.tall(size) + size * 0.55
            right = max(right, start + line.long(size))
        bottom = max(bottom, low)
    return f'<g class="chart-key">{"".join(parts)}</g>', right - left, bottom - top


@dataclass(frozen=True, slots=True)
class _Set:
    """A line of the key as it is set: its words in one terminology, in one row or several."""

    line: KeyLine
    words: Sequence[str]

    def tall(self, size: float) -> float:
        """How high it is, in letters of this size."""
        return max((self.line.high + self.line.low) * size / SIGNS, size * ROW * len(self.words))

    def long(self, size: float) -> float:
        """How long it is."""
        return self._indent(size) + size * 0.53 * max(len(words) for words in self.words)

    def _indent(self, size: float) -> float:
        return size * 3.4 if self.line.way else 0.0

    def drawn(self, colour: str, at: Point, size: float, shapes: Shapes) -> str:
        """The line as SVG. at: its left end, at the height of its middle."""
        (left, middle), line, scale, part = at, self.line, size / SIGNS, ""
        if line.way:
            ink = line.colour or colour
            foot = middle + (line.high - line.low) / 2 * scale
            part = (
                f'<use href="#{shapes.name(line.way, line.filled)}" class="{ink_name(ink)}" stroke="{ink}" '
                f'fill="{ink}"{line.stroke.attributes} '
                f'transform="translate({number(left + size * 1.5)} {number(foot)}) scale({number(scale)})"/>'
            )
        first = middle + size * 0.34 - (len(self.words) - 1) / 2 * size * ROW
        return part + "".join(
            word(left + self._indent(size), first + row * size * ROW, words, size, "start")
            for row, words in enumerate(self.words)
        )


def _set(line: KeyLine, terms: Terms, columns: int) -> _Set:
    """In several columns the other terminology's names have a row of their own, and so has what is long."""
    words = line.words[terms]
    if columns == 1:
        return _Set(line, [words])
    head, mark, tail = words.partition(" (")
    return _Set(line, [row for part in filter(None, (head, mark[1:] + tail)) for row in wrap(part, LONGEST)])


def _columns(lines: Sequence[_Set], size: float, many: int) -> list[list[_Set]]:
    """The lines in so many columns, at most, of about one height."""
    tall = [line.tall(size) + size * 0.55 for line in lines]
    found: list[list[_Set]] = [[]]
    for at, line in enumerate(lines):
        if sum(tall[:at]) + tall[at] / 2 > sum(tall) * len(found) / many:
            found.append([])
        found[-1].append(line)
    return found


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
            elif made.role in ("join", "travel") or (made.kind == "slip" and not (made.loop or made.post)):
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
        apart = min(LEGS_APART, LEGS_IN_ALL / (places - 1))
        feet = [((leg - (places - 1) / 2) * apart, tall) for leg in range(places)]
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
