"""What a round is made of, counted once.

Every measure reads these numbers instead of going through the stitches again.
"""

from collections import Counter
from dataclasses import dataclass

from ..fabric.worked import Made, Place, Role, Space, WorkedRound


@dataclass(frozen=True, slots=True)
class Sort:
    """A sort of stitch: as in Made, without its place. counted: it is one of the round's stitches."""

    kind: str
    form: str
    legs: int
    post: str
    role: Role
    chains: int
    yarn: str
    counted: bool


@dataclass(frozen=True, slots=True)
class SpaceSort:
    """A sort of chain space. passed: how many places it bridges, 0 where it bridges none."""

    chains: int
    passed: int
    corner: bool
    yarn: str


@dataclass(frozen=True, slots=True)
class Contents:
    """Stitches and spaces of a round by sort, with how often each was made."""

    stitches: Counter[Sort]
    spaces: Counter[SpaceSort]

    @property
    def counted(self) -> int:
        """Stitches of the round, without spaces."""
        return sum(number for sort, number in self.stitches.items() if sort.counted)


def contents(worked: WorkedRound) -> Contents:
    """A worked round, counted."""
    return contents_of(worked.made)


def contents_of(made: list[Made | Space] | list[Place]) -> Contents:
    """Things made, counted by sort."""
    stitches: Counter[Sort] = Counter()
    spaces: Counter[SpaceSort] = Counter()
    for one in made:
        if isinstance(one, Made):
            sort = Sort(
                one.kind, one.form, one.legs, one.post, one.role, one.chains, one.yarn, one.number > 0
            )
            stitches[sort] += 1
        elif isinstance(one, Space):
            spaces[SpaceSort(one.chains, len(one.into), one.corner, one.yarn)] += 1
    return Contents(stitches, spaces)
