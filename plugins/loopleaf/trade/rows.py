"""What a row of each reference table holds. Every row names its `source`."""

from dataclasses import dataclass
from typing import Literal

Terms = Literal["US", "UK"]
Range = tuple[float, float]
"""(low, high)"""
OpenRange = tuple[float | None, float | None]
"""(low, high), None for an open end"""
LevelKey = Literal["basic", "easy", "intermediate", "complex"]


@dataclass(frozen=True, slots=True)
class StitchNames:
    """What one terminology calls a stitch: in short, in full, one and several, and other names in print."""

    short: str
    short_plural: str
    name: str
    plural: str
    alternatives: tuple[str, ...] = ()
    other_names: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class StitchRow:
    """A stitch by its neutral key.

    how: how it is made, for a beginner (to be said with `say`). turning_chain: chains that usually stand
    for it at a row's start. yarn_overs: before the hook goes in. height: height over width. yarn: yarn in
    one stitch, in widths of a stitch. pace: stitches a minute over single crochet's. None where unknown.
    """

    key: str
    us: StitchNames
    uk: StitchNames
    how: str
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
    """What a stitch can be made into (front post, cluster, picot …).

    `{short}`, `{name}`, `{plural}` and `{number}` in its names are to be filled from the stitch.
    """

    key: str
    us: StitchNames
    uk: StitchNames
    how: str
    source: str

    def names(self, terms: Terms) -> StitchNames:
        return self.us if terms == "US" else self.uk


@dataclass(frozen=True, slots=True)
class Word:
    """An abbreviation of one terminology, and what it stands for."""

    short: str
    name: str
    short_plural: str = ""
    plural: str = ""
    alternatives: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class AbbreviationRow:
    """A shortened word that isn't a stitch. meaning: a sentence for a beginner (to be said with `say`)."""

    key: str
    us: Word
    uk: Word
    meaning: str
    source: str

    def word(self, terms: Terms) -> Word:
        return self.us if terms == "US" else self.uk


@dataclass(frozen=True, slots=True)
class PhraseRow:
    """Words said otherwise on the other side, as (US, UK) pairs, the first the usual one.

    direction: which way they are translated. travels: met on both sides, so at most worth a note.
    """

    key: str
    direction: Literal["both", "to-uk", "to-us"]
    travels: bool
    pairs: tuple[tuple[str, str], ...]
    source: str


@dataclass(frozen=True, slots=True)
class YarnWeightRow:
    """A yarn weight. stitches: of gauge_stitch in 4 inches. hook_mm, metres_per_100_g: usual ranges."""

    number: int
    name: str
    us: tuple[str, ...]
    uk: tuple[str, ...]
    gauge_stitch: Literal["single", "double"]
    stitches: OpenRange
    hook_mm: OpenRange
    hook_us: str
    metres_per_100_g: OpenRange
    source: str

    def names(self, terms: Terms) -> tuple[str, ...]:
        return self.us if terms == "US" else self.uk


@dataclass(frozen=True, slots=True)
class HookRow:
    """A hook: thickness in millimetres, the US letter and number, the old UK number."""

    mm: float
    us: str | None
    old_uk: str | None
    source: str


@dataclass(frozen=True, slots=True)
class LevelRow:
    """A project level. formerly: its name on the older scale. meaning: to be said with `say`."""

    key: LevelKey
    name: str
    formerly: str
    meaning: str
    source: str


@dataclass(frozen=True, slots=True)
class TechniqueRow:
    """A technique and the lowest level that asks for it. text, learn: to be said with `say`.

    words: what shows it in the author's own words, where the stitches can't.
    """

    key: str
    level: LevelKey
    text: str
    learn: str
    source: str
    words: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Standard:
    """A published standard that touches a caution, and what it says there."""

    name: str
    says: str
    source: str


@dataclass(frozen=True, slots=True)
class CautionRow:
    """A caution: earned by any one of `earned_by`, with one of `only_with` besides where that isn't empty."""

    key: str
    title: str
    text: str
    earned_by: tuple[str, ...]
    only_with: tuple[str, ...]
    standards: tuple[Standard, ...]
    source: str


@dataclass(frozen=True, slots=True)
class ConditionRow:
    """What earns a caution: `because` says it, `words` show it in those texts of the author's (`where`).

    unless_before, unless_behind: where it stands right before, or right behind, one of these, a word means
    something else.
    """

    key: str
    because: str
    words: tuple[str, ...]
    where: tuple[Literal["names", "notes", "notions"], ...]
    source: str
    unless_before: tuple[str, ...] = ()
    unless_behind: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PaperRow:
    """A sheet of paper, in millimetres and as it is said in inches."""

    key: str
    name: str
    width_mm: float
    height_mm: float
    inches: str
    source: str


@dataclass(frozen=True, slots=True)
class LicenceRow:
    """A licence by SPDX identifier. needs_name: asks for the designer's name. sells: allows earning money."""

    spdx: str
    name: str
    meaning: str
    needs_name: bool
    sells: bool
    url: str
    source: str


@dataclass(frozen=True, slots=True)
class FabricRow:
    """Words that make a name one of a fabric: `moss` in `moss stitch`."""

    key: str
    words: tuple[str, ...]
    source: str
