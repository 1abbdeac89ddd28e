"""Motifs made by chance: cornered rounds begun by travelling or with a new yarn, casings, ovals, leaves."""

from typing import Any

from hypothesis import strategies as st

from .generated_units import Draw, file_of

ORDINALS = {3: "3rd", 4: "4th", 5: "5th", 6: "6th", 7: "7th"}


def _file(piece: dict[str, Any]) -> bytes:
    return file_of({"piece": piece}, {"dc": "counts", "sc": "does not count"})


def _numbered(lines: list[tuple[str, str]]) -> list[dict[str, Any]]:
    return [{"round": i + 1, "work": work, "count": count} for i, (work, count) in enumerate(lines)]


@st.composite
def cornered(draw: Draw) -> bytes:
    """A motif of three to six corners: groups in the corner spaces, solid rounds in every stitch."""
    corners, group = draw(st.integers(3, 6)), draw(st.integers(2, 4))
    corner, side = draw(st.integers(2, 3)), 1
    rest = f"({group} dc in ring, ch {corner}) x {corners - 1}"
    first = f"ch 3 (counts as dc), {group - 1} dc in ring, ch {corner}, {rest}, join"
    lines = [(first, f"{corners * group} dc, {corners} ch-{corner} sps")]
    groups, solid, lead, tops = 1, False, group, group
    for _ in range(draw(st.integers(1, 4))):
        begins = _to_a_corner(draw, lines, lead, corner)
        fill = 2 if solid else draw(st.sampled_from((2, group)))
        if not solid and fill == group:
            inner = f"ch {side}, " + f"{group} dc in next ch-{side} sp, ch {side}, " * (groups - 1)
            groups += 1
            tops = group * (groups + 1 - 1)
            count = (
                f"{corners * group * groups} dc, {corners} ch-{corner} sps, {corners * (groups - 1)} ch-1 sps"
            )
            lead = group
            tops = group * groups
        else:
            if solid or groups == 1:
                inner = f"dc in next {tops} dc, "
            else:
                between = f"dc in next {group} dc, dc in next ch-{side} sp"
                inner = f"({between}) x {groups - 1}, dc in next {group} dc, "
                tops += groups - 1
            tops += 4
            solid, lead, fill = True, 2, 2
            count = f"{corners * tops} dc, {corners} ch-{corner} sps"
        around = f"*({fill} dc, ch {corner}, {fill} dc) in next ch-{corner} sp, {inner}"
        around = around.rstrip(", ") + draw(
            st.sampled_from(("; rep from * around", f"; rep from * {corners - 2} more times"))
        ).replace(" 1 more times", " once more")
        first = f"ch 3 (counts as dc), ({fill - 1} dc, ch {corner}, {fill} dc) in same sp"
        lines.append((f"{begins}{first}, {inner}{around}, join", count))
    return _file(
        {"worked": "joined rounds", "start": "magic ring", "rounds": _numbered(lines)},
    )


def _to_a_corner(draw: Draw, lines: list[tuple[str, str]], lead: int, corner: int) -> str:
    """By slip stitches, or with a yarn joined anew."""
    if draw(st.booleans()):
        return f"sl st in next {lead - 1} dc, sl st in next ch-{corner} sp, "
    lines[-1] = (lines[-1][0] + ", fasten off", lines[-1][1])
    return f"join {draw(st.sampled_from('AB'))} with sl st in any ch-{corner} sp, "


@st.composite
def casings(draw: Draw) -> bytes:
    """A turning chain that counts for a stitch and a space, joined to at the right chain; then filled."""
    space, units = draw(st.integers(1, 4)), draw(st.integers(3, 12))
    number = (space + 1) * units
    chain = 3 + space
    skip = "sk next st" if space == 1 else f"sk {space} sts"
    spaces = f"{units} dc, {units} ch-{space} sps"
    plain = draw(st.sampled_from((f"{number} sc in ring", f"({units} sc in ring) x {space + 1}")))
    begin, sp = "ch 3 (counts as dc)", f"ch-{space} sp"
    work, number_made = draw(
        st.sampled_from(
            (
                (f"ch 1, *sc in next st, {space} sc in next {sp}; rep from * around, join", number),
                ("ch 1, sc in each st and ch-sp around, join", 2 * units),
                (f"ch 1, 5 sc in each {sp} around, join", 5 * units),
                (f"{begin}, dc in next {sp}, (dc in next dc, dc in next sp) x {units - 1}, join", 2 * units),
                (
                    f"{begin}, dc in same st, 2 dc in next {sp}, *2 dc in next st, 2 dc in next {sp}; "
                    "rep from * around, join to top of ch-3",
                    4 * units,
                ),
            )
        )
    )
    lines = [
        (f"ch 1, {plain}, join", str(number)),
        (
            f"ch {chain} (counts as dc, ch {space}), {skip}, *dc in next st, ch {space}, {skip}; "
            f"rep from * around, join to 3rd ch of ch-{chain}",
            spaces,
        ),
        (work, str(number_made)),
    ]
    return _file({"worked": "joined rounds", "start": "chain 6, joined", "rounds": _numbered(lines)})


@st.composite
def ovals(draw: Draw) -> bytes:
    """Both sides of a chain, growing at the two ends."""
    chain, rounds = draw(st.integers(4, 20)), draw(st.integers(1, 4))
    straight = chain - 3
    chains = "next ch" if straight == 1 else f"next {straight} chs"
    first = (
        f"2 sc in 2nd ch from hook, sc in {chains}, 3 sc in last ch, "
        f"working along other side of foundation ch, sc in {chains}, sc in last ch, join"
    )
    lines = [(first, str(2 * straight + 6))]
    side = "next st" if straight == 1 else f"next {straight} sts"
    for turn in range(rounds):
        plain = "" if turn == 0 else f"sc in next {'st' if turn == 1 else f'{turn} sts'}, "
        grow = draw(st.sampled_from(("inc", "2 sc in next st")))
        line = f"({plain}{grow}) x 2, sc in {side}, ({plain}{grow}) x 3, sc in {side}, {plain}{grow}"
        lines.append((f"ch 1, {line}, join", str(2 * straight + 12 + 6 * turn)))
    start = f"chain {chain}, both sides"
    return _file({"worked": "joined rounds", "start": start, "rounds": _numbered(lines)})


@st.composite
def leaves(draw: Draw) -> bytes:
    """Points worked back on chains of their own, which the next round passes by."""
    units, over, between = draw(st.integers(2, 6)), draw(st.integers(0, 3)), draw(st.integers(1, 3))
    chain = draw(st.integers(3, 8))
    rest = f"next {chain - 2} chs" if chain > 3 else "next ch"
    back = f"sc in 2nd ch from hook, dc in {rest}"
    skip = {0: "", 1: "sk next st, "}.get(over, f"sk {over} sts, ")
    stitches = "next st" if between == 1 else f"next {between} sts"
    number = units * (over + between)
    line = f"*ch {chain}, {back}, {skip}sc in {stitches}; rep from * around"
    lines = [
        (f"{number} sc in ring", str(number)),
        (line, str(units * between)),
        (f"(sc in {stitches}) x {units}", str(units * between)),
    ]
    return _file({"worked": "spiral rounds", "start": "magic ring", "rounds": _numbered(lines)})


motifs = st.one_of(cornered(), casings(), ovals(), leaves())
