"""How a piece begins: a ring, a chain, or the edge of another piece."""

import re
from collections.abc import Mapping
from typing import Any, Literal

from pydantic import Field, GetJsonSchemaHandler, PrivateAttr, ValidatorFunctionWrapHandler, model_validator
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema

from .part import AtLeastOne, LeftOrRuns, Part, SomeNumbers, SomeText, Whole, YesNo
from .reading import plain_text, unfit, wrong

Begins = Literal["magic ring", "ring", "chain ring", "chain", "both sides", "edge"]

_END = (
    r"(?:,\s*(join(?:ed)?(?: with (?:a )?(?:sl st|ss|slip stitch))?(?: (?:into|to form) a ring)?"
    r"|(?:along |on )?both sides))?$"
)
_CHAIN = re.compile(r"^(?:ch|chain)\s*(?P<chains>[\d()\[\],;:\s-]+?)\s*" + _END, re.I)
_CHAIN_UK = re.compile(r"^(?P<chains>\d[\d()\[\],;:\s-]*?)\s*(?:ch|chains?)\s*" + _END, re.I)
"""UK print puts the number first: `4ch, joined`."""


class Start(Part):
    """The start, in words (`magic ring`, `ring`, `chain 4, joined`, `chain 8, both sides`) or in fields."""

    chain: SomeNumbers | None = Field(
        None, description="Chains made at the start, turning chain included; may be one a size."
    )
    multiple: AtLeastOne | None = Field(
        None, description="The stitch pattern's multiple: 14 of `a multiple of 14 plus 2`."
    )
    plus: Whole = Field(0, description="What the multiple needs on top: 2 of `a multiple of 14 plus 2`.")
    joined: YesNo = Field(False, description="The chain is joined into a ring.")
    both_sides: YesNo = Field(False, description="The chain is worked along both of its sides.")
    edge: SomeText | None = Field(None, description="The piece whose edge this one begins on.")
    round: AtLeastOne | None = Field(
        None, description="The round of that piece whose stitches are worked into."
    )
    row: AtLeastOne | None = Field(None, description="The row of that piece whose stitches are worked into.")
    stitches: LeftOrRuns = Field(
        (), description="`unworked`: only the stitches that were left; or these by number: `1-10`."
    )
    around: YesNo = Field(False, description="All the way around that piece.")
    laid_out: YesNo = Field(
        False,
        description="All the way around that piece's copies, laid out and joined as the finishing says.",
    )
    row_ends: YesNo = Field(False, description="Along the ends of that piece's rows.")

    _text: str = PrivateAttr("")
    _ring: str = PrivateAttr("")

    @property
    def text(self) -> str:
        """The start as written in words; "" where it has fields."""
        return self._text

    @property
    def kind(self) -> Begins:
        """Which of the ways to begin it is."""
        if self._ring == "magic ring":
            return "magic ring"
        if self._ring == "ring":
            return "ring"
        if self.edge is not None:
            return "edge"
        if self.both_sides:
            return "both sides"
        return "chain ring" if self.joined else "chain"

    @model_validator(mode="wrap")
    @classmethod
    def _in_words(cls, value: Any, read: ValidatorFunctionWrapHandler) -> "Start":
        text = plain_text(value)
        if text is None:
            made: Start = read(value)
            if isinstance(value, Mapping) and made.chain is None and made.edge is None:
                raise unfit(
                    "This start has neither a chain nor the edge of another piece.",
                    "{chain: 30, multiple: 14, plus: 2}",
                )
            named = made.round or made.row or made.stitches
            if made.laid_out and (made.edge is None or named or made.row_ends):
                raise unfit(
                    "A start around pieces laid out and joined names the piece, and nothing more.",
                    "{edge: square, laid out: true}",
                )
            return made
        words = " ".join(text.split())
        if re.fullmatch(r"(?:magic|adjustable) (?:ring|circle|loop)", words, re.I):
            made, ring = read({}), "magic ring"
        elif words.lower() == "ring":
            made, ring = read({}), "ring"
        else:
            made, ring = read(_chain_in_words(words)), ""
        made._text = words
        made._ring = ring
        return made

    @classmethod
    def __get_pydantic_json_schema__(
        cls, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return {"anyOf": [{"type": "string"}, handler(schema)]}


def _chain_in_words(words: str) -> dict[str, Any]:
    found = _CHAIN.match(words) or _CHAIN_UK.match(words)
    if not found:
        raise wrong(
            "a way to begin: `magic ring`, `ring`, `chain 21`, `chain 4, joined` or `chain 8, both sides`",
            "magic ring",
        )
    end = (found[2] or "").lower()
    return {
        "chain": found["chains"],
        "joined": end.startswith("join"),
        "both sides": end.endswith("both sides"),
    }
