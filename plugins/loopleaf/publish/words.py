"""The template's own words in each terminology, from `words.yml`."""

from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType

import yaml

from .leaflet_parts import Terms


@cache
def words(terms: Terms) -> Mapping[str, str]:
    """The words of one terminology by their key; the same keys in both."""
    table = yaml.safe_load(files(__package__).joinpath("words.yml").read_text(encoding="utf-8"))
    return MappingProxyType({**table["both"], **table[terms]})
