"""Shares stitches out over places: how many go into each, and how many gathered stitches a stretch holds."""

from typing import Literal

from .places import Where
from .tree import ONE, STITCH, Amount, First, Here, Last, Next, Over, Place, Stitch, Target


def needs_no_place(stitch: Stitch) -> bool:
    """A picot sits on the stitch before it; foundation stitches stand on nothing but each other."""
    return stitch.form == "picot" or stitch.kind.startswith("foundation-")


def legs_of(stitch: Stitch) -> int:
    """How many places a gathered stitch takes in (`sc2tog` and `dec` two); 0 for any other stitch."""
    if stitch.form == "tog":
        return stitch.number
    return 2 if stitch.kind == "dec" else 0


def target_of(place: Place) -> Target:
    """What kind of place it is, where it says so."""
    return place.target if isinstance(place, (Next, Over, First, Last)) else STITCH


def which_of(place: Place, passes: Amount) -> Literal["next", "first", "last"]:
    """`sc2tog in last 2 sts` leans on just those; several of them (`in last 6 sts`) go one after another."""
    if passes != ONE:
        return "next"
    if isinstance(place, Over):
        return place.which
    return "first" if isinstance(place, First) else "last" if isinstance(place, Last) else "next"


def share_out(amount: Amount | None, stitch: Stitch, where: Where) -> tuple[Amount, tuple[Place, ...]]:
    """How many go into each place: `3 dc in next 3 sts` is one in each, `2 dc in each of next 3 sts` two."""
    places = where.places
    if not places:
        if needs_no_place(stitch):
            return amount or ONE, ()
        return amount or ONE, (Here(),)
    place = places[0]
    if isinstance(place, Over) and not stitch.form and stitch.kind not in ("dec", "special"):
        place = Next(place.count, place.target, span=place.span)
        places = (place, *places[1:])
    if amount is None:
        return ONE, places
    alone = len(places) == 1 and not where.each
    if alone and isinstance(place, (Next, First, Last)) and place.count == amount:
        return ONE, places
    return amount, places


def passes_over(stitch: Stitch, place: Place, amount: Amount | None, where: Where) -> Amount | None:
    """How many gathered stitches `sc2tog in next 6 sts` (three), `2 sc2tog over next 4 sts` or `dec in next
    st` are.

    None where the place names its own legs (`dc2tog in same st`, `dc3tog over next 5 sts`), or no stitch is
    gathered.
    """
    legs = legs_of(stitch)
    if (
        not legs
        or where.each
        or not isinstance(place, (Next, Over, First, Last))
        or place.count.varies
        or place.count.variable
    ):
        return None
    if isinstance(place, Next) and (place.below or place.piece or place.any or place.far):
        return None
    count = place.count.sizes[0] or 0
    if isinstance(place, (First, Last)) and count == 1:
        return None
    if amount is not None:
        return amount if amount == Amount((count // legs,)) and count % legs == 0 else None
    if isinstance(place, Over):
        return ONE if count == legs else None
    if count == 1:
        return ONE if stitch.kind == "dec" else None
    return Amount((count // legs,)) if count % legs == 0 else None
