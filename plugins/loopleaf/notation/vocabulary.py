"""What a pattern brings to the reading of its lines: its terms, its own stitches, its yarns and pieces."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

Terms = Literal["US", "UK"]


ToldGroup = tuple[str, str, int]
"""A shell or V-stitch told in a line: its form, its stitches' kind, how many (of a V-stitch: its chains)."""


@dataclass(frozen=True, slots=True)
class SpecialStitch:
    """A stitch defined under `special stitches`.

    work: its steps in shorthand (`5 dc in same st`) or None; text: how it is made, in words;
    yarn_overs: for tall stitches past the ones with names.
    """

    name: str
    short: str = ""
    work: str | None = None
    text: str = ""
    yarn_overs: int | None = None


@dataclass(frozen=True, eq=False)
class Vocabulary:
    """The words of one pattern. `specials` goes by the key in the file, which is what a tree holds as the
    name. sizes: how many the pattern has, 0 where that isn't known. picot: the chains of the picot that its
    lines tell once (`ch 3, sl st in 3rd ch from hook (picot made)`), 0 where none is told.
    groups: the shell and the V-stitch told so.

    Two vocabularies that hold the same are equal, and either finds the other's lines in the cache.
    """

    terms: Terms
    specials: Mapping[str, SpecialStitch] = field(default_factory=dict)
    yarns: frozenset[str] = frozenset()
    pieces: frozenset[str] = frozenset()
    sizes: int = 0
    picot: int = 0
    groups: tuple[ToldGroup, ...] = ()

    def __post_init__(self) -> None:
        specials = tuple(sorted(self.specials.items(), key=_key))
        whole = (self.terms, specials, self.yarns, self.pieces, self.sizes, self.picot, self.groups)
        object.__setattr__(self, "_whole", whole)
        object.__setattr__(self, "_hash", hash(whole))

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Vocabulary) and self._whole == other._whole  # type: ignore[attr-defined]

    def __hash__(self) -> int:
        return self._hash  # type: ignore[attr-defined,no-any-return]


def _key(item: tuple[str, SpecialStitch]) -> str:
    return item[0]


NumberOfN = int | tuple[int | None, ...]
"""What stands for `n` in a line: a number, or one a size (None where a size has none)."""
