"""YAML in tests, read and written with libyaml where there is one: the same values and text, and fast."""

from typing import IO, Any

import yaml

_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_DUMPER: Any = getattr(yaml, "CSafeDumper", yaml.SafeDumper)


def read_yaml(text: str | IO[str]) -> Any:
    """The value that a YAML text stands for."""
    return yaml.load(text, Loader=_LOADER)


def written_yaml(value: Any, **style: Any) -> str:
    """A value as YAML, its fields in their own order and its lines not broken."""
    return str(yaml.dump(value, Dumper=_DUMPER, sort_keys=False, width=1000, **style))
