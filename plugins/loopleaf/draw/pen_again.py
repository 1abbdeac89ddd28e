"""Which groups of signs look exactly like one before them, so that they need not be written again."""

from collections.abc import Hashable, Mapping, Sequence

from .canvas import Point

FEWEST = 4
"""Fewer signs than this are written as they are."""

UNSEEN = 0.1
"""Signs that lie so far from where they would be, in units, lie there: a place is written no finer."""


def used_again(
    groups: Sequence[Sequence[str | tuple[Point, *tuple[Hashable, ...]]]],
) -> Mapping[int, tuple[int, Point]]:
    """Of groups, by their index, that look like one before them: which that is, and how far from it they lie.

    A sign is its place and what it looks like and says; text is neither moved nor used again.
    """
    firsts: dict[Hashable, list[int]] = {}
    found: dict[int, tuple[int, Point]] = {}
    for at, group in enumerate(groups):
        signs = [sign for sign in group if not isinstance(sign, str)]
        if len(signs) < max(FEWEST, len(group)):
            continue
        likes = firsts.setdefault(tuple((type(sign), sign[1:]) for sign in signs), [])
        places = [sign[0] for sign in signs]
        for first in likes:
            by = _moved([sign[0] for sign in groups[first] if not isinstance(sign, str)], places)
            if by is not None:
                found[at] = (first, by)
                break
        else:
            likes.append(at)
    return found


def _moved(before: Sequence[Point], after: Sequence[Point]) -> Point | None:
    """How far all of these places lie from those; None where they don't all lie as far."""
    steps = [(x - was_x, y - was_y) for (was_x, was_y), (x, y) in zip(before, after, strict=True)]
    x, y = (sum(values) / len(steps) for values in zip(*steps, strict=True))
    return (x, y) if all(max(abs(dx - x), abs(dy - y)) <= UNSEEN for dx, dy in steps) else None
