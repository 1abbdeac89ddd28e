"""What the review finds in a worked pattern: `check` reads, works and reviews a file; `RULES` is the explicit
list of its rules, each a small module named after what it finds, with its page for `loopleaf explain`;
`mend` puts in what is certain."""

from difflib import get_close_matches

from .addresses import Shelf, slug
from .check import Checked, check, check_collection, on_the_shelf, review
from .mending import Mended, mend
from .page import Page
from .rule import Rule
from .rules import RULES

__all__ = [
    "RULES",
    "Checked",
    "Mended",
    "Page",
    "Rule",
    "Shelf",
    "check",
    "check_collection",
    "mend",
    "nearest_rules",
    "on_the_shelf",
    "review",
    "rule_named",
    "slug",
]

_BY_NAME = {rule.name: rule for rule in RULES}


def rule_named(name: str) -> Rule:
    """The rule of that name. Raises KeyError where there is none."""
    return _BY_NAME[name]


def nearest_rules(name: str) -> list[str]:
    """Up to four rule names that look like this one, the nearest first."""
    return get_close_matches(name, _BY_NAME, n=4, cutoff=0.3) or list(_BY_NAME)[:4]
