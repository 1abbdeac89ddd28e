"""Rows made by chance whose last stitch goes into a turning chain, or whose first chain is a mesh's."""

from typing import Any

from hypothesis import strategies as st

from .generated_rows import ORDINALS
from .generated_units import CHAINS, NAMES, Draw, file_of

Rows = list[dict[str, Any]]


def _sts(number: int) -> str:
    return "next st" if number == 1 else f"next {number} sts"


def _nth(number: int) -> str:
    return ORDINALS.get(number, f"{number}th")


def _file(rows: Rows, start: str, name: str, **more: Any) -> bytes:
    return file_of({"c": {"worked": "rows", "start": start, "rows": rows}}, {name: "counts"}, **more)


def _numbered(lines: list[tuple[str, str]]) -> Rows:
    return [{"row": at, "work": f"{work}, turn", "count": count} for at, (work, count) in enumerate(lines, 1)]


def _tall(draw: Draw) -> tuple[str, int]:
    """A stitch whose turning chain counts, and that chain."""
    kind = draw(st.sampled_from(("half", "double", "treble")))
    return NAMES["US"][kind], CHAINS[kind]


def _to_the_chain(draw: Draw, name: str, chain: int, width: int) -> str:
    """A stitch in each of so many, the last of them in the turning chain."""
    there = draw(st.sampled_from(("top of tch", f"top of ch-{chain}", "tch")))
    each = draw(st.sampled_from((f"each {name}", "each st")))
    one = each.removeprefix("each ")
    top = f"{name} in {there}"
    ways = [
        f"{name} in {each} across, working last {name} in {there}",
        f"{name} in {each} across, ending with last {name} in {there}",
        f"{name} in {each} across, last {name} in {there}",
        f"{name} in {each} across, {top}",
        f"{name} in {each} to last {one}, {top}",
        f"{name} in {each} to last 2 {'sts' if one == 'st' else one}, {name} in next {one}, {top}",
        f"{name} in {_sts(width - 2)}, {top}",
        f"{name} in {each} to tch, {top}",
    ]
    return str(draw(st.sampled_from(ways)))


@st.composite
def last_in_the_chain(draw: Draw) -> bytes:
    """Plain rows, a few of which pass stitches before the turning chain by chains or a skip."""
    name, chain = _tall(draw)
    width = draw(st.integers(5, 20))
    lines = [(f"{name} in {_nth(chain + 1)} ch from hook and in each ch across", str(width))]
    for _ in range(draw(st.integers(1, 4))):
        lines.append((f"ch {chain}, {_to_the_chain(draw, name, chain, width)}", str(width)))
    some, passed = draw(st.integers(1, width - 3)), draw(st.integers(1, 4))
    left = width - 2 - some
    last = draw(st.sampled_from((f"{name} in top of tch", f"{name} in top of ch-{chain}")))
    bridge = f"ch {passed}, {last}"
    skip = f"sk {left} sts" if left > 1 else "sk next st"
    way = draw(st.sampled_from((bridge, f"{skip}, {last}", f"ch {passed}, {skip}, {last}")))
    spaces = f", 1 ch-{passed} sp" if way.startswith("ch") else ""
    lines.append((f"ch {chain}, {name} in {_sts(some)}, {way}", f"{some + 2} {name}{spaces}"))
    return _file(_numbered(lines), f"chain {width + chain - 1}", name)


@st.composite
def meshes(draw: Draw) -> bytes:
    """Squares whose first is never spoken of: the skipped chains, and the turning chain, hold it."""
    name, chain = draw(st.sampled_from((("dc", 3), ("tr", 4))))
    space, squares = draw(st.integers(1, 3)), draw(st.integers(3, 10))
    sp, mesh = f"ch-{space} sp", f"ch {space}"
    skip = "sk next ch" if space == 1 else f"sk {space} chs"
    hook = chain + 2 * space + 1
    count = f"{squares + 1} {name}, {squares} {sp}s"
    aside = draw(st.sampled_from(("", "", f" (counts as {name}, ch {space})")))
    lines = [
        (f"{name} in {_nth(hook)} ch from hook, *{mesh}, {skip}, {name} in next ch; rep from * across", count)
    ]
    begin = f"ch {chain + space}{aside}"
    there = st.sampled_from(("top of tch", f"{_nth(chain)} ch of tch", f"top of ch-{chain + space}"))
    for row in range(draw(st.integers(1, 4))):
        end = draw(there) if row else draw(st.sampled_from(("top of tch", f"{_nth(chain)} ch of tch")))
        ending = draw(st.sampled_from(("working last", "ending with last"))) + f" {name} in {end}"
        named = f"*{mesh}, sk next {sp}, {name} in next {name}; rep from * across, {ending}"
        plain = f"*{mesh}, {name} in next {name}; rep from * across, {ending}"
        ways = [
            f"{begin}, sk first {sp}, {name} in next {name}, {named}",
            f"{begin}, {name} in next {name}, {plain}",
            f"{begin}, *{name} in next {name}, {mesh}; rep from * to tch, {name} in {end}",
            f"{begin}, ({name} in next {name}, {mesh}) x {squares - 1}, {name} in {end}",
        ]
        lines.append((draw(st.sampled_from(ways)), count))
    return _file(_numbered(lines), f"chain {hook + (squares - 1) * (space + 1)}", name)


@st.composite
def v_stitches(draw: Draw) -> bytes:
    """V-stitches, written out and by the author's name, between the row's first stitch and its last."""
    name, chain = _tall(draw)
    space, number = draw(st.integers(1, 3)), draw(st.integers(2, 8))
    edge = draw(st.integers(1, 2))
    v, sp = f"({name}, ch {space}, {name})", f"ch-{space} sp"
    first = f"{name} in {_nth(chain + 1)} ch from hook, *sk 2 chs" if edge == 2 else ""
    if edge == 2:
        work = f"{first}, {v} in next ch; rep from * to last 4 chs, sk 2 chs, {name} in last 2 chs"
        start = chain + 1 + 3 * number + 4
    else:
        again = f"*sk 2 chs, {v} in next ch; rep from * to last 3 chs, sk 2 chs, {name} in last ch"
        work = f"{v} in {_nth(chain + 2)} ch from hook, {again}"
        start = chain + 2 + 3 * (number - 1) + 3
    count = f"{2 * number + 2 * edge} {name}, {number} {sp}s"
    lines = [(work, count)]
    for _ in range(draw(st.integers(1, 4))):
        ways = [
            f"{v} in each {sp} across",
            f"V-st in each {sp} across",
            "V-st in each V-st across",
            "V-st in center of each V-st across",
            f"({v} in next {sp}) x {number}",
            f"V-st in {sp} of next V-st, V-st in center of each V-st across",
        ]
        top = f"{name} in top of tch"
        ends = (
            [f"{name} in last {name}, {top}", f"{name} in last 2 sts"]
            if edge == 2
            else [top, f"{name} in last st"]
        )
        before = f"{name} in next {name}, " if edge == 2 else ""
        middle, end = draw(st.sampled_from(ways)), draw(st.sampled_from(ends))
        lines.append((f"ch {chain}, {before}{middle}, {end}", count))
    specials = {"V-st": {"work": f"{v} in same st", "text": "A fork."}}
    return _file(_numbered(lines), f"chain {start}", name, **{"special stitches": specials})


@st.composite
def shell_rows(draw: Draw) -> bytes:
    """Half a doily: each row goes by slip stitches to its first shell's space, and ends in its last one's."""
    half, space, side = draw(st.integers(2, 3)), draw(st.integers(1, 2)), draw(st.integers(3, 5))
    middle = draw(st.integers(3, 8))
    shell = f"({half} dc, ch {space}, {half} dc)"
    first = f"ch 3 (counts as dc), {half - 1} dc in ring, ch {space}, {half} dc in ring"
    lines = [
        (
            f"{first}, ch {side}, {middle} tr in ring, ch {side}, {shell} in ring",
            f"{4 * half} dc, {middle} tr, 2 ch-{space} sps, 2 ch-{side} sps",
        )
    ]
    rest = "dc" if half == 2 else f"{half - 1} dc"
    begin = f"sl st in first {half} dc, sl st in next ch-{space} sp, ch 3 (counts as dc), "
    begin += f"({rest}, ch {space}, {half} dc) in same sp, ch {side}"
    end = f"{shell} in last ch-{space} sp"
    more = "once more" if middle == 3 else f"{middle - 2} more times"
    lines.append(
        (
            f"{begin}, sc in next tr, *ch {side}, sc in next tr; rep from * {more}, ch {side}, {end}",
            f"{4 * half} dc, {middle} sc, 2 ch-{space} sps, {middle + 1} ch-{side} sps",
        )
    )
    arches = middle - 1
    for _ in range(draw(st.integers(0, 2))):
        if arches < 2:
            break
        skip, arch = f"sk next ch-{side} sp", f"sc in next ch-{side} sp, ch {side}"
        lines.append(
            (
                f"{begin}, {skip}, ({arch}) x {arches}, {skip}, {end}",
                f"{4 * half} dc, {arches} sc, 2 ch-{space} sps, {arches + 1} ch-{side} sps",
            )
        )
        arches -= 1
    return _file(_numbered(lines), "magic ring", "dc")


@st.composite
def begun_again(draw: Draw) -> bytes:
    """Rows that are broken off and begun again, on either side; at which end that is, the last row shows."""
    low, tall = draw(st.integers(2, 6)), draw(st.integers(1, 6))
    total = low + tall
    rows: Rows = [
        {"row": 1, "work": "sc in 2nd ch from hook and in each ch across, fasten off", "count": total}
    ]
    side = ""
    for row in range(2, draw(st.integers(2, 5)) + 1):
        side = draw(st.sampled_from(("RS", "WS")))
        begin = f"with {side} facing, join {draw(st.sampled_from('AB'))} with sl st in first st, ch 1"
        work = f"{begin}, sc in {_sts(low)}, hdc in {_sts(tall)}, fasten off"
        rows.append({"row": row, "work": work, "count": f"{low} sc, {tall} hdc"})
    again = draw(st.sampled_from(("RS", "WS")))
    begin = f"with {again} facing, join B with sl st in first st, ch 1"
    work = f"{begin}, sc in next sc, sc in each st across"  # from the other end the tall ones are passed by
    rows.append({"row": len(rows) + 1, "work": work, "count": total if again == side else low})
    piece = {"worked": "rows", "start": f"chain {total + 1}", "rows": rows}
    return file_of({"c": piece}, {"sc": "does not count"})


@st.composite
def said_once(draw: Draw) -> bytes:
    """Whether its chain counts is said of one row alone, and no count is stated behind it."""
    name, chain = _tall(draw)
    width, counts = draw(st.integers(4, 20)), draw(st.booleans())
    aside = f" (counts as {name})" if counts else " (does not count)"
    rows: Rows = [{"row": 1, "work": "sc in 2nd ch from hook and in each ch across, turn", "count": width}]
    each = draw(st.sampled_from((f"{name} in each st across", f"{name} in each st to end")))
    rows.append({"row": 2, "work": f"ch {chain}{aside}, {each}, turn", "count": width})
    for row in range(3, draw(st.integers(3, 6)) + 1):
        low = draw(st.booleans())
        rows.append(
            {
                "row": row,
                "work": f"ch {1 if low else chain}, {each if not low else 'sc in each st across'}, turn",
            }
        )
    return file_of({"c": {"worked": "rows", "start": f"chain {width + 1}", "rows": rows}}, {})


turning_chains = st.one_of(
    last_in_the_chain(), meshes(), v_stitches(), shell_rows(), begun_again(), said_once()
)
