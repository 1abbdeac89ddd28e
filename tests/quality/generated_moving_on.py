"""Rounds made by chance that go on behind their join, begin with a cluster, or are closed by a stitch."""

from typing import Any

from hypothesis import strategies as st

from .generated_units import Draw, file_of

COUNTS = {"dc": "counts", "sc": "does not count"}
Lines = list[tuple[str, str]]


def _file(lines: Lines, start: str, **more: Any) -> bytes:
    rounds = [{"round": at, "work": work, "count": count} for at, (work, count) in enumerate(lines, 1)]
    return file_of({"piece": {"worked": "joined rounds", "start": start, "rounds": rounds}}, COUNTS, **more)


def _spaces(number: int, chains: int) -> str:
    return f"{number} ch-{chains} sp" + ("s" if number > 1 else "")


def _times(steps: str, number: int) -> str:
    return steps if number == 1 else f"({steps}) x {number}"


@st.composite
def behind_the_join(draw: Draw) -> bytes:
    """Groups into corner spaces; the way to the next one stands behind the join, or before the next chain."""
    sides, corner = draw(st.integers(3, 6)), draw(st.integers(2, 4))
    group = draw(st.integers(2, 4))
    lines: Lines = [
        (
            f"ch 3 (counts as dc), {group - 1} dc in ring, ch {corner}, "
            f"({group} dc in ring, ch {corner}) x {sides - 1}, join",
            f"{sides * group} dc, {_spaces(sides, corner)}",
        )
    ]
    sides_of = 1
    for _ in range(draw(st.integers(1, 3))):
        begin = f"ch 3 (counts as dc), ({group - 1} dc, ch {corner}, {group} dc) in same sp"
        begin = _move(draw, lines, group - 1, f"ch-{corner} sp", begin)
        along = f"ch 1, {group} dc in next ch-1 sp, " * (sides_of - 1) + "ch 1"
        corner_group = f"({group} dc, ch {corner}, {group} dc) in next ch-{corner} sp"
        more = draw(st.sampled_from(("around", f"{sides - 2} more times" if sides > 3 else "once more")))
        sides_of += 1
        lines.append(
            (
                f"{begin}, {along}, *{corner_group}, {along}; rep from * {more}, join",
                f"{sides * group * sides_of} dc, {_spaces(sides, corner)}, "
                f"{_spaces(sides * (sides_of - 1), 1)}",
            )
        )
    return _file(lines, draw(st.sampled_from(("magic ring", "chain 4, joined"))))


def _move(draw: Draw, lines: Lines, over: int, space: str, begin: str) -> str:
    """The line's beginning, its slip stitches with it or behind the join before it."""
    stitches = {0: "", 1: "sl st in next st, "}.get(over, f"sl st in next {over} dc, ")
    across = draw(st.sampled_from((f"{stitches}sl st in next {space}", f"sl st across to next {space}")))
    way = draw(st.sampled_from(("before", "behind", "behind, with the chain")))
    if way == "before":
        return f"{across}, {begin}"
    work, count = lines[-1]
    if way == "behind" or not begin.startswith("ch 3 (counts as dc), "):
        lines[-1] = (f"{work}, {across}", count)
        return begin
    lines[-1] = (f"{work}, {across}, ch 3", count)
    return begin.removeprefix("ch 3 (counts as dc), ")


@st.composite
def beginning_clusters(draw: Draw) -> bytes:
    """Rounds of clusters, whose first stands on the round's chain."""
    number, legs = draw(st.integers(3, 8)), draw(st.integers(3, 5))
    arch, chain = draw(st.integers(2, 5)), draw(st.sampled_from((2, 3)))
    specials = {
        "beginning cluster": {"short": "beg cl", "work": f"ch {chain}, dc{legs - 1}tog in same st"},
        "cluster": {"short": "cl", "work": f"dc{legs}tog in same st"},
    }

    def count(clusters: int, spaces: str) -> str:
        return f"{clusters} {draw(st.sampled_from(('dc', 'cl', 'sts')))}, {spaces}"

    first = f"beg cl in ring, ch {arch}, (cl in ring, ch {arch}) x {number - 1}"
    end = draw(st.sampled_from(("join", "join to top of beg cl")))
    lines: Lines = [(f"{first}, {end}", count(number, _spaces(number, arch)))]
    for _ in range(draw(st.integers(1, 3))):
        space, inner = f"ch-{arch} sp", draw(st.integers(1, 4))
        between = draw(st.sampled_from(("", f"ch {arch}, ")))
        if inner == arch:
            between = ""
        pair = f"(cl, ch {inner}, cl) in"
        begin = _move(draw, lines, 0, space, f"(beg cl, ch {inner}, cl) in same sp")
        ways = [f"{between}*{pair} next {space}, {between}; rep from * around"]
        ways.append(f"{between}{_times(f'{pair} next {space}, {between}'.rstrip(', '), number - 1)}")
        if not between:
            ways.append(f"{pair} each {space} around")
        way = draw(st.sampled_from(ways)).replace(", ; rep", "; rep")
        spaces = _spaces(number, inner) + (f", {_spaces(number, arch)}" if between else "")
        lines.append((f"{begin}, {way}, join", count(2 * number, spaces)))
        if between:
            break  # the next space would be the one between two pairs
        arch = inner
    return _file(
        lines, draw(st.sampled_from(("magic ring", "chain 5, joined"))), **{"special stitches": specials}
    )


def _closings(length: int, there: str, alike: bool) -> st.SearchStrategy[str]:
    """How a space of so many chains can be closed: by chains, and a stitch as high as the rest of them.

    alike: all of the round's spaces are; where they aren't, the line says which one it closes.
    """
    ways = []
    for name, height in {"hdc": 2, "dc": 3, "tr": 4}.items():
        before = length - height
        if before > 0:
            said = "" if alike else f" (counts as ch-{length} sp)"
            ways.append(f"ch {before}, {name} in {there}{said}")
            if alike:
                ways.append(f"ch {before}, join with {name} to {there}")
        elif before == 0:
            ways += [f"join with {name} to {there}"] + (
                [f"{name} in {there} to join"] if "ch-3" in there else []
            )
    return st.sampled_from(ways)


@st.composite
def closed_groups(draw: Draw) -> bytes:
    """Groups in spaces, the last of which is a stitch; the next round begins in the midst of it."""
    sides, corner, group = draw(st.integers(3, 6)), draw(st.integers(2, 5)), draw(st.integers(2, 4))
    close = _closings(corner, "top of ch-3", alike=True)
    begin = f"ch 3 (counts as dc), {group - 1} dc in"
    first = f"{begin} ring, {_times(f'ch {corner}, {group} dc in ring', sides - 1)}, {draw(close)}"
    lines: Lines = [(first, f"{sides * group} dc, {_spaces(sides, corner)}")]
    for _ in range(draw(st.integers(0, 2))):
        pair = f"({group} dc, ch {corner}, {group} dc) in next ch-{corner} sp"
        side = draw(st.sampled_from(("", "ch 1, ")))
        close = _closings(corner, "top of ch-3", alike=not side)
        rest = _times(f"{side}{pair}", sides - 1)
        work = f"{begin} same sp, {rest}, {side}{group} dc in first sp, {draw(close)}"
        spaces = _spaces(sides, corner) + (f", {_spaces(sides, 1)}" if side else "")
        lines.append((work, f"{2 * sides * group} dc, {spaces}"))
    if draw(st.booleans()):
        number = draw(st.integers(1, 5))
        lines.append((f"ch 1, {number} sc in each ch-{corner} sp around, join", str(sides * number)))
    return _file(lines, draw(st.sampled_from(("magic ring", "chain 4, joined"))))


@st.composite
def closed_arches(draw: Draw) -> bytes:
    """Arches upon arches, the last of each round closed by a stitch into its first."""
    number, over = draw(st.integers(4, 10)), draw(st.integers(1, 4))
    skip = {1: "", 2: ", sk next st"}.get(over, f", sk {over - 1} sts")
    lines: Lines = [(f"ch 1, {number * over} sc in ring, join", str(number * over))]
    arch = draw(st.integers(3, 7))

    def close(length: int) -> str:
        return str(draw(_closings(length, "first sc", alike=True)))

    each = _times(f"sc in next st, ch {arch}{skip}", number - 1)
    lines.append((f"ch 1, {each}, sc in next st, {close(arch)}", f"{number} sc, {_spaces(number, arch)}"))
    for _ in range(draw(st.integers(0, 3))):
        before, arch = arch, draw(st.integers(3, 7))
        home = draw(st.sampled_from(("same sp", "same place")))
        more = draw(st.sampled_from(("around", f"{number - 2} more times")))
        work = f"ch 1, sc in {home}, *ch {arch}, sc in next ch-{before} sp; rep from * {more}, {close(arch)}"
        lines.append((work, f"{number} sc, {_spaces(number, arch)}"))
    inside = draw(st.integers(1, 7))
    lines.append((f"ch 1, {inside} sc in each ch-{arch} sp around, join", str(number * inside)))
    return _file(lines, "magic ring")


@st.composite
def lengthened_ovals(draw: Draw) -> bytes:
    """Both sides of a chain: made longer before it is worked, or with a start that doesn't name its sides."""
    chain, tip, end = draw(st.integers(4, 20)), draw(st.integers(1, 4)), draw(st.integers(1, 3))
    first = draw(st.integers(1, 3))
    added = draw(st.booleans())
    straight = chain - (2 if added else 3)
    chains = "next ch" if straight == 1 else f"next {straight} chs"
    others = draw(st.sampled_from(("other", "opposite")))
    last = draw(st.sampled_from(("last ch", "same ch as first sc")))

    def some(number: int) -> str:
        return "sc" if number == 1 else f"{number} sc"

    begin = f"{'ch 1, ' if added else ''}{some(first)} in 2nd ch from hook"
    work = (
        f"{begin}, sc in {chains}, {some(tip)} in last ch, "
        f"working along {others} side of foundation ch, sc in {chains}, {some(end)} in {last}, join"
    )
    start = f"chain {chain}" + draw(st.sampled_from((", both sides", "")))
    total = first + tip + end + 2 * straight
    lines: Lines = [(work, str(total)), ("ch 1, sc in each st around, join", str(total))]
    return _file(lines, start)


@st.composite
def middle_corners(draw: Draw) -> bytes:
    """Solid rounds about a motif, which turn at the middle one of three stitches in the corner."""
    sides, corner, group = draw(st.integers(3, 6)), draw(st.integers(1, 4)), draw(st.integers(2, 5))
    first = f"ch 3 (counts as dc), {group - 1} dc in ring, ch {corner}"
    rest = f"*{group} dc in ring, ch {corner}, rep from * {_more(sides - 2)}"
    lines: Lines = [
        (f"{first}, {rest}, join to top of ch-3", f"{sides * group} dc, {_spaces(sides, corner)}")
    ]
    three = draw(st.sampled_from((3, 3, 5)))
    into = f"{three} sc in " + draw(
        st.sampled_from((f"ch-{corner} corner sp", f"next ch-{corner} sp", "corner sp"))
    )
    start = f"ch 1, sc in same st as join, sc in {_next(group - 1)}, {into}"
    side = draw(st.sampled_from((f"sc in each of next {group} sts", f"sc in next {group} sts")))
    lines.append((f"{start}, *{side}, {into}; rep from * around, join", str(sides * (group + three))))
    total = sides * (group + three)
    for _ in range(draw(st.integers(1, 3))):
        total += sides * (three - 1)
        unit = f"*sc in each st to corner, {three} sc in center st of corner"
        rest = draw(st.sampled_from(("rem", "remaining")))
        work = f"ch 1, {unit}; rep from * {_more(sides - 1)}, sc in each {rest} st"
        lines.append((f"{work}, join", str(total)))
    return _file(lines, draw(st.sampled_from(("magic ring", "chain 4, joined"))))


def _next(number: int) -> str:
    return "next st" if number == 1 else f"next {number} sts"


def _more(times: int) -> str:
    return {1: "once more", 2: "twice more"}.get(times, f"{times} times more")


moving_on = st.one_of(
    behind_the_join(),
    beginning_clusters(),
    closed_groups(),
    closed_arches(),
    lengthened_ovals(),
    middle_corners(),
)
