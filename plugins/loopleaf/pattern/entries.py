"""The entries of a piece: its rounds or rows as the author wrote them, with headings and steps between."""

from collections.abc import Mapping
from typing import Annotated, Any, Literal

from pydantic import Discriminator, Field, Tag, model_validator

from .part import (
    AnyText,
    ARun,
    InShort,
    Moment,
    Part,
    SomeLengths,
    SomeNumbers,
    SomeText,
    StepsOf,
    TextList,
    Whole,
    Word,
    YesNo,
)
from .print_words import closes, label_of, said_in_print
from .reading import missing, unfit
from .values import Numbers, Run

Side = Annotated[Literal["RS", "WS"], Word("RS", "WS")]


class Growing(Part):
    """A number that grows (or lessens) by the same step from round to round: `{from: 32, step: 8}`."""

    from_: SomeNumbers = Field(description="The number in the first of the rounds; may be one a size.")
    step: StepsOf = Field(
        Numbers((0,)),
        description="How many more in each further round, or one a size; with - before it, how many fewer.",
    )

    def at(self, turn: int) -> Numbers:
        """The number in the round so many after the first (0-based)."""
        firsts, steps = self.from_.sizes, self.step.sizes
        sizes = range(max(len(firsts), len(steps)))
        values = [(self.from_.of(size), self.step.of(size)) for size in sizes]
        return Numbers(
            tuple(None if first is None or step is None else first + turn * step for first, step in values)
        )


class Picture(Part):
    """A picture that stands beside the pattern's file."""

    file: SomeText = Field(description="The picture's file, beside the pattern or in a folder below it.")
    alt: AnyText = Field("", description="What it shows, in words, for those who don't see it.")
    credit: AnyText = Field("", description="Who made it.")


class Stuff(Part):
    """Stuffing a piece."""

    text: AnyText = Field("", description="How: `Stuff firmly.`")
    piece: AnyText = Field("", description="Which piece, where that isn't clear.")


def _form_of_count(value: Any) -> str:
    return "~rule" if isinstance(value, Mapping | Growing) else "~text"


Count = Annotated[
    Annotated[Growing, Tag("~rule")] | Annotated[SomeText, Tag("~text")], Discriminator(_form_of_count)
]
ShownPicture = Annotated[Picture, InShort("file")]
SomeStuff = Annotated[Stuff, InShort("text")]


class Entry(Part):
    """One entry under `rounds:` or `rows:`."""

    round: ARun | None = Field(None, description="The round's number.")
    rounds: ARun | None = Field(None, description="Several rounds that are worked alike: `4-6`.")
    row: ARun | None = Field(None, description="The row's number.")
    rows: ARun | None = Field(None, description="Several rows: `4-49`, or `4 on` with `until`.")
    heading: SomeText | None = Field(None, description="A heading above the rounds that follow.")
    text: SomeText | None = Field(None, description="A step with no stitches in it.")
    stuff: SomeStuff | None = Field(None, description="Stuffing, between two rounds.")
    work: SomeText | None = Field(None, description="What to work, in the shorthand.")
    count: Count | None = Field(
        None,
        description="The author's own count: a number, a sum by kind, one a size, or `{from: 32, step: 8}`.",
    )
    n: Annotated[Growing, InShort("from")] | None = Field(
        None, description="What `n` stands for in `work`: `{from: 2, step: 1}`, one more each round."
    )
    repeat: ARun | None = Field(None, description="The rows worked again in turn: `2-3`.")
    as_: ARun | None = Field(None, description="The round worked again: `7`.")
    every: Whole | None = Field(
        None, description="Only every so many of these rows; the others are written elsewhere."
    )
    until: SomeLengths | None = Field(
        None, description="With `4 on`: how long the piece is when these rows are done."
    )
    end: Side | None = Field(
        None, description="With `until`: the side that the last of these rows is worked on."
    )
    from_: Annotated[Literal["grid"], Word("grid")] | None = Field(
        None, description="`grid`: the rows of the piece's `grid`."
    )
    reversed: YesNo = Field(False, description="With `as`: the shaping at the other end.")
    sizes: TextList = Field((), description="The sizes that work this round, where not all do.")
    side: Side | None = Field(None, description="The side that faces you: RS or WS.")
    yarn: AnyText = Field("", description="The yarn, where it isn't the piece's own.")
    note: AnyText = Field("", description="A remark printed beside the round.")
    picture: ShownPicture | None = Field(None, description="A picture of this step.")
    video: Moment | None = Field(
        None, description='The moment of the video that shows it, in quotes: `"6:10"`.'
    )
    adjustable: AnyText = Field("", description="What grows when this round is worked more often: `height`.")

    @model_validator(mode="before")
    @classmethod
    def _in_prints_words(cls, value: Any) -> Any:
        """`work: rep rows 3 and 4`, `row: 2 and every other row`: print's own words for fields of ours."""
        return said_in_print(value) if isinstance(value, dict) else value

    @property
    def run(self) -> Run | None:
        """The rounds or rows that it is about; None for a heading or a plain step."""
        return self.round or self.rounds or self.row or self.rows

    @property
    def word(self) -> Literal["round", "row"]:
        return "row" if self.row or self.rows else "round"

    @property
    def kind(self) -> Literal["round", "heading", "text", "stuff"]:
        """What it is: a round (or row), a heading, a step in words, stuffing."""
        if self.run:
            return "round"
        if self.heading is not None:
            return "heading"
        return "text" if self.text is not None else "stuff"

    @model_validator(mode="after")
    def _one_thing(self) -> "Entry":
        numbered = [run for run in (self.round, self.rounds, self.row, self.rows) if run]
        others = [one for one in (self.heading, self.text, self.stuff) if one is not None]
        if not numbered and not others:
            raise missing("round", "{round: 5, work: …}")
        if len(numbered) + len(others) > 1:
            raise unfit("This entry is more than one thing at once.", "{heading: Edge}")
        if numbered and not (self.work or self.as_ or self.repeat or self.from_):
            raise missing("work", '{round: 5, work: "sc in each st around"}')
        if numbered and sum(bool(one) for one in (self.as_, self.repeat, self.from_)) > 1:
            raise unfit("`as`, `repeat` and `from` stand here together; only one can hold.", "as: 7")
        if numbered and self.work and (self.as_ or self.repeat) and not closes(self.work):
            raise unfit("`work` stands here beside the round that is worked again.", "as: 7")
        if numbered and numbered[0].last is None and not self.until and not self.every:
            raise missing("until", "{rows: 4 on, repeat: 2-3, until: 120 cm}")
        if numbered and numbered[0].last is not None and self.until:
            raise unfit("`until` stands beside rows that are numbered to their end.", "rows: 4 on")
        label = label_of(self.work or "") if numbered else None
        if label is not None and label != numbered[0].first:
            raise unfit(
                f"The line calls itself {self.word} {label}, and its entry is {self.word} {numbered[0]}.",
                f"{self.word}: {label}",
            )
        if self.every is not None and self.every < 1:
            raise unfit("`every: 0` would work none of these rows.", "every: 2")
        return self


Entries = tuple[Entry, ...]
