"""The lines of lines.yml: both terminologies and both lengths are one tree, and the writer prints each in
its own way.
"""

from pathlib import Path

import pytest

from loopleaf.notation import parse, write
from tests.yaml_text import read_yaml

from .trees import UK, US, tree_of

CASES = [
    case for cases in read_yaml((Path(__file__).parent / "lines.yml").read_text()).values() for case in cases
]
STYLES = {"us": (US, False), "us full": (US, True), "uk": (UK, False), "uk full": (UK, True)}


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["us"])
def test_each_style_is_written_so(case):
    tree = tree_of(case["us"], US)
    written = {style: write(tree, v.terms, full, v) for style, (v, full) in STYLES.items()}
    assert written == {style: case[style] for style in STYLES}


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["us"])
def test_every_way_of_saying_it_is_the_same_tree(case):
    tree = tree_of(case["us"], US)
    for style, (vocabulary, _) in STYLES.items():
        assert parse(case[style], vocabulary).line == tree, case[style]
    for vocabulary in (US, UK):
        for line in case.get(f"also {vocabulary.terms.lower()}", []):
            read = parse(line, vocabulary)
            assert read.problems == (), line
            assert read.line == tree, line


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["us"])
def test_case_and_spacing_do_not_matter(case):
    tree = tree_of(case["us"], US)
    assert parse(case["us"].upper(), US).line == tree
    assert parse("  " + case["us"].replace(" ", "   ").replace("×", " X") + " .", US).line == tree
