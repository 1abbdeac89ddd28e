"""Values that don't fit the model, told in an author's words: unknown fields, wrong kinds, missing fields."""

import difflib
import re
import types
import typing
from collections.abc import Iterator
from typing import Any, get_args, get_origin

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from .entries import Entry
from .finding import Suggestion
from .materials import Gauge, Materials, Yarn
from .model import Pattern, SpecialStitch, Variation
from .nodes import KEY, Flaw, Node
from .part import Part
from .pieces import Piece
from .scalars import offsets

_OF: dict[type[Part], str] = {
    Pattern: "of a pattern",
    Materials: "of `materials`",
    Yarn: "of a yarn",
    Gauge: "of `gauge`",
    Piece: "of a piece",
    Entry: "of a round or row",
    SpecialStitch: "of a special stitch",
    Variation: "of a variation",
}

# Other words that authors use for a field of ours.
_OTHER_WORDS = {
    "tension": "gauge", "author": "designer", "by": "designer", "name": "title", "description": "summary",
    "difficulty": "level", "skill": "level", "hooks": "hook", "instructions": "work", "instruction": "work",
    "pattern": "work", "stitches": "count", "sts": "count", "total": "count", "abbreviation": "short", "rnd": "round",
    "rnds": "rounds", "parts": "pieces", "assembly": "finishing", "size": "finished size", "dimensions": "finished size",
    "color": "colour", "fiber": "fibre", "license": "licence", "meters": "metres", "photo": "picture", "photos": "pictures",
    "image": "picture", "images": "pictures", "cast on": "start", "foundation": "start", "supplies": "notions",
}  # fmt: skip

# Fields that the rounds can be worked without: a mistake in one of these doesn't keep the pattern from being worked.
_HARMLESS = frozenset(
    ["summary", "designer", "level", "version", "published", "changes", "licence", "contact", "tags", "pictures", "picture", "name", "colour", "fibre", "ball", "weighed", "weight", "notions", "hook", "blocked", "care", "notes", "note", "video", "adjustable", "count"]
) | {"finished size", "to fit", "lies flat", "tail"}  # fmt: skip
_NAMED_BY_AUTHOR = ("pieces", "yarns", "special stitches", "variations", "key", "turning chains", "to fit")


def misfits(root: Node, text: str) -> tuple[Pattern | None, list[Flaw]]:
    """The typed pattern (None where a mistake leaves the rounds in doubt) and all that doesn't fit the model."""
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
    details = error.errors(include_url=False)
    unknown: dict[tuple[str | int, ...], list[str]] = {}
    for one in details:
        path = _path(one)
        if one["type"] == "extra_forbidden":
            unknown.setdefault(path[:-1], []).extend(_nearest(str(path[-1]), _fields_at(path[:-1]))[:1])
    flaws: list[Flaw] = []
    prunes: list[tuple[str | int, ...]] = []
    doubt = False
    for one in details:
        path = _path(one)
        missing = _missing_field(one)
        if missing and missing in unknown.get(path[:-1] if one["type"] == "missing" else path, []):
            doubt = True
            continue
        flaws.append(_flaw(one, path, root, text))
        prune = _harmless(one, path)
        doubt = doubt or prune is None
        if prune is not None:
            prunes.append(prune)
    return flaws, [] if doubt else prunes


def _path(one: ErrorDetails) -> tuple[str | int, ...]:
    return tuple(step for step in one["loc"] if not (isinstance(step, str) and step.startswith("~")))


def _missing_field(one: ErrorDetails) -> str:
    if one["type"] == "missing":
        return str(one["loc"][-1])
    return str(one["ctx"]["field"]) if one["type"] == "field-missing" else ""


def _harmless(one: ErrorDetails, path: tuple[str | int, ...]) -> tuple[str | int, ...] | None:
    if one["type"] == "extra_forbidden":
        near = _nearest(str(path[-1]), _fields_at(path[:-1]))
        return path if not near or near[0] in _HARMLESS else None
    for at, step in enumerate(path):
        named = at > 0 and path[at - 1] in _NAMED_BY_AUTHOR
        if step in _HARMLESS and not named:
            return path[: at + 1]
    return None


def _prune(plain: Any, path: tuple[str | int, ...]) -> None:
    """Leave out the field that a path leads to; a list written as its one item has no step of its own."""
    for step in path[:-1]:
        if isinstance(plain, list) and isinstance(step, int) and step < len(plain):
            plain = plain[step]
        elif isinstance(plain, dict) and step in plain:
            plain = plain[step]
        elif step != 0:
            return
    if isinstance(plain, dict):
        plain.pop(path[-1], None)


# ---- which fields there are ---------------------------------------------------------------


def _parts(annotation: Any) -> Iterator[Any]:
    """An annotation's alternatives with `Annotated`, unions and `None` taken off."""
    if isinstance(annotation, typing.TypeAliasType if hasattr(typing, "TypeAliasType") else ()):
        annotation = annotation.__value__
    origin = get_origin(annotation)
    if origin is typing.Annotated:
        yield from _parts(get_args(annotation)[0])
    elif origin in (typing.Union, types.UnionType):
        for one in get_args(annotation):
            yield from _parts(one)
    else:
        yield annotation


def _model_at(path: tuple[str | int, ...]) -> type[Part] | None:
    """The part of the model that a path leads to."""
    here: list[Any] = [Pattern]
    for step in path:
        below: list[Any] = []
        for one in here:
            if isinstance(one, type) and issubclass(one, Part):
                below += [
                    part
                    for info in one.model_fields.values()
                    if info.alias == step
                    for part in _parts(info.annotation)
                ]
            elif get_origin(one) in (tuple, dict):
                inner = [arg for arg in get_args(one) if arg is not Ellipsis][-1]
                below += list(_parts(inner))
        here = below
    return next((one for one in here if isinstance(one, type) and issubclass(one, Part)), None)


def _fields_at(path: tuple[str | int, ...]) -> list[str]:
    model = _model_at(path)
    return [str(info.alias) for info in model.model_fields.values()] if model else []


def _nearest(name: str, known: list[str]) -> list[str]:
    """Up to four known fields that resemble a name, nearest first."""
    lower = " ".join(re.split(r"[\s_-]+", name.strip().lower()))
    other = _OTHER_WORDS.get(lower)
    near = difflib.get_close_matches(lower, known, n=4, cutoff=0.6)
    return [other, *[one for one in near if one != other]] if other in known and lower not in known else near


# ---- in words -----------------------------------------------------------------------------


def _flaw(one: ErrorDetails, path: tuple[str | int, ...], root: Node, text: str) -> Flaw:
    kind = one["type"]
    if kind == "extra_forbidden":
        return _unknown(path, root)
    if kind in ("missing", "field-missing"):
        return _missing(one, path, root)
    node, _ = find(root, path)
    ctx = one.get("ctx", {})
    if kind == "number-too-large":
        return _too_large(ctx, path, node, text)
    return _wrong(one, path, node, text)


def find(root: Node, path: tuple[str | int, ...]) -> tuple[Node, bool]:
    """The node at a path, or the nearest above it; and whether the whole path was followed."""
    node = root
    for step in path:
        below = node.child(step)
        if below is None:
            return node, False
        node = below
    return node, True


def key_span(root: Node, path: tuple[str | int, ...]) -> tuple[int, int]:
    """Where the name of the field at a path stands; of a list's item, its first field's name."""
    above, whole = find(root, path[:-1])
    last = path[-1] if path else ""
    pair = above.pair(last) if whole and isinstance(last, str) else None
    if pair:
        return pair[0].start, pair[0].end
    node, _ = find(root, path)
    if node.kind == "fields" and node.fields:
        return node.fields[0][0].start, node.fields[0][0].end
    return node.start, node.end


def _unknown(path: tuple[str | int, ...], root: Node) -> Flaw:
    name = str(path[-1])
    known = _fields_at(path[:-1])
    model = _model_at(path[:-1])
    near = _nearest(name, known)
    start, end = key_span(root, path)
    message = f"`{name}` isn't a field {_OF.get(model, 'here') if model else 'here'}."
    shown = near or sorted(known)[:4]
    homes = [of for other, of in _OF.items() if other is not model and name in _names(other)]
    working = f"`{name}` is a field {homes[0]}. " if homes else ""
    working += (
        ("Nearest: " if near else "Among those that are: ") + ", ".join(f"`{one}`" for one in shown) + "."
    )
    if near:
        advice = Suggestion(f"Write `{near[0]}`.", near[0], "likely")
    else:
        advice = Suggestion("Take it out, or put what it says into a note.", None, "fill-in")
    return Flaw("unknown-field", start, end, message, working, advice, harmless=True)


def _names(model: type[Part]) -> set[str]:
    return {str(info.alias) for info in model.model_fields.values()}


def _missing(one: ErrorDetails, path: tuple[str | int, ...], root: Node) -> Flaw:
    field = _missing_field(one)
    above = path[:-1] if one["type"] == "missing" else path
    start, end = key_span(root, above)
    model = _model_at(above)
    example = one.get("ctx", {}).get("example", f"{field}: …")
    what = (
        {Pattern: "The pattern", Piece: "This piece", Entry: "This entry"}.get(model, "This")
        if model
        else "This"
    )
    info = (
        next((info for info in model.model_fields.values() if info.alias == field), None) if model else None
    )
    return Flaw(
        "field-missing", start, end, f"{what} has no `{field}`.",
        (info.description or "") if info else "", Suggestion(f"Add it, as in `{example}`.", None, "fill-in"),
    )  # fmt: skip


def _too_large(ctx: dict[str, Any], path: tuple[str | int, ...], node: Node, text: str) -> Flaw:
    number = str(ctx["number"])
    at = node.text.find(number.rstrip("…")) if node.kind == "text" else -1
    places = offsets(text, node) if at >= 0 else None
    ends = re.match(r"\d+", node.text[at:]) if at >= 0 else None
    start, end = (places[at], places[at + ends.end()]) if places and ends else (node.start, node.end)
    return Flaw(
        "number-too-large", start, end, f"{number} is too large a number for `{_field(path)}`.",
        f"The limit is {ctx['limit']:,}: {ctx['why']}.",
        Suggestion("Look for a slip of the keyboard.", None, "fill-in"),
    )  # fmt: skip


def _field(path: tuple[str | int, ...]) -> str:
    return next(
        (str(step) for step in reversed(path) if isinstance(step, str) and step != KEY and step), "this"
    )


_KINDS = {
    "model_type": ("fields of its own", "{…}"), "model_attributes_type": ("fields of its own", "{…}"),
    "dict_type": ("fields of its own", "{…}"), "tuple_type": ("a list", "[…]"), "string_type": ("text", "…"),
}  # fmt: skip


def _wrong(one: ErrorDetails, path: tuple[str | int, ...], node: Node, text: str) -> Flaw:
    ctx = one.get("ctx", {})
    field = _field(path)
    if "message" in ctx:
        start, end = (
            (node.fields[0][0].start, node.fields[0][0].end) if node.fields else (node.start, node.end)
        )
        advice = Suggestion(f"Write it as in `{ctx['example']}`.", None, "fill-in")
        return Flaw("wrong-type", start, end, str(ctx["message"]), "", advice)
    expected, example = _KINDS.get(one["type"], (ctx.get("expected", "a value"), ctx.get("example", "…")))
    written = example if example.startswith("{") and example != "{…}" else f"{field}: {example}"
    advice = Suggestion(f"Write it as in `{written}`.", None, "fill-in")
    if node.kind == "nothing":
        return _nothing(field, node, text, advice)
    if node.kind != "text":
        held = "a list" if node.kind == "list" else "fields of its own"
        message = f"`{field}` holds {held} where {expected} belongs."
        start, end = key_or_value(node, text)
        return Flaw("wrong-type", start, end, message, "", advice)
    close = difflib.get_close_matches(
        node.text.lower(), [w.lower() for w in ctx.get("words", ())], n=1, cutoff=0.6
    )
    if close:
        word = next(w for w in ctx["words"] if w.lower() == close[0])
        advice = Suggestion(f"Write `{word}`.", word, "likely")
    shown = node.text if len(node.text) <= 60 else f"{node.text[:57]}…"
    return Flaw(
        "wrong-type", node.start, node.end, f"`{field}` is `{shown}`, which isn't {expected}.", "", advice
    )


def key_or_value(node: Node, text: str) -> tuple[int, int]:
    """A list's or fields' own stretch, cut to its first line where it runs over several."""
    stop = re.compile(r"[\r\n]").search(text, node.start, max(node.end, node.start))
    return node.start, stop.start() if stop else max(node.end, node.start)


def _nothing(field: str, node: Node, text: str, advice: Suggestion) -> Flaw:
    remark = re.compile(r"[ \t]*(#[^\r\n]*)").match(text, node.start) if node.start == node.end else None
    if not remark:
        return Flaw("wrong-type", node.start, node.end, f"`{field}` has nothing after it.", "", advice)
    value = remark[1].strip()
    return Flaw(
        "wrong-type", remark.start(1), remark.start(1) + len(value), f"`{field}` has only a remark after it.",
        "To YAML, a `#` after a space begins a remark, and the rest of the line isn't read.",
        Suggestion("Put the value in quotes.", f'"{value}"', "safe"),
    )  # fmt: skip
