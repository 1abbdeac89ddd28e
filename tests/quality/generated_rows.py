"""Rows made by chance in print's rarer ways: corner to corner, short rows, half circles, by rule, endings."""

from typing import Any

from hypothesis import strategies as st

from .generated_units import CHAINS, NAMES, Draw, file_of

ORDINALS = {2: "2nd", 3: "3rd", 4: "4th", 5: "5th", 6: "6th"}
Rows = list[dict[str, Any]]


def _sts(number: int) -> str:
    return "st" if number == 1 else f"{number} sts"


def _across(kind: str, width: int) -> dict[str, Any]:
    """A first row of so many stitches whose turning chain doesn't count."""
    chain = CHAINS[kind]
    line = f"{NAMES['US'][kind]} in {ORDINALS[chain + 1]} ch from hook and in each ch across, turn"
    return {"row": 1, "work": line, "count": width}


def _plain(kind: str) -> str:
    return f"ch {CHAINS[kind]}, {NAMES['US'][kind]} in each st across, turn"


@st.composite
def corner_to_corner(draw: Draw) -> bytes:
    """Blocks that grow from one corner and shrink to another."""
    name, arch = draw(st.sampled_from((("dc", 3), ("hdc", 2), ("tr", 4))))
    said = draw(st.booleans())
    width, most = draw(st.integers(2, 4)), draw(st.integers(2, 5))
    aside = f" (skipped chs count as ch-{arch} sp)" if said else ""
    chs = "next ch" if width == 2 else f"next {width - 1} chs"
    begun = f"{name} in {ORDINALS[arch + 1]} ch from hook{aside}, {name} in {chs}"
    space, block = f"ch-{arch} sp", f"(sl st, ch {arch}, {width} {name})"
    loose = f"sl st in next {space}, ch {arch}, {width} {name} in same sp"

    def count(blocks: int) -> str:
        spaces = f"{blocks} ch-{arch} sp" + ("s" if blocks > 1 else "")
        return f"{blocks * width} {name}, {spaces}" if said else str(blocks * width)

    rows: Rows = [{"row": 1, "work": f"{begun}, turn", "count": count(1)}]
    for blocks in range(2, most + 1):
        ways = [f"{block} in each {space} across", f"*{block} in next {space}; rep from * across"]
        ways.append(f"{block} in next " + (space if blocks == 2 else f"{blocks - 1} {space}s"))
        work = f"ch {arch + width}, {begun}, {draw(st.sampled_from(ways))}, turn"
        rows.append({"row": blocks, "work": work, "count": count(blocks)})
    for blocks in range(most - 1, draw(st.integers(1, most - 1)), -1):
        again = draw(st.sampled_from((f"*{loose}", f"*{block} in next {space}")))
        work = (
            f"sl st in next {width} {name}, {again}; rep from * to last {space}, sl st in last {space}, turn"
        )
        rows.append({"row": len(rows) + 1, "work": work, "count": count(blocks)})
    counts = {} if said and draw(st.booleans()) else {name: "does not count"}
    return file_of({"c": {"worked": "rows", "start": f"chain {arch + width}", "rows": rows}}, counts)


@st.composite
def short_rows(draw: Draw) -> bytes:
    """Rows that turn early, and one that takes up what they left."""
    kind = draw(st.sampled_from(("single", "half", "double")))
    width, name = draw(st.integers(9, 30)), NAMES["US"][kind]
    chain = f"ch {CHAINS[kind]}"
    rows: Rows = [_across(kind, width)]
    for _ in range(draw(st.integers(1, 3))):
        now, left = width, 0
        for _ in range(draw(st.integers(1, 2))):
            leave = draw(st.integers(1, max(1, (now - 2) // 2)))
            now, left = now - leave, left + leave
            short = draw(
                st.sampled_from(
                    (
                        f"{chain}, {name} in next {_sts(now)}, leave last {_sts(leave)} unworked, turn",
                        f"{chain}, {name} in each st to last {_sts(leave)}, "
                        f"leave last {_sts(leave)} unworked, turn",
                        f"{chain}, {name} in next {_sts(now)}, turn, leave remaining sts unworked",
                    )
                )
            )
            rows.append({"row": len(rows) + 1, "work": short, "count": now})
            rows.append({"row": len(rows) + 1, "work": _plain(kind), "count": now})
        rest = "in next unworked st" if left == 1 else f"in next {left} unworked sts"
        taken = draw(st.sampled_from((rest, "in each unworked st")))
        work = f"{chain}, {name} in each st across, {name} {taken}, turn"
        rows.append({"row": len(rows) + 1, "work": work, "count": width})
    start = f"chain {width + CHAINS[kind]}"
    return file_of({"c": {"worked": "rows", "start": start, "rows": rows}}, {name: "does not count"})


@st.composite
def half_circles(draw: Draw) -> bytes:
    """Back and forth from a ring, as many more in each row as in the first."""
    kind = draw(st.sampled_from(("single", "half", "double", "treble")))
    name, chain, number = NAMES["US"][kind], CHAINS[kind], draw(st.integers(3, 9))
    counts = kind != "single" and draw(st.booleans())
    said = draw(st.sampled_from((f" (counts as {name})", f", counts as {name}", ""))) if counts else ""
    begin = f"ch {chain}{said}, "
    rows: Rows = [{"row": 1, "work": f"{begin}{number - counts} {name} in ring, turn", "count": number}]
    for size in range(2, draw(st.integers(2, 6)) + 1):
        rest = f", {name} in next {_sts(size - 2)}" if size > 2 else ""
        unit = f"2 {name} in next st{rest}"
        first = f"{name} in {draw(st.sampled_from(('first', 'same')))} st{rest}, " if counts else ""
        ways = [f"*{unit}; rep from * across", f"({unit}) x {number - counts}"]
        if size == 2:
            ways.append(f"2 {name} in each st across")
        work = f"{begin}{first}{draw(st.sampled_from(ways))}, turn"
        rows.append({"row": size, "work": work, "count": number * size})
    start = draw(st.sampled_from(("magic ring", "chain 4, joined")))
    says = "counts" if counts else "does not count"
    return file_of({"c": {"worked": "rows", "start": start, "rows": rows}}, {name: says})


@st.composite
def by_rule(draw: Draw) -> bytes:
    """Rows written once: every other one, one more each time, again, mirrored; in one size or several."""
    sizes = draw(st.integers(1, 3))
    widths = [draw(st.integers(15, 19)) + 4 * size for size in range(sizes)]
    offset = draw(st.integers(1, 4))

    def each(values: list[int]) -> str:
        return str(values[0]) if sizes == 1 else f"{values[0]} ({', '.join(map(str, values[1:]))})"

    def one(values: list[int]) -> int | str:
        return values[0] if sizes == 1 else each(values)

    shaped = draw(st.integers(1, 4))
    grows = draw(st.sampled_from((1, -1)))
    end = 1 + 2 * shaped
    shape = "inc" if grows > 0 else "sc2tog"
    line = f"ch 1, sc in next n sts, {shape}, sc in each st to end, turn"
    rows: Rows = [
        {"row": 1, "work": "sc in 2nd ch from hook and in each ch across, turn", "count": each(widths)},
        {"rows": f"2-{end - 1}", "every": 2, "work": "ch 1, sc in each st across, turn"},
        {
            "rows": f"3-{end}",
            "every": 2,
            "work": line,
            "n": {"from": one([offset + size for size in range(sizes)]), "step": draw(st.integers(0, 1))},
        },
    ]
    if shaped == 1:
        rows[1:] = [
            {"row": 2, "work": "ch 1, sc in each st across, turn"},
            {"row": 3, "work": line.replace("next n sts", "next 2 sts")},
        ]
    now = [width + grows * shaped for width in widths]
    last = end
    slope = "ch 1, sc in next st, sc2tog, sc in each st to end, turn"
    now = [width - 1 for width in now]
    rows.append({"row": last + 1, "work": slope, "count": each(now)})
    for mirrored in draw(st.lists(st.booleans(), max_size=3)):
        last += 1
        now = [width - 1 for width in now]
        again: dict[str, Any] = {"row": last + 1, "as": end + 1, "count": each(now)}
        rows.append(again | ({"reversed": True} if mirrored else {}))
    rows.append({"row": last + 2, "work": "ch 1, sc in each st across, turn", "count": each(now)})
    times = draw(st.integers(1, 2))
    rows.append({"rows": f"{last + 3}-{last + 2 + 2 * times}", "repeat": f"{last + 1}-{last + 2}"})
    now = [width - times for width in now]
    rows.append({"row": last + 3 + 2 * times, "as": last + 2, "count": each(now)})
    piece = {"worked": "rows", "start": f"chain {each([width + 1 for width in widths])}", "rows": rows}
    more = {"sizes": ["S", "M", "L"][:sizes]} if sizes > 1 else {}
    return file_of({"c": piece}, {"sc": "does not count"}, **more)


@st.composite
def endings(draw: Draw) -> bytes:
    """Repeats that end otherwise: with a stitch, in the last pass's stead, some stitches before the end."""
    way = draw(st.sampled_from(("with", "instead", "to last", "omitting")))
    passes, unit, chain = draw(st.integers(2, 6)), draw(st.integers(2, 5)), draw(st.integers(2, 5))
    skip = "sk next st" if unit == 2 else f"sk {unit - 1} sts"
    mesh = f"*sc in next st, ch {chain}, {skip}; rep from * across"
    if way == "with":
        width = passes * unit + 1
        work, count = f"ch 1, {mesh}, ending with sc in last st, turn", (passes + 1, passes)
    elif way == "instead":
        width = passes * unit + 2
        work, count = f"ch 1, {mesh}, ending last rep with sc in last st, turn", (passes + 2, passes + 1)
    elif way == "omitting":
        width = passes * unit
        work, count = f"ch 1, *sc in next {_sts(unit)}, ch {chain}; rep from * across, ", (width, passes - 1)
        work += f"omitting last ch {chain}, turn"
    else:
        last = draw(st.integers(1, 6))
        width = passes * (unit + 1) + last
        plain = [f"sc in last {_sts(last)}", f"sc in next {_sts(last)}", "sc in each st to end"]
        end = draw(st.sampled_from(plain))
        around = f"sc in next {_sts(unit - 1)}, sc2tog"
        work = f"ch 1, *{around}; rep from * to last {_sts(last)}, {end}, turn"
        count = (passes * unit + last, 0)
    said = draw(st.sampled_from(("sc", "sts")))
    kinds = [f"{count[0]} {said}"] + (
        [f"{count[1]} ch-{chain} sp" + "s" * (count[1] > 1)] if count[1] else []
    )
    rows: Rows = [_across("single", width), {"row": 2, "work": work, "count": ", ".join(kinds)}]
    piece = {"worked": "rows", "start": f"chain {width + 1}", "rows": rows}
    return file_of({"c": piece}, {"sc": "does not count"})


rows = st.one_of(corner_to_corner(), short_rows(), half_circles(), by_rule(), endings())
