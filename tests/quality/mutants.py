"""Files with one mistake each: every kind, at every place that a file offers for it."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from .mistakes import IN_A_LINE, a_size_lost, by_one, sizes_exchanged
from .sites import File, Site


@dataclass(frozen=True)
class Mutant:
    """A file with one mistake. rounds: the labels of the rounds that the changed value is about."""

    kind: str
    file: str
    piece: str
    rounds: tuple[str, ...]
    was: str
    now: str
    text: str


def mutants(file: File) -> Iterator[Mutant]:
    """Every mutant of a file, in a fixed order, each text once."""
    seen = {file.text}
    for mutant in _all(file):
        if mutant.text not in seen:
            seen.add(mutant.text)
            yield mutant


def _all(file: File) -> Iterator[Mutant]:
    for site in file.sites:
        for kind, value in _mistaken(site):
            if value != site.value:
                yield _mutant(kind, file, site, value)
    works = [site for site in file.sites if site.field == "work"]
    for one, other in pairwise(works):
        grows = re.search(r"\bn\b", one.value + " " + other.value)
        if one.piece == other.piece and one.value != other.value and not grows:
            text = file.with_values((one, other.value), (other, one.value))
            rounds = one.rounds + other.rounds
            yield Mutant("two rounds exchanged", file.name, one.piece, rounds, one.value, other.value, text)
    for entry in file.entries:
        yield Mutant("a round lost", file.name, entry.piece, entry.rounds, "", "", file.without(entry))


def _mutant(kind: str, file: File, site: Site, value: str) -> Mutant:
    text = file.with_value(site, value)
    return Mutant(kind, file.name, site.piece, site.rounds, site.value, value, text)


def _mistaken(site: Site) -> Iterator[tuple[str, str]]:
    """The kinds of mistake that fit the value's field."""
    name, value = site.field, site.value
    if name in ("work", "special work"):
        for kind, mistake in IN_A_LINE.items():
            yield from ((kind, changed) for changed in mistake(value))
    elif name == "count":
        yield from _count(value)
    elif name in ("start", "start chain"):
        yield from _named("the foundation chain one longer", by_one(r"(\d+)", 1)(value))
        yield from _named("the foundation chain one shorter", by_one(r"(\d+)", -1)(value))
        yield from _named("the start's sizes exchanged", sizes_exchanged(value))
        yield from _named("a chain no longer joined", re.findall(r"^(chain \d+), joined$", value))
        yield from _named("a chain joined", (f"{one}, joined" for one in re.findall(r"^chain \d+$", value)))
    elif name.startswith("turning chain of"):
        yield "a turning chain that counts the other way", _other(value, "counts", "does not count")
    elif name == "chain spaces":
        yield "chain spaces counted the other way", _other(value, "counted", "not counted")
    elif name == "side":
        yield "the other side facing", _other(value, "RS", "WS")
    elif name == "worked":
        others = {"joined rounds": "rows", "rows": "joined rounds", "spiral rounds": "rows"}
        if value in others:
            yield "rounds for rows", others[value]
    else:
        yield from _number(name, value)


def _count(value: str) -> Iterator[tuple[str, str]]:
    yield from _named("a count one more", by_one(r"(?<![-\w])(\d+)(?!ch)", 1)(value))
    yield from _named("a count one fewer", by_one(r"(?<![-\w])(\d+)(?!ch)", -1)(value))
    yield from _named("a count's figures exchanged", (re.sub(r"(\d)(\d)", r"\2\1", value, count=1),))
    yield from _named("a count ten more", by_one(r"(?<![-\w])(\d+)(?!ch)", 10)(value))
    yield from _named("a count's sizes exchanged", sizes_exchanged(value))
    yield from _named("a count's size lost", a_size_lost(value))
    yield from _named("a count's spaces of another length", by_one(r"ch-(\d+) sp|(?!)", 1)(value))
    kinds = re.findall(r"(\d+) ([a-z]+)", value)
    for one, other in pairwise(kinds):
        if one[0] != other[0]:
            exchanged = value.replace(" ".join(one), f"{other[0]} {one[1]}", 1)
            yield "a count's kinds exchanged", exchanged.replace(" ".join(other), f"{one[0]} {other[1]}", 1)


def _number(name: str, value: str) -> Iterator[tuple[str, str]]:
    kinds = {
        "n from": "`n` begins one higher",
        "n step": "`n` grows by one more",
        "count from": "a count that grows begins one higher",
        "count step": "a count grows by one more",
        "as": "as another round",
        "repeat": "other rows repeated",
        "round": "a round's number one higher",
        "row": "a round's number one higher",
        "rounds": "one round more",
        "rows": "one round more",
        "make": "one piece more",
        "sew round": "sewn to a round past the last",
        "sew stitches": "sewn past the edge",
        "thread round": "threaded through another round",
        "thread from": "threaded from past the edge",
        "thread under": "threaded under one more",
        "thread over": "threaded over one more",
        "lay out across": "one more across",
        "lay out down": "one more down",
    }
    if name not in kinds:
        return
    far = 100 if name in ("sew round", "sew stitches", "thread from") else 1
    yield from _named(kinds[name], by_one(r"(\d+)$", far)(value))
    if name in ("rounds", "rows"):
        yield from _named("one round fewer", by_one(r"(\d+)$", -1)(value))
    if name == "as":
        yield from _named("as another round", by_one(r"(\d+)$", -1)(value))


def _named(kind: str, values: Iterable[str]) -> Iterator[tuple[str, str]]:
    yield from ((kind, value) for value in values)


def _other(value: str, one: str, other: str) -> str:
    return other if value == one else one
