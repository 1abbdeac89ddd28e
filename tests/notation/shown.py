"""An instruction tree on one line, with the stretch of text that each of its nodes stands for."""

from dataclasses import MISSING, fields, is_dataclass
from typing import Any

from loopleaf.notation.tree import Amount, Span


def shown(node: Any, text: str) -> str:
    """`Work“sc in next 5 sts”(Stitch(single), places=[Next“next 5 sts”(5)])`; the usual is left out."""
    if isinstance(node, tuple):
        return f"[{', '.join(shown(one, text) for one in node)}]"
    if isinstance(node, Amount):
        return node.variable or "/".join("-" if one is None else str(one) for one in node.sizes)
    if not is_dataclass(node):
        return str(node)
    span: Span | None = getattr(node, "span", None)
    stretch = f"“{text[span.start : span.end]}”" if span else ""
    parts = []
    for part in fields(node):
        value = getattr(node, part.name)
        if part.name == "span" or value == part.default:
            continue
        name = "" if part.default is MISSING or isinstance(value, Amount) else f"{part.name}="
        parts.append(f"{name}{shown(value, text)}")
    return f"{type(node).__name__}{stretch}" + (f"({', '.join(parts)})" if parts else "")
