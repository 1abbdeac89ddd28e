"""The notation's data files, read once each, with libyaml where there is one (ten times as fast)."""

from functools import cache
from importlib.resources import files
from typing import Any

import yaml

_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


@cache
def word_file(name: str) -> dict[str, Any]:
    """The content of one of the files beside this module: `words.yml`, `print.yml`, `expected.yml`."""
    text = files(__package__).joinpath(name).read_text(encoding="utf-8")
    content: dict[str, Any] = yaml.load(text, Loader=_LOADER)
    return content
