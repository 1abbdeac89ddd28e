"""Says of a stitch told hook by hook, `yo, insert hook in next st, pull up a loop`, where that belongs."""

import re
from collections.abc import Sequence

from .cursor import Cursor, UnreadableError
from .problem import Problem
from .tree import Span

_MOVEMENT = re.compile(
    r"(?:yo|yoh|yrh|woh|yarn (?:over|round|forward)|(?:insert|take|put|place) (?:the )?hook"
    r"|hook (?:in|through)|(?:pull|draw)(?:ing)? (?:up|through|yarn|loop|a|it|the)"
    r"|drop (?:the )?loop|remove (?:the )?hook"
    r"|\d+ loops on)\b",
    re.IGNORECASE,
)


def movement_told(cursor: Cursor, unread: Sequence[UnreadableError]) -> tuple[int, Problem] | None:
    """The first of the unread places that tells a movement of the hook, by its index, and what to say there;
    None where none does. What stands behind it belongs to it."""
    words = cursor.words
    for index, error in enumerate(unread):
        first = words[min(error.at, len(words) - 1)]
        found = _MOVEMENT.match(cursor.text, first.start)
        if found is not None and error.expected == "step":
            span = Span(first.start, found.end())
            message = f"“{found[0]}” is a movement of the hook; a line names the stitches that these make."
            mending = (
                "Tell the movements once, in the `text` of a special stitch, and write its name here.",
                None,
                "fill-in",
            )
            return index, Problem("unknown-instruction", "error", span, message, "", mending)
    return None
