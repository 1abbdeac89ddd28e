"""An opening (a thumb, an armhole): the stitches that a round left unworked, and the underside of the chains
above."""

from collections.abc import Iterator, Mapping, Sequence

from ..pattern import Start
from .edge import loops_of
from .hand import Hand
from .worked import Made, PieceWork, Place, RoundWork, Space, WorkedRound


def unworked(rounds: Sequence[RoundWork], at: int, size: int) -> list[Place]:
    """Of a round's places, those that the round after it left unworked."""
    worked = rounds[at].sizes[size]
    places = list(worked.edge) if worked is not None else []
    after = _after(rounds, at, size)
    if after is None:
        return places
    used: set[int] = set()
    for made in after.made:
        if not isinstance(made, Made):
            continue  # an arch passes over stitches and leaves them unworked
        for place in made.into:
            used.add(id(place))
            if isinstance(place, Made) and place.role == "loop":
                used.add(id(place.into[0]))
    return [p for p in places if id(p) not in used]


def around_openings(start: Start, size: int, others: Mapping[str, PieceWork]) -> list[list[Place]]:
    """What a piece begun on unworked stitches may go around besides them, see `ways_around`."""
    other = others.get(start.edge or "")
    number = start.round if start.round is not None else start.row
    if other is None or start.stitches != "unworked":
        return []
    at = next((i for i, one in enumerate(other.rounds) if one.plan.number == number), None)
    return [] if at is None else ways_around(other.rounds, at, size)


def ways_around(
    rounds: Sequence[RoundWork], at: int, size: int, as_spaces: bool = False
) -> list[list[Place]]:
    """What may be gone around where the round behind one left stitches of it. at: the one's index.

    Each opening's stitches with the underside of its chains behind them; where there are several (two
    sleeves) also without the chains, and all openings one after the other; then each begun elsewhere on it,
    and with the gap at either side between. as_spaces: also with the chains as the one space that they are.
    """
    after = _after(rounds, at, size)
    if after is None:
        return []
    runs = _runs(rounds, at, size)
    openings: list[list[Place]] = []
    ways: list[list[Place]] = []
    for run in runs:
        over = {id(place) for place in run}
        space = next((one for one in _spaces(after) if _spans(one, over)), None)
        if space is not None:
            below = loops_of(space)[::-1]
            near, far = _beside(after, space)
            openings.append([*run, *below])
            ways += [[*run, space], [space, *run]] if as_spaces else []
            ways += [
                [*below, *run],
                [*run, far, *below, near],
                [near, *run, far, *below],
                [*below, near, *run, far],
                [far, *below, near, *run],
            ]
    whole = [place for opening in openings for place in opening]
    if len(runs) < 2:
        return [*openings, *ways]
    return [*openings, *runs, *([whole] if whole else []), *ways]


def left_open(rounds: Sequence[RoundWork], size: int, as_spaces: bool) -> Iterator[list[Place]]:
    """The ways around each opening of a piece in rounds, for a round that the yarn is joined anew for.

    as_spaces: whether the round goes into a space, so that the chains over an opening may be one."""
    for at in range(len(rounds) - 1):
        left = unworked(rounds, at, size)
        after = _after(rounds, at, size)
        if left and after is not None and any(_spans(one, set(map(id, left))) for one in _spaces(after)):
            yield from ways_around(rounds, at, size, as_spaces)


def left_gaps(hand: Hand) -> int:
    """How many of the gaps at an opening's sides, where they are gone into, the round passes by."""
    places = [one for one in hand.edge.places if isinstance(one, Made)]
    if not hand.edge.sided or all(one.role != "loop" for one in places):
        return 0
    used = {id(place) for made in hand.made if isinstance(made, Made) for place in made.into}
    return sum(one.role == "row-end" and id(one) not in used for one in places)


def _spaces(worked: WorkedRound) -> list[Space]:
    return [one for one in worked.made if isinstance(one, Space)]


def _runs(rounds: Sequence[RoundWork], at: int, size: int) -> list[list[Place]]:
    """What is left unworked of a round, in stretches of neighbours; a round's last and first are none."""
    left = {id(place) for place in unworked(rounds, at, size)}
    worked = rounds[at].sizes[size]
    runs: list[list[Place]] = [[]]
    for place in worked.edge if worked is not None else ():
        if id(place) in left:
            runs[-1].append(place)
        elif runs[-1]:
            runs.append([])
    return [run for run in runs if run]


def _spans(space: Space, over: set[int]) -> bool:
    return any(id(place) in over for place in space.into)


def _beside(after: WorkedRound, space: Space) -> tuple[Place, Place]:
    """The gaps at both ends of a chain: the sides of the stitches before it and behind it."""
    stitches = [one for one in after.made if isinstance(one, Made) and one.number]
    at = after.made.index(space)
    behind = {id(one) for one in after.made[at:]}
    before = [one for one in stitches if id(one) not in behind]
    later = [one for one in stitches if id(one) in behind]
    near = before[-1] if before else stitches[-1]
    far = later[0] if later else stitches[0]
    return _side_of(near), _side_of(far)


def _side_of(made: Made) -> Made:
    return Made(made.kind, (made,), made.round, made.yarn, "row-end", made.round + 1)


def _after(rounds: Sequence[RoundWork], at: int, size: int) -> WorkedRound | None:
    return rounds[at + 1].sizes[size] if at + 1 < len(rounds) else None
