"""Errors of the model in an author's words: unknown fields, wrong kinds, missing fields, large numbers."""

import difflib
import re
from typing import Any

from pydantic_core import ErrorDetails

from .entries import Entry
from .finding import Suggestion
from .known_fields import PARTS, fields_at, fields_of, nearest, part_at
from .model import Pattern
from .nodes import KEY, Flaw, Node, find, first_line, key_span
from .pieces import Piece
from .scalars import offsets


def missing_field(one: ErrorDetails) -> str:
    """The field that is missing by an error of the model; "" where it is another error."""
    if one["type"] == "missing":
        return str(one["loc"][-1])
    return str(one["ctx"]["field"]) if one["type"] == "field-missing" else ""


def flaw_of(one: ErrorDetails, path: tuple[str | int, ...], root: Node, text: str) -> Flaw:
    """The flaw behind one error of the model, at the place where the author can mend it."""
    kind = one["type"]
    if kind == "extra_forbidden":
        return _unknown(path, root)
    if kind in ("missing", "field-missing"):
        return _missing(one, path, root)
    node, _ = find(root, path)
    ctx = one.get("ctx", {})
    if kind == "number-too-large":
        return _too_large(ctx, path, node, text)
    return _wrong(one, _as_written(path, root) if node.kind == "text" else path, node, text)


def _as_written(path: tuple[str | int, ...], root: Node) -> tuple[str | int, ...]:
    """The steps that the file has: `hook: 5 mm` is short for a hook of that `size`, which nobody wrote."""
    return next((path[:end] for end in range(len(path), 0, -1) if find(root, path[:end])[1]), path)


def _unknown(path: tuple[str | int, ...], root: Node) -> Flaw:
    name = str(path[-1])
    known = fields_at(path[:-1])
    model = part_at(path[:-1])
    near = nearest(name, known)
    start, end = key_span(root, path)
    message = f"`{_short(name)}` isn't a field {PARTS.get(model, 'here') if model else 'here'}."
    shown = near or sorted(known)[:4]
    homes = [of for other, of in PARTS.items() if other is not model and name in fields_of(other)]
    working = f"`{_short(name)}` is a field {homes[0]}. " if homes else ""
    working += (
        ("Nearest: " if near else "Among those that are: ") + ", ".join(f"`{one}`" for one in shown) + "."
    )
    if near:
        advice = Suggestion(f"Write `{near[0]}`.", near[0], "likely")
    else:
        advice = Suggestion("Take it out, or put what it says into a note.", None, "fill-in")
    return Flaw("unknown-field", start, end, message, working, advice, harmless=True)


def _missing(one: ErrorDetails, path: tuple[str | int, ...], root: Node) -> Flaw:
    field = missing_field(one)
    above = path[:-1] if one["type"] == "missing" else path
    start, end = key_span(root, above)
    model = part_at(above)
    what = (
        {Pattern: "The pattern", Piece: "This piece", Entry: "This entry"}.get(model, "This")
        if model
        else "This"
    )
    info = (
        next((info for info in model.model_fields.values() if info.alias == field), None) if model else None
    )
    shown = info.examples[0] if info and info.examples else "…"
    example = one.get("ctx", {}).get("example", f"{field}: {shown}")
    return Flaw(
        "field-missing",
        start,
        end,
        f"{what} has no `{field}`.",
        (info.description or "") if info else "",
        Suggestion(f"Add it, as in `{example}`.", None, "fill-in"),
    )


def _too_large(ctx: dict[str, Any], path: tuple[str | int, ...], node: Node, text: str) -> Flaw:
    number = str(ctx["number"])
    at = node.text.find(number.rstrip("…")) if node.kind == "text" else -1
    places = offsets(text, node) if at >= 0 else None
    ends = re.match(r"\d+", node.text[at:]) if at >= 0 else None
    start, end = (places[at], places[at + ends.end()]) if places and ends else (node.start, node.end)
    return Flaw(
        "number-too-large",
        start,
        end,
        f"{number} is too large a number for `{_field(path)}`.",
        f"The limit is {ctx['limit']:,}: {ctx['why']}.",
        Suggestion("Look for a slip of the keyboard.", None, "fill-in"),
    )


def _field(path: tuple[str | int, ...]) -> str:
    return next(
        (str(step) for step in reversed(path) if isinstance(step, str) and step != KEY and step), "this"
    )


_KINDS = {
    "model_type": ("fields of its own", "{…}"),
    "model_attributes_type": ("fields of its own", "{…}"),
    "dict_type": ("fields of its own", "{…}"),
    "tuple_type": ("a list", "[…]"),
    "string_type": ("text", "…"),
}


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
        message = f"`{field}` holds {held} where {expected} should stand."
        start, end = first_line(node, text)
        return Flaw("wrong-type", start, end, message, "", advice)
    close = difflib.get_close_matches(
        node.text.lower(), [w.lower() for w in ctx.get("words", ())], n=1, cutoff=0.6
    )
    if close:
        word = next(w for w in ctx["words"] if w.lower() == close[0])
        advice = Suggestion(f"Write `{word}`.", word, "likely")
    if not node.text.strip():
        return Flaw("wrong-type", node.start, node.end, f"`{field}` is empty.", "", advice)
    not_so = f"where {expected} should stand" if one["type"] in _KINDS else f"which isn't {expected}"
    message = f"`{field}` is `{_short(node.text)}`, {not_so}."
    return Flaw("wrong-type", node.start, node.end, message, "", advice)


def _short(text: str) -> str:
    return text if len(text) <= 60 else f"{text[:57]}…"


def _nothing(field: str, node: Node, text: str, advice: Suggestion) -> Flaw:
    remark = re.compile(r"[ \t]*(#[^\r\n]*)").match(text, node.start) if node.start == node.end else None
    if not remark:
        return Flaw("wrong-type", node.start, node.end, f"`{field}` has nothing after it.", "", advice)
    value = remark[1].strip()
    return Flaw(
        "wrong-type",
        remark.start(1),
        remark.start(1) + len(value),
        f"`{field}` has only a remark after it.",
        "To YAML, a `#` after a space begins a remark, and the rest of the line isn't read.",
        Suggestion("Put the value in quotes.", f'"{value}"', "safe"),
    )
