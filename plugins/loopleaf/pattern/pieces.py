"""A piece: how it begins, how it is worked, and its rounds or rows."""

from typing import Annotated, Literal

from pydantic import Discriminator, Field, Tag, field_validator, model_validator

from .entries import Entries
from .materials import FinishedSize
from .part import AnyText, AtLeastOne, BodyMeasures, Number, Part, Runs, SomeLengths, SomeText, Word, YesNo
from .reading import missing, unfit
from .start import Start

Worked = Literal["joined rounds", "spiral rounds", "rows", "rows, right side only", "chain"]
Corner = Literal["bottom right", "bottom left", "top right", "top left"]


class Around(Part):
    """A length taken from the way around something: `{times: 2, around: pouch, round: 17}`."""

    times: Number = Field(1.0, description="How many times the way around.")
    around: SomeText = Field(description="The piece; `self` is this one.")
    round: AtLeastOne | None = Field(
        None, description="The round of that piece, where it isn't the last one."
    )
    row: AtLeastOne | None = Field(None, description="The row of that piece.")


def _form_of_length(value: object) -> str:
    return "~around" if isinstance(value, dict | Around) else "~length"


LengthOrAround = Annotated[
    Annotated[Around, Tag("~around")] | Annotated[SomeLengths, Tag("~length")], Discriminator(_form_of_length)
]


def _squares(number: int) -> str:
    return f"{number} square{'' if number == 1 else 's'}"


class Grid(Part):
    """A picture in squares, each a stitch or a mesh, as it looks from the right side."""

    rows: tuple[SomeText, ...] = Field(
        description="The rows as they look, the top one first, one sign a square."
    )
    key: dict[str, SomeText] = Field(description='What each sign means: `{"#": B, ".": A}`.')
    from_: Annotated[Corner, Word("bottom right", "bottom left", "top right", "top left")] = Field(
        "bottom right", description="The corner where the first row begins."
    )

    @field_validator("rows", mode="before", json_schema_input_type=tuple[SomeText, ...] | str)
    @classmethod
    def _line_by_line(cls, value: object) -> object:
        """A picture pasted as a block of lines."""
        return value.split() if isinstance(value, str) and "\n" in value else value

    @model_validator(mode="after")
    def _even(self) -> "Grid":
        if any(len(sign) != 1 for sign in self.key):
            raise unfit("The key of the grid has a name of more than one sign.", '{"#": B, ".": A}')
        for number, row in enumerate(self.rows, 1):
            if len(row) != len(self.rows[0]):
                first = len(self.rows[0])
                uneven = f"Row {number} of the grid has {_squares(len(row))}, and the first has {first}."
                raise unfit(uneven, "[#.#, .#.]")
        strange = sorted({sign for row in self.rows for sign in row} - set(self.key))
        if strange:
            raise unfit(f"The key of the grid doesn't say what `{strange[0]}` means.", '{"#": B, ".": A}')
        return self


class Piece(Part):
    """One piece of the pattern; its name is its field under `pieces`."""

    title: AnyText = Field("", description="What the piece is called in print.")
    make: AtLeastOne = Field(1, description="How many are made.")
    yarn: AnyText = Field("", description="The yarn's letter or name.")
    worked: Annotated[
        Worked, Word("joined rounds", "spiral rounds", "rows", "rows, right side only", "chain")
    ] = Field(
        description="How it is worked: joined rounds, spiral rounds, rows, or a chain.",
        examples=["joined rounds"],
    )
    start: Start | None = Field(None, description="How it begins.")
    as_: SomeText | None = Field(
        None, description="The piece whose rounds or rows this one repeats: `as: left front`."
    )
    reversed: YesNo = Field(False, description="With `as`: the mirror image, all shaping at the other end.")
    lies_flat: Runs = Field((), description="The rounds that are meant to lie flat: `1-6`.")
    rounds: Entries = Field((), description="The rounds in order, with headings and steps between.")
    rows: Entries = Field((), description="The rows in order, with headings and steps between.")
    length: LengthOrAround | None = Field(
        None, description="Of a chain or cord: a length, or so many times around a piece."
    )
    tail: LengthOrAround | None = Field(None, description="How long a tail to leave for sewing.")
    grid: Grid | None = Field(None, description="A picture in squares that the rows follow.")
    finished_size: FinishedSize | None = Field(None, description="How large this piece is when done.")
    to_fit: BodyMeasures = Field({}, description="The body or thing that it is made for: `{head: 54 cm}`.")

    @property
    def entries(self) -> Entries:
        """The rounds or the rows, whichever the author wrote."""
        return self.rows or self.rounds

    @property
    def entries_field(self) -> Literal["rounds", "rows"]:
        """The field that `entries` stand under in the file."""
        return "rows" if self.rows else "rounds"

    @model_validator(mode="after")
    def _has_something_to_work(self) -> "Piece":
        if self.rounds and self.rows:
            raise unfit("`rounds` and `rows` stand here together; a piece has one of them.", "rounds: …")
        if self.as_ is not None:
            if self.entries:
                raise unfit(
                    f"`{self.entries_field}` stands here beside the piece that is repeated.", "as: front"
                )
            return self
        if not self.entries and self.worked != "chain":
            field = "rounds" if self.worked.endswith("rounds") else "rows"
            raise missing(field, f"{field}: …")
        if self.worked == "chain" and not self.entries and self.length is None and self.start is None:
            raise missing("length", "length: 80 cm")
        return self

    def worked_as(self, name: str, other: "Piece") -> "Piece":
        """This piece with the rounds or rows of another one, from the other end where it is `reversed`."""
        entries = tuple(
            # A row that is another one again turns with that.
            entry.model_copy(update={"reversed": entry.reversed != self.reversed})
            if entry.run and not (entry.as_ or entry.repeat)
            else entry
            for entry in other.entries
        )
        return self.model_copy(
            update={other.entries_field: entries, "as_": other.as_ or name, "grid": other.grid}
        )
