"""What a row of each reference table holds. Every row names its `source`."""

from dataclasses import dataclass
from typing import Literal

Terms = Literal["US", "UK"]
Range = tuple[float, float]
"""(low, high)"""


@dataclass(frozen=True, slots=True)
class StitchNames:
    """What one terminology calls a stitch: in short and in full, one and several, and what else print calls it."""

    short: str
    short_plural: str
    name: str
    plural: str
    alternatives: tuple[str, ...] = ()
    other_names: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class StitchRow:
    """A stitch by its neutral key.

    turning_chain: chains that usually stand for it at a row's start. yarn_overs: before the hook goes in.
    height: height over width. yarn: yarn in one stitch, in widths of a stitch. pace: stitches a minute over
    single crochet's. None where nothing is known.
    """

    key: str
    us: StitchNames
    uk: StitchNames
    source: str
    turning_chain: int | None = None
    yarn_overs: int | None = None
    height: Range | None = None
    yarn: Range | None = None
    pace: float | None = None

    def names(self, terms: Terms) -> StitchNames:
        return self.us if terms == "US" else self.uk


@dataclass(frozen=True, slots=True)
class FormRow:
    """What a stitch can be made into (front post, cluster, picot …); `{short}`, `{name}`, `{plural}` and `{number}` are to be filled."""

    key: str
    us: StitchNames
    uk: StitchNames
    source: str

    def names(self, terms: Terms) -> StitchNames:
        return self.us if terms == "US" else self.uk
