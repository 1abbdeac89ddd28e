"""Values that don't fit the model, told in an author's words: unknown fields, wrong kinds, missing fields."""

from typing import Any

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from .known_fields import fields_at, nearest
from .limits import MOST_FINDINGS
from .model import Pattern
from .nodes import Flaw, Node
from .wording import flaw_of, missing_field

# Fields that the rounds can be worked without: after a mistake in one of these the pattern is still worked.
_HARMLESS = frozenset(
    [
        "summary",
        "designer",
        "level",
        "version",
        "published",
        "changes",
        "licence",
        "contact",
        "tags",
        "pictures",
        "picture",
        "name",
        "colour",
        "fibre",
        "ball",
        "weighed",
        "weight",
        "notions",
        "hook",
        "blocked",
        "care",
        "notes",
        "note",
        "video",
        "adjustable",
        "count",
    ]
) | {"finished size", "to fit", "lies flat", "tail"}
_NAMED_BY_AUTHOR = ("pieces", "yarns", "special stitches", "variations", "key", "turning chains", "to fit")


def misfits(root: Node, text: str) -> tuple[Pattern | None, list[Flaw]]:
    """The typed pattern (None where a mistake leaves the rounds in doubt), and all that doesn't fit it."""
    plain = root.plain()
    try:
        return Pattern.model_validate(plain), []
    except ValidationError as error:
        told, harmless = _tell(error, root, text)
        if not harmless:
            return None, told
    for path in harmless:
        _prune(plain, path)
    try:
        return Pattern.model_validate(plain), told
    except ValidationError as error:
        again, _ = _tell(error, root, text)
        return None, told + [flaw for flaw in again if flaw not in told]


def _tell(error: ValidationError, root: Node, text: str) -> tuple[list[Flaw], list[tuple[str | int, ...]]]:
    """The flaws, and where to leave out values so that the rest fits: empty where the rounds are in doubt."""
    details = error.errors(include_url=False)[:MOST_FINDINGS]
    unknown: dict[tuple[str | int, ...], list[str]] = {}
    for one in details:
        path = _path(one)
        if one["type"] == "extra_forbidden":
            unknown.setdefault(path[:-1], []).extend(nearest(str(path[-1]), fields_at(path[:-1]))[:1])
    flaws: list[Flaw] = []
    prunes: list[tuple[str | int, ...]] = []
    doubt = error.error_count() > MOST_FINDINGS
    for one in details:
        path = _path(one)
        missing = missing_field(one)
        if missing and missing in unknown.get(path[:-1] if one["type"] == "missing" else path, []):
            doubt = True
            continue
        flaws.append(flaw_of(one, path, root, text))
        prune = _harmless(one, path)
        doubt = doubt or prune is None
        if prune is not None:
            prunes.append(prune)
    return flaws, [] if doubt else prunes


def _path(one: ErrorDetails) -> tuple[str | int, ...]:
    return tuple(step for step in one["loc"] if not (isinstance(step, str) and step.startswith("~")))


def _harmless(one: ErrorDetails, path: tuple[str | int, ...]) -> tuple[str | int, ...] | None:
    if one["type"] == "extra_forbidden":
        near = nearest(str(path[-1]), fields_at(path[:-1]))
        return path if not near or near[0] in _HARMLESS else None
    for at, step in enumerate(path):
        named = at > 0 and path[at - 1] in _NAMED_BY_AUTHOR
        if step in _HARMLESS and not named:
            return path[: at + 1]
    return None


def _prune(whole: Any, path: tuple[str | int, ...]) -> None:
    """Leave out the field that a path leads to; a list written as its one item has no step of its own."""
    plain: Any = whole
    for step in path[:-1]:
        below: Any = None
        if isinstance(plain, dict):
            below = plain.get(step)
        elif isinstance(plain, list) and isinstance(step, int) and step < len(plain):
            below = plain[step]
        if below is None and step != 0:
            return
        plain = plain if below is None else below
    if isinstance(plain, dict):
        plain.pop(path[-1], None)
