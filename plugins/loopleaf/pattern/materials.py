"""Materials, gauge and sizes: what a maker needs at hand before the first stitch."""

import re
from typing import Annotated, Any

from pydantic import Field, model_validator

from .limits import LONGEST_VALUE
from .part import (
    ALength,
    Amounts,
    AnyText,
    ARun,
    Colour,
    HookSize,
    InShort,
    Number,
    OneOrMore,
    Part,
    SomeLengths,
    TextList,
    YarnWeight,
    YesNo,
)
from .reading import plain_text, unfit
from .values import Length, Weight

_GRAMS_AN_OUNCE = Weight(1, "oz").grams
_METRES_A_YARD = Length(1, "yd").mm / 1000


class Ball(Part):
    """What one ball (skein, cone) holds, as its band says."""

    grams: Number | None = Field(None, description="Weight of one ball in grams.")
    ounces: Number | None = Field(
        None, description="Weight of one ball in ounces, where the band gives that."
    )
    metres: Number | None = Field(None, description="Length of yarn on one ball in metres.")
    yards: Number | None = Field(
        None, description="Length of yarn on one ball in yards, where the band gives that."
    )

    @property
    def weight_grams(self) -> float | None:
        """Grams, from ounces where only those are given."""
        if self.grams is None and self.ounces is not None:
            return self.ounces * _GRAMS_AN_OUNCE
        return self.grams

    @property
    def length_metres(self) -> float | None:
        """Metres, from yards where only those are given."""
        if self.metres is None and self.yards is not None:
            return self.yards * _METRES_A_YARD
        return self.metres


class Yarn(Part):
    """One yarn of the pattern; its letter is its name among `yarns`."""

    weight: YarnWeight | None = Field(None, description="The yarn weight's number, 0 (lace) to 7 (jumbo).")
    name: AnyText = Field(
        "", description="What this yarn is called in the pattern: a colour or a part, such as `oat`."
    )
    colour: Colour = Field("", description='Its colour for the drawings, in quotes: `"#3b6e6a"`.')
    fibre: AnyText = Field("", description="What it is spun from: wool, cotton, acrylic.")
    ball: Ball | None = Field(None, description="What one ball holds.")
    weighed: Amounts = Field(
        (),
        description="How much the finished piece took: `52 g` or `50 yd`, or one a size: `180 (210, 240) g`.",
    )


class Hook(Part):
    """A hook and what it is for."""

    size: HookSize = Field(description="Its size in millimetres: `5.5 mm`.", examples=["5.5 mm"])
    for_: AnyText = Field("", description="What it is for, where there are several: `ribs`.")

    @model_validator(mode="before")
    @classmethod
    def _with_its_use(cls, fields: Any) -> Any:
        """`4 mm for the ribs` in one line."""
        text = plain_text(fields.get("size")) if isinstance(fields, dict) else None
        if text is None or "for" in fields or len(text) > LONGEST_VALUE:
            return fields
        if re.search(r"\sfor\s", text):
            size, use = re.split(r",?\s+for\s+", text, maxsplit=1)
            return {**fields, "size": size, "for": use}
        return fields


class Materials(Part):
    """Yarns, hooks and what else is needed."""

    yarns: dict[str, Yarn] = Field({}, description="The yarns by letter or name: A, B, …")
    hook: Annotated[tuple[Annotated[Hook, InShort("size")], ...], OneOrMore()] = Field(
        (), description="The hook's size, or a list of hooks with what each is for."
    )
    notions: TextList = Field((), description="Other things needed: needle, markers, buttons, stuffing.")


class Gauge(Part):
    """How many stitches and rows make a length; or how far some rounds, or a piece, should measure across."""

    stitch: AnyText = Field("", description="The stitch that the gauge is worked in.")
    stitches: Number | None = Field(None, description="How many stitches over the length.")
    rows: Number | None = Field(None, description="How many rows (or rounds) over the length.")
    over: ALength | None = Field(None, description="The length: `10 cm` or `4 in`.")
    blocked: YesNo | None = Field(None, description="Whether it is measured after blocking.")
    rounds: ARun | None = Field(None, description="Rounds that measure so much across, such as `1-4`.")
    piece: AnyText = Field(
        "", description="The piece that measures so much across, or that this gauge is for."
    )
    across: ALength | None = Field(None, description="How far those rounds, or that piece, measure across.")

    @model_validator(mode="before")
    @classmethod
    def _rounds_over_a_length(cls, fields: Any) -> Any:
        """`{stitches: 14, rounds: 15, over: 10 cm}` counts rounds as another gauge counts rows."""
        if isinstance(fields, dict) and "over" in fields and "rounds" in fields and "rows" not in fields:
            return {**{k: v for k, v in fields.items() if k != "rounds"}, "rows": fields["rounds"]}
        return fields

    @model_validator(mode="after")
    def _says_something(self) -> "Gauge":
        if self.over is None and self.across is None:
            raise unfit(
                "This gauge doesn't say over what length it is measured.",
                "{stitch: hdc, stitches: 14, rows: 10, over: 10 cm}",
            )
        return self


class FinishedSize(Part):
    """How large the finished piece is, as it stands or lies; each measure may be one a size."""

    around: SomeLengths | None = Field(None, description="The way around.")
    across: SomeLengths | None = Field(None, description="The way across: a diameter, or from side to side.")
    width: SomeLengths | None = Field(None, description="Width.")
    length: SomeLengths | None = Field(None, description="Length.")
    height: SomeLengths | None = Field(None, description="Height as it stands.")
