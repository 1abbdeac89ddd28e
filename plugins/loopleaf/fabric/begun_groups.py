"""A row's beginning group, called by the name of the others: `ch 3, (dc, ch 2, 2 dc) in same sp` is a shell
too where the pattern's shell is `(2 dc, ch 2, 2 dc)`; the row above comes to it last.
"""

from itertools import groupby

from .worked import Made, Place, Space

FEWEST = 2
"""So many places make a group."""


def begun_groups(places: list[Place]) -> dict[str, int]:
    """The names that the group at a row's end goes by, which a chain that counts began the row below with,
    and how many places it has: it is made up like those of the name on the same edge.

    places: in the order that the hook meets them.
    """
    last = places[-1] if places else None
    if not isinstance(last, Made) or last.role != "turning":
        return {}
    found: dict[str, int] = {}
    for (name, unit), group in groupby(places, key=_named):
        model = list(group) if unit and name != last.special else []
        own = places[len(places) - len(model) :]
        if len(model) >= FEWEST and _makeup(own)[::-1] == _makeup(model) and _in_one_place(own):
            found[name] = len(model)
    return found


def _named(place: Place) -> tuple[str, int]:
    return getattr(place, "special", ""), getattr(place, "unit", 0)


def _makeup(group: list[Place]) -> list[object]:
    """For each stitch its kind and form, for each space its chains."""
    return [
        one.chains if isinstance(one, Space) else (getattr(one, "kind", ""), getattr(one, "form", ""))
        for one in group
    ]


def _in_one_place(group: list[Place]) -> bool:
    """Whether its stitches stand in one place, and the chain, where it stands in one, too."""
    *others, first = [tuple(map(id, one.into)) for one in group if isinstance(one, Made)]
    return len(set(others)) == 1 and first in ((), others[0])
