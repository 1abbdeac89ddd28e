"""Which stitches of an edge belong together: the author's stitches of several, or several in one place."""

from collections.abc import Sequence

from ..notation.tree import Stitch, Target
from .edge import Edge
from .worked import Made, Place, Ring, Space

FEWEST_IN_A_SHELL = 3
"""Two stitches in one place are an increase or a V-stitch."""


def has_groups(edge: Edge) -> bool:
    """Whether the edge has two groups at least, and so a gap between two. Two stitches are one only where
    they were made between others."""
    groups = (group_at(edge, at, Target("group")) for at in range(len(edge.places)))
    return sum(len(one) > 2 or (len(one) > 1 and len(getattr(one[0], "into", ())) > 1) for one in groups) > 1


def is_bare_shell(target: Target) -> bool:
    """Whether a shell is meant that the pattern doesn't define: several stitches in one place."""
    stitch = target.stitch
    return stitch is not None and stitch.form == "shell" and is_bare(stitch)


def is_bare(stitch: Stitch) -> bool:
    """Whether a shell or V-stitch is meant that nothing defines: `(4 shells)`."""
    return stitch.form in ("shell", "v-stitch") and not stitch.kind and not stitch.name and not stitch.number


def shells(edge: Edge) -> list[tuple[int, list[Place]]]:
    """Where groups of three and more begin on the edge, with their stitches and the spaces inside them."""
    groups = ((at, group_at(edge, at, Target("group"), whole=True)) for at in range(edge.limit))
    return [(at, group) for at, group in groups if is_shell(group)]


def is_shell(group: list[Place]) -> bool:
    """Whether there are stitches enough in a group."""
    return sum(isinstance(one, Made) for one in group) >= FEWEST_IN_A_SHELL


def groups_made(made: Sequence[Made | Space]) -> int:
    """How many groups a round made: stitches beside each other in one place, or the author's own of several.

    In a ring the chains part them.
    """
    number, length = 0, 0
    before: object = None
    for one in made:
        if isinstance(one, Space):
            before = None if isinstance(before, tuple) and isinstance(before[0], Ring) else before
        elif one.number and one.kind != "slip":
            place: object = one.unit or (one.into if len(one.into) == 1 else None)
            length = length + 1 if place is not None and place == before else 1
            number += length == 2
            before = place
        elif one.role not in ("picot", "loop"):
            before = None
    return number


def bare_groups(made: Sequence[Made | Space], form: str) -> list[list[Made]]:
    """The stitches of each shell (three and more in one place), or of each V-stitch (two with a chain between
    them), that a round made and no name was given to.
    """
    groups: list[list[Made]] = []
    spaced: list[bool] = []
    place: object = None
    for one in made:
        if isinstance(one, Space):
            spaced[-1:] = [True] if spaced else []
        elif one.number and one.kind != "slip":
            here = one.into if len(one.into) == 1 and not isinstance(one.into[0], Ring) else None
            if here is not None and here == place:
                groups[-1].append(one)
            else:
                groups.append([one])
                spaced.append(False)
            place = here
        elif one.role not in ("picot", "loop"):
            place = None
    if form == "shell":
        return [group for group in groups if len(group) >= FEWEST_IN_A_SHELL]
    return [group for group, apart in zip(groups, spaced, strict=True) if len(group) == 2 and apart]


def last_gap(edge: Edge) -> int:
    """The place before the gap that a row's last stitch stands behind; -1 where spaces part its groups."""
    places = edge.places
    spaced = any(isinstance(one, Space) or getattr(one, "role", "") == "loop" for one in places)
    if spaced or edge.circle or not has_groups(edge) or same_group(places[-2], places[-1]):
        return -1
    return len(places) - 2


def group_at(edge: Edge, at: int, target: Target, whole: bool = False) -> list[Place]:
    """The group that begins there, none where none does. whole: spaces inside it don't part it."""
    first = edge.places[at]
    before = at - 1
    if whole and at and getattr(edge.places[before], "corner", False):  # a space inside a group
        before -= 1
    if not isinstance(first, Made) or (at and same_group(edge.places[before], first)):
        return []
    if first.unit and (target.stitch is None or is_unit(first, target)):
        end = at
        while end < edge.limit and getattr(edge.places[end], "unit", 0) == first.unit:
            end += 1
        return edge.places[at:end]
    if target.stitch is not None and target.stitch.kind == "special":
        own = edge.begun.get(target.stitch.name, 0)
        return edge.places[at:] if own and at == len(edge.places) - own else []
    if first.unit:
        return []
    end = at + 1
    while end < edge.limit and _goes_on(edge.places, end, first, whole):
        end += 1
    return edge.places[at:end] if end - at > 1 else []


def _goes_on(places: list[Place], at: int, first: Made, whole: bool) -> bool:
    """Whether a group made in one place goes on here: with a stitch, or with a space and a stitch behind."""
    if isinstance(places[at], Space):
        after = at + 1
        return whole and after < len(places) and getattr(places[after], "into", None) == first.into
    return getattr(places[at], "into", None) == first.into


def same_group(one: Place, other: Place) -> bool:
    """Whether two neighbours belong to one group, so that the second doesn't begin it."""
    if isinstance(other, Made) and other.unit:
        return getattr(one, "unit", 0) == other.unit
    return isinstance(one, Made) and bool(one.into) and one.into == getattr(other, "into", None)


def is_unit(made: Made, target: Target) -> bool:
    """Whether a stitch belongs to the group that a target names."""
    stitch = target.stitch
    assert stitch is not None
    if stitch.kind == "special":
        return made.special == stitch.name
    return made.kind == stitch.kind or stitch.form in ("shell", "v-stitch")
