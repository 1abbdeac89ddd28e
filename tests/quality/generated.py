"""Patterns made by chance that fit because of how they are built: whole units, repeated.

An edge is so many units (one number a size), each of the same few stitches. A line works one unit and
repeats it, so it comes out even in every size; what a unit becomes is known, and so is the count.
"""

from typing import Any

from hypothesis import strategies as st

from tests.yaml_text import written_yaml

from .generated_units import CHAINS, NAMES, Draw, Making, Unit, choices, some


def worked(making: Making) -> None:
    """One more round."""
    kind = making.pick("single", "single", "half", "double", "treble")
    if making.rows and making.unit.shape != "plain":
        kind = making.unit.kind
    steps, unit = making.pick(*choices(making))(making, kind)
    if making.rows and making.unit.shape in ("mesh", "fans"):
        steps.reverse()  # the row below is met from its other end
    body = ", ".join(steps)
    first = _first_kind(making, steps)
    ends = making.sides if making.rows else 0
    chain, standing = _turning_chain(making, first)
    repeated = _repeated(making, body)
    if standing and not ends:
        chain, standing = f"ch {CHAINS[first]} (does not count)" if not making.spiral else "", False
    before = some(making, first, ends - standing) if ends else []
    after = some(making, first, ends) if ends else []
    line = ", ".join([*([chain] if chain else []), *before, repeated, *after, *_end(making)])
    entry: dict[str, Any] = {("row" if making.rows else "round"): len(making.lines) + 1, "work": line}
    total = [unit.tops * units + 2 * ends for units in making.units]
    if making.pick(True, True, False) or " times" in repeated:
        entry["count"] = making.number(total) if len(set(total)) > 1 else str(total[0])
    making.lines.append(entry)
    making.unit = unit
    making.postable = unit.shape == "plain"


def _first_kind(making: Making, steps: list[str]) -> str:
    names = {name: kind for kind, name in NAMES[making.terms].items() if kind in CHAINS}
    for word in " ".join(steps).replace("(", " ").replace(",", " ").split():
        plain = word.removeprefix("FP").removeprefix("BP").partition("tog")[0].rstrip("0123456789")
        plain = plain.partition("-")[2] or plain
        if plain in names:
            return names[plain]
    return "single"


def _turning_chain(making: Making, kind: str) -> tuple[str, bool]:
    """The chain at the start and whether it stands for the first stitch."""
    if making.spiral:
        return "", False
    chain = f"ch {CHAINS[kind]}"
    counts = making.counts.get(kind, False)
    name = making.name(kind)
    said = making.pick("", "", f" (counts as {name})" if counts else " (does not count)")
    return chain + said, counts


def _repeated(making: Making, body: str) -> str:
    units = making.units
    around = "across" if making.rows else "around"
    ways = [f"({body}) x {making.number(units)}", f"[{body}] {making.number(units)} times"]
    if not making.rows or not making.sides:
        ways += [f"*{body}; rep from * {around}"] * 2
    else:
        ways.append(f"*{body}; rep from * to last {making.sts(making.sides)}")
    if len(units) == 1 and units[0] > 1:
        more = "time" if units[0] == 2 else "times"
        ways.append(f"*{body}; rep from * {units[0] - 1} more {more}")
    if "(" in body:
        ways = [way for way in ways if way[0] in "*["]
    return str(making.pick(*ways))


def _end(making: Making) -> list[str]:
    if making.rows:
        return ["turn"]
    return [] if making.spiral else [making.pick("join", "join", "join with sl st to first st")]


@st.composite
def patterns(draw: Draw) -> bytes:
    """A whole pattern file that fits."""
    making = begin(draw)
    for _ in range(draw(st.integers(1, 6))):
        if max(making.units) * making.unit.tops > 150:
            break
        worked(making)
    return written(making)


def begin(draw: Draw) -> Making:
    """The start and the first round."""
    terms = draw(st.sampled_from(("US", "UK")))
    sizes = draw(st.sampled_from((1, 1, 2, 3)))
    smallest = draw(st.integers(2, 8))
    units = [smallest + 2 * size for size in range(sizes)]
    way = draw(st.sampled_from(("joined", "spiral", "rows", "rows")))
    counts = {kind: draw(st.booleans()) for kind in ("half", "double", "treble")} | {"single": False}
    tops = draw(st.sampled_from((1, 2, 3, 4, 6, 6)))
    kind = draw(st.sampled_from(("single", "half", "double")))
    making = Making(draw, terms, units, way == "rows", way == "spiral", counts, Unit("plain", tops, kind))
    name = making.name(kind)
    if making.rows:
        making.sides = draw(st.integers(1, 3))
        total = [tops * number + 2 * making.sides for number in units]
        chain = CHAINS[kind]
        made = [number + chain - (1 if making.counts[kind] else 0) for number in total]
        aside = f" (skipped chs count as {name})" if making.counts[kind] else ""
        nth = {1: "2nd", 2: "3rd", 3: "4th"}[chain]
        line = f"{name} in {nth} ch from hook{aside} and in each ch across, turn"
        start = f"chain {making.number(made)}"
    else:
        total = [tops * number for number in units]
        chain_start = "" if making.spiral else f"ch {CHAINS[kind]} (does not count), "
        line = f"{chain_start}{making.number(total)} {name} in ring" + ("" if making.spiral else ", join")
        start = draw(st.sampled_from(("magic ring", "chain 5, joined")))
    if making.terms == "UK":
        line = line.replace("skipped", "missed")
    making.lines.append({("row" if making.rows else "round"): 1, "work": line, "count": making.number(total)})
    making.postable = True
    making.start = start
    return making


def written(making: Making) -> bytes:
    """As YAML, with what the lines lean on."""
    counts = {
        making.name(kind): "counts" if says else "does not count" for kind, says in making.counts.items()
    }
    file: dict[str, Any] = {
        "title": "By chance",
        "terms": making.terms,
        "gauge": "not critical",
        "turning chains": counts,
        "chain spaces": "not counted",
        "special stitches": {
            "shell": {"short": "sh", "work": f"5 {making.name('double')} in same st", "text": "A fan."}
        },
        "pieces": {
            "piece": {
                "worked": "rows" if making.rows else "spiral rounds" if making.spiral else "joined rounds",
                "start": making.start,
                ("rows" if making.rows else "rounds"): making.lines,
            }
        },
    }
    if len(making.units) > 1:
        file["sizes"] = ["S", "M", "L"][: len(making.units)]
    return written_yaml(file).encode()
