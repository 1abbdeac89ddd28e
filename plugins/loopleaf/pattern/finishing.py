"""Finishing: what is done with the pieces when their rounds are worked."""

from typing import Annotated, Literal

from pydantic import Field, model_validator

from .entries import ShownPicture, SomeStuff
from .part import AnyText, AtLeastOne, InShort, Moment, OneOrMore, Part, Runs, SomeText, Whole
from .reading import missing, unfit


class Thread(Part):
    """A cord drawn through the stitches of a round: under so many posts, over so many."""

    piece: SomeText = Field(description="The cord.")
    through: SomeText = Field(description="The piece that it is drawn through.")
    round: AtLeastOne | None = Field(None, description="The round whose posts it passes.")
    row: AtLeastOne | None = Field(None, description="The row whose posts it passes.")
    under: AtLeastOne = Field(1, description="How many posts it passes under each time.")
    over: AtLeastOne = Field(1, description="How many posts it passes over each time.")
    from_: Annotated[tuple[Whole, ...], OneOrMore()] = Field(
        (), description="The stitch before which each cord begins: `[1, 13]`."
    )


class Knot(Part):
    """A knot."""

    piece: AnyText = Field("", description="The cord that is knotted.")
    text: AnyText = Field("", description="How.")


class Sew(Part):
    """One piece sewn to another."""

    piece: SomeText = Field(description="The piece that is sewn on.")
    to: AnyText = Field("", description="The piece that it is sewn to.")
    round: AtLeastOne | None = Field(None, description="The round that it lies on.")
    row: AtLeastOne | None = Field(None, description="The row that it lies on.")
    stitches: Runs = Field((), description="The stitches that it covers: `11-14`, or `3-6, 12-15` for two.")
    text: AnyText = Field("", description="How, where that needs saying.")


class LayOut(Part):
    """Pieces laid out in rows and joined."""

    piece: SomeText = Field(description="The piece that is laid out.")
    across: AtLeastOne = Field(description="How many side by side.")
    down: AtLeastOne = Field(description="How many one below the other.")
    join: AnyText = Field("", description="How they are joined: `sc through both layers`.")
    text: AnyText = Field("", description="Anything else that needs saying.")


class FinishingStep(Part):
    """One step of the finishing: it is one of thread, knot, sew, lay out, stuff, text, heading."""

    thread: Thread | None = Field(None, description="Draw a cord through a round.")
    knot: Annotated[Knot, InShort("text")] | None = Field(None, description="Knot a cord.")
    sew: Sew | None = Field(None, description="Sew one piece to another.")
    lay_out: LayOut | None = Field(None, description="Lay out many pieces and join them.")
    stuff: SomeStuff | None = Field(None, description="Stuff a piece.")
    text: SomeText | None = Field(None, description="A step in words.")
    heading: SomeText | None = Field(None, description="A heading above the steps that follow.")
    note: AnyText = Field("", description="A remark printed beside the step.")
    picture: ShownPicture | None = Field(None, description="A picture of this step.")
    video: Moment | None = Field(
        None, description='The moment of the video that shows it, in quotes: `"9:40"`.'
    )

    @property
    def kind(self) -> Literal["thread", "knot", "sew", "lay out", "stuff", "text", "heading"]:
        """Which of the steps it is."""
        return self._kinds()[0]

    def _kinds(self) -> list[Literal["thread", "knot", "sew", "lay out", "stuff", "text", "heading"]]:
        kinds: list[Literal["thread", "knot", "sew", "lay out", "stuff", "text", "heading"]] = []
        if self.thread:
            kinds.append("thread")
        if self.knot:
            kinds.append("knot")
        if self.sew:
            kinds.append("sew")
        if self.lay_out:
            kinds.append("lay out")
        if self.stuff:
            kinds.append("stuff")
        if self.text:
            kinds.append("text")
        if self.heading:
            kinds.append("heading")
        return kinds

    @model_validator(mode="after")
    def _one_step(self) -> "FinishingStep":
        kinds = self._kinds()
        if not kinds:
            raise missing("text", "text: Weave in the ends.")
        if len(kinds) > 1:
            raise unfit("This entry is more than one step at once.", "text: Weave in the ends.")
        return self
