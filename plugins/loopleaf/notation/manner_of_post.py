"""Reads from which side a post is taken: `sc around post of next sc of round 1, from behind`."""

from .cursor import Cursor

_FROM = {"behind": "back", "back": "back", "front": "front"}


def read_from_behind(cursor: Cursor) -> str:
    """`back` for `from behind`, `front` for `from front`; `around` where nothing is said."""
    at = cursor.at + (cursor.means == ",")
    if cursor.words[at].means != "from":
        return "around"
    behind = cursor.words[at + 1].means == "behind"  # in other words too: `inserting hook from behind`
    side = "back" if behind else _FROM.get(cursor.said(at + 1, at + 2).lower(), "")
    if not side or cursor.words[at + 2].means not in (",", "end", ")", "(", "*", "rep", "and", "then"):
        return "around"
    cursor.at = at + 2
    return side
