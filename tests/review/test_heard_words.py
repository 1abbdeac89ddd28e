"""Rules that listen for words: each word by itself, and what sounds like one and isn't meant."""

from pathlib import Path
from typing import Any

import pytest

from loopleaf.review import check
from tests.review.frame import framed
from tests.yaml_text import read_yaml

CASES: list[dict[str, Any]] = read_yaml((Path(__file__).parent / "heard_words.yml").read_text("utf-8"))
WORDS = [(case, word, how) for case in CASES for how in ("heard", "passed") for word in case[how]]


@pytest.mark.parametrize(("case", "word", "how"), WORDS, ids=[f"{c['rule']}: {w}" for c, w, _ in WORDS])
def test_word(case: dict[str, Any], word: str, how: str) -> None:
    text = framed(case["fragment"].replace("WORD", word))
    said = {one.rule for one in check(text.encode(), "case.yml").findings}
    assert not said & {"not-yaml", "wrong-type", "unknown-field"}
    assert (case["rule"] in said) == (how == "heard")
