"""The package's own data files, read once each, with libyaml where there is one (ten times as fast)."""

from functools import cache
from importlib.resources import files
from typing import Any

import yaml

_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


@cache
def data_file(package: str, name: str) -> dict[str, Any]:
    """The content of a YAML file, `words.yml` say, that lies beside the modules of a package.

    Every caller is given the same dictionary: it is read, never changed.
    """
    text = files(package).joinpath(name).read_text(encoding="utf-8")
    content: dict[str, Any] = yaml.load(text, Loader=_LOADER)
    return content
