"""The author's own stitches where a line writes them out: `5 dc in next st` for a shell of five."""

from collections.abc import Sequence

from ..notation.tree import Chain, Group, Line, Step, Work
from .worked import Made, Place, Space

Parts = list[tuple[str, int]]
"""What a group is made of, in order: each stitch's kind with 0, `chain` with its chains."""


def written_out_groups(made: Sequence[Made | Space], own: Line | None) -> list[list[Made]]:
    """The groups of a round, each in one place and unnamed, that are made as the author's stitch is; none
    where that isn't several plain stitches in one place."""
    parts = _parts(own.steps, 0) if own is not None else None
    if parts is None or sum(kind != "chain" for kind, _ in parts) < 2:
        return []
    groups: list[list[Made]] = []
    at = 0
    while at < len(made):
        stretch = made[at : at + len(parts)]
        stitches = [one for one in stretch if isinstance(one, Made)]
        if [_part(one) for one in stretch] == parts and _is_whole(made, at, stitches):
            groups.append(stitches)
            at += len(parts)
        else:
            at += 1
    return groups


def _parts(steps: Sequence[Step], depth: int) -> Parts | None:
    found: Parts = []
    for step in steps:
        inner: Parts | None = None
        match step:
            case Group(steps=inside) if not depth:
                inner = _parts(inside, 1)
            case Chain(length=length) if depth and not length.varies:
                inner = [("chain", length.of(0) or 0)]
            case Work(stitch=stitch, each=each) if not (stitch.form or stitch.name or each.varies):
                inner = [(stitch.kind, 0)] * (each.of(0) or 0)
        if inner is None:
            return None
        found += inner
    return found if depth or len(steps) == 1 else None


def _part(one: Made | Space) -> tuple[str, int]:
    if isinstance(one, Space):
        return "chain", one.chains
    return ("" if one.form or one.special or one.role != "stitch" else one.kind), 0


def _is_whole(made: Sequence[Made | Space], at: int, stitches: list[Made]) -> bool:
    """Whether the stitches are all that stands side by side in their one place."""
    into = stitches[0].into
    last = at + [one is stitches[-1] for one in made[at:]].index(True)
    return all(one.into == into for one in stitches) and not any(
        _place(one) == into for one in (*made[max(at - 1, 0) : at], *made[last + 1 : last + 2])
    )


def _place(one: Made | Space) -> tuple[Place, ...] | None:
    return one.into if isinstance(one, Made) else None
