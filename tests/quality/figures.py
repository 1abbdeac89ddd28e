"""The page of figures, README.md: each command writes its own section and leaves the others."""

import re
from pathlib import Path

PAGE = Path(__file__).parent / "README.md"
HEAD = """# How good the engine is

Measured, not claimed: the commands below write these figures. The *little model* is a second way to work a
pattern, written from the format's pages alone (`little/`).
"""


def write_section(title: str, text: str, page: Path = PAGE) -> None:
    """Puts a section in its place among the others, in the order of their titles."""
    old = page.read_text(encoding="utf-8") if page.exists() else HEAD
    head, *parts = re.split(r"^## ", old, flags=re.M)
    sections = {part.partition("\n")[0].strip(): part.partition("\n")[2].strip() for part in parts}
    sections[title] = text.strip()
    body = "\n".join(f"## {name}\n\n{sections[name]}\n" for name in sorted(sections))
    page.write_text(f"{head.rstrip()}\n\n{body}", encoding="utf-8")
