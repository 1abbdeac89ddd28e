"""Cords, their way through a round, and tails, as lines for the terminal."""

from collections.abc import Iterator, Sequence

from ..measure import Cord, Tail, Threading, UnsaidTail, Way, amounts

_SHOWN = 4


def cords_told(cords: Sequence[Cord]) -> Iterator[str]:
    """Length, chains, and what is usual for the round that each goes through."""
    for cord in cords:
        chains = f", about {cord.chains} chains" if cord.chains else ""
        usual = ""
        if cord.around_mm is not None and cord.least_mm is not None:
            usual = f"; around {amounts.length(cord.around_mm)}, so {amounts.length(cord.least_mm)} or more"
        yield f"  {cord.piece}: {amounts.length(cord.length_mm)}{chains}{usual}"


def threadings_told(threadings: Sequence[Threading]) -> Iterator[str]:
    """A line a cord: what it passes, and where its ends come out; then how far the round opens."""
    for one in threadings:
        yield f"  through {one.word} {one.label} of {one.through}, {one.posts} posts:"
        for number, way in enumerate(one.ways, start=1):
            face = "on the same face" if way.same_face else "on opposite faces"
            yield f"    {number}: {_passes(way)}; both ends before post {way.start}, {face}"
        if len(one.ways) > 1:
            rest = "the second passes" if len(one.ways) == 2 else "the others pass"
            gaps = "the same gaps as" if one.same_gaps else "other gaps than"
            yield f"    {rest} through {gaps} the first"
        if one.opens_mm is not None and one.spare_mm is not None:
            left = amounts.length(one.spare_mm)
            yield f"    opens to {amounts.length(one.opens_mm)} around, with {left} of cord left"


def _passes(way: Way) -> str:
    told = [
        f"{one.way} {one.first}" if one.first == one.last else f"{one.way} {one.first}-{one.last}"
        for one in way.passes
    ]
    if len(told) > 2 * _SHOWN:
        told = [*told[:_SHOWN], "…", *told[-2:]]
    return ", ".join(told)


def tails_told(tails: Sequence[Tail]) -> Iterator[str]:
    """Length, and the edge that it sews."""
    for tail in tails:
        edge = f" for an edge of {amounts.length(tail.edge_mm)}" if tail.edge_mm is not None else ""
        yield f"  {tail.piece}: {amounts.length(tail.length_mm)}{edge}"


def unsaid_tails_told(tails: Sequence[UnsaidTail]) -> Iterator[str]:
    """What is usual where a seam needs a tail and the author states none."""
    for tail in tails:
        usual, edge = amounts.spans((tail.usual,)), amounts.length(tail.edge_mm)
        yield f"  {tail.piece}: none stated, usually about {usual} for an edge of {edge}"
        if tail.outline_mm is not None:
            all_around, outline = amounts.spans((tail.usual_around,)), amounts.length(tail.outline_mm)
            yield f"    sewn on all around, about {all_around} for {outline}"
