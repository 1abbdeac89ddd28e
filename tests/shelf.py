"""The folder that the workers of one run of tests share."""

import os
import tempfile
from functools import cache
from pathlib import Path

NAME = "LOOPLEAF_TESTS_SHELF"
"""The environment variable that says where it is; tests/conftest.py makes the folder and takes it away."""


def shelf() -> Path:
    """The run's folder; outside a run of tests one of this process alone."""
    return Path(os.environ.get(NAME) or _own().name)


@cache
def _own() -> tempfile.TemporaryDirectory[str]:
    return tempfile.TemporaryDirectory()
