"""A whole pattern file around a few lines of one, so that a case shows only what matters.

Lines of a rule's page, and of the cases, are fields of a piece (`rounds:`, `start:` …) or of the file. The
frame supplies the rest; `# without gauge` keeps its own field out.
"""

import re

TOP = {
    "title": "title: Coaster",
    "designer": "designer: The village library",
    "terms": "terms: US",
    "licence": "licence: CC-BY-4.0",
    "materials": "materials: {yarns: {A: {weight: 4, name: lichen}}, hook: 5.5 mm, notions: [needle]}",
    "gauge": "gauge: not critical",
}
PIECE = {
    "title": "title: Coaster",
    "yarn": "yarn: A",
    "worked": "worked: joined rounds",
    "start": "start: magic ring",
    "rounds": 'rounds: [{round: 1, work: "ch 1, 8 hdc in ring, join, fasten off", count: 8}]',
}
OF_A_PIECE = ("worked", "start", "rounds", "rows", "tail", "lies flat", "length", "make", "grid", "yarn")


def framed(fragment: str) -> str:
    """The fragment as a whole pattern file."""
    without = re.findall(r"^# without (.+)$", fragment, re.M)
    fields = _fields(fragment)
    piece = {name: text for name, text in fields.items() if name in OF_A_PIECE}
    top = {name: text for name, text in fields.items() if name not in OF_A_PIECE}
    pieces = top.pop("pieces", "pieces:")
    whole = [top.pop(name, text) for name, text in TOP.items() if name not in without]
    whole += top.values()
    alone = "pieces" in fields and not piece and not re.search(r": piece\b", fragment)
    if not alone:
        if "rows" in piece:
            piece["rounds"] = piece.pop("rows")
        lines = [piece.pop(name, text) for name, text in PIECE.items()]
        body = "\n".join([*lines, *piece.values()])
        first, _, rest = pieces.partition("\n")
        pieces = f"{first}\n  piece:\n{_indented(body)}" + (f"\n{rest}" if rest else "")
    return "\n".join([*whole, pieces]) + "\n"


def _fields(fragment: str) -> dict[str, str]:
    """The fragment's own fields, each with the lines that belong to it."""
    fields: dict[str, str] = {}
    name = ""
    for line in fragment.rstrip().split("\n"):
        if line.startswith("#"):
            continue
        found = re.match(r"([A-Za-z][\w ]*):", line)
        if found:
            name = found[1]
            fields[name] = line
        elif name:
            fields[name] += f"\n{line}"
    return fields


def _indented(text: str) -> str:
    return "\n".join(f"    {line}" if line else line for line in text.split("\n"))
