"""Reading single values as the author typed them: `6:10`, `yes` and `1.10` never turn into something else.

What can't be read raises a `PydanticCustomError` whose type is the finding's rule name.
"""

import re
from collections.abc import Mapping
from typing import Any, Literal, TypeVar

from pydantic_core import PydanticCustomError

from .limits import LARGEST_NUMBER, LONGEST_VALUE, MOST_ROUNDS, SHORTEST_MM, SMALLEST_NUMBER
from .values import Length, Lengths, LengthUnit, Numbers, Run, Weight, WeightUnit

_LENGTH_WORDS: dict[str, LengthUnit] = {
    "mm": "mm", "cm": "cm", "m": "m", "metre": "m", "metres": "m", "in": "in", "inch": "in", "inches": "in",
    '"': "in", "″": "in", "ft": "ft", "yd": "yd", "yds": "yd", "yard": "yd", "yards": "yd",
}  # fmt: skip
_WEIGHT_WORDS: dict[str, WeightUnit] = {
    "g": "g", "gram": "g", "grams": "g", "oz": "oz", "ounce": "oz", "ounces": "oz",
}  # fmt: skip

_FRACTIONS = {"½": 0.5, "¼": 0.25, "¾": 0.75, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 0.125}
_AMOUNT = r"\d+(?:\.\d+)?(?:\s*[½¼¾⅓⅔⅛]|\s+\d+/\d+)?|[½¼¾⅓⅔⅛]|\d+/\d+"
_ONE_MEASURE = re.compile(rf"^({_AMOUNT})\s*([a-zA-Z\"″]+)$")
_SIZES = re.compile(r"^([^()]+?)\s*[(\[]([^()\[\]]*)[)\]]\s*([a-zA-Z\"″]*)$")
_RUN = re.compile(r"^(\d+)(?:\s*(?:-|–|to)\s*(\d+)|\s+(on))?$")


def wrong(expected: str, example: str, words: tuple[str, ...] = ()) -> PydanticCustomError:
    """The error for a value of the wrong kind: what belongs there, how to write it, the words it may be."""
    ctx = {"expected": expected, "example": example, "words": words}
    return PydanticCustomError("wrong-type", "{expected}", ctx)


def unfit(message: str, example: str) -> PydanticCustomError:
    """The error for fields that don't go together: what is the matter, and how it may be written."""
    return PydanticCustomError("wrong-type", "{message}", {"message": message, "example": example})


def missing(field: str, example: str) -> PydanticCustomError:
    """The error for fields among which one is wanting, and how it may be written."""
    return PydanticCustomError("field-missing", "{field}", {"field": field, "example": example})


def too_large(number: str, limit: int, why: str) -> PydanticCustomError:
    """The error for a number past its limit."""
    return PydanticCustomError("number-too-large", "{number}", {"number": number, "limit": limit, "why": why})


Unit = TypeVar("Unit", LengthUnit, WeightUnit)

_NO_HOOK = wrong("a hook's size in millimetres", "5.5 mm")


def plain_text(value: Any) -> str | None:
    """The text of a single value; None for a list, fields, or nothing."""
    if isinstance(value, str):
        return value.strip()
    if isinstance(value, int | float) and not isinstance(value, bool):
        return str(value)
    return None


def whole(text: str, limit: int = LARGEST_NUMBER, why: str = "no piece of crochet needs more") -> int:
    """Digits as a number. Raises `number-too-large` past the limit, however many digits there are."""
    digits = text.lstrip("+-").lstrip("0")
    if len(digits) > len(str(limit)) or int(digits or "0") > limit:
        shown = text if len(text) <= 24 else f"{text[:20]}…"
        raise too_large(shown, limit, why)
    return -int(digits or "0") if text.startswith("-") else int(digits or "0")


def amount(text: str) -> float | None:
    """`34.5`, `8½`, `8 1/2`, `3/4` as a number; None where it is none of these."""
    if not re.fullmatch(_AMOUNT, text):
        return None
    total = 0.0
    for part in re.findall(r"\d+/\d+|\d+(?:\.\d+)?|[½¼¾⅓⅔⅛]", text):
        if part in _FRACTIONS:
            total += _FRACTIONS[part]
        elif "/" in part:
            above, below = part.split("/")
            if whole(below) == 0:
                return None
            total += whole(above) / whole(below)
        else:
            whole(part.split(".")[0])
            total += float(part)
    return total


def _measured(value: Any, units: Mapping[str, Unit], expected: str, example: str) -> tuple[float, Unit]:
    """A number and its unit, one of these. Raises `wrong-type`."""
    text = plain_text(value) or ""
    if text.startswith("-") and _ONE_MEASURE.match(text[1:]):
        raise wrong(f"{expected}, above 0", example)
    found = _ONE_MEASURE.match(text)
    unit = units.get(found[2].lower()) if found else None
    number = amount(found[1]) if found else None
    if unit is None or number is None:
        raise wrong(expected, example)
    return number, unit


def read_length(value: Any) -> Length:
    """`34.5 cm`, `8½ in`, `50 yd`; nothing measures 0. Raises `wrong-type`."""
    if isinstance(value, Length):
        return value
    number, unit = _measured(value, _LENGTH_WORDS, "a length with its unit", "10 cm")
    if Length(number, unit).mm < SHORTEST_MM:
        raise wrong("a length above 0", "10 cm")
    return Length(number, unit)


def read_hook(value: Any) -> Length:
    """A hook's size, also with its other name behind it: `5.5 mm`, `5.5 mm (I-9)`. Raises `wrong-type`."""
    text = re.sub(r"\s*\([^()]*\)$", "", (plain_text(value) or "")[:LONGEST_VALUE])
    try:
        size = value if isinstance(value, Length) else read_length(text)
    except PydanticCustomError as error:
        raise error if error.type == "number-too-large" else _NO_HOOK from None
    if not 0.3 <= size.mm <= 60:
        raise _NO_HOOK
    return size


def read_weight(value: Any) -> Weight:
    """`52 g`, `1¾ oz`. Raises `wrong-type`."""
    if isinstance(value, Weight):
        return value
    number, unit = _measured(value, _WEIGHT_WORDS, "a weight with its unit", "52 g")
    if Weight(number, unit).grams < SMALLEST_NUMBER:
        raise wrong("a weight above 0", "52 g")
    return Weight(number, unit)


def read_left(value: Any) -> tuple[Run, ...] | Literal["unworked"]:
    """`unworked`, or stitches by number. Raises `wrong-type`."""
    if (plain_text(value) or "").lower() == "unworked":
        return "unworked"
    try:
        return read_runs(value)
    except PydanticCustomError as error:
        if error.type == "number-too-large":
            raise
        raise wrong("`unworked` or the numbers of stitches", "1-10") from None


def one_a_size(value: Any) -> list[str | None] | None:
    """`40 (48, 56) cm` as `["40 cm", "48 cm", "56 cm"]`, `-` as None; a list as it is. None: another form."""
    if isinstance(value, list | tuple):
        texts = [plain_text(one) for one in value]
    else:
        text = plain_text(value)
        if not text or len(text) > LONGEST_VALUE:
            return None
        found = _SIZES.match(text)
        texts = [found[1], *re.split(r"\s*[,;:]\s*", found[2].strip())] if found else [text]
        if found and found[3]:
            texts = [one if one == "-" else f"{one} {found[3]}" for one in texts]
    if not texts or any(not one for one in texts) or all(one == "-" for one in texts):
        return None
    return [None if one == "-" else one for one in texts]


def read_lengths(value: Any) -> Lengths:
    """A length, or one a size: `90 (100, 110) cm`. Raises `wrong-type`."""
    if isinstance(value, Lengths):
        return value
    texts = one_a_size(value)
    if texts is None:
        raise wrong("a length with its unit, or one a size", "34.5 cm")
    return Lengths(tuple(None if text is None else read_length(text) for text in texts))


def read_amounts(value: Any) -> tuple[Weight | Length, ...]:
    """Yarn used, by weight or length: `52 g`, `50 yd`, `180 (210, 240) g`. Raises `wrong-type`."""
    texts = one_a_size(value)
    if texts is None or None in texts:
        raise wrong("the yarn used, by weight or length", "52 g")
    read: list[Weight | Length] = []
    for text in texts:
        unit = re.search(r"[a-zA-Z]*$", text or "")
        weighed = unit is not None and unit[0].lower() in _WEIGHT_WORDS
        try:
            read.append(read_weight(text) if weighed else read_length(text))
        except PydanticCustomError as error:
            if error.type != "wrong-type":
                raise
            raise wrong("the yarn used, by weight or length", "52 g") from None
    return tuple(read)


def read_whole(value: Any) -> int:
    """A whole number, none below 0. Raises `wrong-type`, `number-too-large`."""
    text = plain_text(value) or ""
    if not re.fullmatch(r"\d+", text):
        raise wrong("a whole number", "2")
    return whole(text)


def read_at_least_one(value: Any) -> int:
    """A whole number from 1 up: so many pieces, so many in a multiple. Raises as `read_whole`."""
    number = read_whole(value)
    if number < 1:
        raise wrong("a whole number from 1 up", "2")
    return number


def read_steps(value: Any) -> Numbers:
    """How many more (or, below 0, fewer) each time, or one a size: `8 (9, 10)`. Raises as `read_numbers`."""
    if isinstance(value, Numbers):
        return value
    texts = one_a_size(value)
    if texts is None or not all(text is None or re.fullmatch(r"[+-]?\d+", text) for text in texts):
        raise wrong("a whole number, with - before it where it grows less, or one a size", "6")
    return Numbers(tuple(None if text is None else whole(text) for text in texts))


def read_number(value: Any) -> float:
    """A number above 0 that may have halves: `13.5`, `13½`. Raises `wrong-type`, `number-too-large`."""
    text = plain_text(value) or ""
    number = amount(text.lstrip("-"))
    if number is None:
        raise wrong("a number", "14")
    if text.startswith("-") or number < SMALLEST_NUMBER:
        raise wrong("a number above 0", "14")
    return number


def read_numbers(value: Any) -> Numbers:
    """A whole number, or one a size: `40 (48, 56)`. Raises `wrong-type`, `number-too-large`."""
    if isinstance(value, Numbers):
        return value
    texts = one_a_size(value)
    if texts is None or not all(text is None or re.fullmatch(r"\d+", text) for text in texts):
        raise wrong("a whole number, or one a size", '"40 (48, 56)"')
    return Numbers(tuple(None if text is None else whole(text) for text in texts))


def read_run(value: Any) -> Run:
    """`5`, `4-6`, `4 on`. Raises `wrong-type`, `number-too-large`."""
    if isinstance(value, Run):
        return value
    found = _RUN.match(plain_text(value) or "")
    if not found:
        raise wrong("a number, or the first and the last with a dash", "4-6")
    why = "no piece has so many rounds"
    first = whole(found[1], MOST_ROUNDS, why)
    last = None if found[3] else whole(found[2], MOST_ROUNDS, why) if found[2] else first
    if first < 1:
        raise wrong("a number from 1 up", "1")
    if last is not None and last < first:
        raise wrong("a run with its smaller number first", f"{last}-{first}")
    return Run(first, last)


def read_runs(value: Any) -> tuple[Run, ...]:
    """Several runs: `1-6`, `3-6, 12-15`, or a list. Raises `wrong-type`, `number-too-large`."""
    if isinstance(value, Run):
        return (value,)
    parts = value if isinstance(value, list | tuple) else (plain_text(value) or "").split(",")
    return tuple(read_run(part) for part in parts)
