"""Sentences of a pattern that tell numbers: they can't follow an alteration, so that someone must look."""

import re
from collections.abc import Iterator

from ..pattern import Source
from ..pattern.nodes import Node

_ROOMS = ("summary", "notes", "pieces", "finishing")
_PROSE = ("summary", "notes", "note", "text", "stuff", "heading", "knot")
_TELLS = re.compile(
    r"\b(?:\d+(?:[.,]\d+)?(?: ?[½¼¾])?(?:-\d+)?(?: \([\d.,\s-]+\))?"
    r"|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)[ -]?"
    r"(?:rounds?|rnds?|rows?|stitch(?:es)?|sts?|(?:in|de)creases?|times|cm|mm"
    r"|inch(?:es)?|in(?! (?:all|total|the|each|every|next|same|a|an)\b))\b",
    re.IGNORECASE,
)


def telling(source: Source) -> Iterator[str]:
    """`line 48 says “8 rounds”: look whether it still holds`, for each text that tells a number."""
    if source.root is None:
        return
    for name, value in source.root.fields:
        if name.text not in _ROOMS:
            continue
        for node in _texts(value, name.text in ("summary", "notes")):
            said = dict.fromkeys(" ".join(one[0].split()) for one in _TELLS.finditer(node.text))
            if said:
                line = source.lines.position(node.start)[0]
                quoted = " and ".join(f"“{one}”" for one in said)
                yield f"line {line} says {quoted}: look whether it still holds"


def _texts(node: Node, prose: bool) -> Iterator[Node]:
    """The texts that a reader reads as sentences. prose: whether this value is one."""
    if node.kind == "text" and prose:
        yield node
    for item in node.items:
        yield from _texts(item, prose)
    for name, value in node.fields:
        yield from _texts(value, name.text in _PROSE)
