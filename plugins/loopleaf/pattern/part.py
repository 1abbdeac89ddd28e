"""What all parts of the typed pattern share, and the types of their fields."""

import re
from collections.abc import Callable, Mapping
from datetime import date
from typing import Annotated, Any, Literal

from pydantic import (
    BaseModel,
    ConfigDict,
    GetCoreSchemaHandler,
    GetJsonSchemaHandler,
)
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, core_schema

from .reading import (
    plain_text,
    read_amounts,
    read_at_least_one,
    read_hook,
    read_left,
    read_length,
    read_lengths,
    read_number,
    read_numbers,
    read_run,
    read_runs,
    read_steps,
    read_whole,
    wrong,
)
from .values import Length, Lengths, Numbers, Run, Weight


def _in_the_file(attribute: str) -> str:
    return attribute.rstrip("_").replace("_", " ")


class Part(BaseModel):
    """A part of a pattern. Attributes are the file's field names with `_` for spaces; no others are read."""

    # Parts are made by `model_validate` alone, never by keyword: aliases worked out by rule lose no checking.
    model_config = ConfigDict(  # type: ignore[pydantic-alias]
        frozen=True, extra="forbid", alias_generator=_in_the_file
    )


class InShort:
    """A part that may be written as one value in place of its fields: `video: https://…` for `video: {url: https://…}`."""

    def __init__(self, field: str) -> None:
        self.field = field

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_before_validator_function(self._open, handler(source))

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return {"anyOf": [{"type": ["string", "number"]}, handler(schema)]}

    def _open(self, value: Any) -> Any:
        return value if plain_text(value) is None else {self.field: value}


class OneOrMore:
    """A list that may be written as its one item."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_before_validator_function(self._open, handler(source))

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        listed = handler(schema)
        return {"anyOf": [listed["items"], listed]}

    def _open(self, value: Any) -> Any:
        return value if value is None or isinstance(value, list | tuple) else [value]


class InOneWord:
    """Fields that may be written as one for all: `turning chains: do not count`. Its name is then ""."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_before_validator_function(self._open, handler(source))

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        fields = handler(schema)
        return {"anyOf": [fields["additionalProperties"], fields]}

    def _open(self, value: Any) -> Any:
        return value if value is None or isinstance(value, Mapping) else {"": value}


def _text(value: Any) -> str:
    text = plain_text(value)
    if text is None:
        raise wrong("text", "…")
    return text


def _some_text(value: Any) -> str:
    text = _text(value)
    if not text:
        raise wrong("text", "…")
    return text


def _yes_or_no(value: Any) -> bool:
    if isinstance(value, bool):
        return value
    text = (plain_text(value) or "").lower()
    if text not in ("yes", "no", "true", "false"):
        raise wrong("yes or no", "yes")
    return text in ("yes", "true")


def _day(value: Any) -> date:
    if isinstance(value, date):
        return value
    found = re.fullmatch(r"(\d{4})-(\d\d?)-(\d\d?)", plain_text(value) or "")
    if not found:
        raise wrong("a day, year first", "2026-10-02")
    try:
        return date(int(found[1]), int(found[2]), int(found[3]))
    except ValueError:
        raise wrong("a day that is in the calendar, year first", "2026-10-02") from None


def _moment(value: Any) -> str:
    text = plain_text(value) or ""
    if not re.fullmatch(r"(?:\d{1,2}:)?\d{1,3}:[0-5]\d", text):
        raise wrong("minutes and seconds", '"6:10"')
    return text


def _colour(value: Any) -> str:
    text = (plain_text(value) or "").lower()
    if not re.fullmatch(r"#(?:[0-9a-f]{3}|[0-9a-f]{6})", text):
        raise wrong("a colour as # and six figures, in quotes", '"#3b6e6a"')
    return text if len(text) == 7 else "#" + "".join(figure * 2 for figure in text[1:])


def _yarn_weight(value: Any) -> int:
    text = plain_text(value) or ""
    if not re.fullmatch("[0-7]", text):
        raise wrong("the yarn weight's number, 0 (lace) to 7 (jumbo)", "4")
    return int(text)


def _counts(value: Any) -> bool:
    if isinstance(value, bool):
        return value
    text = (plain_text(value) or "").lower()
    if re.fullmatch(r"(?:does not|do not|doesn't|don't|not) counts?(?:ed)?|no", text):
        return False
    if re.fullmatch(r"counts?(?:ed)?(?: as .+)?|yes", text):
        return True
    raise wrong("`counts` or `does not count`", "does not count")


def _one_of(words: tuple[str, ...]) -> Callable[[Any], str]:
    def read(value: Any) -> str:
        text = " ".join((plain_text(value) or "").split())
        for word in words:
            if text.lower() == word.lower():
                return word
        said = [f"`{word}`" for word in words]
        raise wrong(f"{', '.join(said[:-1])} or {said[-1]}" if said[1:] else said[0], words[0], words)

    return read


class Read:
    """A value read by a function of ours; `shape` is what the schema says of it."""

    def __init__(self, read: Callable[[Any], Any], kind: str | list[str], **shape: Any) -> None:
        self.read = read
        self.shape = {"type": kind, **shape}

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self.read)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return dict(self.shape)


class Word(Read):
    """One of a few words, however it is capitalised."""

    def __init__(self, *words: str) -> None:
        super().__init__(_one_of(words), "string", enum=list(words))


_BOTH = ["string", "number"]
_A_LENGTH = r"^[0-9½¼¾⅓⅔⅛]"

AnyText = Annotated[str, Read(_text, _BOTH)]
SomeText = Annotated[str, Read(_some_text, _BOTH)]
YesNo = Annotated[bool, Read(_yes_or_no, ["boolean", "string"])]
Day = Annotated[date, Read(_day, "string", format="date")]
Moment = Annotated[str, Read(_moment, "string", pattern=r"^(\d{1,2}:)?\d{1,3}:[0-5]\d$")]
Colour = Annotated[str, Read(_colour, "string", pattern="^#([0-9a-fA-F]{3}|[0-9a-fA-F]{6})$")]
YarnWeight = Annotated[int, Read(_yarn_weight, "integer", minimum=0, maximum=7)]
Counts = Annotated[bool, Read(_counts, "string")]
ALength = Annotated[Length, Read(read_length, "string", pattern=_A_LENGTH)]
HookSize = Annotated[Length, Read(read_hook, "string", pattern=_A_LENGTH)]
SomeLengths = Annotated[Lengths, Read(read_lengths, "string", pattern=_A_LENGTH)]
Amounts = Annotated[tuple[Weight | Length, ...], Read(read_amounts, "string", pattern=_A_LENGTH)]
Whole = Annotated[int, Read(read_whole, "integer", minimum=0)]
AtLeastOne = Annotated[int, Read(read_at_least_one, "integer", minimum=1)]
StepsOf = Annotated[Numbers, Read(read_steps, ["integer", "string"])]
Number = Annotated[float, Read(read_number, _BOTH)]
SomeNumbers = Annotated[Numbers, Read(read_numbers, ["integer", "string"])]
ARun = Annotated[Run, Read(read_run, ["integer", "string"])]
Runs = Annotated[tuple[Run, ...], Read(read_runs, ["integer", "string", "array"])]
LeftOrRuns = Annotated[tuple[Run, ...] | Literal["unworked"], Read(read_left, ["integer", "string", "array"])]
TextList = Annotated[tuple[SomeText, ...], OneOrMore()]


def lengths_or_text(value: Any) -> Lengths | str:
    """A body's measure: lengths where it is written so (`81 (86, 91) cm`), else as text (`2 years`)."""
    try:
        return read_lengths(value)
    except ValueError:
        return _some_text(value)


BodyMeasures = Annotated[dict[str, Annotated[Lengths | str, Read(lengths_or_text, _BOTH)]], InOneWord()]
