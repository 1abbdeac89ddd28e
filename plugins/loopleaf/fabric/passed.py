"""What lies before a last stitch, and is passed by as print passes it: other kinds, the rest of a group."""

from ..notation.tree import Target
from .hand import Hand
from .worked import Made, Place, Space


def left_before(hand: Hand, target: Target, at: int) -> int:
    """How many stitches between the hook and a last place would be left over.

    `in last sc` passes other kinds, as `in next sc` does; behind a space or a gap the rest of a group is
    passed, as the groups before it were."""
    edge = hand.edge
    between = edge.places[edge.pos : at]
    if target.kind in ("space", "loop") or (target.stitch is not None and target.stitch.kind):
        inside = getattr(edge.places[at], "corner", False)  # of a group: those between groups are others
        alike = [one for one in between if edge.matches(one, target)]
        left = sum(1 for one in alike if getattr(one, "corner", False) or not inside)
    else:
        left = edge.count(edge.pos, at)
    if left and target.kind == "stitch" and (hand.gaps or isinstance(hand.last, Space)):
        rest = (hand.gaps and left == 1) or _one_group(between, edge.places[: edge.pos])
        return 0 if rest or _as_between_the_spaces(hand, left) else left
    return left


def _as_between_the_spaces(hand: Hand, left: int) -> bool:
    """Whether a row into spaces passes as many stitches between them: `(2 dc in next ch-1 sp) across, dc in
    last st`, which is the turning chain behind one dc more."""
    return hand.setting.rows and isinstance(hand.last, Space) and hand.runs == {left}


def passed_before(hand: Hand, at: int) -> int:
    """How many stitches before a row's turning chain nothing speaks of: no chain passes them, as it may where
    the row passes stitches elsewhere, and they aren't the rest of a group."""
    between = hand.edge.places[hand.edge.pos : at]
    left = hand.edge.count(hand.edge.pos, at)
    kept = hand.kept_back == left + 1  # `to last 2 dc, dc in tch`
    chained = not hand.made or (isinstance(hand.made[-1], Space) and (kept or not passes_spaces_alone(hand)))
    if not hand.setting.rows or chained or hand.gaps or isinstance(hand.last, Space):
        return 0
    halves = {_group(one) for one in (*between, hand.edge.places[at]) if isinstance(one, Made)}
    if hand.into_centres and len(halves) == 1:
        return 0  # half a shell, whose middle is the turning chain
    return 0 if _one_group(between, hand.edge.places[: hand.edge.pos]) else left


def passes_spaces_alone(hand: Hand) -> bool:
    """Whether the row so far has come from stitch to stitch, and its chains go over spaces alone."""
    return not hand.skips and hand.runs == {0} and not hand.into_spaces


def spaces_left(hand: Hand) -> int:
    """How many spaces are left that the round goes into; not those of a length that it passes each time."""
    edge = hand.edge
    rest = edge.places[edge.pos : edge.limit]
    if edge.counted or edge.opened:
        return edge.count(edge.pos, edge.limit, spaces=True) - edge.count(edge.pos, edge.limit)
    passed = hand.lengths_passed - hand.lengths_used
    return sum(1 for one in rest if isinstance(one, Space) and one.chains not in passed)


def passed_elsewhere(hand: Hand, left: int) -> bool:
    """Whether so many stitches are such a run as the round passes elsewhere.

    What it passed at its start belongs to the last run; what slip stitches moved over needs no run.
    """
    if {left, left + hand.passed_first} & hand.runs:
        return True
    return hand.into_spaces and hand.slid > 0 and left - hand.slid in {0, *hand.runs}


def only_passed(hand: Hand) -> bool:
    """Whether what is left is just such a run as the round passes between the places that it names."""
    edge = hand.edge
    if gone_over_elsewhere(hand):
        return True
    if hand.into_spaces and spaces_left(hand):
        return False
    return passed_elsewhere(hand, edge.rest() + hand.since)


def gone_over_elsewhere(hand: Hand) -> bool:
    """Whether what is left of a round, a space among it, is just what its chains have gone over elsewhere."""
    edge = hand.edge
    left = edge.kinds_of(edge.pos, edge.limit)
    if not edge.circle or not any(left):
        return False
    behind = len(left)
    while hand.slid and not left[behind - 1]:  # the first half of the group that slip stitches went over
        behind -= 1
    return left in hand.gone_over or left[:behind] in hand.gone_over


def rest_of_a_shell(hand: Hand) -> bool:
    """Whether a row ends in the space of its last shell, and what is left is that shell's second half."""
    edge = hand.edge
    if edge.circle or not isinstance(hand.last, Space):
        return False
    before = next((one for one in reversed(edge.places[: edge.pos]) if isinstance(one, Made)), None)
    return (
        before is not None
        and bool(before.into)
        and {_group(p) for p in edge.places[edge.pos :]} == {_group(before)}
    )


def _one_group(stitches: list[Place], before: list[Place]) -> bool:
    """Whether these are the rest of one group: made in one place, or as one special stitch."""
    if not all(isinstance(one, Made) and one.into for one in stitches):
        return False
    ways = {_group(one) for one in stitches}
    if len(ways) != 1:
        return False
    earlier = next((one for one in reversed(before) if isinstance(one, Made)), None)
    return len(stitches) > 1 or (earlier is not None and _group(earlier) in ways)


def _group(one: Place) -> tuple[object, ...]:
    if not isinstance(one, Made):
        return ()
    return (one.special, one.unit) if one.unit else one.into
