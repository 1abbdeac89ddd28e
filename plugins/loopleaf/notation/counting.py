"""Counting with numbers that differ from size to size; the places that steps take by their own numbers."""

from collections.abc import Callable, Iterable

from .tree import ONE, Amount, Chain, First, Group, Last, Next, Over, Repeat, Same, Skip, Step, Work

NONE = Amount((0,))


def _by_size(one: Amount, other: Amount, sum_of: Callable[[int, int], int]) -> Amount:
    sizes = max(len(one.sizes), len(other.sizes))
    return Amount(tuple(sum_of(one.of(at) or 0, other.of(at) or 0) for at in range(sizes)))


def plus(one: Amount, other: Amount) -> Amount:
    """Both together, size by size."""
    return _by_size(one, other, lambda a, b: a + b)


def times(one: Amount, other: Amount) -> Amount:
    """So many times, size by size."""
    return _by_size(one, other, lambda a, b: a * b)


def minus_one(one: Amount) -> Amount:
    """One fewer in every size that has any."""
    return Amount(tuple(size and size - 1 for size in one.sizes))


def places_of(step: Step) -> Amount | None:
    """How many stitches of the edge a step uses up; None where it goes on to an end, or into other places."""
    if isinstance(step, Chain):
        return NONE
    if isinstance(step, Skip):
        return step.count if step.target.kind == "stitch" and step.until is None else None
    if isinstance(step, Repeat):
        inside = _all(step.steps)
        if inside is None or step.times is None or step.stop_at is not None or step.ending or step.omitting:
            return None
        return times(inside, step.times)
    if isinstance(step, Work | Group):
        total = NONE
        for place in step.places:
            if isinstance(place, Same):
                continue
            if not isinstance(place, Next | First | Last | Over) or place.target.kind != "stitch":
                return None
            total = plus(total, place.count)
        return total
    return NONE if not isinstance(step, Work) else ONE


def _all(steps: Iterable[Step]) -> Amount | None:
    total: Amount | None = NONE
    for step in steps:
        taken = places_of(step)
        total = None if taken is None or total is None else plus(total, taken)
    return total
