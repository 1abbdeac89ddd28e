"""Pieces made by chance that begin on others or are joined to them, by sides, in loops left free."""

from typing import Any

from hypothesis import strategies as st

from .generated_rows import ORDINALS
from .generated_units import Draw, file_of

COUNTS = {"dc": "counts", "sc": "does not count"}


def _rounds(lines: list[tuple[str, str]]) -> list[dict[str, Any]]:
    return [{"round": at, "work": work, "count": count} for at, (work, count) in enumerate(lines, 1)]


def _mat(width: int, height: int) -> dict[str, Any]:
    first = {"row": 1, "work": "sc in 2nd ch from hook and in each ch across, turn", "count": width}
    more = {"rows": f"2-{height}", "work": "ch 1, sc in each st across, turn", "count": width}
    return {"worked": "rows", "start": f"chain {width + 1}", "rows": [first, more]}


def _sides(numbers: range) -> str:
    *others, last = [ORDINALS[number] for number in numbers]
    return f"{', '.join(others)} and {last} sides" if others else f"{last} side"


@st.composite
def borders(draw: Draw) -> bytes:
    """All the way around a piece in rows, and along the ends of its rows."""
    width, height = draw(st.integers(4, 20)), draw(st.integers(3, 12))
    even = draw(st.integers(2, 2 * height))
    along, number = draw(
        st.sampled_from(
            (
                ("sc in end of each row to next corner", height),
                ("2 sc in end of each row to next corner", 2 * height),
                (f"{even} sc evenly along edge to next corner", even),
                ("3 sc in every 2 row ends to next corner", height * 3 // 2),
            )
        )
    )
    side = f"3 sc in corner, sc in each st across to next corner, 3 sc in corner, {along}"
    total = 2 * (6 + width - 2 + number)
    lines = [(f"join B with sl st in any corner, ch 1, *{side}; rep from * once more, join", str(total))]
    for turn in range(draw(st.integers(0, 2))):
        total += 8
        again = draw(st.sampled_from(("on 2nd, 3rd and 4th sides", "on next 3 sides", "around")))
        before = f"sc in next {turn + 1} sts" if turn else "sc in next st"
        round_ = f"*3 sc in corner, sc in each st across to next corner; rep from * {again}"
        lines.append((f"ch 1, {before}, {round_}, join", str(total)))
    pieces: dict[str, Any] = {
        "mat": _mat(width, height),
        "border": {
            "worked": "joined rounds",
            "start": {"edge": "mat", "around": True},
            "rounds": _rounds(lines),
        },
    }
    ends, made = draw(
        st.sampled_from(
            (
                ("sc in end of each row", height),
                ("2 sc in end of each row", 2 * height),
                ("3 sc in every 2 row ends", height * 3 // 2),
                (f"{even} sc evenly along edge", even),
            )
        )
    )
    strip = [
        {"row": 1, "work": f"ch 1, {ends}, turn", "count": made},
        {"row": 2, "work": "ch 1, sc in each st across, turn", "count": made},
    ]
    pieces["strip"] = {"worked": "rows", "start": {"edge": "mat", "row ends": True}, "rows": strip}
    return file_of(pieces, COUNTS)


@st.composite
def on_a_round(draw: Draw) -> bytes:
    """On stitches by number, all around, and on those that were left under chains."""
    number, leave = draw(st.integers(14, 40)), draw(st.integers(1, 4))
    chain = draw(st.integers(1, 5))
    before = draw(st.integers(1, 3))
    after = number - before - 2 * leave - 2
    skip = "sk next st" if leave == 1 else f"sk {leave} sts"
    hole = f"ch {chain}, {skip}"
    first = "sc in next st" if before == 1 else f"sc in next {before} sts"
    last = "sc in next st" if after == 1 else f"sc in next {after} sts"
    yoke = [
        (f"ch 1, {number} sc in ring, join", str(number)),
        ("ch 1, sc in each st around, join", str(number)),
        (
            f"ch 1, {first}, {hole}, sc in next 2 sts, {hole}, {last}, join, fasten off",
            f"{before + after + 2} sts, 2 ch-{chain} sps",
        ),
    ]
    start, end = sorted(draw(st.lists(st.integers(1, number), min_size=2, max_size=2, unique=True)))
    width = end - start + 1
    rows = [
        {"row": 1, "work": "join B with sl st in first st, ch 1, sc in each st across, turn", "count": width},
        {"row": 2, "work": "ch 1, sc2tog, sc in each st to end, turn", "count": width - 1},
    ]
    if width == 2:
        rows.pop()
    thumb = [
        ("join B with sl st in first st, ch 1, sc in each st around, join", str(2 * leave)),
        ("ch 1, 2 sc in each st around, join", str(4 * leave)),
    ]
    brim = [
        ("join B with sl st in any st, ch 1, 2 sc in each st around, join", str(2 * number)),
        ("ch 1, (sc in next st, inc) x " + str(number) + ", join", str(3 * number)),
    ]
    run = f"{start}-{end}"
    pieces: dict[str, dict[str, Any]] = {
        "yoke": {"worked": "joined rounds", "start": "magic ring", "rounds": _rounds(yoke)},
        "tab": {"worked": "rows", "start": {"edge": "yoke", "round": 2, "stitches": run}, "rows": rows},
        "thumb": {
            "worked": "joined rounds",
            "start": {"edge": "yoke", "round": 2, "stitches": "unworked"},
            "rounds": _rounds(thumb),
        },
        "disc": {"worked": "joined rounds", "start": "magic ring", "rounds": _rounds(yoke[:2])},
        "brim": {
            "worked": "joined rounds",
            "start": {"edge": "disc", "around": True},
            "rounds": _rounds(brim),
        },
    }
    return file_of(pieces, COUNTS)


@st.composite
def joined_as_they_go(draw: Draw) -> bytes:
    """Squares (or other motifs) whose arches are fastened to those of the one before."""
    arch, group, sides = draw(st.sampled_from((3, 5, 7))), draw(st.integers(1, 4)), draw(st.integers(3, 6))
    half = f"ch {arch // 2}"
    where = draw(st.sampled_from((f"ch-{arch} sp", "ch-sp")))
    joint = f"{half}, sl st in corresponding {where} of square 1, {half}"
    count = f"{sides * group} sts, {sides} ch-{arch} sps"
    ground = (f"ch 1, {sides * group} sc in ring, join", str(sides * group))
    stitch = draw(st.sampled_from(("ring", "round")))
    there = f"{group} sc in ring" if stitch == "ring" else f"sc in next {group} sts"
    there = there.replace("next 1 sts", "next st")
    joined = draw(st.integers(1, sides - 1))
    open_ = sides - joined

    def times(unit: str, number: int) -> str:
        return unit if number == 1 else f"({unit}) x {number}"

    line = f"{times(f'{there}, {joint}', joined)}, {times(f'{there}, ch {arch}', open_)}"
    plain = f"{times(f'{there}, ch {arch}', sides)}"
    pieces = {}
    for name, work in (("square 1", plain), ("square 2", line)):
        lines = [*([ground] if stitch == "round" else []), (f"ch 1, {work}, join, fasten off", count)]
        pieces[name] = {"worked": "joined rounds", "start": "magic ring", "rounds": _rounds(lines)}
    return file_of(pieces, COUNTS)


@st.composite
def by_sides(draw: Draw) -> bytes:
    """Motifs whose rounds are written for one side and worked again on the others."""
    sides, corner = draw(st.integers(3, 6)), draw(st.integers(1, 3))
    tops = draw(st.integers(1, 3))
    first = f"ch 1, ({tops} sc in ring, ch {corner}) x {sides}, join"
    lines = [(first, f"{sides * tops} sc, {sides} ch-{corner} sps")]
    for turn in range(draw(st.integers(1, 3))):
        number = "next st" if tops == 1 else f"next {tops} sts"
        along = [f"sc in each st to next ch-{corner} sp", "sc in each st to next ch-sp"]
        if turn == 0:
            along.append(f"sc in {number}")
        unit = f"{draw(st.sampled_from(along))}, (sc, ch {corner}, sc) in next ch-{corner} sp"
        ways = [
            f"*{unit}; rep from * on next {sides - 1} sides",
            f"*{unit}; rep from * on {_sides(range(2, sides + 1))}",
            f"*{unit}*, {unit}, rep from * to * on {_sides(range(3, sides + 1))}",
        ]
        rest = ", sc in each remaining st" if turn else ""  # behind the last corner, before the first side
        tops += 2
        count = f"{sides * tops} {draw(st.sampled_from(('sc', 'sts')))}, {sides} ch-{corner} sps"
        lines.append((f"ch 1, {draw(st.sampled_from(ways))}{rest}, join", count))
    return file_of(
        {"c": {"worked": "joined rounds", "start": "magic ring", "rounds": _rounds(lines)}}, COUNTS
    )


@st.composite
def frills(draw: Draw) -> bytes:
    """Rounds in one loop, and stitches later in the loops that they left."""
    number, loop = draw(st.integers(6, 30)), draw(st.sampled_from(("BLO", "FLO")))
    other = {"BLO": "front", "FLO": "back"}[loop]
    lines = [(f"ch 1, {number} sc in ring, join", str(number))]
    if draw(st.booleans()):
        number *= 2
        lines.append(("ch 1, 2 sc in each st around, join", str(number)))
    of = len(lines)
    lines.append((f"ch 1, sc in {loop} of each st around, join", str(number)))
    lines += [("ch 1, sc in each st around, join", str(number))] * draw(st.integers(0, 2))
    lines[-1] = (lines[-1][0] + ", fasten off", lines[-1][1])
    some, chain = draw(st.integers(1, number)), draw(st.integers(1, 4))
    loops = f"next free loop of round {of}" if some == 1 else f"next {some} free loops of round {of}"
    join = f"join B with sl st in any free loop of round {of}"
    work, count = draw(
        st.sampled_from(
            (
                (
                    f"{join}, ch 1, (sc, ch {chain}, sc) in each free loop of round {of} around, join",
                    f"{2 * number} sc, {number} ch-{chain} sps",
                ),
                (f"{join}, ch 1, 3 sc in {other} loops left free in round {of}, join", str(3 * number)),
                (f"{join}, ch 1, sc in {loops}", str(some)),
                (
                    f"{join}, working in free loops of round {of}, ch 1, *sc in next st, ch {chain}; "
                    "rep from * around, join",
                    f"{number} sts, {number} ch-{chain} sps",
                ),
                (
                    f"{join}, working in free {other} loops of round {of}, "
                    "ch 1, 2 sc in each st around, join",
                    str(2 * number),
                ),
            )
        )
    )
    lines.append((f"{work}, fasten off", count))
    return file_of(
        {"c": {"worked": "joined rounds", "start": "magic ring", "rounds": _rounds(lines)}}, COUNTS
    )


edges = st.one_of(borders(), on_a_round(), joined_as_they_go(), by_sides(), frills())
