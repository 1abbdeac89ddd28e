"""A whole pattern file to change in one place, and what the tests of this folder ask of a file."""

from collections.abc import Callable

import pytest

from loopleaf.pattern import Finding, Source, load

LANTERN = """\
title: Lantern pouch
designer: Saltmarsh Makers' Library
summary: A round drawstring pouch.
terms: US
level: easy
version: 1.10
published: 2026-10-02
changes:
  - {date: 2026-11-05, version: 1.1.0, note: Round 1 names the stitch to join to.}
licence: CC-BY-NC-4.0
contact: https://example.org/help
tags: [pouch, home]
materials:
  yarns:
    A: {weight: 4, name: lichen, colour: "#3b6e6a", ball: {grams: 50, metres: 85}, weighed: 52 g}
    B: {weight: 4, name: oat, colour: "#e6d9bd"}
  hook: 5.5 mm
  notions: [tapestry needle, stitch marker]
gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm, blocked: no}
finished size: {around: 34.5 cm, height: 13.5 cm}
turning chains: {hdc: does not count, sc: counts as sc}
chain spaces: not counted
special stitches:
  shell: {short: sh, work: 5 dc in same st, text: Five stitches fanned from one.}
pieces:
  pouch:
    title: Pouch
    make: 1
    yarn: A
    worked: joined rounds
    start: magic ring
    lies flat: 1-3
    rounds:
      - heading: Base
      - {round: 1, side: RS, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {rounds: 2-3, work: "(hdc in next n sts, inc) x 8", n: {from: 0, step: 1}, count: {from: 16, step: 8}}
      - {round: 4, work: "ch 1, hdc in each st around, join", count: "24", note: Quiet., video: "6:10"}
  cord:
    make: 2
    yarn: B
    worked: chain
    length: {times: 2, around: pouch, round: 4}
finishing:
  - thread: {piece: cord, through: pouch, round: 4, under: 1, over: 1, from: [1, 13]}
  - text: Weave in the ends.
video: {url: "https://example.org/lantern-pouch", length: "12:30"}
"""


@pytest.fixture(scope="session")
def lantern() -> str:
    """A pattern file without a flaw."""
    return LANTERN


@pytest.fixture(scope="session")
def read() -> Callable[[str], Source]:
    """Reads a text as a file of that content."""
    return lambda text: load(text.encode(), "lantern.yml")


@pytest.fixture(scope="session")
def changed(lantern: str) -> Callable[[str, str], str]:
    """The pattern with one stretch written otherwise."""

    def change(old: str, new: str) -> str:
        assert lantern.count(old) >= 1, f"{old!r} isn't in the sample."
        return lantern.replace(old, new, 1)

    return change


@pytest.fixture(scope="session")
def marked() -> Callable[[str, Finding], str]:
    """The text that a finding marks."""

    def cut(text: str, finding: Finding) -> str:
        lines = text.splitlines()
        place = finding.location
        if place.line == place.end_line:
            return lines[place.line - 1][place.column - 1 : place.end_column - 1]
        return lines[place.line - 1][place.column - 1 :]

    return cut


@pytest.fixture(scope="session")
def mended() -> Callable[[str, Finding], str]:
    """The text with a finding's replacement put in."""

    def mend(text: str, finding: Finding) -> str:
        assert finding.suggestion is not None
        assert finding.suggestion.replacement is not None
        place = finding.location
        lines = text.split("\n")
        line = lines[place.line - 1]
        before, after = line[: place.column - 1], line[place.end_column - 1 :]
        lines[place.line - 1] = before + finding.suggestion.replacement + after
        return "\n".join(lines)

    return mend
