"""Reads the reference tables from the YAML files beside this module, each once."""

from functools import cache
from typing import TypeVar

from pydantic import TypeAdapter

from .data_files import data_file
from .rows import (
    AbbreviationRow,
    CautionRow,
    ConditionRow,
    FabricRow,
    FormRow,
    HookRow,
    LevelRow,
    LicenceRow,
    PaperRow,
    PhraseRow,
    StitchRow,
    TechniqueRow,
    YarnWeightRow,
)

Row = TypeVar("Row")


def _rows(kind: type[Row], name: str, table: str) -> tuple[Row, ...]:
    return TypeAdapter(tuple[kind, ...]).validate_python(data_file(__package__, f"{name}.yml")[table])  # type: ignore[valid-type]


@cache
def stitches() -> tuple[StitchRow, ...]:
    """The stitches, by height, then the rarer ones."""
    return _rows(StitchRow, "stitches", "stitches")


@cache
def stitch(key: str) -> StitchRow:
    """The stitch of a neutral key. Raises KeyError where the table has none."""
    for row in stitches():
        if row.key == key:
            return row
    raise KeyError(key)


@cache
def stitch_forms() -> tuple[FormRow, ...]:
    """Posts, togethers, clusters and other things that stitches are made into."""
    return _rows(FormRow, "stitches", "forms")


@cache
def abbreviations() -> tuple[AbbreviationRow, ...]:
    """Shortened words besides the stitches, alphabetical but for a few."""
    return _rows(AbbreviationRow, "abbreviations", "abbreviations")


@cache
def phrases() -> tuple[PhraseRow, ...]:
    """Words that are said otherwise on the other side of the Atlantic."""
    return _rows(PhraseRow, "phrases", "phrases")


@cache
def yarn_weights() -> tuple[YarnWeightRow, ...]:
    """Yarn weights 0 to 7."""
    return _rows(YarnWeightRow, "yarn_weights", "yarn_weights")


@cache
def hooks() -> tuple[HookRow, ...]:
    """Ordinary hooks, thinnest first."""
    return _rows(HookRow, "hooks", "hooks")


@cache
def steel_hooks() -> tuple[HookRow, ...]:
    """Steel hooks for thread, thickest first (00 to 14)."""
    return _rows(HookRow, "hooks", "steel_hooks")


@cache
def levels() -> tuple[LevelRow, ...]:
    """The four project levels, lowest first."""
    return _rows(LevelRow, "levels", "levels")


@cache
def techniques() -> tuple[TechniqueRow, ...]:
    """Techniques above basic, by the level that they raise a pattern to."""
    return _rows(TechniqueRow, "levels", "techniques")


@cache
def technique(key: str) -> TechniqueRow:
    """The technique of a key. Raises KeyError where the table has none."""
    for row in techniques():
        if row.key == key:
            return row
    raise KeyError(key)


@cache
def cautions() -> tuple[CautionRow, ...]:
    """Cautions in the order that they are printed."""
    return _rows(CautionRow, "cautions", "cautions")


@cache
def conditions() -> tuple[ConditionRow, ...]:
    """What earns a caution."""
    return _rows(ConditionRow, "cautions", "conditions")


@cache
def papers() -> tuple[PaperRow, ...]:
    """A4, Letter and their halves."""
    return _rows(PaperRow, "papers", "papers")


@cache
def licences() -> tuple[LicenceRow, ...]:
    """Licences by SPDX identifier, freest first."""
    return _rows(LicenceRow, "licences", "licences")


@cache
def fabrics() -> tuple[FabricRow, ...]:
    """Words by which a fabric of several stitches goes."""
    return _rows(FabricRow, "fabrics", "fabrics")
