"""The words that each step and place was read from: findings point at them, mendings replace them."""

from collections.abc import Callable
from pathlib import Path

import pytest

from loopleaf.notation import parse
from loopleaf.notation.tree import Line
from tests.yaml_text import read_yaml

from .shown import shown
from .trees import UK, US

LINES: dict[str, list[dict[str, str]]] = read_yaml((Path(__file__).parent / "lines.yml").read_text("utf-8"))


@pytest.mark.parametrize("heading", LINES)
def test_lines_with_their_stretches(heading: str, golden: Callable[[str, str], None]) -> None:
    said = []
    for case in LINES[heading]:
        for vocabulary in (US, UK):
            text = case[vocabulary.terms.lower()]
            line = parse(text, vocabulary).line
            assert isinstance(line, Line), text
            said += [text, *(f"    {shown(step, text)}" for step in line.steps)]
    golden(f"{heading.lower()}.txt", "\n".join(said) + "\n")
