"""The whole pattern, typed: every field of the format, and the schema that editors read."""

from typing import Annotated, Any, Literal

from pydantic import (
    Field,
    PrivateAttr,
    ValidatorFunctionWrapHandler,
    field_validator,
    model_validator,
)

from .entries import ShownPicture
from .finishing import FinishingStep
from .materials import FinishedSize, Gauge, Materials
from .part import (
    AnyText,
    BodyMeasures,
    Counts,
    Day,
    InOneWord,
    InShort,
    Moment,
    OneOrMore,
    Part,
    SomeText,
    TextList,
    Whole,
    Word,
)
from .pieces import Piece
from .reading import plain_text, unfit

Terms = Literal["US", "UK"]
Level = Literal["basic", "easy", "intermediate", "complex"]
ChainSpaces = Literal["counted", "not counted"]

_ALIKE = ("start", "worked", "yarn")
"""What a piece worked `as` another one has from it, where it doesn't say otherwise."""


class Change(Part):
    """A change made since the pattern was first published."""

    date: Day = Field(description="The day of the change, year first.", examples=["2026-11-05"])
    version: AnyText = Field("", description="The version that it made.")
    note: SomeText = Field(
        description="What changed, in words.", examples=["Round 1 names the stitch to join to."]
    )


class Video(Part):
    """A video of the whole pattern."""

    url: SomeText = Field(
        description="Its address, beginning with https://.", examples=["https://example.org/lantern-pouch"]
    )
    length: Moment = Field("", description='How long it is, in quotes: `"12:30"`.')


class SpecialStitch(Part):
    """A stitch of the author's own, or a number for one that print leaves open."""

    short: AnyText = Field("", description="Its abbreviation.")
    work: SomeText | None = Field(None, description="What it is in the shorthand: `5 dc in same st`.")
    text: AnyText = Field("", description="How it is made, in words.")
    yarn_overs: Whole | None = Field(
        None, description="For a tall stitch without a name: yarn overs before the hook goes in."
    )


class Variation(Part):
    """Another way to make the whole pattern, worked and checked like the pattern itself."""

    title: AnyText = Field("", description="What it is called.")
    leave_out: TextList = Field((), description="The pieces that it does without.")
    text: AnyText = Field("", description="What else is different.")


class Pattern(Part):
    """A crochet pattern, as its author wrote it."""

    title: SomeText = Field(description="The pattern's title.", examples=["Lantern pouch"])
    designer: AnyText = Field("", description="Who designed it.")
    summary: AnyText = Field("", description="One sentence on what it is.")
    terms: Annotated[Terms, Word("US", "UK")] = Field(
        description="The terms that this file is written in: US or UK.", examples=["US"]
    )
    level: Annotated[Level, Word("basic", "easy", "intermediate", "complex")] | None = Field(
        None, description="How hard it is: basic, easy, intermediate, complex."
    )
    version: AnyText = Field("", description="The pattern's version: 1.0.0.")
    published: Day | None = Field(None, description="The day it was first published, year first.")
    changes: Annotated[tuple[Change, ...], OneOrMore()] = Field((), description="What has changed since.")
    licence: AnyText = Field("", description="The licence, by its SPDX identifier: CC-BY-4.0.")
    contact: AnyText = Field(
        "", description="Where to ask: an address beginning with https://, or an e-mail address."
    )
    tags: TextList = Field((), description="Words to find it by.")
    pictures: Annotated[tuple[ShownPicture, ...], OneOrMore()] = Field(
        (), description="Pictures beside the file. Without one, the first is drawn from the stitches."
    )
    materials: Materials = Field(default_factory=Materials, description="What a maker needs at hand.")
    gauge: Annotated[tuple[Gauge, ...], OneOrMore()] = Field(
        (), description="The gauge, or a list of gauges, or `not critical`."
    )
    finished_size: FinishedSize | None = Field(
        None, description="How large it is when done (of the first piece)."
    )
    to_fit: BodyMeasures = Field(
        {}, description="The body or thing that it is made for: `{chest: 81 (86, 91) cm}`."
    )
    sizes: TextList = Field((), description="The sizes, smallest first: [S, M, L].")
    turning_chains: Annotated[dict[str, Counts], InOneWord()] = Field(
        {}, description="Whether each stitch's turning chain counts: `{dc: counts, sc: does not count}`."
    )
    chain_spaces: Annotated[ChainSpaces, Word("counted", "not counted")] | None = Field(
        None, description="Whether plain counts include the chains between stitches."
    )
    notes: TextList = Field((), description="What to know before beginning.")
    care: AnyText = Field("", description="How to wash and dry it.")
    special_stitches: dict[str, SpecialStitch] = Field(
        {}, description="Stitches of the author's own, by name."
    )
    pieces: dict[str, Piece] = Field(description="The pieces, by name.", examples=["{pouch: …}"])
    finishing: Annotated[tuple[FinishingStep, ...], OneOrMore()] = Field(
        (), description="The finishing, step by step."
    )
    variations: dict[str, Variation] = Field({}, description="Other ways to make it, by name.")
    video: Annotated[Video, InShort("url")] | None = Field(None, description="A video of the whole pattern.")

    _gauge_not_critical: bool = PrivateAttr(False)

    @property
    def gauge_not_critical(self) -> bool:
        """Whether the author says that the gauge doesn't matter."""
        return self._gauge_not_critical

    @property
    def size_count(self) -> int:
        """How many sizes there are; at least one."""
        return max(1, len(self.sizes))

    @field_validator("pieces")
    @classmethod
    def _some_pieces(cls, pieces: dict[str, Piece]) -> dict[str, Piece]:
        if not pieces:
            raise unfit("There is no piece in this pattern.", "{pouch: {…}}")
        return pieces

    @model_validator(mode="wrap")
    @classmethod
    def _not_critical(cls, value: Any, read: ValidatorFunctionWrapHandler) -> "Pattern":
        bare = isinstance(value, dict) and (plain_text(value.get("gauge")) or "").lower() == "not critical"
        made: Pattern = read({k: v for k, v in value.items() if k != "gauge"} if bare else value)
        made._gauge_not_critical = bare
        return made

    @model_validator(mode="before")
    @classmethod
    def _begin_alike(cls, value: Any) -> Any:
        """A piece worked as another begins and is worked like it, where it doesn't say otherwise."""
        pieces = value.get("pieces") if isinstance(value, dict) else None
        if not isinstance(pieces, dict):
            return value
        made: dict[Any, Any] = {}
        for name, piece in pieces.items():
            other = made.get(plain_text(piece.get("as"))) if isinstance(piece, dict) else None
            alike = {k: other[k] for k in _ALIKE if k in other} if isinstance(other, dict) else {}
            made[name] = {**alike, **piece} if alike else piece
        return {**value, "pieces": made}

    @model_validator(mode="after")
    def _worked_alike(self) -> "Pattern":
        earlier: dict[str, Piece] = {}
        for name, piece in self.pieces.items():
            other = earlier.get(piece.as_ or "")
            if piece.as_ is not None and other is not None:
                self.pieces[name] = piece.worked_as(piece.as_, other)
            earlier[name] = self.pieces[name]
        return self


def schema() -> dict[str, Any]:
    """The JSON Schema of a pattern file, made from the model; editors complete and explain fields by it."""
    made = Pattern.model_json_schema(by_alias=True)
    gauge = made["properties"]["gauge"]
    gauge["anyOf"].append({"const": "not critical"})
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **made}
