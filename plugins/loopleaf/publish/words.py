"""The template's own words in each terminology, from `words.yml`."""

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from ..trade.data_files import data_file
from .leaflet_parts import Terms


@cache
def words(terms: Terms) -> Mapping[str, str]:
    """The words of one terminology by their key; the same keys in both."""
    table = data_file(__package__, "words.yml")
    return MappingProxyType({**table["both"], **table[terms]})
