"""What the authors of the demo patterns state, read by plain YAML: every `count:` field, round by round."""

import re
from collections import Counter
from pathlib import Path
from typing import Any

from tests.yaml_text import read_yaml

COLLECTION = Path(__file__).parents[2] / "patterns"


def pattern(name: str) -> dict[str, Any]:
    """The file as plain dictionaries."""
    with (COLLECTION / f"{name}.yml").open(encoding="utf-8") as file:
        loaded = read_yaml(file)
    assert isinstance(loaded, dict)
    return loaded


def _numbers(entry: dict[str, Any]) -> list[int]:
    written = next(entry[key] for key in ("round", "rounds", "row", "rows") if key in entry)
    first, _, last = str(written).partition("-")
    return list(range(int(first), int(last or first) + 1))


def rounds(piece: dict[str, Any]) -> dict[int, str | None]:
    """Each round's number to its stated count as text; None where a repeat of rows states none of its own."""
    found: dict[int, str | None] = {}
    for entry in piece.get("rounds", piece.get("rows", [])):
        if not entry.keys() & {"round", "rounds", "row", "rows"}:
            continue
        for index, number in enumerate(_numbers(entry)):
            assert number not in found, f"round {number} is there twice"
            count = entry.get("count")
            if isinstance(count, dict):
                count = count["from"] + index * count["step"]
            if "repeat" in entry:
                first, _, last = entry["repeat"].partition("-")
                length = int(last) - int(first) + 1
                count = found[int(first) + index % length]
            found[number] = None if count is None else str(count)
    return found


def sizes_of(text: str) -> list[str]:
    """`63 (69, 75)` as its three numbers; a number that stands alone serves every size, `-` is none."""
    found = re.fullmatch(r"([\d.]+|-)(?: \(([\d., -]+)\))?(.*)", text)
    assert found, f"not an amount: {text}"
    first, others, rest = found.groups()
    return [first + rest] + [other.strip() + rest for other in others.split(",")] if others else [text]


def by_size(text: str, sizes: int) -> list[str]:
    """A count as text, one for each size: `33 (36, 39) sc, 30 (33, 36) sh` is three counts."""
    parts = [part.strip() for part in re.split(r",(?![^(]*\))", text)]
    columns = [sizes_of(part) * (sizes if len(sizes_of(part)) == 1 else 1) for part in parts]
    return [", ".join(column[size] for column in columns) for size in range(sizes)]


def kinds(text: str) -> Counter[str]:
    """`24 dc, 24 ch-1 sps` as a tally by kind, spaces in the singular."""
    tally: Counter[str] = Counter()
    for part in text.split(", "):
        number, _, kind = part.partition(" ")
        tally[re.sub(r"[- ]sps?$", " sp", re.sub(r"picots$", "picot", kind))] += int(number)
    return tally
