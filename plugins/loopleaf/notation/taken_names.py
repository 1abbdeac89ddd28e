"""Trade names that the author has given to a stitch of their own (`ldc`): what the trade's is called beside
it (`linked dc`).
"""

from dataclasses import replace
from functools import lru_cache

from ..trade import StitchNames
from .stitch_words import plurals
from .vocabulary import Vocabulary


@lru_cache(maxsize=64)
def _taken(vocabulary: Vocabulary) -> frozenset[str]:
    """Every name of the author's own stitches, in lower case."""
    own = vocabulary.specials.items()
    names = {name for key, special in own for name in (key, special.name, special.short)}
    return frozenset(one.lower() for name in names for one in (name, *plurals(name)) if one)


def beside_the_authors(names: StitchNames, vocabulary: Vocabulary | None) -> StitchNames:
    """The stitch's names, each that the author's own stitch bears replaced by the next one that is free."""
    if vocabulary is None or not vocabulary.specials:
        return names
    taken = _taken(vocabulary)
    usual = (names.short, names.short_plural, names.name, names.plural)
    if not taken & {one.lower() for one in usual}:
        return names

    def free(*wanted: str) -> str:
        return next((one for one in wanted if one.lower() not in taken), wanted[0])

    short = free(names.short, *names.alternatives, names.name)
    shorts = free(names.short_plural, *names.alternatives, names.plural)
    full = free(names.name, *names.other_names, *names.alternatives)
    fulls = free(names.plural, *names.other_names, *names.alternatives)
    return replace(names, short=short, short_plural=shorts, name=full, plural=fulls)
