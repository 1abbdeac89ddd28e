"""Lines put together: each part means in a longer line, or inside a repeat, what it means alone."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from loopleaf.notation import Vocabulary, parse
from loopleaf.notation.tree import Amount, Repeat, Step, Tally, Until
from tests.yaml_text import read_yaml

from .shown import shown
from .trees import UK, US

CASES = [
    case
    for cases in read_yaml((Path(__file__).parent / "lines.yml").read_text("utf-8")).values()
    for case in cases
]
NEIGHBOURS = {
    "US": ["sc in next st", "ch 2", "sk 2 sts", "(sc, ch 1, sc) in next ch-2 sp", "2 dc in last st", "inc"],
    "UK": [
        "1 dc in next st",
        "2ch",
        "miss 2 sts",
        "(1 dc, 1ch, 1 dc) in next ch-2 sp",
        "2 tr in last st",
        "inc",
    ],
}


def steps(line: str, vocabulary: Vocabulary) -> tuple[Step, ...]:
    read = parse(line, vocabulary)
    assert read.line is not None, (line, read.problems)
    return read.line.steps


def alone(vocabulary: Vocabulary) -> list[str]:
    """Lines without a count at their end, which has to come last."""
    lines = [case[vocabulary.terms.lower()] for case in CASES]
    return [line for line in lines if not any(isinstance(step, Tally) for step in steps(line, vocabulary))]


BOTH = [(vocabulary, line) for vocabulary in (US, UK) for line in alone(vocabulary)]


@pytest.mark.parametrize(("vocabulary", "line"), BOTH, ids=lambda one: getattr(one, "terms", one))
def test_beside_others(vocabulary: Vocabulary, line: str) -> None:
    own = steps(line, vocabulary)
    for other in NEIGHBOURS[vocabulary.terms]:
        its = steps(other, vocabulary)
        assert steps(f"{other}, {line}", vocabulary) == its + own
        assert steps(f"{line}, {other}", vocabulary) == own + its


@pytest.mark.parametrize(("vocabulary", "line"), BOTH, ids=lambda one: getattr(one, "terms", one))
def test_inside_a_repeat(vocabulary: Vocabulary, line: str) -> None:
    own = steps(line, vocabulary)
    assert steps(f"({line}) x 3", vocabulary) == (Repeat(own, times=Amount((3,))),)
    if "*" not in line:
        assert steps(f"*{line}; rep from * around", vocabulary) == (Repeat(own, until=Until()),)
        assert steps(f"*{line}; rep from * across", vocabulary) == (Repeat(own, until=Until(word="across")),)


PLACES = (Path(__file__).parent / "places.txt").read_text("utf-8").splitlines()
LEADS = [
    *("sc into", "FPdc around", "FPdc in", "sc around", "dc around post of", "sl st to", "sc in BLO of"),
    *("join B with sl st in", "join with sl st to", "place marker in", "sc between", "dc2tog over", "sc"),
]


def place(line: str) -> str | None:
    """The places of a line's one step, as text; None where it can't be read."""
    read = parse(line, US)
    if read.line is None or len(read.line.steps) != 1:
        return None
    step = read.line.steps[0]
    places = getattr(step, "places", None) or (getattr(step, "place", None),)
    return ", ".join(shown(one, line) for one in places)


def bare(text: str | None) -> str | None:
    """Without the stretches of words."""
    return text and re.sub("“.*?”", "", text)


def test_places_behind_each_lead(golden: Callable[[str, str], None]) -> None:
    """What each place is, and behind which other words it is the same, is something else, or isn't read."""
    said: list[str] = []
    for words in PLACES:
        usual = place(f"sc in {words}")
        said.append(f"{words}: {usual}")
        by = {lead: place(f"{lead} {words}") for lead in LEADS}
        said.append(
            f"    the same: {', '.join(lead for lead, one in by.items() if bare(one) == bare(usual))}"
        )
        said.append(f"    not read: {', '.join(lead for lead, one in by.items() if one is None)}")
        said += [f"    {lead}: {one}" for lead, one in by.items() if one and bare(one) != bare(usual)]
    golden("places-behind-leads.txt", "\n".join(said) + "\n")
