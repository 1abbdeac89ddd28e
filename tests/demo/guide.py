"""The examples of the guides, taken out of their Markdown and made into small pattern files."""

import re
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tests.yaml_text import read_yaml, written_yaml

GUIDE = Path(__file__).parents[2] / "patterns" / "format.md"
READING = Path(__file__).parents[2] / "patterns" / "reading.md"

SINGLE = {"US": "sc", "UK": "dc"}
PIECE = {
    "scrap": {
        "worked": "spiral rounds",
        "start": "magic ring",
        "rounds": [{"round": 1, "work": "6 sc in ring", "count": 6}],
    }
}


@dataclass(frozen=True)
class Fence:
    """A fenced example: the language behind its fence, where it begins, its text."""

    language: str
    line: int
    text: str

    def __str__(self) -> str:
        return f"line {self.line}, {self.language}"


def fences(path: Path = GUIDE) -> list[Fence]:
    """Every fenced example of a guide, in order."""
    text = path.read_text(encoding="utf-8")
    return [
        Fence(found[1], text.count("\n", 0, found.start()) + 1, found[2])
        for found in re.finditer(r"^```(\w*)\n(.*?)^```$", text, re.MULTILINE | re.DOTALL)
    ]


def as_file(fence: Fence) -> dict[str, Any]:
    """A YAML example as a whole file: fields alone get a title, terms and a piece to stand on."""
    fields = read_yaml(fence.text)
    assert isinstance(fields, dict)
    return {"title": "An example", "terms": "US", "pieces": PIECE} | fields


def as_rounds(fence: Fence) -> dict[str, Any]:
    """Lines with their counts as a piece, over the stitches or from the start that the first line names."""
    first, *lines = fence.text.strip().splitlines()
    found = re.fullmatch(
        r"# (joined rounds|spiral rounds|rows), (?:over (\d+) stitches|start: (.*?))(, with A and B)?", first
    )
    assert found, first
    terms = fence.language.upper()
    worked, over, start, yarns = found.groups()
    word = worked.removesuffix("s").split()[-1]
    entries: list[dict[str, Any]] = []
    if over:
        start = f"chain {int(over) + 1}" if worked == "rows" else "magic ring"
        entries.append({word: 1, "work": _ground(worked, SINGLE[terms], over), "count": over})
    for line in lines:
        work, arrow, count = line.partition(" → ")
        assert arrow, f"no count behind: {line}"
        entries.append({word: len(entries) + 1, "work": work, "count": count})
    piece = {"worked": worked, "start": start, f"{word}s": entries} | ({"yarn": "A"} if yarns else {})
    file: dict[str, Any] = {"title": "An example", "terms": terms, "pieces": {"example": piece}}
    if yarns:
        file["materials"] = {"yarns": {"A": {"name": "kelp"}, "B": {"name": "foam"}}}
    return file


def _ground(worked: str, single: str, over: str) -> str:
    if worked == "rows":
        return f"{single} in 2nd ch from hook and in each ch across, turn"
    if worked == "joined rounds":
        return f"{over} {single} in ring, join"
    return f"{over} {single} in ring"


def tables(path: Path) -> list[list[list[str]]]:
    """Every table of a guide: its rows without the head, each a list of cells."""
    found: list[list[list[str]]] = []
    previous = ""
    for line in path.read_text(encoding="utf-8").splitlines():
        if line.startswith("|") and not previous.startswith("|"):
            found.append([])
        if line.startswith("|"):
            found[-1].append([cell.strip() for cell in re.split(r"(?<!\\)\|", line)[1:-1]])
        previous = line
    return [rows[2:] for rows in found]


def codes(cell: str) -> list[str]:
    """What stands in backticks in a cell."""
    return re.findall(r"`([^`]+)`", cell)


def dumped(file: dict[str, Any]) -> bytes:
    """A file's bytes, as an author's editor would save them."""
    return written_yaml(file, allow_unicode=True).encode()
