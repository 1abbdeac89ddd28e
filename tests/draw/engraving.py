"""Measures a chart as an engraver would: what lies on what, how far feet are from their places.

Read from the SVG itself, so that it holds whatever draws it.
"""

import re
from dataclasses import dataclass
from math import cos, hypot, radians, sin
from xml.etree import ElementTree

from .pieces import SVG, signs_in, tree

Point = tuple[float, float]

WAY = re.compile(r"[MLHVQAhvlqazm]|-?[\d.]+")


@dataclass(frozen=True)
class Inked:
    """One sign: the box around its ink, turned as it is. middle: of the box; half: half its sides."""

    kind: str
    round: str
    middle: Point
    half: tuple[float, float]
    turned: float

    @property
    def area(self) -> float:
        return 4 * self.half[0] * self.half[1]

    def corners(self) -> list[Point]:
        """Its four corners, in order."""
        across, along = (cos(self.turned), sin(self.turned)), (-sin(self.turned), cos(self.turned))
        return [
            (
                self.middle[0] + a * self.half[0] * across[0] + b * self.half[1] * along[0],
                self.middle[1] + a * self.half[0] * across[1] + b * self.half[1] * along[1],
            )
            for a, b in ((-1, -1), (1, -1), (1, 1), (-1, 1))
        ]


def inked(svg: str, piece: str) -> list[Inked]:
    """Every sign that is one shape, with its box; what is gathered over several places has none."""
    root = tree(svg)
    shapes = {str(form.get("id")): form for form in root.iter() if form.get("id")}
    group = next(g for g in root.iter(f"{SVG}g") if g.get("data-piece") == piece)
    return [_inked(use, shapes) for use in signs_in(group) if use.tag == f"{SVG}use"]


def _inked(use: ElementTree.Element, shapes: dict[str, ElementTree.Element]) -> Inked:
    shape = shapes[str(use.get("href")).removeprefix("#")]
    # A sign whose bars stay whole in dashed strokes is a group of two paths.
    left, top, right, bottom = _box("".join(str(path.get("d")) for path in shape.iter(f"{SVG}path")))
    turned, stretch = 0.0, 1.0
    for text in (str(shape.get("transform") or ""), str(use.get("transform") or "")):
        turned += float(found[1]) if (found := re.search(r"rotate\((\S+)\)", text)) else 0.0
        stretch *= float(found[1]) if (found := re.search(r"scale\(1 (\S+)\)", text)) else 1.0
    x, y = place_of(use)
    angle = radians(turned)
    down = (top + bottom) / 2 * stretch
    across = (left + right) / 2
    middle = (x + across * cos(angle) - down * sin(angle), y + across * sin(angle) + down * cos(angle))
    half = ((right - left) / 2, (bottom - top) / 2 * stretch)
    return Inked(str(use.get("data-kind")), str(use.get("data-round")), middle, half, angle)


def place_of(sign: ElementTree.Element) -> Point:
    """Where a sign stands."""
    found = re.match(r"translate\((\S+) ([^)]+)\)", sign.get("transform") or "")
    return (
        (float(found[1]), float(found[2]))
        if found
        else (float(sign.get("x") or 0), float(sign.get("y") or 0))
    )


def _box(way: str) -> tuple[float, float, float, float]:
    """The box of a path made of straight lines, half-circle arcs and simple curves."""
    xs: list[float] = []
    ys: list[float] = []
    x = y = 0.0
    parts = WAY.findall(way)
    at = 0
    letter = ""
    while at < len(parts):
        if parts[at].isalpha():
            letter = parts[at]
            at += 1
        if letter in "zZ":
            continue
        many = {"h": 1, "v": 1, "a": 7, "q": 4}.get(letter.lower(), 2)
        values = [float(part) for part in parts[at : at + many]]
        at += many
        if letter == "H":
            x = values[0]
        elif letter == "V":
            y = values[0]
        elif letter in "hv":
            x, y = (x + values[0], y) if letter == "h" else (x, y + values[0])
        elif letter == "a":
            xs += [x + values[5] / 2, x + values[5] / 2]
            ys += [y - values[1], y + values[1]]
            x, y = x + values[5], y + values[6]
        elif letter.isupper():
            x, y = values[-2], values[-1]
        else:
            x, y = x + values[-2], y + values[-1]
        xs.append(x)
        ys.append(y)
    return min(xs), min(ys), max(xs), max(ys)


def overlaps(signs: list[Inked]) -> list[tuple[float, Inked, Inked]]:
    """Each pair of signs that lie on each other, with the share of the smaller one's box that they have in
    common.
    """
    cells: dict[tuple[int, int], list[int]] = {}
    for at, sign in enumerate(signs):
        cells.setdefault((round(sign.middle[0] / 25), round(sign.middle[1] / 25)), []).append(at)
    found: list[tuple[float, Inked, Inked]] = []
    for (column, row), here in cells.items():
        near = [at for a in (-1, 0, 1) for b in (-1, 0, 1) for at in cells.get((column + a, row + b), [])]
        for one in here:
            for other in near:
                if one < other and _close(signs[one], signs[other]):
                    share = _common(signs[one], signs[other])
                    if share > 0:
                        found.append((share, signs[one], signs[other]))
    return found


def _close(one: Inked, other: Inked) -> bool:
    apart = hypot(one.middle[0] - other.middle[0], one.middle[1] - other.middle[1])
    return apart < hypot(*one.half) + hypot(*other.half)


def _common(one: Inked, other: Inked) -> float:
    """The share of the smaller box that both cover: one polygon cut by the other's sides."""
    cut = one.corners()
    sides = other.corners()
    for at in range(4):
        (ax, ay), (bx, by) = sides[at], sides[(at + 1) % 4]
        kept: list[Point] = []
        for number, (x, y) in enumerate(cut):
            px, py = cut[number - 1]
            here = (bx - ax) * (y - ay) - (by - ay) * (x - ax)
            before = (bx - ax) * (py - ay) - (by - ay) * (px - ax)
            if (here >= 0) != (before >= 0):
                share = before / (before - here)
                kept.append((px + (x - px) * share, py + (y - py) * share))
            if here >= 0:
                kept.append((x, y))
        cut = kept
    area = abs(sum(cut[n - 1][0] * cut[n][1] - cut[n][0] * cut[n - 1][1] for n in range(len(cut)))) / 2
    return area / min(one.area, other.area)
