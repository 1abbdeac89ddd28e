"""Where in a pattern something stands, in a maker's words: `body, rounds 4-6`, `finishing, step 2`."""

from ..pattern import Path, Source
from ..pattern.nodes import Node, find

_RUNS = ("round", "rounds", "row", "rows")
_SINGLE = {"notes": "note", "finishing": "finishing, step", "special stitches": "special stitch"}


def whereabouts(source: Source, path: Path) -> str:
    """The place of a value; "" where the field says it by itself."""
    if path[0] == "pieces" and len(path) > 2:
        several = source.pattern is not None and len(source.pattern.pieces) > 1
        inner = str(path[2]) if len(path) > 3 else ""
        if inner and isinstance(path[3], int):
            inner = entry_label(_node(source, path[:4]))
        return ", ".join(one for one in (str(path[1]) if several else "", inner) if one)
    if path[:2] == ("materials", "yarns") and len(path) > 2:
        return f"yarn {path[2]}"
    if path[0] in _SINGLE and len(path) > 1:
        at = path[1] + 1 if isinstance(path[1], int) else path[1]
        return f"{_SINGLE[str(path[0])]} {at}"
    return str(path[0]) if len(path) > 1 else ""


def entry_label(node: Node | None) -> str:
    """`rounds 4-6`, as an entry's own field says; "" for an entry without rounds."""
    for name, value in node.fields if node is not None and node.kind == "fields" else ():
        if name.text in _RUNS and value.kind == "text":
            several = not value.text.strip().isdigit()
            return f"{name.text.rstrip('s')}{'s' if several else ''} {value.text}"
    return ""


def labels(source: Source) -> dict[int, str]:
    """The label of the entry that each line of a file belongs to; where two share a line, of neither."""
    found: dict[int, str] = {}
    pattern = source.pattern
    for name, piece in pattern.pieces.items() if pattern is not None else ():
        for index in range(len(piece.entries)):
            path: Path = ("pieces", name, piece.entries_field, index)
            node = _node(source, path)
            if node is None or not entry_label(node):
                continue
            last = max(end_of(node) - 1, node.start)
            lines = range(source.lines.position(node.start)[0], source.lines.position(last)[0] + 1)
            found |= {line: "" if line in found else whereabouts(source, path) for line in lines}
    return {line: label for line, label in found.items() if label}


def end_of(node: Node) -> int:
    """Where a value's last word ends; block lists and fields reach to the next line that isn't theirs."""
    below = [value for _, value in node.fields] + node.items
    if not below:
        return node.end
    last = max(end_of(one) for one in below)
    return node.end if node.end - last <= 1 else last


def _node(source: Source, path: Path) -> Node | None:
    if source.root is None:
        return None
    node, whole = find(source.root, path)
    return node if whole else None
