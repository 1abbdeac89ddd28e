"""Which techniques a pattern uses, and where each first occurs: one small function a technique.

The names are those of `trade/levels.yml`. Each function looks at one round and says whether it holds the
technique; those that belong to a whole piece or to the finishing are further down.
"""

import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import chain, pairwise
from operator import attrgetter
from typing import Any

from ..fabric.survey import walk
from ..fabric.worked import Made, PieceWork, Place, Ring, RoundWork, Space, WorkedRound
from ..notation.tree import Next, Step, Work
from ..pattern import Path, Pattern, Piece
from .made import Contents

_ROUND = attrgetter("round")
_INTO = attrgetter("into")
_MANY_IN_ONE = 4
_GROUP = 3
_NEAR = 6
_TALL = ("half", "double", "treble", "double-treble", "triple-treble", "quadruple-treble")
_V_NAMED = re.compile(r"V[- ]?st", re.IGNORECASE)
_V_OF_ALL = 2
"""Half of a round's stitches at least, or they are corners, not fabric (chosen here)."""


@dataclass(frozen=True, slots=True)
class Look:
    """One round to look at.

    below: the places of the edge below. older: places worked into (not around) that are older than the
    round below. overs: yarn overs of the author's own stitches.
    """

    index: int
    round: RoundWork
    worked: WorkedRound
    made: Contents
    below: Sequence[Place]
    older: Sequence[Made | Space]
    overs: Mapping[str, int]

    def older_below(self) -> list[bool]:
        """Of each older place, whether it is on the edge below (that very place, not one like it)."""
        if not self.older:
            return []
        below = set(map(id, self.below))
        return [id(place) in below for place in self.older]

    @property
    def tall(self) -> bool:
        """Whether it holds stitches taller than single."""
        return any(sort.kind in _TALL for sort in self.made.stitches)

    def has_kind(self, kind: str, overs: int) -> bool:
        """Whether it holds that stitch, by its own name or as one of the author's with so many yarn overs."""
        return any(sort.kind == kind or self.overs.get(sort.kind) == overs for sort in self.made.stitches)


@dataclass(frozen=True, slots=True)
class Use:
    """The first place where a technique is used. round: the round's label, "" where it isn't in a round."""

    technique: str
    piece: str
    round: str = ""
    word: str = "round"


# ---- in one round ---------------------------------------------------------------------------------


def _treble(look: Look) -> bool:
    return look.has_kind("treble", 2)


def _double_treble(look: Look) -> bool:
    return look.has_kind("double-treble", 3)


def _very_tall(look: Look) -> bool:
    named = any(sort.kind in ("triple-treble", "quadruple-treble") for sort in look.made.stitches)
    return named or any(look.overs.get(sort.kind, 0) >= 4 for sort in look.made.stitches)


def _chain_spaces(look: Look) -> bool:
    return bool(look.made.gaps)


def _shells(look: Look) -> bool:
    """Four or more tall stitches side by side in one stitch or space, or one of the author's groups of
    three or more. A round or row that is all in one place is a middle, no shell.
    """
    if not look.tall:
        return False
    if len({id(place) for one in look.worked.made if type(one) is Made for place in one.into}) == 1:
        return False
    at: Place | None = None
    run = 0
    groups: Counter[tuple[int, int]] = Counter()
    for one in look.worked.made:
        if type(one) is not Made or not one.number or len(one.into) != 1:
            at, run = None, 0
            continue
        place = one.into[0]
        if one.unit:
            groups[one.unit, id(place)] += 1
        run = run + 1 if place is at and one.kind in _TALL else 1
        at = None if isinstance(place, Ring) else place
        if run >= _MANY_IN_ONE:
            return True
    return any(number >= _GROUP for number in groups.values())


def _v_fabric(made: Sequence[Place]) -> bool:
    """Whether at least half of the stitches made are in V-stitches, of which there are two at least.

    A corner is worked the same way, `(dc, ch 1, dc)`, but stands among other stitches.
    """
    found = sum(_is_v(made, at) for at in range(1, len(made) - 1))
    stitches = sum(isinstance(one, Made) for one in made)
    return found > 1 and 2 * found * _V_OF_ALL >= stitches


def _named_v(steps: Sequence[Step]) -> bool:
    """Whether a stitch is called a V-stitch, by the usual name or as one of the author's own."""
    stitches = [one.stitch for one in walk(tuple(steps)) if isinstance(one, Work)]
    return any(one.form == "v-stitch" or _V_NAMED.match(one.name) is not None for one in stitches)


def _is_v(made: Sequence[Place], at: int) -> bool:
    """One tall stitch, a space, one tall stitch, in one place, and nothing else in it."""
    first, space, last = made[at - 1], made[at], made[at + 1]
    if not (isinstance(space, Space) and isinstance(first, Made) and isinstance(last, Made)):
        return False
    if first.kind not in _TALL or not first.into or not last.into or first.into[0] is not last.into[0]:
        return False
    place = first.into[0]
    beside = (*made[max(at - 2, 0) : at - 1], *made[at + 2 : at + 3])
    return isinstance(place, Made | Space) and all(
        all(place is not into for into in one.into) for one in beside if isinstance(one, Made)
    )


def _v_stitches(look: Look) -> bool:
    """V-stitches as the round's fabric, or one that its author calls so."""
    if look.round.line is not None and _named_v(look.round.line.steps):
        return True
    return bool(look.made.spaces) and look.tall and _v_fabric(look.worked.made)


def _picot_edging(look: Look) -> bool:
    return any(sort.role == "picot" for sort in look.made.stitches) and not look.made.gaps


def _picot_lace(look: Look) -> bool:
    return any(sort.role == "picot" for sort in look.made.stitches) and bool(look.made.gaps)


def _loops(look: Look) -> bool:
    return any(sort.loop in ("front", "back", "third") for sort in look.made.stitches)


def _posts(look: Look) -> bool:
    return any(sort.post for sort in look.made.stitches)


def _clusters(look: Look) -> bool:
    return any(sort.form in ("cluster", "bobble", "puff", "popcorn") for sort in look.made.stitches)


def _colors_within_a_round(look: Look) -> bool:
    return len(_yarns(look)) == 2


def _tapestry(look: Look) -> bool:
    return len(_yarns(look)) >= 3


def _yarns(look: Look) -> set[str]:
    return {sort.yarn for sort in look.made.stitches if sort.counted}


def _foundation(look: Look) -> bool:
    return any(sort.kind.startswith("foundation-") for sort in look.made.stitches)


def _rounds_below(look: Look) -> bool:
    """A stitch that went into a place of an older round, although that place is no longer on the edge."""
    return any(
        place.round >= 0 and not here for place, here in zip(look.older, look.older_below(), strict=True)
    )


def _short_rows(look: Look) -> bool:
    """A row that goes over its neighbour and then over stitches that an earlier row left."""
    if look.round.plan.word != "row" or not any(look.older_below()):
        return False
    return any(
        isinstance(one, Made) and any(getattr(place, "round", None) == look.index - 1 for place in one.into)
        for one in look.worked.made
    )


def _joining_as_you_go(look: Look) -> bool:
    """Worked into a space or picot of another piece."""
    line = look.round.line
    return line is not None and any(
        isinstance(place, Next) and place.piece and place.target.kind in ("space", "corner", "picot")
        for place in _places(line.steps)
    )


def _places(steps: Iterable[Any]) -> Iterator[Any]:
    """Every place that steps name, repeats and groups opened."""
    for step in steps:
        yield from getattr(step, "places", ())
        yield getattr(step, "place", None)
        yield from _places(getattr(step, "steps", ()))
        yield from _places(getattr(step, "ending", ()))


def _crossed_posts(look: Look) -> bool:
    """A post stitch beside another that goes back over the stitches below, against the way of the round."""
    if not _posts(look):
        return False
    feet = [
        (one.into[0].number, bool(one.post))
        for one in look.worked.made
        if isinstance(one, Made) and len(one.into) == 1 and isinstance(one.into[0], Made)
    ]
    steps = [(after - before, p and q) for (before, p), (after, q) in pairwise(feet) if after != before]
    forward = sum(1 if step > 0 else -1 for step, _ in steps) >= 0
    return any(posts and abs(step) <= _NEAR and (step > 0) != forward for step, posts in steps)


IN_A_ROUND: Mapping[str, Callable[[Look], bool]] = {
    "treble": _treble,
    "chain-spaces": _chain_spaces,
    "shells": _shells,
    "v-stitches": _v_stitches,
    "picot-edging": _picot_edging,
    "loops": _loops,
    "posts": _posts,
    "clusters": _clusters,
    "picot-lace": _picot_lace,
    "colors-within-a-round": _colors_within_a_round,
    "foundation": _foundation,
    "rounds-below": _rounds_below,
    "short-rows": _short_rows,
    "double-treble": _double_treble,
    "tapestry": _tapestry,
    "joining-as-you-go": _joining_as_you_go,
    "crossed-posts": _crossed_posts,
    "very-tall": _very_tall,
}


def in_rounds(
    piece: PieceWork, contents: Sequence[Contents | None], overs: Mapping[str, int]
) -> Iterator[Use]:
    """The techniques in a piece's rounds, each where it first occurs. contents: of the first size."""
    found: set[str] = set()
    below: Sequence[Place] = piece.starts[0] if piece.starts else ()
    path: Path = ()
    before: Contents | None = None
    for index, (round, made) in enumerate(zip(piece.rounds, contents, strict=True)):
        worked = round.sizes[0] if round.sizes else None
        if made is None or worked is None:
            continue
        older = _older(worked, index)
        again = not older and round.plan.work_path == path and _alike(made, before)
        path, before = round.plan.work_path, made
        if again:
            below = worked.edge
            continue
        look = Look(index, round, worked, made, below, older, overs)
        for key, holds in IN_A_ROUND.items():
            if key not in found and holds(look):
                found.add(key)
                yield Use(key, piece.name, round.plan.label, round.plan.word)
        below = worked.edge


def _alike(made: Contents, before: Contents | None) -> bool:
    """Whether two rounds hold the same (as plain dictionaries: a Counter compares much more slowly)."""
    if before is None:
        return False
    stitches = dict.__eq__(made.stitches, before.stitches)
    return stitches is True and dict.__eq__(made.spaces, before.spaces) is True


def _older(worked: WorkedRound, index: int) -> list[Made | Space]:
    stitches = [one for one in worked.made if type(one) is Made]
    if min(map(_ROUND, chain.from_iterable(map(_INTO, stitches))), default=index) >= index - 1:
        return []
    return [
        place
        for one in worked.made
        if type(one) is Made and one.role == "stitch" and not one.post
        for place in one.into
        if not isinstance(place, Ring) and place.round < index - 1
    ]


# ---- of a piece, or of the finishing --------------------------------------------------------------


def of_a_piece(name: str, model: Piece, yarns: frozenset[str]) -> Iterator[Use]:
    """The techniques that show in how a piece is set up."""
    if model.start is not None and model.start.kind == "both sides":
        yield Use("both-sides", name)
    if model.grid is not None and not set(model.grid.key.values()) <= yarns:
        yield Use("filet", name)
    if any(entry.stuff is not None for entry in model.entries):
        yield Use("stuffing", name)


def of_the_finishing(pattern: Pattern, solid: frozenset[str]) -> Iterator[Use]:
    """The techniques of putting the pieces together. solid: pieces that are stuffed or don't lie flat."""
    for step in pattern.finishing:
        if step.sew is not None:
            yield Use("sewing-in-place" if step.sew.piece in solid else "sewing-flat", step.sew.piece)
        if step.thread is not None:
            yield Use("cords", step.thread.piece)
        if step.stuff is not None:
            yield Use("stuffing", step.stuff.piece)


def shaped_garment(pattern: Pattern, words: Sequence[str], shaped: Sequence[str]) -> Iterator[Use]:
    """A piece that fits a body and changes its number of stitches. shaped: pieces whose counts change."""
    for name in shaped:
        fits = {key.lower() for key in (*pattern.to_fit, *pattern.pieces[name].to_fit)}
        if fits & set(words):
            yield Use("shaped-garment", name)
