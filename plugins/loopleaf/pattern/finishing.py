"""Finishing: what is done with the pieces when their rounds are worked."""

from typing import Annotated, Literal

from pydantic import Field, model_validator

from .entries import ShownPicture, SomeStuff
from .part import (
    ALength,
    AnyText,
    AtLeastOne,
    Colour,
    InShort,
    Moment,
    OneOrMore,
    Part,
    Runs,
    SomeText,
    Whole,
)
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


class AtStitches(Part):
    """What lies on a round or row of a piece, over stitches of it."""

    round: AtLeastOne | None = Field(None, description="The round that it lies on.")
    row: AtLeastOne | None = Field(None, description="The row that it lies on.")
    stitches: Runs = Field((), description="The stitches that it covers: `11-14`, or `3-6, 12-15` for two.")
    text: AnyText = Field("", description="How, where that needs saying.")

    @property
    def number(self) -> int | None:
        """The round or row by whose stitches it is placed; None where none is named."""
        return self.round or self.row


class Sew(AtStitches):
    """One piece sewn to another."""

    piece: SomeText = Field(description="The piece that is sewn on.")
    to: AnyText = Field("", description="The piece that it is sewn to.")


class Mark(AtStitches):
    """What is no piece of its own, such as eyes: put into a piece or embroidered on it."""

    what: SomeText = Field(description="What it is, without an article: `eyes`, `safety eyes`, `nose`.")
    to: SomeText = Field(description="The piece that it goes on.")
    between: Runs = Field(
        (),
        description="The two rounds that it lies between, instead of `round`: `5-6`. Stitches: the first's.",
    )
    across: ALength | None = Field(None, description="How far across each is; else as wide as its stitches.")
    colour: Colour = Field("", description='Its colour for the drawings, in quotes: `"#2b2b2b"`.')

    @property
    def number(self) -> int | None:
        """The round or row by whose stitches it is placed."""
        return self.between[0].first if self.between else super().number

    @model_validator(mode="after")
    def _one_place(self) -> "Mark":
        if self.between and (self.round or self.row or not self._are_neighbours()):
            raise unfit("“between” names two rounds, one above the other, and stands alone.", "between: 5-6")
        return self

    def _are_neighbours(self) -> bool:
        return len(self.between) == 1 and self.between[0].last == self.between[0].first + 1


class LayOut(Part):
    """Pieces laid out in rows and joined."""

    piece: SomeText = Field(description="The piece that is laid out.")
    across: AtLeastOne = Field(description="How many side by side.")
    down: AtLeastOne = Field(description="How many one below the other.")
    join: AnyText = Field("", description="How they are joined: `sc through both layers`.")
    text: AnyText = Field("", description="Anything else that needs saying.")


StepKind = Literal["thread", "knot", "sew", "place", "embroider", "lay out", "stuff", "text", "heading"]


class FinishingStep(Part):
    """One step of the finishing: thread, knot, sew, place, embroider, lay out, stuff, text or heading."""

    thread: Thread | None = Field(None, description="Draw a cord through a round.")
    knot: Annotated[Knot, InShort("text")] | None = Field(None, description="Knot a cord.")
    sew: Sew | None = Field(None, description="Sew one piece to another.")
    place: Mark | None = Field(None, description="Put something on that is no piece, such as safety eyes.")
    embroider: Mark | None = Field(None, description="Embroider something, such as eyes or a nose.")
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
    def kind(self) -> StepKind:
        """Which of the steps it is."""
        return self._kinds()[0]

    @property
    def mark(self) -> Mark | None:
        """What is put on or embroidered."""
        return self.place or self.embroider

    def _kinds(self) -> list[StepKind]:
        kinds: list[StepKind] = []
        if self.thread:
            kinds.append("thread")
        if self.knot:
            kinds.append("knot")
        if self.sew:
            kinds.append("sew")
        if self.place:
            kinds.append("place")
        if self.embroider:
            kinds.append("embroider")
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
