"""The trade's reference tables, each row with its source: cached tuples of frozen rows, read from the YAML files here."""

from .rows import FormRow, StitchNames, StitchRow, Terms
from .tables import stitch_forms, stitches

__all__ = ["FormRow", "StitchNames", "StitchRow", "Terms", "stitch_forms", "stitches"]
