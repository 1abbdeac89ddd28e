"""Reads the reference tables from the YAML files beside this module, each once."""

from functools import cache
from importlib.resources import files
from typing import Any, TypeVar

import yaml
from pydantic import TypeAdapter

from .rows import FormRow, StitchRow

_Loader: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
Row = TypeVar("Row")


@cache
def _file(name: str) -> dict[str, Any]:
    text = files(__package__).joinpath(f"{name}.yml").read_text(encoding="utf-8")
    content: dict[str, Any] = yaml.load(text, Loader=_Loader)
    return content


def _rows(kind: type[Row], name: str, table: str) -> tuple[Row, ...]:
    return TypeAdapter(tuple[kind, ...]).validate_python(_file(name)[table])  # type: ignore[valid-type]


@cache
def stitches() -> tuple[StitchRow, ...]:
    """The stitches, in the order of their height, then the rarer ones."""
    return _rows(StitchRow, "stitches", "stitches")


@cache
def stitch_forms() -> tuple[FormRow, ...]:
    """Posts, togethers, clusters and other things that stitches are made into."""
    return _rows(FormRow, "stitches", "forms")
