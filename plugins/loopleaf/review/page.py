"""A rule's page: what `loopleaf explain` prints, read from the docstring of the rule's module."""

import re
from dataclasses import dataclass
from textwrap import dedent

_HEADS = ("What", "Why it matters", "Wrong", "Right", "When to ignore")
_HEAD = re.compile(rf"^({'|'.join(_HEADS)}):[ ]*", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Page:
    """summary: one sentence. wrong, right: examples as an author would write them in a pattern file."""

    summary: str
    what: str
    why: str
    wrong: str
    right: str
    ignore: str


def read_page(text: str) -> Page:
    """The page written in a docstring: a sentence, then the five headed parts.

    Raises ValueError where a part is missing, so that no rule goes without its page.
    """
    text = dedent(text)
    pieces = _HEAD.split(text)
    parts = dict(zip(pieces[1::2], pieces[2::2], strict=True))
    missing = [head for head in _HEADS if not parts.get(head, "").strip()]
    if missing:
        raise ValueError(f"this rule's page lacks: {', '.join(missing)}")
    return Page(
        summary=_flow(pieces[0]),
        what=_flow(parts["What"]),
        why=_flow(parts["Why it matters"]),
        wrong=dedent(parts["Wrong"].strip("\n")).rstrip(),
        right=dedent(parts["Right"].strip("\n")).rstrip(),
        ignore=_flow(parts["When to ignore"]),
    )


def _flow(text: str) -> str:
    return " ".join(text.split())
