"""Finds the author's own stitch in the trade's words for it: `5-dc popcorn in next ch` where the pattern says
`special stitches: {popcorn: {work: 5-dc popcorn in same st}}`.
"""

from functools import lru_cache

from .cursor import Cursor
from .tree import ONE, Here, Next, Same, Stitch, Work
from .vocabulary import Vocabulary


@lru_cache(maxsize=64)
def _own_forms(vocabulary: Vocabulary) -> dict[Stitch, str]:
    """The trade's stitches that are all the work of a stitch of the author's own, with its key."""
    from .parser import parse

    plain = Vocabulary(vocabulary.terms, yarns=vocabulary.yarns, pieces=vocabulary.pieces)
    found: dict[Stitch, str] = {}
    for key, special in vocabulary.specials.items():
        line = parse(special.work, plain).line if special.work else None
        match line.steps if line is not None else ():
            case (Work(stitch=Stitch(form=form) as stitch, each=each, places=(place,), counts=None),) if (
                form and stitch.number and each == ONE and isinstance(place, Same | Next | Here)
            ):
                found.setdefault(stitch, key)
    return found


def as_the_authors(stitch: Stitch, cursor: Cursor) -> Stitch:
    """The author's stitch where it is worked so; else the stitch itself, as in its own definition."""
    specials = cursor.vocabulary.specials
    if not stitch.form or not specials:
        return stitch
    key = _own_forms(cursor.vocabulary).get(stitch)
    if key is None or cursor.text == specials[key].work:
        return stitch
    return Stitch("special", name=key)
