"""How a unit of an edge can be worked, and what unit that makes: the steps of patterns made by chance."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from hypothesis import strategies as st

from tests.yaml_text import written_yaml

Draw = Callable[[st.SearchStrategy[Any]], Any]

NAMES = {
    "US": {"single": "sc", "half": "hdc", "double": "dc", "treble": "tr", "skip": "sk", "slip": "sl st"},
    "UK": {"single": "dc", "half": "htr", "double": "tr", "treble": "dtr", "skip": "miss", "slip": "ss"},
}
CHAINS = {"single": 1, "half": 2, "double": 3, "treble": 4}


def file_of(pieces: dict[str, dict[str, Any]], counts: dict[str, str], **more: Any) -> bytes:
    """Pieces as a pattern file in US terms with two yarns. counts: its turning chains."""
    file = {
        "title": "By chance",
        "terms": "US",
        "gauge": "not critical",
        "materials": {"yarns": {"A": {"name": "oat"}, "B": {"name": "lichen"}}},
        "turning chains": counts,
        "chain spaces": "not counted",
        **more,
        "pieces": {name: {"yarn": "A", **piece} for name, piece in pieces.items()},
    }
    if not counts:
        del file["turning chains"]
    return written_yaml(file).encode()


@dataclass
class Unit:
    """What one unit of the edge holds. shape: `plain`, `mesh` (stitch and space), `fans` (stitch and shell).

    tops: stitches of the unit. space: chains of its space. kind: of its stitches. picots: between them.
    """

    shape: str
    tops: int
    kind: str = "single"
    space: int = 0


@dataclass
class Making:
    """A pattern on its way: the edge as units, and the rounds so far."""

    draw: Draw
    terms: str
    units: list[int]
    rows: bool
    spiral: bool
    counts: dict[str, bool]
    unit: Unit
    sides: int = 0
    start: str = ""
    postable: bool = False
    lines: list[dict[str, Any]] = field(default_factory=list)

    def name(self, kind: str) -> str:
        return NAMES[self.terms][kind]

    def pick(self, *options: Any) -> Any:
        return self.draw(st.sampled_from(options))

    def number(self, values: list[int]) -> str:
        first, *others = values
        return str(first) if not others else f"{first} ({', '.join(map(str, others))})"

    def sts(self, number: int) -> str:
        return "st" if number == 1 else f"{number} sts"


def some(making: Making, kind: str, number: int) -> list[str]:
    """`sc in next 3 sts`, or nothing for none; in one of print's ways."""
    name = making.name(kind)
    if number == 0:
        return []
    ways = [
        f"{name} in next {making.sts(number)}",
        f"{name} in each of next {number} sts",
        f"{number} {name}",
    ]
    return [making.pick(*(ways[:1] if number == 1 else ways))]


def _plain(making: Making, kind: str) -> tuple[list[str], Unit]:
    return some(making, kind, making.unit.tops), Unit("plain", making.unit.tops, kind)


def _more(making: Making, kind: str) -> tuple[list[str], Unit]:
    tops = making.unit.tops
    before = making.draw(st.integers(0, tops - 1))
    each = making.pick(2, 2, 3)
    two = "inc" if each == 2 and making.pick(True, False) else f"{each} {making.name(kind)} in next st"
    steps = [*some(making, kind, before), two, *some(making, kind, tops - 1 - before)]
    if two == "inc" and len(steps) == 1:
        steps = [f"2 {making.name(kind)} in next st"]
    return steps, Unit("plain", tops - 1 + each, kind)


def _fewer(making: Making, kind: str) -> tuple[list[str], Unit]:
    tops = making.unit.tops
    legs = making.pick(2, 2, 3) if tops >= 4 else 2
    before = making.draw(st.integers(0, tops - legs))
    gather = f"{making.name(kind)}{legs}tog"
    if legs == 2 and before:
        gather = making.pick(gather, "dec")
    steps = [*some(making, kind, before), gather, *some(making, kind, tops - legs - before)]
    return steps, Unit("plain", tops - legs + 1, kind)


def _mesh(making: Making, kind: str) -> tuple[list[str], Unit]:
    over = making.unit.tops - 1
    space = making.draw(st.integers(1, over + 2))
    skip = making.name("skip")
    return [f"{making.name(kind)} in next st", f"ch {space}", f"{skip} {making.sts(over)}"], Unit(
        "mesh", 1, kind, space
    )


def _fans(making: Making, kind: str) -> tuple[list[str], Unit]:
    skip = f"{making.name('skip')} 2 sts"
    return [f"{making.name('single')} in next st", skip, "sh in next st", skip], Unit("fans", 6, "double")


def _crossed(making: Making, kind: str) -> tuple[list[str], Unit]:
    name = making.name(kind)
    passed = "skipped" if making.terms == "US" else "missed"
    pair = (
        f"({making.name('skip')} next st, {name} in next st, {name} in {passed} st) x {making.unit.tops // 2}"
    )
    return [pair], Unit("plain", making.unit.tops, kind)


def _picots(making: Making, kind: str) -> tuple[list[str], Unit]:
    return [*some(making, kind, making.unit.tops), "ch-3 picot"], Unit("plain", making.unit.tops, kind)


def _gathered(making: Making, kind: str) -> tuple[list[str], Unit]:
    name = f"{making.pick(3, 4, 5)}-{making.name('double')} {making.pick('cluster', 'bobble', 'popcorn')}"
    steps = [f"{name} in next st", *some(making, "double", making.unit.tops - 1)]
    return steps, Unit("plain", making.unit.tops, "double")


def _ribs(making: Making, kind: str) -> tuple[list[str], Unit]:
    name = making.name("double")
    steps = [f"{making.pick('FP', 'BP')}{name} around next st" for _ in range(making.unit.tops)]
    return steps, Unit("plain", making.unit.tops, "double")


def _nested(making: Making, kind: str) -> tuple[list[str], Unit]:
    half = making.unit.tops // 2
    inner = ", ".join([*some(making, kind, half - 1), f"2 {making.name(kind)} in next st"])
    return [f"({inner}) x 2", *some(making, kind, making.unit.tops - 2 * half)], Unit(
        "plain", making.unit.tops + 2, kind
    )


def _group(making: Making, kind: str) -> tuple[list[str], Unit]:
    name, tops = making.name(kind), making.unit.tops
    left, right, chain = (making.draw(st.integers(1, 3)) for _ in range(3))
    group = f"({left} {name}, ch {chain}, {right} {name}) in next st"
    steps = [group, *([f"{making.name('skip')} {making.sts(tops - 1)}"] if tops > 1 else [])]
    return steps, Unit("group", left + right, kind, chain)


def _into_space(making: Making, kind: str) -> tuple[list[str], Unit]:
    number = making.draw(st.integers(1, 6))
    space = making.unit.space
    where = making.pick(f"in next ch-{space} sp", "in next sp", "in next ch-sp")
    return [*_passed(making), f"{number} {making.name(kind)} {where}"], Unit("plain", number, kind)


def _passed(making: Making) -> list[str]:
    """In rows the stitch behind the last space must be passed by a word; in rounds the circle closes."""
    return [f"{making.name('skip')} next st"] if making.rows else []


def _space_to_space(making: Making, kind: str) -> tuple[list[str], Unit]:
    space, chain = making.unit.space, making.draw(st.integers(1, 7))
    steps = [f"{making.name(kind)} in next ch-{space} sp", f"ch {chain}"]
    if making.rows:
        steps = [*_passed(making), *reversed(steps)]
    return steps, Unit("mesh", 1, kind, chain)


def _all_of_mesh(making: Making, kind: str) -> tuple[list[str], Unit]:
    name, space = making.name(kind), making.unit.space
    into = making.pick(f"{space} {name} in next ch-{space} sp", f"{name} in each ch of next ch-{space}")
    return [f"{name} in next st", into], Unit("plain", 1 + space, kind)


def _over_fans(making: Making, kind: str) -> tuple[list[str], Unit]:
    name, chain = making.name(kind), making.draw(st.integers(2, 6))
    return [
        f"{name} in next {making.name('single')}",
        f"ch {chain}",
        f"{name} in centre st of next sh",
        f"ch {chain}",
    ], Unit("arches", 2, kind, chain)


def _over_arches(making: Making, kind: str) -> tuple[list[str], Unit]:
    number, chain = making.draw(st.integers(1, 7)), making.unit.space
    into = f"{number} {making.name(kind)} in next ch-{chain} sp"
    return [f"{making.name('skip')} next st", into] * 2, Unit("plain", 2 * number, kind)


def _group_again(making: Making, kind: str) -> tuple[list[str], Unit]:
    name, chain = making.name(kind), making.draw(st.integers(1, 3))
    number = making.draw(st.integers(1, 3))
    steps = [f"({number} {name}, ch {chain}, {number} {name}) in next ch-{making.unit.space} sp"]
    return steps, Unit("group", 2 * number, kind, chain)


Way = Callable[[Making, str], tuple[list[str], Unit]]


def choices(making: Making) -> list[Way]:
    """The ways that a unit can be worked."""
    unit = making.unit
    if unit.shape == "mesh":
        return [_into_space, _space_to_space, _all_of_mesh, _all_of_mesh]
    if unit.shape == "fans":
        return [_over_fans, _plain]
    if unit.shape == "arches":
        return [_over_arches]
    if unit.shape == "group":
        return [_plain] if making.rows else [_group_again, _plain]
    ways: list[Way] = [_plain, _more, _gathered, _picots, _group]
    if unit.tops >= 2:
        ways += [_fewer, _mesh, _more]
    if unit.tops % 2 == 0:
        ways.append(_crossed)
    if unit.tops >= 4:
        ways.append(_nested)
    if unit.tops == 6:
        ways += [_fans, _fans, _fans]
    if making.postable:
        ways.append(_ribs)
    return ways
